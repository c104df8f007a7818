// After the rows of a table are in: what the trees show, and what the visits to one tree say about one another.
//
// A new tree whose visits all show the same characters has the verdict of any of them; the store has set it. Every other
// tree that was touched is computed as after a change by hand, up to a limit; beyond it lists show each visit by itself until it is opened.

#pragma once

#include <cstdint>
#include <vector>

#include "core/base/progress.h"
#include "core/task/import_resolve.h"
#include "core/task/session.h"

namespace cupule {

class TouchedTrees {
public:
    void add(const TableRow& row, const ResolvedRow& resolved, const VisitShown& shown);
    /// Inside the import's change, after BulkImport::finish(). Returns how many trees were left for later.
    Result<std::int64_t> refresh(Session& session, Change& change, BulkImport& bulk, const Progress& progress);

private:
    struct Touched {
        Uid id;
        std::uint32_t characters = 0;      // hash
        bool used = false, isNew = false, mixed = false, positive = false, nothing = false;
        HostAnswer host = HostAnswer::cannotTell;
        [[nodiscard]] bool alone() const { return isNew && !mixed && !(positive && nothing); }
    };
    std::vector<Touched> m_trees;          // by handle, which the store counts from 0
};

} // namespace cupule
