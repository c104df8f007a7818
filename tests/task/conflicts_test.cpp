#include "core/task/conflicts.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/store/field_path.h"
#include "core/store/journal.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/store_core.h"
#include "core/task/review.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// Somebody's version on an older revision, as it stands once another laptop's records came in.
Uid versionOn(Session& session, const std::string& noun, const Uid& entity, const std::string& content, const Uid& parent)
{
    auto change = session.begin().value();
    const Uid revision = change.core().addRevision({"revised", noun, entity, content, {parent}}).revision;
    done(session.commit(change));
    return revision;
}

/// A handed-in visit of Mary's that she and John changed without knowing of each other.
struct Apart {
    Vale vale;
    std::unique_ptr<Session> mary = vale.as("MH"), john = vale.as("JB"), v1 = vale.as("V1");
    Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withNothing);
    Uid common = visitPage(*mary, visit.id).value().headRevision;
    Uid left, right;

    Apart()
    {
        Visit hers = visit;
        hers.note = "two big galls low on the north side";
        hers.effort.minutes = 20;
        REQUIRE(changeVisit(*mary, visit, hers, "hers"));
        left = visitPage(*mary, visit.id).value().headRevision;
        Visit his = visit;
        his.note = "two big galls low on the south side";
        his.effort.crownPercent = 40;
        vale.clock.set(at(6));   // his clock is behind
        right = versionOn(*john, "visit", visit.id, toJson(his), common);
        vale.clock.set(at(13));
    }
};

} // namespace

TEST_CASE("versions that differ in one field are one open conflict; other fields are joined", "[task][conflicts]")
{
    Apart apart;
    const auto open = openConflicts(*apart.v1).value();
    REQUIRE(open.size() == 1);
    CHECK(open[0].noun == "visit");
    CHECK(open[0].name == "W03");
    CHECK(open[0].date == apart.visit.date);
    CHECK(open[0].fields == 1);
    CHECK(conflictingFields(*apart.v1, apart.visit.id).value() == 1);
    CHECK(reviewPage(*apart.v1, apart.visit.id).value().conflictingFields == 1);

    const ConflictPage page = conflictPage(*apart.v1, apart.visit.id).value();
    REQUIRE(page.fields.size() == 1);
    CHECK(page.fields[0].path == "note");
    CHECK(page.fields[0].before.empty());
    CHECK(page.agreeing > 15);
    REQUIRE(page.versions.size() == 2);
    const auto his = std::find_if(page.versions.begin(), page.versions.end(), [](const ConflictVersion& v) { return v.code == "JB"; });
    REQUIRE(his != page.versions.end());
    CHECK(his->name == "John Brook");
    CHECK(his->clockDoubt == "before-parent");
    CHECK_FALSE(his->thisDevice);
    CHECK(his->device == apart.john->profile().device);
    const auto side = static_cast<std::size_t>(his - page.versions.begin());
    CHECK(page.fields[0].values[side] == "\"two big galls low on the south side\"");
    REQUIRE(page.common);
    CHECK(page.common->revision == apart.common);
    CHECK(page.common->code == "MH");
}

TEST_CASE("settling writes one revision with both as parents, and keeps what was joined", "[task][conflicts]")
{
    Apart apart;
    const ConflictPage page = conflictPage(*apart.v1, apart.visit.id).value();
    CHECK(faultOf(settleConflict(*apart.mary, apart.visit.id, page.heads, {{"note", "\"x\""}})) == "role.needed");
    CHECK(faultOf(settleConflict(*apart.v1, apart.visit.id, page.heads, {})) == "conflict.field-left");
    CHECK(faultOf(settleConflict(*apart.v1, apart.visit.id, {apart.left}, {{"note", "\"x\""}})) == "conflict.changed-meanwhile");
    CHECK(faultOf(settleConflict(*apart.v1, apart.visit.id, page.heads, {{"note", "no JSON"}})) == "record.json");
    CHECK(openConflicts(*apart.v1).value().size() == 1);

    const std::string chosen = GENERATE(std::string("\"two big galls low on the north side\""), std::string("\"two big galls low on the south side\""),
                                        std::string("\"a third: both sides\""), std::string());
    REQUIRE(settleConflict(*apart.v1, apart.visit.id, page.heads, {{"note", chosen}}));
    CHECK(openConflicts(*apart.v1).value().empty());
    CHECK(faultOf(conflictPage(*apart.v1, apart.visit.id)) == "conflict.none");
    const VisitPage after = visitPage(*apart.v1, apart.visit.id).value();
    CHECK(after.visit.note == (chosen.empty() ? "" : chosen.substr(1, chosen.size() - 2)));
    CHECK(after.visit.effort.minutes == 20);        // hers
    CHECK(after.visit.effort.crownPercent == 40);   // his
    CHECK(after.state == RecordState::submitted);
    auto parents = apart.v1->store().revisions().find(after.headRevision).value()->parents;
    auto both = std::vector{apart.left, apart.right};
    std::sort(parents.begin(), parents.end());
    std::sort(both.begin(), both.end());
    CHECK(parents == both);
    CHECK(apart.v1->store().journal().prove().value().whole);
    CHECK(decide(*apart.v1, decision(*apart.v1, apart.visit.id, Outcome::accept)));
}

TEST_CASE("a tree on which two laptops disagree is settled in the same way", "[task][conflicts]")
{
    Vale vale;
    const auto mary = vale.as("MH"), v1 = vale.as("V1");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094");
    const Uid common = mary->store().revisions().heads(tree.id).value().front();
    Tree hers = tree, his = tree;
    hers.girthCentimetres = 210;
    his.girthCentimetres = 201;
    REQUIRE(changeTree(*mary, hers, "hers"));
    versionOn(*vale.as("JB"), "tree", tree.id, toJson(his), common);
    const ConflictPage page = conflictPage(*v1, tree.id).value();
    REQUIRE(page.fields.size() == 1);
    CHECK(page.fields[0].path == "girthCentimetres");
    const std::string kept = toJson(hers);
    REQUIRE(settleConflict(*v1, tree.id, page.heads, {{"girthCentimetres", fieldOf(kept, "girthCentimetres")}}));
    CHECK(v1->store().trees().find(tree.id).value()->girthCentimetres == 210.0);
    CHECK(v1->store().revisions().heads(tree.id).value().size() == 1); // although nothing of its content changed
}

TEST_CASE("without versions apart there is no conflict, and in the hidden mode no value is shown", "[task][conflicts]")
{
    Apart apart;
    const Visit other = handedIn(*apart.mary, treeAt(*apart.mary, "W05", "SO 614 094"), withNothing);
    CHECK(conflictingFields(*apart.v1, other.id).value() == 0);
    CHECK(faultOf(conflictPage(*apart.v1, other.id)) == "conflict.none");
    apart.v1->setHidden(true);
    const ConflictPage page = conflictPage(*apart.v1, apart.visit.id).value();
    REQUIRE(page.fields.size() == 1);
    for (const std::string& value : page.fields[0].values)
        CHECK(value.empty());
    CHECK(page.versions[0].name.empty());
    CHECK(faultOf(settleConflict(*apart.v1, apart.visit.id, page.heads, {{"note", ""}})) == "session.hidden");
}

TEST_CASE("one field of a content is read and set by its path", "[task][conflicts]")
{
    const std::string content = R"({"effort":{"minutes":12},"note":"a","observations":[{"answer":"seen","sign":"S02"},{"answer":"notSeen","sign":"S01"}]})";
    CHECK(fieldOf(content, "note") == "\"a\"");
    CHECK(fieldOf(content, "effort/minutes") == "12");
    CHECK(fieldOf(content, "observations/S01") == R"({"answer":"notSeen","sign":"S01"})");
    CHECK(fieldOf(content, "observations/S09").empty());
    CHECK(fieldPaths(content) == std::vector<std::string>{"effort/minutes", "note", "observations/S02", "observations/S01"});
    CHECK(withField(content, "note", "").value() == R"({"effort":{"minutes":12},"observations":[{"answer":"seen","sign":"S02"},{"answer":"notSeen","sign":"S01"}]})");
    CHECK(fieldOf(withField(content, "effort/minutes", "20").value(), "effort/minutes") == "20");
    CHECK(fieldOf(withField(content, "effort/minutes", "").value(), "effort").empty());
    CHECK(fieldOf(withField(content, "observations/S09", R"({"answer":"seen","sign":"S09"})").value(), "observations/S09") ==
          R"({"answer":"seen","sign":"S09"})");
    CHECK(fieldPaths(withField(content, "observations/S02", "").value()) == std::vector<std::string>{"effort/minutes", "note", "observations/S01"});
    CHECK(faultOf(withField(content, "note", "{")) == "record.json");
    CHECK(faultOf(withField("[]", "note", "1")) == "record.json");
    CHECK(faultOf(withField(content, "note/more", "1")) == "record.json");
}
