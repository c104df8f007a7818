#include "core/store/bulk_import.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/store/health.h"
#include "core/store/revisions.h"
#include "core/store/search.h"
#include "core/store/store_core.h"
#include "core/store/tree_cache.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

Fingerprint printOf(std::string_view row)
{
    const Digest digest = sha256(row);
    Fingerprint print;
    std::copy_n(digest.begin(), print.size(), print.begin());
    return print;
}

ReadyVisit ready(const Visit& visit)
{
    Sha256 hash;
    ReadyVisit out;
    makeReady(visit, hash, out);
    return out;
}

Status addTo(BulkImport& bulk, const Visit& visit, const KnownTree& tree)
{
    return bulk.addVisit(visit, tree, {}, {}, ready(visit));
}

/// Rows "label,day,observer,note" as an importer would bring them in.
struct Importer {
    Bench& bench;
    BulkImport bulk;
    std::vector<Person> observers;
    std::vector<Uid> visits = {};

    void row(const std::string& label, const char* date, std::size_t observer, const std::string& note)
    {
        const auto& known = *need(bulk.treesLabelled({}, label));
        const KnownTree tree = known.empty() ? need(bulk.addTree(bench.tree(label))) : known.front();
        Tree named;
        named.id = tree.id;
        Visit visit = bench.visit(named, observers.at(observer), date, note);
        VisitShown shown;
        shown.host = HostAnswer::host;
        shown.positive = note == "gall";
        need(bulk.addVisit(visit, tree, printOf(label + date + note), shown, ready(visit)));
        visits.push_back(visit.id);
    }
};

std::vector<Person> peopleIn(Bench& bench)
{
    std::vector<Person> people{bench.person("AA", "Ada Aster"), bench.person("BB", "Bo Birch")};
    bench.change([&](Change& c) {
        for (const Person& person : people)
            need(bench.store->people().save(c, person));
    });
    return people;
}

} // namespace

TEST_CASE("a batch comes in as the slow way would have made it", "[store]")
{
    const std::int64_t expected = GENERATE(10, 1'000'000);   // row by row, and with the indices built afterwards
    CAPTURE(expected);
    Bench bench;
    bench.create();
    const auto people = peopleIn(bench);
    std::vector<Uid> sameDay;
    Change change = need(bench.store->begin(people[0].id));
    Importer importer{bench, need(BulkImport::begin(change, expected)), people};
    for (int i = 0; i < 300; ++i)
        importer.row("T-" + std::to_string(i % 40), i % 2 == 0 ? "2026-06-01" : "2026-06-02", i % 3 == 0 ? 1 : 0,
                     i % 7 == 0 ? "gall" : "nothing on it");
    need(importer.bulk.finish());
    sameDay = need(importer.bulk.sameTreeDayObserver());
    CHECK(importer.bulk.visitsAdded() == 300);
    CHECK(importer.bulk.treesAdded() == 40);
    need(change.commit());

    CHECK(need(bench.store->visits().count()) == 300);
    CHECK(need(bench.store->trees().count({})) == 40);
    CHECK_FALSE(sameDay.empty());
    const auto row = *need(bench.store->visits().row(importer.visits[7]));
    CHECK(row.standing.imported);
    CHECK(row.standing.state == RecordState::draft);
    CHECK(row.treeLabel == "T-7");
    CHECK(row.shown.positive);
    const auto tree = *need(bench.store->trees().row(row.tree));
    CHECK(tree.visits == 7 + 1);
    CHECK(tree.positiveWaiting);
    CHECK(tree.host == HostAnswer::host);
    CHECK(tree.lastVisit->text() == "2026-06-02");
    CHECK(need(bench.store->search().find("nothing", 1000)).size() == 257);
    CHECK(need(bench.store->search().find("T-39", 10)).size() == 1);
    CHECK(need(bench.store->revisions().ofEntity(row.tree)).size() == 1);
    const auto lines = need(bench.store->journal().ofEntity(row.id));
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].kind == "imported");
    CHECK(lines[0].author == people[0].id);
    CHECK(lines[0].digest == sha256(toJson(*need(bench.store->visits().find(row.id)))));
    const auto health = need(examineStore(*bench.store));
    for (const auto& fault : health.faults)
        UNSCOPED_INFO(fault.code << " " << fault.what);
    CHECK(health.faults.empty());
}

TEST_CASE("an import that is not committed changes nothing, not even an index", "[store]")
{
    Bench bench;
    bench.create();
    const auto people = peopleIn(bench);
    {
        Change change = need(bench.store->begin({}));
        Importer importer{bench, need(BulkImport::begin(change, 1'000'000)), people};
        for (int i = 0; i < 50; ++i)
            importer.row("T-1", "2026-06-01", 0, "");
    }
    CHECK(need(bench.store->visits().count()) == 0);
    CHECK(need(examineStore(*bench.store)).faults.empty());
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("CC", "Cy Cedar"))); });
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("rows are compared with what the store held before the import", "[store]")
{
    const std::int64_t expected = GENERATE(10, 1'000'000);
    Bench bench;
    bench.create();
    const auto people = peopleIn(bench);
    for (int turn = 0; turn < 2; ++turn) {
        Change change = need(bench.store->begin({}));
        Importer importer{bench, need(BulkImport::begin(change, expected)), people};
        for (int i = 0; i < 3; ++i) {
            CHECK(need(importer.bulk.knownBefore(printOf("T-12026-06-01x"))) == turn * 3);
            importer.row("T-1", "2026-06-01", 0, "x");
        }
        CHECK(need(importer.bulk.knownBefore(printOf("other"))) == 0);
        need(importer.bulk.finish());
        CHECK(need(importer.bulk.sameTreeDayObserver()).size() == 3);
        need(change.commit());
    }
    CHECK(need(bench.store->trees().count({})) == 1);
    CHECK(need(bench.store->visits().count()) == 6);
}

TEST_CASE("several trees of one label are told apart by the caller", "[store]")
{
    Bench bench;
    bench.create();
    const Site site = bench.site("Copse");
    bench.change([&](Change& c) { need(bench.store->sites().save(c, site)); });
    Change change = need(bench.store->begin({}));
    BulkImport bulk = need(BulkImport::begin(change, 10));
    need(bulk.addTree(bench.tree("T-1", {}, 52, -2)));
    need(bulk.addTree(bench.tree("T-1", {}, 53, -2)));
    need(bulk.addTree(bench.tree("T-1", site.id, 54, -2)));
    const auto& bare = *need(bulk.treesLabelled({}, "T-1"));
    REQUIRE(bare.size() == 2);
    CHECK(bare[1].latitude == 53);
    CHECK(bare[1].uncertaintyMetres == 7);
    CHECK(need(bulk.treesLabelled(site.id, "T-1"))->size() == 1);
    CHECK(need(bulk.treesLabelled({}, "t-1"))->empty());
    CHECK(bulk.treesLabelled(bench.ids.make(), "T-1").error().code == "store.reference");
}

TEST_CASE("a visit for another tree, or that JSON cannot hold, is refused", "[store]")
{
    Bench bench;
    bench.create();
    const auto people = peopleIn(bench);
    Change change = need(bench.store->begin({}));
    BulkImport bulk = need(BulkImport::begin(change, 10));
    const Tree tree = bench.tree("T-1");
    const KnownTree known = need(bulk.addTree(tree));
    CHECK(addTo(bulk, bench.visit(bench.tree("T-2"), people[0], "2026-06-01"), known).error().code == "store.reference");
    CHECK(addTo(bulk, bench.visit(tree, people[0], "2026-06-01", "\xC3("), known).error().code == "record.json");
    CHECK(addTo(bulk, bench.visit(tree, bench.person("ZZ", "Zed"), "2026-06-01"), known).error().code == "store.reference");
    CHECK(addTo(bulk, bench.visit(tree, people[0], "2026-06-01"), known));
}

TEST_CASE("a large import writes straight into the file where nobody else has it open, and the log comes back", "[store]")
{
    Bench bench;
    bench.create();
    const auto mode = [&] {
        Query q(bench.store->core().db, "PRAGMA journal_mode");
        return q.step() ? q.text(0) : std::string();
    };
    const auto references = [&] { return bench.store->core().db.number("PRAGMA foreign_keys"); };
    {
        const LargeImport large(*bench.store);
        CHECK(mode() == "truncate");
        CHECK(references() == 0);
    }
    CHECK(mode() == "wal");
    CHECK(references() == 1);
    Connection other;
    other.open(bench.path, Connection::Mode::write, 100);
    CHECK(other.number("SELECT count(*) FROM visit") == 0);
    const LargeImport large(*bench.store);
    CHECK(mode() == "wal");
    other.close();
}

TEST_CASE("the cache of trees finds what a plain search finds", "[store]")
{
    TreeCache cache;
    SeededRandom random(9);
    std::vector<std::pair<std::int64_t, std::string>> added;
    for (int i = 0; i < 5000; ++i) {
        CachedTree tree;
        tree.site = static_cast<std::int64_t>(random.below(3));
        tree.row = i + 1;
        added.emplace_back(tree.site, "T" + std::to_string(random.below(2000)));
        CHECK(cache.add(tree, added.back().second) == static_cast<std::size_t>(i));
    }
    std::vector<std::size_t> found;
    for (int i = 0; i < 2100; ++i) {
        for (std::int64_t site = 0; site < 3; ++site) {
            const std::pair<std::int64_t, std::string> wanted{site, "T" + std::to_string(i)};
            cache.find(site, wanted.second, found);
            std::sort(found.begin(), found.end());
            std::vector<std::size_t> expected;
            for (std::size_t at = 0; at < added.size(); ++at)
                if (added[at] == wanted)
                    expected.push_back(at);
            REQUIRE(found == expected);
        }
    }
}

} // namespace cupule
