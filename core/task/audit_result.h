// What an audit came to. Inside the task room only.

#pragma once

#include "core/store/audits.h"
#include "core/task/audit.h"

namespace cupule {

/// Of a batch that was closed.
Result<AuditResult> auditResult(Session& session, const StoredAudit& audit);

} // namespace cupule
