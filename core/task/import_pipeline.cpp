#include "core/task/import_pipeline.h"

#include <optional>

namespace cupule {

namespace {

constexpr std::size_t ringSize = 4;
constexpr std::size_t judgedAtOnce = 16;

class Pipeline {
public:
    explicit Pipeline(const ImportSteps& steps) : m_steps(steps) {}

    Status run()
    {
        m_more = m_steps.read(at(0));
        if (!m_more)
            return fail(m_more.error());
        if (!*m_more)
            return {};
        std::jthread worker([this] { work(); });
        const Status done = turns();
        m_ended = true;
        m_go.release();
        return done;
    }

private:
    ImportBatch& at(std::int64_t number) { return m_ring[static_cast<std::size_t>(number) % ringSize]; }

    void work()
    {
        for (;;) {
            m_go.acquire();
            if (m_ended)
                return;
            if (m_reading)
                m_more = m_steps.read(at(m_turn + 1));
            judge(1);
            m_done.release();
        }
    }

    void judge(int thread)
    {
        if (m_judging == nullptr)
            return;
        const std::size_t rows = m_judging->table.good;
        for (;;) {
            const std::size_t from = m_next.fetch_add(judgedAtOnce);
            if (from >= rows)
                return;
            for (std::size_t i = from; i < std::min(rows, from + judgedAtOnce); ++i)
                m_steps.judge(*m_judging, i, thread);
        }
    }

    /// One turn of the caller's thread; the worker has been started.
    Status own(std::int64_t last)
    {
        if (m_turn >= 2)
            if (auto added = m_steps.add(at(m_turn - 2)); !added)
                return added;
        if (m_turn <= last)
            if (auto resolved = m_steps.resolve(at(m_turn)); !resolved)
                return resolved;
        judge(0);
        return {};
    }

    Status turns()
    {
        constexpr std::int64_t unknown = INT64_MAX - 4;
        std::int64_t last = unknown;                     // number of the last batch
        for (m_turn = 0; m_turn <= last + 2; ++m_turn) {
            m_reading = last == unknown;
            m_judging = m_turn >= 1 && m_turn - 1 <= last ? &at(m_turn - 1) : nullptr;
            if (m_judging != nullptr) {
                m_judging->shown.resize(m_judging->table.good);
                m_judging->ready.resize(m_judging->table.good);
            }
            m_next = 0;
            m_go.release();
            const Status mine = own(last);
            m_done.acquire();
            if (!mine)
                return mine;
            if (m_reading && !m_more)
                return fail(m_more.error());
            if (m_reading && !*m_more)
                last = m_turn;
        }
        return {};
    }

    const ImportSteps& m_steps;
    std::array<ImportBatch, ringSize> m_ring;
    std::binary_semaphore m_go{0}, m_done{0};
    Result<bool> m_more = false;
    std::int64_t m_turn = 0;
    ImportBatch* m_judging = nullptr;
    std::atomic<std::size_t> m_next{0};
    bool m_reading = false, m_ended = false;
};

} // namespace

Status runBatches(const ImportSteps& steps)
{
    return Pipeline(steps).run();
}

} // namespace cupule
