// Chance comes in through this seam; a seeded source gives the same bytes each time.

#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace cupule {

class Random {
public:
    virtual ~Random() = default;
    virtual void fill(std::span<std::uint8_t> out) = 0;
    /// Uniform in [0, below); `below` > 0.
    std::uint64_t below(std::uint64_t below);
};

/// The operating system's generator; for ids, salts and keys.
class SystemRandom final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override;
};

/// SplitMix64 (Steele, Lea and Flood, 2014). For tests and reproducible draws, never for salts or keys.
class SeededRandom final : public Random {
public:
    explicit SeededRandom(std::uint64_t seed) : m_state(seed) {}
    void fill(std::span<std::uint8_t> out) override;

private:
    std::uint64_t m_state;
};

} // namespace cupule
