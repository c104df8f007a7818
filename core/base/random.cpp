#include "core/base/random.h"

#include <sys/random.h>

#include <algorithm>
#include <cassert>
#include <cerrno>
#include <cstring>

namespace cupule {

std::uint64_t Random::below(std::uint64_t below)
{
    const std::uint64_t limit = UINT64_MAX - UINT64_MAX % below;
    std::uint64_t value = 0;
    do {
        std::uint8_t bytes[8];
        fill(bytes);
        std::memcpy(&value, bytes, sizeof value);
    } while (value >= limit);
    return value % below;
}

void SystemRandom::fill(std::span<std::uint8_t> out)
{
    while (!out.empty()) {
        const ssize_t got = getrandom(out.data(), out.size(), 0);
        if (got > 0)
            out = out.subspan(static_cast<std::size_t>(got));
        else
            assert(got < 0 && errno == EINTR);
    }
}

void SeededRandom::fill(std::span<std::uint8_t> out)
{
    for (std::size_t i = 0; i < out.size(); i += 8) {
        std::uint64_t z = (m_state += 0x9E3779B97F4A7C15ULL);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
        z ^= z >> 31;
        std::memcpy(out.data() + i, &z, std::min<std::size_t>(8, out.size() - i));
    }
}

} // namespace cupule
