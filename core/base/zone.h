// Named zones: what a local time means in UTC, and when it means nothing or two things.
// Source: the IANA zone data of the machine (package tzdata), read through Howard Hinnant's date library.

#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/civil.h"

namespace cupule {

/// How a wall-clock time maps to UTC in a zone.
struct LocalReading {
    enum class Kind { once, never, twice };
    Kind kind = Kind::once;
    Instant first;                  ///< `never`: the moment just before the gap; `twice`: the earlier one
    std::optional<Instant> second;  ///< `never`: the moment just after the gap; `twice`: the later one
};

/// Fault "zone.unknown" where the machine has no such zone.
Result<LocalReading> readLocal(std::string_view zone, CivilDate date, LocalTime time);
/// The offset in force at a moment. Fault "zone.unknown".
Result<Instant> inZone(std::string_view zone, std::int64_t utcMilliseconds);

} // namespace cupule
