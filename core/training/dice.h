// Seeded numbers for drawings and cases: the same on every machine, split by part so that one more bud does not move every tooth.

#pragma once

#include <cstdint>
#include <string_view>

namespace cupule {

class Dice {
public:
    explicit Dice(std::uint64_t seed) : m_state(seed) {}
    /// Uniform in [from, to).
    double in(double from, double to);
    /// Whole number in [from, to].
    int whole(int from, int to);
    bool chance(double share) { return in(0, 1) < share; }
    /// Mean 0, standard deviation 1.
    double normal();
    /// Independent dice for an organ; does not advance these.
    [[nodiscard]] Dice part(std::string_view name, int index = 0) const;

private:
    std::uint64_t next();
    std::uint64_t m_state;
};

} // namespace cupule
