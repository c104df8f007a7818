// The widgets answer real key events as ui promises them.

#include "tests/support/catch.h"

#include <cmath>

#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>

#include "core/protocol/pack_reader.h"
#include "tests/gui/gui_support.h"
#include "tests/gui/sample_widgets.h"
#include "ui/bridge/text.h"
#include "ui/widgets/answer_strip.h"
#include "ui/widgets/chain_view.h"
#include "ui/widgets/checklist.h"
#include "ui/widgets/choice_card.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/place_rail.h"
#include "ui/widgets/position_edit.h"
#include "ui/widgets/season_ribbon.h"

using namespace cupule;
using namespace cupule::ui;
using cupule::test::settle;

namespace {

/// A list whose owner saves at once, as the day does.
struct SavedChecklist {
    ChecklistModel model;
    ChecklistView view;

    SavedChecklist()
    {
        model.setRows(test::sampleChecklist());
        view.setModel(&model);
        QObject::connect(&view, &ChecklistView::answered, &view, [this](const QString& sign, Answer answer) {
            ChecklistRow row = model.row(model.indexOf(sign));
            row.answer = answer;
            if (answer != Answer::seen)
                row.measure.reset();
            model.changeRow(row);
        });
        QObject::connect(&view, &ChecklistView::measured, &view, [this](const QString& sign, double value) {
            ChecklistRow row = model.row(model.indexOf(sign));
            row.measure = std::isnan(value) ? std::nullopt : std::optional(value);
            model.changeRow(row);
        });
        settle(view, {760, 700});
        view.activateWindow();
        view.setFocus();
    }
    ChecklistRow current() const { return model.row(view.currentIndex()); }
};

} // namespace

TEST_CASE("an answer strip answers by digit and takes the answer back", "[gui][keys]")
{
    AnswerStrip strip;
    settle(strip, strip.sizeHint());
    QSignalSpy spy(&strip, &AnswerStrip::answered);
    QTest::keyClick(&strip, Qt::Key_1);
    CHECK(strip.answer() == Answer::seen);
    QTest::keyClick(&strip, Qt::Key_2);
    CHECK(strip.answer() == Answer::notSeen);
    QTest::keyClick(&strip, Qt::Key_3);
    CHECK(strip.answer() == Answer::notJudged);
    QTest::keyClick(&strip, Qt::Key_Left);
    CHECK(strip.answer() == Answer::notSeen);
    QTest::keyClick(&strip, Qt::Key_0);
    CHECK(strip.answer() == Answer::open);
    CHECK(spy.count() == 5);
    CHECK(strip.accessibleDescription() == QStringLiteral("not answered"));
}

TEST_CASE("the checklist answers by digit and moves on", "[gui][keys]")
{
    SavedChecklist list;
    QTest::keyClick(&list.view, Qt::Key_Home);
    const QString first = list.current().sign;
    REQUIRE(!first.isEmpty());
    QTest::keyClick(&list.view, Qt::Key_2);
    CHECK(list.model.row(list.model.indexOf(first)).answer == Answer::notSeen);
    const QString second = list.current().sign;
    CHECK(second != first);
    QTest::keyClick(&list.view, Qt::Key_3);
    CHECK(list.model.row(list.model.indexOf(second)).answer == Answer::notJudged);
    QTest::keyClick(&list.view, Qt::Key_Up);
    CHECK(list.current().sign == second);
    QTest::keyClick(&list.view, Qt::Key_0);
    CHECK(list.current().answer == Answer::open);
    CHECK(list.current().sign == second);
}

TEST_CASE("a heading is stepped over and a fold opens by Enter", "[gui][keys]")
{
    SavedChecklist list;
    for (int row = 0; row < list.model.rowCount() + 2; ++row) {
        QTest::keyClick(&list.view, Qt::Key_Down);
        CHECK(list.current().kind != ChecklistRow::Kind::heading);
    }
    CHECK(list.current().kind == ChecklistRow::Kind::fold);
    QSignalSpy folded(&list.view, &ChecklistView::foldToggled);
    QTest::keyClick(&list.view, Qt::Key_Return);
    CHECK(folded.count() == 1);
}

TEST_CASE("a measurement opens only where the current sign was seen, and Enter takes it and moves on",
          "[gui][keys]")
{
    SavedChecklist list;
    auto* field = list.view.findChild<QLineEdit*>(QStringLiteral("measure"));
    REQUIRE(field);
    QTest::keyClick(&list.view, Qt::Key_Home);
    const QString sign = list.current().sign;
    REQUIRE(!list.current().measureName.isEmpty());
    QTest::keyClick(&list.view, Qt::Key_2);
    QTest::keyClick(&list.view, Qt::Key_Up);
    settle(list.view, list.view.size());
    CHECK(!field->isVisible());
    QTest::keyClick(&list.view, Qt::Key_1);
    settle(list.view, list.view.size());
    CHECK(list.current().sign == sign); // stays: it wants a number
    REQUIRE(field->isVisible());
    QTest::keyClick(&list.view, Qt::Key_Return);
    CHECK(field->hasFocus());
    QSignalSpy answered(&list.view, &ChecklistView::answered);
    QSignalSpy onPhoto(&list.view, &ChecklistView::photoMeasureAsked);
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("12,5"));
    QTest::keyClicks(field, QStringLiteral("m")); // a letter while typing is only a letter
    CHECK(onPhoto.count() == 0);
    QTest::keyClick(field, Qt::Key_Backspace);
    QTest::keyClick(field, Qt::Key_Return);
    CHECK(answered.count() == 0);
    CHECK(list.model.row(list.model.indexOf(sign)).measure == 12.5);
    CHECK(list.current().sign != sign);
}

TEST_CASE("a measurement that is no number is kept as typed and not taken", "[gui][keys]")
{
    SavedChecklist list;
    auto* field = list.view.findChild<QLineEdit*>(QStringLiteral("measure"));
    QTest::keyClick(&list.view, Qt::Key_Home);
    QTest::keyClick(&list.view, Qt::Key_1);
    settle(list.view, list.view.size());
    QSignalSpy measured(&list.view, &ChecklistView::measured);
    QTest::keyClick(&list.view, Qt::Key_Return);
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("big"));
    QTest::keyClick(field, Qt::Key_Return);
    CHECK(measured.count() == 0);
    CHECK(field->text() == QStringLiteral("big"));
    CHECK(field->property("bad").toBool());
    QTest::keyClick(field, Qt::Key_Escape);
    CHECK(list.view.hasFocus());
}

TEST_CASE("a read-only checklist takes no answer", "[gui][keys]")
{
    ChecklistModel model;
    std::vector<ChecklistRow> rows = test::sampleChecklist();
    for (ChecklistRow& row : rows)
        row.readOnly = true;
    model.setRows(rows);
    ChecklistView view;
    view.setModel(&model);
    settle(view, {760, 600});
    QSignalSpy spy(&view, &ChecklistView::answered);
    QTest::keyClick(&view, Qt::Key_Home);
    QTest::keyClick(&view, Qt::Key_1);
    QTest::keyClick(&view, Qt::Key_3);
    CHECK(spy.count() == 0);
}

TEST_CASE("drawn choices are chosen by digit, none is preselected", "[gui][keys]")
{
    ChoiceRow row;
    row.setChoices({{QStringLiteral("alternate"), QStringLiteral("shoot_castanea"),
                     QStringLiteral("alternate"), QStringLiteral("one at a time")},
                    {QStringLiteral("opposite"), QStringLiteral("shoot_aesculus"), QStringLiteral("opposite"),
                     QStringLiteral("in pairs")},
                    {QStringLiteral("not-judged"), QString(), QStringLiteral("can’t be judged"), QString()}},
                   ChoiceCard::Shape::beside);
    settle(row, {700, 120});
    CHECK(row.chosen().isEmpty());
    QSignalSpy spy(&row, &ChoiceRow::choice);
    QTest::keyClick(row.cards()[0], Qt::Key_2);
    CHECK(row.chosen() == QStringLiteral("opposite"));
    QTest::keyClick(row.cards()[0], Qt::Key_9);
    CHECK(row.chosen() == QStringLiteral("opposite"));
    row.activateWindow();
    row.cards()[1]->setFocus();
    QTest::keyClick(row.cards()[1], Qt::Key_Right);
    CHECK(row.cards()[2]->hasFocus());
    QTest::keyClick(row.cards()[2], Qt::Key_Return);
    CHECK(row.chosen() == QStringLiteral("not-judged"));
    CHECK(spy.count() == 2);
    QSignalSpy back(&row, &ChoiceRow::backAsked);
    QTest::keyClick(row.cards()[2], Qt::Key_Backspace);
    CHECK(back.count() == 1);
}

TEST_CASE("arrows walk the chain and Enter asks for the link's form", "[gui][keys]")
{
    ChainView chain;
    chain.setChain(test::sampleChain());
    settle(chain, chain.sizeHint());
    CHECK(chain.firstUnsettled() == 6);
    chain.setCurrent(chain.firstUnsettled());
    CHECK(chain.accessibleDescription().contains(QStringLiteral("time of receipt")));
    QSignalSpy asked(&chain, &ChainView::linkAsked);
    QTest::keyClick(&chain, Qt::Key_Return);
    CHECK(asked.at(0).at(0).toInt() == 6);
    QTest::keyClick(&chain, Qt::Key_Left);
    CHECK(chain.current() == 5);
    QTest::keyClick(&chain, Qt::Key_End);
    QTest::keyClick(&chain, Qt::Key_Right);
    CHECK(chain.current() == 8);
    QTest::mouseClick(&chain, Qt::LeftButton, {}, chain.linkRect(2).center());
    CHECK(chain.current() == 2);
}

TEST_CASE("a finding leads to its field by Enter, and F8's next goes round", "[gui][keys]")
{
    FindingList list;
    list.setFindings(test::sampleFindings(), &builtInPack());
    settle(list, {300, 500});
    CHECK(list.findings().counts() == QStringLiteral("1 stop, 2 questions"));
    QSignalSpy spy(&list, &FindingList::fieldAsked);
    list.next();
    CHECK(spy.takeFirst().at(0).toString() == QStringLiteral("hygiene"));
    QTest::keyClick(&list, Qt::Key_Down);
    QTest::keyClick(&list, Qt::Key_Return);
    CHECK(spy.takeFirst().at(0).toString() == QStringLiteral("photos/2"));
    for (int i = 0; i < 3; ++i)
        list.next();
    CHECK(spy.takeLast().at(0).toString() == QStringLiteral("hygiene"));
}

TEST_CASE("the rail moves by arrows over the places shown, and Enter goes there", "[gui][keys]")
{
    PlaceRail rail;
    for (const char* id : {"day", "trees", "samples", "review"})
        rail.addPlace(QString::fromLatin1(id), QString::fromLatin1(id),
                      QStringLiteral("place-") + QString::fromLatin1(id));
    rail.setCurrent(QStringLiteral("day"));
    rail.setShown(QStringLiteral("trees"), false);
    settle(rail, {140, 300});
    rail.activateWindow();
    auto* day = rail.findChild<QWidget*>(QStringLiteral("day"));
    day->setFocus();
    QSignalSpy spy(&rail, &PlaceRail::placeChosen);
    QTest::keyClick(day, Qt::Key_Down);
    auto* samples = rail.findChild<QWidget*>(QStringLiteral("samples"));
    REQUIRE(samples->hasFocus());
    CHECK(spy.count() == 0);
    QTest::keyClick(samples, Qt::Key_Return);
    CHECK(spy.at(0).at(0).toString() == QStringLiteral("samples"));
    CHECK(rail.current() == QStringLiteral("samples"));
}

TEST_CASE("the ribbon is walked day by day and month by month, and Home is today", "[gui][keys][ribbon]")
{
    SeasonRibbon ribbon;
    ribbon.setPack(&builtInPack());
    ribbon.setSeason(text(builtInPack().regions.front().id), 6);
    ribbon.setToday({2026, 6, 11});
    settle(ribbon, {1366, 76});
    QTest::keyClick(&ribbon, Qt::Key_Right);
    CHECK(ribbon.lookedAt() == QDate(2026, 6, 12));
    QTest::keyClick(&ribbon, Qt::Key_Left, Qt::ControlModifier);
    CHECK(ribbon.lookedAt() == QDate(2026, 5, 12));
    const QString may = ribbon.spoken();
    QTest::keyClick(&ribbon, Qt::Key_Home);
    CHECK(ribbon.lookedAt() == QDate(2026, 6, 11));
    CHECK(ribbon.spoken() != may);
    CHECK(ribbon.accessibleDescription() == ribbon.spoken());
    for (int i = 0; i < 9; ++i)
        QTest::keyClick(&ribbon, Qt::Key_Right, Qt::ControlModifier);
    CHECK(ribbon.lookedAt() == QDate(2026, 12, 31)); // the band ends there
    QTest::keyClick(&ribbon, Qt::Key_Escape);
    CHECK(ribbon.lookedAt() == QDate(2026, 6, 11));
    QSignalSpy asked(&ribbon, &SeasonRibbon::calendarAsked);
    QTest::keyClick(&ribbon, Qt::Key_Return);
    CHECK(asked.count() == 1);
}

TEST_CASE("the ribbon shows what the rules say, day by day", "[gui][ribbon]")
{
    const Pack& pack = builtInPack();
    SeasonRibbon ribbon;
    ribbon.setPack(&pack);
    const SeasonContext context{pack.regions.front().id, 6};
    ribbon.setSeason(text(context.region), context.shiftDays);
    ribbon.setToday({2026, 6, 11});
    REQUIRE(ribbon.rows().size() == 4);
    const CivilDate newYear = *CivilDate::make(2026, 1, 1);
    for (int day = 0; day < 365; day += 11) {
        const CivilDate date{newYear.days + day};
        CHECK(ribbon.worth()[std::size_t(day)] == worthOfDate(date, context, pack));
        bool expected = false;
        for (const Sign& sign : pack.signs)
            expected |=
                sign.ribbon == "green" && seasonOf(sign, date, context, pack).state == SeasonState::expected;
        CHECK((ribbon.rows()[0].days[std::size_t(day)] == SeasonState::expected) == expected);
    }
}

TEST_CASE("the ribbon folds where the window is low, and still says the date and the worth", "[gui][ribbon]")
{
    QWidget window;
    auto* column = new QVBoxLayout(&window);
    auto* ribbon = new SeasonRibbon;
    ribbon->setPack(&builtInPack());
    column->addWidget(ribbon);
    column->addStretch(1);
    settle(window, {1366, 768});
    CHECK(!ribbon->isFolded());
    const int open = ribbon->height();
    settle(window, {1366, 700});
    CHECK(ribbon->isFolded());
    CHECK(ribbon->height() < open);
    CHECK(ribbon->spoken().contains(QStringLiteral("11 June")));
    CHECK(ribbon->spoken().contains(QStringLiteral("evidence")));
}

TEST_CASE("a date is typed simply and moved by the arrows", "[gui][keys]")
{
    DateEdit edit;
    edit.setToday({2026, 6, 11});
    settle(edit, {220, 34});
    QSignalSpy spy(&edit, &DateEdit::dateChanged);
    QTest::keyClicks(&edit, QStringLiteral("9.6"));
    CHECK(edit.date() == QDate(2026, 6, 9));
    CHECK(spy.count() == 0); // nothing is taken while typing
    QTest::keyClick(&edit, Qt::Key_Return);
    CHECK(spy.count() == 1);
    CHECK(edit.text() == QStringLiteral("9 June 2026"));
    QTest::keyClick(&edit, Qt::Key_Up);
    CHECK(edit.date() == QDate(2026, 6, 10));
    edit.selectAll();
    QTest::keyClicks(&edit, QStringLiteral("31.2.2026"));
    QTest::keyClick(&edit, Qt::Key_Return);
    CHECK(!edit.isGood());
    CHECK(edit.text() == QStringLiteral("31.2.2026")); // kept as typed

    TimeEdit time;
    settle(time, {120, 34});
    QTest::keyClicks(&time, QStringLiteral("1120"));
    QTest::keyClick(&time, Qt::Key_Return);
    CHECK(time.text() == QStringLiteral("11.20"));
    QTest::keyClick(&time, Qt::Key_Down);
    CHECK(time.time() == QTime(11, 15));
}

TEST_CASE("a position says at once how it is understood and tells when it is left", "[gui][keys]")
{
    PositionEdit edit;
    edit.setReader([](const QString& typed) {
        PositionWords words;
        if (typed.size() < 6) {
            words.how = PositionWords::How::notUnderstood;
            words.problem = QStringLiteral("too short");
            return words;
        }
        words.how = PositionWords::How::understood;
        words.understood = typed.toUpper();
        words.uncertainty = QStringLiteral("± 7 m");
        return words;
    });
    settle(edit, {300, 90});
    edit.activateWindow();
    edit.field()->setFocus();
    QSignalSpy finished(&edit, &PositionEdit::finished);
    QTest::keyClicks(edit.field(), QStringLiteral("tq30"));
    CHECK(edit.words().how == PositionWords::How::notUnderstood);
    QTest::keyClicks(edit.field(), QStringLiteral("1234"));
    CHECK(edit.words().understood == QStringLiteral("TQ301234"));
    CHECK(edit.text() == QStringLiteral("tq301234")); // kept as typed
    QTest::keyClick(edit.field(), Qt::Key_Return);
    QTest::keyClick(edit.field(), Qt::Key_Return);
    CHECK(finished.count() == 1);
}

TEST_CASE("a message says everything and goes by Esc", "[gui][keys]")
{
    MessageStrip strip;
    Fault fault;
    fault.code = "store.full";
    fault.kind = FaultKind::io;
    fault.arguments = {{"can", "free-space"}};
    strip.showFault(fault, QStringLiteral("Try again"));
    settle(strip, {900, 80});
    CHECK(strip.what() == QStringLiteral("The disk is full."));
    CHECK(strip.accessibleDescription().contains(QStringLiteral("last saved change")));
    CHECK(strip.accessibleDescription().contains(QStringLiteral("Make room")));
    QSignalSpy pressed(&strip, &MessageStrip::buttonPressed);
    QTest::mouseClick(strip.findChildren<KeyButton*>().first(), Qt::LeftButton);
    CHECK(pressed.count() == 1);
    QTest::keyClick(&strip, Qt::Key_Escape);
    CHECK(strip.isHidden());
}
