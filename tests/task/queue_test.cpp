#include "core/task/queue.h"

#include <algorithm>

#include "core/task/review.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// Four records of Mary's and one of John's, one of them a find.
struct FiveRecords {
    Vale vale;
    std::unique_ptr<Session> mary = vale.as("MH"), john = vale.as("JB"), v1 = vale.as("V1");
    Visit find = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    Visit weir = handedIn(*mary, treeAt(*mary, "W04", "SO 613 094", "Weir Wood"), [](Session& session, Visit visit) {
        visit.note = "Gate by the old kiln was open";
        return withNothing(session, visit);
    });
    Visit knoll = handedIn(*john, treeAt(*john, "K01", "SO 705 096", "Knoll"), withNothing);

    std::vector<Uid> found(const QueueWanted& wanted) { return findInQueue(*v1, wanted).value().visits; }
};

bool same(std::vector<Uid> one, std::vector<Uid> other)
{
    std::sort(one.begin(), one.end());
    std::sort(other.begin(), other.end());
    return one == other;
}

} // namespace

TEST_CASE("the queue is narrowed by why a record waits, sign, site, observer, day, square and words", "[task][queue]")
{
    FiveRecords five;
    QueueWanted wanted;
    CHECK(wanted.isPlain());
    CHECK(five.found({}).size() == 3);
    CHECK(five.found({}).front() == five.find.id);   // in the order of the queue
    CHECK(five.found({.which = "new-ground"}) == std::vector{five.find.id});
    CHECK(same(five.found({.which = "routine-null"}), {five.weir.id, five.knoll.id}));
    CHECK(five.found({.which = "accepted"}).empty());
    CHECK(five.found({.sign = "S02"}) == std::vector{five.find.id});
    CHECK(five.found({.sign = "S0"}).empty());       // no part of an id
    const auto sites = allSites(*five.v1).value();
    const auto knoll = std::find_if(sites.begin(), sites.end(), [](const Site& site) { return site.name == "Knoll"; });
    CHECK(five.found({.site = knoll->id}) == std::vector{five.knoll.id});
    CHECK(five.found({.observer = five.john->me()}) == std::vector{five.knoll.id});
    CHECK(five.found({.from = day(2026, 6, 11), .to = day(2026, 6, 11)}).size() == 3);
    CHECK(five.found({.from = day(2026, 6, 12)}).empty());
    CHECK(five.found({.to = day(2026, 6, 10)}).empty());
    // ten-kilometre squares: SO60 holds eastings 360 to 370 km
    CHECK(same(five.found({.square = "SO60"}), {five.find.id, five.weir.id}));
    CHECK(five.found({.square = "SO70"}) == std::vector{five.knoll.id});
    CHECK(five.found({.square = "SO6109"}) == std::vector{five.find.id, five.weir.id});
    CHECK(five.found({.words = "kiln"}) == std::vector{five.weir.id});
    CHECK(five.found({.words = "weir W04"}) == std::vector{five.weir.id});
    CHECK(five.found({.words = "john"}) == std::vector{five.knoll.id});
    CHECK(five.found({.words = "kiln john"}).empty());
}

TEST_CASE("a narrowing that says nothing sensible is refused with what is wrong", "[task][queue]")
{
    FiveRecords five;
    CHECK(faultOf(findInQueue(*five.v1, {.square = "nowhere"})) == "queue.square");
    CHECK(faultOf(findInQueue(*five.v1, {.square = "51.7, -2.5"})) == "queue.square");
    CHECK(faultOf(findInQueue(*five.v1, {.from = day(2026, 6, 11), .to = day(2026, 6, 10)})) == "queue.dates");
    CHECK(faultOf(findInQueue(*five.v1, {.which = "everything"})) == "queue.which");
}

TEST_CASE("decided records are found again, newest first, and their lines come by id", "[task][queue]")
{
    FiveRecords five;
    decide(*five.v1, decision(*five.v1, five.weir.id, Outcome::accept)).value();
    decide(*five.v1, decision(*five.v1, five.knoll.id, Outcome::giveBack, {"tree-not-shown"})).value();
    CHECK(five.found({.which = "accepted"}) == std::vector{five.weir.id});
    CHECK(five.found({.which = "returned"}) == std::vector{five.knoll.id});
    CHECK(five.found({}) == std::vector{five.find.id});
    const auto lines = queueLinesOf(*five.v1, {five.knoll.id, five.v1->ids().make(), five.find.id}).value();
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].line.treeLabel == "K01");
    CHECK(lines[1].place.code == "new-ground");
}

TEST_CASE("a line of the queue says how far the nearest accepted find is", "[task][queue]")
{
    FiveRecords five;
    for (const char* code : {"V1", "V2"}) {
        const auto verifier = five.vale.as(code);
        decide(*verifier, decision(*verifier, five.find.id, Outcome::accept)).value();
    }
    five.mary->setToday(day(2026, 6, 12));
    five.vale.clock.set({at(12).utcMilliseconds + 86'400'000, 0});
    const Visit next = handedIn(*five.mary, treeAt(*five.mary, "W09", "SO 632 094", "Weir Wood"), withGall);
    const auto lines = queueLines(*five.v1, 0, 1).value();
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].line.id == next.id);
    REQUIRE(lines[0].nearestFindMetres);
    CHECK(*lines[0].nearestFindMetres == Approx(2000).epsilon(0.01));
}

TEST_CASE("a narrowing is kept under a name, for this person and this store, and can be forgotten", "[task][queue]")
{
    FiveRecords five;
    const QueueWanted wanted{.which = "positive", .sign = "S02", .square = "SO60", .from = day(2026, 6, 1), .words = "kiln"};
    CHECK(faultOf(keepWanted(*five.mary, {"finds", wanted}, "kept")) == "role.needed");
    CHECK(faultOf(keepWanted(*five.v1, {" ", wanted}, "kept")) == "queue.name");
    REQUIRE(keepWanted(*five.v1, {"finds by the kiln", wanted}, "kept"));
    const auto kept = keptWanted(*five.v1).value();
    REQUIRE(kept.size() == 1);
    CHECK(kept[0].name == "finds by the kiln");
    CHECK(kept[0].wanted == wanted);
    CHECK(keptWanted(*five.vale.as("V2")).value().empty());
    REQUIRE(forgetWanted(*five.v1, "finds by the kiln", "forgotten"));
    CHECK(keptWanted(*five.v1).value().empty());
}
