#include "ui/widgets/worth_tile.h"

#include <algorithm>

#include <QFontMetrics>
#include <QPainter>

#include "ui/bridge/words.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

void paintWorth(QPainter& painter, const QRectF& where, char letter, const QFont& font,
                const QPalette& palette)
{
    const Theme& theme = themeOf(palette);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme.edge, 1));
    painter.setBrush(letter == '0' ? theme.page : theme.leaf);
    painter.drawRoundedRect(where.adjusted(0.5, 0.5, -0.5, -0.5), 2, 2);
    QFont own = font;
    own.setWeight(QFont::DemiBold);
    own.setPixelSize(std::max(9, static_cast<int>(where.height() * 0.58)));
    painter.setFont(own);
    painter.setPen(theme.ink);
    painter.drawText(where, Qt::AlignCenter, QString(QLatin1Char(letter)));
    painter.restore();
}

WorthTile::WorthTile(QWidget* parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setWorth('0', {});
}

void WorthTile::setWorth(char letter, const QString& reason)
{
    m_letter = letter;
    setToolTip(reason);
    setAccessibleName(tr("worth of “nothing seen”: %1, %2", "letter, meaning")
                          .arg(QLatin1Char(letter))
                          .arg(worthWord(letter)));
    setAccessibleDescription(reason);
    update();
}

QSize WorthTile::sizeHint() const
{
    const int side = std::max(24, QFontMetrics(font()).height() + scaled(8, font()));
    return {side, side};
}

void WorthTile::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const double side = std::min(width(), height());
    paintWorth(painter, QRectF((width() - side) / 2, (height() - side) / 2, side, side), m_letter, font(),
               palette());
}

} // namespace cupule::ui
