#include "ui/trees/trees_view.h"

#include <array>
#include <numeric>

#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QTimer>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/trees/tree_dialogs.h"
#include "ui/trees/tree_model.h"
#include "ui/trees/tree_page.h"
#include "ui/widgets/empty_state.h"

namespace cupule::ui {

TreesView::TreesView(Workbench& bench, QWidget* parent) : Place(parent), m_bench(bench), m_desk(bench)
{
    setObjectName(QStringLiteral("treesView"));
    m_splitter = new QSplitter(Qt::Horizontal, this);
    m_splitter->setObjectName(QStringLiteral("treesSplitter"));
    m_splitter->setHandleWidth(1);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->addWidget(buildRegister());
    m_page = new TreePageView(m_desk, this);
    m_splitter->addWidget(m_page);
    m_splitter->setSizes({660, 540});
    m_empty = new EmptyState(this);
    m_empty->setTitle(tr("No tree is known yet"),
                      tr("A tree comes in with its first visit: in Day, type its label. Or take in a table or the points of a "
                         "receiver with Ctrl+Shift+O."));
    m_stack = new QStackedWidget(this);
    m_stack->addWidget(m_splitter);
    m_stack->addWidget(m_empty);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_stack);
    addCommand(tr("Find a tree"), QKeySequence::Find, QStringLiteral("tree-find"), [this] {
        m_words->setFocus(Qt::ShortcutFocusReason);
        m_words->selectAll();
    });
    addCommand(tr("Felled or not found…"), QKeySequence(Qt::CTRL | Qt::Key_L), QStringLiteral("tree-fate"), [this] { askFate(); });
    addCommand(tr("The same tree as another entry…"), QKeySequence(Qt::CTRL | Qt::Key_M), QStringLiteral("tree-merge"), [this] { askMerge(); });
    addCommand(tr("More than one tree…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_M), QStringLiteral("tree-split"), [this] { askSplit(); });
    connect(m_page, &TreePageView::fateAsked, this, &TreesView::askFate);
    connect(m_page, &TreePageView::mergeAsked, this, &TreesView::askMerge);
    connect(m_page, &TreePageView::splitAsked, this, &TreesView::askSplit);
    connect(&m_desk, &TreesDesk::pageChanged, m_page, &TreePageView::refresh);
    connect(&m_desk, &TreesDesk::listChanged, this, [this] {
        m_count->setText(tr("%n trees", nullptr, m_desk.count()));
        const TreeQuery& query = m_desk.query();
        const bool narrowed = !query.words.empty() || !query.site.isNull() || query.show != TreesShown::all;
        m_stack->setCurrentIndex(m_desk.count() == 0 && !narrowed ? 1 : 0);
    });
}

QWidget* TreesView::buildRegister()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(12, 12, 0, 0);
    column->setSpacing(8);
    auto* row = new QHBoxLayout;
    m_words = new QLineEdit(box);
    m_words->setObjectName(QStringLiteral("treeSearch"));
    m_words->setPlaceholderText(tr("label, site or words of a note"));
    m_words->setClearButtonEnabled(true);
    m_words->setAccessibleName(tr("Find a tree"));
    m_site = new QComboBox(box);
    m_site->setObjectName(QStringLiteral("treeSite"));
    m_site->setAccessibleName(tr("Site"));
    m_show = new QComboBox(box);
    m_show->setObjectName(QStringLiteral("treeShow"));
    m_show->setAccessibleName(tr("Which trees"));
    m_show->addItem(tr("every tree"), static_cast<int>(TreesShown::all));
    m_show->addItem(tr("standing"), static_cast<int>(TreesShown::standing));
    m_show->addItem(tr("felled or not found"), static_cast<int>(TreesShown::gone));
    m_show->addItem(tr("a find waits"), static_cast<int>(TreesShown::findWaits));
    m_show->addItem(tr("a find accepted"), static_cast<int>(TreesShown::findAccepted));
    m_show->addItem(tr("never looked at"), static_cast<int>(TreesShown::neverSeen));
    m_count = new QLabel(box);
    for (QComboBox* narrow : {m_site, m_show}) // a long name of a site must not push the page out
        narrow->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_site->setMinimumContentsLength(8);
    m_show->setMinimumContentsLength(10);
    row->addWidget(m_words, 1);
    row->addSpacing(12);
    column->addLayout(row);
    auto* second = new QHBoxLayout;
    second->addWidget(m_site, 1);
    second->addWidget(m_show, 1);
    second->addWidget(m_count);
    second->addSpacing(12);
    column->addLayout(second);
    m_table = new QTableView(box);
    m_table->setObjectName(QStringLiteral("treeTable"));
    m_table->setAccessibleName(tr("Trees"));
    m_model = new TreeModel(m_desk, this);
    m_table->setModel(m_model);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setSortingEnabled(true);
    m_table->horizontalHeader()->setSortIndicator(TreeModel::label, Qt::AscendingOrder);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->horizontalHeader()->setResizeContentsPrecision(0); // by the rows in view: others need not be fetched
    m_table->horizontalHeader()->setResizeContentsPrecision(0); // only the rows in sight, not the next thousand
    m_table->verticalHeader()->hide();
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->viewport()->installEventFilter(this);
    column->addWidget(m_table, 1);
    m_typing = new QTimer(this);
    m_typing->setSingleShot(true);
    m_typing->setInterval(120);
    connect(m_words, &QLineEdit::textEdited, this, [this] { m_typing->start(); });
    connect(m_typing, &QTimer::timeout, this, &TreesView::search);
    connect(m_words, &QLineEdit::returnPressed, this, [this] {
        search();
        m_table->setFocus(Qt::OtherFocusReason);
        m_table->selectRow(0);
    });
    connect(m_site, &QComboBox::activated, this, &TreesView::search);
    connect(m_show, &QComboBox::activated, this, &TreesView::search);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& current) {
        const TreeLine* line = m_model->line(current.row());
        if (line != nullptr && (!m_desk.page() || m_desk.page()->tree.id != line->id)) {
            leave();
            m_desk.show(line->id);
        }
    });
    connect(m_model, &QAbstractItemModel::modelAboutToBeReset, this, [this] { m_row = m_table->currentIndex().row(); });
    connect(m_model, &QAbstractItemModel::modelReset, this, [this] { keepRow(m_row); });
    return box;
}

void TreesView::search()
{
    TreeQuery query = m_desk.query();
    query.words = utf8(m_words->text().trimmed());
    const auto site = Uid::parse(utf8(m_site->currentData().toString()));
    query.site = site ? *site : Uid{};
    query.show = static_cast<TreesShown>(m_show->currentData().toInt());
    m_desk.setQuery(query);
}

void TreesView::refreshSites()
{
    const QString chosen = m_site->currentData().toString();
    m_site->clear();
    m_site->addItem(tr("all sites"), QString());
    for (const Site& site : m_desk.sites())
        m_site->addItem(text(site.name), text(site.id.text()));
    m_site->setCurrentIndex(std::max(0, m_site->findData(chosen)));
}

/// After the list changed, the row of the open tree is current again where it still is one of these rows.
void TreesView::keepRow(int row)
{
    const TreeLine* line = m_model->line(row);
    if (line == nullptr || !m_desk.page() || line->id != m_desk.page()->tree.id)
        return;
    const QSignalBlocker quiet(m_table->selectionModel());
    m_table->setCurrentIndex(m_model->index(row, 0));
}

void TreesView::askFate()
{
    if (!m_desk.page())
        return;
    FateDialog dialog(m_desk, this);
    if (dialog.exec() == QDialog::Accepted)
        m_desk.setFate(dialog.fate(), dialog.day());
}

void TreesView::askMerge()
{
    if (!m_desk.page())
        return;
    MergeDialog dialog(m_desk, this);
    if (dialog.exec() == QDialog::Accepted)
        m_desk.merge(dialog.kept(), dialog.other());
}

void TreesView::askSplit()
{
    if (!m_desk.page() || (m_desk.page()->merged.empty() && m_desk.page()->visits.size() < 2))
        return;
    SplitDialog dialog(m_desk, this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    if (dialog.entry().isNull())
        m_desk.splitVisits(dialog.visits(), dialog.label());
    else
        m_desk.split(dialog.entry());
}

void TreesView::enter()
{
    refreshSites();
    m_desk.refresh();
    fitColumns();
}

/// What stands on the page as well is left out, rather than cut, where the list is too narrow: the position first.
void TreesView::fitColumns()
{
    std::array<int, TreeModel::columnCountValue> widths{};
    for (int i = 0; i < TreeModel::columnCountValue; ++i) {
        m_table->setColumnHidden(i, false);
        if (i != TreeModel::position)
            m_table->resizeColumnToContents(i);
        widths[static_cast<std::size_t>(i)] = m_table->columnWidth(i);
    }
    widths[TreeModel::position] = m_table->fontMetrics().horizontalAdvance(QStringLiteral("SO 54950 43900 ± 100 m")) + 24;
    int needed = std::accumulate(widths.begin(), widths.end(), 0);
    for (const int column : {TreeModel::position, TreeModel::visits, TreeModel::host, TreeModel::site}) {
        if (needed <= m_table->viewport()->width())
            return;
        needed -= widths[static_cast<std::size_t>(column)];
        m_table->setColumnHidden(column, true);
    }
}

bool TreesView::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_table->viewport() && event->type() == QEvent::Resize)
        fitColumns();
    return Place::eventFilter(watched, event);
}

bool TreesView::leave()
{
    m_page->leave();
    return true;
}

void TreesView::goTo(const Uid& noun)
{
    m_desk.show(noun);
}

bool TreesView::shows(const Uid& noun) const
{
    return m_bench.session() != nullptr && treePage(*m_bench.session(), noun).has_value();
}

void TreesView::nextPane(int step)
{
    focusNextOf(QList<QWidget*>{m_words, m_table} + m_page->panes(), step);
}

QStringList TreesView::help() const
{
    return {tr("Type a label, a site or words of a note above the list; Enter goes to the first hit. Click a heading to sort."),
            tr("F6 goes on to the tree's past, its characters, photos and map. Enter on a line opens that visit in Day."),
            tr("Ctrl+L says that a tree was felled or not found. It keeps its past."),
            tr("Ctrl+M merges two entries of one tree and says beforehand what that means; Ctrl+Shift+M splits. Ctrl+Z undoes either.")};
}

} // namespace cupule::ui
