// Paints the band of the season ribbon: skyline of worth, rows of signs, months, needles. Part of
// season_ribbon.h.

#pragma once

#include <optional>
#include <vector>

#include <QDate>
#include <QRect>

#include "ui/widgets/season_ribbon.h"

class QFont;
class QPainter;

namespace cupule::ui {

struct Theme;

struct RibbonBand {
    QRect rect;
    QDate today;
    std::optional<QDate> looked;
    const std::vector<SeasonRibbon::Row>* rows;
    const std::vector<char>* worth;
    bool named = true;   ///< words of the rows have room
    bool folded = false; ///< skyline, months and needle only
    bool moved = false;  ///< a shift is in force: dots lead from the calendar's start
};
int ribbonBandHeight(const QFont& font);
void paintRibbonBand(QPainter& painter, const RibbonBand& band, const Theme& theme, const QFont& font);

} // namespace cupule::ui
