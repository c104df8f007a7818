#include "core/training/accuracy.h"

#include <cmath>

namespace cupule {

namespace {

std::optional<Share> shareOf(std::int64_t hits, std::int64_t total)
{
    if (total <= 0)
        return std::nullopt;
    return Share{static_cast<double>(hits) / static_cast<double>(total), wilson(hits, total)};
}

/// a/m over b/n.
std::optional<Share> ratioOf(std::int64_t a, std::int64_t m, std::int64_t b, std::int64_t n)
{
    if (a <= 0 || b <= 0 || m <= 0 || n <= 0)
        return std::nullopt;
    const auto part = [](std::int64_t value) { return static_cast<double>(value); };
    const double ratio = part(a) / part(m) / (part(b) / part(n));
    const double error = std::sqrt(1 / part(a) - 1 / part(m) + 1 / part(b) - 1 / part(n));
    return Share{ratio, {ratio * std::exp(-deviate95 * error), ratio * std::exp(deviate95 * error)}};
}

} // namespace

Accuracy accuracyOf(const YesNoTable& table)
{
    const std::int64_t there = table.rightYes + table.wrongNo;
    const std::int64_t absent = table.rightNo + table.wrongYes;
    Accuracy result;
    result.sensitivity = shareOf(table.rightYes, there);
    result.specificity = shareOf(table.rightNo, absent);
    result.yesIsRight = shareOf(table.rightYes, table.rightYes + table.wrongYes);
    result.noIsRight = shareOf(table.rightNo, table.rightNo + table.wrongNo);
    result.right = shareOf(table.rightYes + table.rightNo, there + absent);
    result.ratioOfYes = ratioOf(table.rightYes, there, table.wrongYes, absent);
    result.ratioOfNo = ratioOf(table.wrongNo, there, table.rightNo, absent);
    return result;
}

double chanceAfter(double prior, double likelihoodRatio)
{
    const double weighted = prior * likelihoodRatio;
    return weighted / (weighted + 1 - prior);
}

std::optional<double> yesIsRightAt(double prevalence, double sensitivity, double specificity)
{
    const double right = prevalence * sensitivity;
    const double all = right + (1 - prevalence) * (1 - specificity);
    return all > 0 ? std::optional(right / all) : std::nullopt;
}

std::optional<double> noIsRightAt(double prevalence, double sensitivity, double specificity)
{
    const double right = (1 - prevalence) * specificity;
    const double all = right + prevalence * (1 - sensitivity);
    return all > 0 ? std::optional(right / all) : std::nullopt;
}

} // namespace cupule
