// The place Trees: a register of 10^5 trees fetched in windows, and a tree's page by keys alone.

#include "tests/gui/at_desk.h"

#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QLineEdit>
#include <QScrollBar>
#include <QTableView>

#include "core/store/bulk_import.h"
#include "core/store/places.h"
#include "core/task/trees_merge.h"
#include "ui/trees/story_list.h"
#include "ui/trees/tree_model.h"
#include "ui/trees/tree_page.h"
#include "ui/trees/trees_view.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::person;
using cupule::test::settle;

namespace {

constexpr int manyTrees = 100'000;

/// Invented trees W0 ... without sites, a thousand of them felled.
void fillStore(Session& session)
{
    auto change = session.begin().value();
    {
        BulkImport bulk = BulkImport::begin(change, manyTrees).value();
        for (int i = 0; i < manyTrees; ++i) {
            Tree tree;
            tree.id = session.ids().make();
            tree.label = "W" + std::to_string(i);
            if (i % 100 == 7) {
                tree.fate = "felled";
                tree.fateDate = CivilDate::make(2026, 5, 3);
            }
            REQUIRE(bulk.addTree(tree));
        }
        REQUIRE(bulk.finish());
    }
    REQUIRE(session.commit(change));
}

/// Counts what the list asks of the store.
class CountingDesk : public ui::TreesDesk {
public:
    using TreesDesk::TreesDesk;
    [[nodiscard]] std::vector<TreeLine> rows(int from, int count) override
    {
        auto lines = TreesDesk::rows(from, count);
        ++asked;
        fetched += static_cast<int>(lines.size());
        return lines;
    }
    int asked = 0, fetched = 0;
    void forget() { asked = fetched = 0; }
};

struct Register {
    CountingDesk desk;
    ui::TreeModel model{desk};
    QTableView table;

    explicit Register(ui::Workbench& bench) : desk(bench)
    {
        table.setModel(&model);
        table.horizontalHeader()->setResizeContentsPrecision(0);
        settle(table, {700, 600});
        desk.refresh();
        paint();
    }
    void paint()
    {
        QCoreApplication::processEvents();
        table.grab(); // what is painted is asked for
    }
    QString shown(int row) { return model.index(row, ui::TreeModel::label).data().toString(); }
};

ui::StoryList& story(Desk& desk, const char* name)
{
    auto* list = desk.window.findChild<ui::StoryList*>(QString::fromLatin1(name));
    REQUIRE(list != nullptr);
    return *list;
}

QString label(Desk& desk, const char* name)
{
    auto* found = desk.window.findChild<QLabel*>(QString::fromLatin1(name));
    REQUIRE(found != nullptr);
    return found->isVisible() ? found->text() : QString();
}

/// No window manager gives a dialog the keys here.
void takeFocus(QDialog& dialog)
{
    dialog.activateWindow();
    REQUIRE(QTest::qWaitFor([&] { return dialog.isAncestorOf(QApplication::focusWidget()); }));
}

/// Nor gives it them back to the window.
void goBack(Desk& desk, const char* widget)
{
    desk.window.activateWindow();
    REQUIRE(QTest::qWaitForWindowActive(&desk.window));
    auto* found = desk.window.findChild<QWidget*>(QString::fromLatin1(widget));
    REQUIRE(found != nullptr);
    found->setFocus(Qt::TabFocusReason);
    REQUIRE(QTest::qWaitFor([&] { return QApplication::focusWidget() == found; }));
}

/// A visit with nothing but a note, of whoever works.
Uid looseVisit(Session& session, const char* tree, const char* reference)
{
    const Position position = session.projector().value()->read(reference, {}).value();
    const Tree made = newTree(session, tree, {}, position).value();
    const Visit visit = newVisit(session, {}, made.id).value();
    REQUIRE(leaveVisit(session, visit.id));
    return made.id;
}

} // namespace

TEST_CASE("a register of 100000 trees fetches only the rows in sight", "[gui][trees]")
{
    Desk maud;
    fillStore(maud.session());
    Register list(maud.window.bench());
    constexpr int window = ui::TreeModel::windowRows;
    REQUIRE(list.model.rowCount() == manyTrees);
    CHECK(list.shown(0) == QStringLiteral("W0"));
    CHECK(list.desk.fetched <= window + 1); // and the first row for the page

    list.desk.forget(); // the end
    list.table.scrollToBottom();
    list.paint();
    CHECK(list.shown(manyTrees - 1) == QStringLiteral("W99999"));
    CHECK(list.desk.fetched > 0);
    CHECK(list.desk.fetched <= 2 * window);

    list.desk.forget(); // page by page through the first ten thousand, and back over what is kept
    for (int row = 0; row < 10'000; row += 20) {
        list.table.scrollTo(list.model.index(row, 0), QAbstractItemView::PositionAtTop);
        list.paint();
    }
    CHECK(list.desk.fetched <= 10'000 + 2 * window);
    CHECK(list.desk.asked <= 10'000 / window + 2);

    list.desk.forget(); // sorting
    list.table.sortByColumn(ui::TreeModel::label, Qt::DescendingOrder);
    list.table.scrollToTop();
    list.paint();
    CHECK(list.shown(0) == QStringLiteral("W99999"));
    CHECK(list.desk.fetched <= 2 * window);

    list.desk.forget(); // filtering
    list.desk.setQuery({.show = TreesShown::gone});
    list.paint();
    CHECK(list.model.rowCount() == manyTrees / 100);
    CHECK(list.shown(0) == QStringLiteral("W7"));
    CHECK(list.model.index(0, ui::TreeModel::state).data().toString() == QStringLiteral("felled 3 May 2026"));
    CHECK(list.desk.fetched <= 2 * window);
    list.desk.forget();
    list.desk.setQuery({.words = "W4711"});
    list.paint();
    CHECK(list.model.rowCount() == 1 + 10); // W4711 and W47110 to W47119: the last word may be unfinished
    CHECK(list.desk.fetched <= 2 * window);
}

TEST_CASE("felled is said by keys, shown in the register and in Day, and undone", "[gui][trees]")
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::office}, store.path);
    maud.key(Qt::Key_2, Qt::ControlModifier);
    maud.inDialog([&](QDialog& dialog) {
        takeFocus(dialog);
        CHECK(maud.focusName() == QStringLiteral("fate0"));
        maud.key(Qt::Key_Down); // from "it stands" to "it was felled"
        CHECK(maud.focusName() == QStringLiteral("fate1"));
        maud.key(Qt::Key_Return);
    });
    maud.key(Qt::Key_L, Qt::ControlModifier);
    const auto gone = [&] { return treeLines(maud.session(), {.show = TreesShown::gone}, 0, 5).value(); };
    REQUIRE(gone().size() == 1);
    CHECK(gone()[0].fateDate == CivilDate::make(2026, 6, 20));
    CHECK(label(maud, "treeFate").startsWith(QStringLiteral("Felled, seen on 20 June 2026 (MH)")));
    // filtered by keys, then everything again
    goBack(maud, "treeShow");
    maud.type("stand");
    CHECK(maud.window.findChild<QTableView*>(QStringLiteral("treeTable"))->model()->rowCount() == 0);
    maud.key(Qt::Key_Home);
    CHECK(maud.window.findChild<QTableView*>(QStringLiteral("treeTable"))->model()->rowCount() == 1);

    maud.key(Qt::Key_1, Qt::ControlModifier);
    maud.key(Qt::Key_N, Qt::ControlModifier);
    maud.type("T-0");
    QWidget* popup = QApplication::activePopupWidget();
    REQUIRE(popup != nullptr);
    const auto* list = qobject_cast<QAbstractItemView*>(popup);
    REQUIRE(list != nullptr);
    CHECK(list->model()->index(0, 0).data().toString().contains(QStringLiteral("felled, seen on 20 June 2026")));
    maud.key(Qt::Key_Escape);

    maud.key(Qt::Key_2, Qt::ControlModifier);
    REQUIRE(undo(maud.session())); // the visit just begun
    goBack(maud, "treeTable");
    maud.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(gone().empty());
    CHECK(label(maud, "treeFate").isEmpty());
}

TEST_CASE("two entries are merged by keys after the window said what it means, and undone", "[gui][trees]")
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::office}, store.path);
    const Uid second = looseVisit(maud.session(), "T-03b", "SO 5488 4391");
    maud.window.bench().tellChanged();
    maud.key(Qt::Key_2, Qt::ControlModifier);
    auto* table = maud.window.findChild<QTableView*>(QStringLiteral("treeTable"));
    table->setFocus();
    maud.key(Qt::Key_Home, Qt::ControlModifier);
    CHECK(table->currentIndex().data().toString() == QStringLiteral("T-03"));
    maud.inDialog([&](QDialog& dialog) {
        takeFocus(dialog);
        maud.type("T-03b");
        const auto* meaning = dialog.findChild<ui::StoryList*>(QStringLiteral("mergeMeaning"));
        QStringList said;
        for (int row = 0; row < meaning->story().rowCount(); ++row)
            said << meaning->story().index(row, 0).data(Qt::AccessibleTextRole).toString();
        const QString all = said.join(QLatin1Char('\n'));
        CHECK(all.contains(QStringLiteral("T-03b is kept as T-03")));
        CHECK(all.contains(QStringLiteral("1 visit, with 0 photos and 0 samples")));
        CHECK(all.contains(QStringLiteral("It can be undone")));
        maud.key(Qt::Key_Return); // to the hits
        maud.key(Qt::Key_Return); // to the button
        CHECK(maud.focusName() == QStringLiteral("mergeYes"));
        maud.key(Qt::Key_Space);
    });
    maud.key(Qt::Key_M, Qt::ControlModifier);
    CHECK(treePage(maud.session(), second).value().tree.label == "T-03");
    CHECK(label(maud, "treeMerged") == QStringLiteral("Also entered as T-03b, which is the same tree."));
    CHECK(table->model()->rowCount() == 1);
    const auto& line = story(maud, "treeHistory").story();
    QStringList told;
    for (int row = 0; row < line.rowCount(); ++row)
        told << line.index(row, 0).data(Qt::AccessibleTextRole).toString();
    CHECK_FALSE(told.filter(QStringLiteral("T-03b merged into this tree")).isEmpty());
    goBack(maud, "treeTable");
    maud.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(treePage(maud.session(), second).value().tree.label == "T-03b");
    CHECK(table->model()->rowCount() == 2);
    maud.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(table->model()->rowCount() == 1);
    // and split off again
    maud.inDialog([&](QDialog& dialog) {
        takeFocus(dialog);
        auto* what = dialog.findChild<QComboBox*>(QStringLiteral("splitWhat"));
        CHECK(what->currentText() == QStringLiteral("T-03b is a tree of its own after all"));
        maud.key(Qt::Key_Tab);
        auto* yes = dialog.findChild<QAbstractButton*>(QStringLiteral("splitYes"));
        REQUIRE(yes != nullptr);
        yes->setFocus(Qt::TabFocusReason);
        maud.key(Qt::Key_Space);
    });
    maud.key(Qt::Key_M, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(table->model()->rowCount() == 2);
}

TEST_CASE("a line of a tree's past is read out and opens its visit in Day; so does a character", "[gui][trees]")
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::office}, store.path);
    for (const char* name : {"treeHistory", "treeEvidence"}) {
        CAPTURE(name);
        maud.key(Qt::Key_2, Qt::ControlModifier);
        ui::StoryList& list = story(maud, name);
        list.setFocus(Qt::TabFocusReason);
        QModelIndex current = list.currentIndex();
        REQUIRE(current.isValid());
        while (current.isValid() && list.story().row(current.row()).noun.isNull()) { // to a row that is of a visit
            maud.key(Qt::Key_Down);
            REQUIRE(list.currentIndex() != current);
            current = list.currentIndex();
        }
        CHECK(current.data(Qt::AccessibleTextRole).toString().contains(QStringLiteral("11 June 2026")));
        CHECK_FALSE(list.accessibleName().isEmpty());
        maud.key(Qt::Key_Return);
        CHECK(maud.window.currentPlace()->objectName() == QStringLiteral("dayView"));
        CHECK(maud.window.findChild<QLineEdit*>(QStringLiteral("treeLabel"))->text() == QStringLiteral("T-03"));
    }
    maud.key(Qt::Key_2, Qt::ControlModifier); // a click does the same
    ui::StoryList& list = story(maud, "treeHistory");
    for (int row = 0; row < list.story().rowCount(); ++row)
        if (!list.story().row(row).noun.isNull()) {
            QTest::mouseClick(list.viewport(), Qt::LeftButton, {}, list.visualRect(list.story().index(row, 0)).center());
            break;
        }
    QCoreApplication::processEvents();
    CHECK(maud.window.currentPlace()->objectName() == QStringLiteral("dayView"));
}

TEST_CASE("visits that were to another tree are moved by keys", "[gui][trees]")
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::office}, store.path);
    const Uid tree = visitPage(maud.session(), store.visit).value().tree->id;
    const Uid draft = newVisit(maud.session(), {}, tree).value().id;
    maud.key(Qt::Key_2, Qt::ControlModifier);
    maud.inDialog([&](QDialog& dialog) {
        takeFocus(dialog);
        auto* yes = dialog.findChild<QAbstractButton*>(QStringLiteral("splitYes"));
        CHECK_FALSE(yes->isEnabled());
        maud.key(Qt::Key_Tab);
        CHECK(maud.focusName() == QStringLiteral("splitVisits"));
        maud.key(Qt::Key_Home); // the newest, the draft of today
        maud.key(Qt::Key_Space);
        maud.key(Qt::Key_Tab);
        CHECK(maud.focusName() == QStringLiteral("splitLabel"));
        maud.type("T-03b");
        CHECK(yes->isEnabled());
        maud.key(Qt::Key_Return);
    });
    maud.key(Qt::Key_M, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(visitPage(maud.session(), draft).value().tree->label == "T-03b");
    CHECK(visitPage(maud.session(), store.visit).value().tree->label == "T-03");
}

TEST_CASE("the place Trees fits a low window at the largest text, and F6 brings each part into sight", "[gui][trees]")
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::office}, store.path);
    maud.key(Qt::Key_2, Qt::ControlModifier);
    test::look().setTextPercent(175);
    auto* place = maud.window.findChild<ui::TreesView*>();
    settle(maud.window, {1366, 700});
    CHECK(place->minimumSizeHint().height() <= 400);
    CHECK(place->minimumSizeHint().width() <= 1000);
    test::look().setTextPercent(100);
    settle(maud.window, {1366, 768});
    const auto* page = maud.window.findChild<ui::TreePageView*>();
    QStringList met;
    for (int i = 0; i < 8; ++i) {
        maud.key(Qt::Key_F6);
        const QWidget* focus = QApplication::focusWidget();
        if (!page->isAncestorOf(focus))
            continue;
        met << focus->objectName();
        const QRect seen(page->viewport()->mapToGlobal(QPoint()), page->viewport()->size());
        CHECK(seen.intersects(QRect(focus->mapToGlobal(QPoint()), QSize(focus->width(), 24))));
    }
    for (const char* part : {"treeHistory", "treeEvidence", "treeNote"})
        CHECK(met.contains(QString::fromLatin1(part)));
}
