// The photos of a day by keys alone: what is proposed and why, taken and refused, the camera's clock, likely copies, dropped files.

#include "tests/gui/at_desk.h"
#include "tests/gui/every_screen.h"

#include <QDir>
#include <QDropEvent>
#include <QLabel>
#include <QListWidget>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTemporaryDir>

#include "core/task/photos.h"
#include "tests/gui/photo_scene.h"
#include "ui/bridge/text.h"
#include "ui/daysheet/photo_list.h"
#include "ui/daysheet/photos_page.h"
#include "ui/photos/figure_pane.h"
#include "ui/photos/measure_dialog.h"
#include "ui/widgets/clock_edit.h"

using namespace cupule;
using namespace cupule::ui;
using cupule::test::Desk;

namespace {

struct Page {
    QTemporaryDir folder;
    Desk desk;
    PhotosPage* page = nullptr;

    explicit Page(bool scene = true)
    {
        if (scene)
            test::makePhotoScene(desk.session(), folder.path());
        desk.window.bench().tellChanged();
        open();
    }
    void open()
    {
        auto* list = desk.window.findChild<QWidget*>(QStringLiteral("visitList"));
        REQUIRE(list != nullptr);
        list->setFocus(Qt::TabFocusReason);
        desk.key(Qt::Key_P);
        page = desk.window.findChild<PhotosPage*>();
        REQUIRE(page != nullptr);
        REQUIRE(page->isVisible());
        wait();
    }
    /// A dialog is closed; without a window system nobody gives the focus back.
    void backFromDialog()
    {
        desk.window.activateWindow();
        REQUIRE(QTest::qWaitForWindowActive(&desk.window));
        page->list()->setFocus(Qt::OtherFocusReason);
    }
    void wait() { REQUIRE(QTest::qWaitFor([this] { return !page->desk().isBusy(); }, 30000)); }
    /// The row of a photo, moved to with the arrow keys.
    const PhotoRow& at(const char* name)
    {
        page->list()->setFocus(Qt::TabFocusReason);
        desk.key(Qt::Key_Home);
        for (int i = 0; i < 20 && page->list()->current()->photo.originalName != name; ++i)
            desk.key(Qt::Key_Down);
        REQUIRE(page->list()->current()->photo.originalName == name);
        return *page->list()->current();
    }
    QString words(const char* name) const { return page->findChild<QLabel*>(QString::fromLatin1(name))->text(); }
    std::size_t inTray() { return trayPhotos(desk.session())->size(); }
    /// Label of the tree whose visit holds the photo; empty: the tray.
    std::string treeOf(const char* name)
    {
        for (const VisitLine& line : desk.visits())
            for (const PhotoNote& photo : visitPage(desk.session(), line.id)->photos)
                if (photo.originalName == name)
                    return line.treeLabel;
        return {};
    }
};

} // namespace

TEST_CASE("P shows the tray, what is proposed, and why", "[gui][photos]")
{
    Page p;
    CHECK(p.words("photosTitle") == QStringLiteral("Photos, Saturday 20 June 2026"));
    CHECK(p.page->desk().count(PhotoRow::Kind::proposed) == 4);
    CHECK(p.page->desk().count(PhotoRow::Kind::loose) == 1);
    CHECK(p.page->desk().count(PhotoRow::Kind::otherDay) == 2);
    // the median of 600 and 604 seconds; nothing was put anywhere
    CHECK(p.page->findChild<ClockEdit*>()->text() == QStringLiteral("+00:10:02"));
    CHECK(p.words("photosClockWords").contains(QStringLiteral("satellite times in 2 photos")));
    CHECK(p.inTray() == 7);
    // by place and its own clock: 9.12 less 10 min is 2 min after the visit
    p.at("IMG_0611.jpg");
    const QString why = p.words("photoDetails");
    CAPTURE(why);
    CHECK(why.contains(QStringLiteral("T-1, visited at")));
    CHECK(why.contains(QStringLiteral("2 min after")));
    CHECK(why.contains(QStringLiteral("11 m from its place")));
    CHECK(why.contains(QStringLiteral("photo’s position to ±")));
    p.at("IMG_0615.jpg");
    CHECK(p.words("photoDetails").contains(QStringLiteral("No visit of this day fits")));
}

TEST_CASE("Enter takes a proposal, Ctrl+Z brings it back, A takes all, R refuses for good", "[gui][photos]")
{
    Page p;
    p.at("IMG_0613.jpg");
    p.desk.key(Qt::Key_Return);
    CHECK(p.treeOf("IMG_0613.jpg") == "T-2");
    CHECK(p.inTray() == 6);
    CHECK(p.page->list()->hasFocus());
    p.desk.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(p.treeOf("IMG_0613.jpg").empty());
    p.at("IMG_0611.jpg");
    p.desk.key(Qt::Key_R);
    CHECK(p.page->desk().count(PhotoRow::Kind::proposed) == 3);
    p.page->list()->setFocus();
    p.desk.key(Qt::Key_A);
    CHECK(p.treeOf("IMG_0612.jpg") == "T-1");
    CHECK(p.treeOf("IMG_0614.jpg") == "T-2");
    CHECK(p.treeOf("IMG_0611.jpg").empty());   // refused, and not proposed again
    p.desk.key(Qt::Key_Z, Qt::ControlModifier);   // all of them are one step
    CHECK(p.treeOf("IMG_0612.jpg").empty());
    CHECK(p.treeOf("IMG_0614.jpg").empty());
    p.desk.key(Qt::Key_Escape);
    CHECK_FALSE(p.page->isVisible());
}

TEST_CASE("the camera's clock is changed by keys and the proposals follow at once", "[gui][photos]")
{
    Page p;
    p.page->list()->setFocus();
    p.desk.key(Qt::Key_K);
    CHECK(p.desk.focusName() == QStringLiteral("photosClock"));
    for (int i = 0; i < 20; ++i)
        p.desk.key(Qt::Key_Down);   // minutes: ten behind instead of ten ahead
    auto* clock = p.page->findChild<ClockEdit*>();
    CHECK(clock->text() == QStringLiteral("−00:09:58"));
    CHECK(*p.page->desk().secondsAhead() == -598);
    CHECK(p.page->desk().isSetByHand());
    CHECK(p.words("photosClockWords").contains(QStringLiteral("as you set it")));
    clock->selectAll();
    p.desk.type("-4:40:00");
    // 9.15 becomes 13.55: the afternoon's visit
    for (const PhotoRow& row : p.page->desk().rows())
        if (row.photo.originalName == "IMG_0612.jpg") {
            REQUIRE(row.matches.size() == 1);
            CHECK(text(p.page->desk().visit(row.matches[0].visit)->treeLabel) == QStringLiteral("T-2"));
        }
    p.desk.key(Qt::Key_Return);
    CHECK(p.page->list()->hasFocus());
    p.at("IMG_0616.jpg");
    p.desk.key(Qt::Key_G); // another day, perhaps another camera
    CHECK_FALSE(p.page->desk().isSetByHand());
    p.desk.window.findChild<QAction*>(QStringLiteral("day-later"))->trigger();
    CHECK(p.page->desk().isSetByHand());
    CHECK(*p.page->desk().secondsAhead() == -16800);
    p.page->findChild<QPushButton*>(QStringLiteral("photosAsEstimated"))->click();
    CHECK(*p.page->desk().secondsAhead() == 602);
}

TEST_CASE("a likely copy stands beside what it looks like; S puts it aside, D keeps both", "[gui][photos]")
{
    Page p;
    CHECK(p.page->desk().copies() == 1);
    REQUIRE(p.at("sent.jpg").copy);
    CHECK(p.page->list()->current()->copy->other.originalName == "IMG_0613.jpg");
    CHECK(p.words("photoDetails").contains(QStringLiteral("Of 64 comparisons")));
    p.desk.key(Qt::Key_S);
    CHECK(p.inTray() == 6);
    CHECK(p.page->desk().copies() == 0);
    p.desk.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(p.inTray() == 7);
    p.desk.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    REQUIRE(p.at("sent.jpg").kind == PhotoRow::Kind::aside);   // it is still shown, and comes back by a key of its own
    CHECK(p.words("photoDetails").contains(QStringLiteral("IMG_0613.jpg once more")));
    p.desk.key(Qt::Key_T);
    CHECK(p.inTray() == 7);
    p.desk.key(Qt::Key_Escape);
    p.open();   // looked for anew
    REQUIRE(p.at("sent.jpg").copy);
    p.desk.key(Qt::Key_D);
    CHECK(p.inTray() == 7);
    CHECK(p.page->desk().copies() == 0);
    p.desk.key(Qt::Key_Escape);
    p.open();
    CHECK(p.page->desk().copies() == 0);
}

TEST_CASE("a photo is put with the open visit, told what it shows, and taken back", "[gui][photos]")
{
    Page p;
    const std::string open = p.desk.window.findChild<PhotosPage*>() != nullptr ? p.desk.visits().front().treeLabel : "";
    p.at("IMG_0615.jpg");
    p.desk.key(Qt::Key_V);
    CHECK(p.treeOf("IMG_0615.jpg") == open);
    p.at("IMG_0615.jpg");
    p.desk.inDialog([](QDialog& dialog) {
        auto* list = dialog.findChild<QListWidget*>(QStringLiteral("evidenceList"));
        REQUIRE(list->count() == 3);   // the gall that was seen, the crown, a shoot
        QTest::keyClick(list, Qt::Key_Space);
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    p.desk.key(Qt::Key_W);
    p.backFromDialog();
    const auto photos = visitPage(p.desk.session(), p.desk.visits().front().id)->photos;
    REQUIRE(photos.size() == 1);
    CHECK(photos[0].evidenceFor == std::vector<std::string>{"S02"});
    p.at("IMG_0615.jpg");
    CHECK(p.words("photoDetails").contains(QStringLiteral("It shows")));
    p.desk.key(Qt::Key_T);
    CHECK(p.treeOf("IMG_0615.jpg").empty());
}

TEST_CASE("Space looks at the photos large, one after the other", "[gui][photos]")
{
    Page p;
    p.at("IMG_0612.jpg");
    p.desk.inDialog([](QDialog& dialog) {
        auto& viewer = dynamic_cast<MeasureDialog&>(dialog);
        REQUIRE(QTest::qWaitFor([&] { return viewer.isSettled(); }, 20000));
        CHECK(viewer.findChild<FigurePane*>()->isVisible());   // of the gall that was seen at the visit proposed
        const int first = viewer.photo();
        QTest::keyClick(viewer.focusWidget(), Qt::Key_Period);
        CHECK(viewer.photo() == first + 1);
        QTest::keyClick(viewer.focusWidget(), Qt::Key_Escape);
    });
    p.desk.key(Qt::Key_Space);
    p.backFromDialog();
    CHECK(p.page->isVisible());
}

TEST_CASE("a folder dropped on the window lands in the tray, twice adds nothing", "[gui][photos]")
{
    Page p(false);
    p.desk.key(Qt::Key_Escape);
    test::drawPhotos(p.folder.path());
    const auto drop = [&] {
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(p.folder.path())});
        QDragEnterEvent enter({40, 40}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&p.desk.window, &enter);
        QDropEvent event({40, 40}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(&p.desk.window, &event);
        CHECK(p.page->isVisible());
        p.wait();
    };
    drop();
    CHECK(p.inTray() == 7);
    REQUIRE(p.at("sent.jpg").copy);   // drawn pictures without a time may look like one another too
    CHECK(p.at("sent.jpg").copy->other.originalName == "IMG_0613.jpg");
    drop();
    CHECK(p.inTray() == 7);
    QStringList said;
    for (const QLabel* label : p.page->findChild<QWidget*>(QStringLiteral("photosStrip"))->findChildren<QLabel*>())
        said << label->text();
    CHECK(said.join(QLatin1Char(' ')).contains(QStringLiteral("7 here already, the same file")));
}

TEST_CASE("stopping keeps what was taken in before", "[gui][photos]")
{
    Page p(false);
    test::drawPhotos(p.folder.path());
    p.page->takeIn({p.folder.path()});
    p.desk.window.bench().jobs().cancel();
    p.wait();
    const std::size_t before = p.inTray();
    CHECK(before <= 7);
    p.page->takeIn({p.folder.path()});
    p.wait();
    CHECK(p.inTray() == 7);
}

TEST_CASE("the photos page clips no words and widens no window at the sizes that are promised", "[gui][photos][layout]")
{
    Page p;
    for (const auto& [size, percent] : {std::pair{QSize(1366, 700), 100}, std::pair{QSize(1366, 700), 175}, std::pair{QSize(1920, 1080), 175}}) {
        test::look().setTextPercent(percent);
        for (const char* photo : {"IMG_0611.jpg", "IMG_0615.jpg", "sent.jpg"}) { // proposed, of no visit, like another
            p.at(photo);
            test::settle(p.desk.window, size);
            test::settle(p.desk.window, size);
            INFO(photo << " at " << size.width() << "x" << size.height() << ", text " << percent);
            for (const std::string& fault : test::clipped(*p.page))
                FAIL_CHECK(fault);
            // what stands around the place, and what the page itself cannot do without
            const QSize around = p.desk.window.size() - p.desk.window.currentPlace()->size();
            const QSize needed = around + p.page->minimumSizeHint();
            if (needed.width() > size.width() || needed.height() > size.height() || p.desk.window.width() > size.width())
                FAIL_CHECK("the window is " << p.desk.window.width() << " wide and needs " << needed.width() << "x" << needed.height() << ", "
                                            << around.height() << " around the page, for " << test::widest(p.desk.window));
        }
    }
    test::look().setTextPercent(175);
    test::settle(p.desk.window, {1366, 700});
    test::drawPhotos(p.folder.path());
    p.page->takeIn({p.folder.path()});
    REQUIRE(p.page->desk().isBusy());
    test::settle(p.desk.window, {1366, 700});
    CHECK(p.desk.window.width() == 1366); // while work goes on, too
    p.wait();
    test::look().setTextPercent(100);
}

TEST_CASE("where text is typed, p is a letter", "[gui][photos]")
{
    Page p;
    p.desk.key(Qt::Key_Escape);
    auto* note = p.desk.window.findChild<QPlainTextEdit*>(QStringLiteral("note"));
    REQUIRE(note != nullptr);
    note->setFocus(Qt::TabFocusReason);
    p.desk.key(Qt::Key_P);
    CHECK_FALSE(p.page->isVisible());
    CHECK(note->toPlainText() == QStringLiteral("p"));
}

TEST_CASE("a clock's offset is read and written", "[gui][photos]")
{
    CHECK(offsetText(602) == QStringLiteral("+00:10:02"));
    CHECK(offsetText(-90000) == QStringLiteral("−25:00:00"));
    CHECK(readOffset(QStringLiteral("10")) == 600);
    CHECK(readOffset(QStringLiteral("1:05")) == 65);
    CHECK(readOffset(QStringLiteral(" -2:00:01 ")) == -7201);
    CHECK(readOffset(offsetText(-7201)) == -7201);
    for (const char* no : {"", "a", "1:60", "1:2:3:4", "1:-2", "99999:00:00", "1.5"})
        CHECK_FALSE(readOffset(QString::fromLatin1(no)));
}

TEST_CASE("a window that begins with large text is no wider than it may be, whatever the photos page does", "[gui][photos][layout]")
{
    test::look().setTextPercent(175);
    {
        Page p;
        CHECK(p.desk.window.width() == 1366);
        CHECK(p.desk.window.minimumSizeHint().width() <= 1366);
    }
    test::look().setTextPercent(100);
}
