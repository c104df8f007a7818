// Lines that other threads unpack and read while those before them are used. They are used in their order by the thread that asked.

#pragma once

#include <array>
#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <future>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/result.h"

namespace cupule {

/// Things that one thread puts down and another takes up, a few at a time.
template <class Thing>
class Belt {
public:
    /// Waits for room; false where nobody takes any more.
    bool put(Thing thing)
    {
        std::unique_lock lock(m_mutex);
        m_turned.wait(lock, [&] { return m_ended || m_things.size() < mostWaiting; });
        if (m_ended)
            return false;
        m_things.push_back(std::move(thing));
        m_turned.notify_all();
        return true;
    }
    /// Waits for the next; nothing after the last.
    std::optional<Thing> take()
    {
        std::unique_lock lock(m_mutex);
        m_turned.wait(lock, [&] { return m_ended || !m_things.empty(); });
        if (m_things.empty())
            return std::nullopt;
        std::optional<Thing> thing(std::move(m_things.front()));
        m_things.pop_front();
        m_turned.notify_all();
        return thing;
    }
    /// Nothing more is put down; what lies there can still be taken.
    void end()
    {
        const std::lock_guard lock(m_mutex);
        m_ended = true;
        m_turned.notify_all();
    }

private:
    static constexpr std::size_t mostWaiting = 4;

    std::mutex m_mutex;
    std::condition_variable m_turned;
    std::deque<Thing> m_things;
    bool m_ended = false;
};

template <class Line>
class LinesAhead {
public:
    /// Stops where it is told of a fault.
    using Add = std::function<Status(std::string_view text)>;
    /// Gives all lines; on a thread of its own, as `Read` is: neither may touch what the others touch.
    using Give = std::function<Status(const Add& add)>;
    using Read = std::function<Line(std::string_view text)>;         ///< on several threads
    using Use = std::function<Status(Line& line, std::int64_t number)>;

    /// A fault of a line comes before one of those after it, and before one of giving.
    static Status run(const Give& give, const Read& read, const Use& use)
    {
        LinesAhead ahead;
        auto given = std::async(std::launch::async, [&] { return ahead.giveAll(give, read); });
        const Ending ending{ahead};        // before the threads are waited for
        for (std::future<void>& reading : ahead.m_readings)
            reading = std::async(std::launch::async, [&] { ahead.readAll(); });
        std::int64_t number = 0;
        while (auto lines = ahead.m_lines.take())
            for (Line& line : lines->get())
                if (auto used = use(line, ++number); !used)
                    return used;
        return given.get();
    }

private:
    static constexpr std::size_t enough = 256 * 1024;                // bytes of a pile of lines

    struct Pile {
        std::string text;
        std::vector<std::size_t> ends;
    };
    struct Ending {
        LinesAhead& ahead;
        ~Ending() { ahead.end(); }
    };

    void end()
    {
        m_piles.end();
        m_lines.end();
    }
    Status giveAll(const Give& give, const Read& read)
    {
        const Ending ending{*this};
        Pile pile;
        const auto put = [&] {
            std::packaged_task<std::vector<Line>()> task([&read, gathered = std::exchange(pile, {})] { return linesOf(gathered, read); });
            return m_lines.put(task.get_future()) && m_piles.put(std::move(task));
        };
        Status given = give([&](std::string_view text) -> Status {
            pile.text += text;
            pile.ends.push_back(pile.text.size());
            if (pile.text.size() < enough || put())
                return {};
            return fail("job.cancelled", FaultKind::refused);        // seen by nobody: who takes no more has a fault to tell
        });
        put();
        return given;
    }
    static std::vector<Line> linesOf(const Pile& pile, const Read& read)
    {
        std::vector<Line> lines;
        lines.reserve(pile.ends.size());
        std::size_t from = 0;
        for (const std::size_t end : pile.ends) {
            lines.push_back(read(std::string_view(pile.text).substr(from, end - from)));
            from = end;
        }
        return lines;
    }
    void readAll()
    {
        while (auto task = m_piles.take())
            (*task)();
    }

    Belt<std::packaged_task<std::vector<Line>()>> m_piles;
    Belt<std::future<std::vector<Line>>> m_lines;
    std::array<std::future<void>, 2> m_readings;
};

} // namespace cupule
