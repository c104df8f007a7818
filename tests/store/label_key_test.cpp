#include "core/store/label_key.h"

#include <algorithm>

#include "tests/support/catch.h"

namespace cupule {

TEST_CASE("labels sort as people count", "[store]")
{
    const std::vector<std::string> sorted{"", "7", "T", "t-1", "T-2", "T-02b", "T-10", "T-100", "T-999999999999", "T1", "tree"};
    std::vector<std::string> keys;
    for (const std::string& label : sorted)
        keys.push_back(labelKey(label));
    CHECK(std::is_sorted(keys.begin(), keys.end()));
    CHECK(labelKey("T-007") == labelKey("t-7"));
    CHECK(labelKey("T-70") != labelKey("T-7"));
}

TEST_CASE("what begins like the typed text lies in its ranges", "[store]")
{
    const auto begins = [](const std::string& typed, const std::string& label) {
        const auto ranges = labelKeysFrom(typed);
        const std::string key = labelKey(label);
        return std::any_of(ranges.begin(), ranges.end(), [&](const auto& r) { return key >= r.first && key < r.second; });
    };
    CHECK(begins("T-1", "T-1"));
    CHECK(begins("t-1", "T-17"));
    CHECK(begins("T-1", "T-1/b"));
    CHECK(begins("T-", "T-17"));
    CHECK(begins("T", "Thorn"));
    CHECK(begins("12", "1234567890"));
    CHECK_FALSE(begins("T-1", "T-2"));
    CHECK_FALSE(begins("T-1", "T1"));
    CHECK_FALSE(begins("T-17", "T-1"));
    CHECK(labelKeysFrom("").empty());
}

} // namespace cupule
