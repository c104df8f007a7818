#include "core/survey/detection.h"

namespace cupule {

double DetectionAssumption::of(char worth) const
{
    switch (worth) {
    case 'A': return a;
    case 'B': return b;
    case 'C': return c;
    default: return 0;
    }
}

DetectionAssumption assumedDetection()
{
    return {"assumed", 0.7, 0.5, 0.3, 0.7, 0.7, false};
}

std::optional<DetectionAssumption> measuredDetection(const std::string& whose, double share, double lower, double upper)
{
    const bool holds = lower >= 0 && lower <= share && share <= upper && upper <= 1;
    if (!holds)
        return std::nullopt;
    const DetectionAssumption assumed = assumedDetection();
    return DetectionAssumption{"measured:" + whose, share, share * assumed.b / assumed.a, share * assumed.c / assumed.a, lower, upper, true};
}

} // namespace cupule
