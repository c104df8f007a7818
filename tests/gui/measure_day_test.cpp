// From the checklist to a photo and back: M, two lines, Enter; the visit holds the size, the photo the lines.

#include "tests/gui/at_desk.h"

#include <QImage>
#include <QTemporaryDir>

#include "core/task/import.h"
#include "core/task/photos.h"
#include "ui/daysheet/day_desk.h"
#include "ui/photos/measure_dialog.h"
#include "ui/photos/photo_canvas.h"
#include "ui/widgets/checklist.h"

using namespace cupule;
using cupule::test::Desk;

namespace {

/// A grey picture without any tags, taken in and given to the visit.
void giveVisitPhoto(Session& session, const Uid& visit)
{
    const QTemporaryDir folder;
    QImage grey(1600, 1200, QImage::Format_RGB32);
    grey.fill(Qt::gray);
    const QString path = folder.filePath(QStringLiteral("gall.png"));
    REQUIRE(grey.save(path));
    REQUIRE(importFiles(session, {path.toStdString()}, {}));
    auto tray = trayPhotos(session).value();
    REQUIRE(tray.size() == 1);
    tray[0].visit = visit;
    REQUIRE(changePhoto(session, tray[0], "test"));
}

/// Every end to the left or right by ten pixels of the screen, Tab between them, then Enter.
void measureByKeys(QDialog& dialog)
{
    auto& measuring = dynamic_cast<ui::MeasureDialog&>(dialog);
    REQUIRE(QTest::qWaitFor([&] { return measuring.isSettled(); }, 20000));
    const auto key = [&](Qt::Key which, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(measuring.focusWidget(), which, modifiers);
    };
    for (const Qt::Key which : {Qt::Key_L, Qt::Key_2, Qt::Key_0, Qt::Key_Return})
        key(which);
    for (int end = 0; end < 4; ++end) {
        key(end % 2 == 0 ? Qt::Key_Left : Qt::Key_Right, Qt::ShiftModifier);
        if (end < 3)
            key(Qt::Key_Tab);
    }
    key(Qt::Key_Return);
}

} // namespace

TEST_CASE("M measures a gall on a photo of the visit", "[gui][photos]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    const Uid visit = desk.visits().at(0).id;
    giveVisitPhoto(desk.session(), visit);
    ui::DayDesk day(desk.window.bench());
    day.show(visit);
    REQUIRE(day.page());
    day.answer(QStringLiteral("S02"), Answer::seen);
    REQUIRE(day.page()->photos.size() == 1);
    const PhotoNote photo = day.page()->photos[0];

    ui::MeasureRequest request;
    request.sign = "S02";
    ui::MeasureDialog dialog({{day.photoPath(photo.id), QStringLiteral("gall.png")}}, request, day.pack());
    test::settle(dialog, {1100, 700});
    measureByKeys(dialog);
    REQUIRE(dialog.taken());
    // both lines are equally long, so what was measured is as long as the scale
    CHECK(dialog.taken()->length.millimetres == Approx(20).epsilon(1e-6));
    day.takeMeasure(photo, dialog.taken()->note("S02"));

    const VisitPage page = visitPage(desk.session(), visit).value();
    REQUIRE(page.visit.observations.size() == 1);
    CHECK(*page.visit.observations[0].measure == Approx(20).epsilon(1e-6));
    CHECK(*page.visit.observations[0].measureError == Approx(dialog.taken()->length.uncertaintyMillimetres));
    REQUIRE(page.photos.at(0).measures.size() == 1);
    CHECK(page.photos[0].measures[0] == dialog.taken()->note("S02"));
    // size and lines are one step back, and one forward
    REQUIRE(undo(desk.session()));
    CHECK_FALSE(visitPage(desk.session(), visit)->visit.observations[0].measure);
    CHECK(visitPage(desk.session(), visit)->photos.at(0).measures.empty());
    REQUIRE(redo(desk.session()));
    CHECK(*visitPage(desk.session(), visit)->visit.observations[0].measure == Approx(20).epsilon(1e-6));
    CHECK(visitPage(desk.session(), visit)->photos.at(0).measures.size() == 1);
    day.refresh();
    // measured again: one pair of lines for each sign
    day.takeMeasure(day.page()->photos[0], dialog.taken()->note("S02"));
    CHECK(visitPage(desk.session(), visit)->photos.at(0).measures.size() == 1);
}

TEST_CASE("the way from the list to the photo and back is keys alone", "[gui][photos]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    const Uid visit = desk.visits().at(0).id;
    giveVisitPhoto(desk.session(), visit);
    desk.window.bench().tellChanged();
    auto* list = desk.window.findChild<ui::ChecklistView*>(QStringLiteral("checklist"));
    REQUIRE(list != nullptr);
    list->setFocus(Qt::TabFocusReason);
    list->setCurrentIndex(list->checklist()->indexOf(QStringLiteral("S02")));
    desk.key(Qt::Key_1);
    desk.inDialog(measureByKeys);
    desk.key(Qt::Key_M);
    const VisitPage page = desk.only();
    REQUIRE(page.visit.observations.size() == 1);
    CHECK(page.visit.observations[0].sign == "S02");
    CHECK(page.visit.observations[0].measure.value_or(0) == Approx(20).epsilon(1e-6));
    CHECK(page.visit.observations[0].measureError.value_or(0) > 0);
    CHECK(page.photos.at(0).measures.size() == 1);
}
