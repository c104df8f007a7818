#include "core/task/import_when.h"

#include <cstdlib>
#include <span>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/base/zone.h"
#include "core/exchange/problem.h"

namespace cupule {

namespace {

std::string offsetText(int minutes)
{
    return fmt::format("{}{:02}:{:02}", minutes < 0 ? '-' : '+', std::abs(minutes) / 60, std::abs(minutes) % 60);
}

/// What may have been meant by a time that did not exist or came twice.
std::string meant(const LocalReading& reading, LocalTime time)
{
    const int before = reading.first.offsetMinutes.value_or(0);
    const int after = reading.second ? reading.second->offsetMinutes.value_or(before) : before;
    if (reading.kind == LocalReading::Kind::twice)
        return time.text() + offsetText(before) + " or " + time.text() + offsetText(after);
    const int gap = (after - before) * 60;
    const auto moved = [&](int by) { return LocalTime{((time.secondOfDay + by) % 86400 + 86400) % 86400}.text(); };
    return moved(-gap) + " or " + moved(gap);
}

} // namespace

WhenReader::WhenReader(const ImportColumns& columns, std::string zone, CivilDate today)
    : m_date(columns.find(ImportField::date)), m_time(columns.find(ImportField::time)),
      m_zoneColumn(columns.find(ImportField::zone)), m_zone(std::move(zone)), m_today(today)
{
}

bool WhenReader::readClock(std::span<const std::string_view> cells, DateCell& cell, CellProblem& problem) const
{
    if (m_time == nullptr)
        return true;
    const std::string_view text = trim(cells[m_time->index]);
    if (text.empty())
        return true;
    const auto time = readTime(text);
    if (!time) {
        problem.column = m_time;
        problem.kind = kind::unreadableTime;
        return false;
    }
    cell.time = time->time;
    if (time->offsetMinutes)
        cell.offsetMinutes = time->offsetMinutes;
    return true;
}

bool WhenReader::placeInZone(std::span<const std::string_view> cells, const DateCell& cell, RowWhen& when,
                             CellProblem& problem) const
{
    std::string zone = m_zone;
    if (m_zoneColumn != nullptr)
        if (const auto named = trim(cells[m_zoneColumn->index]); !named.empty())
            zone = named;
    problem.column = m_zoneColumn != nullptr ? m_zoneColumn : m_date;
    problem.kind = "unknown-zone";
    if (cell.offsetMinutes) {
        const std::int64_t local = std::int64_t{cell.date.days} * 86400 + cell.time->secondOfDay;
        const auto here = inZone(zone, (local - std::int64_t{*cell.offsetMinutes} * 60) * 1000);
        if (!here)
            return false;
        when.date = CivilDate::of(*here);
        const std::int64_t shown = here->utcMilliseconds / 1000 + std::int64_t{here->offsetMinutes.value_or(0)} * 60;
        when.time = LocalTime{static_cast<std::int32_t>(shown - std::int64_t{when.date.days} * 86400)};
        return true;
    }
    const auto reading = readLocal(zone, cell.date, *cell.time);
    if (!reading)
        return false;
    if (reading->kind == LocalReading::Kind::once)
        return true;
    problem.column = m_time != nullptr && !trim(cells[m_time->index]).empty() ? m_time : m_date;
    problem.kind = kind::localTime;
    problem.suggestion = meant(*reading, *cell.time);
    return false;
}

bool WhenReader::read(std::span<const std::string_view> cells, RowWhen& when, CellProblem& problem)
{
    const std::string_view text = trim(cells[m_date->index]);
    auto cell = readDate(text, m_order);
    problem.column = m_date;
    if (!cell) {
        m_needsOrder = cell.error() == DateFault::ambiguous;
        problem.kind = cell.error() == DateFault::empty ? "missing-date" : dateFaultKind(cell.error());
        problem.suggestion = m_needsOrder ? "--date-order" : "";
        return false;
    }
    when = {cell->date, cell->time, cell->dayCount, cell->twoDigitYear};
    if (!readClock(cells, *cell, problem))
        return false;
    when.time = cell->time;
    if (cell->time && !placeInZone(cells, *cell, when, problem))
        return false;
    if (when.date > m_today) {
        problem.column = m_date;
        problem.kind = "future_date";
        return false;
    }
    return true;
}

} // namespace cupule
