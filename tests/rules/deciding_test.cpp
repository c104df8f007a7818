#include "core/rules/deciding.h"

#include <algorithm>
#include <limits>

#include "tests/rules/fixtures.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::uidOf;

namespace {

// People of the tables: who they are to the visit.
const Uid observer = uidOf(1), companion = uidOf(2), trainer = uidOf(3), owner = uidOf(4);
const Uid verifier = uidOf(10), second = uidOf(11), third = uidOf(12), fourth = uidOf(13), fifth = uidOf(14);
const Uid revision = uidOf(100), otherRevision = uidOf(101);

Person person(const Uid& id, std::vector<Uid> aliases = {}, std::vector<Uid> notFor = {})
{
    Person result;
    result.id = id;
    result.aliases = std::move(aliases);
    result.notFor = std::move(notFor);
    return result;
}

Decision decision(const Uid& by, Outcome outcome, const Uid& of = revision)
{
    Decision result;
    result.by = by;
    result.outcome = outcome;
    result.revision = of;
    return result;
}

Visit visitOfTables()
{
    Visit visit;
    visit.observer = observer;
    visit.companions = {companion};
    visit.trainer = trainer;
    return visit;
}

struct MayRow {
    const char* name;
    Uid by;
    std::vector<Person> people;
    std::vector<Decision> earlier;
    std::vector<Role> roles;
    std::string expected;
};

struct StateRow {
    const char* name;
    std::vector<Decision> decisions;
    bool newGround;
    RecordState state;
    bool oneOfTwo, conflict;
};

constexpr auto accept = Outcome::accept, reject = Outcome::reject, giveBack = Outcome::giveBack;
constexpr auto withdraw = Outcome::withdraw, reopen = Outcome::reopen;
constexpr auto submitted = RecordState::submitted, accepted = RecordState::accepted;
constexpr auto rejected = RecordState::rejected, returned = RecordState::returned;

} // namespace

// Common practice, no source: nobody decides on a record in which they, or somebody close to them, had a part; the
// rule is checked when deciding and counts other accounts as the same person.
TEST_CASE("who may not decide", "[rules][deciding]")
{
    const std::vector<Role> may{Role::volunteer, Role::verifier};
    const std::vector<MayRow> rows{
        {"anybody else may", verifier, {}, {}, may, ""},
        {"not without the role", verifier, {}, {}, {Role::office, Role::trainer}, "no-role"},
        {"nobody is nobody", Uid{}, {}, {}, may, "no-role"},
        {"the observer", observer, {}, {}, may, "observer"},
        {"the companion", companion, {}, {}, may, "companion"},
        {"the trainer who was there", trainer, {}, {}, may, "trainer"},
        {"the landowner", owner, {}, {}, may, "landowner"},
        {"an alias of the observer", verifier, {person(verifier, {observer})}, {}, may, "observer"},
        {"an alias said at the other end", verifier, {person(companion, {verifier})}, {}, may, "companion"},
        {"an alias of an alias of an alias", verifier,
         {person(verifier, {uidOf(50)}), person(uidOf(51), {uidOf(50), uidOf(52)}), person(uidOf(52), {observer})}, {},
         may, "observer"},
        {"aliases that go in a ring end", verifier,
         {person(verifier, {uidOf(50)}), person(uidOf(50), {uidOf(51)}), person(uidOf(51), {verifier})}, {}, may, ""},
        {"null aliases join nobody", verifier, {person(verifier, {Uid{}}), person(observer, {Uid{}})}, {}, may, ""},
        {"household, said here", verifier, {person(verifier, {}, {observer})}, {}, may, "may-not-decide-for"},
        {"household, said there", verifier, {person(observer, {}, {verifier})}, {}, may, "may-not-decide-for"},
        {"household of the companion", verifier, {person(companion, {}, {verifier})}, {}, may, "may-not-decide-for"},
        {"household of the landowner", verifier, {person(owner, {}, {verifier})}, {}, may, "may-not-decide-for"},
        {"household through aliases of both", verifier,
         {person(verifier, {uidOf(50)}), person(uidOf(50), {}, {uidOf(60)}), person(uidOf(60), {observer})}, {}, may,
         "may-not-decide-for"},
        {"household is not handed on", verifier, {person(verifier, {}, {uidOf(60)}), person(uidOf(60), {}, {observer})},
         {}, may, ""},
        {"null links bar nobody", verifier, {person(verifier, {}, {Uid{}})}, {}, may, ""},
        {"the first of two is not the second", verifier, {}, {decision(verifier, accept)}, may, "first-of-two"},
        {"nor under another account", verifier, {person(verifier, {second})}, {decision(second, accept)}, may,
         "first-of-two"},
        {"who refused first is not the second", verifier, {}, {decision(verifier, reject)}, may, "first-of-two"},
        {"one of a conflict does not settle it", verifier, {}, {decision(verifier, accept), decision(second, reject)}, may,
         "decided-before"},
        {"the third may settle it", third, {}, {decision(verifier, accept), decision(second, reject)}, may, ""},
        {"who gave it back has spoken on this revision", verifier, {}, {decision(verifier, giveBack)}, may,
         "decided-before"},
        {"who gave it back may decide the answer", verifier, {}, {decision(verifier, giveBack, otherRevision)}, may, ""},
        {"reopened goes to someone new", verifier, {}, {decision(verifier, accept, otherRevision), decision(second, reopen)},
         may, "decided-before"},
        {"who reopened may decide", second, {}, {decision(verifier, accept), decision(second, reopen)}, may, ""},
        {"who only asked may decide after reopening", third, {},
         {decision(third, giveBack, otherRevision), decision(verifier, accept), decision(second, reopen)}, may, ""},
        {"after reopening a new decision counts", second, {},
         {decision(verifier, accept), decision(third, reopen), decision(second, accept)}, may, "first-of-two"},
        {"withdrawing is no decision", verifier, {}, {decision(observer, withdraw)}, may, ""},
    };
    const MayRow row = GENERATE_COPY(from_range(rows));
    CAPTURE(row.name);
    DecidingContext context;
    context.people = row.people;
    context.earlier = row.earlier;
    context.landowners = {owner};
    context.roles = row.roles;
    CHECK(mayNotDecide(visitOfTables(), row.by, revision, context) == row.expected);
}

TEST_CASE("a visit without people bars nobody by accident", "[rules][deciding]")
{
    DecidingContext context;
    context.landowners = {Uid{}};
    context.roles = {Role::verifier};
    CHECK(mayNotDecide(Visit{}, verifier, revision, context).empty());
}

// Source: Austen, Bindemann, Griffiths & Roberts, 2018 (PeerJ 6:e4157): more than one judge; that a first find needs two
// people is common practice, no source.
TEST_CASE("state after decisions", "[rules][deciding]")
{
    const std::vector<StateRow> rows{
        {"nothing decided", {}, false, submitted, false, false},
        {"accepted", {decision(verifier, accept)}, false, accepted, false, false},
        {"rejected", {decision(verifier, reject)}, false, rejected, false, false},
        {"returned", {decision(verifier, giveBack)}, false, returned, false, false},
        {"withdrawn", {decision(observer, withdraw)}, false, rejected, false, false},
        {"withdrawn in new ground waits for nobody", {decision(observer, withdraw)}, true, rejected, false, false},
        {"new ground: one of two", {decision(verifier, accept)}, true, submitted, true, false},
        {"new ground: one of two, refused", {decision(verifier, reject)}, true, submitted, true, false},
        {"new ground: a question goes back at once", {decision(verifier, giveBack)}, true, returned, false, false},
        {"new ground: two agree", {decision(verifier, accept), decision(second, accept)}, true, accepted, false, false},
        {"new ground: two refuse", {decision(verifier, reject), decision(second, reject)}, true, rejected, false, false},
        {"new ground: the same person twice is one", {decision(verifier, accept), decision(verifier, accept)}, true,
         submitted, true, false},
        {"new ground: two disagree", {decision(verifier, accept), decision(second, reject)}, true, submitted, false, true},
        {"new ground: the third says yes", {decision(verifier, accept), decision(second, reject), decision(third, accept)},
         true, accepted, false, false},
        {"new ground: the third says no", {decision(verifier, accept), decision(second, reject), decision(third, reject)},
         true, rejected, false, false},
        {"new ground: one yes among three is not two",
         {decision(verifier, reject), decision(second, giveBack), decision(third, accept)}, true, submitted, false, true},
        {"two that did not know of each other and differ", {decision(verifier, accept), decision(second, reject)}, false,
         submitted, false, true},
        {"two that did not know of each other and agree", {decision(verifier, accept), decision(second, accept)}, false,
         accepted, false, false},
        {"accepted while it was withdrawn", {decision(observer, withdraw), decision(verifier, accept)}, false, submitted,
         false, true},
        {"rejected while it was withdrawn", {decision(observer, withdraw), decision(verifier, reject)}, false, rejected,
         false, false},
        {"three differ: the third decides",
         {decision(verifier, accept), decision(second, reject), decision(third, giveBack)}, false, returned, false, false},
        {"two against two wait for a fifth",
         {decision(verifier, accept), decision(second, reject), decision(third, accept), decision(fourth, reject)}, false,
         submitted, false, true},
        {"the fifth decides",
         {decision(verifier, accept), decision(second, reject), decision(third, accept), decision(fourth, reject),
          decision(fifth, accept)}, false, accepted, false, false},
        {"a person's last word counts", {decision(verifier, accept), decision(verifier, reject)}, false, rejected, false,
         false},
        {"reopened", {decision(verifier, accept), decision(second, reopen)}, false, submitted, false, false},
        {"decided anew", {decision(verifier, accept), decision(second, reopen), decision(third, reject)}, false, rejected,
         false, false},
    };
    const StateRow row = GENERATE_COPY(from_range(rows));
    CAPTURE(row.name);
    const DecidedState state = stateAfter(row.decisions, row.newGround);
    CHECK(state.state == row.state);
    CHECK(state.oneOfTwo == row.oneOfTwo);
    CHECK(state.conflict == row.conflict);
}

TEST_CASE("who looked at it blindly, and said yes, is not who decides once it is reopened", "[rules][deciding]")
{
    DecidingContext context;
    context.roles = {Role::verifier};
    const std::vector<Decision> earlier{decision(verifier, accept), decision(third, reopen)};
    context.earlier = earlier;
    context.audited = {second};
    CHECK(mayNotDecide(visitOfTables(), second, revision, context) == "decided-before");
    const std::vector<Person> people{person(fourth, {second})};
    context.people = people;
    CHECK(mayNotDecide(visitOfTables(), fourth, revision, context) == "decided-before");
    CHECK(mayNotDecide(visitOfTables(), fifth, revision, context).empty());
}

TEST_CASE("nobody checks blindly what they, or somebody bound to them, decided", "[rules][deciding]")
{
    const std::vector<Person> people{person(second, {verifier}), person(third, {}, {verifier}), person(verifier, {}, {fourth})};
    CHECK(mayNotAudit(verifier, verifier, {}) == "same-person");
    CHECK(mayNotAudit(verifier, second, people) == "same-person");
    CHECK(mayNotAudit(second, verifier, people) == "same-person");
    CHECK(mayNotAudit(verifier, third, people) == "may-not-decide-for");
    CHECK(mayNotAudit(second, third, people) == "may-not-decide-for");
    CHECK(mayNotAudit(verifier, fourth, people) == "may-not-decide-for");
    CHECK(mayNotAudit(third, fourth, people).empty());
}

TEST_CASE("two accounts of one person are one say", "[rules][deciding]")
{
    const std::vector<Decision> decisions{decision(verifier, accept), decision(second, accept)};
    const std::vector<Person> people{person(second, {verifier})};
    CHECK(stateAfter(decisions, true).state == accepted);
    CHECK(stateAfter(decisions, true, people).oneOfTwo);
}

TEST_CASE("a state never depends on which of two decisions came first", "[rules][deciding]")
{
    const std::vector<Outcome> outcomes{accept, reject, giveBack, withdraw};
    for (const Outcome a : outcomes)
        for (const Outcome b : outcomes)
            for (const bool isNew : {false, true}) {
                const std::vector<Decision> one{decision(verifier, a), decision(second, b)};
                const std::vector<Decision> two{decision(second, b), decision(verifier, a)};
                const DecidedState first = stateAfter(one, isNew), then = stateAfter(two, isNew);
                CHECK(first.state == then.state);
                CHECK(first.conflict == then.conflict);
                CHECK(first.conflict == ((a == reject || a == withdraw) != (b == reject || b == withdraw)
                                         || ((a == accept) != (b == accept))));
            }
}

TEST_CASE("nothing is accepted in new ground by fewer than two people", "[rules][deciding]")
{
    SeededRandom random(5);
    const std::vector<Uid> people{verifier, second, third, fourth, fifth};
    for (int round = 0; round < 5000; ++round) {
        std::vector<Decision> decisions;
        for (std::size_t n = random.below(8); decisions.size() < n;)
            decisions.push_back(decision(people[random.below(people.size())], static_cast<Outcome>(random.below(5))));
        const DecidedState state = stateAfter(decisions, true);
        std::vector<Uid> yes;
        for (const Decision& d : decisions)
            if (d.outcome == accept && std::find(yes.begin(), yes.end(), d.by) == yes.end())
                yes.push_back(d.by);
        REQUIRE((state.state != accepted || yes.size() >= 2));
        REQUIRE_FALSE((state.oneOfTwo && state.conflict));
        REQUIRE((state.state == submitted || (!state.oneOfTwo && !state.conflict)));
    }
}

TEST_CASE("ground is new without an accepted find in the square or near", "[rules][deciding]")
{
    Pack pack;
    pack.settings.newGroundKilometres = 10;
    CHECK(newGround({std::nullopt, false}, pack));
    CHECK(newGround({10'000.5, false}, pack));
    CHECK_FALSE(newGround({10'000.0, false}, pack));
    CHECK_FALSE(newGround({14'000.0, true}, pack));
    CHECK(newGround({std::numeric_limits<double>::quiet_NaN(), false}, pack));
    pack.settings.newGroundKilometres = 2;
    CHECK(newGround({3'000.0, false}, pack));
}

TEST_CASE("the queue begins with what cannot wait", "[rules][deciding]")
{
    QueueInput routine;
    routine.nothing = true;
    routine.worth = 'A';
    QueueInput doubtful = routine;
    doubtful.asks = 1;
    QueueInput inBatch = routine;
    inBatch.batch = BatchPlace::waits;
    QueueInput other;
    QueueInput answered = routine;
    answered.returnedBefore = true;
    QueueInput conflict = routine;
    conflict.conflict = true;
    QueueInput apart = routine;
    apart.fieldsApart = true;
    QueueInput positive;
    positive.positive.positive = true;
    QueueInput newConflict = positive;
    newConflict.newGround = newConflict.conflict = true;
    QueueInput waiting = positive;
    waiting.newGround = waiting.oneOfTwo = true;
    QueueInput first = positive;
    first.newGround = true;

    const std::vector<std::pair<QueueInput, std::string>> order{
        {first, "new-ground"},  {waiting, "one-of-two"},     {newConflict, "conflict"},
        {positive, "positive"}, {conflict, "conflict"},      {answered, "answered"},
        {doubtful, "doubtful-null"}, {other, "other"},       {routine, "routine-null"},
        {inBatch, "in-batch"}};
    int last = -1;
    for (const auto& [input, code] : order) {
        CAPTURE(code);
        const QueuePlace place = queuePlace(input);
        CHECK(place.code == code);
        CHECK(place.rank > last);
        last = place.rank;
    }
    CHECK(queuePlace(apart).code == "fields-apart");
    CHECK(queuePlace(apart).rank == queuePlace(conflict).rank);
    QueueInput findApart = first;
    findApart.fieldsApart = true;
    CHECK(queuePlace(findApart).code == "new-ground"); // the authority must hear of it, whatever else is open
    QueueInput failed = routine;
    failed.batch = BatchPlace::failed;
    CHECK(queuePlace(failed).code == "batch-failed"); // doubtful now
    CHECK(queuePlace(failed).rank == queuePlace(doubtful).rank);
    for (const BatchPlace batch : {BatchPlace::waits, BatchPlace::failed}) { // a batch speaks of nothing but routine
        for (QueueInput unusual : {doubtful, first, answered, conflict, apart}) {
            const std::string before = queuePlace(unusual).code;
            unusual.batch = batch;
            CHECK(queuePlace(unusual).code == before);
        }
    }
    QueueInput worthless = routine;
    worthless.worth = '0';
    CHECK(queuePlace(worthless).code == "doubtful-null");
    QueueInput older = first;
    older.positive.earlierGenerationOnly = true;
    CHECK(queuePlace(older).rank == 0);
    for (const RecordState state : {RecordState::draft, accepted, rejected, returned}) {
        QueueInput settled = first;
        settled.state = state;
        CHECK(queuePlace(settled).rank > last);
        CHECK(queuePlace(settled).code == "decided");
    }
}
