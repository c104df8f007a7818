// The table of measured sizes in resources/docs/measuring.md: galls of known size drawn into pictures at angles and scales, their ends
// found in the pixels, measured as on a photo. `test_rules "[.table]"` prints it anew.

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <fstream>
#include <functional>
#include <iostream>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

#include "core/rules/photo_measure.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

constexpr int width = 1600, height = 1200;
constexpr double rulerMillimetres = 20;

/// A picture of two grounds: true where the subject covers the middle of a pixel.
class Drawing {
public:
    /// Along the first axis, turned by an angle, about a middle; `within` says which places along and across are covered.
    Drawing(PixelPoint middle, double degrees, const std::function<bool(double along, double across)>& within)
        : m_middle(middle), m_cos(std::cos(degrees * std::numbers::pi / 180)), m_sin(std::sin(degrees * std::numbers::pi / 180))
    {
        m_dark.resize(std::size_t{width} * height);
        for (int y = 0; y < height; ++y)
            for (int x = 0; x < width; ++x) {
                const double dx = x + 0.5 - middle.x, dy = y + 0.5 - middle.y;
                m_dark[at(x, y)] = within(dx * m_cos + dy * m_sin, dy * m_cos - dx * m_sin);
            }
    }
    /// From the first covered pixel along the axis through the middle to the last: as somebody sets the ends who sees pixels.
    [[nodiscard]] PixelLine ends() const
    {
        PixelLine line;
        bool begun = false;
        for (double along = -700; along <= 700; along += 0.25) {
            const int x = static_cast<int>(std::floor(m_middle.x + along * m_cos));
            const int y = static_cast<int>(std::floor(m_middle.y + along * m_sin));
            if (x < 0 || y < 0 || x >= width || y >= height || !m_dark[at(x, y)])
                continue;
            line.to = {x + 0.5, y + 0.5};
            if (!begun)
                line.from = line.to;
            begun = true;
        }
        line.endPixels = endPixelsAtZoom(1);
        return line;
    }

private:
    static std::size_t at(int x, int y) { return static_cast<std::size_t>(y) * width + static_cast<std::size_t>(x); }
    PixelPoint m_middle;
    double m_cos, m_sin;
    std::vector<bool> m_dark;
};

struct Measured {
    double millimetres = 0, uncertainty = 0;
};

Measured measured(double size, double perMillimetre, double degrees)
{
    const double ruler = rulerMillimetres * perMillimetre / 2, gall = size * perMillimetre / 2;
    const Drawing scale({800.25, 900.75}, degrees / 3, [&](double along, double across) {
        return std::abs(along) <= ruler && std::abs(across) <= 0.75 * perMillimetre;
    });
    const Drawing round({800.4, 450.6}, degrees, [&](double along, double across) {
        return along * along / (gall * gall) + across * across / (0.49 * gall * gall) <= 1;
    });
    const auto length = photoLength({scale.ends(), rulerMillimetres, 0.1}, round.ends());
    REQUIRE(length);
    return {length->millimetres, length->uncertaintyMillimetres};
}

std::vector<std::string> table(double& worst)
{
    std::vector<std::string> rows;
    for (const double perMillimetre : {8.0, 16.0, 32.0})
        for (const double degrees : {0.0, 30.0, 45.0, 75.0, 90.0})
            for (const double size : {6.0, 15.0}) {
                const Measured found = measured(size, perMillimetre, degrees);
                worst = std::max(worst, std::abs(found.millimetres - size) / found.uncertainty);
                char row[120];
                std::snprintf(row, sizeof row, "| %.0f | %.0f | %.1f | %.2f | %+.2f | %.2f |", perMillimetre, degrees, size,
                              found.millimetres, found.millimetres - size, 2 * found.uncertainty);
                rows.emplace_back(row);
            }
    return rows;
}

} // namespace

TEST_CASE("the table of measured sizes in the documents is what the code measures", "[rules][photo]")
{
    double worst = 0;
    const auto rows = table(worst);
    CHECK(worst < 1);   // ends set to a pixel are set more finely than the two pixels that are allowed for
    std::ifstream file(CUPULE_SOURCE_DIR "/resources/docs/measuring.md");
    std::stringstream document;
    document << file.rdbuf();
    for (const std::string& row : rows) {
        CAPTURE(row);
        CHECK(document.str().find(row + '\n') != std::string::npos);
    }
    std::size_t written = 0;
    for (std::string line; std::getline(document, line);)
        written += line.starts_with("| 8 |") || line.starts_with("| 16 |") || line.starts_with("| 32 |") ? 1U : 0U;
    CHECK(written == rows.size());
}

TEST_CASE("prints the table of measured sizes", "[.table]")
{
    double worst = 0;
    for (const std::string& row : table(worst))
        std::cout << row << '\n';
    CHECK(worst < 1);
}
