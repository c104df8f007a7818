// Printed without colour a figure must still be read: its edge against the page, its parts against one another. Differences in
// lightness L (0 black to 100 white, CIE 15:2004); how large they must be is a drawing judgement.

#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QPainter>

#include "ui/figures/figure.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

constexpr int side = 420;

struct Picture {
    QImage image;
    double scale = 0; ///< pixels for a millimetre
};

Picture drawn(const Depiction& depiction)
{
    Picture picture{QImage(side, side, QImage::Format_ARGB32_Premultiplied)};
    picture.image.fill(Qt::transparent);
    QPainter painter(&picture.image);
    picture.scale = paintFigure(painter, picture.image.rect(), depiction);
    return picture;
}

double lightness(QRgb pixel)
{
    const auto linear = [](int value) {
        const double c = value / 255.0;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    const double y = 0.2126 * linear(qRed(pixel)) + 0.7152 * linear(qGreen(pixel)) + 0.0722 * linear(qBlue(pixel));
    return y > 0.008856 ? 116 * std::cbrt(y) - 16 : 903.3 * y;
}

bool solid(const QImage& image, int x, int y)
{
    return image.valid(x, y) && qAlpha(image.pixel(x, y)) > 250;
}

/// Of solid pixels at so many pixels from a point.
std::vector<double> between(const QImage& image, const QPointF& middle, double from, double to)
{
    std::vector<double> found;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) {
            const double far = std::hypot(x - middle.x(), y - middle.y());
            if (far >= from && far < to && solid(image, x, y))
                found.push_back(lightness(image.pixel(x, y)));
        }
    std::sort(found.begin(), found.end());
    return found;
}

double share(const std::vector<double>& sorted, double part)
{
    return sorted.at(static_cast<std::size_t>(part * double(sorted.size() - 1)));
}

double mean(const std::vector<double>& values)
{
    double sum = 0;
    for (const double value : values)
        sum += value;
    return sum / double(values.size());
}

/// Lightness of the darkest twentieth near the edge of a gall.
double darkestNearEdge(const QImage& image, const QPointF& middle, double radius)
{
    return share(between(image, middle, 0.6 * radius, 1.1 * radius), 0.05);
}

/// Just inside the edge of what is drawn.
std::vector<double> edgeOf(const QImage& image)
{
    std::vector<double> found;
    for (int y = 1; y + 1 < image.height(); ++y)
        for (int x = 1; x + 1 < image.width(); ++x)
            if (solid(image, x, y) && (qAlpha(image.pixel(x - 1, y)) < 40 || qAlpha(image.pixel(x + 1, y)) < 40 || qAlpha(image.pixel(x, y - 1)) < 40 ||
                                       qAlpha(image.pixel(x, y + 1)) < 40 || qAlpha(image.pixel(x - 1, y - 1)) < 40))
                found.push_back(lightness(image.pixel(x, y)));
    std::sort(found.begin(), found.end());
    return found;
}

} // namespace

TEST_CASE("every figure has darks and lights that tell its parts in grey", "[figures][grey]")
{
    for (const QString& id : figureIds()) {
        CAPTURE(id.toStdString());
        const Picture picture = drawn(plate(id, 2));
        const std::vector<double> all = between(picture.image, {0, 0}, 0, 1e6);
        CHECK(share(all, 0.95) - share(all, 0.05) >= 12);
    }
}

TEST_CASE("the edge of every figure stands off a white page and a dark one in grey", "[figures][grey]")
{
    const double dark = lightness(qRgb(0x1D, 0x1F, 0x1C));
    for (const QString& id : figureIds()) {
        CAPTURE(id.toStdString());
        const std::vector<double> edge = edgeOf(drawn(plate(id, 2)).image);
        if (edge.size() < 30)
            continue; // nothing but threads
        CHECK(100 - share(edge, 0.5) >= 15);
        CHECK(share(edge, 0.75) - dark >= 8);
    }
}

TEST_CASE("a gall of every tone is told from its leaf in grey, by its body or by its rim", "[figures][grey]")
{
    for (const GallTone tone : {GallTone::green, GallTone::pink, GallTone::red})
        for (std::uint32_t seed = 1; seed <= 6; ++seed) {
            CAPTURE(nameOf(tone), seed);
            Depiction depiction = plateOf("gall_midrib", seed);
            depiction.galls = {{.tone = tone, .millimetres = 18}};
            const Picture picture = drawn(depiction);
            const QPointF middle = figureParts(picture.image.rect(), depiction).at(0).at;
            const double radius = 9 * picture.scale;
            const std::vector<double> body = between(picture.image, middle, 0, 0.55 * radius), around = between(picture.image, middle, 1.25 * radius, 1.9 * radius);
            double rim = 100; // the darkest ring round it
            for (double r = 0.55; r < 1.05; r += 0.05)
                rim = std::min(rim, share(between(picture.image, middle, r * radius, (r + 0.05) * radius), 0.25));
            CAPTURE(mean(body), mean(around), rim);
            CHECK(std::max(std::abs(mean(body) - mean(around)), mean(body) - rim) >= 10);
            CHECK(share(body, 0.95) - share(body, 0.05) >= 8); // swollen: lit on one side
            if (tone == GallTone::red) { // as dark as its leaf: an edge darker than anything beside it, and lights brighter
                CAPTURE(share(around, 0.1), share(around, 0.9), share(body, 0.98), darkestNearEdge(picture.image, middle, radius));
                CHECK(share(around, 0.1) - darkestNearEdge(picture.image, middle, radius) >= 6);
                CHECK(share(body, 0.98) - mean(around) >= 14);
            }
        }
}

TEST_CASE("flat marks differ from the blade in grey", "[figures][grey]")
{
    Depiction sound;
    sound.subject = Subject::leaf;
    for (std::uint32_t seed = 1; seed <= 4; ++seed) {
        sound.seed = seed;
        Depiction spotted = sound;
        spotted.blemishes = {{Blemish::leafSpot, 0.8}};
        Depiction galled = spotted; // of the same length as the spotted one, and without spots
        galled.blemishes = {{Blemish::leafSpot, 0.0}};
        const QImage plain = drawn(galled).image, marked = drawn(spotted).image;
        double sum = 0;
        int count = 0;
        for (int y = 0; y < side; ++y)
            for (int x = 0; x < side; ++x)
                if (solid(plain, x, y) && solid(marked, x, y)) {
                    const double change = std::abs(lightness(plain.pixel(x, y)) - lightness(marked.pixel(x, y)));
                    if (change > 4) {
                        sum += change;
                        ++count;
                    }
                }
        CAPTURE(seed, count, sum / std::max(1, count));
        CHECK(count > 150);
        CHECK(sum / count > 8); // dark middles, light rims
    }
}
