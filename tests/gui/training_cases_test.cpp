// A recruit's session by keys alone, and the trainer's results of a course.

#include "tests/gui/at_desk.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSpinBox>
#include <QTableView>

#include "core/task/skill.h"
#include "tests/gui/practised.h"
#include "ui/training/case_stage.h"
#include "ui/training/cases_page.h"
#include "ui/training/confusion_table.h"
#include "ui/training/learning_pictures.h"
#include "ui/training/results_page.h"
#include "ui/training/results_table.h"
#include "ui/training/skill_dialog.h"
#include "ui/training/training_view.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::person;
using cupule::test::settle;
using Phase = ui::CasesDesk::Phase;

namespace {

constexpr int patience = 20000; // ms, for work on another thread; never waited for in full

/// A new store of a trainer's.
struct Trainer {
    test::ReadyAnswers* answers = new test::ReadyAnswers;
    test::WholeWindow window{test::look(), {}, std::unique_ptr<ui::Prompts>(answers)};
    ui::TrainingView* view = window.findChild<ui::TrainingView*>();
    ui::CasesDesk& desk = view->cases().desk();

    Trainer()
    {
        window.bench().setToday(*CivilDate::make(2026, 6, 20));
        settle(window, {1366, 768});
        window.activateWindow();
        REQUIRE(QTest::qWaitForWindowActive(&window));
        REQUIRE(window.openEmpty(person("PL", "Petra Lind"), {Role::trainer, Role::volunteer}));
        quiet();
        window.goToPlace(QStringLiteral("practice"));
    }
    Session& session() { return *window.bench().session(); }
    void quiet()
    {
        REQUIRE(QTest::qWaitFor([&] { return !window.bench().jobs().busy(); }, patience));
        QCoreApplication::processEvents();
    }
    void key(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ++presses;
        REQUIRE(QApplication::focusWidget() != nullptr);
        QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key), modifiers);
        QCoreApplication::processEvents();
    }
    /// Answers what is asked: right, or the option behind the right one.
    void answer(bool right)
    {
        const AskedItem& item = desk.item();
        std::size_t at = 0;
        if (item.kind != AskedKind::order)
            at = static_cast<std::size_t>(std::find(item.options.begin(), item.options.end(), item.right.front()) - item.options.begin());
        while (!right && std::find(item.right.begin(), item.right.end(), item.options[at]) != item.right.end() && item.options.size() > item.right.size())
            at = (at + 1) % item.options.size();   // of a sign that may be called by two names both are right
        key(Qt::Key_1 + static_cast<int>(at));
    }
    void wholeCase(bool right)
    {
        for (int guard = 0; guard < 200 && (desk.phase() == Phase::asking || desk.phase() == Phase::sureness); ++guard) {
            const int number = desk.number();
            if (desk.phase() == Phase::asking)
                answer(right);
            else
                key(Qt::Key_4);
            if (desk.phase() == Phase::done || desk.number() != number)
                return;
        }
    }
    void begin(int cases, bool feedbackAtEnd)
    {
        view->showPage(ui::TrainingView::Page::cases);
        window.findChild<QSpinBox*>(QStringLiteral("caseCount"))->setValue(cases);
        window.findChild<QComboBox*>(QStringLiteral("caseFeedback"))->setCurrentIndex(feedbackAtEnd ? 1 : 0);
        auto* button = window.findChild<QAbstractButton*>(QStringLiteral("beginCases"));
        button->setFocus();
        key(Qt::Key_Space);
        REQUIRE(desk.phase() == Phase::asking);
    }
    int presses = 0;
};

} // namespace

TEST_CASE("a session of forty cases goes by keys alone, with feedback after each", "[gui][practice]")
{
    Trainer petra;
    petra.begin(40, false);
    std::set<std::string> ids;
    int cases = 0;
    while (petra.desk.phase() != Phase::done && cases < 41) {
        ids.insert(petra.desk.drawn()->id());
        CHECK(petra.view->cases().stage().isVisible());
        petra.wholeCase(true);
        ++cases;
        REQUIRE(petra.desk.phase() == Phase::feedback);
        CHECK(petra.window.findChild<QLabel*>(QStringLiteral("caseFeedback"))->isVisible());
        petra.key(Qt::Key_Return);
    }
    CHECK(cases == 40);
    CHECK(ids.size() == 40); // no two alike
    CHECK(petra.desk.phase() == Phase::done);
    const auto lines = practiceLines(petra.session()).value();
    REQUIRE(lines.size() == 1);
    CHECK(lines.front().cases == 40);
    CHECK(lines.front().mine);
}

TEST_CASE("with feedback withheld one case follows the other, and the end says what was not so", "[gui][practice]")
{
    Trainer petra;
    petra.begin(3, true);
    for (int i = 0; i < 3; ++i) {
        CHECK(petra.desk.number() == i + 1);
        petra.wholeCase(false);
    }
    CHECK(petra.desk.phase() == Phase::done);
    CHECK(petra.desk.round().given.size() == 3);
    CHECK(std::none_of(petra.desk.round().given.front().items.begin(), petra.desk.round().given.front().items.end(),
                       [](const AnsweredItem& item) { return item.kind != AskedKind::order && item.right() && item.truth != saidNotJudged; }));
}

TEST_CASE("an answer is taken back before it is kept, and drawings are turned by keys", "[gui][practice]")
{
    Trainer petra;
    petra.begin(5, false);
    petra.key(Qt::Key_1);
    REQUIRE(petra.desk.phase() == Phase::sureness);
    petra.key(Qt::Key_Backspace);
    CHECK(petra.desk.phase() == Phase::asking);
    CHECK(petra.desk.answers().empty());
    if (petra.desk.drawn()->drawings.size() > 1) {
        petra.key(Qt::Key_Period);
        CHECK(petra.view->cases().stage().large() == 1);
        petra.key(Qt::Key_Comma);
        CHECK(petra.view->cases().stage().large() == 0);
    }
}

TEST_CASE("a session that is left is gone on with at the same case, also after the store was closed", "[gui][practice]")
{
    Trainer petra;
    petra.begin(5, false);
    petra.wholeCase(true);
    petra.key(Qt::Key_Return);
    const std::string second = petra.desk.drawn()->id();
    petra.key(Qt::Key_1);
    petra.window.bench().close();
    QCoreApplication::processEvents();
    REQUIRE(petra.window.openStore(petra.window.file(QStringLiteral("empty.cupule"))));
    petra.quiet();
    petra.window.goToPlace(QStringLiteral("practice"));
    petra.view->showPage(ui::TrainingView::Page::cases);
    auto* button = petra.window.findChild<QAbstractButton*>(QStringLiteral("goOn"));
    REQUIRE(button->isEnabled());
    button->setFocus();
    petra.key(Qt::Key_Space);
    REQUIRE(petra.desk.phase() == Phase::asking);
    CHECK(petra.desk.number() == 2);
    CHECK(petra.desk.drawn()->id() == second);
    CHECK(petra.desk.answers().empty()); // what was not answered to its end is asked again
}

TEST_CASE("results of a course stand recruit by recruit, with what was confused and what comes next", "[gui][practice]")
{
    Trainer petra;
    test::practiseCourse(petra.session(), "Spring course", 6);
    petra.view->showPage(ui::TrainingView::Page::results);
    petra.quiet();
    auto* table = petra.window.findChild<QTableView*>(QStringLiteral("resultsTable"));
    REQUIRE(table->model()->rowCount() == 13);
    CHECK(table->model()->index(0, 0).data().toString() == QStringLiteral("all 12"));
    CHECK(table->model()->index(1, 0).data().toString() == QStringLiteral("Adah"));
    auto* confusion = petra.window.findChild<ui::ConfusionTable*>();
    REQUIRE(confusion->model()->columnCount() > 1);
    CHECK(confusion->model()->headerData(confusion->model()->columnCount() - 1, Qt::Horizontal, Qt::DisplayRole).toString() ==
          QStringLiteral("could not be judged"));
    table->setFocus();
    petra.key(Qt::Key_Down);
    petra.quiet();
    CHECK(petra.view->results().desk().shown() == 0);
    CHECK(petra.view->results().desk().results() != nullptr);
    petra.view->results().desk().setNames(false);
    petra.quiet();
    for (int row = 1; row < table->model()->rowCount(); ++row)
        CHECK(table->model()->index(row, 0).data().toString() == QStringLiteral("recruit %1").arg(row));
}

TEST_CASE("the next step of the results begins cases about what was confused, and nothing else", "[gui][practice]")
{
    Trainer petra;
    test::practise(petra.session(), "Course", {"NO", "Nora", 8, 0.6, 4});
    petra.view->showPage(ui::TrainingView::Page::results);
    petra.quiet();
    const auto next = petra.view->results().desk().next();
    REQUIRE_FALSE(next.empty());
    auto* button = petra.window.findChild<QAbstractButton*>(QStringLiteral("makeCases"));
    button->setFocus();
    petra.key(Qt::Key_Space);
    REQUIRE(petra.desk.phase() == Phase::asking);
    const auto& topics = petra.desk.round().session.plan.topics;
    REQUIRE_FALSE(topics.empty());
    CHECK(topics.front().kind == askedName(topicsToPractise(std::span(next).first(1)).front().kind));
    for (const Topic& topic : petra.desk.round().topics)
        CHECK(std::any_of(topics.begin(), topics.end(), [&](const PracticeTopic& wanted) {
            return wanted.kind == askedName(topic.kind) && (wanted.subject.empty() || wanted.subject == topic.subject);
        }));
}

TEST_CASE("ready is said where the whole interval reaches what is asked, else not yet known", "[gui][practice]")
{
    Trainer petra;
    test::practise(petra.session(), "Course", {"JU", "Jude", 60, 1.0, 3});
    test::practise(petra.session(), "Course", {"NO", "Nora", 3, 1.0, 4});
    petra.view->showPage(ui::TrainingView::Page::results);
    petra.quiet();
    auto* table = petra.window.findChild<QTableView*>(QStringLiteral("resultsTable"));
    auto* model = dynamic_cast<ui::ResultsModel*>(table->model());
    REQUIRE(model->rowCount() == 3);
    for (int row = 1; row <= 2; ++row)
        for (const int column : {ui::ResultsModel::found, ui::ResultsModel::passed})
            if (const Share* share = model->share(row, column))
                CHECK((!model->isReady(row) || share->interval.lower >= model->limit(column)));
    CHECK(!model->isReady(2)); // all right, but few
    CHECK(model->index(2, ui::ResultsModel::next).data().toString().startsWith(QStringLiteral("Not yet known")));
}

TEST_CASE("consent is given and taken back by keys, and never by Enter alone", "[gui][practice]")
{
    Trainer petra;
    test::practise(petra.session(), "Course", {"JU", "Jude", 4, 0.9, 3});
    const Uid jude = recruit(petra.session(), "JU", {}).value();
    petra.view->showPage(ui::TrainingView::Page::results);
    petra.quiet();
    auto* button = petra.window.findChild<QAbstractButton*>(QStringLiteral("tellSkill"));
    CHECK_FALSE(button->isEnabled()); // of all together nothing is told
    petra.view->results().desk().show(0);
    petra.quiet();
    REQUIRE(button->isEnabled());
    ui::SkillDialog dialog(petra.window.bench(), petra.view->results().desk().shownPerson(), QStringLiteral("Jude"), &petra.window);
    dialog.show();
    dialog.activateWindow();
    REQUIRE(QTest::qWaitFor([&] { return dialog.isAncestorOf(QApplication::focusWidget()); }));
    auto* tell = dialog.findChild<QPushButton*>(QStringLiteral("skillTell"));
    auto* back = dialog.findChild<QPushButton*>(QStringLiteral("skillBack"));
    CHECK_FALSE(tell->isEnabled());
    CHECK_FALSE(back->isEnabled());
    QTest::keyClick(&dialog, Qt::Key_A, Qt::AltModifier);
    // a button pressed by its letter goes down first and is clicked a moment later
    REQUIRE(QTest::qWaitFor([&] { return tell->isEnabled(); }));
    CHECK(dialog.findChild<QCheckBox*>(QStringLiteral("skillAgreed"))->isChecked());
    CHECK_FALSE(tell->isDefault());
    CHECK_FALSE(toldSkill(petra.session(), jude).value());
    QTest::keyClick(&dialog, Qt::Key_T, Qt::AltModifier);
    REQUIRE(QTest::qWaitFor([&] { return back->isEnabled(); }));
    const auto told = toldSkill(petra.session(), jude).value();
    REQUIRE(told);
    CHECK(told->consentTo == petra.session().profile().person.code);
    CHECK(told->consented == petra.session().today());
    CHECK_FALSE(tell->isEnabled()); // agreed anew, told anew
    QTest::keyClick(&dialog, Qt::Key_B, Qt::AltModifier);
    REQUIRE(QTest::qWaitFor([&] { return !back->isEnabled(); }));
    CHECK_FALSE(toldSkill(petra.session(), jude).value());
    CHECK_FALSE(back->isEnabled());
}

TEST_CASE("the sheet is written of whom the page shows, with or without names", "[gui][practice]")
{
    Trainer petra;
    test::practise(petra.session(), "Course", {"JU", "Jude", 4, 0.5, 3});
    int recruit = -2;
    bool names = true;
    petra.view->results().setSheetWriter([&](const CohortResults&, int shown, const PracticeResults& results, const PracticeRules&, Session&, bool named, const QString&) -> Status {
        recruit = shown;
        names = named;
        CHECK(results.answers > 0);
        return {};
    });
    petra.view->showPage(ui::TrainingView::Page::results);
    petra.quiet();
    petra.answers->filesToWrite = {petra.window.file(QStringLiteral("a.pdf")), petra.window.file(QStringLiteral("b.pdf"))};
    petra.view->results().writeSheet();
    CHECK(recruit == -1);
    CHECK(names);
    petra.view->results().desk().setNames(false);
    petra.quiet();
    petra.view->results().desk().show(0);
    petra.quiet();
    petra.view->results().writeSheet();
    CHECK(recruit == 0);
    CHECK(!names);
}
