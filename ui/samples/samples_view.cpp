#include "ui/samples/samples_view.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListView>
#include <QScrollArea>
#include <QScrollBar>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableWidget>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/samples/line_form.h"
#include "ui/samples/sample_dialogs.h"
#include "ui/samples/sample_list.h"
#include "ui/theme/theme.h"
#include "ui/widgets/chain_view.h"
#include "ui/widgets/clock_strip.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

SamplesView::SamplesView(Workbench& bench, Prompts& prompts, QWidget* parent)
    : Place(parent), m_bench(bench), m_prompts(prompts), m_desk(bench)
{
    setObjectName(QStringLiteral("samplesView"));
    auto* splitter = new QSplitter(Qt::Horizontal, this);
    splitter->setHandleWidth(1);
    splitter->setChildrenCollapsible(false);
    splitter->addWidget(buildList());
    splitter->addWidget(buildPage());
    splitter->setStretchFactor(1, 1);
    splitter->setSizes({214, 1000});
    m_empty = new EmptyState(this);
    m_empty->setTitle(tr("No sample this season"),
                      tr("A sample needs leave first: the owner's to enter and sample, the authority's to take and move. "
                         "Photograph and report is the usual way."));
    connect(m_empty->addWay(QStringLiteral("mark:thing-hand-over"), tr("Write down a leave"),
                            tr("Who gave it, for what, until when."), tr("A leave…"), {}),
            &QPushButton::clicked, this, &SamplesView::addLeave);
    connect(m_empty->addWay(QStringLiteral("mark:thing-bag-outer"), tr("Print labels to take along"),
                            tr("With reserved numbers and room for a pencil, before going out."), tr("Labels to take along…"), {}),
            &QPushButton::clicked, this, &SamplesView::takeLabelsAlong);
    m_stack = new QStackedWidget(this);
    m_stack->addWidget(splitter);
    auto* empty = new QScrollArea(m_stack); // high where the text is large
    empty->setWidgetResizable(true);
    empty->setFrameShape(QFrame::NoFrame);
    empty->setWidget(m_empty);
    m_stack->addWidget(empty);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_stack);
    buildCommands();
    connect(&m_desk, &SamplesDesk::listChanged, this, &SamplesView::refreshList);
    connect(&m_desk, &SamplesDesk::pageChanged, this, &SamplesView::refreshPage);
}

QWidget* SamplesView::buildList()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 12);
    column->setSpacing(0);
    m_count = new QLabel(box);
    m_count->setContentsMargins(14, 12, 14, 10);
    m_list = new SampleList(box);
    m_list->setObjectName(QStringLiteral("sampleList"));
    m_list->setAccessibleName(tr("Samples"));
    m_list->setFrameShape(QFrame::NoFrame);
    m_model = new SampleListModel(this);
    m_list->setModel(m_model);
    m_list->setItemDelegate(new SampleDelegate(*m_model, this));
    m_waiting = new QLabel(box);
    m_waiting->setWordWrap(true);
    auto* labels = new KeyButton(tr("Print labels…"), box);
    labels->setObjectName(QStringLiteral("printLabels"));
    labels->setCap(QStringLiteral("Ctrl+P"));
    auto* find = new KeyButton(tr("Scan a label"), box);
    find->setObjectName(QStringLiteral("scanLabel"));
    find->setCap(QStringLiteral("Ctrl+B"));
    auto* leave = new KeyButton(tr("A leave…"), box);
    leave->setObjectName(QStringLiteral("newLeave"));
    auto* buttons = new QVBoxLayout;
    buttons->setContentsMargins(12, 10, 12, 0);
    buttons->setSpacing(8);
    for (QWidget* widget : std::initializer_list<QWidget*>{m_waiting, labels, find, leave})
        buttons->addWidget(widget);
    connect(labels, &QPushButton::clicked, this, &SamplesView::printLabels);
    connect(find, &QPushButton::clicked, this, &SamplesView::findByLabel);
    column->addWidget(m_count);
    column->addWidget(m_list, 1);
    column->addLayout(buttons);
    connect(leave, &QPushButton::clicked, this, &SamplesView::addLeave);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
        const SampleLine* line = m_model->line(current);
        if (!m_setting && line != nullptr)
            m_desk.show(line->id);
    });
    return box;
}

QWidget* SamplesView::buildPage()
{
    QScrollArea* whole = makePageArea(this); // low windows and large text: the page scrolls as one
    whole->setObjectName(QStringLiteral("samplePage"));
    auto* page = new QWidget(whole);
    page->setBackgroundRole(QPalette::Base);
    page->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_title = new RoleLabel(TextRole::title, page);
    m_title->setTextFormat(Qt::RichText);
    m_title->setWordWrap(true);
    m_title->setContentsMargins(22, 14, 22, 0);
    m_facts = new QLabel(page);
    m_facts->setContentsMargins(22, 2, 22, 8);
    m_facts->setWordWrap(true);
    m_chain = new ChainView(page);
    m_chain->setObjectName(QStringLiteral("chain"));
    m_chainArea = new QScrollArea(page);
    m_chainArea->setFrameShape(QFrame::NoFrame);
    m_chainArea->setWidgetResizable(true);
    m_chainArea->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_chainArea->setBackgroundRole(QPalette::Base);
    m_chainArea->setWidget(m_chain);
    m_clock = new ClockStrip(page);
    auto* said = new QVBoxLayout;
    said->setSpacing(0);
    said->addWidget(m_title);
    said->addWidget(m_facts);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(0, 0, 22, 0);
    head->addLayout(said, 1);
    head->addWidget(m_clock);
    column->addLayout(head);
    column->addWidget(m_chainArea);
    auto* below = new QSplitter(Qt::Horizontal, page);
    m_below = below;
    below->setHandleWidth(1);
    below->setChildrenCollapsible(false);
    m_formArea = makePageArea(below);
    m_form = new LineForm(m_desk, m_formArea);
    m_formArea->setWidget(m_form);
    auto* right = new QWidget(below);
    auto* rightColumn = new QVBoxLayout(right);
    rightColumn->setContentsMargins(14, 12, 14, 12);
    rightColumn->setSpacing(8);
    m_gateHead = new RoleLabel(TextRole::heading, right);
    m_gateHead->setWordWrap(true);
    m_gate = new FindingList(right);
    m_gate->setObjectName(QStringLiteral("gate"));
    m_lines = new QTableWidget(0, 6, right);
    m_lines->setObjectName(QStringLiteral("custodyLines"));
    m_lines->setAccessibleName(tr("Lines of custody"));
    m_lines->setTabKeyNavigation(false);
    m_lines->setHorizontalHeaderLabels({QString(), tr("What"), tr("When"), tr("Who"), tr("Where"), tr("Seal, bag or report")});
    m_lines->verticalHeader()->hide();
    m_lines->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_lines->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_lines->setShowGrid(false);
    m_lines->horizontalHeader()->setStretchLastSection(true);
    m_lines->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_lines->horizontalHeader()->setMinimumSectionSize(24);
    m_close = new KeyButton(tr("Close the sample…"), right);
    m_close->setObjectName(QStringLiteral("closeSample"));
    setTabOrder(m_gate, m_close);
    setTabOrder(m_close, m_lines);
    auto* linesHead = new RoleLabel(TextRole::heading, tr("Lines, never edited, only followed"), right);
    rightColumn->addWidget(m_gateHead);
    rightColumn->addWidget(m_gate, 3);
    rightColumn->addWidget(m_close, 0, Qt::AlignLeft);
    rightColumn->addWidget(linesHead);
    rightColumn->addWidget(m_lines, 2);
    below->addWidget(m_formArea);
    below->addWidget(right);
    below->setSizes({420, 640});
    column->addWidget(below, 1);
    connect(m_chain, &ChainView::linkAsked, this, &SamplesView::goToLink);
    connect(m_close, &QPushButton::clicked, this, &SamplesView::closeSample);
    connect(m_lines, &QTableWidget::cellActivated, this, [this](int row, int) { m_form->correct(row + 1); });
    whole->setWidget(page);
    return whole;
}

void SamplesView::buildCommands()
{
    addCommand(tr("Keep the line"), QKeySequence(Qt::CTRL | Qt::Key_Return), QStringLiteral("sample-keep-line"),
        [this] { m_form->keep(); });
    addCommand(tr("Close the sample…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Return), QStringLiteral("sample-close"),
        [this] { closeSample(); });
    addCommand(tr("A leave…"), {}, QStringLiteral("sample-leave"), [this] { addLeave(); });
    addCommand(tr("Print labels…"), QKeySequence(Qt::CTRL | Qt::Key_P), QStringLiteral("sample-labels"), [this] { printLabels(); });
    addCommand(tr("Labels to take along…"), QKeySequence(Qt::CTRL | Qt::ALT | Qt::Key_P), QStringLiteral("sample-labels-along"),
        [this] { takeLabelsAlong(); });
    addCommand(tr("Scan a label"), QKeySequence(Qt::CTRL | Qt::Key_B), QStringLiteral("sample-scan"), [this] { findByLabel(); });
    addCommand(tr("Custody record…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P), QStringLiteral("sample-custody-record"),
        [this] { writeCustodyRecord(); });
}

void SamplesView::enter()
{
    m_desk.refresh();
}

/// The form is as wide as its words at the text size in force; it scrolls downwards only. Where the list of what is missing
/// has no room beside it, that list lies below.
void SamplesView::fitForm()
{
    m_list->setMinimumWidth(QFontMetrics(roleFont(TextRole::idsStrong, *this)).horizontalAdvance(QStringLiteral("26-TV-0001-F")) +
                            scaled(62, font()));
    const bool narrow = width() < fontMetrics().averageCharWidth() * 100;
    m_clock->setMaximumWidth(narrow ? 0 : QWIDGETSIZE_MAX); // the hours stand among the facts too
    m_below->setOrientation(narrow ? Qt::Vertical : Qt::Horizontal);
    m_formArea->setMinimumWidth(m_form->minimumSizeHint().width() + m_formArea->verticalScrollBar()->sizeHint().width());
    showLink();
}

/// The link that wants something is in sight, whatever the width.
void SamplesView::showLink()
{
    const int first = m_chain->firstUnsettled();
    if (first < 0)
        return;
    const QRect link = m_chain->linkRect(first);
    m_chainArea->ensureVisible(link.center().x(), link.center().y(), link.width(), 0);
}

void SamplesView::resizeEvent(QResizeEvent* event)
{
    Place::resizeEvent(event);
    fitForm();
}

void SamplesView::changeEvent(QEvent* event)
{
    Place::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        fitForm();
}

void SamplesView::goTo(const Uid& noun)
{
    m_desk.show(noun);
}

bool SamplesView::shows(const Uid& noun) const
{
    return m_bench.session() != nullptr && samplePage(*m_bench.session(), noun).has_value();
}

void SamplesView::nextPane(int step)
{
    if (m_stack->currentIndex() == 1)
        m_empty->findChild<QPushButton*>()->setFocus(Qt::OtherFocusReason);
    else
        focusNextOf({m_list, m_chain, m_form, m_gate, m_lines}, step);
}

void SamplesView::nextFinding()
{
    m_gate->setFocus(Qt::ShortcutFocusReason);
    m_gate->next();
}

QStringList SamplesView::help() const
{
    return {tr("Each link of the chain is a fact somebody put down. A link that hangs open says what would close it; the form below is for that."),
            tr("Left and Right move along the chain, Enter goes to the form, Ctrl+Enter keeps the line."),
            tr("A sample closes only when nothing is missing. With a break it needs a reason and a second person."),
            tr("Enter on a line writes one in its place; Enter on a broken link too, with what is wrong about it."),
            tr("Ctrl+P writes the labels to print, Ctrl+Alt+P labels to take along, Ctrl+Shift+P the custody record. Ctrl+B finds "
               "the sample whose label you scan or type.")};
}

void SamplesView::goToLink(int link)
{
    if (!m_desk.page() || link < 0 || link >= static_cast<int>(m_desk.page()->status.chain.size()))
        return;
    const ChainLink& at = m_desk.page()->status.chain[static_cast<std::size_t>(link)];
    if (at.state == LinkState::broken && at.line > 0)
        return m_form->correct(at.line);
    m_form->startAnew();
    m_form->setKind(m_desk.kindOf(at));
    m_form->focusFirst();
}

void SamplesView::closeSample()
{
    if (!m_desk.page())
        return;
    const SampleStatus& status = m_desk.page()->status;
    if (status.canCloseWhole) {
        if (m_prompts.confirm(this, tr("Close sample %1?").arg(text(m_desk.page()->sample.number)),
                              tr("Nothing is missing. After closing, only correcting lines can follow."), tr("Close it")))
            m_desk.close(false, {}, {});
    } else if (status.canCloseWithBreak) {
        CloseWithBreakDialog dialog(status.breaks, m_desk.pack(), this);
        if (dialog.exec() == QDialog::Accepted)
            m_desk.close(true, dialog.reason(), dialog.secondPerson());
    } else {
        m_desk.close(false, {}, {});
        m_gate->setFocus(Qt::OtherFocusReason);
    }
}

void SamplesView::findByLabel()
{
    const QString number = m_prompts.line(this, tr("Scan a label"), tr("The number on the label, from a scanner or typed"), QString());
    if (!number.isEmpty())
        m_desk.find(number);
}

void SamplesView::addLeave()
{
    LeaveDialog dialog(m_desk.sites(), m_desk.today(), this);
    if (dialog.exec() == QDialog::Accepted)
        m_desk.addLeave(dialog.leave());
}

} // namespace cupule::ui
