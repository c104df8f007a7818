// Gathers a season of a store for its one-page account (core/report/account.h).

#pragma once

#include "core/base/progress.h"
#include "core/report/account.h"
#include "core/task/session.h"

namespace cupule {

/// `year` 0 = all years. Fault "job.cancelled".
Result<report::AccountData> gatherAccount(Session& session, int year, const Progress& progress = {});

} // namespace cupule
