// What the marks of a map are, in a line or two: mark and words, one after the other, wrapped where the map is narrow.

#pragma once

#include <vector>

#include <QWidget>

#include "ui/map/map_shapes.h"

namespace cupule::ui {

class MapLegend : public QWidget {
    Q_OBJECT
public:
    struct Line {
        MapShape shape;
        QString words;
        bool operator==(const Line&) const = default;
    };
    explicit MapLegend(QWidget* parent = nullptr);
    void setLines(std::vector<Line> lines);
    [[nodiscard]] const std::vector<Line>& lines() const { return m_lines; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    struct Place {
        QRectF room;
        QString words;   ///< shortened where one alone is wider than the map
    };
    [[nodiscard]] std::vector<Place> places(int width) const;
    std::vector<Line> m_lines;
};

} // namespace cupule::ui
