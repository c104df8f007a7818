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
    return {"assumed", 0.7, 0.5, 0.3, false};
}

std::optional<DetectionAssumption> measuredDetection(const std::string& whose, double lower)
{
    const bool holds = lower >= 0 && lower <= 1;
    if (!holds)
        return std::nullopt;
    const DetectionAssumption assumed = assumedDetection();
    return DetectionAssumption{"measured:" + whose, lower, lower * assumed.b / assumed.a, lower * assumed.c / assumed.a, true};
}

std::string_view detectionName(DetectionChoice choice)
{
    return choice == DetectionChoice::measured ? "measured" : "protocol";
}

std::optional<DetectionChoice> detectionNamed(std::string_view name)
{
    for (const DetectionChoice each : {DetectionChoice::protocol, DetectionChoice::measured})
        if (name == detectionName(each))
            return each;
    return std::nullopt;
}

} // namespace cupule
