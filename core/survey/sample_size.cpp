#include "core/survey/sample_size.h"

#include <algorithm>
#include <cmath>

namespace cupule {

namespace {

/// Products of fractions miss an exact tie (95 of 100 for one unit at 95 %) by some units in the last place.
constexpr double slack = 1e-12;

bool isChance(double value)
{
    return value > 0 && value < 1;
}

/// None of `wanted` in a draw of `drawn`: the product over the smaller of the two numbers, which are exchangeable.
double chanceOfNone(std::int64_t size, std::int64_t wanted, std::int64_t drawn)
{
    if (wanted + drawn > size)
        return 0;
    const std::int64_t few = std::min(wanted, drawn);
    const std::int64_t many = std::max(wanted, drawn);
    double chance = 1;
    for (std::int64_t i = 0; i < few; ++i)
        chance *= static_cast<double>(size - many - i) / static_cast<double>(size - i);
    return chance;
}

double logChoose(double n, double k)
{
    return std::lgamma(n + 1) - std::lgamma(k + 1) - std::lgamma(n - k + 1);
}

/// Found none although some may have been drawn: the sum over how many were, each of them overlooked.
double chanceOfOverlooking(std::int64_t size, std::int64_t wanted, std::int64_t drawn, double sensitivity)
{
    const auto n = static_cast<double>(size);
    const auto d = static_cast<double>(wanted);
    const auto m = static_cast<double>(drawn);
    const double all = logChoose(n, m);
    double chance = 0;
    for (std::int64_t i = std::max<std::int64_t>(0, wanted + drawn - size); i <= std::min(wanted, drawn); ++i) {
        const auto k = static_cast<double>(i);
        chance += std::exp(logChoose(d, k) + logChoose(n - d, m - k) - all) * std::pow(1 - sensitivity, k);
    }
    return chance;
}

std::optional<std::int64_t> wholeNumber(double draws)
{
    if (!std::isfinite(draws) || draws > 1e15)
        return std::nullopt;
    return std::max<std::int64_t>(1, static_cast<std::int64_t>(std::ceil(draws - slack)));
}

} // namespace

std::int64_t unitsAtLevel(std::int64_t size, double level)
{
    return static_cast<std::int64_t>(std::floor(static_cast<double>(size) * level + 1e-9));
}

double chanceToFind(std::int64_t size, std::int64_t wanted, std::int64_t drawn, double sensitivity)
{
    size = std::max<std::int64_t>(0, size);
    wanted = std::clamp<std::int64_t>(wanted, 0, size);
    drawn = std::clamp<std::int64_t>(drawn, 0, size);
    sensitivity = std::clamp(sensitivity, 0.0, 1.0);
    if (sensitivity == 1)
        return 1 - chanceOfNone(size, wanted, drawn);
    return std::clamp(1 - chanceOfOverlooking(size, wanted, drawn, sensitivity), 0.0, 1.0);
}

std::optional<std::int64_t> sampleSize(std::int64_t size, std::int64_t wanted, double confidence, double sensitivity)
{
    if (!isChance(confidence) || wanted < 1 || wanted > size)
        return std::nullopt;
    const auto enough = [&](std::int64_t drawn) { return chanceToFind(size, wanted, drawn, sensitivity) >= confidence - slack; };
    if (!enough(size))
        return std::nullopt;
    std::int64_t tooFew = 0;
    std::int64_t does = size;
    while (does - tooFew > 1) {
        const std::int64_t middle = tooFew + (does - tooFew) / 2;
        (enough(middle) ? does : tooFew) = middle;
    }
    return does;
}

std::optional<std::int64_t> sampleSizeLarge(double level, double confidence, double sensitivity)
{
    const double hit = level * sensitivity;
    if (!isChance(confidence) || !(hit > 0) || hit > 1)
        return std::nullopt;
    return hit == 1 ? std::optional<std::int64_t>(1) : wholeNumber(std::log1p(-confidence) / std::log1p(-hit));
}

std::optional<std::int64_t> sampleSizePoisson(double level, double confidence, double sensitivity)
{
    const double hit = level * sensitivity;
    if (!isChance(confidence) || !(hit > 0) || hit > 1)
        return std::nullopt;
    return wholeNumber(-std::log1p(-confidence) / hit);
}

double combinedChance(std::span<const double> chances)
{
    double none = 1;
    for (const double chance : chances)
        none *= 1 - chance;
    return 1 - none;
}

} // namespace cupule
