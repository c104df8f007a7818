// Dates as people write them. A civil date is never turned into a moment (no midnight is invented).

#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/clock.h"
#include "core/base/result.h"

namespace cupule {

/// A day of the proleptic Gregorian calendar, held as days since 1970-01-01.
struct CivilDate {
    std::int32_t days = 0;
    auto operator<=>(const CivilDate&) const = default;

    [[nodiscard]] int year() const;
    [[nodiscard]] int month() const;      ///< [1, 12]
    [[nodiscard]] int day() const;        ///< [1, 31]
    [[nodiscard]] int dayOfYear() const;  ///< [1, 366]
    /// ISO 8601, "2026-06-11".
    [[nodiscard]] std::string text() const;
    /// Nothing where there is no such day.
    static std::optional<CivilDate> make(int year, int month, int day);
    /// Reads "YYYY-MM-DD" only. Fault "date.form" or "date.impossible".
    static Result<CivilDate> parse(std::string_view text);
    /// The civil date of a moment where its offset holds (UTC where the offset is unknown).
    static CivilDate of(const Instant& at);
};

/// A wall-clock time on a day, without zone. Seconds in [0, 86400).
struct LocalTime {
    std::int32_t secondOfDay = 0;
    auto operator<=>(const LocalTime&) const = default;
    [[nodiscard]] std::string text() const;   ///< "hh:mm:ss", or "hh:mm" where the seconds are 0
    /// "h:mm", "hh:mm", "hh:mm:ss" or with dots. Fault "time.form".
    static Result<LocalTime> parse(std::string_view text);
};

/// ISO 8601 with milliseconds left out where 0: "2026-06-11T09:14:00+01:00", "...Z" where the offset is 0,
/// and without any suffix never: an unknown offset is written as "Z".
std::string instantText(const Instant& at);
/// Reads what instantText writes, and RFC 3339 in general; a missing offset is fault "instant.zone".
Result<Instant> parseInstant(std::string_view text);

} // namespace cupule
