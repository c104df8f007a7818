// Paints label sheets: single frame for the inner bag, double for the outer one, square corners for the papers. Below, a
// line of 100 mm that shows whether the sheet was printed at its size.

#pragma once

#include <functional>
#include <vector>

#include "core/report/label.h"
#include "ui/bridge/label_sheet.h"

class QPainter;

namespace cupule::ui {

/// How many sheets these labels fill.
int sheetsFor(std::size_t labels, const SheetSetup& setup);
/// Sheet `sheet` (from 0) of the labels onto a page of A4.
void paintLabelSheet(QPainter& painter, const std::vector<report::Label>& labels, const SheetSetup& setup, int sheet);
/// All sheets, one after the other; `nextPage` is called between two.
void paintLabelSheets(QPainter& painter, const std::vector<report::Label>& labels, const SheetSetup& setup,
                      const std::function<void()>& nextPage);

} // namespace cupule::ui
