// Figures painted beside the window: asked for while painting, there a moment later, then kept. The window never waits for one.

#pragma once

#include <list>

#include <QImage>
#include <QObject>
#include <QThreadPool>

#include "ui/figures/figure.h"

namespace cupule::ui {

struct PaintedFigure {
    QImage image;
    double scale = 0;              ///< logical pixels for one millimetre on the plant
    std::vector<FigurePart> parts; ///< places within the image, logical pixels
};

class FigureShop : public QObject {
    Q_OBJECT
public:
    explicit FigureShop(QObject* parent = nullptr);
    ~FigureShop() override;
    /// Null while it is being painted; ready() tells when to ask again. `size` in logical pixels.
    [[nodiscard]] const PaintedFigure* of(const Depiction& figure, const QSize& size, qreal ratio);
    [[nodiscard]] bool isSettled() const { return m_waiting.empty(); }

Q_SIGNALS:
    void ready();

private:
    struct Wanted {
        Depiction figure;
        QSize size;
        qreal ratio = 1;
        bool operator==(const Wanted&) const = default;
    };
    void keep(const Wanted& wanted, const PaintedFigure& painted);

    std::list<std::pair<Wanted, PaintedFigure>> m_kept; ///< the last asked for first
    std::vector<Wanted> m_waiting;
    int m_asked = 0;
    QThreadPool m_pool;
};

} // namespace cupule::ui
