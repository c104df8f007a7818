#include "core/task/practice.h"

#include <algorithm>
#include <filesystem>

#include "core/base/file.h"
#include "core/store/practice.h"
#include "core/task/keep.h"
#include "core/task/photo_cases.h"
#include "core/task/practice_results.h"
#include "core/task/review.h"
#include "core/task/skill.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;
namespace fs = std::filesystem;

namespace {

/// Answers rightly but for the questions that `wrong` picks.
std::vector<AnsweredItem> answers(const PracticeCase& practice, const std::function<bool(const AskedItem&)>& wrong)
{
    std::vector<AnsweredItem> given;
    for (const AskedItem& item : practice.asked) {
        if (item.kind == AskedKind::order) {
            auto order = item.right;
            if (wrong(item))
                std::ranges::reverse(order);
            given.push_back(answerToOrder(item, order, 70));
            continue;
        }
        std::string said = item.right.front();
        if (wrong(item))
            for (const std::string& option : item.options)
                if (option != saidNotJudged && std::ranges::find(item.right, option) == item.right.end())
                    said = option;
        given.push_back(answerTo(item, said, 90));
    }
    return given;
}

bool never(const AskedItem&)
{
    return false;
}

void practise(Session& session, PracticeRound& round, int cases, const std::function<bool(const AskedItem&)>& wrong)
{
    for (int i = 0; i < cases; ++i) {
        const auto next = nextCase(session, round);
        REQUIRE(next);
        done(answerCase(session, round, *next, answers(*next, wrong), 20));
    }
}

PracticeWish june(int cases, std::int64_t seed)
{
    PracticeWish wish;
    wish.month = 6;
    wish.cases = cases;
    wish.seed = seed;
    return wish;
}

} // namespace

TEST_CASE("a session goes on where it was left, with the same next case", "[task][practice]")
{
    Vale vale;
    Uid id;
    std::string next;
    {
        const auto mary = vale.as("MH");
        auto round = beginPractice(*mary, june(8, 5)).value();
        id = round.session.id;
        practise(*mary, round, 5, never);
        next = nextCase(*mary, round)->id();
    }
    const auto again = vale.as("MH");
    auto round = openPractice(*again, id).value();
    CHECK(round.given.size() == 5);
    CHECK(round.nextNumber() == 6);
    CHECK(nextCase(*again, round)->id() == next);
    practise(*again, round, 3, never);
    CHECK(round.done());
    CHECK_FALSE(nextCase(*again, round));
    CHECK(proveJournal(*again).value().whole);
    CHECK(checkHealth(*again).value().items.empty());
}

TEST_CASE("the same seed and answers give the same forty cases, other answers others", "[task][practice]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const auto run = [&](const std::function<bool(const AskedItem&)>& wrong) {
        auto round = beginPractice(*mary, june(40, 17)).value();
        std::vector<std::string> ids;
        while (const auto next = nextCase(*mary, round)) {
            ids.push_back(next->id());
            done(answerCase(*mary, round, *next, answers(*next, wrong), 12));
        }
        return ids;
    };
    const auto one = run(never);
    REQUIRE(one.size() == 40);
    CHECK(run(never) == one);
    CHECK(run([](const AskedItem& item) { return item.kind == AskedKind::sign; }) != one);
    auto sorted = one;
    std::ranges::sort(sorted);
    CHECK(std::ranges::unique(sorted).empty());
}

TEST_CASE("a series is the same for everybody, whatever they answer", "[task][practice]")
{
    Vale vale;
    PracticeWish wish = june(6, 23);
    wish.series = true;
    wish.cohort = "spring";
    std::vector<std::vector<std::string>> ids;
    for (const char* code : {"MH", "TR"}) {
        const auto session = vale.as(code);
        auto round = beginPractice(*session, wish).value();
        ids.emplace_back();
        while (const auto next = nextCase(*session, round)) {
            ids.back().push_back(next->id());
            done(answerCase(*session, round, *next, answers(*next, [&](const AskedItem& item) { return ids.size() == 2 && item.kind == AskedKind::host; }), 5));
        }
    }
    CHECK(ids[0] == ids[1]);
    const auto office = vale.as("OF");
    const auto cohort = cohortResults(*office, {"spring", true, {}}).value();
    CHECK(cohort.recruits.size() == 2);
    CHECK(cohort.agreementPeople == 2);
    CHECK(cohort.agreementQuestions > 10);
    REQUIRE(cohort.agreement);
    CHECK(*cohort.agreement->kappa < 1);
    CHECK(cohort.agreement->observed > 0.5);
}

TEST_CASE("a session about some topics has cases about these alone, also when it is gone on with", "[task][practice]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    PracticeWish wish = june(6, 5);
    wish.topics = {{AskedKind::sign, "S02"}, {AskedKind::look, "S02"}};
    auto round = beginPractice(*mary, wish).value();
    CHECK(round.topics.size() == 2);
    practise(*mary, round, 3, never);
    auto again = openPractice(*mary, round.session.id).value();
    CHECK(again.topics == round.topics);
    practise(*mary, again, 3, never);
    const auto answers = mary->store().practice().answers(round.session.id).value();
    REQUIRE(answers.size() == 6);
    for (const PracticeAnswer& answer : answers)
        CHECK(answer.topicSubject == "S02");
    wish.topics = {{AskedKind::host, ""}};
    CHECK(beginPractice(*mary, wish).value().topics.size() > 3);
    wish.topics = {{AskedKind::sign, "S99"}};
    CHECK(faultOf(beginPractice(*mary, wish)) == "practice.topics");
}

TEST_CASE("what is wanted must be possible", "[task][practice]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const auto refused = [&](PracticeWish wish) { return faultOf(beginPractice(*mary, wish)); };
    CHECK(refused({.step = 6}) == "practice.step");
    CHECK(refused({.month = 13}) == "practice.month");
    CHECK(refused({.cases = -1}) == "practice.cases");
    CHECK(refused({.kinds = {AskedKind::character}}) == "practice.topics");
    CHECK(refused({.person = vale.profile("XX", "Xan Yew", {Role::volunteer}).person.id}) == "role.needed");
    CHECK(faultOf(openPractice(*mary, vale.profile("XX", "Xan Yew", {Role::volunteer}).person.id)) == "practice.unknown");
    auto round = beginPractice(*mary, june(2, 1)).value();
    auto other = openPractice(*mary, round.session.id).value();
    const auto next = nextCase(*mary, round);
    CHECK(faultOf(answerCase(*mary, round, *next, {}, 1)) == "practice.answers");
    done(answerCase(*mary, round, *next, answers(*next, never), 1));
    CHECK(faultOf(answerCase(*mary, other, *next, answers(*next, never), 1)) == "practice.answered");
}

TEST_CASE("results are one's own, and everybody's for the trainer", "[task][practice]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    auto round = beginPractice(*mary, june(30, 3)).value();
    practise(*mary, round, 30, [](const AskedItem& item) { return item.kind == AskedKind::sign && item.subject == "S16"; });
    const auto own = recruitResults(*mary, mary->me(), {}).value();
    CHECK(own.code == "MH");
    CHECK(own.results.answers > 100);
    CHECK(own.results.right < own.results.answers);
    REQUIRE(own.galls);
    CHECK(own.galls->judged.sensitivity->value == 1);
    REQUIRE_FALSE(own.next.empty());
    CHECK(own.next.front().subject == "S16");
    REQUIRE(own.results.calibration);
    CHECK(own.results.curve.size() == static_cast<std::size_t>((own.results.answers + curveRun - 1) / curveRun));
    CHECK(faultOf(cohortResults(*mary, {})) == "role.needed");
    const auto trainer = vale.as("OF");
    CHECK(recruitResults(*trainer, mary->me(), {}).value().results.answers == own.results.answers);
    const auto hidden = cohortResults(*trainer, {{}, false, {}}).value();
    REQUIRE(hidden.recruits.size() == 1);
    CHECK(hidden.recruits[0].code.empty());
    CHECK(hidden.recruits[0].name.empty());
    CHECK(hidden.recruits[0].person.isNull());
    CHECK(practiceLines(*trainer).value().at(0).code == "MH");
    CHECK_FALSE(practiceLines(*trainer).value().at(0).mine);
    CHECK(practiceLines(*mary).value().at(0).mine);
}

TEST_CASE("the programme's limits decide who is ready", "[task][practice]")
{
    Vale vale;
    const auto trainer = vale.as("OF");
    CHECK(practiceRules(*trainer).value() == PracticeRules{});
    done(setPracticeRules(*trainer, {{0.6, 0.55}, 0.02}, "rules"));
    CHECK(practiceRules(*trainer).value() == PracticeRules{{0.6, 0.55}, 0.02});
    CHECK(faultOf(setPracticeRules(*trainer, {{1, 0.5}, 0.1}, "rules")) == "practice.rules");
    const auto mary = vale.as("MH");
    CHECK(faultOf(setPracticeRules(*mary, {}, "rules")) == "role.needed");
    auto round = beginPractice(*mary, june(60, 9)).value();
    practise(*mary, round, 60, never);
    const auto own = recruitResults(*mary, mary->me(), {}).value();
    REQUIRE(own.hosts);
    const bool reaches = own.galls->strict.sensitivity->interval.lower >= 0.6 && own.galls->strict.specificity->interval.lower >= 0.55;
    CHECK((own.galls->readiness == Readiness::ready) == reaches);
    const auto strict = recruitResults(*mary, mary->me(), {{}, true, PracticeRules{{0.999, 0.999}, 0.1}}).value();
    CHECK(strict.galls->readiness == Readiness::notYetKnown);
}

TEST_CASE("answers without a name count for the cohort and for nobody", "[task][practice]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    PracticeWish wish = june(3, 4);
    wish.named = false;
    wish.cohort = "open evening";
    auto round = beginPractice(*mary, wish).value();
    CHECK(round.person.isNull());
    practise(*mary, round, 3, never);
    CHECK(recruitResults(*mary, mary->me(), {}).value().results.answers == 0);
    const auto cohort = cohortResults(*vale.as("OF"), {"open evening", true, {}}).value();
    CHECK(cohort.results.answers > 0);
    REQUIRE(cohort.recruits.size() == 1);
    CHECK(cohort.recruits[0].code.empty());
}

TEST_CASE("an erased recruit's answers stay, and nobody knows whose", "[task][practice]")
{
    Vale vale;
    const auto office = vale.as("OF");
    const Uid ann = recruit(*office, "AB", "Annabel Quillfeather").value();
    CHECK(recruit(*office, "AB", "").value() == ann);
    PracticeWish wish = june(2, 4);
    wish.person = ann;
    auto round = beginPractice(*office, wish).value();
    practise(*office, round, 2, never);
    done(tellSkill(*office, ann, "OF"));
    CHECK(recruitResults(*office, ann, {}).value().results.answers > 0);
    done(erasePerson(*office, ann, "letter 4"));
    CHECK(recruitResults(*office, ann, {}).value().results.answers == 0);
    CHECK(toldSkills(*office, ann).value().empty());
    auto again = beginPractice(*office, wish).value();
    practise(*office, again, 1, never);
    CHECK(faultOf(tellSkill(*office, ann, "OF")) == "skill.erased");
    CHECK(cohortResults(*office, {}).value().results.answers > 0);
    CHECK(proveJournal(*office).value().whole);
    CHECK(checkHealth(*office).value().items.empty());
}

TEST_CASE("what was measured is told only with consent, and can be withdrawn", "[task][practice]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    CHECK(faultOf(tellSkill(*mary, mary->me(), "")) == "skill.none");
    auto round = beginPractice(*mary, june(20, 8)).value();
    practise(*mary, round, 20, never);
    CHECK_FALSE(toldSkill(*mary, mary->me()).value());
    const auto office = vale.as("OF");
    CHECK(faultOf(tellSkill(*office, mary->me(), "")) == "skill.consent");
    CHECK(faultOf(tellSkill(*vale.as("VE"), mary->me(), "VE")) == "role.needed");
    done(tellSkill(*mary, mary->me(), ""));
    const auto told = toldSkill(*office, mary->me()).value();
    REQUIRE(told);
    CHECK(told->consentTo == "self");
    REQUIRE_FALSE(told->signs.empty());
    CHECK(told->signs.front().counted.sign == "gall-lines");
    REQUIRE(told->signs.front().found);
    CHECK(told->signs.front().found->value == 1);
    CHECK(told->signs.front().found->interval.lower < 1);
    const auto detection = measuredDetection(*told, "MH");
    REQUIRE(detection);
    CHECK(detection->of('A') == told->signs.front().found->interval.lower);
    CHECK(detection->name == "measured:MH");
    done(tellSkill(*mary, mary->me(), ""));
    CHECK(toldSkills(*mary, mary->me()).value().size() == 2);
    CHECK(toldSkills(*mary, mary->me()).value().at(1).withdrawn);
    CHECK(told->protocolVersion == mary->pack().version);
    CHECK(withdrawSkill(*mary, mary->me()).value());
    CHECK_FALSE(toldSkill(*mary, mary->me()).value());
    CHECK_FALSE(withdrawSkill(*mary, mary->me()).value());
    CHECK(faultOf(withdrawSkill(*vale.as("VE"), mary->me())) == "role.needed");
    CHECK(proveJournal(*mary).value().whole);
}

TEST_CASE("beside a record stands what its observer was measured to find, and nothing of it where names are hidden", "[task][practice][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withGall);
    const auto verifier = vale.as("VE");
    const ReviewPage before = reviewPage(*verifier, visit.id).value();
    CHECK_FALSE(before.observerSkill);
    auto round = beginPractice(*mary, june(6, 8)).value();
    practise(*mary, round, 6, never);
    CHECK_FALSE(reviewPage(*verifier, visit.id).value().observerSkill);
    done(tellSkill(*mary, mary->me(), ""));
    const ReviewPage page = reviewPage(*verifier, visit.id).value();
    REQUIRE(page.observerSkill);
    REQUIRE(toldSign(*page.observerSkill, gallLinesTogether) != nullptr);
    CHECK(toldSign(*page.observerSkill, gallLinesTogether)->few);
    CHECK(toldSign(*page.observerSkill, "S99") == nullptr);
    // information: nothing that orders or decides has moved
    CHECK(page.place.rank == before.place.rank);
    CHECK(page.place.code == before.place.code);
    CHECK(page.visit.findings == before.visit.findings);
    verifier->setHidden(true);
    CHECK_FALSE(reviewPage(*verifier, visit.id).value().observerSkill);
    CHECK_FALSE(reviewPage(*vale.as("JB"), visit.id).value().observerSkill);
}

TEST_CASE("a photo case is asked once two trainers agree, and neither sees the other's key first", "[task][practice]")
{
    Vale vale;
    done(writeFile(vale.folder() + "/leaf.jpg", "a picture"));
    const auto office = vale.as("OF");
    PhotoCase wish;
    wish.pictures = {vale.folder() + "/leaf.jpg"};
    wish.questions = {{"sign", {}, "S02"}, {"host", {}, "castanea-sativa"}};
    CHECK(faultOf(addPhotoCase(*vale.as("MH"), wish)) == "role.needed");
    PhotoCase bad = wish;
    bad.questions.clear();
    CHECK(faultOf(addPhotoCase(*office, bad)) == "photo-case.form");
    const PhotoCase made = addPhotoCase(*office, wish).value();
    CHECK(made.pictures.front().size() == 64);
    done(addPhotoKey(*office, made.id, {{"sign", "S02", "yes"}, {"host", "castanea-sativa", "yes"}}));
    CHECK(faultOf(addPhotoKey(*office, made.id, {{"sign", "S03", "yes"}})) == "photo-case.form");
    CHECK(faultOf(addPhotoKey(*office, office->me(), {})) == "photo-case.unknown");
    const auto mary = vale.as("MH");
    auto round = beginPractice(*mary, june(5, 2)).value();
    CHECK_FALSE(nextPhotoCase(*mary, round).value());

    const auto trainer = vale.open(vale.profile("TT", "Tam Thorn", {Role::trainer}));
    CHECK(photoCaseLines(*trainer).value().at(0).keyed.keys.empty());
    CHECK_FALSE(photoCaseLines(*trainer).value().at(0).keyedByMe);
    done(addPhotoKey(*trainer, made.id, {{"sign", "S02", "yes"}, {"host", "castanea-sativa", "not-judged"}}));
    const auto lines = photoCaseLines(*trainer).value();
    CHECK(lines.at(0).keyed.keys.size() == 2);
    CHECK(lines.at(0).keyed.agreed.size() == 1);
    CHECK(lines.at(0).keyed.apart.size() == 1);
    CHECK(keyMakers(*trainer).value().size() == 2);

    const auto photo = nextPhotoCase(*mary, round).value();
    REQUIRE(photo);
    REQUIRE(photo->asked.size() == 1);
    done(answerPhotoCase(*mary, round, *photo, {answerTo(photo->asked[0], "no", 80)}, 9));
    CHECK_FALSE(nextPhotoCase(*mary, round).value());
    CHECK(recruitResults(*mary, mary->me(), {}).value().results.right == 0);
    CHECK(nextCase(*mary, round)->number == 2);
}
