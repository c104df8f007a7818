// Identity of every noun: UUID version 7 (RFC 9562, section 5.7), so that ids made later sort later.

#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/base/result.h"

namespace cupule {

struct Uid {
    std::array<std::uint8_t, 16> bytes{};
    auto operator<=>(const Uid&) const = default;
    /// All zero means "none".
    [[nodiscard]] bool isNull() const;
    /// Lower case, 8-4-4-4-12; empty for the null id.
    [[nodiscard]] std::string text() const;
    /// Reads the 36-character form in either case; the empty text gives the null id. Fault "base.uid".
    static Result<Uid> parse(std::string_view text);
};

/// Makes ids that never decrease within one maker, also when the clock stands still or goes back
/// (RFC 9562, section 6.2, method 1: a counter in the 12 bits of rand_a). Not for two threads at once.
class UidMaker {
public:
    UidMaker(const Clock& clock, Random& random) : m_clock(clock), m_random(random) {}
    Uid make();

private:
    const Clock& m_clock;
    Random& m_random;
    std::int64_t m_lastMilliseconds = -1;
    std::uint32_t m_counter = 0;
};

/// Ids from a fixed moment and a block of random bytes at a time: one call of the system for a hundred ids.
class ManyIds {
public:
    ManyIds(const Instant& at, Random& random);
    Uid make() { return m_maker.make(); }

private:
    class Blocks final : public Random {
    public:
        explicit Blocks(Random& source) : m_source(source) {}
        void fill(std::span<std::uint8_t> out) override;

    private:
        Random& m_source;
        std::array<std::uint8_t, 4096> m_block{};
        std::size_t m_used = sizeof m_block;
    };
    FixedClock m_clock;
    Blocks m_blocks;
    UidMaker m_maker;
};

} // namespace cupule

template <>
struct std::hash<cupule::Uid> {
    std::size_t operator()(const cupule::Uid& id) const noexcept;
};
