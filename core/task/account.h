// Gathers a season of a store for its one-page account (core/report/account.h).

#pragma once

#include <optional>

#include "core/base/progress.h"
#include "core/report/account.h"
#include "core/survey/detection.h"
#include "core/task/session.h"

namespace cupule {

/// `year` 0 = all years. `detection`: what a look is taken to find; nothing = what the programme sets (core/task/programme.h). Fault "job.cancelled".
Result<report::AccountData> gatherAccount(Session& session, int year, const Progress& progress = {}, std::optional<DetectionChoice> detection = {});

} // namespace cupule
