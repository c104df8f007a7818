// The plan of each hot query, as SQLite states it for the very statement that the repository runs: traced while it runs, then
// explained. Source of the method: SQLite's own tests of query plans (https://www.sqlite.org/eqp.html).

#include <functional>

#include <sqlite3.h>

#include "core/store/bulk_import.h"
#include "core/store/practice.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

int note(unsigned, void* list, void* statement, void*)
{
    const char* sql = sqlite3_sql(static_cast<sqlite3_stmt*>(statement));
    static_cast<std::vector<std::string>*>(list)->emplace_back(sql);
    return 0;
}

/// The plans of all statements that `work` runs, one after the other.
std::string plansOf(Store& store, const std::function<void()>& work)
{
    auto& db = store.core().db;
    std::vector<std::string> statements;
    sqlite3_trace_v2(db.handle(), SQLITE_TRACE_STMT, &note, &statements);
    work();
    sqlite3_trace_v2(db.handle(), 0, nullptr, nullptr);
    std::string plans;
    for (const std::string& sql : statements) {
        if (sql.starts_with("--") || sql.starts_with("BEGIN") || sql.starts_with("ROLLBACK"))
            continue;
        Query q(db, "EXPLAIN QUERY PLAN " + sql);
        while (q.step())
            plans += q.text(3) + '\n';
    }
    return plans;
}

} // namespace

TEST_CASE("hot queries run along their indices and sort nothing", "[store]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    const CivilDate day = s.visits[0].date;
    struct Row {
        std::function<void()> work;
        const char* must;
        bool maySort = false;   // the rows of one day, tree or window, never the whole table
    };
    const auto any = [](const Uid&, std::string_view) {};
    PracticeSession practice;
    practice.id = bench.ids.make();
    practice.cohort = "vale";
    bench.change([&](Change& c) { need(store.practice().begin(c, practice, s.observer.id)); });
    const std::vector<Row> rows{
        {[&] { need(store.practice().counts({{}, "vale", {}})); }, "SEARCH practice_count USING PRIMARY KEY (session=?)", true},
        {[&] { need(store.practice().counts({s.observer.id, {}, {}})); }, "USING INDEX practice_session_person (person=?)", true},
        {[&] { need(store.practice().sureCounts({{}, "vale", {}})); }, "SEARCH practice_sure USING PRIMARY KEY (session=?)"},
        {[&] { need(store.practice().inOrder({{}, "vale", {}}, any)); }, "SEARCH practice_hits USING PRIMARY KEY (session=?)"},
        {[&] { need(store.practice().series("vale")); }, "USING INDEX practice_session_cohort (cohort=?)"},
        {[&] { need(store.practice().skills(s.observer.id)); }, "USING INDEX skill_person (person=?)", true},
        {[&] { need(store.visits().queue(0, 50)); }, "USING COVERING INDEX visit_queue (queued=?)", true},
        {[&] { need(store.visits().queueCount()); }, "SCAN queue_count"},
        {[&] { need(store.visits().queueNext(s.visits[1].id)); }, "USING INDEX visit_queue ("},
        {[&] { need(store.visits().ofDay(day, {})); }, "USING INDEX visit_day (day=?)", true},
        {[&] { need(store.visits().ofDay(day, s.observer.id)); }, "INDEX visit_", true},
        {[&] { need(store.visits().ofTree(s.trees[0].id)); }, "USING INDEX visit_tree (tree=?)", true},
        {[&] { need(store.visits().days({})); }, "USING COVERING INDEX visit_day"},
        {[&] { need(store.visits().days(s.observer.id)); }, "USING COVERING INDEX visit_observer (observer=?)"},
        {[&] { need(store.visits().window({}, 0, 50)); }, "USING COVERING INDEX visit_day", true},
        {[&] { need(store.visits().window(RecordState::submitted, 0, 50)); }, "USING COVERING INDEX visit_state (state=?)", true},
        {[&] { need(store.visits().count(RecordState::accepted)); }, "USING COVERING INDEX visit_state (state=?)"},
        {[&] { need(store.visits().find(s.visits[0].id)); }, "(uid=?)"},
        {[&] { need(store.trees().window({}, 0, 50)); }, "SEARCH tree USING COVERING INDEX tree_label (label_key<?)"},
        {[&] { need(store.trees().window({.sort = TreeSort::lastVisit}, 0, 50)); }, "SCAN tree USING COVERING INDEX tree_last_day"},
        {[&] { need(store.trees().window({.sort = TreeSort::site}, 0, 50)); }, "SEARCH tree USING COVERING INDEX tree_site_label (site=? AND label_key<?)"},
        {[&] { need(store.trees().window({.site = s.site.id}, 0, 50)); }, "SEARCH tree USING COVERING INDEX tree_site_label (site=? AND label_key<?)"},
        {[&] { need(store.trees().labelBegins("T-1", {}, 10)); }, "SEARCH tree USING COVERING INDEX tree_label (label_key>? AND label_key<?)"},
        {[&] { need(store.trees().labelled(s.site.id, "T-1")); }, "USING INDEX tree_site_label (site=? AND label_key=?)", true},
        {[&] { need(store.trees().labelledAnywhere("T-1")); }, "USING INDEX tree_label (label_key=?)", true},
        {[&] { need(store.trees().entries(s.trees[0].id)); }, "SEARCH tree USING INDEX tree_label (label_key>?)", true},
        {[&] { need(store.trees().near(52, -2, 100, 1)); }, "SEARCH tree USING COVERING INDEX tree_cell (cell>? AND cell<?)"},
        {[&] { need(store.decisions().nearestFind(52, -2, 100, {})); }, "SEARCH find USING COVERING INDEX find_cell (cell>? AND cell<?)"},
        {[&] { need(store.visits().waitingFinds(52, -2, 10'000)); }, "SEARCH visit USING INDEX visit_waiting_find (tree=?)"},
        {[&] { need(store.visits().waitingFinds(52, -2, 10'000)); }, "SEARCH tree USING INDEX tree_cell (cell>? AND cell<?)"},
        {[&] { need(store.visits().waitingFinds(52, -2, 10'000)); }, "USING INDEX tree_unplaced"},
        {[&] { need(store.visits().decidedOf(s.observer.id, 10)); }, "SEARCH visit USING COVERING INDEX visit_decided (observer=?)"},
        {[&] { need(store.decisions().ofObserver(s.observer.id, 10)); }, "SEARCH visit USING COVERING INDEX visit_decided (observer=?)", true},
        {[&] { need(store.decisions().ofVisit(s.visits[1].id)); }, "USING INDEX decision_visit (visit=?)"},
        {[&] { need(store.photos().ofVisit(s.visits[1].id)); }, "USING INDEX photo_visit (visit=?)"},
        {[&] { need(store.photos().withPicture(s.photo.sha256)); }, "USING INDEX photo_sha256 (sha256=?)"},
        {[&] { need(store.photos().tray()); }, "USING INDEX photo_visit (visit=?)"},
        {[&] { need(store.photos().likenesses()); }, "USING COVERING INDEX photo_likeness"},
        {[&] { need(store.photos().notLookedAt(10)); }, "USING INDEX photo_not_looked"},
        {[&] { need(store.samples().byNumber(s.sample.number)); }, "(number_key=?)"},
        {[&] { need(store.samples().ofVisit(s.visits[1].id)); }, "USING INDEX sample_visit (visit=?)", true},
    };
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string plans = plansOf(store, rows[i].work);
        CAPTURE(i, plans);
        CHECK(plans.find(rows[i].must) != std::string::npos);
        if (!rows[i].maySort)
            CHECK(plans.find("TEMP B-TREE") == std::string::npos);
        CHECK(plans.find("SCAN visit\n") == std::string::npos);
        CHECK(plans.find("SCAN tree\n") == std::string::npos);
    }
}

TEST_CASE("an import looks up rows and labels along indices", "[store]")
{
    Bench bench;
    Store& store = bench.create();
    makeSeason(bench);
    const std::string plans = plansOf(store, [&] {
        Change change = need(store.begin({}));
        BulkImport bulk = need(BulkImport::begin(change, 10));
        need(bulk.treesLabelled({}, "T-1"));
        need(bulk.knownBefore({1, 2, 3}));
    });
    CAPTURE(plans);
    CHECK(plans.find("SEARCH tree USING INDEX tree_site_label (site=? AND label_key=?)") != std::string::npos);
    CHECK(plans.find("SEARCH visit USING COVERING INDEX visit_fingerprint (fingerprint=? AND rowid<?)") != std::string::npos);
}

} // namespace cupule
