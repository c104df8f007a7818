// The schema's steps, embedded from core/store/sql, and the walk from one version to the next.
// Inside the store room, and for its tests; functions throw StoreError.

#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "core/store/connection.h"

namespace cupule {

inline constexpr std::int32_t storeApplicationId = 0x4355504C;   ///< "CUPL"

struct SchemaStep {
    int version;
    std::string_view topic;
    std::string_view sql;
};

/// In order, versions 1, 2, 3 ...
std::span<const SchemaStep> schemaSteps();
int newestSchema();
std::string_view invariantQueries();

/// Runs one step and sets its version. The caller holds the transaction.
void applyStep(Connection& db, const SchemaStep& step);
/// All steps beyond the version found, each with its version in one transaction.
void upgradeSchema(Connection& db);

} // namespace cupule
