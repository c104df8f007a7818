// Undo steps of this device, kept in the store so that they survive a restart. A step holds contents before and after;
// applying them is the task layer's work (a draft is set back in place, a handed-in visit gets a compensating revision).

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/store/store.h"

namespace cupule {

struct UndoPart {
    std::string noun;                      ///< "visit", "tree", ...
    Uid entity;
    std::string before;                    ///< canonical JSON; empty = did not exist
    std::string after;                     ///< canonical JSON; empty = no longer exists
};

struct UndoStep {
    std::int64_t id = 0;
    std::string what;
    std::vector<UndoPart> parts;
};

class UndoLog {
public:
    explicit UndoLog(StoreCore& core) : m_core(core) {}
    /// Adds a step and forgets what could have been redone. Keeps the last 500.
    Status push(Change& change, const std::string& what, const std::vector<UndoPart>& parts);
    Result<std::optional<UndoStep>> nextUndo();
    Result<std::optional<UndoStep>> nextRedo();
    Status markUndone(Change& change, std::int64_t step);
    Status markRedone(Change& change, std::int64_t step);
    /// Steps that touch this noun can no longer be undone (it was handed over, erased).
    Status forget(Change& change, const Uid& entity);

private:
    StoreCore& m_core;
};

} // namespace cupule
