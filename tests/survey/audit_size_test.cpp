#include "core/survey/audit_size.h"

#include <algorithm>
#include <cmath>

#include "core/survey/draw.h"
#include "tests/support/catch.h"
#include "tests/support/reference_rows.h"

using namespace cupule;

// ISPM 31 (FAO 2008), table of the hypergeometric case: figures from memory and worked out again in whole numbers.
TEST_CASE("what must be looked at is what the standard's table says of the lot in hand", "[survey][audit]")
{
    const auto drawn = [](std::int64_t size, double confidence, double tolerable) {
        return auditSize(size, confidence, tolerable).value().drawn;
    };
    CHECK(drawn(25, 0.95, 0.05) == 24);
    CHECK(drawn(100, 0.95, 0.05) == 45);
    CHECK(drawn(200, 0.95, 0.05) == 51);
    CHECK(drawn(300, 0.95, 0.01) == 189);
    CHECK(drawn(1000, 0.99, 0.01) == 368);
    // where the share comes to less than one record the table has a dash; here one wrong record must not go unnoticed
    CHECK(auditSize(10, 0.95, 0.05).value().wrong == 1);
    CHECK(drawn(10, 0.95, 0.05) == 10);
    CHECK(drawn(1, 0.5, 0.5) == 1);
}

TEST_CASE("every size of the standard's recomputed table comes out", "[survey][audit]")
{
    for (const auto& row : test::referenceRows("reference/stats/01_ispm31_table1_recomputed.csv")) {
        const auto size = std::stoll(row.at("lot_size_N"));
        CAPTURE(size, row.at("LOD_percent"), row.at("confidence_percent"));
        const auto audit =
            auditSize(size, std::stod(row.at("confidence_percent")) / 100, std::stod(row.at("LOD_percent")) / 100);
        REQUIRE(audit);
        CHECK(audit->wrong == std::max(1LL, std::stoll(row.at("d_floor"))));
        if (row.at("n_floor") != "-")
            CHECK(audit->drawn == std::stoll(row.at("n_floor")));
    }
}

TEST_CASE("what is no share, and an empty batch, have no answer", "[survey][audit]")
{
    CHECK_FALSE(auditSize(0, 0.95, 0.05));
    for (const double bad : {0.0, 1.0, -0.1, 1.5, std::nan("")}) {
        CHECK_FALSE(auditSize(100, bad, 0.05));
        CHECK_FALSE(auditSize(100, 0.95, bad));
    }
}

TEST_CASE("the draw is the smallest that reaches the confidence, of any batch", "[survey][audit]")
{
    SeededRandom random(31);
    for (int round = 0; round < 4000; ++round) {
        const auto size = 1 + static_cast<std::int64_t>(random.below(round % 2 == 0 ? 60 : 10'000));
        const double confidence = 0.5 + static_cast<double>(random.below(499)) / 1000;
        const double tolerable = (1 + static_cast<double>(random.below(300))) / 1000;
        CAPTURE(size, confidence, tolerable);
        const auto audit = auditSize(size, confidence, tolerable);
        REQUIRE(audit);
        REQUIRE(audit->wrong >= 1);
        REQUIRE(static_cast<double>(audit->wrong) <= std::max(1.0, static_cast<double>(size) * tolerable + 1e-6));
        REQUIRE((audit->drawn >= 1 && audit->drawn <= size));
        REQUIRE(audit->reached >= confidence - 1e-9);
        REQUIRE(chanceToFind(size, audit->wrong, audit->drawn - 1) < confidence);
        REQUIRE(chanceToFind(size, audit->wrong + 1, audit->drawn) >= audit->reached - 1e-12); // more wrong ones are found sooner
        REQUIRE(auditReached(*audit, 0.6) <= audit->reached + 1e-12);
        REQUIRE(auditSize(size, confidence / 2, tolerable)->drawn <= audit->drawn);
    }
}

TEST_CASE("drawn by chance, as many batches pass as the confidence lets pass", "[survey][audit]")
{
    // 200 records of which 10 are wrong: of 4000 draws about 5 % find none
    const auto audit = auditSize(200, 0.95, 0.05).value();
    REQUIRE(audit.wrong == 10);
    SeededRandom random(99);
    int passed = 0;
    constexpr int rounds = 4000;
    for (int i = 0; i < rounds; ++i) {
        const auto order = shuffled(200, random);
        passed += std::none_of(order.begin(), order.begin() + audit.drawn, [](std::size_t at) { return at < 10; }) ? 1 : 0;
    }
    const double expected = rounds * (1 - audit.reached);
    CHECK(std::abs(passed - expected) < 4 * std::sqrt(expected));
}

TEST_CASE("a few known records are mixed in, never none, never a second round", "[survey][audit]")
{
    CHECK(knownToMix(1) == 5);
    CHECK(knownToMix(45) == 9);
    CHECK(knownToMix(46) == 10);
    CHECK(knownToMix(5000) == 20);
}
