// The machine-readable code of a number: a QR code (ISO/IEC 18004), level Q, as squares of a vector painter.

#pragma once

#include <string>
#include <vector>

class QPainter;
class QRectF;

namespace cupule::ui {

/// A square of modules, row by row; true is black. No quiet zone.
struct CodeModules {
    int side = 0;
    std::vector<bool> black;
};

/// White modules on each side, without which readers lose the code.
inline constexpr int quietModules = 4;
/// Smallest side of the modules alone that a telephone reads off a poor print, in mm.
inline constexpr double smallestCode = 14;

/// Empty (side 0) for an empty text, and for one longer than the largest code holds.
CodeModules codeOf(const std::string& text);
/// Side of `modules` with its quiet zone where the modules alone measure `side`.
double withQuietZone(const CodeModules& modules, double side);
/// `where` includes the quiet zone; nothing else may be painted into it.
void paintCode(QPainter& painter, const QRectF& where, const CodeModules& modules);

} // namespace cupule::ui
