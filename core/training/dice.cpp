#include "core/training/dice.h"

#include <cmath>
#include <numbers>

namespace cupule {

/// splitmix64: S. Vigna's public-domain generator, after Steele, Lea and Flood (2014).
std::uint64_t Dice::next()
{
    std::uint64_t z = (m_state += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}

double Dice::in(double from, double to)
{
    return from + (to - from) * static_cast<double>(next() >> 11) * 0x1.0p-53;
}

int Dice::whole(int from, int to)
{
    return from + static_cast<int>(in(0, to - from + 1));
}

double Dice::normal()
{
    const double u = in(1e-12, 1);
    return std::sqrt(-2 * std::log(u)) * std::cos(2 * std::numbers::pi * in(0, 1));
}

Dice Dice::part(std::string_view name, int index) const
{
    std::uint64_t hash = 0xCBF29CE484222325ULL; // FNV-1a
    for (const char c : name)
        hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001B3ULL;
    hash = (hash ^ static_cast<std::uint64_t>(index + 1)) * 0x100000001B3ULL;
    Dice dice(m_state ^ hash);
    dice.next();
    return dice;
}

} // namespace cupule
