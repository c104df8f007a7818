#include "core/survey/sample_size.h"

#include <cmath>
#include <regex>
#include <string>

#include "tests/support/reference_rows.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

/// NAME=number in "N=25; LOD_percent=5; confidence_percent=95; d=1".
double named(const test::Row& row, const std::string& name)
{
    std::smatch match;
    const std::string& inputs = row.at("inputs");
    REQUIRE(std::regex_search(inputs, match, std::regex("(^|[ ;])" + name + "=([0-9.]+)")));
    return std::stod(match[2]);
}

std::int64_t whole(double value)
{
    return std::llround(value);
}

} // namespace

// ISPM 31 (FAO 2008), table of the hypergeometric case, figures from memory and worked out again in whole numbers.
TEST_CASE("a draw from a lot of known size is that of the standard's table", "[survey][sample-size]")
{
    CHECK(sampleSize(25, unitsAtLevel(25, 0.05), 0.95) == 24);
    CHECK(sampleSize(100, unitsAtLevel(100, 0.05), 0.95) == 45);
    CHECK(sampleSize(200, unitsAtLevel(200, 0.01), 0.95) == 155);
    CHECK(sampleSize(300, unitsAtLevel(300, 0.01), 0.95) == 189);
    CHECK(sampleSize(1000, 10, 0.99) == 368);
    // 300 at 0.5 % is one unit, so that more is asked for than of 500 or 600
    CHECK(unitsAtLevel(300, 0.005) == 1);
    CHECK(sampleSize(500, unitsAtLevel(500, 0.005), 0.95) == 388);
    CHECK(sampleSize(600, unitsAtLevel(600, 0.005), 0.95) == 379);
}

TEST_CASE("an exact tie is enough", "[survey][sample-size]")
{
    CHECK(sampleSize(100, 1, 0.95) == 95);
    CHECK(sampleSize(200, 1, 0.95) == 190);
    CHECK(sampleSize(1000, 1, 0.99) == 990);
}

TEST_CASE("what cannot be asked for has no answer", "[survey][sample-size]")
{
    CHECK_FALSE(sampleSize(25, 0, 0.95));
    CHECK_FALSE(sampleSize(25, 26, 0.95));
    CHECK_FALSE(sampleSize(25, 1, 1));
    CHECK_FALSE(sampleSize(25, 1, 0));
    CHECK_FALSE(sampleSize(60, 3, 0.99, 0.7)); // all sixty looked at give 97.3 %
    CHECK_FALSE(sampleSizeLarge(0, 0.95));
    CHECK_FALSE(sampleSizeLarge(0.5, std::nan("")));
    CHECK_FALSE(sampleSizePoisson(0.01, 1));
}

// Cannon 2001, Prev. Vet. Med. 49:141-163 (the exact sum, recomputed); ISPM 31 folds the efficacy into the units instead.
TEST_CASE("an eye that overlooks some needs more", "[survey][sample-size]")
{
    CHECK(chanceToFind(100, 5, 40, 0.9) == Approx(0.897765120699).margin(1e-10));
    CHECK(chanceToFind(1000, 10, 200, 0.8) == Approx(0.826243289711).margin(1e-10));
    CHECK(chanceToFind(250, 2, 150, 0.95) == Approx(0.815969879518).margin(1e-10));
    CHECK(sampleSize(100, 5, 0.95, 0.9) == 50);
    CHECK(sampleSize(1000, 20, 0.99, 0.5) == 410);
    CHECK(sampleSize(1000, unitsAtLevel(1000, 0.01 * 0.8), 0.95) == 312);
    CHECK(sampleSize(200, unitsAtLevel(200, 0.05 * 0.75), 0.95) == 69);
}

// ISPM 31 (FAO 2008), tables of the binomial and the Poisson case; figures from memory.
TEST_CASE("from a large lot the draw does not depend on its size", "[survey][sample-size]")
{
    CHECK(sampleSizeLarge(0.05, 0.95) == 59);
    CHECK(sampleSizeLarge(0.01, 0.95) == 299);
    CHECK(sampleSizePoisson(0.05, 0.95) == 60);
    CHECK(sampleSizePoisson(0.01, 0.95) == 300);
    CHECK(sampleSizeLarge(0.5, 0.875) == 3); // three halves leave exactly an eighth
    CHECK(sampleSizeLarge(1, 0.95) == 1);
}

TEST_CASE("independent looks add up", "[survey][sample-size]")
{
    const double mixed[] = {0.3, 0.4, 0.25};
    const double certain[] = {0.2, 1, 0.3};
    CHECK(combinedChance(mixed) == Approx(0.685).margin(1e-12));
    CHECK(combinedChance(certain) == 1);
    CHECK(combinedChance({}) == 0);
}

TEST_CASE("a larger draw never finds less, and the answer is the smallest that does", "[survey][sample-size]")
{
    for (const std::int64_t size : {7, 60, 223})
        for (const double eye : {1.0, 0.6})
            for (std::int64_t wanted = 1; wanted <= size; wanted += size / 7) {
                double before = 0;
                for (std::int64_t drawn = 0; drawn <= size; ++drawn) {
                    const double chance = chanceToFind(size, wanted, drawn, eye);
                    CHECK(chance >= before - 1e-12);
                    before = chance;
                }
                const auto answer = sampleSize(size, wanted, 0.9, eye);
                if (!answer)
                    continue;
                CHECK(chanceToFind(size, wanted, *answer, eye) >= 0.9 - 1e-12);
                CHECK(chanceToFind(size, wanted, *answer - 1, eye) < 0.9);
            }
}

TEST_CASE("every draw of the reference tables comes out", "[survey][sample-size]")
{
    for (const auto& row : test::referenceRows("reference/stats/01_ispm31_hypergeometric_check_values.csv")) {
        CAPTURE(row.at("id"));
        const std::int64_t size = whole(named(row, "N"));
        const std::int64_t units = unitsAtLevel(size, named(row, "LOD_percent") / 100);
        const auto answer = sampleSize(size, units, named(row, "confidence_percent") / 100);
        CHECK((answer ? std::to_string(*answer) : "-") == row.at("expected"));
    }
    for (const auto& row : test::referenceRows("reference/stats/01_ispm31_binomial_poisson_check_values.csv")) {
        CAPTURE(row.at("id"));
        const auto ask = row.at("id").starts_with("poi") ? sampleSizePoisson : sampleSizeLarge;
        CHECK(ask(named(row, "LOD_percent") / 100, named(row, "confidence_percent") / 100, named(row, "efficacy_percent") / 100)
              == whole(std::stod(row.at("expected"))));
    }
}
