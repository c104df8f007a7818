#include "ui/trees/trees_view.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QTimer>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "core/base/text.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/theme.h"
#include "ui/trees/tree_model.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

TreesView::TreesView(Workbench& bench, QWidget* parent) : Place(parent), m_bench(bench), m_desk(bench)
{
    setObjectName(QStringLiteral("treesView"));
    m_splitter = new QSplitter(Qt::Horizontal, this);
    m_splitter->setObjectName(QStringLiteral("treesSplitter"));
    m_splitter->setHandleWidth(1);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->addWidget(buildRegister());
    m_splitter->addWidget(buildPage());
    m_splitter->setSizes({720, 440});
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
    connect(&m_desk, &TreesDesk::pageChanged, this, &TreesView::refreshPage);
    connect(&m_desk, &TreesDesk::listChanged, this, [this] {
        m_count->setText(tr("%n trees", nullptr, m_desk.count()));
        const bool nothing = m_desk.count() == 0 && m_desk.query().words.empty() && m_desk.query().site.isNull();
        m_stack->setCurrentIndex(nothing ? 1 : 0);
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
    m_count = new QLabel(box);
    row->addWidget(m_words, 1);
    row->addWidget(m_site);
    row->addWidget(m_count);
    row->addSpacing(12);
    column->addLayout(row);
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
    m_table->verticalHeader()->hide();
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
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
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& current) {
        const TreeLine* line = m_model->line(current.row());
        if (line != nullptr && (!m_desk.page() || m_desk.page()->tree.id != line->id)) {
            leave();
            m_desk.show(line->id);
        }
    });
    return box;
}

QWidget* TreesView::buildPage()
{
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* box = new QWidget(area);
    box->setObjectName(QStringLiteral("treePage"));
    box->setBackgroundRole(QPalette::Base);
    box->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(22, 14, 22, 14);
    column->setSpacing(8);
    m_title = new RoleLabel(TextRole::title, box);
    m_title->setTextFormat(Qt::RichText);
    m_facts = new QLabel(box);
    m_facts->setWordWrap(true);
    m_facts->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* form = new QFormLayout;
    m_fate = new QComboBox(box);
    m_fate->setObjectName(QStringLiteral("fate"));
    m_fate->addItem(tr("stands"), QString());
    m_fate->addItem(tr("felled"), QStringLiteral("felled"));
    m_fate->addItem(tr("not found"), QStringLiteral("not found"));
    m_girth = new QLineEdit(box);
    m_girth->setObjectName(QStringLiteral("girth"));
    m_girth->setMaximumWidth(fontMetrics().horizontalAdvance(QStringLiteral("0000000000")));
    m_note = new QPlainTextEdit(box);
    m_note->setObjectName(QStringLiteral("treeNote"));
    m_note->setTabChangesFocus(true);
    m_note->setFixedHeight(m_note->fontMetrics().lineSpacing() * 2 + 16);
    form->addRow(tr("The tree"), m_fate);
    form->addRow(tr("Girth, cm"), m_girth);
    form->addRow(tr("Note"), m_note);
    m_history = new QTreeWidget(box);
    m_history->setObjectName(QStringLiteral("treeHistory"));
    m_history->setAccessibleName(tr("Visits to this tree"));
    m_history->setRootIsDecorated(false);
    m_history->setHeaderLabels({tr("When"), tr("What was seen"), tr("Worth"), tr("State"), tr("By")});
    column->addWidget(m_title);
    column->addWidget(m_facts);
    column->addLayout(form);
    m_history->setMinimumHeight(120);
    column->addWidget(m_history, 1);
    connect(m_fate, &QComboBox::activated, this, [this] { m_desk.setFate(m_fate->currentData().toString()); });
    connect(m_girth, &QLineEdit::editingFinished, this, [this] {
        if (m_girth->isModified()) {
            m_girth->setModified(false);
            m_desk.setGirth(parseNumber(utf8(m_girth->text().trimmed())));
        }
    });
    connect(m_history, &QTreeWidget::itemActivated, this, [this](QTreeWidgetItem* item) {
        if (const auto visit = Uid::parse(utf8(item->data(0, Qt::UserRole).toString())))
            m_desk.goToVisit(*visit);
    });
    area->setWidget(box);
    return area;
}

void TreesView::search()
{
    TreeQuery query = m_desk.query();
    query.words = utf8(m_words->text().trimmed());
    const auto site = Uid::parse(utf8(m_site->currentData().toString()));
    query.site = site ? *site : Uid{};
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

void TreesView::refreshPage()
{
    const bool filled = m_desk.page().has_value();
    for (QWidget* part : std::initializer_list<QWidget*>{m_title, m_facts, m_fate, m_girth, m_note, m_history})
        part->setEnabled(filled);
    if (!filled)
        return;
    const TreePage& page = *m_desk.page();
    m_title->setText(QStringLiteral("<b>%1</b> %2").arg(text(page.tree.label).toHtmlEscaped(),
                                                         page.site ? text(page.site->name).toHtmlEscaped() : tr("no site")));
    QStringList facts{hostText(page.host, m_desk.pack())};
    if (page.tree.position)
        facts << text(page.tree.position->typed.empty() ? page.tree.position->system : page.tree.position->typed)
                     + QStringLiteral(", ") + positionSureText(*page.tree.position) + QLatin1Char('.');
    else
        facts << tr("No position yet.");
    facts << tr("%n photos", nullptr, static_cast<int>(page.photos.size())) + QStringLiteral(", ")
                 + tr("%n samples", nullptr, static_cast<int>(page.samples.size())) + QLatin1Char('.');
    m_facts->setText(facts.join(QLatin1Char('\n')));
    m_fate->setCurrentIndex(std::max(0, m_fate->findData(text(page.tree.fate))));
    if (!m_girth->isModified())
        m_girth->setText(page.tree.girthCentimetres ? numberText(*page.tree.girthCentimetres) : QString());
    if (!m_note->document()->isModified() || !m_note->hasFocus()) {
        m_note->setPlainText(text(page.tree.note));
        m_note->document()->setModified(false);
    }
    m_history->clear();
    for (const HistoryLine& line : page.visits) {
        QString state = stateWord(line.line.state);
        if (line.line.correctionWaits)
            state += tr(", a correction waits");
        auto* item = new QTreeWidgetItem(
            m_history, {plainDate(line.line.date, 0), summaryWord(line.line.summary),
                        line.line.summary == "nothing-seen" ? QString(QLatin1Char(line.line.worth)) : QString(), state,
                        text(line.line.observerCode)});
        item->setData(0, Qt::UserRole, text(line.line.id.text()));
        if (!line.remark.empty())
            item->setToolTip(3, text(line.remark));
    }
    for (int i = 0; i < m_history->columnCount(); ++i)
        m_history->resizeColumnToContents(i);
}

void TreesView::enter()
{
    refreshSites();
    m_desk.refresh();
    for (int i = 0; i < TreeModel::position; ++i)
        m_table->resizeColumnToContents(i);
}

bool TreesView::leave()
{
    if (m_desk.page() && m_note->document()->isModified()) {
        m_note->document()->setModified(false);
        m_desk.setNote(m_note->toPlainText().trimmed());
    }
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
    focusNextOf({m_words, m_table, m_fate, m_history}, step);
}

QStringList TreesView::help() const
{
    return {tr("Type a label, a site or words of a note above the list; Enter goes to the first hit."),
            tr("Click a heading to sort. Enter on a visit opens it in Day."),
            tr("A tree that was felled or not found again keeps its history; say so in its page.")};
}

} // namespace cupule::ui
