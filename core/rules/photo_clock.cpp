#include "core/rules/photo_clock.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

namespace cupule {

namespace {

double median(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

} // namespace

std::optional<ClockOffset> clockOffset(std::span<const double> secondsAhead)
{
    if (secondsAhead.empty())
        return std::nullopt;
    ClockOffset offset;
    offset.photos = static_cast<int>(secondsAhead.size());
    offset.secondsAhead = median({secondsAhead.begin(), secondsAhead.end()});
    if (secondsAhead.size() < 3)
        return offset;
    std::vector<double> away;
    for (const double seconds : secondsAhead)
        away.push_back(std::abs(seconds - offset.secondsAhead));
    constexpr double asDeviation = 1.4826;
    offset.spreadSeconds = asDeviation * median(std::move(away));
    return offset;
}

std::optional<ClockOffset> clockOffsetFromGps(std::span<const PhotoNote> photos)
{
    std::vector<double> ahead;
    for (const PhotoNote& photo : photos)
        if (photo.clockAheadSeconds)
            ahead.push_back(*photo.clockAheadSeconds);
    return clockOffset(ahead);
}

std::optional<double> secondsAfterVisit(const PhotoNote& photo, const Visit& visit)
{
    if (!photo.takenDate || !photo.takenTime || !visit.time)
        return std::nullopt;
    const std::int64_t days = std::int64_t{photo.takenDate->days} - visit.date.days;
    return static_cast<double>(days * 86400 + photo.takenTime->secondOfDay - visit.time->secondOfDay);
}

} // namespace cupule
