// A photo taken at another time than the visit. Local times are compared; without both, days.

#include <cstdint>
#include <cstdlib>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

/// Minutes between visit and photo where both have a time of day.
std::optional<std::int64_t> minutesApart(const Visit& visit, const PhotoNote& photo, std::int64_t days)
{
    if (!visit.time || !photo.takenTime)
        return std::nullopt;
    const std::int64_t seconds = std::int64_t{photo.takenTime->secondOfDay} - visit.time->secondOfDay;
    return std::abs(days * 1440 + seconds / 60);
}

} // namespace

void photoTime(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.context.dateMissing)
        return;
    const int limit = input.context.pack->settings.photoMinutes;
    for (const PhotoNote& photo : input.context.photos) {
        const std::string field = photoField(photo.id);
        if (!photo.takenDate) {
            add(out, "photo.undated", Severity::note, field, pictures, {{"name", photo.originalName}});
            continue;
        }
        const std::int64_t days = std::int64_t{photo.takenDate->days} - input.visit.date.days;
        const auto minutes = minutesApart(input.visit, photo, days);
        if (minutes ? *minutes <= limit : days == 0)
            continue;
        if (days != 0)
            add(out, "photo.other-day", Severity::ask, field, reliability,
                {{"name", photo.originalName},
                 {"taken", photo.takenDate->text()},
                 {"date", input.visit.date.text()}});
        else
            add(out, "photo.other-time", Severity::ask, field, reliability,
                {{"name", photo.originalName},
                 {"minutes", std::to_string(*minutes)},
                 {"limitMinutes", std::to_string(limit)}});
    }
}

} // namespace cupule::checks
