// All figures on one sheet, some seeds of each, and what they look like as photos.

#include <QPainter>

#include "tests/gui/picture_book.h"
#include "ui/figures/figure.h"
#include "ui/theme/theme.h"

namespace cupule::test {

namespace {

constexpr int cellWidth = 228, cellHeight = 250, columns = 6;

class FigureSheet : public QWidget {
public:
    QSize sizeHint() const override
    {
        const auto count = static_cast<int>(ui::figureIds().size());
        return {columns * cellWidth, (count + columns - 1) / columns * cellHeight};
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        const ui::Theme& theme = ui::themeOf(*this);
        QPainter painter(this);
        painter.fillRect(rect(), theme.page);
        int index = 0;
        for (const QString& id : ui::figureIds()) {
            const QRect cell(index % columns * cellWidth, index / columns * cellHeight, cellWidth,
                             cellHeight);
            Depiction spec = ui::plate(id);
            spec.view.scaleBar = true;
            ui::paintFigure(painter, cell.adjusted(10, 8, -10, -30), spec);
            painter.setPen(theme.ink);
            painter.drawText(cell.adjusted(0, 0, 0, -6), Qt::AlignHCenter | Qt::AlignBottom, id);
            ++index;
        }
    }
};

/// One figure large, with three other seeds beside it.
class FigurePlate : public QWidget {
public:
    explicit FigurePlate(const QString& id) : m_id(id) {}
    QSize sizeHint() const override { return {1400, 900}; }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.fillRect(rect(), ui::themeOf(*this).page);
        Depiction spec = ui::plate(m_id);
        spec.view.scaleBar = true;
        ui::paintFigure(painter, QRectF(20, 20, 800, 860), spec);
        for (std::uint32_t seed = 2; seed <= 5; ++seed) {
            ui::paintFigure(painter, QRectF(840 + (seed % 2) * 270, 20 + (seed / 2 - 1) * 430, 260, 420),
                            ui::plate(m_id, seed));
        }
    }

private:
    QString m_id;
};

class PhotoSheet : public QWidget {
public:
    QSize sizeHint() const override { return {1280, 960}; }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        const struct {
            const char* id;
            ui::PhotoSpec::Ground ground;
            double warmth, blur;
        } shots[] = {
            {"gall_midrib", ui::PhotoSpec::Ground::leaves, 0.3, 0},
            {"gall_shoot_tip", ui::PhotoSpec::Ground::sky, 0, 0},
            {"gall_dry_twig", ui::PhotoSpec::Ground::paper, -0.5, 0},
            {"leaf_castanea", ui::PhotoSpec::Ground::bark, 0.6, 2.5},
        };
        int index = 0;
        for (const auto& shot : shots) {
            ui::PhotoSpec spec;
            spec.figure = plateOf(shot.id);
            spec.size = {636, 476};
            spec.ground = shot.ground;
            spec.warmth = shot.warmth;
            spec.blur = shot.blur;
            painter.drawImage(index % 2 * 640, index / 2 * 480, ui::figurePhoto(spec));
            ++index;
        }
    }
};

bool addAll()
{
    addPicture({QStringLiteral("figures"), [] { return std::make_unique<FigureSheet>(); }, false,
                columns * cellWidth});
    addPicture({QStringLiteral("photos"), [] { return std::make_unique<PhotoSheet>(); }, false, 1280});
    for (const QString& id : ui::figureIds())
        addPicture({id, [id] { return std::make_unique<FigurePlate>(id); }, false, 1400});
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test
