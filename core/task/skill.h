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

/// Names beside the ids of signs.
inline const std::string gallLinesTogether = "gall-lines", hostOrNot = "host";

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
    std::string protocolVersion;           ///< of the pack; may be empty
    std::string protocol;                  ///< id of the pack
    std::vector<ToldSign> signs;           ///< "gall-lines" first, then "host", then the signs
    bool withdrawn = false;
};

/// What could be told now, from all answers that name the person. Of oneself, or of anybody for trainer and office. Fault "skill.none".
Result<ToldSkill> measuredSkill(Session& session, const Uid& person);
/// Tells it: of oneself, or of somebody who agreed to it before `consentTo` (a code; roles trainer, office). It takes the place of what was told
/// before. Faults "skill.none", "skill.consent", "skill.erased" (the person asked to be erased), "role.needed".
Status tellSkill(Session& session, const Uid& person, const std::string& consentTo);
/// Takes back everything that holds: of one's own, or for trainer and office. True where there was something.
Result<bool> withdrawSkill(Session& session, const Uid& person);

/// Everything that was told of a person, the greatest id first, withdrawn ones too.
Result<std::vector<ToldSkill>> toldSkills(Session& session, const Uid& person);
/// The one that holds: what Review shows beside a record of theirs. Telling again withdraws what was known before; of two that were told on
/// devices that did not know of each other, that of the greatest id, in every store.
Result<std::optional<ToldSkill>> toldSkill(Session& session, const Uid& person);

/// What is told of this sign ("gall-lines", "host" or an id of the pack); null where it was never asked.
const ToldSign* toldSign(const ToldSkill& skill, const std::string& sign);

/// What a planner may choose instead of the assumed chances of detection: the lower bound of the person's told skill in the gall lines. Nothing
/// where none was told, or where it was never there. Nothing uses it unless it is asked for by name.
std::optional<DetectionAssumption> measuredDetection(const ToldSkill& skill, const std::string& code);

} // namespace cupule
