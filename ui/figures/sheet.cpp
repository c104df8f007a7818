#include "ui/figures/sheet.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/figures/cache.h"
#include "ui/figures/scale_bar.h"

namespace cupule::ui {

namespace {

constexpr int svgUnits = 1800;
constexpr int captionHeight = 48;

/// Size of a page whose longer side is `longest`, and which is not too narrow for the scale bar.
QSize pageFor(const QRectF& extent, int longest)
{
    const double share = extent.isEmpty() ? 1 : std::max(0.46, extent.width() / (1.07 * extent.height()));
    return share > 1 ? QSize(longest, static_cast<int>(std::lround(longest / share)))
                     : QSize(static_cast<int>(std::lround(longest * share)), longest);
}

} // namespace

QByteArray figureSvg(const Depiction& spec)
{
    const QString kind = figureFor(spec);
    if (!hasFigure(kind))
        return {};
    const auto drawing = drawingOf(spec);
    const QRectF extent = QTransform().rotate(spec.view.turnDegrees).mapRect(drawing->extent());
    const QSize page = pageFor(extent, svgUnits);
    const double bar = 0.07 * page.height();
    const double scale = std::min((page.width() - 4) / extent.width(), (page.height() - 4 - bar) / extent.height());
    QTransform placed;
    placed.translate(page.width() / 2.0, (page.height() - bar) / 2.0);
    placed.scale(scale, scale);
    placed.translate(-extent.center().x(), -extent.center().y());
    placed.rotate(spec.view.turnDegrees);
    const ScaleBar ruler = scaleBarFor(page.width(), scale);
    return drawing->svg(placed, page, figureWords(kind),
                        ruler.svg(QRectF(0, page.height() - bar, page.width(), bar)));
}

QImage figureImage(const Depiction& spec, int pixels, const QColor& ground)
{
    Depiction ruled = spec;
    ruled.view.scaleBar = true;
    QImage image(pageFor(figureExtent(spec), pixels), QImage::Format_ARGB32_Premultiplied);
    image.fill(ground);
    QPainter painter(&image);
    paintFigure(painter, image.rect(), ruled);
    return image;
}

QImage figureSheet(const SheetForm& form)
{
    const auto kinds = static_cast<int>(form.kinds.size());
    const int group = form.seeds * form.cell.width();
    const int rows = (kinds + form.across - 1) / form.across;
    QImage sheet(form.across * group, rows * (form.cell.height() + captionHeight), QImage::Format_RGB32);
    sheet.fill(form.ground);
    QPainter painter(&sheet);
    for (int i = 0; i < kinds; ++i) {
        const QPoint corner(i % form.across * group, i / form.across * (form.cell.height() + captionHeight));
        for (int k = 0; k < form.seeds; ++k) {
            Depiction spec = asMet(plate(form.kinds[i], form.firstSeed + static_cast<std::uint32_t>(k)), form.asMet);
            spec.view.scaleBar = true;
            const QRectF where(corner + QPoint(k * form.cell.width(), 0), form.cell);
            paintFigure(painter, where.adjusted(6, 6, -6, -2), spec);
        }
        QFont font = painter.font();
        font.setPixelSize(13);
        font.setBold(true);
        painter.setFont(font);
        painter.setPen(form.ink);
        const QRect caption(corner + QPoint(6, form.cell.height()), QSize(group - 12, captionHeight - 2));
        painter.drawText(caption, Qt::AlignHCenter | Qt::AlignTop, form.kinds[i]);
        font.setBold(false);
        font.setPixelSize(11);
        painter.setFont(font);
        painter.drawText(caption.adjusted(0, 16, 0, 0), Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, figureWords(form.kinds[i]));
    }
    return sheet;
}

} // namespace cupule::ui
