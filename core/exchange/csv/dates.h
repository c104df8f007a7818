// Dates and times as people and spreadsheets write them in a column.
//
//  - One order for the whole column. It is settled by evidence over all rows (a 23 that can only be a day), by the
//    way of writing (year first; a month as a word; points between the parts, which no locale of the Unicode CLDR
//    uses with the month first), or by the user. Never row by row, and never by what is usual somewhere.
//  - Two passes: DateEvidence sees every cell once, then readDate reads each with the order decided.
//  - A date without a time gets none. A time without a zone stays local.
//
// Sources: ISO 8601-1:2019 for year-first forms; ECMA-376 Part 1, 18.17.4.1 for the day counts of spreadsheets
// (1900 system, with its 29 February 1900 that never was, which is count 60).

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil.h"
#include "core/base/result.h"

namespace cupule {

/// Order of the parts where all three are numbers and the year does not come first.
enum class DateOrder { dayFirst, monthFirst };

/// Reads "day-first", "dmy", "month-first", "mdy". Fault "csv.date-order" (usage).
Result<DateOrder> dateOrderNamed(std::string_view text);

struct DateCell {
    CivilDate date;
    std::optional<LocalTime> time;
    std::optional<int> offsetMinutes;   ///< local minus UTC, where the cell says it; 0 for Z
    bool dayCount = false;              ///< taken for the day count of a spreadsheet: tell the user
    bool twoDigitYear = false;          ///< 69 to 99 are the 1900s, the rest the 2000s (POSIX strptime %y)
    bool operator==(const DateCell&) const = default;
};

enum class DateFault {
    empty = 1,
    unreadable,    ///< no form that we know: kind "unreadable-date"
    impossible,    ///< a known form, but no such day or time: kind "impossible_date"
    neverWas,      ///< day count 60, 29 February 1900: kind "impossible_date"
    ambiguous,     ///< needs an order that nobody settled: kind "ambiguous-date"
};
/// The problem kind of a fault; empty for `empty`, which the column's meaning decides.
std::string_view dateFaultKind(DateFault fault);

/// Reads one cell. Blanks at the ends do not matter.
///   2024-05-02, 2024/5/2, 2024.05.02, 20240502; 02/05/2024, 2.5.2024, 2-5-24 in the order given;
///   2 May 2024, 2-May-24, 2nd May 2024, May 2, 2024 (English names, three letters or all of them);
///   each with a time after T or blanks: hh:mm[:ss[.f]][ AM|PM][Z|+hh:mm];
///   45072, 45073.604166 (day counts from 10000 to 109574: 1927 to 2199; fractions of a day become whole seconds).
/// A bare four-digit year is unreadable, never a day count.
Result<DateCell, DateFault> readDate(std::string_view cell, std::optional<DateOrder> order);

/// One time of day: "9:14", "09:14:30", "9.14", "2:30 pm", "15:00:00+03:00", 0.604166 (fraction of a day).
struct TimeCell {
    LocalTime time;
    std::optional<int> offsetMinutes;
    bool dayFraction = false;
    bool operator==(const TimeCell&) const = default;
};
/// Faults `empty`, `unreadable`, `impossible` (kind "unreadable-time").
Result<TimeCell, DateFault> readTime(std::string_view cell);

/// What a first pass over a column found.
class DateEvidence {
public:
    /// Rows must come in the order of the file.
    void add(std::string_view cell, std::int64_t row);

    /// A cell that shows something, and where.
    struct Sample {
        std::int64_t row = 0;
        std::string text;
        bool operator==(const Sample&) const = default;
    };
    enum class Verdict {
        notNeeded,       ///< no cell needs an order
        settled,         ///< see `order` and `proof`
        ask,             ///< nothing settles it: show `open` in both readings
        contradiction,   ///< some rows can only be day first, others only month first: ask; the others are set aside
    };
    struct Decision {
        Verdict verdict = Verdict::notNeeded;
        std::optional<DateOrder> order;      ///< what to give to readDate; empty where it has to be asked
        std::optional<Sample> dayProof;      ///< first row that can only be day first
        std::optional<Sample> monthProof;    ///< first row that can only be month first
        bool bySeparator = false;            ///< settled because points stand between the parts
        std::vector<Sample> open;            ///< up to five cells that read differently in the two orders
    };
    /// With an order told by the user the verdict is `settled`, whatever the evidence.
    [[nodiscard]] Decision decide(std::optional<DateOrder> told = {}) const;

    std::int64_t cells = 0;        ///< not empty
    std::int64_t needOrder = 0;    ///< three numbers, year not first
    std::int64_t differ = 0;       ///< of these, how many read as two different days
    std::int64_t dayOnly = 0;
    std::int64_t monthOnly = 0;
    std::int64_t dayCounts = 0;    ///< numbers taken for day counts of a spreadsheet
    std::int64_t twoDigitYears = 0;
    std::int64_t unreadable = 0;

private:
    std::int64_t m_withPoints = 0;
    std::optional<Sample> m_dayProof;
    std::optional<Sample> m_monthProof;
    std::vector<Sample> m_open;
};

} // namespace cupule
