#include "ui/print/code.h"

#include <memory>

#include <QPainter>
#include <QPainterPath>
#include <qrencode.h>

namespace cupule::ui {

CodeModules codeOf(const std::string& text)
{
    if (text.empty())
        return {};
    // Q mends a quarter of the code: a label gets wet, scratched and folded.
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
        QRcode_encodeString(text.c_str(), 0, QR_ECLEVEL_Q, QR_MODE_8, 1), &QRcode_free);
    if (!code)
        return {};
    CodeModules modules{code->width, {}};
    const std::size_t count = static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
    for (std::size_t i = 0; i < count; ++i)
        modules.black.push_back((code->data[i] & 1U) != 0);
    return modules;
}

double withQuietZone(const CodeModules& modules, double side)
{
    return modules.side == 0 ? side : side * (modules.side + 2 * quietModules) / modules.side;
}

void paintCode(QPainter& painter, const QRectF& where, const CodeModules& modules)
{
    if (modules.side == 0)
        return;
    const double module = where.width() / (modules.side + 2 * quietModules);
    // one path without gaps: squares painted one by one would show hairlines between them
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (int row = 0; row < modules.side; ++row) {
        for (int first = 0; first < modules.side;) {
            const auto black = [&](int column) {
                return column < modules.side && modules.black[static_cast<std::size_t>(row * modules.side + column)];
            };
            int after = first;
            while (black(after))
                ++after;
            if (after > first)
                path.addRect(where.left() + (first + quietModules) * module, where.top() + (row + quietModules) * module,
                             (after - first) * module, module);
            first = after + 1;
        }
    }
    painter.fillRect(where, Qt::white);
    painter.fillPath(path, Qt::black);
}

} // namespace cupule::ui
