// Date and time of a row: one or two cells, in the zone of the row, of the options or of the store.

#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/civil.h"
#include "core/exchange/csv/dates.h"
#include "core/task/import_place.h"

namespace cupule {

struct RowWhen {
    CivilDate date;
    std::optional<LocalTime> time;
    bool dayCount = false;                 ///< taken for the day count of a spreadsheet
    bool twoDigitYear = false;
};

class WhenReader {
public:
    WhenReader(const ImportColumns& columns, std::string zone, CivilDate today);

    void setOrder(std::optional<DateOrder> order) { m_order = order; }
    /// The cell needs an order that nobody settled yet.
    [[nodiscard]] bool needsOrder() const { return m_needsOrder; }
    /// False with a problem where there is no such day or time, or it lies in the future.
    bool read(std::span<const std::string_view> cells, RowWhen& when, CellProblem& problem);

private:
    bool readClock(std::span<const std::string_view> cells, DateCell& cell, CellProblem& problem) const;
    bool placeInZone(std::span<const std::string_view> cells, const DateCell& cell, RowWhen& when,
                     CellProblem& problem) const;

    const ImportColumn* m_date;
    const ImportColumn* m_time;
    const ImportColumn* m_zoneColumn;
    std::string m_zone;
    CivilDate m_today;
    std::optional<DateOrder> m_order;
    bool m_needsOrder = false;
};

} // namespace cupule
