// Entries of one tree at the level of the store: where visits lie, what lists and searches give, what the examination says.

#include "core/store/tree_entries.h"

#include <algorithm>

#include "core/store/bulk_import.h"
#include "core/store/health.h"
#include "core/store/label_key.h"
#include "core/store/revisions.h"
#include "core/store/search.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

void link(Bench& bench, const Uid& entry, const Uid& into)
{
    Tree tree = *need(bench.store->trees().find(entry));
    tree.mergedInto = into;
    bench.change([&](Change& c) { need(bench.store->trees().save(c, tree)); });
}

std::size_t visitsOf(Bench& bench, const Uid& tree)
{
    return need(bench.store->visits().ofTree(tree)).size();
}

std::vector<std::string> labels(const std::vector<TreeRow>& rows)
{
    std::vector<std::string> all;
    for (const TreeRow& row : rows)
        all.push_back(row.tree.label);
    return all;
}

std::string faults(Bench& bench)
{
    std::string all;
    for (const StoreFault& fault : need(examineStore(*bench.store)).faults)
        if (fault.code != "media-missing")
            all += fault.what.substr(0, fault.what.find(' ')) + ":" + fault.advice + " ";
    return all;
}

} // namespace

TEST_CASE("visits, photos and samples of a merged entry are found under the kept one, and go back", "[store][trees]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    const Uid kept = s.trees[0].id, merged = s.trees[1].id;
    const std::string before = need(store.visits().find(s.visits[1].id))->tree.text();
    link(bench, merged, kept);
    for (const Uid& entry : {kept, merged}) {
        CHECK(visitsOf(bench, entry) == 2);
        CHECK(need(store.photos().ofTree(entry)).size() == 1);
        CHECK(need(store.samples().ofTree(entry)).size() == 1);
        CHECK(need(store.trees().row(entry))->tree.id == kept);
        CHECK(need(store.trees().kept(entry)) == kept);
        CHECK(need(store.trees().entries(entry)).size() == 2);
    }
    CHECK(need(store.trees().row(kept))->visits == 2);
    CHECK(need(store.trees().row(kept))->positiveAccepted);
    CHECK(need(store.visits().find(s.visits[1].id))->tree.text() == before);
    CHECK(need(store.visits().row(s.visits[1].id))->treeLabel == "T-1");
    CHECK(faults(bench).empty());
    link(bench, merged, {});
    CHECK(visitsOf(bench, kept) == 1);
    CHECK(visitsOf(bench, merged) == 1);
    CHECK(need(store.trees().find(merged)) == s.trees[1]);
    CHECK(need(store.trees().row(merged))->positiveAccepted);
    CHECK_FALSE(need(store.trees().row(kept))->positiveAccepted);
    CHECK(faults(bench).empty());
}

TEST_CASE("the journal names a merge and a split, and is whole", "[store][trees]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    link(bench, s.trees[1].id, s.trees[0].id);
    link(bench, s.trees[1].id, {});
    const auto revisions = need(store.revisions().ofEntity(s.trees[1].id));
    REQUIRE(revisions.size() == 3);
    CHECK(revisions[1].parents == std::vector<Uid>{revisions[0].id});
    std::vector<std::string> kinds;
    for (Query q(store.core().db, "SELECT kind FROM journal WHERE noun = 'tree' ORDER BY number DESC LIMIT 2"); q.step();)
        kinds.push_back(q.text(0));
    CHECK(kinds == std::vector<std::string>{"split", "merged"});
    CHECK(need(store.journal().prove()).whole);
}

TEST_CASE("merged entries are in no list, and their words find the kept tree", "[store][trees]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    link(bench, s.trees[1].id, s.trees[0].id);
    auto trees = store.trees();
    using Labels = std::vector<std::string>;
    CHECK(need(trees.count({})) == 3);
    for (const bool down : {false, true})
        for (const TreeSort sort : {TreeSort::label, TreeSort::site, TreeSort::lastVisit}) {
            const auto found = labels(need(trees.window({.sort = sort, .descending = down}, 0, 10)));
            CHECK(found.size() == 3);
            CHECK(std::find(found.begin(), found.end(), "T-2") == found.end());
        }
    CHECK(labels(need(trees.window({.site = s.site.id}, 0, 10))) == Labels{"T-1", "T-10"});
    CHECK(labels(need(trees.window({.words = "T-2"}, 0, 10))) == Labels{"T-1"});
    CHECK(need(trees.count({.words = "T-2"})) == 1);
    CHECK(labels(need(trees.labelBegins("t-2", {}, 10))) == Labels{"T-1"});
    CHECK(labels(need(trees.labelBegins("t-", {}, 10))) == Labels{"T-1", "T-10"});
    CHECK(need(trees.labelled(s.site.id, "T-2")).at(0).id == s.trees[1].id);
    CHECK(need(trees.labelledAnywhere("T-2")).size() == 1);
    const auto near = need(trees.near(52.01, -2, 2'000, 10));
    CHECK(near.size() == 3);
    CHECK(near.at(0).id == s.trees[0].id);
    for (const SearchHit& hit : need(store.search().find("T-2", 10)))
        if (hit.noun == "tree")
            CHECK(hit.id == s.trees[0].id);
}

TEST_CASE("links make paths, and a ring from two stores keeps its smallest id", "[store][trees]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    const Uid a = s.trees[0].id, b = s.trees[1].id, c = s.trees[2].id;
    auto trees = bench.store->trees();
    link(bench, b, a);
    link(bench, a, c);
    CHECK(need(trees.kept(b)) == c);
    CHECK(visitsOf(bench, b) == 3);
    CHECK(need(trees.entries(a)).size() == 3);
    link(bench, c, b);                    // as a bundle might bring it
    const Uid smallest = std::min({a, b, c});
    for (const Uid& entry : {a, b, c}) {
        CHECK(need(trees.kept(entry)) == smallest);
        CHECK(visitsOf(bench, entry) == 3);
        CHECK(need(trees.entries(entry)).size() == 3);
    }
    CHECK(faults(bench).empty());
    link(bench, b, {});
    CHECK(need(trees.kept(c)) == b);
    CHECK(visitsOf(bench, b) == 3);
    CHECK(need(trees.row(b))->visits == 3);
    CHECK(faults(bench).empty());
}

TEST_CASE("a link to an entry that is not here yet waits for it", "[store][trees]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    const Tree later = bench.tree("T-9", s.site.id, 52.05, -2);
    link(bench, s.trees[1].id, later.id);
    CHECK(need(bench.store->trees().kept(s.trees[1].id)) == s.trees[1].id);
    CHECK(visitsOf(bench, s.trees[1].id) == 1);
    bench.change([&](Change& c) { need(bench.store->trees().save(c, later)); });
    CHECK(visitsOf(bench, later.id) == 1);
    CHECK(need(bench.store->trees().row(later.id))->visits == 1);
    CHECK(faults(bench).empty());
}

TEST_CASE("an import of a merged label goes to the kept tree", "[store][trees]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    link(bench, s.trees[1].id, s.trees[0].id);
    const auto expected = GENERATE(std::int64_t{10}, std::int64_t{100'000});
    CAPTURE(expected);
    bench.change([&](Change& c) {
        BulkImport bulk = need(BulkImport::begin(c, expected));
        const auto* known = need(bulk.treesLabelled(s.site.id, "T-2"));
        REQUIRE(known->size() == 1);
        const KnownTree tree = known->front();
        const Visit visit = bench.visit(s.trees[1], s.observer, "2026-07-01");
        Sha256 hash;
        ReadyVisit ready;
        makeReady(visit, hash, ready);
        VisitShown shown;
        shown.positive = true;
        need(bulk.addVisit(visit, tree, {7}, shown, ready));
        need(bulk.finish());
    });
    CHECK(visitsOf(bench, s.trees[0].id) == 3);
    CHECK(need(store.trees().row(s.trees[0].id))->visits == 3);
    CHECK(need(store.trees().row(s.trees[0].id))->positiveWaiting);
    CHECK(faults(bench).empty());
}

TEST_CASE("visits that lie with the wrong entry are named and put right", "[store][trees]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    link(bench, s.trees[1].id, s.trees[0].id);
    auto& db = store.core().db;
    SECTION("with the merged one")
    {
        db.run("UPDATE visit SET tree = 2 WHERE id = 2");
        db.run("UPDATE tree SET visits = 1 WHERE id < 3");
        CHECK(faults(bench).find("visit-tree:rebuild") != std::string::npos);
        need(rebuildComputed(store));
        CHECK(faults(bench).empty());
        CHECK(visitsOf(bench, s.trees[0].id) == 2);
    }
    SECTION("with a third")
    {
        db.run("UPDATE visit SET tree = 3 WHERE id = 1");
        CHECK(faults(bench).find("visit-tree:tell-office") != std::string::npos);
    }
    SECTION("the mark is off")
    {
        db.run("UPDATE tree SET label_key = 't-12' WHERE id = 2");
        CHECK(faults(bench).find("tree-merged:tell-office") != std::string::npos);
    }
}

TEST_CASE("a register can be narrowed to trees by what became of them", "[store][trees]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    bench.change([&](Change& c) {
        Tree tree = s.trees[2];
        tree.fate = "felled";
        tree.fateDate = s.visits[0].date;
        tree.fateBy = s.observer.id;
        need(store.trees().save(c, tree));
        need(store.trees().save(c, bench.tree("T-99", s.site.id)));
    });
    auto trees = store.trees();
    using Labels = std::vector<std::string>;
    const auto shown = [&](TreeShow show) {
        const TreeFilter filter{.show = show};
        const auto found = labels(need(trees.window(filter, 0, 10)));
        CHECK(need(trees.count(filter)) == static_cast<std::int64_t>(found.size()));
        return found;
    };
    CHECK(shown(TreeShow::gone) == Labels{"T-10"});
    CHECK(shown(TreeShow::stands) == Labels{"Lone oak", "T-1", "T-2", "T-99"});
    CHECK(shown(TreeShow::findAccepted) == Labels{"T-2"});
    CHECK(shown(TreeShow::findWaits).empty());
    CHECK(shown(TreeShow::neverSeen) == Labels{"T-99"});
    CHECK(labels(need(trees.window({.words = "T-10", .show = TreeShow::gone}, 0, 10))) == Labels{"T-10"});
}

TEST_CASE("no label can pass for that of a merged entry", "[store][trees]")
{
    const std::string hostile = std::string(mergedMark) + "T-1";
    CHECK(labelKey(hostile) < mergedMark);
    CHECK(mergedKey("T-1") > mergedMark);
    CHECK(labelKey("\xF4\x8F\xBF\xBE") < mergedMark);
}

} // namespace cupule
