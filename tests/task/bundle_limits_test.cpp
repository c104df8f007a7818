#include "core/task/bundle_limits.h"

#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("limits of a bundle are the store's, set by the office, and proposed until then", "[task][bundles]")
{
    Vale vale;
    const auto office = vale.as("OF");
    CHECK(bundleLimits(*office)->parts == BundleLimits{}.parts);
    BundleLimits wanted;
    wanted.parts = 30;
    wanted.wholeBytes = 1'000'000;
    CHECK(faultOf(setBundleLimits(*vale.as("MH"), wanted, "limits")) == "role.needed");
    done(setBundleLimits(*office, wanted, "limits"));
    const auto kept = bundleLimits(*vale.as("MH")).value();
    CHECK(kept.parts == 30);
    CHECK(kept.wholeBytes == 1'000'000);
    CHECK(kept.lineBytes == BundleLimits{}.lineBytes);
    wanted.lineBytes = 0;
    const auto refused = setBundleLimits(*office, wanted, "limits");
    REQUIRE(faultOf(refused) == "bundle.limit");
    CHECK(refused.error().argument("limit") == "line");
    CHECK(bundleLimits(*office)->parts == 30);
}
