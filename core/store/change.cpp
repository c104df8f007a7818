#include "core/store/change.h"

#include "core/store/store_core.h"

namespace cupule {

Change::Change(StoreCore& core, const Uid& author, const Instant& at) : m_core(&core), m_author(author), m_at(at) {}

Change::Change(Change&& other) noexcept : m_core(other.m_core), m_author(other.m_author), m_at(other.m_at)
{
    other.m_core = nullptr;
}

Change::~Change()
{
    if (m_core != nullptr)
        m_core->rollBack();
}

Status Change::commit()
{
    Status done = guarded([&] { m_core->commit(); });
    if (!done)
        m_core->rollBack();
    m_core = nullptr;
    return done;
}

} // namespace cupule
