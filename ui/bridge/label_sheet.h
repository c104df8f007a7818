// How labels lie on a sheet of A4: rows, columns, margins, gaps, and the text under which a set-up is kept. Plain arithmetic
// in mm, no painting.

#pragma once

#include <optional>
#include <vector>

#include <QRectF>
#include <QString>

namespace cupule::ui {

struct SheetSetup {
    int rows = 4, columns = 2;
    double left = 5, top = 13; ///< margins to the first label; plain paper keeps room for a line of words above
    double right = 5, bottom = 13;
    double across = 3, down = 2; ///< gaps between labels
    int free = 1;                ///< first free place of the first sheet, from 1, row by row: part of a sheet may be used up
    bool operator==(const SheetSetup&) const = default;

    [[nodiscard]] int perSheet() const { return rows * columns; }
    /// Size of one label; what margins and gaps leave.
    [[nodiscard]] QSizeF labelSize() const;
    /// Place of a label on its sheet, `at` from 0.
    [[nodiscard]] QRectF place(int at) const;
    /// Whether a label has room for all it must say at a size that can be read, and the first free place lies on the sheet.
    [[nodiscard]] bool fits() const;
};

inline constexpr double sheetWidth = 210, sheetHeight = 297; ///< A4, in mm
/// Smallest label, in mm.
inline constexpr double smallestLabelWidth = 84, smallestLabelHeight = 57;

/// "4x2" and, behind it, any of "left=5 top=13 right=5 bottom=13 across=3 down=2 free=1", blanks or commas between: as
/// settings and --sheet have it. Nothing where it does not read or does not fit.
std::optional<SheetSetup> readSheet(const QString& text);
/// What readSheet takes.
QString sheetText(const SheetSetup& setup);

} // namespace cupule::ui
