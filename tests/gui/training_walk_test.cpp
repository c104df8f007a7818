// A trainer's walk, driven by keys: through the steps on the projector, arranged on the trainer's page, saved as a lesson and opened again.

#include "tests/gui/at_desk.h"

#include <QFile>
#include <QListView>
#include <QListWidget>
#include <QPlainTextEdit>

#include "ui/photos/thumbnails.h"
#include "ui/training/figure_shop.h"
#include "ui/training/training_view.h"
#include "ui/training/walk_page.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::look;
using cupule::test::settle;

namespace {

constexpr int patience = 20000; // ms, for work on another thread; never waited for in full

struct Trainer : Desk {
    ui::WalkPage& page;
    Trainer() : page(window.findChild<ui::TrainingView*>()->walk())
    {
        window.goToPlace(QStringLiteral("practice"));
        quiet();
    }
    void quiet()
    {
        REQUIRE(QTest::qWaitFor([&] { return !window.bench().jobs().busy(); }, patience));
        QCoreApplication::processEvents();
    }
    /// Until the figure of the slide is painted.
    void drawn()
    {
        REQUIRE(QTest::qWaitFor(
            [&] {
                (void)page.presenter()->grab();
                return page.desk().figures().isSettled() && page.desk().photos().isSettled();
            },
            patience));
        (void)page.presenter()->grab();
    }
    [[nodiscard]] std::string subject() const { return page.desk().steps()[static_cast<std::size_t>(page.desk().current())].lesson.subject; }
    void wall(int key)
    {
        QTest::keyClick(page.presenter(), static_cast<Qt::Key>(key));
        QCoreApplication::processEvents();
    }
    void present()
    {
        key(Qt::Key_F5);
        REQUIRE(page.presenter() != nullptr);
        REQUIRE(page.presenter()->isVisible());
        page.presenter()->resize(1920, 1080);
        drawn();
    }
};

} // namespace

TEST_CASE("a walk of June is shown from the host key to the cautions by keys alone", "[gui][practice]")
{
    Trainer petra;
    CHECK(petra.page.desk().place().month == 6);
    petra.present();
    std::vector<std::string> shown{petra.subject()};
    for (int presses = 0; presses < 400; ++presses) {
        const std::string before = petra.subject();
        const int page = petra.page.presenter()->page();
        petra.wall(Qt::Key_Space);
        if (petra.subject() != before)
            shown.push_back(petra.subject());
        else if (petra.page.presenter()->page() == page)
            break; // the last page of the last step
    }
    CHECK(static_cast<int>(shown.size()) == petra.page.desk().count());
    CHECK(shown.front()[0] == 'K');
    CHECK(std::find(shown.begin(), shown.end(), "S02") != shown.end());
    CHECK(std::is_partitioned(shown.begin(), shown.end(), [](const std::string& s) { return s[0] == 'K'; }));
    petra.wall(Qt::Key_Home);
    CHECK(petra.subject() == shown.front());
    petra.wall(Qt::Key_Escape);
    CHECK((petra.page.presenter() == nullptr || !petra.page.presenter()->isVisible()));
}

TEST_CASE("digits point to the parts of the figure, F shows it alone, W shows nothing", "[gui][practice]")
{
    Trainer petra;
    const auto& steps = petra.page.desk().steps();
    const auto midrib = std::find_if(steps.begin(), steps.end(), [](const ArrangedStep& s) { return s.lesson.subject == "S02"; });
    petra.page.desk().show(static_cast<int>(midrib - steps.begin()));
    petra.present();
    ui::PresenterWindow& wall = *petra.page.presenter();
    const QImage plain = wall.grab().toImage();
    petra.wall(Qt::Key_2);
    CHECK(wall.pointed() == 2);
    CHECK(wall.grab().toImage() != plain);
    petra.wall(Qt::Key_9); // there is no ninth part
    CHECK(wall.pointed() == 2);
    petra.wall(Qt::Key_0);
    CHECK(wall.pointed() == 0);
    CHECK(wall.grab().toImage() == plain);
    petra.wall(Qt::Key_F);
    CHECK(wall.isFigureAlone());
    petra.wall(Qt::Key_F);
    petra.wall(Qt::Key_W);
    CHECK(wall.grab().toImage().pixelColor(700, 500) == QColor(Qt::white));
    petra.wall(Qt::Key_Space); // goes on and shows again
    CHECK(!wall.isWhite());
}

TEST_CASE("notes stand on the trainer's page and never on the wall", "[gui][practice]")
{
    Trainer petra;
    petra.present();
    const QImage before = petra.page.presenter()->grab().toImage();
    QTest::keyClicks(petra.window.findChild<QPlainTextEdit*>(QStringLiteral("walkNotes")), QStringLiteral("Ask who has seen one."));
    CHECK(petra.page.desk().steps()[static_cast<std::size_t>(petra.page.desk().current())].lesson.notes == "Ask who has seen one.");
    CHECK(petra.page.presenter()->grab().toImage() == before);
}

TEST_CASE("a walk is arranged by keys, saved with its photos, and opened again as it was", "[gui][practice]")
{
    Trainer petra;
    auto* list = petra.window.findChild<QListView*>(QStringLiteral("walkSteps"));
    list->setFocus();
    const std::string first = petra.subject();
    petra.key(Qt::Key_S);
    CHECK(petra.page.desk().steps()[static_cast<std::size_t>(petra.page.desk().current())].lesson.skipped);
    petra.key(Qt::Key_Down, Qt::ControlModifier);
    CHECK(petra.page.desk().steps()[1].lesson.subject == first);
    CHECK(petra.subject() == first);
    const QString photo = petra.window.file(QStringLiteral("own gall.png"));
    QImage image(64, 48, QImage::Format_RGB32);
    image.fill(Qt::darkGreen);
    REQUIRE(image.save(photo));
    petra.answers->files = {photo};
    petra.button("addWalkPhotos").click();
    petra.quiet();
    auto* photos = petra.window.findChild<QListWidget*>(QStringLiteral("walkPhotos"));
    REQUIRE(photos->count() == 1);
    CHECK(photos->item(0)->text() == QStringLiteral("own gall"));
    const QString lesson = petra.window.file(QStringLiteral("spring course.lesson"));
    petra.answers->filesToWrite = {lesson};
    list->setFocus();
    petra.key(Qt::Key_S, Qt::ControlModifier);
    petra.quiet();
    CHECK(QFile::exists(lesson));
    petra.page.desk().setMonth(1); // something else
    CHECK(photos->count() == 0);
    petra.answers->files = {lesson};
    petra.page.openLesson();
    petra.quiet();
    CHECK(petra.page.desk().place().month == 6);
    CHECK(petra.page.desk().name() == QStringLiteral("spring course"));
    CHECK(petra.page.desk().steps()[1].lesson.subject == first);
    CHECK(petra.page.desk().steps()[1].lesson.skipped);
    petra.page.desk().show(1);
    CHECK(photos->count() == 1);
    REQUIRE(petra.page.desk().slide(1).photos.size() == 1);
    CHECK(QFile::exists(petra.page.desk().slide(1).photos[0].path));
}

TEST_CASE("a walk that was left is there again, without being saved", "[gui][practice]")
{
    Trainer petra;
    petra.fill("walkNotes", "Kept.");
    petra.page.leave();
    petra.window.bench().close();
    QCoreApplication::processEvents();
    REQUIRE(petra.window.openStore(petra.window.file(QStringLiteral("empty.cupule"))));
    petra.quiet();
    petra.window.goToPlace(QStringLiteral("practice"));
    CHECK(petra.window.findChild<QPlainTextEdit*>(QStringLiteral("walkNotes"))->toPlainText() == QStringLiteral("Kept."));
}
