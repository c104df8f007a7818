// The map beside a visit, and its position taken from the tree, a photo and a point of a receiver, by keys.

#include "tests/gui/at_desk.h"

#include <QFile>
#include <QLineEdit>
#include <QListWidget>

#include "core/position/geodesic.h"
#include "ui/daysheet/place_dialog.h"
#include "ui/map/small_map.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::person;

namespace {

struct Visiting {
    FindStore store;
    Desk maud{person("MH", "Maud Harrow"), {Role::volunteer, Role::sampleHandler}, store.path};

    /// A new visit to T-03, which lies at SO 5487 4391.
    Visiting()
    {
        maud.key(Qt::Key_N, Qt::ControlModifier);
        maud.type("T-03");
        maud.key(Qt::Key_Return);
    }
    ui::SmallMap& map() { return *maud.window.currentPlace()->findChild<ui::SmallMap*>(); }
    Visit visit() { return visitPage(maud.session(), newest()).value().visit; }
    Uid newest()
    {
        for (const VisitLine& line : maud.visits())
            if (line.state == RecordState::draft)
                return line.id;
        FAIL("no draft");
        return {};
    }
};

QListWidget& offers(QDialog& dialog)
{
    return *dialog.findChild<QListWidget*>(QStringLiteral("placeOffers"));
}

} // namespace

TEST_CASE("the map beside the visit shows its tree and goes with what is typed", "[gui][map][day]")
{
    Visiting here;
    REQUIRE(here.map().isVisible());
    REQUIRE(here.map().scene().tree);
    CHECK(here.map().scene().tree->name == QStringLiteral("T-03"));
    CHECK(here.map().scene().visits.size() == 1); // of the find that is in the store
    CHECK(here.map().canvas()->accessibleDescription().contains(QStringLiteral("Tree T-03")));
    here.maud.fill("position", "SO 5489 4393");
    here.maud.key(Qt::Key_Return);
    CHECK(here.map().scene().visits.size() == 2);
    const ui::MapCanvas& canvas = *here.map().canvas();
    CHECK(canvas.view().box().holds(*canvas.scene().plane->toPlane(here.map().scene().visits[1].at)));
}

TEST_CASE("F4 and T take the position of the tree", "[gui][map][day]")
{
    Visiting here;
    CHECK_FALSE(here.visit().position);
    here.maud.inDialog([](QDialog& dialog) {
        CHECK(dialog.objectName() == QStringLiteral("placeDialog"));
        QTest::keyClick(dialog.focusWidget(), Qt::Key_T);
        CHECK(offers(dialog).currentItem()->text().startsWith(QStringLiteral("the tree T-03")));
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
    });
    here.maud.key(Qt::Key_F4);
    REQUIRE(here.visit().position);
    CHECK(here.visit().position->typed == "SO 5487 4391");
    CHECK(here.visit().position->obtained == "tree");
    here.maud.window.activateWindow();
    CHECK(QTest::qWaitFor([&] { return here.maud.focusName() == QStringLiteral("position"); }));
    REQUIRE(undo(here.maud.session()));
    CHECK_FALSE(here.visit().position);
}

TEST_CASE("F4 and G take a point of a GPX file, the one of the tree first", "[gui][map][day]")
{
    Visiting here;
    const QString path = here.maud.window.file(QStringLiteral("points.gpx"));
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write("<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"invented\" xmlns=\"http://www.topografix.com/GPX/1/1\">"
               "<wpt lat=\"52.0950\" lon=\"-2.6700\"><name>gate</name></wpt>"
               "<wpt lat=\"52.0918\" lon=\"-2.6600\"><name>T-03</name></wpt></gpx>");
    file.close();
    here.maud.answers->files = {path};
    here.maud.inDialog([](QDialog& dialog) {
        QTest::keyClick(dialog.focusWidget(), Qt::Key_G);
        CHECK(offers(dialog).count() == 3);
        CHECK(offers(dialog).currentItem()->text().startsWith(QStringLiteral("point T-03")));
        CHECK(dialog.findChild<ui::SmallMap*>()->scene().points.size() == 2);
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
    });
    here.maud.key(Qt::Key_F4);
    REQUIRE(here.visit().position);
    CHECK(here.visit().position->latitude == 52.0918);
    CHECK(here.visit().position->obtained == "device");
}

TEST_CASE("Escape takes nothing; where nothing is known the dialog says what to do", "[gui][map][day]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.inDialog([](QDialog& dialog) {
        CHECK(offers(dialog).count() == 0);
        CHECK_FALSE(dialog.findChild<QAbstractButton*>(QStringLiteral("placeTake"))->isEnabled());
        QTest::keyClick(dialog.focusWidget(), Qt::Key_P);
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Return);
        CHECK(dialog.isVisible()); // there is nothing to take
        QTest::keyClick(dialog.focusWidget(), Qt::Key_Escape);
    });
    desk.key(Qt::Key_F4);
    CHECK_FALSE(desk.only().visit.position);
}
