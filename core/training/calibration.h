// Whether people are as often right as they say they are sure.

#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/training/accuracy.h"
#include "core/training/answer.h"

namespace cupule {

/// Answers whose stated sureness lies in one band: above `from`, up to and with `to` percent; the first holds 0 as well.
struct ReliabilityRow {
    int from = 0, to = 10;
    std::int64_t answers = 0;
    double stated = 0;                     ///< mean, 0 to 1
    Share right;                           ///< with Wilson's interval
};

struct Calibration {
    std::int64_t answers = 0;
    double brier = 0;                      ///< 0 is perfect; saying 50 % always gives 0.25
    double stated = 0;                     ///< mean of what was stated, 0 to 1
    Share right;
    double overSure = 0;                   ///< stated less right: above 0 surer than right
    double reliability = 0;                ///< 0 is perfect; brier = reliability - resolution + uncertainty
    double resolution = 0;
    double uncertainty = 0;
    std::vector<ReliabilityRow> rows;      ///< bands of ten percent that have answers, from below
};

/// Brier 1950, Mon. Weather Rev. 78:1-3 (half of his score: of being right alone); parts after Murphy 1973, J. Appl. Meteor. 12:595-600,
/// over the distinct percentages. Nothing where there are no answers.
std::optional<Calibration> calibrationOf(std::span<const SureTally> tallies);

} // namespace cupule
