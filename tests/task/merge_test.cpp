#include <filesystem>

#include "core/record/json.h"
#include "core/store/decisions.h"
#include "core/store/journal.h"
#include "core/store/media.h"
#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/samples.h"
#include "core/store/visits.h"
#include "core/task/keep.h"
#include "core/task/nouns.h"
#include "core/task/samples.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/devices.h"

using namespace cupule;
using namespace cupule::test;
namespace fs = std::filesystem;

namespace {

/// Ada's laptop, Cleo the verifier, and the office, which know each other's keys.
struct Three {
    std::string folder = temporaryFolder();
    Device ada{folder + "/ada", personOf("AN", "Ada North", 1), {Role::volunteer}, 1};
    Device cleo{folder + "/cleo", personOf("CW", "Cleo West", 3), {Role::verifier}, 3};
    Device office{folder + "/office", personOf("OF", "Olwen Fry", 4), {Role::office}, 4};

    Three()
    {
        for (Device* a : {&ada, &cleo, &office})
            for (Device* b : {&ada, &cleo, &office})
                if (a != b)
                    a->trust(*b);
    }
    Visit nothingAt(Device& device, const std::string& label, const std::string& place)
    {
        return handedIn(device.session(), treeAt(device.session(), label, place), [](Session& s, const Visit& v) { return withNothing(s, v); });
    }
};

RecordState stateIn(Device& device, const Uid& visit)
{
    return device.session().store().visits().row(visit).value().value().standing.state;
}

JournalProof proofOf(Device& device)
{
    return device.session().store().journal().prove().value();
}

void noteOn(Device& device, const Uid& visit, const std::string& note, std::optional<int> minutes = {})
{
    const Visit before = device.session().store().visits().find(visit).value().value();
    Visit after = before;
    if (!note.empty())
        after.note = note;
    if (minutes)
        after.effort.minutes = minutes;
    done(changeVisit(device.session(), before, after, "corrected"));
}

} // namespace

TEST_CASE("a day goes to the office and a decision comes back with its reason and its acknowledgement", "[task][merge]")
{
    Three t;
    const Visit visit = handedIn(t.ada.session(), treeAt(t.ada.session(), "W03", "SO 612 094"), withGall);
    const auto taken = t.cleo.takeIn(t.ada.handOut(GoingKind::day)).value();
    CHECK(taken.merged.fresh > 0);
    CHECK(taken.photos == 1);
    CHECK(taken.merged.waiting == 0);
    CHECK(t.cleo.session().store().visits().find(visit.id).value() == t.ada.session().store().visits().find(visit.id).value());
    CHECK(t.cleo.session().store().visits().row(visit.id).value()->shown == t.ada.session().store().visits().row(visit.id).value()->shown);
    CHECK(countQueue(t.cleo.session()).value() == 1);

    const auto& reasons = t.cleo.session().pack().reasons;
    const auto asks = std::find_if(reasons.begin(), reasons.end(), [](const Reason& each) { return each.giveBack; });
    REQUIRE(asks != reasons.end());
    Decision wanted = decision(t.cleo.session(), visit.id, Outcome::giveBack, {asks->id});
    wanted.remark = "Which leaf was it on?";
    CHECK(decide(t.cleo.session(), wanted));
    const auto back = t.ada.takeIn(t.cleo.handOut(GoingKind::decision)).value();
    CHECK(back.settled == std::vector{visit.id});
    CHECK(back.acknowledged.size() == 1);
    CHECK(stateIn(t.ada, visit.id) == RecordState::returned);
    const auto decisions = t.ada.session().store().decisions().ofVisit(visit.id).value();
    REQUIRE(decisions.size() == 1);
    CHECK(decisions[0].remark == "Which leaf was it on?");
    CHECK(decisions[0].reasons == std::vector{asks->id});
    CHECK(t.ada.session().store().people().find(decisions[0].by).value()->code == "CW");
    for (Device* each : {&t.ada, &t.cleo}) {
        const auto proof = proofOf(*each);
        CAPTURE(proof.brokenWhy, proof.brokenNoun);
        CHECK(proof.whole);
        CHECK(checkHealth(each->session())->items.empty());
    }
    // what was acknowledged does not travel again; the answer does
    noteOn(t.ada, visit.id, "third leaf from the tip");
    const auto answer = t.cleo.takeIn(t.ada.handOut(GoingKind::day)).value();
    CHECK(answer.merged.known == 0);
    CHECK(stateIn(t.cleo, visit.id) == RecordState::returned);
    CHECK(t.cleo.session().store().visits().row(visit.id).value()->standing.correctionWaits);
}

TEST_CASE("a dry run says the same as the real one, and keeps nothing", "[task][merge]")
{
    Three t;
    t.nothingAt(t.ada, "W03", "SO 612 094");
    const std::string file = t.ada.handOut(GoingKind::day);
    const auto before = stateOf(t.office.session());
    const auto lines = proofOf(t.office).lines;
    const auto tried = t.office.takeIn(file, {.dryRun = true}).value();
    CHECK(stateOf(t.office.session()) == before);
    CHECK(proofOf(t.office).lines == lines);
    const auto taken = t.office.takeIn(file).value();
    CHECK(tried.merged.fresh == taken.merged.fresh);
    CHECK(tried.merged.nouns.size() == taken.merged.nouns.size());
    const auto again = t.office.takeIn(file).value();
    CHECK(again.knownAlready);
    CHECK(again.merged.known == taken.merged.fresh);
}

TEST_CASE("two who changed different fields are joined, one field that both changed stays a conflict until settled", "[task][merge]")
{
    Three t;
    Device second(t.folder + "/second", personOf("AN", "Ada North", 1), {Role::volunteer}, 9, -400LL * 86'400'000);
    second.trust(t.ada);
    t.ada.trust(second);
    const Visit visit = t.nothingAt(t.ada, "W03", "SO 612 094");
    REQUIRE(second.takeIn(t.ada.handOut(GoingKind::day)));
    SECTION("different fields")
    {
        noteOn(t.ada, visit.id, "by the ford");
        noteOn(second, visit.id, {}, 31);
        CHECK(second.takeIn(t.ada.handOut(GoingKind::day)).value().merged.nouns.front().conflicts.empty());
        REQUIRE(t.ada.takeIn(second.handOut(GoingKind::day)));
        for (Device* each : {&t.ada, &second}) {
            const Visit joined = each->session().store().visits().find(visit.id).value().value();
            CHECK(joined.note == "by the ford");
            CHECK(joined.effort.minutes == 31);
            CHECK(each->session().store().revisions().heads(visit.id)->size() == 2);
            CHECK(proofOf(*each).whole);
            CHECK(checkHealth(each->session())->items.empty());
        }
        noteOn(t.ada, visit.id, "by the ford, east bank");
        CHECK(t.ada.session().store().revisions().heads(visit.id)->size() == 1);
        CHECK(t.ada.session().store().visits().find(visit.id).value()->effort.minutes == 31);
    }
    SECTION("the same field")
    {
        noteOn(t.ada, visit.id, "by the ford");
        noteOn(second, visit.id, "by the mill");
        const auto taken = second.takeIn(t.ada.handOut(GoingKind::day)).value();
        REQUIRE(t.ada.takeIn(second.handOut(GoingKind::day)));
        const auto found = std::find_if(taken.merged.nouns.begin(), taken.merged.nouns.end(), [&](const MergedNoun& n) { return n.entity == visit.id; });
        REQUIRE(found != taken.merged.nouns.end());
        REQUIRE(found->conflicts.size() == 1);
        CHECK(found->conflicts[0].path == "note");
        CHECK(found->conflicts[0].sides.size() == 2);
        CHECK(differences(stateOf(t.ada.session()), stateOf(second.session())) == std::vector<std::string>{});
        for (Device* each : {&t.ada, &second})
            CHECK(each->session().store().visits().row(visit.id).value()->shown.queueCode == "fields-apart");
        // an edit beside the conflict does not settle it
        noteOn(t.ada, visit.id, {}, 25);
        CHECK(t.ada.session().store().revisions().openConflicts(visit.id) == 1);
        CHECK(t.ada.session().store().visits().find(visit.id).value()->effort.minutes == 25);
        CHECK(proofOf(t.ada).whole);
        CHECK(t.ada.session().store().visits().row(visit.id).value()->shown.queueCode == "fields-apart");
        // nobody accepts what is not clear
        REQUIRE(t.cleo.takeIn(t.ada.handOut(GoingKind::day)));
        const auto refused = decide(t.cleo.session(), decision(t.cleo.session(), visit.id, Outcome::accept));
        CHECK(faultOf(refused) == "decide.fields-in-conflict");
    }
}

TEST_CASE("files in the wrong order wait for what they name, and for the lines before theirs", "[task][merge]")
{
    Three t;
    t.nothingAt(t.ada, "W03", "SO 612 094");
    const std::string first = t.ada.handOut(GoingKind::day);
    REQUIRE(t.cleo.takeIn(first));
    REQUIRE(t.ada.takeIn(t.cleo.handOut(GoingKind::decision)));   // acknowledges it
    const Tree tree = t.ada.session().store().trees().find(t.ada.session().store().visits().window({}, 0, 1)->front().tree).value().value();
    const Visit second = handedIn(t.ada.session(), tree, [](Session& s, const Visit& v) { return withGall(s, v); });
    const std::string later = t.ada.handOut(GoingKind::day);

    const auto early = t.office.takeIn(later).value();
    CHECK(early.merged.waiting > 0);
    CHECK_FALSE(t.office.session().store().visits().find(second.id).value().has_value());
    CHECK(proofOf(t.office).whole);
    CHECK(proofOf(t.office).gaps == 1);
    const auto then = t.office.takeIn(first).value();
    CHECK(then.merged.waiting == 0);
    CHECK(t.office.session().store().visits().find(second.id).value().has_value());
    CHECK(proofOf(t.office).whole);
    CHECK(proofOf(t.office).gaps == 0);
    CHECK(checkHealth(t.office.session())->items.empty());
    REQUIRE(t.cleo.takeIn(later));
    REQUIRE(t.office.takeIn(t.cleo.handOut(GoingKind::decision)));
    CHECK(differences(stateOf(t.office.session()), stateOf(t.cleo.session())) == std::vector<std::string>{});
}

TEST_CASE("a laptop that was copied with its profile leaves two branches, and both are kept and travel on", "[task][merge]")
{
    // The kind of failure of reference/cases C19: one device id, one number, two contents.
    Three t;
    t.nothingAt(t.ada, "W03", "SO 612 094");
    t.ada.reopen();
    fs::copy(t.folder + "/ada", t.folder + "/copy", fs::copy_options::recursive);
    Profile copied = t.ada.profile;
    copied.folder = t.folder + "/copy";
    SeededRandom chance(77);
    auto copy = Session::open(t.folder + "/copy/store.cupule", copied, t.ada.clock, chance).value();
    copy->setToday(day(2026, 6, 11));
    const Visit here = t.nothingAt(t.ada, "A1", "SO 614 094");
    const Visit there = handedIn(*copy, treeAt(*copy, "B1", "SO 615 094"), [](Session& s, const Visit& v) { return withNothing(s, v); });
    HandOut wanted;
    wanted.out = t.folder + "/copy.zip";
    REQUIRE(handOut(*copy, wanted));

    REQUIRE(t.cleo.takeIn(t.ada.handOut(GoingKind::day)));
    const auto arrival = lookAtArrival(t.cleo.session(), wanted.out).value();
    REQUIRE(arrival.parted.size() == 1);
    REQUIRE(takeIn(t.cleo.session(), arrival));
    for (const Visit& visit : {here, there})
        CHECK(t.cleo.session().store().visits().find(visit.id).value().has_value());
    CHECK(proofOf(t.cleo).whole);
    CHECK(proofOf(t.cleo).branches == 1);
    CHECK(proofOf(t.cleo).gaps == 0);
    // in one file that carries both branches
    Device& office = t.office;
    REQUIRE(office.takeIn(t.cleo.handOut(GoingKind::decision)));
    CHECK(proofOf(office).whole);
}

TEST_CASE("a code that two people have is kept and named", "[task][merge]")
{
    Three t;
    t.nothingAt(t.ada, "W03", "SO 612 094");
    auto change = t.office.session().begin().value();
    Person other = personOf("AN", "Arne Nord", 55);
    done(t.office.session().store().people().save(change, other));
    done(t.office.session().commit(change));
    const auto taken = t.office.takeIn(t.ada.handOut(GoingKind::day)).value();
    CHECK(taken.merged.clashes == std::vector{MergeClash{"person", "AN", other.id, t.ada.session().me()}});
    CHECK(t.office.session().store().people().byCode("AN").value()->id == other.id);
    CHECK(t.office.session().store().people().find(t.ada.session().me()).value()->code == "AN");
    CHECK(checkHealth(t.office.session())->items.empty());
    CHECK(proofOf(t.office).whole);
}

namespace {

Uid sampleOf(Device& device, const Uid& visit, const std::string& number)
{
    auto change = device.session().begin().value();
    Sample sample;
    sample.id = device.session().ids().make();
    sample.visit = visit;
    sample.number = number;
    done(device.session().store().samples().save(change, sample));
    done(device.session().commit(change));
    return sample.id;
}

/// Trees that the page of this sample names as having given another sample of its number.
std::vector<std::string> sameNumber(Device& device, const Uid& sample)
{
    std::vector<std::string> trees;
    const SamplePage page = samplePage(device.session(), sample).value();
    for (const Finding& each : page.status.breaks)
        if (each.code == "custody.sample-number-twice")
            for (const Argument& argument : each.arguments)
                if (argument.name == "tree")
                    trees.push_back(argument.value);
    return trees;
}

} // namespace

TEST_CASE("a number that two stores gave to two samples is shown on both, in whatever order they met, and neither is renumbered", "[task][merge]")
{
    Three t;
    t.cleo.profile.roles = {Role::volunteer, Role::verifier};
    t.cleo.reopen();
    const Visit hers = t.nothingAt(t.ada, "W03", "SO 612 094"), theirs = t.nothingAt(t.cleo, "K07", "SO 633 120");
    const Uid one = sampleOf(t.ada, hers.id, "26-TV-0147-H"), other = sampleOf(t.cleo, theirs.id, "26tv0147h");
    CHECK(sameNumber(t.ada, one).empty());
    const std::string fromAda = t.ada.handOut(GoingKind::day), fromCleo = t.cleo.handOut(GoingKind::day);
    const auto taken = t.cleo.takeIn(fromAda).value();
    CHECK(taken.merged.clashes == std::vector{MergeClash{"sample", "26-TV-0147-H", other, one}});
    const bool adaFirst = GENERATE(true, false);
    for (const std::string& file : adaFirst ? std::vector{fromAda, fromCleo} : std::vector{fromCleo, fromAda})
        REQUIRE(t.office.takeIn(file));
    for (Device* store : {&t.cleo, &t.office}) {
        CHECK(sameNumber(*store, one) == std::vector<std::string>{"K07"});
        CHECK(sameNumber(*store, other) == std::vector<std::string>{"W03"});
        CHECK(store->session().store().samples().find(one).value()->number == "26-TV-0147-H");
        CHECK(store->session().store().samples().find(other).value()->number == "26tv0147h");
        const Uid first = sampleByNumber(store->session(), "26-TV-0147-H").value();
        const Uid next = sampleByNumber(store->session(), "26tv0147h", first).value();   // scanned again
        CHECK(std::set<Uid>{first, next} == std::set<Uid>{one, other});
        CHECK(sampleByNumber(store->session(), "26-TV-0147-H", next).value() == first);
        CHECK(checkHealth(store->session())->items.empty());
    }
}

TEST_CASE("a draft whose visit was handed in on a copy goes on as a visit of its own", "[task][merge]")
{
    Three t;
    const Tree tree = treeAt(t.ada.session(), "W03", "SO 612 094");
    const Visit visit = visitTo(t.ada.session(), tree, [](Session& s, const Visit& v) { return withNothing(s, v); });
    t.ada.reopen();
    fs::copy(t.folder + "/ada", t.folder + "/copy", fs::copy_options::recursive);
    Profile copied = t.ada.profile;
    copied.folder = t.folder + "/copy";
    SeededRandom chance(78);
    auto copy = Session::open(t.folder + "/copy/store.cupule", copied, t.ada.clock, chance).value();
    copy->setToday(day(2026, 6, 11));
    REQUIRE(handIn(*copy, visit.date, visit.observer)->goes.size() == 1);
    HandOut wanted;
    wanted.out = t.folder + "/copy.zip";
    REQUIRE(handOut(*copy, wanted));
    noteOn(t.ada, visit.id, "went back in the evening");
    const auto taken = takeIn(t.ada.session(), lookAtArrival(t.ada.session(), wanted.out).value()).value();
    REQUIRE(taken.merged.keptDrafts.size() == 1);
    CHECK(t.ada.session().store().visits().find(taken.merged.keptDrafts[0]).value()->note == "went back in the evening");
    CHECK(stateIn(t.ada, taken.merged.keptDrafts[0]) == RecordState::draft);
    CHECK(stateIn(t.ada, visit.id) == RecordState::submitted);
    CHECK(proofOf(t.ada).whole);
}

TEST_CASE("nobody says more than their key stands for", "[task][merge]")
{
    Three t;
    // Ada gives herself the role; the office has vouched for a volunteer
    for (Device* each : {&t.ada, &t.cleo}) {
        each->profile.roles = {Role::volunteer, Role::verifier};
        done(saveProfile(each->profile));
        each->reopen();
    }
    const Visit other = t.nothingAt(t.cleo, "W09", "SO 619 094");
    REQUIRE(t.ada.takeIn(t.cleo.handOut(GoingKind::day)));
    REQUIRE(decide(t.ada.session(), decision(t.ada.session(), other.id, Outcome::accept)));
    const auto refused = t.office.takeIn(t.ada.handOut(GoingKind::decision));
    CHECK(faultOf(refused) == "bundle.not-theirs");
    CHECK(refused.error().argument("what") == "decision");
    CHECK_FALSE(t.office.session().store().visits().find(other.id).value().has_value());
}

TEST_CASE("an erasure travels, is applied again, and reaches bundles that are kept", "[task][merge]")
{
    Three t;
    t.nothingAt(t.ada, "W03", "SO 612 094");
    REQUIRE(t.office.takeIn(t.ada.handOut(GoingKind::day)));
    REQUIRE(t.cleo.takeIn(t.ada.handOut(GoingKind::day)));
    const Uid ada = t.ada.session().me();
    REQUIRE(t.cleo.session().store().people().find(ada).value()->name == "Ada North");
    done(erasePerson(t.office.session(), ada, "letter of 3 June"));
    const auto taken = t.cleo.takeIn(t.office.handOut(GoingKind::decision)).value();
    CHECK(taken.merged.erased);
    CHECK(t.cleo.session().store().people().find(ada).value()->name.empty());
    CHECK(proofOf(t.cleo).whole);
    // it does not come back with an older file
    noteOn(t.ada, t.ada.session().store().visits().window({}, 0, 1)->front().id, "more");
    REQUIRE(t.cleo.takeIn(t.ada.handOut(GoingKind::day)));
    CHECK(t.cleo.session().store().people().find(ada).value()->name.empty());
    CHECK(proofOf(t.cleo).whole);
}

TEST_CASE("names that were left out come with a later file", "[task][merge]")
{
    Three t;
    t.nothingAt(t.ada, "W03", "SO 612 094");
    HandOut wanted;
    wanted.out = t.folder + "/nameless.zip";
    wanted.personal = false;
    REQUIRE(handOut(t.ada.session(), wanted));
    REQUIRE(t.office.takeIn(wanted.out));
    const Uid ada = t.ada.session().me();
    CHECK(t.office.session().store().people().find(ada).value()->name.empty());
    CHECK(proofOf(t.office).whole);
    REQUIRE(t.office.takeIn(t.ada.handOut(GoingKind::day)));
    CHECK(t.office.session().store().people().find(ada).value()->name == "Ada North");
    CHECK(proofOf(t.office).whole);
}

TEST_CASE("two decisions that did not know of each other: agreement holds, disagreement waits for a third", "[task][merge]")
{
    Three t;
    Device dora(t.folder + "/dora", personOf("DV", "Dora Vale", 6), {Role::verifier}, 6);
    Device emil(t.folder + "/emil", personOf("EM", "Emil Moor", 7), {Role::verifier}, 7);
    for (Device* a : {&t.ada, &t.cleo, &dora, &emil})
        for (Device* b : {&t.ada, &t.cleo, &dora, &emil})
            if (a != b)
                a->trust(*b);
    const Visit visit = t.nothingAt(t.ada, "W03", "SO 612 094");
    const std::string day = t.ada.handOut(GoingKind::day);
    for (Device* each : {&t.cleo, &dora, &emil})
        REQUIRE(each->takeIn(day));
    const auto& reasons = t.cleo.session().pack().reasons;
    const auto refuses = std::find_if(reasons.begin(), reasons.end(), [](const Reason& each) { return each.reject; });
    REQUIRE(refuses != reasons.end());
    REQUIRE(decide(t.cleo.session(), decision(t.cleo.session(), visit.id, Outcome::accept)));
    const bool agree = GENERATE(true, false);
    CAPTURE(agree);
    REQUIRE(decide(dora.session(), agree ? decision(dora.session(), visit.id, Outcome::accept)
                                         : decision(dora.session(), visit.id, Outcome::reject, {refuses->id})));
    const std::string one = t.cleo.handOut(GoingKind::decision), two = dora.handOut(GoingKind::decision);
    REQUIRE(t.ada.takeIn(one));
    REQUIRE(t.ada.takeIn(two));
    REQUIRE(emil.takeIn(two));
    REQUIRE(emil.takeIn(one));
    CHECK(differences(stateOf(t.ada.session()), stateOf(emil.session())) == std::vector<std::string>{});
    CHECK(stateIn(emil, visit.id) == (agree ? RecordState::accepted : RecordState::submitted));
    CHECK(emil.session().store().visits().row(visit.id).value()->standing.conflict == !agree);
    if (agree)
        return;
    REQUIRE(decide(emil.session(), decision(emil.session(), visit.id, Outcome::accept)));
    REQUIRE(t.ada.takeIn(emil.handOut(GoingKind::decision)));
    CHECK(stateIn(t.ada, visit.id) == RecordState::accepted);
}
