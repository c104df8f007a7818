#include "tests/gui/every_screen.h"

#include <QFile>
#include <QImage>

#include "core/protocol/pack_reader.h"
#include "core/task/day.h"
#include "core/task/practice.h"
#include "core/task/programme.h"
#include "core/task/skill.h"
#include "tests/gui/arrived.h"
#include "tests/gui/batch_store.h"
#include "tests/gui/practised.h"
#include "tests/support/right_answers.h"
#include "ui/daysheet/evidence_dialog.h"
#include "ui/daysheet/hand_in_dialog.h"
#include "ui/daysheet/place_dialog.h"
#include "ui/daysheet/sample_dialog.h"
#include "ui/photos/measure_dialog.h"
#include "ui/review/agreement_dialog.h"
#include "ui/review/audit_dialog.h"
#include "ui/review/conflict_dialog.h"
#include "ui/review/narrow_dialog.h"
#include "ui/review/review_view.h"
#include "ui/samples/label_dialog.h"
#include "ui/samples/sample_dialogs.h"
#include "ui/shell/cautions_dialog.h"
#include "ui/shell/import_dialog.h"
#include "ui/shell/hand_out_dialog.h"
#include "ui/shell/leafing_dialog.h"
#include "ui/shell/programme_dialog.h"
#include "ui/shell/store_dialogs.h"
#include "ui/shell/take_in_dialog.h"
#include "ui/training/cases_page.h"
#include "ui/training/photo_cases_dialog.h"
#include "ui/training/skill_dialog.h"
#include "ui/training/training_view.h"
#include "ui/trees/tree_dialogs.h"
#include "ui/trees/trees_view.h"
#include "ui/widgets/checklist.h"

namespace cupule::test {

namespace {

constexpr int patience = 20000; // ms, for a job on another thread; never waited for in full

QStringList placesOf(const ui::MainWindow& window)
{
    QStringList ids;
    for (const QAction* action : window.findChildren<QAction*>())
        if (action->objectName().startsWith(QStringLiteral("go-")))
            ids << action->objectName().mid(3);
    return ids;
}

void quiet(ui::Workbench& bench)
{
    REQUIRE(QTest::qWaitFor([&] { return !bench.jobs().busy(); }, patience));
}

void emptyPlaces(const ScreenCheck& check)
{
    WholeWindow window(look());
    settle(window, {1366, 768});
    window.activateWindow();
    check("the window before a store is open", window);
    REQUIRE(window.openEmpty(person("MH", "Maud Harrow"), {Role::volunteer, Role::sampleHandler, Role::verifier, Role::office}));
    quiet(window.bench());
    for (const QString& place : placesOf(window)) {
        window.goToPlace(place);
        settle(window, {1366, 768});
        check("empty " + place.toStdString(), window);
    }
}

void draftVisit(const ScreenCheck& check)
{
    Desk maud;
    quiet(maud.window.bench());
    maud.key(Qt::Key_N, Qt::ControlModifier);
    settle(maud.window, {1366, 768});
    check("a visit just begun", maud.window);
    maud.fill("treeLabel", "T-03"); // a check may have moved the focus
    maud.key(Qt::Key_Return);
    auto* list = maud.window.findChild<ui::ChecklistView*>();
    list->goTo(QStringLiteral("S02"));
    maud.key(Qt::Key_1);
    settle(maud.window, {1366, 768});
    check("a visit with a gall seen", maud.window);
}

void filledPlaces(const ScreenCheck& check)
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier, Role::sampleHandler, Role::volunteer}, store.path);
    quiet(ruth.window.bench());
    Q_EMIT ruth.window.bench().goToAsked(QStringLiteral("day"), store.visit);
    for (const QString& place : placesOf(ruth.window)) {
        ruth.window.goToPlace(place);
        settle(ruth.window, {1366, 768});
        check("filled " + place.toStdString(), ruth.window);
    }
    ruth.window.goToPlace(QStringLiteral("review"));
    ruth.window.findChild<QWidget*>(QStringLiteral("queue"))->setFocus();
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    settle(ruth.window, {1366, 768});
    check("a decision begun", ruth.window);
    ruth.button("giveBack").setFocus();
    ruth.key(Qt::Key_2);
    settle(ruth.window, {1366, 768});
    check("a decision with its reasons", ruth.window);
}

/// Walk, Cases in all their states, and Results of a course.
void practicePages(const ScreenCheck& check)
{
    WholeWindow window(look());
    window.bench().setToday(*CivilDate::make(2026, 6, 13));
    settle(window, {1366, 768});
    window.activateWindow();
    REQUIRE(window.openEmpty(person("PL", "Petra Lind"), {Role::trainer, Role::volunteer}));
    window.goToPlace(QStringLiteral("practice"));
    quiet(window.bench());
    auto& view = *window.findChild<ui::TrainingView*>();
    const auto shown = [&](const char* name) {
        quiet(window.bench());
        settle(window, {1366, 768});
        check(name, window);
    };
    shown("a walk begun");
    view.showPage(ui::TrainingView::Page::cases);
    shown("the setup of a session");
    ui::CasesDesk& desk = view.cases().desk();
    PracticeWish wish;
    wish.cases = 2;
    wish.seed = 3;
    REQUIRE(desk.begin(wish, {}, {}));
    shown("a case");
    desk.give(desk.item().options.front());
    shown("a case, how sure");
    while (desk.phase() != ui::CasesDesk::Phase::feedback)
        desk.phase() == ui::CasesDesk::Phase::sureness ? desk.sure(80) : desk.give(desk.item().options.front());
    shown("a case with its key");
    desk.next();
    while (desk.phase() != ui::CasesDesk::Phase::done) {
        if (desk.phase() == ui::CasesDesk::Phase::feedback)
            desk.next();
        else
            desk.phase() == ui::CasesDesk::Phase::sureness ? desk.sure(80) : desk.give(desk.item().options.front());
    }
    shown("a session that is done");
    desk.stop();
    practiseCourse(*window.bench().session(), "Spring course", 2);
    view.showPage(ui::TrainingView::Page::results);
    shown("results of a course");
}

void reviewPlaces(const ScreenCheck& check)
{
    const FindStore store;
    moveApart(store);
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    quiet(ruth.window.bench());
    ruth.window.goToPlace(QStringLiteral("review"));
    settle(ruth.window, {1366, 768});
    check("a record with two versions", ruth.window);
    ruth.window.bench().setHidden(true);
    settle(ruth.window, {1366, 768});
    check("the hidden mode", ruth.window);
}

/// Shows a dialog without waiting for its end.
void shown(const ScreenCheck& check, const char* name, QDialog& dialog)
{
    dialog.show();
    settle(dialog, dialog.size());
    dialog.activateWindow();
    check(name, dialog);
}

/// A dialog that a function opens and waits for.
void whileAsked(const ScreenCheck& check, const char* name, const std::function<void()>& ask)
{
    bool seen = false;
    QTimer::singleShot(0, qApp, [&] {
        auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        REQUIRE(dialog != nullptr);
        settle(*dialog, dialog->size());
        check(name, *dialog);
        seen = true;
        dialog->reject();
    });
    ask();
    CHECK(seen);
}

QString badTable(WholeWindow& window)
{
    const QString path = window.file(QStringLiteral("visits.csv"));
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write("tree,site,date,time,observer,grid ref\n"
               "T-01,Tanner's Hanger,03/04/2026,09:10,MH,SO 5487 4391\n"
               "T-02,Tanner's Hanger,03/04/2026,09:30,MH,SO 5488 439\n");
    return path;
}

/// A small picture in a file.
QString invented(WholeWindow& window)
{
    const QString path = window.file(QStringLiteral("gall on an old leaf.png"));
    QImage image(120, 90, QImage::Format_RGB32);
    image.fill(Qt::darkGreen);
    REQUIRE(image.save(path));
    return path;
}

void dialogsOfTheStart(const ScreenCheck& check)
{
    WholeWindow window(look());
    settle(window, {1366, 768});
    whileAsked(check, "who works here", [&] { ui::askProfile(window.bench(), &window); });
    ui::NewStoreDialog fresh(&window);
    shown(check, "a new store", fresh);
    whileAsked(check, "what can be done here", [&] { window.showHelp(); });
    ui::Prompts asks;
    whileAsked(check, "a question", [&] {
        asks.confirm(&window, QStringLiteral("Close sample 26-TV-0001-X?"), QStringLiteral("Nothing is missing."), QStringLiteral("Close it"));
    });
    whileAsked(check, "a line asked for", [&] {
        asks.line(&window, QStringLiteral("Strike this visit out"), QStringLiteral("Why? It stays in the journal."), QString());
    });
}

void dialogsOfTheStore(const ScreenCheck& check)
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::office, Role::sampleHandler}, store.path);
    quiet(maud.window.bench());
    const Pack& pack = maud.session().pack();
    ui::CautionsDialog cautions(pack, &maud.window);
    shown(check, "cautions", cautions);
    const HandInPage page = handInPage(maud.session(), *CivilDate::make(2026, 6, 11), {}).value();
    ui::HandInDialog handing(page, pack, &maud.window);
    shown(check, "handing in", handing);
    ui::SampleDialog taking(pack, [](const Sample&, bool) { return Result<SampleOpening>(SampleOpening{}); }, &maud.window);
    shown(check, "taking a sample", taking);
    const SampleStatus status = samplePage(maud.session(), store.sample).value().status;
    ui::CloseWithBreakDialog closing(status.missing, pack, &maud.window);
    shown(check, "closing with a break", closing);
    ui::LeaveDialog leave({}, maud.session().today(), &maud.window);
    shown(check, "a leave", leave);
    ui::MeasureRequest request;
    request.sign = "S02";
    ui::MeasureDialog measuring({}, request, pack, &maud.window);
    shown(check, "measuring", measuring);
    ui::LabelDialog labels(QStringLiteral("4x2"), &maud.window);
    shown(check, "labels", labels);
    const OwnKey locked{std::string(64, '0'), "00000 00000 00000 00000 00000 00000", true, {}};
    ui::HandOutDialog handOut({GoingKind::day, GoingKind::decision, GoingKind::reference}, locked, &maud.window);
    shown(check, "a signed file to write", handOut);
    ui::LeafingDialog leafing(pack, "MAR", 2026, maud.session().today(), {}, &maud.window);
    shown(check, "the leafing of chestnut", leafing);
    ui::ProgrammeDialog programme(cupule::programme(maud.session()).value(), pack, true, &maud.window);
    shown(check, "what the programme sets", programme);
    PhotoNote photo;
    photo.id = store.visit; // any: its picture is not asked for
    photo.visit = store.visit;
    ui::EvidenceDialog evidence(maud.window.bench(), photo, pack, &maud.window);
    shown(check, "what a photo shows", evidence);
    ui::PlaceDialog places({}, {}, [] { return std::vector<PlaceOffer>{}; }, &maud.window);
    shown(check, "where a visit was", places);
    ui::Prompts asks;
    REQUIRE(maud.window.bench().session()->profile().is(Role::office));
    ui::PhotoCasesDialog photoCases(maud.window.bench(), asks, &maud.window);
    photoCases.addPhotos({invented(maud.window)});
    shown(check, "cases from photos", photoCases);
    ui::ImportDialog taken(maud.window.bench(), {badTable(maud.window)}, &maud.window);
    taken.setVisible(true);
    quiet(maud.window.bench());
    shown(check, "taking in a table", taken);
}

void dialogsOfReview(const ScreenCheck& check)
{
    const FindStore store;
    moveApart(store);
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    quiet(ruth.window.bench());
    ruth.window.goToPlace(QStringLiteral("review"));
    auto& desk = ruth.window.findChild<ui::ReviewView*>()->desk();
    ui::NarrowDialog narrowing(desk, &ruth.window);
    shown(check, "which records", narrowing);
    ui::ConflictList list(desk.conflicts(), &ruth.window);
    shown(check, "what has versions that do not agree", list);
    ui::ConflictDialog conflict(desk, ruth.window.prompts(), desk.conflict(store.visit).value(), &ruth.window);
    shown(check, "two versions, field by field", conflict);
    ui::AgreementDialog agreement({}, &ruth.window);
    shown(check, "how far verifiers agree", agreement);
}

void dialogsOfPractice(const ScreenCheck& check)
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer}, store.path);
    quiet(maud.window.bench());
    ui::SkillDialog unmeasured(maud.window.bench(), maud.session().me(), QStringLiteral("Maud Harrow"), &maud.window);
    shown(check, "what is told of whom nothing is measured", unmeasured);
    PracticeWish wish;
    wish.month = 6;
    wish.seed = 3;
    PracticeRound round = beginPractice(maud.session(), wish).value();
    const auto at = nextCase(maud.session(), round).value();
    REQUIRE(answerCase(maud.session(), round, at, rightAnswers(at.asked, 80), 20));
    REQUIRE(tellSkill(maud.session(), maud.session().me(), {}));
    ui::SkillDialog told(maud.window.bench(), maud.session().me(), QStringLiteral("Maud Harrow"), &maud.window);
    shown(check, "what is told of one's detection", told);
}

/// A signed file: of an unknown key, of a known one, and one that is refused.
void dialogsOfTakingIn(const ScreenCheck& check)
{
    Arrived arrived(true);
    Desk ruth(arrived.profile, arrived.path);
    quiet(ruth.window.bench());
    const auto looking = [&](const char* name) {
        ui::TakeInDialog dialog(ruth.window.bench(), arrived.file, &ruth.window);
        dialog.setVisible(true);
        quiet(ruth.window.bench());
        shown(check, name, dialog);
    };
    looking("a signed file of an unknown key");
    arrived.vouchFor(ruth.session());
    looking("a signed file tried out");
    arrived.damage();
    looking("a signed file that is refused");
    whileAsked(check, "your key, to be read out", [&] { ruth.window.showOwnKey(); });
}

void dialogsOfTheTrees(const ScreenCheck& check)
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::office}, store.path);
    const Position place = maud.session().projector().value()->read("SO 5488 4391", {}).value();
    const Uid near = newTree(maud.session(), "T-03b", {}, place).value().id;
    const Uid merged = newTree(maud.session(), "T-03c", {}, place).value().id;
    REQUIRE(newVisit(maud.session(), {}, near));
    maud.window.goToPlace(QStringLiteral("trees"));
    quiet(maud.window.bench());
    auto& desk = maud.window.findChild<ui::TreesView*>()->desk();
    desk.merge(near, merged);
    REQUIRE(newVisit(maud.session(), {}, near));
    desk.show(near);
    ui::FateDialog fate(desk, &maud.window);
    shown(check, "what became of a tree", fate);
    ui::MergeDialog merging(desk, &maud.window);
    shown(check, "two entries of one tree", merging);
    ui::SplitDialog splitting(desk, &maud.window);
    shown(check, "more than one tree", splitting);
}

void dialogsOfTheBatches(const ScreenCheck& check)
{
    BatchStore store(6);
    const Uid open = store.batch();
    {
        Desk jonah(store.profile("JK"), store.path);
        ui::AuditDialog looking(jonah.window.bench(), &jonah.window);
        looking.showRound(open);
        shown(check, "a blind round", looking);
        for (const auto& [key, modifiers] : {std::pair{Qt::Key_Return, Qt::ControlModifier}, std::pair{Qt::Key_3, Qt::NoModifier}})
            QTest::keyClick(looking.focusWidget(), key, modifiers);
        shown(check, "a blind answer with its reasons", looking);
    }
    store.answer(open);
    Desk ruth(store.profile("RA"), store.path);
    REQUIRE(finishAudit(ruth.session(), open));
    ui::AuditDialog batches(ruth.window.bench(), &ruth.window);
    shown(check, "what a batch came to", batches);
    batches.showMaking();
    quiet(ruth.window.bench());
    shown(check, "making a batch", batches);
}

} // namespace

void everyPlace(const ScreenCheck& check)
{
    emptyPlaces(check);
    draftVisit(check);
    filledPlaces(check);
    practicePages(check);
    reviewPlaces(check);
}

void everyDialog(const ScreenCheck& check)
{
    dialogsOfTheStart(check);
    dialogsOfTheStore(check);
    dialogsOfTheTrees(check);
    dialogsOfTheBatches(check);
    dialogsOfTakingIn(check);
    dialogsOfReview(check);
    dialogsOfPractice(check);
}

} // namespace cupule::test
