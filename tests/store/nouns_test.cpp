// Every repository: what goes in comes out, refusals are named, lists are in order.

#include <limits>

#include "core/record/json.h"
#include "core/store/connection.h"
#include "core/store/revisions.h"
#include "core/store/settings.h"
#include "core/store/store_core.h"
#include "core/store/undo_log.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

using test::Bench;
using test::need;

TEST_CASE("what is saved is there after closing and opening", "[store]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    Store& store = bench.reopen();
    CHECK(need(store.people().find(s.observer.id)) == s.observer);
    CHECK(need(store.people().byCode("VE")) == s.verifier);
    CHECK(need(store.people().byName("Marl Hollin")) == std::vector<Person>{s.observer});
    CHECK(need(store.people().all()) == std::vector<Person>{s.observer, s.verifier});
    CHECK(need(store.sites().find(s.site.id)) == s.site);
    CHECK(need(store.sites().byName("Millbrook Copse")).size() == 1);
    CHECK(need(store.trees().find(s.trees[3].id)) == s.trees[3]);
    CHECK(need(store.visits().find(s.visits[2].id)) == s.visits[2]);
    CHECK(need(store.samples().byNumber("26tv0147h")) == s.sample);
    CHECK(need(store.samples().ofTree(s.trees[1].id)) == std::vector<Sample>{s.sample});
    CHECK(need(store.samples().lines(s.sample.id)).size() == 1);
    CHECK(need(store.leaves().find(s.leave.id)) == s.leave);
    CHECK(need(store.leaves().all()) == std::vector<Leave>{s.leave});
    CHECK(need(store.leaves().findRegime(s.regime.id)) == s.regime);
    CHECK(need(store.photos().ofVisit(s.visits[1].id)) == std::vector<PhotoNote>{s.photo});
    CHECK(need(store.photos().ofTree(s.trees[1].id)).size() == 1);
    CHECK(need(store.photos().withPicture(s.photo.sha256)).size() == 1);
    CHECK(need(store.photos().tray()).empty());
    CHECK(need(store.decisions().ofVisit(s.visits[1].id)) == std::vector<Decision>{s.decision});
    CHECK(need(store.decisions().ofRevision(s.revision)).size() == 1);
    CHECK(need(store.decisions().last(s.visits[1].id)) == s.decision);
    CHECK(need(store.decisions().told(s.visits[1].id))->reference == "R1");
    CHECK_FALSE(need(store.decisions().told(s.visits[0].id)));
}

TEST_CASE("a known copy lies in no tray, and what a picture looks like writes no revision", "[store]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    PhotoNote loose = s.photo;
    loose.id = bench.ids.make();
    loose.visit = {};
    bench.change([&](Change& c) { need(store.photos().save(c, loose)); });
    CHECK(need(store.photos().tray()) == std::vector<PhotoNote>{loose});
    CHECK(need(store.photos().notLookedAt(1)) == std::vector<PhotoNote>{loose});

    const auto lines = store.seen()->number;
    constexpr std::uint64_t highest = 0x8000000000000001ULL;   // the sign bit is a bit like the others
    bench.change([&](Change& c) {
        need(store.photos().setLikeness(c, loose.id, highest));
        need(store.photos().setLikeness(c, s.photo.id, {}));
    });
    CHECK(store.seen()->number == lines);
    CHECK(need(store.photos().notLookedAt(10)).empty());
    REQUIRE(need(store.photos().likenesses()).size() == 1);
    CHECK(need(store.photos().likenesses())[0].photo == loose.id);
    CHECK(need(store.photos().likenesses())[0].hash == highest);

    loose.copyOf = s.photo.id;
    loose.notWith = {s.visits[0].id};
    bench.change([&](Change& c) { need(store.photos().save(c, loose)); });
    CHECK(need(store.photos().tray()).empty());
    CHECK(need(store.photos().copies()) == std::vector<PhotoNote>{loose});
    CHECK(need(store.photos().find(loose.id)) == loose);
    CHECK(need(store.photos().likenesses()).size() == 1);   // saved anew, still known
}

TEST_CASE("saving what is stored already writes nothing", "[store]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    const auto before = *bench.store->seen();
    bench.change([&](Change& c) {
        need(bench.store->people().save(c, s.observer));
        need(bench.store->sites().save(c, s.site));
        need(bench.store->trees().save(c, s.trees[0]));
        need(bench.store->samples().save(c, s.sample));
        need(bench.store->leaves().save(c, s.leave));
        need(bench.store->leaves().save(c, s.regime));
        need(bench.store->photos().save(c, s.photo));
        CHECK(need(bench.store->visits().revise(c, s.visits[1], {}, "revised")) == s.revision);
        CHECK_FALSE(need(bench.store->visits().leave(c, s.visits[0].id)));
    });
    CHECK(*bench.store->seen() == before);
}

TEST_CASE("what breaks a rule of the schema is refused by the rule's name, and nothing stays", "[store]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    Store& store = *bench.store;
    const auto before = *store.seen();
    const auto refusal = [&](auto&& work) {
        Change change = need(store.begin({}));
        const Status done = work(change);
        REQUIRE_FALSE(done);
        return done.error().code + " " + done.error().argument("constraint") + done.error().argument("noun");
    };
    CHECK(refusal([&](Change& c) { return store.people().save(c, bench.person("MH", "Another")); }) == "store.constraint person_code_unique");
    CHECK(refusal([&](Change& c) {
              Sample sample = s.sample;
              sample.id = bench.ids.make();
              return store.samples().save(c, sample);
          }) == "store.constraint sample_number_unique");
    CHECK(refusal([&](Change& c) {
              Sample sample = s.sample;
              sample.number = "-";
              return store.samples().save(c, sample);
          }) == "store.constraint sample_number_given");
    CHECK(refusal([&](Change& c) { return store.trees().save(c, bench.tree("T-9", bench.ids.make())); }) == "store.reference site");
    CHECK(refusal([&](Change& c) { return store.trees().save(c, bench.tree("T-9", {}, 91)); }) == "store.constraint tree_latitude_range");
    CHECK(refusal([&](Change& c) {
              return store.visits().saveDraft(c, bench.visit(bench.tree("X"), s.observer, "2026-06-09"), {});
          }) == "store.reference tree");
    CHECK(refusal([&](Change& c) { return store.visits().saveDraft(c, s.visits[1], {}); }) == "visit.not-draft ");
    CHECK(refusal([&](Change& c) { return store.decisions().add(c, s.decision); }) == "store.constraint decision_uid_unique");
    CHECK(refusal([&](Change& c) {
              VisitShown shown;
              shown.worth = 'Z';
              return store.visits().setShown(c, std::array{VisitJudged{s.visits[0].id, shown}});
          }) == "store.constraint visit_worth_known");
    CHECK(refusal([&](Change& c) {
              PhotoNote photo = s.photo;
              photo.sha256 = "../etc";
              return store.photos().save(c, photo);
          }) == "store.constraint photo_sha256_form");
    CHECK(*store.seen() == before);
    CHECK(need(store.journal().prove()).whole);
}

TEST_CASE("what JSON cannot hold is refused before it is kept", "[store]")
{
    Bench bench;
    bench.create();
    Change change = need(bench.store->begin({}));
    Site site = bench.site("bad \xFF bytes");
    CHECK(bench.store->sites().save(change, site).error().code == "record.json");
    Tree tree = bench.tree("T-1");
    tree.girthCentimetres = std::numeric_limits<double>::infinity();
    CHECK(bench.store->trees().save(change, tree).error().code == "record.json");
}

TEST_CASE("a change that is not committed leaves nothing", "[store]")
{
    Bench bench;
    bench.create();
    {
        Change change = need(bench.store->begin({}));
        need(bench.store->people().save(change, bench.person("MH", "Marl Hollin")));
        CHECK(bench.store->begin({}).error().code == "store.change-open");
    }
    CHECK(need(bench.store->people().all()).empty());
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("AB", "After That"))); });
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("a changed noun has a revision on the one before", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    Tree tree = s.trees[0];
    tree.girthCentimetres = 120;
    const Uid author = s.observer.id;
    Change change = need(bench.store->begin(author));
    need(bench.store->trees().save(change, tree));
    need(change.commit());
    const auto revisions = need(bench.store->revisions().ofEntity(tree.id));
    REQUIRE(revisions.size() == 2);
    CHECK(revisions[0].parents.empty());
    CHECK(revisions[1].parents == std::vector<Uid>{revisions[0].id});
    CHECK(revisions[1].author == author);
    CHECK(revisions[1].at == bench.clock.now());
    CHECK(revisions[1].digest == sha256(revisions[1].content));
    CHECK(need(bench.store->revisions().heads(tree.id)) == std::vector<Uid>{revisions[1].id});
    CHECK(need(bench.store->revisions().find(revisions[0].id))->content == toJson(s.trees[0]));
}

TEST_CASE("trees come in natural order, by site and by last visit", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    const Site early = bench.site("Alder Bank");
    const Tree other = bench.tree("T-3", early.id);
    bench.change([&](Change& c) {
        need(bench.store->sites().save(c, early));
        need(bench.store->trees().save(c, other));
        need(bench.store->visits().saveDraft(c, bench.visit(other, s.observer, "2026-07-01"), {}));
    });
    const auto labels = [&](TreeFilter filter, std::int64_t from, int count) {
        std::string all;
        for (const TreeRow& row : need(bench.store->trees().window(filter, from, count)))
            all += (all.empty() ? "" : " ") + row.tree.label;
        return all;
    };
    CHECK(labels({}, 0, 10) == "Lone oak T-1 T-2 T-3 T-10");
    CHECK(labels({.descending = true}, 0, 2) == "T-10 T-3");
    CHECK(labels({}, 3, 10) == "T-3 T-10");
    CHECK(labels({.sort = TreeSort::site}, 0, 10) == "T-3 T-1 T-2 T-10 Lone oak");
    CHECK(labels({.sort = TreeSort::site}, 3, 10) == "T-10 Lone oak");
    CHECK(labels({.sort = TreeSort::site}, 4, 10) == "Lone oak");
    CHECK(labels({.sort = TreeSort::site}, 5, 10) == "");
    CHECK(labels({.sort = TreeSort::lastVisit, .descending = true}, 0, 1) == "T-3");
    CHECK(labels({.site = s.site.id}, 0, 10) == "T-1 T-2 T-10");
    CHECK(labels({.words = "millbrook t 1"}, 0, 10) == "T-1 T-10");
    CHECK(labels({.words = "alder"}, 0, 10) == "T-3");
    CHECK(labels({.words = "alder lone"}, 0, 10) == "");
    CHECK(need(bench.store->trees().count({.words = "copse"})) == 3);
    CHECK(need(bench.store->trees().count({})) == 5);
    const auto begins = need(bench.store->trees().labelBegins("t-1", {}, 10));
    REQUIRE(begins.size() == 2);
    CHECK(begins[0].tree.label == "T-1");
    CHECK(begins[1].tree.label == "T-10");
    CHECK(begins[1].siteName == "Millbrook Copse");
    CHECK(need(bench.store->trees().labelled(s.site.id, "T-2")).size() == 1);
    CHECK(need(bench.store->trees().labelled({}, "T-2")).empty());
    CHECK(need(bench.store->trees().labelledAnywhere("T-2")).size() == 1);
    const auto near = need(bench.store->trees().near(52.011, -2, 1'100, 5));
    REQUIRE(near.size() == 2);
    CHECK(near[0].id == s.trees[1].id);
    // A hundredth of a degree of latitude at 52 degrees is 1 112.6 m (WGS84: a degree is 111 258 m there), from memory.
    CHECK(near[0].metres == Approx(111.26).margin(0.1));
    CHECK(need(bench.store->trees().inBox(-2.1, 51.9, -1.9, 52.005, 10)).size() == 3);
}

TEST_CASE("a tree counts its visits and knows its positives", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    TreeRow row = *need(bench.store->trees().row(s.trees[1].id));
    CHECK(row.visits == 1);
    CHECK(row.positiveAccepted);
    CHECK_FALSE(row.positiveWaiting);
    CHECK(row.lastVisit == s.visits[1].date);
    VisitShown positive;
    positive.positive = true;
    Visit moved = s.visits[0];
    moved.tree = s.trees[2].id;
    bench.change([&](Change& c) {
        need(bench.store->visits().saveDraft(c, moved, positive));
        need(bench.store->trees().setHost(c, s.trees[2].id, HostAnswer::notHost));
    });
    CHECK(need(bench.store->trees().row(s.trees[0].id))->visits == 0);
    CHECK_FALSE(need(bench.store->trees().row(s.trees[0].id))->lastVisit);
    row = *need(bench.store->trees().row(s.trees[2].id));
    CHECK(row.visits == 2);
    CHECK(row.positiveWaiting);
    CHECK(row.host == HostAnswer::notHost);
    bench.change([&](Change& c) {
        VisitStanding struck;
        struck.struck = true;
        need(bench.store->visits().setStanding(c, moved.id, struck, "struck", "typed twice"));
    });
    CHECK(need(bench.store->trees().row(s.trees[2].id))->visits == 1);
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("finds are nearest, in a box, before a day and apart from the visit that asks", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    auto decisions = bench.store->decisions();
    const auto find = need(decisions.nearestFind(52.02, -2, 50'000, {}));
    REQUIRE(find);
    CHECK(find->visit == s.visits[1].id);
    CHECK(find->treeLabel == "T-2");
    CHECK(find->metres == Approx(1112.6).margin(0.5));
    CHECK_FALSE(need(decisions.nearestFind(52.02, -2, 1'000, {})));
    CHECK_FALSE(need(decisions.nearestFind(52.02, -2, 50'000, s.visits[1].id)));
    CHECK_FALSE(need(decisions.nearestFind(52.02, -2, 50'000, {}, s.visits[1].date)));
    CHECK(need(decisions.findsInBox(-2.1, 52, -1.9, 52.1, 10)).size() == 1);
    CHECK(need(decisions.countFinds()) == 1);
    bench.change([&](Change& c) { need(decisions.setFind(c, s.visits[1].id, {})); });
    CHECK(need(decisions.countFinds()) == 0);
}

TEST_CASE("custody lines are numbered in their sample and bags elsewhere are known", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    Sample second = s.sample;
    second.id = bench.ids.make();
    second.number = "26-TV-0200-K";
    bench.change([&](Change& c) {
        need(bench.store->samples().save(c, second));
        for (int i = 1; i <= 3; ++i) {
            CustodyLine line;
            line.id = bench.ids.make();
            line.sample = second.id;
            line.seal = "S" + std::to_string(i);
            line.written = c.at();
            CHECK(need(bench.store->samples().addLine(c, line)).number == i);
        }
    });
    CHECK(need(bench.store->samples().sealsElsewhere(s.sample.id)) == std::vector<std::string>{"S1", "S2", "S3"});
    CHECK(need(bench.store->samples().bagsElsewhere(second.id)) == std::vector<std::string>{"B1"});
    CHECK(need(bench.store->samples().highestRunning(2026, "TV")) == 200);
    CHECK(need(bench.store->samples().highestRunning(26, "ZZ")) == 0);
}

TEST_CASE("settings are kept and each change is in the journal", "[store]")
{
    Bench bench;
    bench.create();
    CHECK_FALSE(need(bench.store->settings().get("leafing.2026")));
    const auto set = [&](const std::string& value) {
        bench.change([&](Change& c) { need(bench.store->settings().set(c, "leafing.2026", value)); });
    };
    set("2026-04-20");
    const auto number = bench.store->seen()->number;
    set("2026-04-20");
    CHECK(bench.store->seen()->number == number);
    set("2026-04-21");
    CHECK(bench.store->seen()->number == number + 1);
    bench.reopen();
    CHECK(need(bench.store->settings().all()) == std::map<std::string, std::string>{{"leafing.2026", "2026-04-21"}});
}

TEST_CASE("undo survives a restart, belongs to the device and forgets what was redone over", "[store]")
{
    Bench bench;
    bench.create();
    const Uid entity = bench.ids.make();
    const auto push = [&](const std::string& what) {
        bench.change([&](Change& c) { need(bench.store->undoLog().push(c, what, {{"visit", entity, "{}", what}})); });
    };
    push("first");
    push("second");
    bench.reopen();
    auto undo = need(bench.store->undoLog().nextUndo());
    REQUIRE(undo);
    CHECK(undo->what == "second");
    CHECK(undo->parts.at(0).after == "second");
    bench.change([&](Change& c) { need(bench.store->undoLog().markUndone(c, undo->id)); });
    CHECK(need(bench.store->undoLog().nextUndo())->what == "first");
    CHECK(need(bench.store->undoLog().nextRedo())->what == "second");
    bench.change([&](Change& c) { need(bench.store->undoLog().markRedone(c, undo->id)); });
    CHECK_FALSE(need(bench.store->undoLog().nextRedo()));
    bench.change([&](Change& c) { need(bench.store->undoLog().markUndone(c, undo->id)); });
    push("third");
    CHECK_FALSE(need(bench.store->undoLog().nextRedo()));
    CHECK(need(bench.store->undoLog().nextUndo())->what == "third");
    for (int i = 0; i < 610; ++i)
        push("more");
    // 500 are kept; older ones go some at a time
    CHECK(bench.store->core().db.number("SELECT count(*) FROM undo_step") >= 500);
    CHECK(bench.store->core().db.number("SELECT count(*) FROM undo_step") < 550);
    const Uid mine = bench.device;
    bench.device = bench.ids.make();
    bench.reopen();
    CHECK_FALSE(need(bench.store->undoLog().nextUndo()));
    bench.device = mine;
    bench.reopen();
    bench.change([&](Change& c) { need(bench.store->undoLog().forget(c, entity)); });
    CHECK_FALSE(need(bench.store->undoLog().nextUndo()));
}

} // namespace cupule
