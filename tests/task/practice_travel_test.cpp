// What is told of a person's detection, between stores: with consent alone, in any order, and gone with the person.

#include <algorithm>

#include "core/exchange/bundle/bundle_file.h"
#include "core/store/people.h"
#include "core/store/practice.h"
#include "core/task/keep.h"
#include "core/task/practice.h"
#include "core/task/practice_results.h"
#include "core/task/skill.h"
#include "tests/support/catch.h"
#include "tests/support/right_answers.h"
#include "tests/support/shared_data.h"
#include "tests/task/devices.h"

using namespace cupule;
using namespace cupule::test;

namespace {

struct Stores {
    std::string folder = temporaryFolder();
    Device ada{folder + "/ada", personOf("AN", "Ada North", 1), {Role::volunteer}, 1};
    Device cleo{folder + "/cleo", personOf("CW", "Cleo West", 3), {Role::verifier}, 3};
    Device office{folder + "/office", personOf("OF", "Olwen Fry", 4), {Role::office}, 4};
    std::vector<Device*> all{&ada, &cleo, &office};

    Stores()
    {
        for (Device* a : all)
            for (Device* b : all)
                if (a != b)
                    a->trust(*b);
    }
};

void practise(Session& session, std::int64_t seed, int cases = 2)
{
    PracticeWish wish;
    wish.month = 6;
    wish.seed = seed;
    wish.kinds = {AskedKind::sign};
    auto round = beginPractice(session, wish).value();
    for (int i = 0; i < cases; ++i) {
        const auto next = nextCase(session, round).value();
        std::vector<AnsweredItem> given;
        for (const AskedItem& item : next.asked)
            given.push_back(answerTo(item, item.right.front(), 80));
        done(answerCase(session, round, next, given, 10));
    }
}

std::vector<std::string> toldOf(Device& device, const Uid& person)
{
    std::vector<std::string> lines;
    const auto told = toldSkills(device.session(), person).value();
    for (const ToldSkill& each : told) {
        lines.push_back(each.note.text() + (each.withdrawn ? " withdrawn" : " holds") + " " + each.consented.text() + " " + each.consentTo);
        for (const ToldSign& sign : each.signs)
            lines.push_back(sign.counted.sign + " " + std::to_string(sign.counted.found) + "/" + std::to_string(sign.counted.there));
    }
    return lines;
}

/// Types of records, with the form in front.
std::string skillsIn(const std::string& path)
{
    const auto file = BundleFile::open(path).value();
    int records = 0, personal = 0;
    done(file.eachRecord([&](const BundleRecord& record) -> Status {
        records += record.type == "skill" ? 1 : 0;
        return {};
    }));
    done(file.eachPersonal([&](const BundlePersonal& part) -> Status {
        personal += part.noun == "skill" ? 1 : 0;
        return {};
    }));
    return "form " + std::to_string(file.manifest().format) + ", notes " + std::to_string(records) + ", told " + std::to_string(personal);
}

std::string without(Device& device, const std::string& name, bool personal, bool practice)
{
    HandOut wanted;
    wanted.out = temporaryFolder() + "/" + name;
    wanted.personal = personal;
    wanted.practice = practice;
    return handOut(device.session(), wanted) ? wanted.out : std::string();
}

void holds(Device& device)
{
    const auto proof = proveJournal(device.session()).value();
    CAPTURE(proof.brokenWhy);
    CHECK(proof.whole);
    CHECK(checkHealth(device.session())->items.empty());
}

} // namespace

TEST_CASE("what practice measured goes with the day, with consent alone, and is taken back the same way", "[task][practice][merge]")
{
    Stores r;
    const Uid ada = r.ada.session().me();
    practise(r.ada.session(), 1);
    handedIn(r.ada.session(), treeAt(r.ada.session(), "W03", "SO 612 094"), withGall);
    const std::string before = r.ada.handOut(GoingKind::day);
    CHECK(skillsIn(before) == "form 1, notes 0, told 0");
    r.office.takeIn(before).value();
    CHECK(toldOf(r.office, ada).empty());
    CHECK(r.office.session().store().practice().sessions(ada).value().empty());

    done(tellSkill(r.ada.session(), ada, ""));
    const std::string first = r.ada.handOut(GoingKind::day);
    CHECK(skillsIn(first) == "form 2, notes 1, told 1");
    CHECK(r.office.takeIn(first)->merged.fresh > 0);
    CHECK(toldOf(r.office, ada) == toldOf(r.ada, ada));
    CHECK(toldSkill(r.office.session(), ada).value()->note == toldSkill(r.ada.session(), ada).value()->note);
    CHECK(r.office.session().store().practice().sessions(ada).value().empty());
    CHECK(r.office.takeIn(first)->knownAlready);
    // what the office knows goes on to verifiers, and not in decisions
    CHECK(skillsIn(r.office.handOut(GoingKind::reference)) == "form 2, notes 1, told 1");
    const std::string decisions = r.office.handOut(GoingKind::decision);
    CHECK(skillsIn(decisions) == "form 1, notes 0, told 0");
    r.ada.takeIn(decisions).value();

    CHECK(withdrawSkill(r.ada.session(), ada).value());
    const std::string back = r.ada.handOut(GoingKind::day);
    CHECK(skillsIn(back) == "form 2, notes 1, told 0");
    r.office.takeIn(back).value();
    CHECK_FALSE(toldSkill(r.office.session(), ada).value());
    CHECK(skillsIn(r.office.handOut(GoingKind::reference)) == "form 2, notes 1, told 0");
    for (Device* each : r.all)
        holds(*each);
}

TEST_CASE("where personal data or practice is left out nothing of practice goes, nor what was taken back before it went", "[task][practice][merge]")
{
    Stores r;
    const Uid ada = r.ada.session().me();
    practise(r.ada.session(), 1);
    done(tellSkill(r.ada.session(), ada, ""));
    handedIn(r.ada.session(), treeAt(r.ada.session(), "W03", "SO 612 094"), withGall);
    CHECK(skillsIn(without(r.ada, "a.zip", false, true)) == "form 1, notes 0, told 0");
    CHECK(skillsIn(without(r.ada, "b.zip", true, false)) == "form 1, notes 0, told 0");
    CHECK(BundleFile::open(without(r.ada, "c.zip", true, false))->manifest().leftOut == std::vector<std::string>{"practice"});
    CHECK(withdrawSkill(r.ada.session(), ada).value());
    CHECK(skillsIn(without(r.ada, "d.zip", true, true)) == "form 1, notes 0, told 0");
}

TEST_CASE("whatever the order of files, the same is told everywhere", "[task][practice][merge]")
{
    Stores r;
    const Uid ada = r.ada.session().me();
    std::vector<std::string> files;
    for (int seed = 1; seed <= 3; ++seed) {
        practise(r.ada.session(), seed, 1);
        done(tellSkill(r.ada.session(), ada, ""));
        files.push_back(r.ada.handOut(GoingKind::day));
    }
    CHECK(withdrawSkill(r.ada.session(), ada).value());
    practise(r.ada.session(), 4, 1);
    done(tellSkill(r.ada.session(), ada, ""));
    files.push_back(r.ada.handOut(GoingKind::day));
    const bool everyOrder = GENERATE(true, false);
    if (everyOrder)
        std::ranges::reverse(files);
    else
        std::ranges::rotate(files, files.begin() + 2);
    for (const std::string& file : files) {
        r.office.takeIn(file).value();
        r.office.takeIn(file).value();
    }
    r.cleo.takeIn(files.front()).value();
    const auto here = toldSkill(r.office.session(), ada).value();
    REQUIRE(here);
    CHECK(here->note == toldSkill(r.ada.session(), ada).value()->note);
    CHECK(std::ranges::count(toldSkills(r.office.session(), ada).value(), false, &ToldSkill::withdrawn) == 1);
    holds(r.office);
    holds(r.cleo);
}

TEST_CASE("two statements that did not know of each other: every store takes the same one", "[task][practice][merge]")
{
    Stores r;
    Device tess{r.folder + "/tess", personOf("TT", "Tess Thorn", 5), {Role::trainer}, 5};
    r.office.trust(tess);
    r.cleo.trust(tess);
    const Uid ada = r.ada.session().me();
    handedIn(r.ada.session(), treeAt(r.ada.session(), "W03", "SO 612 094"), withGall);
    practise(r.ada.session(), 1);
    done(tellSkill(r.ada.session(), ada, ""));
    const std::string own = r.ada.handOut(GoingKind::day);

    r.ada.trust(tess);
    tess.trust(r.ada);
    tess.takeIn(without(r.ada, "plain.zip", true, false)).value();
    const Uid there = recruit(tess.session(), "AN", "").value();
    REQUIRE(there == ada);
    PracticeWish wish;
    wish.person = ada;
    wish.month = 6;
    wish.seed = 9;
    auto round = beginPractice(tess.session(), wish).value();
    const auto next = nextCase(tess.session(), round).value();
    done(answerCase(tess.session(), round, next, rightAnswers(next.asked, 80), 10));
    done(tellSkill(tess.session(), ada, "TT"));
    const std::string trainers = tess.handOut(GoingKind::day);
    CHECK(skillsIn(trainers) == "form 2, notes 1, told 1");

    r.office.takeIn(own).value();
    r.office.takeIn(trainers).value();
    r.cleo.takeIn(trainers).value();
    r.cleo.takeIn(own).value();
    CHECK(toldOf(r.office, ada) == toldOf(r.cleo, ada));
    CHECK(toldSkills(r.office.session(), ada).value().size() == 2);
    // taking back takes back both
    CHECK(withdrawSkill(r.office.session(), ada).value());
    CHECK_FALSE(toldSkill(r.office.session(), ada).value());
}

TEST_CASE("an erasure that comes in takes whose practice it was, and what is told, whichever came first", "[task][practice][merge]")
{
    Stores r;
    const Uid ada = r.ada.session().me();
    practise(r.ada.session(), 1);
    done(tellSkill(r.ada.session(), ada, ""));
    handedIn(r.ada.session(), treeAt(r.ada.session(), "W03", "SO 612 094"), withGall);
    const std::string plain = without(r.ada, "plain.zip", true, false);
    const std::string told = r.ada.handOut(GoingKind::day);
    const bool knewIt = GENERATE(true, false);
    r.office.takeIn(knewIt ? told : plain).value();
    done(erasePerson(r.office.session(), ada, "letter 4"));
    const std::string erasure = r.office.handOut(GoingKind::decision);

    CHECK(recruitResults(r.ada.session(), ada, {}).value().results.answers > 0);
    CHECK(r.ada.takeIn(erasure)->merged.erased);
    CHECK(recruitResults(r.ada.session(), ada, {}).value().results.answers == 0);
    CHECK(r.ada.session().store().practice().counts({}).value().size() > 0);
    CHECK(toldSkills(r.ada.session(), ada).value().empty());
    holds(r.ada);

    // the file from before is still about
    r.office.takeIn(told).value();
    r.cleo.takeIn(erasure).value();
    r.cleo.takeIn(told).value();
    for (Device* each : {&r.office, &r.cleo}) {
        CHECK(toldSkills(each->session(), ada).value().empty());
        holds(*each);
    }
}

TEST_CASE("of somebody else only a trainer or the office tells", "[task][practice][merge]")
{
    Stores r;
    Device tess{r.folder + "/tess", personOf("TT", "Tess Thorn", 5), {Role::trainer}, 5};
    const Uid ann = recruit(tess.session(), "AB", "Annabel Quillfeather").value();
    PracticeWish wish;
    wish.person = ann;
    wish.kinds = {AskedKind::sign};
    wish.month = 6;
    wish.seed = 2;
    auto round = beginPractice(tess.session(), wish).value();
    const auto next = nextCase(tess.session(), round).value();
    std::vector<AnsweredItem> given;
    for (const AskedItem& item : next.asked)
        given.push_back(answerTo(item, item.right.front(), 80));
    done(answerCase(tess.session(), round, next, given, 10));
    done(tellSkill(tess.session(), ann, "TT"));
    const std::string file = tess.handOut(GoingKind::day);
    tess.profile.roles = {Role::volunteer};            // what the office has vouched for
    r.office.trust(tess);
    const auto refused = r.office.takeIn(file);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == "bundle.not-theirs");
    CHECK(refused.error().argument("what") == "skill");
}
