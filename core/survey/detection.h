// How likely a look at an infested tree finds a gall, by the worth of the look: sets of assumptions, each with its name. Nobody has measured the
// chance in the field. A set is chosen by the planner and named wherever a figure rests on it.

#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace cupule {

/// What a planner takes for the chance of detection.
enum class DetectionChoice {
    protocol,                              ///< the assumed set
    measured                               ///< of each observer the lower bound of what was measured and told; the assumed set where nothing is
};
/// Stored names: "protocol", "measured".
std::string_view detectionName(DetectionChoice choice);
std::optional<DetectionChoice> detectionNamed(std::string_view name);

struct DetectionAssumption {
    std::string name;                      ///< "assumed", or "measured:" and whose
    double a = 0, b = 0, c = 0;            ///< of a look of that worth, 0 to 1; of worth 0 it is 0
    bool measured = false;
    [[nodiscard]] double of(char worth) const;
};

/// 0.7, 0.5, 0.3 and 0: assumed, nobody measured them.
DetectionAssumption assumedDetection();

/// From the lower end (0 to 1) of the 95 % interval of the share of galls that somebody found in practice: that for a look of worth A; for B and C
/// as much less as in the assumed set. The lower end because few answers must not count as much as many, and because practice is easier than a
/// tree; it stays an assumption. Nothing where it is no share.
std::optional<DetectionAssumption> measuredDetection(const std::string& whose, double lower);

} // namespace cupule
