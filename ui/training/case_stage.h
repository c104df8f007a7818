// The drawings of a case, or the photo of one: all of them side by side, or one large. Painted beside the window.
//
// Left and Right go through the drawings; what is said beside one ("lay under the tree") stands below it.

#pragma once

#include <vector>

#include <QWidget>

#include "core/training/case.h"

namespace cupule::ui {

class FigureShop;
class Thumbnails;

class CaseStage : public QWidget {
    Q_OBJECT
public:
    explicit CaseStage(QWidget* parent);
    void setDrawings(const std::vector<CaseDrawing>& drawings);
    void setPhoto(const QString& path);
    /// The drawings of the next case, made ready.
    void prepare(const std::vector<CaseDrawing>& drawings);
    /// 0 = all side by side, else the number of the large one.
    [[nodiscard]] int large() const { return m_large; }
    void turn(int by);
    [[nodiscard]] FigureShop& figures() { return *m_figures; }
    /// Everything that is shown is painted.
    [[nodiscard]] bool isDrawn() const;
    QSize sizeHint() const override { return {640, 480}; }
    QSize minimumSizeHint() const override { return {220, 160}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    [[nodiscard]] std::vector<QRect> cells(std::size_t count) const;
    [[nodiscard]] QRect figureRect(const QRect& cell, const CaseDrawing& drawing) const;
    [[nodiscard]] QString remark(const CaseDrawing& drawing) const;

    std::vector<CaseDrawing> m_drawings, m_ahead;
    QString m_photo;
    int m_large = 0;
    FigureShop* m_figures;
    Thumbnails* m_photos;
};

} // namespace cupule::ui
