#include "core/training/calibration.h"

#include <algorithm>
#include <map>

namespace cupule {

namespace {

struct Sums {
    std::int64_t right = 0, total = 0;
    double stated = 0;                     // times answers

    void add(const SureTally& tally)
    {
        right += tally.right;
        total += tally.total;
        stated += tally.sure / 100.0 * static_cast<double>(tally.total);
    }
    [[nodiscard]] double share() const { return static_cast<double>(right) / static_cast<double>(total); }
    [[nodiscard]] double mean() const { return stated / static_cast<double>(total); }
};

int bandOf(int sure)
{
    return std::clamp((sure + 9) / 10, 1, 10);
}

} // namespace

std::optional<Calibration> calibrationOf(std::span<const SureTally> tallies)
{
    Sums all;
    std::map<int, Sums> bySure, byBand;
    for (const SureTally& tally : tallies) {
        if (tally.total <= 0)
            continue;
        all.add(tally);
        bySure[tally.sure].add(tally);
        byBand[bandOf(tally.sure)].add(tally);
    }
    if (all.total == 0)
        return std::nullopt;
    Calibration result;
    result.answers = all.total;
    result.stated = all.mean();
    result.right = {all.share(), wilson(all.right, all.total)};
    result.overSure = result.stated - result.right.value;
    result.uncertainty = result.right.value * (1 - result.right.value);
    for (const auto& [sure, sums] : bySure) {
        const double weight = static_cast<double>(sums.total) / static_cast<double>(all.total);
        const double stated = sure / 100.0;
        result.reliability += weight * (stated - sums.share()) * (stated - sums.share());
        result.resolution += weight * (sums.share() - all.share()) * (sums.share() - all.share());
        result.brier += weight * (sums.share() * (1 - stated) * (1 - stated) + (1 - sums.share()) * stated * stated);
    }
    for (const auto& [band, sums] : byBand)
        result.rows.push_back({band * 10 - 10, band * 10, sums.total, sums.mean(), {sums.share(), wilson(sums.right, sums.total)}});
    return result;
}

} // namespace cupule
