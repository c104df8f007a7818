#include "core/exchange/csv/dates.h"

#include <cmath>

#include "core/base/text.h"
#include "core/exchange/csv/cell_detail.h"
#include "core/exchange/csv/date_form_detail.h"
#include "core/exchange/problem.h"

namespace cupule {

using csv_detail::DateForm;
using csv_detail::isDigit;

namespace {

constexpr std::size_t openSamples = 5;
constexpr long leastDayCount = 10'000;    // 1927-05-18
constexpr long mostDayCount = 109'574;    // 2199-12-31
constexpr long dayThatNeverWas = 60;
constexpr std::int32_t dayZero = -25'569; // 1899-12-30

tl::unexpected<DateFault> bad(DateFault fault)
{
    return tl::unexpected<DateFault>(fault);
}

/// The form nearly every file has, read without taking it apart.
std::optional<Result<DateCell, DateFault>> plainIso(std::string_view text)
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return std::nullopt;
    for (const std::size_t i : {0U, 1U, 2U, 3U, 5U, 6U, 8U, 9U})
        if (!isDigit(text[i]))
            return std::nullopt;
    const auto two = [&](std::size_t i) { return (text[i] - '0') * 10 + (text[i + 1] - '0'); };
    const auto date = CivilDate::make(two(0) * 100 + two(2), two(5), two(8));
    if (!date)
        return bad(DateFault::impossible);
    return DateCell{*date, {}, {}, false, false};
}

Result<DateCell, DateFault> fromDayCount(const DateForm& form)
{
    if (form.wholeDays == dayThatNeverWas)
        return bad(DateFault::neverWas);
    if (form.wholeDays < leastDayCount || form.wholeDays > mostDayCount)
        return bad(DateFault::unreadable);
    DateCell cell;
    cell.dayCount = true;
    cell.date = CivilDate{dayZero + static_cast<std::int32_t>(form.wholeDays)};
    if (form.partOfDay > 0) {
        const auto seconds = static_cast<std::int32_t>(std::lround(form.partOfDay * 86'400));
        cell.date.days += seconds / 86'400;
        cell.time = LocalTime{seconds % 86'400};
    }
    return cell;
}

std::optional<CivilDate> inOrder(const DateForm& form, DateOrder order)
{
    const bool dayFirst = order == DateOrder::dayFirst;
    return CivilDate::make(form.year, dayFirst ? form.second : form.first, dayFirst ? form.first : form.second);
}

Result<CivilDate, DateFault> dateOf(const DateForm& form, std::optional<DateOrder> order)
{
    if (form.kind == DateForm::Kind::settled) {
        const auto date = CivilDate::make(form.year, form.month, form.day);
        return date ? Result<CivilDate, DateFault>(*date) : bad(DateFault::impossible);
    }
    const auto dayFirst = inOrder(form, DateOrder::dayFirst);
    const auto monthFirst = inOrder(form, DateOrder::monthFirst);
    if (!dayFirst && !monthFirst)
        return bad(DateFault::impossible);
    if (dayFirst == monthFirst)
        return *dayFirst;
    if (!order)
        return bad(DateFault::ambiguous);
    const auto date = *order == DateOrder::dayFirst ? dayFirst : monthFirst;
    return date ? Result<CivilDate, DateFault>(*date) : bad(DateFault::impossible);
}

} // namespace

Result<DateOrder> dateOrderNamed(std::string_view text)
{
    const std::string name = lowerAscii(text);
    if (name == "day-first" || name == "dmy")
        return DateOrder::dayFirst;
    if (name == "month-first" || name == "mdy")
        return DateOrder::monthFirst;
    return fail("csv.date-order", FaultKind::usage, {{"order", std::string(text)}});
}

std::string_view dateFaultKind(DateFault fault)
{
    switch (fault) {
    case DateFault::empty:
        break;
    case DateFault::unreadable:
        return kind::unreadableDate;
    case DateFault::impossible:
    case DateFault::neverWas:
        return kind::impossibleDate;
    case DateFault::ambiguous:
        return kind::ambiguousDate;
    }
    return {};
}

Result<DateCell, DateFault> readDate(std::string_view cell, std::optional<DateOrder> order)
{
    const auto text = csv_detail::trimmed(cell);
    if (text.empty())
        return bad(DateFault::empty);
    if (auto plain = plainIso(text))
        return *plain;
    const DateForm form = csv_detail::readForm(text);
    if (form.kind == DateForm::Kind::none)
        return bad(DateFault::unreadable);
    if (form.kind == DateForm::Kind::dayCount)
        return fromDayCount(form);
    DateCell out;
    out.twoDigitYear = form.twoDigitYear;
    if (!form.clock.empty()) {
        const auto clock = csv_detail::readClock(form.clock);
        if (!clock.read)
            return bad(DateFault::unreadable);
        if (!clock.possible)
            return bad(DateFault::impossible);
        out.time = clock.time;
        out.offsetMinutes = clock.offsetMinutes;
    }
    const auto date = dateOf(form, order);
    if (!date)
        return bad(date.error());
    out.date = *date;
    return out;
}

Result<TimeCell, DateFault> readTime(std::string_view cell)
{
    const auto text = csv_detail::trimmed(cell);
    if (text.empty())
        return bad(DateFault::empty);
    const auto sign = text.find_first_of(".,");
    const bool fraction = sign != std::string_view::npos && text.substr(0, sign) == "0" && text.size() > sign + 1
                          && text.find_first_not_of("0123456789", sign + 1) == std::string_view::npos;
    if (fraction && text.size() == sign + 3)
        return bad(DateFault::unreadable);   // 0.25 may be a quarter of a day or 25 minutes past midnight
    if (fraction) {
        const DateForm form = csv_detail::readForm(text);
        const auto seconds = static_cast<std::int32_t>(std::lround(form.partOfDay * 86'400));
        if (seconds >= 86'400)
            return bad(DateFault::impossible);
        return TimeCell{LocalTime{seconds}, {}, true};
    }
    const auto clock = csv_detail::readClock(text);
    if (!clock.read)
        return bad(DateFault::unreadable);
    if (!clock.possible)
        return bad(DateFault::impossible);
    return TimeCell{clock.time, clock.offsetMinutes, false};
}

void DateEvidence::add(std::string_view cell, std::int64_t row)
{
    const auto text = csv_detail::trimmed(cell);
    if (text.empty())
        return;
    ++cells;
    if (const auto plain = plainIso(text))
        return;
    const DateForm form = csv_detail::readForm(text);
    twoDigitYears += form.twoDigitYear ? 1 : 0;
    if (form.kind == DateForm::Kind::none)
        ++unreadable;
    if (form.kind == DateForm::Kind::dayCount)
        fromDayCount(form) ? ++dayCounts : ++unreadable;
    if (form.kind != DateForm::Kind::twoNumbers)
        return;
    ++needOrder;
    m_withPoints += form.points ? 1 : 0;
    const auto dayFirst = inOrder(form, DateOrder::dayFirst);
    const auto monthFirst = inOrder(form, DateOrder::monthFirst);
    if (dayFirst && !monthFirst) {
        ++dayOnly;
        if (!m_dayProof)
            m_dayProof = Sample{row, std::string(text)};
    } else if (monthFirst && !dayFirst) {
        ++monthOnly;
        if (!m_monthProof)
            m_monthProof = Sample{row, std::string(text)};
    } else if (dayFirst != monthFirst) {
        ++differ;
        if (m_open.size() < openSamples)
            m_open.push_back({row, std::string(text)});
    }
}

DateEvidence::Decision DateEvidence::decide(std::optional<DateOrder> told) const
{
    Decision out;
    out.dayProof = m_dayProof;
    out.monthProof = m_monthProof;
    out.open = m_open;
    if (told) {
        out.verdict = Verdict::settled;
        out.order = told;
    } else if (differ + dayOnly + monthOnly == 0) {
        out.verdict = Verdict::notNeeded;
    } else if (monthOnly > 0 && (dayOnly > 0 || m_withPoints > 0)) {
        out.verdict = Verdict::contradiction;
    } else if (dayOnly > 0 || monthOnly > 0) {
        out.verdict = Verdict::settled;
        out.order = dayOnly > 0 ? DateOrder::dayFirst : DateOrder::monthFirst;
    } else if (m_withPoints == needOrder) {
        out.verdict = Verdict::settled;
        out.order = DateOrder::dayFirst;
        out.bySeparator = true;
    } else {
        out.verdict = Verdict::ask;
    }
    return out;
}

} // namespace cupule
