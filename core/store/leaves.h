// Leaves and regimes. The name of who gave leave is personal data and lies apart.

#pragma once

#include <optional>
#include <vector>

#include "core/record/leave.h"
#include "core/store/store.h"

namespace cupule {

class Leaves {
public:
    explicit Leaves(StoreCore& core) : m_core(core) {}
    Status save(Change& change, const Leave& leave);
    Status save(Change& change, const Regime& regime);
    Result<std::optional<Leave>> find(const Uid& id);
    Result<std::optional<Regime>> findRegime(const Uid& id);
    Result<std::vector<Leave>> all();          ///< by first day
    Result<std::vector<Regime>> allRegimes();  ///< by first day
    /// Erases the giver's name in every revision.
    Status eraseGiver(Change& change, const Uid& leave, const std::string& order);

private:
    StoreCore& m_core;
};

} // namespace cupule
