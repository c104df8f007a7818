#include "core/base/zone.h"

#include <date/tz.h>

namespace cupule {

namespace {

Result<const date::time_zone*> locate(std::string_view zone)
{
    try {
        return date::locate_zone(std::string(zone));
    } catch (const std::exception& e) {
        Fault fault{"zone.unknown", FaultKind::data, {{"zone", std::string(zone)}}, {}, e.what()};
        return fail(std::move(fault));
    }
}

Instant moment(std::int64_t localSeconds, std::chrono::seconds offset)
{
    return Instant{(localSeconds - offset.count()) * 1000, static_cast<int>(offset.count() / 60)};
}

} // namespace

Result<LocalReading> readLocal(std::string_view zone, CivilDate date, LocalTime time)
{
    const auto tz = locate(zone);
    if (!tz)
        return tl::unexpected<Fault>(tz.error());
    const std::int64_t local = date.days * 86'400LL + time.secondOfDay;
    const auto info = (*tz)->get_info(date::local_seconds{std::chrono::seconds{local}});
    LocalReading reading;
    reading.first = moment(local, info.first.offset);
    if (info.result == date::local_info::unique)
        return reading;
    const bool never = info.result == date::local_info::nonexistent;
    reading.kind = never ? LocalReading::Kind::never : LocalReading::Kind::twice;
    reading.second = moment(local, info.second.offset);
    if (never) {
        const std::int64_t gap = info.first.end.time_since_epoch().count();
        reading.first = Instant{(gap - 1) * 1000, static_cast<int>(info.first.offset.count() / 60)};
        reading.second = Instant{gap * 1000, static_cast<int>(info.second.offset.count() / 60)};
    }
    return reading;
}

Result<Instant> inZone(std::string_view zone, std::int64_t utcMilliseconds)
{
    const auto tz = locate(zone);
    if (!tz)
        return tl::unexpected<Fault>(tz.error());
    const auto at = date::floor<std::chrono::seconds>(date::sys_time<std::chrono::milliseconds>{
        std::chrono::milliseconds{utcMilliseconds}});
    return Instant{utcMilliseconds, static_cast<int>((*tz)->get_info(at).offset.count() / 60)};
}

} // namespace cupule
