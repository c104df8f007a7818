// The place Review by keys: narrowing the queue, versions that do not agree, a laboratory's report.

#include "tests/gui/all_words.h"
#include "tests/gui/review_scene.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidget>

#include "core/store/practice.h"
#include "ui/bridge/text.h"
#include "ui/map/small_map.h"
#include "ui/review/agreement_dialog.h"
#include "ui/review/evidence_view.h"
#include "ui/review/review_view.h"
#include "ui/review/review_words.h"

using namespace cupule;
using cupule::test::allWords;
using cupule::test::Desk;
using cupule::test::EveningStore;
using cupule::test::FindStore;
using cupule::test::moveApart;
using cupule::test::person;

namespace {

ui::ReviewDesk& deskOf(Desk& desk)
{
    auto* view = desk.window.findChild<ui::ReviewView*>();
    REQUIRE(view != nullptr);
    return view->desk();
}

} // namespace

TEST_CASE("words narrow the list as they are typed, and Ctrl+Shift+E shows all again", "[gui][review]")
{
    const EveningStore store(21);
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    REQUIRE(deskOf(ruth).count() == 21);
    ruth.key(Qt::Key_F, Qt::ControlModifier);
    CHECK(ruth.focusName() == QStringLiteral("queueWords"));
    ruth.type("kiln");
    ruth.key(Qt::Key_Return);
    CHECK(deskOf(ruth).count() == 3);   // every seventh
    CHECK(deskOf(ruth).waiting() == 21);
    CHECK(ruth.focusName() == QStringLiteral("queue"));
    CHECK(deskOf(ruth).page()->visit.visit.note == "by the old kiln");
    CHECK(ruth.window.findChild<QLabel*>(QStringLiteral("queueCount"))->text().contains(QStringLiteral("kiln")));
    ruth.key(Qt::Key_Return, Qt::ControlModifier);   // the next one is of these, too
    ruth.key(Qt::Key_1);
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(deskOf(ruth).count() == 2);
    REQUIRE(deskOf(ruth).page());
    CHECK(deskOf(ruth).page()->visit.visit.note == "by the old kiln");
    ruth.key(Qt::Key_E, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(deskOf(ruth).count() == 20);
    CHECK(deskOf(ruth).wanted().isPlain());
}

TEST_CASE("a choice of records is made in a dialog, kept under a name, and chosen again", "[gui][review]")
{
    const EveningStore store(12);
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    ruth.inDialog([](QDialog& dialog) {
        dialog.findChild<QLineEdit*>(QStringLiteral("narrowWords"))->setText(QStringLiteral("kiln"));
        dialog.findChild<QLineEdit*>(QStringLiteral("narrowSquare"))->setText(QStringLiteral("SO54"));
        dialog.findChild<QLineEdit*>(QStringLiteral("narrowName"))->setText(QStringLiteral("by the kiln"));
        dialog.findChild<QAbstractButton*>(QStringLiteral("narrowKeep"))->click();
        dialog.accept();
    });
    ruth.key(Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
    ruth.takeKeysBack();
    CHECK(deskOf(ruth).count() == 2);
    CHECK(deskOf(ruth).wanted().square == "SO54");
    deskOf(ruth).narrow({});
    ruth.inDialog([](QDialog& dialog) {
        auto* kept = dialog.findChild<QComboBox*>(QStringLiteral("narrowKept"));
        REQUIRE(kept->count() == 2);
        kept->setCurrentIndex(1);
        Q_EMIT kept->activated(1);
        dialog.accept();
    });
    ruth.key(Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
    ruth.takeKeysBack();
    CHECK(deskOf(ruth).wanted().words == "kiln");
    CHECK(deskOf(ruth).count() == 2);

    QueueWanted wrong;
    wrong.square = "nowhere";
    QString complaint;
    QObject::connect(&ruth.window.bench(), &ui::Workbench::failed, &ruth.window, [&](const Fault& fault) { complaint = ui::text(fault.code); });
    deskOf(ruth).narrow(wrong);
    CHECK(complaint == QStringLiteral("queue.square"));
    CHECK(deskOf(ruth).count() == 2);   // as it was
    wrong.square = "SO12";
    deskOf(ruth).narrow(wrong);
    CHECK(deskOf(ruth).count() == 0);
    CHECK_FALSE(deskOf(ruth).page().has_value());
}

TEST_CASE("two versions are settled field by field, by keys", "[gui][review]")
{
    const FindStore store;
    moveApart(store);
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    REQUIRE(deskOf(ruth).page());
    CHECK(deskOf(ruth).page()->conflictingFields == 2);   // the note and the size; minutes and crown are joined
    CHECK(ruth.button("versions").isVisible());
    QStringList cells;
    ruth.answers->lines = {QStringLiteral("on both sides")};
    ruth.inDialog([&](QDialog& dialog) {
        auto* table = dialog.findChild<QTableWidget*>(QStringLiteral("conflictTable"));
        REQUIRE(table->rowCount() == 2);
        auto& settle = *dialog.findChild<QAbstractButton*>(QStringLiteral("conflictSettle"));
        CHECK_FALSE(settle.isEnabled());
        for (int column = 0; column < table->columnCount(); ++column)
            cells << table->horizontalHeaderItem(column)->text() << table->item(0, column)->text() << table->item(1, column)->text();
        QTest::keyClick(table, Qt::Key_E);         // the note, written anew
        QTest::keyClick(table, Qt::Key_Down);
        QTest::keyClick(table, Qt::Key_E);         // made of parts: chosen only
        QTest::keyClick(table, Qt::Key_Left);
        QTest::keyClick(table, Qt::Key_Right);
        QTest::keyClick(table, Qt::Key_1);
        CHECK(settle.isEnabled());
        settle.click();
    });
    ruth.key(Qt::Key_K, Qt::ControlModifier);
    ruth.takeKeysBack();
    const QString all = cells.join(QLatin1Char('\n'));
    for (const char* words : {"MH Maud Harrow", "TW Tobias Wren", "north side", "south side", "14.5 mm", "15 mm", "seen", "device"})
        CHECK(all.contains(QString::fromLatin1(words)));
    const VisitPage page = visitPage(ruth.session(), store.visit).value();
    CHECK(page.visit.note == "on both sides");
    CHECK(page.visit.effort.minutes == 20);
    CHECK(page.visit.effort.crownPercent == 40);
    CHECK(page.state == RecordState::submitted);
    CHECK(deskOf(ruth).page()->conflictingFields == 0);
    CHECK_FALSE(ruth.button("versions").isVisible());
}

TEST_CASE("accepting on a laboratory's report is its own way, and asks for the number", "[gui][review]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    ruth.key(Qt::Key_4);
    CHECK(ruth.focusName() == QStringLiteral("reportNumber"));
    ruth.key(Qt::Key_Return, Qt::ControlModifier);   // without a number nothing is kept
    CHECK(reviewPage(ruth.session(), store.visit).value().decisions.empty());
    ruth.type("TL-118");
    ruth.key(Qt::Key_Tab);
    ruth.key(Qt::Key_2);
    CHECK(ruth.window.findChild<QLabel*>(QStringLiteral("observerReads"))->text().contains(QStringLiteral("laboratory report names the insect")));
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    const auto decisions = reviewPage(ruth.session(), store.visit).value().decisions;
    REQUIRE(decisions.size() == 1);
    CHECK(decisions[0].laboratory);
    CHECK(decisions[0].reportNumber == "TL-118");
}

TEST_CASE("the record at a glance says what it rests on", "[gui][review]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    const QString words = allWords(ruth.window);
    for (const char* said : {"Maud Harrow (MH)", "none is accepted yet", "Sample 26-TV", "This tree before", "MH before", "MH in practice", "not measured, or not told", "entered in this store"})
        CHECK(words.contains(QString::fromLatin1(said)));
    auto* map = ruth.window.findChild<ui::SmallMap*>(QStringLiteral("reviewMap"));
    REQUIRE(map->isVisible());
    CHECK(map->scene().tree->name == QStringLiteral("T-03"));
    auto* evidence = ruth.window.findChild<ui::EvidenceView*>();
    CHECK(evidence->figureShown() == QStringLiteral("gall_midrib"));
    evidence->setFocus();
    ruth.key(Qt::Key_F);
    CHECK(evidence->figureShown() == QStringLiteral("shoot_castanea"));
}

TEST_CASE("beside the record stands what its observer finds in practice, and in the hidden mode nothing of it", "[gui][review][practice]")
{
    const FindStore store;
    {
        SystemClock clock;
        SystemRandom random;
        const auto maud = loadProfile(store.folder.filePath(QStringLiteral("maud")).toStdString()).value();
        const auto session = Session::open(store.path.toStdString(), maud, clock, random).value();
        SkillNote note;
        note.id = session->ids().make();
        Skill skill;
        skill.id = note.id;
        skill.person = session->me();
        skill.to = *CivilDate::make(2026, 5, 3);
        skill.protocol = session->pack().id;
        skill.protocolVersion = "0.1";
        skill.signs = {{20, 17, 19, "S02", 20}};
        auto change = session->begin().value();
        REQUIRE(session->store().practice().addSkill(change, note, skill));
        REQUIRE(session->commit(change));
    }
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    const QString words = allWords(ruth.window);
    // Wilson 1927, JASA 22:209-212: 17 of 20 is 0.640 to 0.948, 19 of 20 is 0.764 to 0.991 (from the formula, by hand)
    CHECK(words.contains(QStringLiteral("finds 17 of 20 (64 to 95 %), says no rightly 19 of 20 (76 to 99 %); few answers. Read the range, not the number.")));
    CHECK(words.contains(QStringLiteral("Measured on drawings")));
    CHECK(words.contains(QStringLiteral("another version of the protocol")));
    CHECK(words.contains(QStringLiteral("it decides nothing")));
    ruth.key(Qt::Key_H, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK_FALSE(allWords(ruth.window).contains(QStringLiteral("in practice")));
}

TEST_CASE("the page on agreement says the number, its interval and what it rests on", "[gui][review]")
{
    VerifierAgreement agreement;
    CHECK(ui::agreementHtml(agreement).contains(QStringLiteral("No record has been decided by two verifiers")));
    agreement.records = 50;
    agreement.verifiers = 2;
    agreement.first = CivilDate::make(2026, 6, 11).value();
    agreement.last = CivilDate::make(2026, 6, 30).value();
    // a teaching example of 50 proposals, kappa 0.40 (from memory; reference/stats/04: interval 0.1511 to 0.6489)
    const AnswerTable table{{20, 0, 5}, {0, 0, 0}, {10, 0, 15}};
    agreement.pairs.push_back({"JS", "RA", table, agreementOfTwo(table).value()});
    const QString html = ui::agreementHtml(agreement);
    for (const char* said : {"50 records", "JS and RA (Cohen)", "kappa 0.4, between 0.15 and 0.65", "70 % of 50"})
        CHECK(html.contains(QString::fromLatin1(said)));
}
