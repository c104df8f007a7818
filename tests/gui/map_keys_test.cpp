// The small map by keys and by mouse, and what a screen reader is told of it.

#include <QComboBox>
#include <QTest>

#include "tests/gui/gui_support.h"
#include "tests/gui/sample_map.h"
#include "ui/bridge/text.h"
#include "ui/map/map_legend.h"
#include "ui/map/map_words.h"
#include "ui/map/small_map.h"

using namespace cupule;
using namespace cupule::ui;
using cupule::test::sampleScene;
using cupule::test::settle;

namespace {

struct Open {
    SmallMap map;
    MapCanvas& canvas = *map.canvas();

    explicit Open(const MapScene& scene = sampleScene())
    {
        map.setScene(scene);
        settle(map, {320, 340});
        map.activateWindow();
        canvas.setFocus(Qt::TabFocusReason);
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        REQUIRE(canvas.hasFocus());
        QTest::keyClick(&canvas, key, modifiers);
    }
};

} // namespace

TEST_CASE("the map by keys: nearer, farther, along, all of it", "[gui][map]")
{
    Open open;
    const MapView all = open.canvas.view();
    for (const MapSpot& spot : sampleScene().visits)
        CHECK(all.box().holds(*open.canvas.scene().plane->toPlane(spot.at)));
    open.key(Qt::Key_Plus);
    CHECK(open.canvas.view().metresPerPixel == Approx(all.metresPerPixel / 1.5));
    CHECK(open.canvas.view().middle == all.middle);
    open.key(Qt::Key_Minus);
    open.key(Qt::Key_Minus);
    CHECK(open.canvas.view().metresPerPixel == Approx(all.metresPerPixel * 1.5));
    open.key(Qt::Key_0);
    CHECK(open.canvas.view().metresPerPixel == Approx(all.metresPerPixel));
    open.key(Qt::Key_Right);
    CHECK(open.canvas.view().middle.easting == Approx(all.middle.easting + all.metresPerPixel * open.canvas.width() / 4));
    CHECK(open.canvas.view().middle.northing == all.middle.northing);
    open.key(Qt::Key_Up, Qt::ShiftModifier);
    CHECK(open.canvas.view().middle.northing == Approx(all.middle.northing + all.metresPerPixel * 8));
    for (int i = 0; i < 60; ++i)
        open.key(Qt::Key_Plus);
    CHECK(open.canvas.view().metresPerPixel == Approx(MapView::finest));
    for (int i = 0; i < 60; ++i)
        open.key(Qt::Key_Minus);
    CHECK(open.canvas.view().metresPerPixel == Approx(MapView::coarsest));
    QTest::keyClick(&open.canvas, Qt::Key_Tab);
    CHECK(open.map.focusWidget() == open.map.notations()); // a form can be gone through past the map
}

TEST_CASE("the middle is read in the notation of choice, as fine as the map shows", "[gui][map]")
{
    Open open;
    open.canvas.goToStop(0);
    CHECK(open.map.pointerText() == QStringLiteral("middle: SO 54955 43915"));
    for (int i = 0; i < 12; ++i)
        open.key(Qt::Key_Minus);
    CHECK(open.map.pointerText() == QStringLiteral("middle: SO 549 439"));
    open.key(Qt::Key_0);
    open.key(Qt::Key_N);
    QComboBox& notations = *open.map.notations();
    const auto choose = [&](const QString& word) {
        notations.setFocus();
        const int at = notations.findText(word);
        REQUIRE(at >= 0);
        while (notations.currentIndex() != at)
            QTest::keyClick(&notations, notations.currentIndex() < at ? Qt::Key_Down : Qt::Key_Up);
    };
    CHECK(notations.currentText() == QStringLiteral("grid of the map"));
    choose(QStringLiteral("degrees"));
    CHECK(open.map.pointerText() == QStringLiteral("middle: 52.09174, -2.65889"));
    choose(QStringLiteral("Irish grid"));
    CHECK(open.map.pointerText() == QStringLiteral("middle: outside this grid"));
    MapScene other = sampleScene();
    other.visits.clear();
    open.map.setScene(other);
    CHECK(notations.currentText() == QStringLiteral("Irish grid")); // a choice stays
    choose(QStringLiteral("grid of the map"));
    other.tree->at = {53.35, -6.5};
    other.neighbours.clear();
    other.boundary.clear();
    other.photos.clear();
    open.map.setScene(other);
    CHECK(open.map.pointerText().startsWith(QStringLiteral("middle: N 9"))); // west of Dublin the Irish grid is drawn and read
}

TEST_CASE("the pointer is read while it is over the map", "[gui][map]")
{
    Open open;
    const QPointF corner(40, 50);
    QTest::mouseMove(&open.canvas, corner.toPoint());
    CHECK(open.map.pointerText().startsWith(QStringLiteral("pointer: SO 54")));
    const PlanePoint at = open.canvas.pointer();
    CHECK(at == open.canvas.view().toPlane(corner));
    const MapView before = open.canvas.view();
    QTest::mousePress(&open.canvas, Qt::LeftButton, {}, QPoint(100, 100));
    QTest::mouseMove(&open.canvas, QPoint(120, 90));
    QTest::mouseRelease(&open.canvas, Qt::LeftButton, {}, QPoint(120, 90));
    CHECK(open.canvas.view().toScreen(before.middle).x() == Approx(open.canvas.width() / 2.0 + 20));
    CHECK(open.canvas.view().toScreen(before.middle).y() == Approx(open.canvas.height() / 2.0 - 10));
}

TEST_CASE("the wheel scrolls the page past a map that nobody works on", "[gui][map]")
{
    Open open;
    const double scale = open.canvas.view().metresPerPixel;
    const auto turn = [&](Qt::KeyboardModifiers modifiers) {
        QWheelEvent wheel(QPointF(30, 30), open.canvas.mapToGlobal(QPointF(30, 30)), {}, QPoint(0, 120), Qt::NoButton, modifiers,
                          Qt::NoScrollPhase, false);
        QCoreApplication::sendEvent(&open.canvas, &wheel);
        return wheel.isAccepted();
    };
    open.map.notations()->setFocus();
    CHECK_FALSE(turn(Qt::NoModifier));
    CHECK(open.canvas.view().metresPerPixel == scale);
    const PlanePoint stays = open.canvas.view().toPlane({30, 30});
    CHECK(turn(Qt::ControlModifier));
    CHECK(open.canvas.view().metresPerPixel == Approx(scale / 1.5));
    CHECK(open.canvas.view().toPlane({30, 30}).easting == Approx(stays.easting)); // what lies under the pointer stays there
}

TEST_CASE("N goes from place to place, nearest first, and says where it is", "[gui][map]")
{
    MapScene scene = sampleScene();
    const Uid visit = Uid::parse("01890a5d-ac96-774b-bcce-b302099a8057").value();
    scene.visits[0].noun = visit;
    Open open(scene);
    Uid asked;
    QObject::connect(&open.map, &SmallMap::nounAsked, [&](const Uid& noun) { asked = noun; });
    open.key(Qt::Key_N);
    CHECK(open.canvas.accessibleDescription().startsWith(QStringLiteral("At T-03.")));
    open.key(Qt::Key_N);
    open.key(Qt::Key_N);
    open.key(Qt::Key_N);
    CHECK(open.canvas.stop() == 3);
    CHECK(open.canvas.accessibleDescription().startsWith(QStringLiteral("At 16 May 2026, 10 m to the north-west.")));
    CHECK(open.canvas.view().middle == open.canvas.scene().stops[3].at);
    open.key(Qt::Key_Return);
    CHECK(asked == visit);
    open.key(Qt::Key_N, Qt::ShiftModifier);
    CHECK(open.canvas.stop() == 2);
}

TEST_CASE("a screen reader is told what the map shows", "[gui][map]")
{
    Open open;
    CHECK(open.canvas.accessibleName() == QStringLiteral("Map"));
    const QString words = open.canvas.accessibleDescription();
    for (const char* part : {"Site Tanner's Hanger.", "Tree T-03, ± 7.1 m.", "14 other trees: T-04, 12 m to the north-east",
                             "4 visits with a position: 16 May 2026, 10 m to the north-west", "11 June 2026, at the tree",
                             "25 July 2026, 39 m to the south-east", "1 photo with a position: IMG_0412.jpg, 13 m to the north", "The map is "}) {
        CAPTURE(words.toStdString(), part);
        CHECK(words.contains(QString::fromUtf8(part)));
    }
    const auto& legend = open.map.findChild<MapLegend*>()->lines();
    REQUIRE(legend.size() == 4);
    CHECK(legend[0].words == QStringLiteral("T-03, ± 7.1 m"));
    CHECK(legend[1].words == QStringLiteral("14 other trees"));
    Open empty(MapScene{.notation = "OSGB"});
    CHECK(empty.canvas.accessibleDescription().startsWith(QStringLiteral("Nothing to show yet: the tree has no position.")));
    CHECK(compassWord(359) == QStringLiteral("north"));
    CHECK(compassWord(200) == QStringLiteral("south"));
    CHECK(compassWord(-45) == QStringLiteral("north-west"));
}

TEST_CASE("a map without a scene is blank, by keys too", "[gui][map]")
{
    SmallMap map;
    settle(map, {300, 300});
    map.canvas()->setFocus();
    for (const Qt::Key key : {Qt::Key_Plus, Qt::Key_N, Qt::Key_Return, Qt::Key_0, Qt::Key_Left})
        QTest::keyClick(map.canvas(), key);
    CHECK(map.canvas()->scene().plane == nullptr);
    CHECK(map.canvas()->accessibleDescription().isEmpty());
    CHECK(map.canvas()->tilesPainted() == 0);
    CHECK(map.pointerText().isEmpty());
}

TEST_CASE("what was looked at stays in sight while nothing moves", "[gui][map]")
{
    Open open;
    open.key(Qt::Key_Plus);
    const MapView near = open.canvas.view();
    open.map.setScene(sampleScene());
    CHECK(open.canvas.view() == near);
    (void)open.map.grab();
    const int tiles = open.canvas.tilesPainted();
    open.map.setScene(sampleScene());
    (void)open.map.grab();
    CHECK(open.canvas.tilesPainted() == tiles); // the same scene paints nothing anew
    MapScene moved = sampleScene();
    moved.tree->at.latitude += 0.01;
    open.map.setScene(moved);
    CHECK_FALSE(open.canvas.view() == near);
}
