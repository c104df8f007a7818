// The letter that a "nothing seen" is worth, in a square. The tooltip gives the reason.

#pragma once

#include <QWidget>

namespace cupule::ui {

/// For delegates: the tile in `where` (a square), letter 'A', 'B', 'C' or '0'.
void paintWorth(QPainter& painter, const QRectF& where, char letter, const QFont& font,
                const QPalette& palette);

class WorthTile : public QWidget {
    Q_OBJECT
public:
    explicit WorthTile(QWidget* parent = nullptr);
    /// `reason` in a sentence; empty hides the tooltip.
    void setWorth(char letter, const QString& reason);
    [[nodiscard]] char letter() const { return m_letter; }
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    char m_letter = '0';
};

} // namespace cupule::ui
