// One committed change: a transaction that rolls back unless commit() is called. It carries who made it and when;
// every journal line and revision written inside it gets that author and that moment.

#pragma once

#include "core/base/clock.h"
#include "core/base/result.h"
#include "core/base/uid.h"

namespace cupule {

class StoreCore;

/// How much a change will write. Where it is much, 64 MiB of the store are kept at hand instead of 8, and what undoing a part of the
/// change would need stays in memory.
enum class ChangeSize { usual, large };

class Change {
public:
    Change(StoreCore& core, const Uid& author, const Instant& at);   ///< used by Store::begin only
    Change(Change&& other) noexcept;
    Change& operator=(Change&&) = delete;
    Change(const Change&) = delete;
    ~Change();

    /// Makes everything durable with one flush. After a fault ("store.full", "store.in-use", "store.io") nothing was kept.
    Status commit();
    [[nodiscard]] const Uid& author() const { return m_author; }
    [[nodiscard]] const Instant& at() const { return m_at; }
    [[nodiscard]] StoreCore& core() const { return *m_core; }

private:
    StoreCore* m_core;
    Uid m_author;
    Instant m_at;
};

} // namespace cupule
