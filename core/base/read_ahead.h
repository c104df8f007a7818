// Reading things a pile ahead of their use: the reading goes on beside it, everything else stays on the thread that asked.

#pragma once

#include <future>
#include <utility>

#include "core/base/result.h"

namespace cupule {

/// `next` gives a pile of things, an empty one at the end; `read` works on each on another thread, and must touch nothing that `next` and
/// `use` touch; `use` has them in their order. Stops at a fault of `use`; what `read` throws is thrown here.
template <class Next, class Read, class Use>
Status useReadAhead(const Next& next, const Read& read, const Use& use)
{
    const auto begin = [&] {
        return std::async(std::launch::async, [pile = next(), &read]() mutable {
            for (auto& each : pile)
                read(each);
            return std::move(pile);
        });
    };
    auto reading = begin();
    for (auto ready = reading.get(); !ready.empty(); ready = reading.get()) {
        reading = begin();
        for (auto& each : ready)
            if (auto used = use(each); !used)
                return used;
    }
    return {};
}

} // namespace cupule
