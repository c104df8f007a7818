// What the programme sets for a store: whom to tell of a find, who answers for samples, who may move one, and within how many
// hours it must be at the laboratory, and what a look is taken to find. Nobody published any of it; until the programme sets its own, the pack's proposals
// stand and are shown as such.

#pragma once

#include <optional>
#include <string>

#include "core/rules/custody.h"
#include "core/survey/detection.h"
#include "core/task/session.h"

namespace cupule {

struct Programme {
    std::string tell;                   ///< whom a volunteer tells of a find, and how; empty = nobody has set it
    std::string answers;                ///< who answers for samples, on labels; no home address; empty = not set
    std::string mayMove;                ///< who may move a sample; empty = not set
    std::optional<SampleLimits> limits; ///< hours from the seal; nothing = the pack's proposal
    DetectionChoice detection = DetectionChoice::protocol; ///< what "nothing seen" is taken to be worth in the account of the season
    bool operator==(const Programme&) const = default;
};

/// The most hours that a limit can have: a month.
inline constexpr double mostLimitHours = 744;

Result<Programme> programme(Session& session);
SampleLimits limitsOf(const Programme& programme, const Pack& pack);
/// Can be undone. Whom to tell and who answers: roles volunteer, sampleHandler, trainer, office; who may move a sample, the
/// hours and detection: trainer, office. Fault "programme.hours" where the hours do not rise or lie outside (0, mostLimitHours].
Status setProgramme(Session& session, const Programme& wanted, const std::string& what);

} // namespace cupule
