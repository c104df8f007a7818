// The notice of a find, asked for in Review by keys.

#include "tests/gui/at_desk.h"

#include "ui/bridge/text.h"
#include "ui/review/review_view.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::person;

TEST_CASE("Ctrl+Shift+A in Review writes the notice of the record at hand, and never says that anybody was told", "[gui][notice]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    auto* view = ruth.window.findChild<ui::ReviewView*>();
    REQUIRE(view != nullptr);
    std::vector<Uid> asked;
    QStringList written;
    bool refuse = false;
    view->setNoticeWriter([&](Session&, const Uid& visit, const QString& path) -> Status {
        asked.push_back(visit);
        written << path;
        return refuse ? Status(fail("notice.no-find", FaultKind::refused)) : Status();
    });

    ruth.key(Qt::Key_A, Qt::ControlModifier | Qt::ShiftModifier); // no file is named: nothing is written
    CHECK(asked.empty());
    ruth.answers->filesToWrite = {QStringLiteral("notice.pdf"), QStringLiteral("other.pdf")};
    QString said;
    QObject::connect(&ruth.window.bench(), &ui::Workbench::said, view, [&](const QString& words) { said = words; });
    ruth.key(Qt::Key_A, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(asked == std::vector<Uid>{store.visit});
    CHECK(written == QStringList{QStringLiteral("notice.pdf")});
    CHECK(said.contains(QStringLiteral("Nobody has been told by it")));
    CHECK_FALSE(reviewPage(ruth.session(), store.visit).value().told.has_value());

    refuse = true;
    QString complaint;
    QObject::connect(&ruth.window.bench(), &ui::Workbench::failed, view,
                     [&](const Fault& fault) { complaint = ui::text(fault.code); });
    ruth.key(Qt::Key_A, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(complaint == QStringLiteral("notice.no-find"));
}
