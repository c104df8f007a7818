// Models under Qt's own model tester; sizes of what can be pressed; nothing cut at any text size.

#include "tests/support/catch.h"

#include <QAbstractItemModelTester>
#include <QApplication>

#include "core/protocol/pack_reader.h"
#include "tests/gui/gui_support.h"
#include "tests/gui/sample_widgets.h"
#include "ui/widgets/answer_strip.h"
#include "ui/widgets/checklist.h"
#include "ui/widgets/choice_card.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/place_rail.h"
#include "ui/widgets/season_ribbon.h"
#include "ui/widgets/worth_tile.h"

using namespace cupule;
using namespace cupule::ui;
using cupule::test::settle;

TEST_CASE("the checklist's model keeps its promises while it changes", "[gui][models]")
{
    ChecklistModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    std::vector<ChecklistRow> rows = test::sampleChecklist();
    model.setRows(rows);
    CHECK(model.rowCount() == static_cast<int>(rows.size()));
    CHECK(model.signs() > 5);
    rows[0].answer = Answer::open;
    model.setRows(rows); // same order: no reset, so the current row stays
    CHECK(model.row(model.index(0)).answer == Answer::open);
    CHECK(model.answered() == model.signs() - 1);
    std::swap(rows[0], rows[1]);
    model.setRows(rows);
    CHECK(model.row(model.index(1)).answer == Answer::open);
    model.setRows({});
    CHECK(model.rowCount() == 0);
    CHECK(!model.index(0).isValid());
}

TEST_CASE("the findings' model keeps its promises while it changes", "[gui][models]")
{
    FindingModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.setFindings(test::sampleFindings(), &builtInPack());
    CHECK(model.rowCount() == 4);
    CHECK(model.count(Severity::ask) == 2);
    CHECK(model.data(model.index(0), Qt::AccessibleTextRole)
              .toString()
              .startsWith(QStringLiteral("stop: Not confirmed clean")));
    CHECK(model.data(model.index(1), FindingModel::fieldRole).toString() == QStringLiteral("photos/2"));
    model.setFindings({}, nullptr);
    CHECK(model.counts() == QStringLiteral("nothing open"));
}

TEST_CASE("nothing that can be pressed is under 24 by 24, at any text size", "[gui][sizes]")
{
    for (const int percent : {90, 100, 150, 175}) {
        test::look().setTextPercent(percent);
        CAPTURE(percent);
        KeyButton button(QStringLiteral("Go"));
        CHECK(button.sizeHint().height() >= 24);
        CHECK(button.sizeHint().width() >= 24);
        const AnswerCells cells = answerCells({0, 0}, QApplication::font());
        for (const QRect& cell : cells.cells) {
            CHECK(cell.height() >= 24);
            CHECK(cell.width() >= 24);
        }
        WorthTile tile;
        CHECK(tile.sizeHint().height() >= 24);
        PlaceRail rail;
        rail.addPlace(QStringLiteral("day"), QStringLiteral("Day"), QStringLiteral("place-day"));
        CHECK(rail.findChild<QWidget*>(QStringLiteral("day"))->sizeHint().height() >= 24);
    }
    test::look().setTextPercent(100);
}

TEST_CASE("widgets ask for the room their words need, at any text size", "[gui][sizes]")
{
    for (const int percent : {90, 100, 125, 150, 175}) {
        test::look().setTextPercent(percent);
        CAPTURE(percent);
        const QFontMetrics metrics(QApplication::font());
        KeyButton button(QStringLiteral("Hand in the day…"));
        button.setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
        CHECK(button.minimumSizeHint().width() >
              metrics.horizontalAdvance(button.text()) +
                  keyCapWidth(QStringLiteral("Ctrl+Return"), button.font()));

        ChoiceCard card;
        card.setWords(QStringLiteral("Fine double teeth"), QStringLiteral("small teeth on larger ones"));
        const int narrow = card.minimumSizeHint().width();
        CHECK(card.heightForWidth(narrow) >= card.heightForWidth(3 * narrow));
        CHECK(narrow >= metrics.horizontalAdvance(QStringLiteral("double")));

        ChecklistModel model;
        model.setRows(test::sampleChecklist());
        ChecklistView list;
        list.setModel(&model);
        settle(list, {scaled(860, list.font()), list.wholeHeight()});
        const int wide = list.wholeHeight();
        settle(list, {scaled(440, list.font()), list.wholeHeight()}); // the answers wrap under the names
        CHECK(list.wholeHeight() > wide);

        SeasonRibbon ribbon;
        ribbon.setPack(&builtInPack());
        CHECK(ribbon.sizeHint().height() >= 3 * metrics.height());
        ribbon.setFolding(SeasonRibbon::Folding::always);
        CHECK(ribbon.sizeHint().height() >= 44);
        CHECK(ribbon.sizeHint().height() < 3 * metrics.lineSpacing() + 60);
    }
    test::look().setTextPercent(100);
}

TEST_CASE("changing theme or text size reaches widgets that are shown", "[gui][sizes]")
{
    KeyButton button(QStringLiteral("New visit"));
    settle(button, button.sizeHint());
    const int before = button.sizeHint().height();
    test::look().setTextPercent(175);
    settle(button, button.sizeHint());
    CHECK(button.sizeHint().height() > before);
    CHECK(!themeOf(button).dark);
    test::look().setMode(Look::Mode::dark);
    CHECK(themeOf(button).dark);
    test::look().setMode(Look::Mode::light);
    test::look().setTextPercent(100);
    settle(button, button.sizeHint());
    CHECK(button.sizeHint().height() == before);
}
