#include "app/day_clock.h"

#include "core/base/zone.h"

namespace cupule::app {

namespace {

constexpr std::int64_t dayMilliseconds = 86'400'000;
constexpr std::int64_t eveningHour = 18;
constexpr std::int64_t slowed = 12; ///< a whole day of runs passes between 18:00 and 20:00: within twelve hours of what was held in the morning

} // namespace

void DayClock::goBy(CivilDate day, const std::string& zone)
{
    const auto reading = readLocal(zone, day, LocalTime{eveningHour * 3600});
    m_evening = reading ? reading->first : Instant{day.days * dayMilliseconds + eveningHour * 3'600'000, 0};
}

Instant DayClock::now() const
{
    const Instant real = m_real.now();
    if (!m_evening)
        return real;
    const std::int64_t local = real.utcMilliseconds + std::int64_t{real.offsetMinutes.value_or(0)} * 60'000;
    const std::int64_t sinceMidnight = (local % dayMilliseconds + dayMilliseconds) % dayMilliseconds;
    return {m_evening->utcMilliseconds + sinceMidnight / slowed, m_evening->offsetMinutes};
}

} // namespace cupule::app
