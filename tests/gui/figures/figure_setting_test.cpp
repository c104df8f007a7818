// Figures as they are met outdoors: light, slant and clutter change the picture, never what is to be told from it.

#include "tests/support/catch.h"

#include <cmath>

#include <QPainter>

#include "ui/figures/figure.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

QImage drawn(const Depiction& spec)
{
    QImage image(200, 200, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintFigure(painter, image.rect(), spec);
    return image;
}

/// Red less blue, summed: how warm the light is.
double warmth(const QImage& image)
{
    double sum = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            sum += qRed(image.pixel(x, y)) - qBlue(image.pixel(x, y));
    return sum;
}

} // namespace

TEST_CASE("clutter surrounds a figure without making it small", "[figures][setting]")
{
    for (const QString& id : figureIds()) {
        CAPTURE(id.toStdString());
        const Depiction plain = plate(id, 5);
        Depiction crowded = plain;
        crowded.view.clutter = 1;
        const QRectF before = figureExtent(plain), after = figureExtent(crowded);
        const double across = std::max(before.width(), before.height());
        CHECK(after.contains(before.adjusted(1, 1, -1, -1)));
        CHECK(std::max(after.width(), after.height()) <= 1.45 * across); // keeps two thirds of its size
        CHECK(drawn(crowded) == drawn(crowded));
        if (id.startsWith(QStringLiteral("crown")) || id.startsWith(QStringLiteral("bark")) || id == QStringLiteral("gall_section"))
            CHECK(drawn(crowded) == drawn(plain)); // stand by themselves
        else if (id.startsWith(QStringLiteral("leaf")))
            CHECK(drawn(crowded) != drawn(plain));
    }
}

TEST_CASE("slant narrows a figure and leaves its height", "[figures][setting]")
{
    Depiction spec = plate(QStringLiteral("bark_castanea"), 3);
    const QRectF straight = figureExtent(spec);
    spec.view.slant = 40;
    CHECK(figureExtent(spec).width() == Approx(straight.width() * std::cos(40 * 3.14159265 / 180)).margin(4));
    CHECK(figureExtent(spec).height() == Approx(straight.height()).margin(4));
}

TEST_CASE("a low sun is warmer than an overcast sky", "[figures][setting]")
{
    Depiction spec = plate(QStringLiteral("bark_castanea"), 2);
    const double book = warmth(drawn(spec));
    spec.view.light = 1;
    CHECK(warmth(drawn(spec)) > 1.1 * book);
    spec.view.light = -1;
    CHECK(warmth(drawn(spec)) < 0.9 * book);
}

TEST_CASE("what a figure is like outdoors follows from its seed; no more than asked for", "[figures][setting]")
{
    const Depiction plain = plate(QStringLiteral("gall_midrib"), 9);
    CHECK(asMet(plain, 1) == asMet(plain, 1));
    CHECK_FALSE(asMet(plain, 1) == asMet(plateOf(plain.plate, 10), 1));
    CHECK(drawn(asMet(plain, 0)) == drawn(plain));
    for (std::uint32_t seed = 1; seed < 60; ++seed) {
        const Depiction met = asMet(plateOf(plain.plate, seed), 0.5);
        CHECK(met.view.clutter <= 0.5);
        CHECK(std::abs(met.view.light) <= 0.5);
        CHECK(met.view.slant <= 25);
        CHECK(asMet(plateOf("crown_healthy", seed), 1).view.turnDegrees == 0); // trees stand upright
    }
}

TEST_CASE("exit holes are drawn as asked", "[figures][setting]")
{
    Depiction spec = plate(QStringLiteral("gall_exit_holes"), 4);
    const QImage own = drawn(spec);
    spec.galls = {{.tone = GallTone::brown, .millimetres = 0, .exitHoles = 0}};
    const QImage none = drawn(spec);
    CHECK(none != own);
    spec.galls.front().exitHoles = 1;
    CHECK(drawn(spec) != none);
}
