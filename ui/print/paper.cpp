#include "ui/print/paper.h"

#include <algorithm>

#include <QFontMetricsF>

namespace cupule::ui {

namespace {

constexpr double mmPerInch = 25.4;
constexpr double pointStep = 0.5;

} // namespace

QFont paperFont(PaperType type, double points)
{
    const bool ids = type == PaperType::ids || type == PaperType::idsStrong;
    QFont font;
    // Not the window's Inter: it paints dashes and plus signs beside figures with glyphs of its own, which no reader of the
    // file finds as text again.
    font.setFamilies(ids ? QStringList{QStringLiteral("Noto Sans Mono"), QStringLiteral("monospace")}
                         : QStringList{QStringLiteral("Noto Sans"), QStringLiteral("sans-serif")});
    font.setPointSizeF(std::max(points, smallestPaperText));
    // spacing that nobody sees, but with it no ligature: "office" is to be found in the file
    font.setLetterSpacing(QFont::PercentageSpacing, 100.05);
    font.setWeight(type == PaperType::strong || type == PaperType::idsStrong ? QFont::Bold : QFont::Normal);
    return font;
}

Paper::Paper(QPainter& painter) : m_painter(painter), m_dotsPerMm(painter.device()->logicalDpiX() / mmPerInch)
{
}

QRectF Paper::dots(const QRectF& millimetres) const
{
    return {dots(millimetres.x()), dots(millimetres.y()), dots(millimetres.width()), dots(millimetres.height())};
}

void Paper::pen(double millimetres, Qt::PenStyle style) const
{
    m_painter.setPen(QPen(Qt::black, dots(millimetres), style, Qt::FlatCap, Qt::MiterJoin));
    m_painter.setBrush(Qt::NoBrush);
}

void Paper::line(const QPointF& from, const QPointF& to) const
{
    m_painter.drawLine(QPointF(dots(from.x()), dots(from.y())), QPointF(dots(to.x()), dots(to.y())));
}

double Paper::textWidth(const QString& text, const QFont& font) const
{
    return QFontMetricsF(font, m_painter.device()).horizontalAdvance(text) / m_dotsPerMm;
}

double Paper::textHeight(const QFont& font) const
{
    return QFontMetricsF(font, m_painter.device()).height() / m_dotsPerMm;
}

double Paper::text(const QPointF& at, const QString& text, const QFont& font) const
{
    m_painter.setPen(Qt::black);
    m_painter.setFont(font);
    m_painter.drawText(QPointF(dots(at.x()), dots(at.y())), text);
    return textWidth(text, font);
}

void Paper::textWithin(const QPointF& at, double width, const QString& words, PaperType type, double points) const
{
    double size = points;
    while (size > smallestPaperText && textWidth(words, paperFont(type, size)) > width)
        size -= pointStep;
    const QFont font = paperFont(type, size);
    text(at, QFontMetricsF(font, m_painter.device()).elidedText(words, Qt::ElideRight, dots(width)), font);
}

} // namespace cupule::ui
