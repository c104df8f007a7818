// Takes a cell apart as far as it can be done without knowing the order of day and month. For csv/dates.cpp.

#pragma once

#include <optional>
#include <string_view>

#include "core/base/civil.h"

namespace cupule::csv_detail {

/// The time that may follow a date, or stand alone.
struct ClockForm {
    bool read = false;         ///< false: no such form
    bool possible = false;     ///< false: 25:00 and the like
    LocalTime time;
    std::optional<int> offsetMinutes;
};
/// hh:mm[:ss[.f]] or with points, then AM or PM, then Z, UTC or +hh:mm.
ClockForm readClock(std::string_view text);

struct DateForm {
    enum class Kind {
        none,
        settled,        ///< year, month and day are known
        twoNumbers,     ///< first and second are day and month in some order, and year
        dayCount,       ///< number of a spreadsheet: whole days and a part of one
    };
    Kind kind = Kind::none;
    int first = 0;
    int second = 0;
    int year = 0;
    int month = 0;
    int day = 0;
    bool twoDigitYear = false;
    bool points = false;            ///< the parts are parted by points
    long wholeDays = 0;
    double partOfDay = 0;
    std::string_view clock;         ///< what follows the date, without the T or blank; empty if nothing does
};
DateForm readForm(std::string_view trimmedCell);

} // namespace cupule::csv_detail
