#include "core/store/search.h"

#include "core/store/store_core.h"
#include "core/store/words.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

using test::Bench;
using test::need;

namespace {

std::string found(Bench& bench, const std::string& words)
{
    std::string all;
    for (const SearchHit& hit : need(bench.store->search().find(words, 50)))
        all += (all.empty() ? "" : ", ") + hit.noun + " " + hit.label;
    return all;
}

} // namespace

TEST_CASE("search finds labels, sites, people, notes and sample numbers", "[store]")
{
    Bench bench;
    bench.create();
    makeSeason(bench);
    CHECK(found(bench, "millbrook") == "site Millbrook Copse");
    CHECK(found(bench, "weir") == "site Millbrook Copse");
    CHECK(found(bench, "hollin") == "person MH");
    CHECK(found(bench, "26-tv-01") == "sample 26-TV-0147-H");
    CHECK(found(bench, "lone") == "tree Lone oak, visit Lone oak 2026-06-09");
    CHECK(found(bench, "curled lone") == "visit Lone oak 2026-06-09");
    CHECK(found(bench, "curl").find("visit T-1 2026-06-09") != std::string::npos);   // the last word may be unfinished
    CHECK(found(bench, "curl ").empty());
    CHECK(found(bench, "nowhere").empty());
}

TEST_CASE("search does not mind accents and letter case", "[store]")
{
    Bench bench;
    bench.create();
    bench.change([&](Change& c) {
        need(bench.store->sites().save(c, bench.site("Café Grün")));
        need(bench.store->people().save(c, bench.person("ÅÖ", "Åse Ørn")));
    });
    CHECK(found(bench, "cafe grun") == "site Café Grün");
    CHECK(found(bench, "CAFÉ") == "site Café Grün");
    CHECK(found(bench, "åse") == "person ÅÖ");
}

TEST_CASE("a changed or renamed noun is found by what it is now", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    Tree tree = s.trees[3];
    tree.label = "Great elm";
    tree.note = "beside the pond";
    Visit visit = s.visits[3];
    visit.note = "bark split";
    Site site = s.site;
    site.name = "Weir Copse";
    Person person = s.observer;
    person.name = "Marl Sedge";
    bench.change([&](Change& c) {
        need(bench.store->trees().save(c, tree));
        need(bench.store->visits().saveDraft(c, visit, {}));
        need(bench.store->sites().save(c, site));
        need(bench.store->people().save(c, person));
    });
    CHECK(found(bench, "oak").empty());
    CHECK(found(bench, "elm") == "tree Great elm");
    CHECK(found(bench, "pond") == "tree Great elm");
    CHECK(found(bench, "split") == "visit Great elm 2026-06-09");
    CHECK(found(bench, "millbrook").empty());
    CHECK(found(bench, "hollin").empty());
    CHECK(found(bench, "sedge") == "person MH");
    // FTS5's own comparison of index and content (https://www.sqlite.org/fts5.html, 6.5); throws where they differ.
    for (const char* table : {"tree_words", "site_words", "visit_words", "person_words"}) {
        const std::string name = table;
        CHECK_NOTHROW(bench.store->core().db.run("INSERT INTO " + name + " (" + name + ", rank) VALUES ('integrity-check', 1)"));
    }
}

TEST_CASE("whatever is typed is words and nothing else", "[store]")
{
    Bench bench;
    bench.create();
    makeSeason(bench);
    const std::string hostile[] = {"",
                                   " ",
                                   "\"",
                                   "'",
                                   "\"lone",
                                   "lone AND",
                                   "NOT lone",
                                   "lone OR oak",
                                   "label:lone",
                                   "lone*",
                                   "(lone",
                                   "lone)",
                                   "^lone",
                                   "NEAR(lone oak, 5)",
                                   "lone - oak",
                                   "{label}:oak",
                                   "lone; DROP TABLE visit",
                                   "' OR 1=1 --",
                                   std::string("lo\0ne", 5),
                                   "\xFF\xFE lone",
                                   "½—é",
                                   "a—b",
                                   "木の葉",
                                   std::string(100'000, 'x'),
                                   std::string(20'000, '"'),
                                   []() {
                                       std::string many;
                                       for (int i = 0; i < 3000; ++i)
                                           many += "w" + std::to_string(i) + " ";
                                       return many;
                                   }()};
    for (const std::string& words : hostile) {
        CAPTURE(words.substr(0, 60));
        CHECK(bench.store->search().find(words, 10));
        CHECK(bench.store->trees().count({.words = words}));
        CHECK(bench.store->trees().window({.words = words}, 0, 5));
        CHECK(bench.store->trees().labelBegins(words, {}, 5));
    }
    CHECK(found(bench, "\"lone\"") == "tree Lone oak, visit Lone oak 2026-06-09");
    CHECK(need(bench.store->visits().count()) == 4);
    CHECK(wordsOf(bench.store->core().db, "Lone-oak's 2nd") == std::vector<std::string>{"lone", "oak", "s", "2nd"});
}

} // namespace cupule
