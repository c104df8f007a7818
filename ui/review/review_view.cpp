#include "ui/review/review_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/review/audit_dialog.h"
#include "ui/review/decision_bar.h"
#include "ui/review/evidence_view.h"
#include "ui/review/queue_list.h"
#include "ui/review/review_words.h"
#include "ui/theme/theme.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/pane_row.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

ReviewView::ReviewView(Workbench& bench, Prompts& prompts, QWidget* parent)
    : Place(parent), m_bench(bench), m_prompts(prompts), m_desk(bench)
{
    setObjectName(QStringLiteral("reviewView"));
    QWidget* queue = buildQueue();
    auto* panes = new PaneRow(queue, buildChooser(), buildRecord(), buildReasons(), this);
    panes->setObjectName(QStringLiteral("reviewPanes"));
    m_empty = new EmptyState(this);
    m_empty->setTitle(tr("Nothing waits for a decision"),
                      tr("Records come here once their day is handed in. Those that an authority must hear about soon stand first."));
    m_stack = new QStackedWidget(this);
    m_stack->addWidget(panes);
    m_stack->addWidget(m_empty);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_stack);
    buildCommands();
    connect(&m_desk, &ReviewDesk::pageChanged, this, &ReviewView::refreshPage);
    connect(&m_desk, &ReviewDesk::listChanged, this, [this] {
        m_count->setText(QStringLiteral("<b>%1</b>&nbsp;&nbsp;%2").arg(tr("To decide")).arg(m_desk.count()));
        Q_EMIT noteChanged(m_desk.count() > 0 ? QString::number(m_desk.count()) : QString());
    });
}

QWidget* ReviewView::buildQueue()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_count = new QLabel(box);
    m_count->setContentsMargins(14, 12, 14, 10);
    m_queue = new QListView(box);
    m_queue->setObjectName(QStringLiteral("queue"));
    m_queue->setAccessibleName(tr("Records to decide"));
    m_queue->setFrameShape(QFrame::NoFrame);
    m_queue->setUniformItemSizes(true);
    m_model = new QueueModel(m_desk, this);
    m_queue->setModel(m_model);
    m_queue->setItemDelegate(new QueueDelegate(*m_model, this));
    column->addWidget(m_count);
    column->addWidget(m_queue, 1);
    connect(m_queue->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
        const QueueLine* line = m_model->line(current.row());
        if (!m_setting && current.isValid() && line != nullptr)
            m_desk.show(line->line.id);
    });
    return box;
}

/// What stands above the record where the queue has no room.
QWidget* ReviewView::buildChooser()
{
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(12, 6, 12, 6);
    m_where = new RoleLabel(TextRole::body, bar);
    row->addWidget(m_where, 1);
    for (const auto& [by, words] : {std::pair{-1, tr("Previous")}, std::pair{1, tr("Next")}}) {
        auto* button = new KeyButton(words, bar);
        row->addWidget(button);
        connect(button, &QPushButton::clicked, this, [this, by = by] { step(by); });
    }
    return bar;
}

QWidget* ReviewView::buildRecord()
{
    auto* whole = new QWidget(this);
    auto* outer = new QVBoxLayout(whole);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->setSpacing(0);
    auto* area = new QScrollArea(whole);
    area->setObjectName(QStringLiteral("recordPage"));
    area->setAccessibleName(tr("The record"));
    area->setProperty("reads", true);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* box = new QWidget(area);
    box->setBackgroundRole(QPalette::Base);
    box->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_title = new RoleLabel(TextRole::title, box);
    m_title->setTextFormat(Qt::RichText);
    m_title->setContentsMargins(22, 14, 22, 0);
    m_claim = new QLabel(box);
    m_claim->setContentsMargins(22, 2, 22, 8);
    m_claim->setWordWrap(true);
    m_evidence = new EvidenceView(m_desk, box);
    m_evidence->setObjectName(QStringLiteral("evidence"));
    m_evidence->setMinimumHeight(220);
    m_facts = new QLabel(box);
    m_facts->setObjectName(QStringLiteral("facts"));
    m_facts->setContentsMargins(22, 8, 22, 8);
    m_facts->setWordWrap(true);
    m_facts->setTextFormat(Qt::RichText);
    m_decision = new DecisionBar(m_desk, whole);
    column->addWidget(m_title);
    column->addWidget(m_claim);
    column->addWidget(m_evidence, 1);
    column->addWidget(m_facts);
    area->setWidget(box);
    outer->addWidget(area, 1);
    outer->addWidget(m_decision);
    return whole;
}

QWidget* ReviewView::buildReasons()
{
    auto* area = new QScrollArea(this);
    area->setObjectName(QStringLiteral("reviewReasons"));
    area->setAccessibleName(tr("What speaks for it and against it"));
    area->setProperty("reads", true);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* box = new QWidget(area);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_standing = new QLabel(box);
    m_standing->setObjectName(QStringLiteral("standing"));
    m_standing->setContentsMargins(14, 12, 14, 10);
    m_standing->setWordWrap(true);
    m_standing->setTextFormat(Qt::RichText);
    m_findings = new FindingList(box);
    m_findings->setObjectName(QStringLiteral("reviewFindings"));
    m_findings->setMinimumHeight(160);
    m_history = new QLabel(box);
    m_history->setContentsMargins(14, 10, 14, 12);
    m_history->setWordWrap(true);
    m_history->setTextFormat(Qt::RichText);
    column->addWidget(m_standing);
    column->addWidget(m_findings, 1);
    column->addWidget(m_history);
    area->setWidget(box);
    return area;
}

void ReviewView::buildCommands()
{
    addCommand(tr("Decide"), QKeySequence(Qt::CTRL | Qt::Key_Return), QStringLiteral("review-decide"), [this] { m_decision->advance(); });
    addCommand(tr("Next record"), QKeySequence(Qt::CTRL | Qt::Key_PageDown), QStringLiteral("review-next"), [this] { step(1); });
    addCommand(tr("Previous record"), QKeySequence(Qt::CTRL | Qt::Key_PageUp), QStringLiteral("review-previous"), [this] { step(-1); });
    addCommand(tr("Take my last decision back"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Backspace), QStringLiteral("review-undo"),
        [this] { m_desk.undoDecision(); });
    addCommand(tr("Open this record again…"), {}, QStringLiteral("review-reopen"), [this] {
        const QString why = m_prompts.line(this, tr("Open this record again"), tr("What is new? Another verifier will decide."), {});
        if (!why.isEmpty())
            m_desk.reopen(why);
    });
    addCommand(tr("Notice for the authority…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_A), QStringLiteral("review-notice"),
        [this] { writeNotice(); });
    addCommand(tr("The authority has been told…"), {}, QStringLiteral("review-told"), [this] {
        const QString to = m_prompts.line(this, tr("The authority has been told"), tr("Who was told?"), {});
        if (to.isEmpty())
            return;
        m_desk.recordTold(to, m_prompts.line(this, tr("The authority has been told"), tr("Their reference, if they gave one"), {}));
    });
    addCommand(tr("Routine records in a batch…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_B), QStringLiteral("review-batch"), [this] {
        if (m_bench.session() == nullptr)
            return;
        AuditDialog(m_bench, this).exec();
        m_desk.refresh();
    });
    addCommand(tr("The tree's page"), QKeySequence(Qt::CTRL | Qt::Key_T), QStringLiteral("review-tree"), [this] { m_desk.goToTree(); });
}

void ReviewView::writeNotice()
{
    if (!m_desk.page() || !m_noticeWriter)
        return;
    const VisitPage& visit = m_desk.page()->visit;
    const QString tree = visit.tree ? text(visit.tree->label) : tr("no tree");
    const QString path = m_prompts.fileToWrite(this, tr("Where the notice is to lie"),
                                               tr("notice %1 %2.pdf").arg(tree, text(visit.visit.date.text())), tr("Papers (*.pdf)"));
    if (path.isEmpty())
        return;
    if (const Status written = m_noticeWriter(*m_bench.session(), visit.visit.id, path); !written)
        m_bench.complain(written.error());
    else
        m_bench.say(tr("The notice lies in %1. Nobody has been told by it: send it, then note that you did.").arg(path));
}

void ReviewView::enter()
{
    m_desk.refresh();
}

void ReviewView::goTo(const Uid& noun)
{
    m_desk.show(noun);
}

bool ReviewView::shows(const Uid& noun) const
{
    return m_bench.session() != nullptr && visitPage(*m_bench.session(), noun).has_value();
}

void ReviewView::nextPane(int step)
{
    focusNextOf({m_queue, m_evidence, m_findings}, step);
}

void ReviewView::nextFinding()
{
    m_findings->setFocus(Qt::ShortcutFocusReason);
    m_findings->next();
}

void ReviewView::step(int by)
{
    const QModelIndex at = m_queue->currentIndex();
    const int row = at.isValid() ? at.row() + by : 0;
    if (row >= 0 && row < m_model->rowCount())
        m_queue->setCurrentIndex(m_model->index(row));
}

QStringList ReviewView::help() const
{
    return {tr("The list on the left stands in the order of what cannot wait; each record says why it stands there."),
            tr("Ctrl+Enter opens the decision: 1 accepts, 2 returns, 3 rejects. Digits pick reasons, Ctrl+Enter keeps it, Esc leaves it."),
            tr("In the photos , and . go to the other one, + and - zoom, T turns."),
            tr("Ctrl+Shift+A writes the notice of a find for the authority. It tells nobody by itself."),
            tr("Nobody decides on a record at which they were present, and a first find in new ground needs two verifiers.")};
}

void ReviewView::refreshPage()
{
    const bool filled = m_desk.page().has_value();
    m_stack->setCurrentIndex(filled || m_desk.count() > 0 ? 0 : 1);
    m_decision->refresh();
    if (!filled)
        return;
    const ReviewPage& page = *m_desk.page();
    const VisitPage& visit = page.visit;
    m_setting = true;
    m_queue->setCurrentIndex(m_model->indexOf(visit.visit.id));
    m_setting = false;
    m_where->setText(tr("%1 of %2").arg(m_queue->currentIndex().row() + 1).arg(m_desk.count()));
    m_title->setText(QStringLiteral("<b>%1</b> %2")
                         .arg(visit.tree ? text(visit.tree->label).toHtmlEscaped() : tr("no tree"),
                              visit.site ? text(visit.site->name).toHtmlEscaped() : QString()));
    m_claim->setText(claimText(visit, m_desk.pack()));
    m_evidence->refresh();
    m_facts->setText(factsHtml(visit, m_desk.pack()));
    m_standing->setText(standingHtml(page, m_desk.pack()));
    m_findings->setFindings(visit.findings, &m_desk.pack());
    m_history->setText(historyHtml(page));
}

} // namespace cupule::ui
