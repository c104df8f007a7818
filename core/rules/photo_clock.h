// How far a camera's clock stood from the true time on one day, from the photos themselves.
//
// The median of the differences and, as their spread, the median absolute deviation times 1.4826 (which is one standard
// deviation where they are normal): up to half of the photos may be wrong without moving it far. Source: P. J. Rousseeuw and
// C. Croux 1993, J. Am. Stat. Assoc. 88:1273-1283. One camera is taken for granted; two with different clocks show as a
// wide spread.

#pragma once

#include <optional>
#include <span>

#include "core/record/photo.h"
#include "core/record/visit.h"

namespace cupule {

struct ClockOffset {
    double secondsAhead = 0;                ///< camera minus true time; taken off the camera's time
    std::optional<double> spreadSeconds;    ///< one standard deviation of one photo; nothing below three photos
    int photos = 0;
    bool operator==(const ClockOffset&) const = default;
};

/// Nothing without any difference. Seconds, camera minus true time.
std::optional<ClockOffset> clockOffset(std::span<const double> secondsAhead);
/// From the GPS times in the photos (PhotoNote::clockAheadSeconds), which need no visit and no guess.
std::optional<ClockOffset> clockOffsetFromGps(std::span<const PhotoNote> photos);
/// Seconds from the time of a visit to that of its photo; nothing where either has no time. A visit lasts: the median of
/// these is good to some minutes only.
std::optional<double> secondsAfterVisit(const PhotoNote& photo, const Visit& visit);

} // namespace cupule
