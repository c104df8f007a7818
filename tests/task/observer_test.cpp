#include "core/task/observer.h"

#include "core/task/review.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("an observer's past counts what became of each sign and why not", "[task][observer]")
{
    Vale vale;
    const auto mary = vale.as("MH"), john = vale.as("JB"), v1 = vale.as("V1"), v2 = vale.as("V2");
    CHECK(observerPast(*v1, mary->me()).value().records == 0);
    const Visit find = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withGall);
    const Visit none = handedIn(*mary, treeAt(*mary, "W04", "SO 613 094"), withNothing);
    const Visit poor = handedIn(*mary, treeAt(*mary, "W05", "SO 614 094"), withNothing);
    const Visit other = handedIn(*john, treeAt(*john, "K01", "SO 615 094"), withNothing);
    decide(*v1, decision(*v1, find.id, Outcome::accept)).value();
    decide(*v2, decision(*v2, find.id, Outcome::accept)).value();
    decide(*v1, decision(*v1, none.id, Outcome::accept)).value();
    decide(*v1, decision(*v1, poor.id, Outcome::accept)).value();
    REQUIRE(undoDecision(*v1, poor.id));
    decide(*v1, decision(*v1, poor.id, Outcome::reject, {"tree-not-shown"})).value();
    decide(*v1, decision(*v1, other.id, Outcome::accept)).value();

    const ObserverPast past = observerPast(*v1, mary->me()).value();
    CHECK(past.records == 3);
    CHECK_FALSE(past.more);
    REQUIRE(past.bySign.size() == 2);
    CHECK(past.bySign[0] == std::pair<std::string, OutcomeCounts>{"", {1, 1, 0}});
    CHECK(past.bySign[1] == std::pair<std::string, OutcomeCounts>{"S02", {1, 0, 0}});
    CHECK(past.reasons == std::vector<std::pair<std::string, int>>{{"tree-not-shown", 1}});
    CHECK(reviewPage(*v1, other.id).value().observerPast.records == 1);
}
