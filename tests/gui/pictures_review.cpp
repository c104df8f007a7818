// The place Review with each of the first records of the store, its dialogs, and the hidden mode.

#include <QVBoxLayout>

#include "tests/gui/picture_book.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/dates.h"
#include "ui/review/agreement_dialog.h"
#include "ui/review/conflict_dialog.h"
#include "ui/review/narrow_dialog.h"
#include "ui/review/review_view.h"

namespace cupule::test {

namespace {

std::unique_ptr<WholeWindow> review(int row)
{
    auto window = std::make_unique<WholeWindow>(pictureLook(), pictureStore().profile);
    if (pictureStore().today.isValid())
        window->bench().setToday(ui::fromDate(pictureStore().today));
    window->openStore(pictureStore().store);
    window->goToPlace(QStringLiteral("review"));
    window->findChild<ui::ReviewView*>()->desk().showRow(row);
    return window;
}

ConflictPage twoVersions()
{
    ConflictPage page;
    page.line = {"visit", {}, "T-03", CivilDate::make(2026, 6, 11).value(), 4};
    const std::int64_t evening = 1781295240000; // 12 June 2026, 20.14 UTC
    page.versions = {{{}, "TW", "Tobias Wren", {evening, 0}, "", {}, false}, {{}, "IC", "Ines Calloway", {evening - 1'320'000, 0}, "before-parent", {}, true}};
    page.common = ConflictVersion{{}, "MH", "Maud Harrow", {evening - 90'000'000, 0}, "", {}, false};
    page.fields = {{"note", "\"two big galls low down\"",
                    {"\"two big galls low on the north side, dog walkers about\"", "\"two big galls low on the south side, gate was open\""}},
                   {"effort/minutes", "12", {"15", "20"}},
                   {"observations/S02", "", {R"({"answer":"seen","measure":14.2,"sign":"S02"})", R"({"answer":"seen","measure":15,"sign":"S02"})"}},
                   {"position", "", {R"({"latitude":52.1,"longitude":-2.6,"typed":"SO 5487 4391","uncertaintyMetres":7.07})",
                                     R"({"latitude":52.1,"longitude":-2.6,"typed":"SO 54876 43912","uncertaintyMetres":5})"}}};
    page.agreeing = 31;
    return page;
}

/// The dialog, with the window whose desk it asks.
struct Versions : QWidget {
    std::unique_ptr<WholeWindow> window = std::make_unique<WholeWindow>(pictureLook());
    ui::ConflictDialog* dialog = nullptr;
    QSize sizeHint() const override { return dialog->size(); }
};

std::unique_ptr<QWidget> versions()
{
    auto all = std::make_unique<Versions>();
    Person ruth;
    ruth.code = "RA";
    ruth.name = "Ruth Abara";
    (void)all->window->openEmpty(ruth, {Role::verifier});
    all->dialog = new ui::ConflictDialog(all->window->findChild<ui::ReviewView*>()->desk(), all->window->prompts(), twoVersions(), all.get());
    all->dialog->setWindowFlags(Qt::Widget);
    auto* column = new QVBoxLayout(all.get());
    column->addWidget(all->dialog);
    return all;
}

VerifierAgreement agreementShown()
{
    VerifierAgreement agreement;
    agreement.records = 50;
    agreement.verifiers = 2;
    agreement.first = CivilDate::make(2026, 6, 11).value();
    agreement.last = CivilDate::make(2026, 9, 30).value();
    const AnswerTable table{{20, 1, 4}, {1, 2, 0}, {6, 1, 15}};
    agreement.pairs.push_back({"JS", "RA", table, agreementOfTwo(table).value()});
    return agreement;
}

bool addAll()
{
    for (int i = 0; i < 4; ++i)
        addPicture({QStringLiteral("review-%1").arg(i + 1), [i] { return review(i); }, true, 1366, true});
    addPicture({QStringLiteral("review-hidden"),
                [] {
                    auto window = review(0);
                    window->bench().setHidden(true);
                    return window;
                },
                true, 1366, true});
    addPicture({QStringLiteral("review-accepted"),
                [] {
                    auto window = review(0);
                    QueueWanted wanted;
                    wanted.which = "accepted";
                    window->findChild<ui::ReviewView*>()->desk().narrow(wanted);
                    return window;
                },
                true, 1366, true});
    addPicture({QStringLiteral("dialog-versions"), &versions, false, 980});
    addPicture({QStringLiteral("dialog-agreement"), [] { return std::make_unique<ui::AgreementDialog>(agreementShown()); }, false, 680});
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test
