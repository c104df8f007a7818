// Fusion with our own check boxes, radio buttons and focus ring: Fusion's outlines miss 3:1 on our grounds.

#pragma once

#include <QProxyStyle>

class QPainter;

namespace cupule::ui {

class Style : public QProxyStyle {
    Q_OBJECT
public:
    Style();
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    /// A pane that scrolls is no stop of Tab: its controls come into view by themselves. One that holds words to read has the
    /// property "reads", keeps the focus for the arrows and shows it.
    using QProxyStyle::polish;
    void polish(QWidget* widget) override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* returned) const override;
};

/// The focus ring of every painted widget: 2 px just inside `where`.
void paintFocusRing(QPainter& painter, const QRectF& where, const QPalette& palette, double radius = 4);

} // namespace cupule::ui
