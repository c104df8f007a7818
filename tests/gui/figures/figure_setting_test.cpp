// Figures as they are met outdoors: light, slant and clutter change the picture, never what is to be told from it.

#include "tests/support/catch.h"

#include <cmath>

#include <QPainter>

#include "ui/figures/figure.h"

using namespace cupule::ui;

namespace {

QImage drawn(const FigureSpec& spec)
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
        const FigureSpec plain{id, 5};
        FigureSpec crowded = plain;
        crowded.clutter = 1;
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
    FigureSpec spec{QStringLiteral("bark_castanea"), 3};
    const QRectF straight = figureExtent(spec);
    spec.slant = 40;
    CHECK(figureExtent(spec).width() == Approx(straight.width() * std::cos(40 * 3.14159265 / 180)).margin(4));
    CHECK(figureExtent(spec).height() == Approx(straight.height()).margin(4));
}

TEST_CASE("a low sun is warmer than an overcast sky", "[figures][setting]")
{
    FigureSpec spec{QStringLiteral("bark_castanea"), 2};
    const double book = warmth(drawn(spec));
    spec.light = 1;
    CHECK(warmth(drawn(spec)) > 1.1 * book);
    spec.light = -1;
    CHECK(warmth(drawn(spec)) < 0.9 * book);
}

TEST_CASE("what a figure is like outdoors follows from its seed; no more than asked for", "[figures][setting]")
{
    const FigureSpec plain{QStringLiteral("gall_midrib"), 9};
    CHECK(asMet(plain, 1) == asMet(plain, 1));
    CHECK_FALSE(asMet(plain, 1) == asMet({plain.kind, 10}, 1));
    CHECK(drawn(asMet(plain, 0)) == drawn(plain));
    for (std::uint32_t seed = 1; seed < 60; ++seed) {
        const FigureSpec met = asMet({plain.kind, seed}, 0.5);
        CHECK(met.clutter <= 0.5);
        CHECK(std::abs(met.light) <= 0.5);
        CHECK(met.slant <= 25);
        CHECK(asMet({QStringLiteral("crown_healthy"), seed}, 1).turnDegrees == 0); // trees stand upright
    }
}

TEST_CASE("exit holes are drawn as asked", "[figures][setting]")
{
    FigureSpec spec{QStringLiteral("gall_exit_holes"), 4};
    const QImage own = drawn(spec);
    spec.exitHoles = 0;
    const QImage none = drawn(spec);
    CHECK(none != own);
    spec.exitHoles = 1;
    CHECK(drawn(spec) != none);
}
