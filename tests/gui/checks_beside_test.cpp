// What stands beside a visit while it is typed: checks worst first, each a way to its field; what each missing part of the
// effort does to the worth; the trees that a label may mean, and what was seen at them before.

#include "tests/gui/at_desk.h"

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include <QAbstractItemView>
#include <QCompleter>
#include <QLabel>
#include <QLineEdit>

#include "core/task/review.h"
#include "ui/daysheet/day_view.h"
#include "ui/widgets/finding_list.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::person;

namespace {

ui::FindingList& checks(Desk& desk)
{
    auto* list = desk.window.findChild<ui::FindingList*>(QStringLiteral("findings"));
    REQUIRE(list != nullptr);
    return *list;
}

std::set<std::string> codes(Desk& desk)
{
    std::set<std::string> shown;
    for (const Finding& finding : checks(desk).findings().findings())
        shown.insert(finding.code);
    return shown;
}

/// The list is what the store's page says, worst first.
void checkOrder(Desk& desk)
{
    const auto& shown = checks(desk).findings().findings();
    CHECK(shown == desk.only().findings);
    for (std::size_t i = 1; i < shown.size(); ++i)
        CHECK(shown[i - 1].severity >= shown[i].severity);
}

/// From every line of the list to a field of the page.
void checkWays(Desk& desk)
{
    auto* page = desk.window.findChild<QWidget*>(QStringLiteral("visitPage"));
    for (int row = 0; row < checks(desk).model()->rowCount(); ++row) {
        checks(desk).setFocus(Qt::OtherFocusReason);
        checks(desk).setCurrentIndex(checks(desk).model()->index(row, 0));
        INFO(checks(desk).currentIndex().data(ui::FindingModel::codeRole).toString().toStdString());
        const bool hasField = !checks(desk).currentIndex().data(ui::FindingModel::fieldRole).toString().isEmpty();
        desk.key(Qt::Key_Return);
        CHECK(page->isAncestorOf(QApplication::focusWidget()) == hasField);
    }
}

QString effortWords(Desk& desk)
{
    return desk.window.findChild<QLabel*>(QStringLiteral("effortWords"))->text();
}

QStringList proposals(Desk& desk)
{
    const auto* label = desk.window.findChild<QLineEdit*>(QStringLiteral("treeLabel"));
    const QAbstractItemModel* model = label->completer()->completionModel();
    QStringList lines;
    for (int row = 0; row < model->rowCount(); ++row)
        lines << model->index(row, 0).data().toString();
    return lines;
}

} // namespace

TEST_CASE("what blocks handing in says so from the start, and goes as one types", "[gui][checks]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(codes(desk).count("tree.missing") == 1);
    CHECK(codes(desk).count("hygiene.open") == 1);
    CHECK(checks(desk).findings().findings().front().severity == Severity::stop);
    checkOrder(desk);
    checkWays(desk);
    desk.window.findChild<QWidget*>(QStringLiteral("treeLabel"))->setFocus();
    desk.type("T-01");
    CHECK(desk.window.findChild<QLineEdit*>(QStringLiteral("treeLabel"))->text() == QStringLiteral("T-01"));
    desk.key(Qt::Key_Return);
    CHECK(codes(desk).count("tree.missing") == 0);
    checkOrder(desk);
    desk.fill("clothes", "c");
    desk.fill("boots", "c");
    desk.fill("vehicle", "n");
    desk.fill("tools", "n");
    CHECK(codes(desk).count("hygiene.open") == 0);
    checkOrder(desk);
    checkWays(desk);
}

TEST_CASE("no check stands in the way of typing", "[gui][checks]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    desk.fill("minutes", "9999"); // nobody looks that long
    desk.key(Qt::Key_Tab);
    desk.type("3"); // the next field takes what is typed
    desk.key(Qt::Key_Tab);
    desk.type("180"); // more than a whole crown
    desk.key(Qt::Key_Tab);
    const Effort effort = desk.only().visit.effort;
    CHECK(effort.minutes == 9999);
    CHECK(effort.trees == 3);
    CHECK(effort.crownPercent == 180);
    CHECK(codes(desk).count("effort.hard") == 1);
    checkOrder(desk);
    checkWays(desk);
}

TEST_CASE("whatever field a rule names, the page goes there", "[gui][checks]")
{
    static const std::regex named(R"rx(Severity::\w+\s*,\s*"([a-zA-Z]+(/[a-zA-Z]+)?)")rx");
    std::set<std::string> fields{"observations/S02", "observations/S02/measure", "characters/K01", "tree/position"};
    for (const auto& entry : std::filesystem::directory_iterator("core/rules/checks")) {
        std::ostringstream source;
        source << std::ifstream(entry.path()).rdbuf();
        const std::string text = source.str();
        for (std::sregex_iterator at(text.begin(), text.end(), named), end; at != end; ++at)
            fields.insert((*at)[1]);
    }
    REQUIRE(fields.size() > 12);
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    auto* view = dynamic_cast<ui::DayView*>(desk.window.currentPlace());
    for (const std::string& field : fields) {
        INFO(field);
        checks(desk).setFocus(Qt::OtherFocusReason);
        view->goToField(QString::fromStdString(field));
        CHECK((view->isAncestorOf(QApplication::focusWidget()) && !checks(desk).hasFocus())); // photos have a page of their own
    }
}

TEST_CASE("each missing part of the effort says what it does to the worth, as one types", "[gui][checks]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    desk.type("SO 5487 4391");
    desk.key(Qt::Key_Return);
    CHECK(effortWords(desk).contains(QStringLiteral("is worth 0; the date allows")));
    CHECK(effortWords(desk).contains(QStringLiteral("It is 0 without minutes")));
    CHECK(effortWords(desk).contains(QStringLiteral("C at most while the tree is not settled")));
    desk.fill("minutes", "12");
    desk.key(Qt::Key_Tab);
    CHECK(effortWords(desk).contains(QStringLiteral("is worth C; the date allows")));
    CHECK(!effortWords(desk).contains(QStringLiteral("It is 0 without")));
    const QString before = effortWords(desk);
    CHECK(before.contains(QStringLiteral("number of trees looked at")));
    desk.type("1");
    desk.key(Qt::Key_Tab);
    CHECK(!effortWords(desk).contains(QStringLiteral("number of trees looked at")));
    CHECK(effortWords(desk).contains(QStringLiteral("One step less while any of these is missing: share of the crown")));
    const VisitPage page = desk.only();
    CHECK(effortWords(desk).contains(QLatin1String("worth ") + QLatin1Char(page.worth.ifNothing)));
}

TEST_CASE("a label finds trees by its letters, by nearness and by what was seen there; earlier visits and decisions stand beside it", "[gui][checks]")
{
    const FindStore store;
    {
        Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
        Decision back;
        back.visit = store.visit;
        back.revision = visitPage(ruth.session(), store.visit)->headRevision;
        back.outcome = Outcome::giveBack;
        for (const Reason& reason : ruth.session().pack().reasons)
            if (reason.giveBack && back.reasons.empty())
                back.reasons = {reason.id};
        back.remark = "Which leaf?";
        REQUIRE(decide(ruth.session(), back));
    }
    Desk kit(person("KT", "Kit Thorne"), {Role::volunteer}, store.path);
    kit.key(Qt::Key_N, Qt::ControlModifier);
    kit.type("T");
    CHECK(proposals(kit).size() == 2);
    CHECK(proposals(kit).value(0).startsWith(QStringLiteral("T-03")));
    CHECK(proposals(kit).value(0).contains(QStringLiteral("last looked at on 11 June")));
    CHECK(proposals(kit).value(1) == QStringLiteral("New tree “T”"));
    kit.key(Qt::Key_Escape);
    kit.fill("position", "SO 5489 4391");
    kit.key(Qt::Key_Return);
    auto* label = kit.window.findChild<QLineEdit*>(QStringLiteral("treeLabel"));
    label->setFocus();
    label->selectAll();
    kit.type("Old oak"); // another label, but a tree stands 20 m away
    CHECK(proposals(kit).value(0).startsWith(QStringLiteral("T-03")));
    CHECK(proposals(kit).value(0).contains(QStringLiteral("away")));
    kit.key(Qt::Key_Down);
    CHECK(label->text() == QStringLiteral("T-03"));
    kit.key(Qt::Key_Return);
    const auto lines = kit.visits();
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].treeLabel == "T-03");
    const auto* beside = kit.window.findChild<QLabel*>(QStringLiteral("treeBefore"));
    CHECK(beside->isVisible());
    CHECK(beside->text().contains(QStringLiteral("11 June")));
    CHECK(beside->text().contains(QStringLiteral("returned")));
    CHECK(beside->text().contains(QStringLiteral("Which leaf?")));
}
