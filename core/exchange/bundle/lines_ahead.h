// Lines that a second thread reads while those before them are used. They are used in their order by the thread that gave them.

#pragma once

#include <cstdint>
#include <functional>
#include <future>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/result.h"

namespace cupule {

template <class Line>
class LinesAhead {
public:
    using Read = std::function<Line(std::string_view)>;          ///< on the other thread; must not touch what `use` touches
    using Use = std::function<Status(Line& line, std::int64_t number)>;

    LinesAhead(Read read, Use use) : m_read(std::move(read)), m_use(std::move(use)) {}

    /// A fault is that of an earlier line; nothing may be added after one.
    Status add(std::string_view text)
    {
        m_gathered.text += text;
        m_gathered.ends.push_back(m_gathered.text.size());
        return m_gathered.text.size() < enough ? Status() : turn();
    }
    /// Uses what is left; nothing where a line was refused.
    Status finish()
    {
        if (m_refused)
            return {};
        if (auto used = turn(); !used)
            return used;
        return use(m_reading.get());
    }

private:
    static constexpr std::size_t enough = 256 * 1024;            // bytes that one thread is begun for

    struct Gathered {
        std::string text;
        std::vector<std::size_t> ends;
    };

    static std::vector<Line> readAll(const Read& read, const Gathered& gathered)
    {
        std::vector<Line> lines;
        lines.reserve(gathered.ends.size());
        std::size_t from = 0;
        for (const std::size_t end : gathered.ends) {
            lines.push_back(read(std::string_view(gathered.text).substr(from, end - from)));
            from = end;
        }
        return lines;
    }
    /// Sends away what was gathered, and uses what was sent away before.
    Status turn()
    {
        auto before = std::exchange(m_reading, std::async(std::launch::async, [read = m_read, gathered = std::exchange(m_gathered, {})] {
                                        return readAll(read, gathered);
                                    }));
        return before.valid() ? use(before.get()) : Status();
    }
    Status use(std::vector<Line> lines)
    {
        for (Line& line : lines)
            if (auto used = m_use(line, ++m_number); !used) {
                m_refused = true;
                return used;
            }
        return {};
    }

    Read m_read;
    Use m_use;
    Gathered m_gathered;
    std::future<std::vector<Line>> m_reading;
    std::int64_t m_number = 0;
    bool m_refused = false;
};

} // namespace cupule
