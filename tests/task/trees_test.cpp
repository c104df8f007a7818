// A tree's page, what becomes of trees, and two entries of one tree.

#include <algorithm>
#include <numeric>
#include <set>

#include "core/record/json.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/visits.h"
#include "core/task/keep.h"
#include "core/task/trees_merge.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// Everything that people see of these trees and of all their visits; not how it came about.
std::string stateOf(Session& session, const std::vector<Uid>& trees)
{
    std::string state;
    for (const Uid& id : trees) {
        state += toJson(session.store().trees().find(id).value().value()) + "\n";
        const TreeRow row = session.store().trees().row(id).value().value();
        state += row.tree.id.text() + std::to_string(static_cast<int>(row.host)) + std::to_string(row.visits)
                 + (row.positiveAccepted ? "a" : "") + (row.positiveWaiting ? "w" : "")
                 + (row.lastVisit ? row.lastVisit->text() : "") + "\n";
    }
    done(session.store().visits().each([&](const VisitRow& row, const Visit& visit) {
        state += toJson(visit) + row.treeLabel + row.shown.summary + row.shown.worth + std::to_string(row.shown.stops)
                 + std::to_string(row.shown.asks) + row.shown.queueCode + std::to_string(static_cast<int>(row.standing.state)) + "\n";
        return true;
    }));
    return state;
}

/// Labels of the entries that are one tree, for every tree.
std::set<std::string> members(Session& session, const std::vector<Uid>& trees)
{
    std::set<std::string> all;
    for (const Uid& id : trees) {
        std::set<std::string> together;
        const auto entries = session.store().trees().entries(id).value();
        for (const Tree& entry : entries)
            together.insert(entry.label);
        std::string labels;
        for (const std::string& label : together)
            labels += label + " ";
        all.insert(labels);
    }
    return all;
}

bool sound(Session& session)
{
    const Health health = checkHealth(session).value();
    for (const HealthItem& item : health.items)
        if (item.code != "media-missing")
            return false;
    return proveJournal(session).value().whole;
}

Visit notHost(Session&, Visit visit)
{
    CharacterSeen opposite;
    opposite.character = "K01";
    opposite.state = "opposite";
    visit.characters.push_back(opposite);
    visit.effort.minutes = 3;
    return visit;
}

/// Six trees at two sites with visits of every kind.
std::vector<Uid> wood(Session& session)
{
    std::vector<Uid> trees;
    for (int i = 0; i < 6; ++i) {
        const Tree tree = treeAt(session, "W0" + std::to_string(i), "SO 612 09" + std::to_string(i), i < 4 ? "Weir Wood" : "");
        trees.push_back(tree.id);
        if (i % 3 == 0)
            handedIn(session, tree, withGall);
        if (i % 3 == 1)
            visitTo(session, tree, withNothing);
        if (i == 2)
            visitTo(session, tree, notHost);
    }
    return trees;
}

} // namespace

TEST_CASE("merging says beforehand what it does, and keeps decided visits as they were decided", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree kept = treeAt(*mary, "W03", "SO 6120 0940", "Weir Wood");
    const Tree other = treeAt(*mary, "W03a", "SO 6128 0940", "Weir Wood");
    const Visit nothing = visitTo(*mary, kept, withNothing);
    const Visit gall = handedIn(*mary, other, withGall);
    const auto verifier = vale.as("VE");
    REQUIRE(decide(*verifier, decision(*verifier, gall.id, Outcome::giveBack, {"tree-not-shown"})));
    const auto revisions = mary->store().revisions().ofEntity(gall.id).value().size();

    const MergeMeaning meaning = mergeMeaning(*mary, kept.id, other.id).value();
    CHECK(meaning.kept.label == "W03");
    REQUIRE(meaning.moving.size() == 1);
    CHECK(meaning.moving[0].id == gall.id);
    CHECK(meaning.photos == 1);
    CHECK(meaning.samples == 0);
    CHECK(meaning.twice == std::vector<CivilDate>{gall.date});
    REQUIRE(meaning.metres);
    CHECK(*meaning.metres == Approx(80).margin(1));
    CHECK_FALSE(meaning.otherSite);
    CHECK(meaning.keptHost == HostAnswer::host);
    CHECK(meaning.host.answer == HostAnswer::host);
    CHECK(undoState(*mary).undo != "merge");
    CHECK(treePage(*mary, other.id).value().tree.id == other.id);

    REQUIRE(mergeTrees(*mary, kept.id, other.id, "merge"));
    CHECK(mary->store().revisions().ofEntity(gall.id).value().size() == revisions);
    const VisitPage page = visitPage(*mary, gall.id).value();
    CHECK(page.state == RecordState::returned);
    CHECK(page.tree->label == "W03");
    CHECK(page.visit.tree == other.id);
    CHECK(page.history.size() == 1);
    CHECK(page.findings.end() != std::find_if(page.findings.begin(), page.findings.end(), [](const Finding& finding) {
        return finding.code == "visit.twice" || finding.code.find("same") != std::string::npos;
    }));
    const TreePage tree = treePage(*mary, other.id).value();
    CHECK(tree.tree.id == kept.id);
    REQUIRE(tree.merged.size() == 1);
    CHECK(tree.visits.size() == 2);
    CHECK(tree.photos.size() == 1);
    CHECK(sound(*mary));
    CHECK(faultOf(mergeTrees(*mary, other.id, kept.id, "merge")) == "tree.merge-same");
}

TEST_CASE("a merge that turns the host says which visits it touches", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree chestnut = treeAt(*mary, "W03", "SO 612 094");
    const Tree beech = treeAt(*mary, "W04", "SO 612 095");
    const Visit gall = visitTo(*mary, chestnut, withGall);
    visitTo(*mary, beech, notHost);
    const MergeMeaning meaning = mergeMeaning(*mary, chestnut.id, beech.id).value();
    CHECK(meaning.keptHost == HostAnswer::host);
    CHECK(meaning.otherHost == HostAnswer::notHost);
    CHECK(meaning.host.answer != HostAnswer::host);
    const auto touched = std::find_if(meaning.changed.begin(), meaning.changed.end(),
                                      [&](const auto& changed) { return changed.before.id == gall.id; });
    REQUIRE(touched != meaning.changed.end());
    CHECK(touched->before.summary == "gall");
}

TEST_CASE("a merge is undone after a restart, and done again", "[task][trees][undo]")
{
    Vale vale;
    std::vector<Uid> trees;
    std::string before, merged;
    {
        const auto mary = vale.as("MH");
        trees = wood(*mary);
        before = stateOf(*mary, trees);
        REQUIRE(mergeTrees(*mary, trees[0], trees[2], "merging W02"));
        merged = stateOf(*mary, trees);
        CHECK(merged != before);
    }
    const auto mary = vale.as("MH");
    CHECK(undoState(*mary).undo == "merging W02");
    REQUIRE(undo(*mary));
    CHECK(stateOf(*mary, trees) == before);
    REQUIRE(redo(*mary));
    CHECK(stateOf(*mary, trees) == merged);
    REQUIRE(undo(*mary));
    CHECK(sound(*mary));
}

TEST_CASE("merging and taking it back leaves everything as it was; the order of merging makes no other trees", "[task][trees]")
{
    SeededRandom chance(static_cast<std::uint64_t>(GENERATE(1, 2, 3, 4, 5, 6, 7, 8)));
    Vale vale;
    const auto mary = vale.as("MH");
    const auto trees = wood(*mary);
    const std::string before = stateOf(*mary, trees);
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    for (int i = 0; i < 3; ++i) {
        const auto a = chance.below(trees.size());
        pairs.emplace_back(a, (a + 1 + chance.below(trees.size() - 1)) % trees.size());
    }
    const auto mergeAll = [&](bool turned) {
        int merges = 0;
        for (const auto& [a, b] : pairs) {
            const auto done = mergeTrees(*mary, trees[turned ? b : a], trees[turned ? a : b], "merge");
            CHECK((done || done.error().code == "tree.merge-same"));
            merges += done ? 1 : 0;
        }
        return merges;
    };

    int merges = mergeAll(false);
    const auto together = members(*mary, trees);
    const std::string merged = stateOf(*mary, trees);
    CHECK(sound(*mary));
    for (int i = 0; i < merges; ++i)
        REQUIRE(undo(*mary));
    CHECK(stateOf(*mary, trees) == before);
    for (int i = 0; i < merges; ++i)
        REQUIRE(redo(*mary));
    CHECK(stateOf(*mary, trees) == merged);
    // split, in any order
    std::vector<Uid> order = trees;
    for (std::size_t i = order.size(); i > 1; --i)
        std::swap(order[i - 1], order[chance.below(i)]);
    for (const Uid& entry : order)
        if (!mary->store().trees().find(entry).value()->mergedInto.isNull())
            REQUIRE(splitTree(*mary, entry, "split"));
    CHECK(stateOf(*mary, trees) == before);
    // the same pairs the other way round and last first
    std::reverse(pairs.begin(), pairs.end());
    mergeAll(true);
    CHECK(members(*mary, trees) == together);
    CHECK(sound(*mary));
}

TEST_CASE("only a merged entry is split off; nobody without a role merges", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094");
    const Tree other = treeAt(*mary, "W04", "SO 612 095");
    CHECK(faultOf(splitTree(*mary, tree.id, "split")) == "tree.not-merged");
    CHECK(faultOf(mergeTrees(*mary, tree.id, mary->ids().make(), "merge")) == "tree.unknown");
    const auto handler = vale.open(vale.profile("SH", "Sam Hale", {Role::sampleHandler}));
    CHECK(faultOf(mergeTrees(*handler, tree.id, other.id, "merge")) == "role.needed");
    CHECK(faultOf(mergeMeaning(*handler, tree.id, other.id)) == "role.needed");
    CHECK(faultOf(splitTree(*handler, tree.id, "split")) == "role.needed");
    const auto verifier = vale.as("VE");
    CHECK(mergeTrees(*verifier, tree.id, other.id, "merge"));
}

TEST_CASE("a new visit to a merged entry is one to the kept tree", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree kept = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Tree other = treeAt(*mary, "W04", "SO 612 095", "Weir Wood");
    REQUIRE(mergeTrees(*mary, kept.id, other.id, "merge"));
    CHECK(newVisit(*mary, Uid{}, other.id).value().tree == kept.id);
    const auto hits = findTrees(*mary, "W04", Uid{}, placeAt(*mary, "SO 612 095"), 10).value();
    REQUIRE(hits.size() == 1);
    CHECK(hits[0].tree.id == kept.id);
    CHECK(faultOf(newTree(*mary, "W04", kept.site, {})) == "tree.label-taken");
}

TEST_CASE("where one entry was two trees, some of its visits go to a new one", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit stays = visitTo(*mary, tree, withNothing);
    const Visit draft = visitTo(*mary, tree, [](Session&, Visit visit) {
        visit.note = "the one by the ditch";
        return visit;
    });
    const Visit sent = handedIn(*mary, tree, withGall);
    const std::string before = stateOf(*mary, {tree.id});
    CHECK(faultOf(splitVisits(*mary, tree.id, {}, "W03b", "split")) == "tree.split-none");
    CHECK(faultOf(splitVisits(*mary, tree.id, {stays.id, draft.id, sent.id}, "W03b", "split")) == "tree.split-none");
    CHECK(faultOf(splitVisits(*mary, tree.id, {draft.id}, "W03", "split")) == "tree.label-taken");
    CHECK(faultOf(splitVisits(*mary, tree.id, {draft.id}, " ", "split")) == "tree.label");
    CHECK(faultOf(splitVisits(*vale.as("JB"), tree.id, {sent.id}, "W03b", "split")) == "visit.not-yours");
    const Tree made = splitVisits(*mary, tree.id, {draft.id, sent.id}, "W03b", "split").value();
    CHECK(made.site == tree.site);
    CHECK(treePage(*mary, tree.id).value().visits.size() == 1);
    CHECK(treePage(*mary, made.id).value().visits.size() == 2);
    CHECK(mary->store().revisions().ofEntity(sent.id).value().size() == 2);
    REQUIRE(undo(*mary));
    CHECK(stateOf(*mary, {tree.id}) == before);
    CHECK(sound(*mary));
}

TEST_CASE("felled and not found are said with a day and a person, and taken back", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094");
    CHECK(faultOf(markTree(*mary, tree.id, "blown over", day(2026, 6, 1), "fate")) == "tree.fate");
    CHECK(faultOf(markTree(*mary, tree.id, "felled", {}, "fate")) == "tree.fate-date");
    CHECK(faultOf(markTree(*mary, tree.id, "felled", day(2026, 6, 12), "fate")) == "tree.fate-date");
    REQUIRE(markTree(*mary, tree.id, "felled", day(2026, 6, 11), "fate"));
    const TreePage page = treePage(*mary, tree.id).value();
    CHECK(page.fateBy == "MH");
    REQUIRE_FALSE(page.events.empty());
    CHECK(page.events.front().kind == TreeEvent::Kind::fate);
    CHECK(page.events.front().day == day(2026, 6, 11));
    CHECK(treeLines(*mary, {.show = TreesShown::gone}, 0, 5).value().size() == 1);
    CHECK(findTrees(*mary, "W03", Uid{}, {}, 5).value().front().tree.fate == "felled");
    REQUIRE(undo(*mary));
    CHECK(mary->store().trees().find(tree.id).value().value() == tree);
    REQUIRE(redo(*mary));
    REQUIRE(markTree(*mary, tree.id, "", {}, "stands"));
    CHECK(mary->store().trees().find(tree.id).value().value() == tree);
}

TEST_CASE("the page tells which characters came from which visit, and where the tree was said to stand", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit visit = visitTo(*mary, tree, withNothing);
    visitTo(*mary, tree, notHost);
    tree.position = placeAt(*mary, "SO 61234 09456");
    REQUIRE(changeTree(*mary, tree, "position"));
    const TreePage page = treePage(*mary, tree.id).value();
    REQUIRE(page.evidence.size() == visit.characters.size() + 1);
    // alternate and opposite contradict each other, so arrangement decides and stands first
    CHECK(page.evidence[0].seen.character == "K01");
    CHECK(page.evidence[1].seen.character == "K01");
    for (const auto& from : page.evidence) {
        REQUIRE(from.visit >= 0);
        const bool opposite = from.seen.state == "opposite";
        CHECK((page.visits[static_cast<std::size_t>(from.visit)].line.id == visit.id) != opposite);
    }
    REQUIRE(page.places.size() == 2);
    CHECK_FALSE(page.places[0].inForce);
    CHECK(page.places[1].inForce);
    std::vector<TreeEvent::Kind> kinds;
    for (const auto& event : page.events)
        kinds.push_back(event.kind);
    using Kind = TreeEvent::Kind;
    CHECK(std::count(kinds.begin(), kinds.end(), Kind::visit) == 2);
    CHECK(std::count(kinds.begin(), kinds.end(), Kind::entered) == 1);
    CHECK(std::count(kinds.begin(), kinds.end(), Kind::moved) == 1);
    CHECK(faultOf(treePage(*mary, mary->ids().make())) == "tree.unknown");
}
