// Floors of WCAG 2.2: text 4.5:1 (success criterion 1.4.3), what must be seen to use a thing 3:1 (1.4.11).

#include "tests/support/catch.h"

#include <cmath>

#include <QImage>

#include "tests/gui/gui_support.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

struct Named {
    const char* name;
    QColor colour;
};

std::vector<Named> grounds(const Theme& t)
{
    return {{"ground", t.ground},     {"panel", t.panel},  {"page", t.page},         {"well", t.well},
            {"nutSoft", t.nutSoft},   {"leaf", t.leaf},    {"stopSoft", t.stopSoft}, {"askSoft", t.askSoft},
            {"noteSoft", t.noteSoft}, {"okSoft", t.okSoft}};
}

} // namespace

TEST_CASE("contrast follows the WCAG definition", "[gui][contrast]")
{
    // WCAG 2.2, "contrast ratio": (L1 + 0.05) / (L2 + 0.05), so black on white is 1.05 / 0.05.
    CHECK(contrast(Qt::black, Qt::white) == Approx(21.0).epsilon(1e-6));
    CHECK(contrast(Qt::white, Qt::white) == Approx(1.0));
    // Relative luminance of pure red is its coefficient, 0.2126: (1.05) / (0.2126 + 0.05).
    CHECK(contrast(QColor(255, 0, 0), Qt::white) == Approx(1.05 / 0.2626).epsilon(1e-4));
    // Grey 119 of 255 is the darkest of common greys that misses 4.5 on white; from memory: 4.48.
    CHECK(contrast(QColor(0x77, 0x77, 0x77), Qt::white) == Approx(4.48).margin(0.005));
}

TEST_CASE("every text colour reaches 4.5 on every ground of both themes", "[gui][contrast]")
{
    for (const Theme* theme : {&lightTheme(), &darkTheme()})
        for (const Named& ground : grounds(*theme))
            for (const Named& text : std::vector<Named>{{"ink", theme->ink},
                                                        {"ink2", theme->ink2},
                                                        {"ink3", theme->ink3},
                                                        {"link", theme->link},
                                                        {"leafInk", theme->leafInk}}) {
                CAPTURE(theme->dark, ground.name, text.name);
                CHECK(contrast(text.colour, ground.colour) >= 4.5);
            }
    for (const Theme* theme : {&lightTheme(), &darkTheme()}) {
        CHECK(contrast(theme->nutInk, theme->nut) >= 4.5); // main button, selected text
        CHECK(contrast(theme->page, theme->ink) >= 4.5);   // chosen answer
    }
}

TEST_CASE("edges, focus rings and needles reach 3 on every ground of both themes", "[gui][contrast]")
{
    for (const Theme* theme : {&lightTheme(), &darkTheme()})
        for (const Named& ground : grounds(*theme))
            for (const Named& mark : std::vector<Named>{{"edge", theme->edge},
                                                        {"focus", theme->focus},
                                                        {"nut", theme->nut},
                                                        {"ink", theme->ink}}) {
                CAPTURE(theme->dark, ground.name, mark.name);
                CHECK(contrast(mark.colour, ground.colour) >= 3.0);
            }
}

TEST_CASE("a data mark with its ink outline reaches 3 on the page in both themes", "[gui][contrast]")
{
    for (const Theme* theme : {&lightTheme(), &darkTheme()})
        for (const QColor& fill : {data::orange, data::sky, data::green, data::yellow, data::blue,
                                   data::vermilion, data::purple}) {
            CAPTURE(theme->dark, fill.name().toStdString());
            CHECK(std::max(contrast(fill, theme->page), contrast(theme->ink, theme->page)) >= 3.0);
        }
}

TEST_CASE("every mark draws in the ink it is given", "[gui][contrast][marks]")
{
    const QStringList names = markNames();
    REQUIRE(names.size() >= 40);
    for (const Theme* theme : {&lightTheme(), &darkTheme()})
        for (const QString& name : names) {
            const QImage image = markPixmap(name, 48, theme->ink, 1).toImage();
            int inked = 0;
            for (int y = 0; y < image.height(); ++y)
                for (int x = 0; x < image.width(); ++x) {
                    const QColor pixel = image.pixelColor(x, y);
                    inked += pixel.alpha() > 230 && contrast(pixel, theme->page) >= 3.0;
                }
            CAPTURE(name.toStdString(), theme->dark);
            CHECK(inked > 20);
        }
    CHECK(markPixmap(QStringLiteral("no-such-mark"), 20, Qt::black, 1).toImage().pixelColor(10, 10).alpha() ==
          0);
}

TEST_CASE("the style sheet leaves no name unfilled", "[gui][contrast]")
{
    for (const Theme* theme : {&lightTheme(), &darkTheme()}) {
        const QString sheet = theme->styleSheet();
        CHECK(sheet.size() > 500);
        CHECK(!sheet.contains(QLatin1Char('@')));
    }
}

TEST_CASE("text keeps its floor and follows the size in force", "[gui][text]")
{
    QFont base;
    for (const int percent : {100, 150, 175}) {
        base.setPointSizeF(10.5 * percent / 100);
        for (const TextRole role : {TextRole::body, TextRole::strong, TextRole::caption, TextRole::small,
                                    TextRole::heading, TextRole::title, TextRole::figures, TextRole::ids})
            CHECK(roleFont(role, base).pointSizeF() >= 9.0 * percent / 100 - 1e-9);
        CHECK(scaled(100, base) == percent);
    }
    Look& look = test::look();
    look.setTextPercent(60);
    CHECK(look.textPercent() == 90);
    CHECK(look.textStep(-1) == 90);
    CHECK(look.textStep(1) == 100);
    look.setTextPercent(300);
    CHECK(look.textPercent() == 175);
    CHECK(look.textStep(1) == 175);
    look.setTextPercent(100);
    CHECK(look.textStep(1) == 110);
}
