// Looking at photos and measuring on them, with real keys and a real mouse on pictures made with known sizes.

#include <cmath>

#include <QAbstractItemView>
#include <QComboBox>
#include <QImageReader>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QTest>

#include "core/protocol/pack_reader.h"
#include "tests/gui/gui_support.h"
#include "tests/support/shared_data.h"
#include "ui/bridge/text.h"
#include "ui/photos/figure_pane.h"
#include "ui/photos/heic.h"
#include "ui/photos/measure_dialog.h"
#include "ui/photos/measure_panel.h"
#include "ui/photos/photo_canvas.h"
#include "ui/photos/thumbnails.h"

using namespace cupule;
using namespace cupule::ui;
using cupule::test::settle;

namespace {

/// A grey page with a ground colour in its middle, saved as a picture.
QString savedPage(const QSize& size, const QColor& middle = Qt::gray)
{
    static int number = 0;
    QImage page(size, QImage::Format_RGB32);
    page.fill(Qt::lightGray);
    QPainter painter(&page);
    painter.fillRect(QRect(size.width() / 4, size.height() / 4, size.width() / 2, size.height() / 2), middle);
    painter.end();
    static const QString folder = text(test::temporaryFolder());
    const QString path = folder + QStringLiteral("/page-%1.png").arg(++number);
    REQUIRE(page.save(path));
    return path;
}

struct Open {
    MeasureDialog dialog;
    PhotoCanvas& canvas;

    explicit Open(const std::vector<PhotoToMeasure>& photos, const std::string& sign = "S02", double known = 0)
        : dialog(photos, request(sign, known), builtInPack()), canvas(*dialog.canvas())
    {
        settle(dialog, {1180, 720});
        dialog.activateWindow();
        wait();
    }
    static MeasureRequest request(const std::string& sign, double known)
    {
        MeasureRequest asked;
        asked.sign = sign;
        asked.tree = QStringLiteral("T-03");
        asked.figure = QStringLiteral("gall_midrib");
        asked.knownMillimetres = known;
        return asked;
    }
    void wait() { REQUIRE(QTest::qWaitFor([this] { return dialog.isSettled(); }, 20000)); }
    void keys(std::initializer_list<Qt::Key> all)
    {
        for (const Qt::Key key : all)
            QTest::keyClick(dialog.focusWidget(), key);
    }
    /// Draws a line with the mouse, from and to in stored pixels.
    void drag(const QPointF& from, const QPointF& to)
    {
        const QPoint a = canvas.toScreen(from).toPoint(), b = canvas.toScreen(to).toPoint();
        QTest::mousePress(&canvas, Qt::LeftButton, {}, a);
        QTest::mouseMove(&canvas, (a + b) / 2);
        QTest::mouseMove(&canvas, b);
        QTest::mouseRelease(&canvas, Qt::LeftButton, {}, b);
    }
    QString number() const { return dialog.panel()->number(); }
};

} // namespace

TEST_CASE("a known length, a line across, and Enter: the size with its uncertainty", "[gui][photos]")
{
    Open open({{savedPage({1600, 1200}), QStringLiteral("a")}});
    CHECK(open.dialog.focusWidget() == &open.canvas);
    open.keys({Qt::Key_L, Qt::Key_3, Qt::Key_0, Qt::Key_Return});
    CHECK(open.dialog.focusWidget() == &open.canvas);
    open.drag({300, 900}, {1140, 900});
    CHECK(open.number() == QStringLiteral("–"));
    open.keys({Qt::Key_Return});   // nothing is measured yet: nothing is taken
    CHECK(open.dialog.isVisible());
    open.drag({600, 300}, {998, 300});
    const double zoom = open.canvas.zoom();
    open.keys({Qt::Key_Return});
    REQUIRE(open.dialog.taken());
    CHECK(open.dialog.result() == QDialog::Accepted);
    const MeasureResult& taken = *open.dialog.taken();
    // 30 mm along 840 pixels, 398 across: 14.21 mm; the mouse stands on whole pixels of the screen
    CHECK(taken.length.millimetres == Approx(14.214).margin(0.1));
    CHECK(taken.line.endPixels == Approx(2 / zoom).epsilon(1e-9));
    CHECK(taken.length.uncertaintyMillimetres == Approx(taken.length.millimetres * std::sqrt(2 * std::pow(2 / zoom / 398, 2) +
                                                        2 * std::pow(2 / zoom / 840, 2) + std::pow(0.1 / 30, 2))).epsilon(0.01));
    CHECK(taken.scale.line.from.x == Approx(300).margin(1 / zoom));
    CHECK(taken.line.to.x == Approx(998).margin(1 / zoom));
    const PhotoMeasure note = taken.note("S02");
    CHECK(note.sign == "S02");
    CHECK(note.scaleMillimetres == 30);
    CHECK(note.toX == taken.line.to.x);
    CHECK(note.scaleFromY == taken.scale.line.from.y);
    CHECK(note.uncertaintyMillimetres == taken.length.uncertaintyMillimetres);
}

TEST_CASE("sizes at angles, scales and turns come out within their uncertainty", "[gui][photos]")
{
    Open open({{savedPage({2400, 1800}), QStringLiteral("a")}}, "S02", 20);
    for (const double perMillimetre : {24.0, 40.0})
        for (const double degrees : {0.0, 33.0, 90.0, 147.0})
            for (const double size : {6.0, 15.0}) {
                open.canvas.turn();
                open.canvas.setPicture(readPicture(savedPage({2400, 1800})));
                const auto ends = [&](const QPointF& middle, double length, double angle) {
                    const QPointF half(length / 2 * std::cos(angle), length / 2 * std::sin(angle));
                    return std::pair(middle - half, middle + half);
                };
                const double angle = degrees * 3.14159265358979 / 180;
                const auto scale = ends({1200, 1000}, 20 * perMillimetre, angle / 2);
                const auto line = ends({1200, 500}, size * perMillimetre, angle);
                open.drag(scale.first, scale.second);
                open.drag(line.first, line.second);
                CAPTURE(perMillimetre, degrees, size);
                bool good = false;
                const double shown = QLocale().toDouble(open.number(), &good);
                REQUIRE(good);
                CHECK(std::abs(shown - size) < 2 * std::sqrt(2.0) * 2 / open.canvas.zoom() / perMillimetre);
            }
}

TEST_CASE("the whole way by keyboard: Tab from end to end and out again, arrows set them", "[gui][photos]")
{
    Open open({{savedPage({1600, 1200}), QStringLiteral("a")}}, "S02", 30);
    for (int end = 0; end < 4; ++end) {
        CHECK(open.canvas.activeEnd() == end);
        const auto before = open.canvas.toScreen({0, 0});
        QTest::keyClick(&open.canvas, Qt::Key_Left);
        QTest::keyClick(&open.canvas, Qt::Key_Down, Qt::ShiftModifier);
        CHECK(open.canvas.toScreen({0, 0}) == before);   // the picture stays, the end moves
        if (end < 3)
            QTest::keyClick(&open.canvas, Qt::Key_Tab);
    }
    REQUIRE(open.canvas.measuredLine());
    CHECK(open.number() != QStringLiteral("–"));
    const double before = open.canvas.measuredLine()->pixels();
    QTest::keyClick(&open.canvas, Qt::Key_Right, Qt::ShiftModifier);
    CHECK(open.canvas.measuredLine()->pixels() == Approx(before + 10 / open.canvas.zoom()).epsilon(1e-6));
    QTest::keyClick(&open.canvas, Qt::Key_Backtab, Qt::ShiftModifier);
    CHECK(open.canvas.activeEnd() == 2);
    QTest::keyClick(&open.canvas, Qt::Key_Tab);
    QTest::keyClick(&open.canvas, Qt::Key_Tab);
    CHECK(open.dialog.focusWidget() != &open.canvas);
    open.canvas.setFocus();
    QTest::keyClick(&open.canvas, Qt::Key_N);
    CHECK_FALSE(open.canvas.measuredLine());
    CHECK(open.canvas.scaleLine());
    QTest::keyClick(&open.canvas, Qt::Key_Escape);
    CHECK_FALSE(open.dialog.isVisible());
    CHECK_FALSE(open.dialog.taken());
}

TEST_CASE("turning and zooming move no end; an end set zoomed in is set more finely", "[gui][photos]")
{
    Open open({{savedPage({1600, 1200}), QStringLiteral("a")}}, "S02", 30);
    open.drag({300, 900}, {1140, 900});
    open.drag({600, 300}, {998, 300});
    const PixelLine line = *open.canvas.measuredLine();
    open.keys({Qt::Key_R});
    CHECK(open.canvas.turnDegrees() == 90);
    CHECK(*open.canvas.measuredLine() == line);
    const double zoom = open.canvas.zoom();
    open.keys({Qt::Key_Plus, Qt::Key_Plus, Qt::Key_Plus, Qt::Key_BracketRight});
    CHECK(open.canvas.zoom() == Approx(zoom * 1.25 * 1.25 * 1.25));
    CHECK(open.canvas.brightness() == 1);
    CHECK(*open.canvas.measuredLine() == line);
    open.keys({Qt::Key_Up});   // the active end alone is set anew
    CHECK(open.canvas.measuredLine()->endPixels < line.endPixels);
    open.keys({Qt::Key_0});
    CHECK(open.canvas.zoom() == Approx(zoom));
    const QPointF corner = open.canvas.toScreen({0, 0});
    QTest::keyClick(&open.canvas, Qt::Key_Right, Qt::ControlModifier);
    CHECK(open.canvas.toScreen({0, 0}).x() < corner.x());
}

TEST_CASE("too short a scale is refused with what would do", "[gui][photos]")
{
    Open open({{savedPage({1600, 1200}), QStringLiteral("a")}}, "S02", 30);
    open.drag({300, 900}, {330, 900});
    open.drag({600, 300}, {998, 300});
    CHECK(open.number() == QStringLiteral("–"));
    CHECK_FALSE(open.dialog.findChild<QPushButton*>(QStringLiteral("measureTake"))->isEnabled());
    bool said = false;
    for (const QLabel* label : open.dialog.panel()->findChildren<QLabel*>())
        said = said || label->text().contains(QStringLiteral("longer stretch"));
    CHECK(said);
}

TEST_CASE("other photos by key; one that cannot be shown says so and costs nothing", "[gui][photos]")
{
    Open open({{savedPage({800, 600}), QStringLiteral("a")}, {QStringLiteral("/nowhere/b.jpg"), QStringLiteral("b")}}, "");
    CHECK(open.canvas.mode() == PhotoCanvas::Mode::look);
    open.keys({Qt::Key_Period});
    open.wait();
    CHECK(open.dialog.photo() == 1);
    open.keys({Qt::Key_Plus, Qt::Key_Left, Qt::Key_Period});
    CHECK(open.dialog.photo() == 1);
    open.keys({Qt::Key_Comma});
    open.wait();
    CHECK(open.dialog.photo() == 0);
    CHECK(open.canvas.zoom() > 0);
    Open none(std::vector<PhotoToMeasure>{});
    none.keys({Qt::Key_Comma, Qt::Key_Period, Qt::Key_C, Qt::Key_Return});
    CHECK(none.dialog.isVisible());
}

TEST_CASE("a picked patch is named, with the caution", "[gui][photos]")
{
    Open open({{savedPage({800, 600}, QColor(222, 130, 140)), QStringLiteral("a")}});
    open.keys({Qt::Key_C});
    CHECK(open.dialog.panel()->colour().startsWith(QStringLiteral("Pink")));
    CHECK(open.dialog.panel()->colour().contains(QStringLiteral("not calibrated")));
    const QPoint grey = open.canvas.toScreen({40, 40}).toPoint();
    QTest::mouseClick(&open.canvas, Qt::LeftButton, {}, grey);
    CHECK(open.dialog.panel()->colour().startsWith(QStringLiteral("No gall colour")));
    open.keys({Qt::Key_Escape});   // back to the lines, the dialog stays
    CHECK(open.dialog.isVisible());
    CHECK(open.canvas.mode() == PhotoCanvas::Mode::lines);
}

TEST_CASE("a picture is held up as its orientation says", "[gui][photos]")
{
    // public test photos, one for each of the eight EXIF orientations
    if (!test::sharedPath("reference/files/photos/orientation_1.jpg")) {
        test::skipped("reference photos are not there");
        return;
    }
    for (int orientation = 1; orientation <= 8; ++orientation) {
        const auto path = test::sharedPath("reference/files/photos/orientation_" + std::to_string(orientation) + ".jpg");
        REQUIRE(path);
        const Picture picture = readPicture(text(*path));
        QImageReader reader(text(*path));
        reader.setAutoTransform(true);
        const QImage upright = reader.read().convertToFormat(QImage::Format_RGB32);
        CAPTURE(orientation);
        REQUIRE_FALSE(picture.isNull());
        const QImage& stored = picture.levels.front();
        const QPointF corner = picture.upright.mapRect(QRectF(stored.rect())).topLeft();
        int wrong = 0;
        for (int y = 0; y < stored.height(); ++y)
            for (int x = 0; x < stored.width(); ++x) {
                const QPointF at = picture.upright.map(QPointF(x + 0.5, y + 0.5)) - corner;
                wrong += upright.pixel(static_cast<int>(at.x()), static_cast<int>(at.y())) != stored.pixel(x, y) ? 1 : 0;
            }
        CHECK(wrong == 0);
    }
}

TEST_CASE("the same picture sent smaller and stripped is likely the same; another tree is not", "[gui][photos]")
{
    // qarmin/czkawka issue 1199: the same picture again, smaller and without EXIF
    if (!test::sharedPath("reference/cases/C15/original.jpg")) {
        test::skipped("reference cases are not there");
        return;
    }
    const auto hash = [](const char* name) { return lookAtPicture(*test::sharedPath(std::string("reference/cases/C15/") + name)); };
    const auto original = hash("original.jpg");
    REQUIRE(original);
    CHECK(bitsApart(*original, *hash("sent_by_messenger.jpg")) <= likelySameBits);
    CHECK(bitsApart(*original, *hash("other_tree_same_minute.jpg")) > likelySameBits);
}

TEST_CASE("thumbnails stand upright, whatever the EXIF orientation", "[gui][photos]")
{
    // eight public test photos of one letter F, one for each EXIF orientation
    if (!test::sharedPath("reference/files/photos/orientation_1.jpg")) {
        test::skipped("reference photos are not there");
        return;
    }
    Thumbnails small(40, 20);
    std::vector<QImage> images;
    std::vector<std::uint64_t> hashes;
    for (int orientation = 1; orientation <= 8; ++orientation) {
        const auto path = test::sharedPath("reference/files/photos/orientation_" + std::to_string(orientation) + ".jpg");
        REQUIRE(path);
        REQUIRE(QTest::qWaitFor([&] { return !small.of(text(*path)).isNull(); }, 20000));
        images.push_back(small.of(text(*path)));
        hashes.push_back(lookAtPicture(*path).value());
    }
    for (std::size_t i = 1; i < images.size(); ++i) {
        CAPTURE(i);
        CHECK(images[i].size() == images[0].size());
        CHECK(bitsApart(hashes[0], hashes[i]) <= 4);   // pressed eight times, seen the same way up
    }
    CHECK(small.of(QStringLiteral("/nowhere.jpg")).isNull());
    REQUIRE(QTest::qWaitFor([&] { return small.isSettled(); }, 20000));
    CHECK(small.failed(QStringLiteral("/nowhere.jpg")));
}

TEST_CASE("pixels of a photo are those that another decoder reads", "[gui][photos]")
{
    const auto path = test::sharedPath("reference/files/photos/orientation_6_portrait.jpg");
    if (!path) {
        test::skipped("reference photos are not there");
        return;
    }
    // ianare/exif-samples, jpg/orientation/portrait_6.jpg, read with jpeg-js (npm), which shares no code with libjpeg; colour at a
    // sharp edge depends on how a decoder spreads it, so single pixels are compared loosely and a patch closely
    const Picture picture = readPicture(text(*path));
    REQUIRE(picture.size() == QSize(600, 450));
    const QImage& stored = picture.levels.front();
    const std::pair<QPoint, Rgb8> pixels[] = {{{0, 0}, {255, 255, 255}}, {{300, 200}, {92, 91, 95}}, {{599, 449}, {100, 94, 22}},
                                              {{120, 330}, {76, 90, 55}}, {{450, 60}, {47, 51, 38}}};
    for (const auto& [at, colour] : pixels) {
        CAPTURE(at.x(), at.y());
        const Rgb8 read = patchOf(stored, at, 1).at(0);
        for (std::size_t i = 0; i < 3; ++i)
            CHECK(std::abs(int(read[i]) - int(colour[i])) <= 12);
    }
    const auto patch = patchOf(stored, {300, 200}, 21);
    REQUIRE(patch.size() == 441);
    const double means[] = {177.72, 177.25, 187.58};
    for (std::size_t i = 0; i < 3; ++i) {
        double sum = 0;
        for (const Rgb8& pixel : patch)
            sum += pixel[i];
        CHECK(sum / 441 == Approx(means[i]).margin(1.5));
    }
}

TEST_CASE("HEIC photos are shown", "[gui][photos]")
{
    const auto stones = test::sharedPath("reference/files/photos/nw_heic.heic");
    if (!stones) {
        test::skipped("reference photos are not there");
        return;
    }
    // Exiv2/exiv2 test data, Stonehenge.heic: 300 x 200 by its own image size (exiftool), grass below and a bright sky above
    const Picture picture = readPicture(text(*stones));
    REQUIRE(picture.size() == QSize(300, 200));
    const auto mean = [&](int y) { return labOfPatch(patchOf(picture.levels.front(), {150, y}, 31)); };
    CHECK(mean(20).lightness > mean(180).lightness + 15);
    CHECK(mean(180).a < 5);   // grass is no red
    CHECK(readSmall(text(*stones), 60).width() == 60);
    CHECK(lookAtPicture(*stones));
    CHECK(isHeic(text(*test::sharedPath("reference/files/photos/heif_no_gps.heif"))));
    CHECK(readHeic(text(*test::sharedPath("reference/files/photos/no_exif.jpg"))).isNull());
}

TEST_CASE("lines measured earlier are drawn again, and E takes them away", "[gui][photos]")
{
    PhotoMeasure earlier;
    earlier.sign = "S02";
    earlier.scaleFromX = 100, earlier.scaleFromY = 100, earlier.scaleToX = 700, earlier.scaleToY = 100;
    earlier.scaleMillimetres = 30;
    earlier.fromX = 400, earlier.fromY = 300, earlier.toX = 400, earlier.toY = 500;
    earlier.millimetres = 10, earlier.uncertaintyMillimetres = 0.2;
    Open open({{savedPage({800, 600}), QStringLiteral("a"), {earlier}}, {savedPage({800, 600}), QStringLiteral("b")}}, "");
    REQUIRE(open.canvas.earlier().size() == 2);
    CHECK(open.canvas.earlier()[1].from == QPointF(400, 300));
    CHECK(open.canvas.earlier()[1].words.contains(QStringLiteral("10 ± 0.4 mm")));
    const QPoint middle = open.canvas.toScreen({400, 400}).toPoint();
    const QColor drawn = open.canvas.grab().toImage().pixelColor(middle);
    open.keys({Qt::Key_E});
    const QColor bare = open.canvas.grab().toImage().pixelColor(middle);
    CHECK(drawn != bare);
    open.keys({Qt::Key_E, Qt::Key_Period});
    open.wait();
    CHECK(open.canvas.earlier().empty());   // the other photo has none
}

TEST_CASE("a coin gives its published size; typing another length lets go of it", "[gui][photos]")
{
    Open open({{savedPage({800, 600}), QStringLiteral("a")}});
    QComboBox& coins = *open.dialog.panel()->coins();
    open.keys({Qt::Key_K});
    CHECK(coins.view()->isVisible());
    coins.hidePopup();
    const int euro = coins.findText(QStringLiteral("2 euro coin"), Qt::MatchStartsWith);
    REQUIRE(euro > 0);
    coins.setCurrentIndex(euro);
    Q_EMIT coins.activated(euro);
    CHECK(*open.dialog.panel()->known() == 25.75);
    CHECK(open.dialog.panel()->knownUncertainty() == Approx(0.05));
    open.dialog.panel()->knownField()->setFocus();
    open.keys({Qt::Key_3});
    CHECK(coins.currentIndex() == 0);
}

TEST_CASE("the whole view by keys: darker, drawn figure, full screen, moved, turned", "[gui][photos]")
{
    Open open({{savedPage({1600, 1200}), QStringLiteral("a")}}, "");
    auto* figure = open.dialog.findChild<FigurePane*>();
    REQUIRE(figure != nullptr);
    CHECK(figure->isVisible());
    open.keys({Qt::Key_D});
    CHECK_FALSE(figure->isVisible());
    open.keys({Qt::Key_D});
    CHECK(figure->isVisible());
    const QPoint middle(open.canvas.width() / 2, open.canvas.height() / 2);
    const int before = qGray(open.canvas.grab().toImage().pixel(middle));
    open.keys({Qt::Key_BracketLeft, Qt::Key_BracketLeft});
    CHECK(qGray(open.canvas.grab().toImage().pixel(middle)) < before);
    open.keys({Qt::Key_BracketRight, Qt::Key_BracketRight, Qt::Key_BracketRight});
    CHECK(qGray(open.canvas.grab().toImage().pixel(middle)) > before);
    open.keys({Qt::Key_F});
    CHECK(open.dialog.isFullScreen());
    open.keys({Qt::Key_F});
    CHECK_FALSE(open.dialog.isFullScreen());
    open.keys({Qt::Key_Plus, Qt::Key_Plus});
    const QPointF corner = open.canvas.toScreen({0, 0});
    QTest::keyClick(&open.canvas, Qt::Key_Down, Qt::ControlModifier);
    CHECK(open.canvas.toScreen({0, 0}).y() < corner.y());
    open.keys({Qt::Key_R, Qt::Key_R});
    CHECK(open.canvas.turnDegrees() == 180);
    open.keys({Qt::Key_Escape});
    CHECK_FALSE(open.dialog.isVisible());
}
