// What can be pointed at in a figure lies in it, wherever and however it is painted.

#include <QImage>
#include <QPainter>

#include "tests/support/catch.h"
#include "ui/figures/figure.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

constexpr QRectF place(20, 30, 420, 500);

QImage painted(const Depiction& spec)
{
    QImage image(460, 560, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    paintFigure(painter, place, spec);
    return image;
}

/// Something is painted within a few pixels of it.
bool isOnFigure(const QImage& image, const QPointF& at)
{
    constexpr int near = 6;
    for (int y = -near; y <= near; ++y)
        for (int x = -near; x <= near; ++x) {
            const QPoint pixel = at.toPoint() + QPoint(x, y);
            if (image.valid(pixel) && qAlpha(image.pixel(pixel)) > 0)
                return true;
        }
    return false;
}

} // namespace

TEST_CASE("every part of a figure that can be pointed at is painted there and has words", "[figures][parts]")
{
    int pointed = 0;
    for (const QString& kind : figureIds())
        for (const std::uint32_t seed : {1U, 2U, 3U}) {
            Depiction spec = plate(kind, seed);
            spec.view.scaleBar = seed == 2;
            spec.view.turnDegrees = seed == 3 ? 40 : 0;
            const auto parts = figureParts(place, spec);
            if (parts.empty())
                continue;
            pointed += seed == 1 ? 1 : 0;
            const QImage image = painted(spec);
            for (const FigurePart& part : parts) {
                INFO(kind.toStdString() << " " << seed << ": " << part.words.toStdString() << " at " << part.at.x() << ", " << part.at.y());
                CHECK(!part.words.isEmpty());
                CHECK(isOnFigure(image, part.at));
            }
        }
    CHECK(pointed >= 20);
}

TEST_CASE("the parts of a galled leaf are its lump first, then what lies beyond", "[figures][parts]")
{
    Depiction spec = plateOf("gall_midrib");
    const auto parts = figureParts(place, spec);
    REQUIRE(parts.size() == 3);
    CHECK(parts[0].words == QStringLiteral("lump, part of the midrib"));
    CHECK(parts[1].at.y() < parts[0].at.y()); // the leaf stands upright: its tip above
    spec.view.turnDegrees = 180;
    const auto turned = figureParts(place, spec);
    CHECK(turned[1].at.y() > turned[0].at.y());
    CHECK(figureParts(QRectF(), spec).empty());
}
