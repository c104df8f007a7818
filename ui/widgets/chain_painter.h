// Draws woven chain links. Part of chain_view.h.

#pragma once

#include <vector>

#include <QRectF>

#include "core/rules/custody.h"

class QFont;
class QPainter;
class QString;

namespace cupule::ui {

struct Theme;

struct ChainShape {
    QRectF rect;
    LinkState state = LinkState::ahead;
};
/// Left to right; each link passes over its left neighbour above and under it below. `scale` 1 at text 100 %.
void paintChain(QPainter& painter, const std::vector<ChainShape>& links, const Theme& theme, double scale);
/// Words over a link that hangs open or is cut, with a short line down to it.
void paintAbove(QPainter& painter, const QRectF& where, const QString& words, const QFont& font,
                const Theme& theme);

} // namespace cupule::ui
