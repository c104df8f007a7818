// What the verbs about batches share.

#pragma once

#include "app/json.h"
#include "app/verbs/verbs.h"
#include "core/task/audit.h"

namespace cupule::app {

/// A verb about one batch, named after the store by its number or id.
class BatchVerb : public StoreVerb {
protected:
    void declareBatch(CLI::App& options);
    Result<std::unique_ptr<Session>> openBatch(Run& run, bool readOnly = false);
    std::string m_batch;
    Uid m_id;
};

Json auditLineJson(const AuditLine& line);
Json auditPageJson(const AuditPage& page);
Json auditSizeJson(const AuditSize& size);
void sayBatch(Run& run, const AuditPage& page, const Pack& pack);
/// A share typed as "95" or "95%" or "0.95". Fault "audit.share".
Result<double> readShare(const std::string& typed);

} // namespace cupule::app
