#include "core/store/migrate.h"

#include <array>

#include "core/store/embedded_sql.h"

namespace cupule {

std::span<const SchemaStep> schemaSteps()
{
    static constexpr std::array steps{
        SchemaStep{1, "base", embedded::sql_0001_base},
        SchemaStep{2, "search_and_place", embedded::sql_0002_search_and_place},
        SchemaStep{3, "import_and_queue", embedded::sql_0003_import_and_queue},
        SchemaStep{4, "photo_likeness", embedded::sql_0004_photo_likeness},
        SchemaStep{5, "keys_and_bundles", embedded::sql_0005_keys_and_bundles},
        SchemaStep{6, "counts", embedded::sql_0006_counts},
        SchemaStep{7, "blind_audit", embedded::sql_0007_blind_audit},
        SchemaStep{8, "merge", embedded::sql_0008_merge},
        SchemaStep{9, "practice", embedded::sql_0009_practice},
        SchemaStep{10, "told", embedded::sql_0010_told},
        SchemaStep{11, "practice_counts", embedded::sql_0011_practice_counts},
    };
    return steps;
}

int newestSchema()
{
    return schemaSteps().back().version;
}

std::string_view invariantQueries()
{
    return embedded::sql_invariants;
}

void applyStep(Connection& db, const SchemaStep& step)
{
    db.run(step.sql);
    db.run("PRAGMA user_version = " + std::to_string(step.version));
}

void upgradeSchema(Connection& db)
{
    for (const SchemaStep& step : schemaSteps()) {
        db.run("BEGIN IMMEDIATE");
        try {
            if (db.number("PRAGMA user_version") < step.version)   // another program may have come first
                applyStep(db, step);
            db.run("COMMIT");
        } catch (const StoreError&) {
            if (db.inTransaction())
                db.run("ROLLBACK");
            throw;
        }
    }
}

} // namespace cupule
