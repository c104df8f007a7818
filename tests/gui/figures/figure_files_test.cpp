// Figures written to files: the drawing of the screen, in vectors, with a bar that tells its scale.

#include "tests/support/catch.h"

#include <QRegularExpression>
#include <QXmlStreamReader>

#include "ui/figures/cache.h"
#include "ui/figures/scale_bar.h"
#include "ui/figures/sheet.h"

using namespace cupule;
using namespace cupule::ui;

TEST_CASE("every figure is sound SVG with its words, its references and a scale bar, and small enough", "[figures][svg]")
{
    for (const QString& id : figureIds()) {
        CAPTURE(id.toStdString());
        const QByteArray svg = figureSvg(plate(id, 3));
        CHECK(svg == figureSvg(plate(id, 3)));
        CHECK(svg != figureSvg(plate(id, 4)));
        CHECK(svg.size() < 2'500'000); // a whole crown; a leaf is 60 kB
        QXmlStreamReader reader(svg);
        QSet<QString> ids, used;
        QString title, last;
        int paths = 0;
        while (!reader.atEnd()) {
            if (reader.readNext() != QXmlStreamReader::StartElement)
                continue;
            for (const QXmlStreamAttribute& attribute : reader.attributes()) {
                if (attribute.name() == u"id")
                    ids << attribute.value().toString();
                const QString value = attribute.value().toString();
                if (value.startsWith(QStringLiteral("url(#")))
                    used << value.mid(5).chopped(1);
                CHECK_FALSE(value.contains(QStringLiteral("nan")));
            }
            paths += reader.name() == u"path";
            if (reader.name() == u"title")
                title = reader.readElementText();
            else if (reader.name() == u"text")
                last = reader.readElementText();
        }
        CHECK_FALSE(reader.hasError());
        CHECK(paths > 5);
        CHECK(title == figureWords(id));
        CHECK(ids.contains(used));
        CHECK(QRegularExpression(QStringLiteral("^[125]0*\\s(mm|m)$")).match(last).hasMatch());
    }
    CHECK(figureSvg(plate(QStringLiteral("leaf_of_nothing"))).isEmpty());
}

TEST_CASE("a scale bar has a round length of 10 to 25 per cent of the width", "[figures]")
{
    for (double scale = 0.02; scale < 90; scale *= 1.37) {
        const ScaleBar bar = scaleBarFor(900, scale);
        CAPTURE(scale, bar.millimetres);
        CHECK(bar.length == Approx(bar.millimetres * scale));
        CHECK(bar.length <= 225);
        CHECK(bar.length >= 85);
    }
    CHECK(scaleBarFor(900, 0.1).words() == QStringLiteral("2 m"));
    CHECK(scaleBarFor(900, 10).words() == QStringLiteral("20 mm"));
}

TEST_CASE("a drawing is made once and kept", "[figures]")
{
    const Depiction spec = plate(QStringLiteral("leaf_castanea"), 5);
    Depiction turned = spec;
    turned.view.turnDegrees = 30;
    turned.view.scaleBar = true;
    CHECK(drawingOf(spec) == drawingOf(spec));
    CHECK(drawingOf(spec) == drawingOf(turned));
    CHECK(drawingOf(spec) != drawingOf(plateOf(spec.plate, 6)));
}

TEST_CASE("a sheet has room for every kind and seed", "[figures]")
{
    SheetForm form;
    form.kinds = {QStringLiteral("leaf_castanea"), QStringLiteral("husk_castanea"), QStringLiteral("nut_castanea")};
    form.across = 2;
    form.cell = {80, 90};
    const QImage sheet = figureSheet(form);
    CHECK(sheet.width() == 2 * 3 * 80);
    CHECK(sheet.height() == 2 * (90 + 48));
    const QImage empty = sheet.copy(3 * 80, 90 + 48, 3 * 80, 90 + 48); // the fourth place
    CHECK(empty.allGray());
    CHECK_FALSE(sheet.allGray());
}
