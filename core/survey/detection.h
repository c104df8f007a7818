// How likely a look at an infested tree finds a gall, by the worth of the look: sets of assumptions, each with its name. Nobody has measured the
// chance in the field. A set is chosen by the planner and named wherever a figure rests on it.

#pragma once

#include <optional>
#include <string>

namespace cupule {

struct DetectionAssumption {
    std::string name;                      ///< "assumed", or "measured:" and whose
    double a = 0, b = 0, c = 0;            ///< of a look of that worth, 0 to 1; of worth 0 it is 0
    double lowerA = 0, upperA = 0;         ///< 95 % of what was measured; equal to `a` where it is assumed
    bool measured = false;
    [[nodiscard]] double of(char worth) const;
};

/// 0.7, 0.5, 0.3 and 0: assumed, nobody measured them.
DetectionAssumption assumedDetection();

/// From the share of galls that somebody found in practice (0 to 1, with its interval): that share for a look of worth A; for B and C as much
/// less as in the assumed set. Practice is easier than a tree: it is an upper limit of what they find outdoors, and still an assumption.
/// Nothing where the share is no share.
std::optional<DetectionAssumption> measuredDetection(const std::string& whose, double share, double lower, double upper);

} // namespace cupule
