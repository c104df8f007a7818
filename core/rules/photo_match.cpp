#include "core/rules/photo_match.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "core/position/geodesic.h"

namespace cupule {

namespace {

/// When the photo was taken as far as matching may use it.
struct Moment {
    CivilDate date;
    std::optional<LocalTime> time;
};

std::optional<Moment> momentOf(const PhotoNote& photo, std::optional<double> secondsAhead)
{
    if (!photo.takenDate)
        return std::nullopt;
    if (secondsAhead)
        if (const auto right = correctedTime(photo, *secondsAhead))
            return Moment{right->date, right->time};
    return Moment{*photo.takenDate, photo.taken ? photo.takenTime : std::nullopt};
}

/// Nothing where something speaks against the visit or nothing speaks for it.
std::optional<PhotoMatch> matched(const PhotoNote& photo, const Moment& moment, const MatchVisit& visit,
                                  const Settings& settings)
{
    const bool refused = std::find(photo.notWith.begin(), photo.notWith.end(), visit.visit) != photo.notWith.end();
    if (refused || visit.date != moment.date)
        return std::nullopt;
    PhotoMatch match;
    match.visit = visit.visit;
    if (visit.place && photo.position) {
        match.metres = distanceMetres(visit.place->latitude, visit.place->longitude, photo.position->latitude,
                                      photo.position->longitude);
        match.visitReachMetres = reachMetres(*visit.place);
        match.photoReachMetres = reachMetres(*photo.position);
        match.limitMetres = settings.photoMetres + match.visitReachMetres + match.photoReachMetres;
        if (!(*match.metres <= *match.limitMetres))
            return std::nullopt;
        match.misfit += *match.metres / *match.limitMetres;
    }
    if (visit.time && moment.time) {
        match.minutes = (moment.time->secondOfDay - visit.time->secondOfDay) / 60.0;
        if (std::abs(*match.minutes) > settings.photoMinutes)
            return std::nullopt;
        match.misfit += std::abs(*match.minutes) / settings.photoMinutes;
    }
    return match.metres || match.minutes ? std::optional(match) : std::nullopt;
}

} // namespace

std::optional<CorrectedTime> correctedTime(const PhotoNote& photo, double secondsAhead)
{
    constexpr double farthest = 400.0 * 366 * 86400;   // a clock that never was set stands at some year's first day
    if (!photo.takenDate || !photo.takenTime || !(std::abs(secondsAhead) < farthest))
        return std::nullopt;
    const std::int64_t seconds = std::int64_t{photo.takenDate->days} * 86400 + photo.takenTime->secondOfDay -
                                 std::llround(secondsAhead);
    const std::int64_t day = seconds >= 0 ? seconds / 86400 : -((86399 - seconds) / 86400);
    return CorrectedTime{{static_cast<std::int32_t>(day)}, {static_cast<std::int32_t>(seconds - day * 86400)}};
}

std::vector<PhotoMatch> matchVisits(const PhotoNote& photo, std::span<const MatchVisit> visits,
                                    std::optional<double> secondsAhead, const Settings& settings)
{
    std::vector<PhotoMatch> matches;
    const auto moment = momentOf(photo, secondsAhead);
    if (!moment)
        return matches;
    for (const MatchVisit& visit : visits)
        if (const auto match = matched(photo, *moment, visit, settings))
            matches.push_back(*match);
    std::stable_sort(matches.begin(), matches.end(),
                     [](const PhotoMatch& a, const PhotoMatch& b) { return a.misfit < b.misfit; });
    return matches;
}

} // namespace cupule
