#include "core/record/json.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/visits.h"
#include "core/task/day.h"
#include "core/task/photos.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

Visit stored(Session& session, const Uid& id)
{
    return session.store().visits().find(id).value().value();
}

void note(Session& session, const Uid& id, const std::string& text)
{
    const Visit before = stored(session, id);
    Visit changed = before;
    changed.note = text;
    done(changeVisit(session, before, changed, "note " + text));
}

} // namespace

TEST_CASE("undo and redo go step by step, also after the program was closed", "[task][undo]")
{
    Vale vale;
    Uid id;
    {
        const auto mary = vale.as("MH");
        id = newVisit(*mary, Uid{}, Uid{}).value().id;
        note(*mary, id, "one");
        note(*mary, id, "two");
    }
    const auto mary = vale.as("MH");
    CHECK(undoState(*mary).undo == "note two");
    CHECK(undoState(*mary).redo.empty());
    CHECK(undo(*mary).value() == id);
    CHECK(stored(*mary, id).note == "one");
    REQUIRE(undo(*mary));
    CHECK(stored(*mary, id).note.empty());
    CHECK(undoState(*mary).redo == "note one");
    REQUIRE(redo(*mary));
    REQUIRE(redo(*mary));
    CHECK(stored(*mary, id).note == "two");
    CHECK(faultOf(redo(*mary)) == "redo.nothing");
    REQUIRE(undo(*mary));
    note(*mary, id, "three");
    CHECK(undoState(*mary).redo.empty());
}

TEST_CASE("beginning and striking out a draft can be undone", "[task][undo]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = newVisit(*mary, Uid{}, Uid{}).value();
    const auto there = [&] { return visitsOfDay(*mary, visit.date, Uid{}).value().size(); };
    REQUIRE(undo(*mary));
    CHECK(there() == 0);
    REQUIRE(redo(*mary));
    CHECK(there() == 1);
    REQUIRE(strikeOut(*mary, visit.id, ""));
    CHECK(there() == 0);
    REQUIRE(undo(*mary));
    CHECK(there() == 1);
    CHECK(stored(*mary, visit.id) == visit);
}

TEST_CASE("undoing a change of a handed-in visit writes a compensating revision", "[task][undo]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withNothing);
    note(*mary, visit.id, "a slip");
    REQUIRE(undo(*mary));
    const auto revisions = mary->store().revisions().ofEntity(visit.id).value();
    REQUIRE(revisions.size() == 3);
    CHECK(revisions[2].parents == std::vector<Uid>{revisions[1].id});
    CHECK(revisions[2].content == revisions[0].content);
    CHECK(stored(*mary, visit.id) == visit);
}

TEST_CASE("what was done before handing in is not undone after it", "[task][undo]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withNothing);
    CHECK(undoState(*mary).undo.empty());
    CHECK(faultOf(undo(*mary)) == "undo.nothing");
    CHECK(visitPage(*mary, visit.id).value().state == RecordState::submitted);
}

TEST_CASE("what somebody else changed since is left alone", "[task][undo]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = newVisit(*mary, Uid{}, Uid{}).value();
    note(*mary, visit.id, "mary's");
    note(*vale.as("OF"), visit.id, "the office's");
    CHECK(faultOf(undo(*mary)) == "undo.changed-meanwhile");
    CHECK(stored(*mary, visit.id).note == "the office's");
}

TEST_CASE("changes of trees, sites, leaves and photos can be undone", "[task][undo]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Tree before = tree;
    tree.girthCentimetres = 210;
    REQUIRE(changeTree(*mary, tree, "girth"));
    REQUIRE(undo(*mary));
    CHECK(mary->store().trees().find(tree.id).value().value() == before);

    Site site = allSites(*mary).value().front();
    site.note = "gate on the lane";
    REQUIRE(changeSite(*mary, site, "note"));
    REQUIRE(undo(*mary));
    CHECK(allSites(*mary).value().front().note.empty());

    Leave leave;
    leave.scopes = {LeaveScope::enter};
    leave.from = day(2026, 1, 1);
    leave = addLeave(*mary, leave).value();
    leave.withdrawn = day(2026, 6, 1);
    REQUIRE(addLeave(*mary, leave));
    REQUIRE(undo(*mary));
    CHECK_FALSE(allLeaves(*mary).value().front().withdrawn.has_value());

    const Visit visit = newVisit(*mary, Uid{}, tree.id).value();
    PhotoNote photo = photoOf(*mary, visit, {});
    photo.caption = "the crown from the lane";
    photo.evidenceFor = plainEvidence();
    REQUIRE(changePhoto(*mary, photo, "caption"));
    REQUIRE(undo(*mary));
    CHECK(visitPage(*mary, visit.id).value().photos.front().caption.empty());
}
