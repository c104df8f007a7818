#include "core/task/keep.h"

#include "core/store/media.h"

#include <filesystem>

#include "core/base/file.h"
#include "core/report/html.h"
#include "core/task/account.h"
#include "core/task/nouns.h"
#include "core/task/trees.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;
namespace fs = std::filesystem;

TEST_CASE("a journal proves whole through a day's work", "[task][keep]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const Proof proof = proveJournal(*mary).value();
    CHECK(proof.whole);
    CHECK(proof.lines > 5);
    CHECK(proof.chains >= 1);
}

TEST_CASE("a store that is shorter than remembered does not prove whole", "[task][keep]")
{
    Vale vale;
    newPerson(*vale.as("MH"), {{}, "AB", "Ann Bell", {}, {}, {}}).value();
    fs::copy_file(vale.store(), vale.folder() + "/old-copy");
    newPerson(*vale.as("MH"), {{}, "CD", "Cai Dale", {}, {}, {}}).value();
    fs::copy_file(vale.folder() + "/old-copy", vale.store(), fs::copy_options::overwrite_existing);
    const Proof proof = proveJournal(*vale.as("MH")).value();
    CHECK_FALSE(proof.whole);
    CHECK(proof.brokenWhy == "shorter-than-seen");
}

TEST_CASE("the daily backup is made once a day and opens as a store", "[task][keep]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withNothing);
    const std::string path = dailyBackUp(*mary).value();
    REQUIRE(fs::exists(path));
    CHECK(dailyBackUp(*mary).value().empty());
    const auto copy =
        Session::open(path, vale.profile("MH", "Mary Hill", {Role::volunteer}), vale.clock, vale.random, true).value();
    CHECK(countQueue(*copy).value() == 1);
}

TEST_CASE("erasing a person is for the office, needs an order, and leaves the journal whole", "[task][keep]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Person ann = newPerson(*mary, {{}, "AB", "Annabel Quillfeather", "01234 quill", {}, {}}).value();
    const std::string backup = dailyBackUp(*mary).value();
    CHECK(faultOf(erasePerson(*mary, ann.id, "letter 4")) == "role.needed");
    const auto office = vale.as("OF");
    CHECK(faultOf(erasePerson(*office, ann.id, "")) == "erase.order");
    REQUIRE(erasePerson(*office, ann.id, "letter 4"));
    CHECK(proveJournal(*office).value().whole);
    CHECK(proveJournal(*office).value().erased == 1);
    for (const auto& path : {vale.store(), backup})
        CHECK(readFile(path).value().find("Quillfeather") == std::string::npos);
}

TEST_CASE("a sound store has nothing to say for itself", "[task][keep]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = visitTo(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withNothing);
    const Health sound = checkHealth(*mary).value();
    CHECK(sound.items.empty());
    CHECK(sound.checkedRows > 0);
    const PhotoNote photo = photoOf(*mary, visit, {});
    std::filesystem::remove(mary->store().media().path(photo.sha256).value());
    const Health lacking = checkHealth(*mary).value();
    REQUIRE(lacking.items.size() == 1);
    CHECK(lacking.items.front().code == "media-missing");
}

TEST_CASE("an account counts a season as it was decided", "[task][account]")
{
    Vale vale(true);
    const auto mary = vale.as("MH");
    const Visit find = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const Visit nothing = handedIn(*mary, treeAt(*mary, "W04", "SO 613 094", "Weir Wood"), withNothing);
    visitTo(*mary, treeAt(*mary, "W05", "SO 614 094", "Weir Wood"), withNothing);
    const auto v1 = vale.as("V1"), v2 = vale.as("V2");
    decide(*v1, decision(*v1, find.id, Outcome::accept)).value();
    decide(*v1, decision(*v1, nothing.id, Outcome::accept)).value();
    report::AccountData data = gatherAccount(*mary, 2026).value();
    CHECK(data.demonstration);
    CHECK(data.visits == 3);
    CHECK(data.trees == 3);
    CHECK(data.sites == 1);
    CHECK(data.oneOfTwo == 1);
    CHECK(data.byState[RecordState::draft] == 1);
    CHECK(data.nothingByState[RecordState::accepted] == 1);
    CHECK(data.treesNothing == 1);
    REQUIRE(data.finds.size() == 1);
    CHECK(data.finds.front().oneOfTwo);
    CHECK(data.finds.front().signs == std::vector<std::string>{"S02"});
    CHECK(data.finds.front().square == "SO60");
    decide(*v2, decision(*v2, find.id, Outcome::accept)).value();
    data = gatherAccount(*mary, 2026).value();
    CHECK(data.finds.front().state == RecordState::accepted);
    CHECK(data.finds.front().verifiers == 2);
    CHECK(data.journalWhole);
    CHECK(gatherAccount(*mary, 2025).value().visits == 0);
    const std::string page = report::toHtml(report::account(data, mary->pack(), Words()));
    CHECK(page.find("Mary Hill") == std::string::npos);
    CHECK(page.find("SO 612 094") == std::string::npos);
    CHECK(page.find("invented") != std::string::npos);
}

TEST_CASE("the register shows a tree's verdict and last visit", "[task][trees]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    treeAt(*mary, "T-10", "SO 612 094", "Weir Wood");
    const Tree tree = treeAt(*mary, "T-2", "SO 613 094", "Mill Bank");
    visitTo(*mary, tree, withGall);
    const auto lines = treeLines(*mary, {}, 0, 10).value();
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].label == "T-2");
    CHECK(lines[0].host == HostAnswer::host);
    CHECK(lines[0].positiveWaiting);
    CHECK(lines[0].visits == 1);
    CHECK(lines[0].position == "SO 613 094");
    CHECK(lines[0].uncertaintyMetres == Approx(70.7).margin(0.1));
    CHECK(lines[1].host == HostAnswer::cannotTell);
    TreeQuery words;
    words.words = "mill";
    CHECK(countTrees(*mary, words).value() == 1);
    const TreePage page = treePage(*mary, tree.id).value();
    CHECK(page.visits.size() == 1);
    CHECK(page.site->name == "Mill Bank");
}

TEST_CASE("nouns are found by name, by id and by part of an id", "[task][nouns]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const auto john = vale.as("JB");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Tree other = treeAt(*mary, "W03", "SO 622 094", "Mill Bank");
    const Visit visit = visitTo(*mary, tree, withNothing);
    CHECK(findNoun(*mary, Noun::visit, "w03@2026-06-11").value() == visit.id);
    CHECK(findNoun(*mary, Noun::visit, "Weir Wood/W03@2026-06-11").value() == visit.id);
    CHECK(findNoun(*mary, Noun::visit, visit.id.text()).value() == visit.id);
    CHECK(findNoun(*mary, Noun::visit, visit.id.text().substr(24)).value() == visit.id);
    CHECK(faultOf(findNoun(*mary, Noun::visit, "W09@2026-06-11")) == "name.unknown");
    CHECK(faultOf(findNoun(*mary, Noun::visit, "W03@2026-06-12")) == "name.unknown");
    const Visit johns = newVisit(*john, Uid{}, tree.id).value();
    const auto two = findNoun(*mary, Noun::visit, "W03@2026-06-11");
    REQUIRE_FALSE(two);
    CHECK(two.error().code == "name.ambiguous");
    CHECK(two.error().argument("candidates").find("W03@2026-06-11@JB") != std::string::npos);
    CHECK(findNoun(*mary, Noun::visit, "W03@2026-06-11@JB").value() == johns.id);
    CHECK(faultOf(findNoun(*mary, Noun::tree, "W03")) == "name.ambiguous");
    CHECK(findNoun(*mary, Noun::tree, "Mill Bank/W03").value() == other.id);
    CHECK(findNoun(*mary, Noun::person, "mary hill").value() == mary->me());
    CHECK(nounNamed("people") == Noun::person);
    CHECK_FALSE(nounNamed("wolves").has_value());
}

TEST_CASE("every noun can be listed and shown", "[task][nouns]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit visit = handedIn(*mary, tree, withGall);
    Leave leave;
    leave.scopes = {LeaveScope::enter};
    leave.from = day(2026, 1, 1);
    addLeave(*mary, leave).value();
    const auto office = vale.as("OF");
    addRegime(*office, {{}, {}, day(2026, 1, 1), {}, "Office", "ask", "", "R1"}).value();
    const auto v1 = vale.as("V1");
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    openSample(*mary, [&] { Sample s; s.visit = visit.id; s.plantPart = "dry gall"; return s; }(), true).value();
    for (const Noun noun : {Noun::visit, Noun::tree, Noun::site, Noun::person, Noun::photo, Noun::sample, Noun::leave,
                            Noun::regime, Noun::decision}) {
        CAPTURE(nounName(noun));
        const auto entries = listNouns(*v1, noun, {}).value();
        REQUIRE_FALSE(entries.empty());
        CHECK(oneNoun(*v1, noun, entries.front().id).value().content == entries.front().content);
    }
    // the second verifier does not see the first one's decision in a list either
    CHECK(listNouns(*vale.as("V2"), Noun::decision, {}).value().empty());
    NounFilter drafts;
    drafts.state = RecordState::draft;
    CHECK(listNouns(*v1, Noun::visit, drafts).value().empty());
}
