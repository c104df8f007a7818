// Gathers a sample for its papers: labels and custody record (core/report/label.h, custody_record.h).

#pragma once

#include "core/base/progress.h"
#include "core/report/custody_record.h"
#include "core/task/session.h"

namespace cupule {

/// Fault "sample.unknown".
Result<report::SampleFacts> gatherLabels(Session& session, const Uid& sample);
/// What the labels of a number without a sample need: the store and who answers for samples.
Result<report::SampleFacts> gatherReservedLabels(Session& session);
/// Walks the journal too, so that the paper can say whether it holds. Faults "sample.unknown", "job.cancelled".
Result<report::CustodyRecordData> gatherCustodyRecord(Session& session, const Uid& sample, const Progress& progress = {});

} // namespace cupule
