// Gathers a visit for its notice to the authority (core/report/notice.h).

#pragma once

#include "core/report/notice.h"
#include "core/task/session.h"

namespace cupule {

/// `names`: people by name as well as by code. Anyone who may open the store may make one: the duty to tell is everybody's. Faults
/// "visit.unknown", "notice.no-find" (no gall line is seen on a tree that may be a host).
Result<report::NoticeData> gatherNotice(Session& session, const Uid& visit, bool names);

} // namespace cupule
