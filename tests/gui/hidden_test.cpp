// The hidden mode, walked through: planted secrets are nowhere to be read while it is on, and all are back afterwards.

#include "tests/gui/all_words.h"
#include "tests/gui/at_desk.h"
#include "tests/gui/practised.h"

#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/task/surroundings.h"
#include "ui/review/review_view.h"
#include "ui/training/training_view.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;

namespace {

constexpr int patience = 20000; // ms; never waited for in full

/// Somebody of the region at a store with a find, a photo in the tray, and a recruit who has practised.
struct Walk {
    FindStore store;
    Desk ruth{test::person("RA", "Ruth Abara"), {Role::verifier, Role::sampleHandler, Role::volunteer, Role::trainer}, store.path};

    Walk()
    {
        quiet();
        Session& session = ruth.session();
        PhotoNote photo;
        photo.id = session.ids().make();
        photo.sha256 = session.store().media().keep("no picture").value();
        photo.originalName = "gate of the Pennards.jpg";
        photo.takenDate = session.today();
        auto change = session.begin().value();
        REQUIRE(session.store().photos().save(change, photo));
        REQUIRE(session.commit(change));
        test::practise(session, "Spring course", {"LP", "Lorcan Pike", 2, 0.9, 5});
        ruth.window.bench().tellChanged();
        quiet();
    }
    void quiet()
    {
        REQUIRE(QTest::qWaitFor([&] { return !ruth.window.bench().jobs().busy(); }, patience));
        QCoreApplication::processEvents();
    }
    /// Where each secret can be read: "day:5487".
    QStringList found()
    {
        QStringList found;
        const auto look = [&](const char* where) {
            quiet();
            const QString words = test::allWords(ruth.window);
            for (const char* secret : {"5487", "4391", "Maud Harrow", "Pennards", "Lorcan Pike"})
                if (words.contains(QString::fromLatin1(secret)))
                    found << QString::fromLatin1(where) + QLatin1Char(':') + QString::fromLatin1(secret);
        };
        const auto go = [&](const char* place, const Uid& noun) {
            ruth.window.goToPlace(QString::fromLatin1(place));
            if (!noun.isNull())
                Q_EMIT ruth.window.bench().goToAsked(QString::fromLatin1(place), noun);
        };
        go("day", store.visit);
        look("day");
        for (QAction* command : ruth.window.currentPlace()->commands())
            if (command->objectName() == QStringLiteral("day-photos"))
                command->trigger();
        look("tray");
        go("trees", visitPage(ruth.session(), store.visit).value().tree->id);
        look("trees");
        go("samples", store.sample);
        look("samples");
        go("review", store.visit);
        look("review");
        go("practice", {});
        auto* practice = ruth.window.findChild<ui::TrainingView*>();
        using Page = ui::TrainingView::Page;
        for (const auto& [page, name] : {std::pair{Page::walk, "walk"}, std::pair{Page::cases, "cases"}, std::pair{Page::results, "results"}}) {
            practice->showPage(page);
            look(name);
        }
        return found;
    }
};

} // namespace

TEST_CASE("in the hidden mode no place says where a tree is, who saw it or who practised, nor how a file is called", "[gui][hidden]")
{
    Walk walk;
    auto* sign = walk.ruth.window.findChild<QLabel*>(QStringLiteral("hiddenMode"));
    CHECK_FALSE(sign->isVisible());
    const QStringList open = walk.found();
    for (const char* where : {"day:5487", "tray:Pennards", "trees:5487", "review:Maud Harrow", "results:Lorcan Pike"})
        CHECK(open.contains(QString::fromLatin1(where)));
    walk.ruth.window.goToPlace(QStringLiteral("review"));
    walk.ruth.key(Qt::Key_H, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(sign->isVisible());
    CHECK(walk.found().join(QLatin1Char(' ')) == QString());
    walk.ruth.window.goToPlace(QStringLiteral("review"));
    CHECK(walk.ruth.window.findChild<ui::ReviewView*>()->desk().page()->at->typed == "SO54");
    walk.ruth.key(Qt::Key_H, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK_FALSE(sign->isVisible());
    CHECK(walk.found() == open);
}
