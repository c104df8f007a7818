// How long work reports and is told to stop. Callbacks come on the thread that does the work.

#pragma once

#include <cstdint>
#include <functional>
#include <stop_token>

namespace cupule {

struct Progress {
    /// Done so far and the whole (0 = not known yet), both in the unit of the work at hand.
    std::function<void(std::int64_t done, std::int64_t whole)> report;
    std::stop_token stop;

    void tell(std::int64_t done, std::int64_t whole) const
    {
        if (report)
            report(done, whole);
    }
    [[nodiscard]] bool cancelled() const { return stop.stop_requested(); }
};

} // namespace cupule
