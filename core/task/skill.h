// What a person's practice says about how well they find each sign, told with their consent: it travels in bundles, stands beside their records
// in Review as information, and changes no record and no worth by itself.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/practice.h"
#include "core/survey/detection.h"
#include "core/task/session.h"
#include "core/training/accuracy.h"

namespace cupule {

/// One sign as told, with its intervals.
struct ToldSign {
    SignSkill counted;
    std::optional<Share> found;            ///< of those that were there
    std::optional<Share> passed;           ///< of those that were not
    bool few = true;                       ///< out of fewer than 30 in either
};

struct ToldSkill {
    Uid note;
    Instant at;
    CivilDate from, to;                    ///< days of the answers
    CivilDate consented;
    std::string consentTo;                 ///< "self", or a code
    std::vector<ToldSign> signs;           ///< "gall-lines" first, then "host", then the signs
    bool withdrawn = false;
};

/// What could be told now, from all answers that name the person. Of oneself, or of anybody for trainer and office. Fault "skill.none".
Result<ToldSkill> measuredSkill(Session& session, const Uid& person);
/// Tells it: of oneself, or of somebody who agreed to it before `consentTo` (a code; roles trainer, office). It takes the place of what was told
/// before. Faults "skill.none", "skill.consent", "role.needed".
Status tellSkill(Session& session, const Uid& person, const std::string& consentTo);
/// Of one's own, or for trainer and office. Fault "skill.unknown".
Status withdrawSkill(Session& session, const Uid& person, const Uid& note);

/// Everything that was told of a person, newest first, withdrawn ones too.
Result<std::vector<ToldSkill>> toldSkills(Session& session, const Uid& person);
/// The newest that holds: what Review shows beside a record of theirs.
Result<std::optional<ToldSkill>> toldSkill(Session& session, const Uid& person);

/// What a planner may choose instead of the assumed chances of detection: that of a person's told skill in the gall lines. Nothing where none was
/// told, or where it was never there. Nothing uses it unless it is asked for by name.
std::optional<DetectionAssumption> measuredDetection(const ToldSkill& skill, const std::string& code);

} // namespace cupule
