// Runs the steps of a table's batches on two threads, in lock step.
//
//   turn k:   caller   add(k-2), resolve(k), then helps to judge(k-1)
//             worker   read(k+1), then helps to judge(k-1)

#pragma once

#include <array>
#include <atomic>
#include <cstdint>
#include <functional>
#include <semaphore>
#include <thread>
#include <vector>

#include "core/store/bulk_import.h"
#include "core/task/import_judge.h"
#include "core/task/import_resolve.h"
#include "core/task/import_table.h"

namespace cupule {

struct ImportBatch {
    TableBatch table;
    std::vector<ResolvedRow> resolved;
    std::vector<VisitShown> shown;
    std::vector<ReadyVisit> ready;
    std::vector<ImportProblem> questions;
};

/// What is done with a batch. `read` is called on the worker, `judge` on both (rows of one batch, each once), the others on
/// the caller's thread.
struct ImportSteps {
    std::function<Result<bool>(ImportBatch&)> read;      ///< false: there was none
    std::function<Status(ImportBatch&)> resolve;
    std::function<void(ImportBatch&, std::size_t row, int thread)> judge;
    std::function<Status(ImportBatch&)> add;
};

/// Until there are no more batches. The first fault ends it.
Status runBatches(const ImportSteps& steps);

} // namespace cupule
