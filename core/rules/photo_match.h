// Which visit a photo belongs to, by place and by time, each with what speaks for it.
//
//  - Only visits of the photo's day, and none that a person said it does not belong to. Places agree within the pack's distance and both uncertainties, times within the pack's
//    minutes. What speaks against a visit rules it out, and something must speak for it.
//  - A time counts only where the camera's zone is known, or where how far its clock stands off is given.
//  - The better fit first: shares of the limits, added up.

#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/protocol/pack.h"
#include "core/record/photo.h"

namespace cupule {

struct MatchVisit {
    Uid visit;
    CivilDate date;
    std::optional<LocalTime> time;
    std::optional<Position> place;
};

struct PhotoMatch {
    Uid visit;
    std::optional<double> metres, limitMetres;    ///< where place speaks for it
    double visitReachMetres = 0, photoReachMetres = 0;   ///< how far either place may be off; only with metres
    std::optional<double> minutes;                ///< where time does; photo minus visit, after the clock is set right
    double misfit = 0;                            ///< 0 fits best; each reason adds 0 to 1
};

/// `secondsAhead`: camera minus true time, taken off; nothing: the clock is taken as it is.
std::vector<PhotoMatch> matchVisits(const PhotoNote& photo, std::span<const MatchVisit> visits,
                                    std::optional<double> secondsAhead, const Settings& settings);

/// Date and time of day with the clock set right. The day may change.
struct CorrectedTime {
    CivilDate date;
    LocalTime time;
};
std::optional<CorrectedTime> correctedTime(const PhotoNote& photo, double secondsAhead);

} // namespace cupule
