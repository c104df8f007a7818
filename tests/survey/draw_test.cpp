#include "core/survey/draw.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "tests/support/catch.h"

using namespace cupule;

namespace {

/// Upper 0.1 % point of the chi-squared distribution, Wilson and Hilferty 1931 (PNAS 17:684).
double limitOf(double freedom)
{
    const double z = 3.0902;
    const double part = 2 / (9 * freedom);
    return freedom * std::pow(1 - part + z * std::sqrt(part), 3);
}

template <class Counts>
double chiSquared(const Counts& counts, double expected)
{
    double sum = 0;
    for (const auto count : counts)
        sum += (count - expected) * (count - expected) / expected;
    return sum;
}

} // namespace

TEST_CASE("a shuffle holds every number once, and the seed gives it again", "[survey][draw]")
{
    for (const std::size_t count : {0, 1, 2, 7, 1000}) {
        SeededRandom one(count), again(count), other(count + 1);
        const auto order = shuffled(count, one);
        CHECK(order == shuffled(count, again));
        if (count == 1000)
            CHECK(order != shuffled(count, other));
        auto sorted = order;
        std::sort(sorted.begin(), sorted.end());
        for (std::size_t i = 0; i < count; ++i)
            REQUIRE(sorted[i] == i);
        CHECK(sorted.size() == count);
    }
}

// The generator is SplitMix64 (Steele, Lea and Flood 2014), the shuffle Durstenfeld's (1964); this order was worked out from the
// published constants by a program in another language.
TEST_CASE("the order of a published seed stays what it is", "[survey][draw]")
{
    SeededRandom random(1);
    CHECK(shuffled(8, random) == std::vector<std::size_t>{4, 3, 2, 7, 5, 6, 0, 1});
}

TEST_CASE("every order is as likely as any other", "[survey][draw]")
{
    SeededRandom random(20260611);
    std::map<std::vector<std::size_t>, int> orders;
    constexpr int rounds = 24'000;
    for (int i = 0; i < rounds; ++i)
        ++orders[shuffled(4, random)];
    REQUIRE(orders.size() == 24);
    std::vector<int> counts;
    for (const auto& [order, count] : orders)
        counts.push_back(count);
    CHECK(chiSquared(counts, rounds / 24.0) < limitOf(23));
}

TEST_CASE("everybody is drawn as often, and every pair together", "[survey][draw]")
{
    constexpr std::size_t size = 40, drawn = 12;
    constexpr int rounds = 20'000;
    SeededRandom random(7);
    std::array<double, size> single{};
    std::map<std::pair<std::size_t, std::size_t>, double> pairs;
    for (int i = 0; i < rounds; ++i) {
        const auto order = shuffled(size, random);
        for (std::size_t a = 0; a < drawn; ++a) {
            ++single[order[a]];
            for (std::size_t b = a + 1; b < drawn; ++b)
                ++pairs[std::minmax(order[a], order[b])];
        }
    }
    // shares of a draw without replacement vary less than independent ones: n(1 - n/N) of the binomial's
    const double expected = rounds * double(drawn) / size;
    CHECK(chiSquared(single, expected) / (1 - double(drawn) / size) < limitOf(size - 1));
    const double both = rounds * double(drawn) / size * (drawn - 1) / (size - 1);
    CHECK(pairs.size() == size * (size - 1) / 2);
    for (const auto& [pair, count] : pairs)
        REQUIRE(count == Approx(both).epsilon(0.12)); // five standard deviations
}
