#include "ui/review/review_view.h"

#include <algorithm>

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QStackedWidget>
#include <QTimer>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/map/small_map.h"
#include "ui/review/agreement_dialog.h"
#include "ui/review/audit_dialog.h"
#include "ui/review/conflict_dialog.h"
#include "ui/review/decision_bar.h"
#include "ui/review/evidence_view.h"
#include "ui/review/narrow_dialog.h"
#include "ui/review/queue_list.h"
#include "ui/review/review_map.h"
#include "ui/review/review_words.h"
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
    connect(m_decision, &DecisionBar::kept, this, [this] { // what had the focus is gone
        (m_queue->isVisible() ? static_cast<QWidget*>(m_queue) : m_evidence)->setFocus(Qt::OtherFocusReason);
    });
    connect(&m_desk, &ReviewDesk::pageChanged, this, &ReviewView::refreshPage);
    connect(&m_desk, &ReviewDesk::listChanged, this, [this] {
        refreshNarrowing();
        Q_EMIT noteChanged(m_desk.waiting() > 0 ? QString::number(m_desk.waiting()) : QString());
    });
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
    addCommand(tr("Find among these records"), QKeySequence::Find, QStringLiteral("review-find"), [this] {
        m_words->setFocus(Qt::ShortcutFocusReason);
        m_words->selectAll();
    });
    addCommand(tr("Which records…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_F), QStringLiteral("review-narrow"), [this] { askNarrow(); });
    addCommand(tr("All that wait"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_E), QStringLiteral("review-all"), [this] { m_desk.narrow({}); });
    addCommand(tr("Settle the versions of this record…"), QKeySequence(Qt::CTRL | Qt::Key_K), QStringLiteral("review-versions"),
        [this] { askVersions(); });
    addCommand(tr("Versions that do not agree…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_K), QStringLiteral("review-conflicts"),
        [this] { askConflicts(); });
    addCommand(tr("How far verifiers agree…"), {}, QStringLiteral("review-agreement"), [this] { showAgreement(); });
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

void ReviewView::askNarrow()
{
    if (m_bench.session() == nullptr)
        return;
    NarrowDialog dialog(m_desk, this);
    if (dialog.exec() == QDialog::Accepted)
        m_desk.narrow(dialog.wanted());
}

void ReviewView::askVersions()
{
    if (m_desk.page() && m_desk.page()->conflictingFields > 0)
        askSettle(m_desk.page()->visit.visit.id);
}

void ReviewView::askConflicts()
{
    if (m_bench.session() == nullptr)
        return;
    ConflictList list(m_desk.conflicts(), this);
    if (list.exec() == QDialog::Accepted && !list.entity().isNull())
        askSettle(list.entity());
}

void ReviewView::askSettle(const Uid& entity)
{
    if (auto page = m_desk.conflict(entity))
        ConflictDialog(m_desk, m_prompts, std::move(*page), this).exec();
}

void ReviewView::showAgreement()
{
    if (m_bench.session() == nullptr)
        return;
    if (const auto agreement = m_desk.agreement())
        AgreementDialog(*agreement, this).exec();
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
    focusNextOf({m_queue, m_evidence, m_map->canvas(), m_findings}, step);
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
            tr("Ctrl+F finds words among the records, Ctrl+Shift+F narrows the list and keeps a choice under a name, Ctrl+Shift+E shows all."),
            tr("Ctrl+Enter opens the decision: 1 accepts, 2 returns, 3 rejects, 4 accepts on a laboratory’s report. Digits pick reasons, "
               "Ctrl+Enter keeps it, Esc leaves it."),
            tr("In the photos , and . go to the other one, + and - zoom, T turns, [ and ] darken and brighten, F shows the next figure."),
            tr("Ctrl+K settles two versions of a record, Ctrl+Shift+K lists everything that has versions which do not agree."),
            tr("Ctrl+Shift+H hides exact places and names on every page while visitors see the screen."),
            tr("Ctrl+Shift+A writes the notice of a find for the authority. It tells nobody by itself."),
            tr("Nobody decides on a record at which they were present, and a first find in new ground needs two verifiers.")};
}

/// What the list is narrowed to, in words and in the fields above it.
void ReviewView::refreshNarrowing()
{
    const QueueWanted& wanted = m_desk.wanted();
    QString words;
    if (wanted.isPlain())
        words = QStringLiteral("<b>%1</b>&nbsp;&nbsp;%2").arg(tr("To decide")).arg(m_desk.count());
    else
        words = QStringLiteral("<b>%1</b><br>%2")
                    .arg(m_desk.isCut() ? tr("The first %1").arg(m_desk.count()) : tr("%n records", nullptr, m_desk.count()),
                         wantedText(wanted, m_desk).toHtmlEscaped() + QStringLiteral(" · ") + tr("Ctrl+Shift+E: all that wait"));
    m_count->setText(words);
    if (m_words->text().trimmed() != text(wanted.words))
        m_words->setText(text(wanted.words));
    m_which->setCurrentIndex(std::max(0, m_which->findData(text(wanted.which))));
}

void ReviewView::refreshPage()
{
    const bool filled = m_desk.page().has_value();
    m_stack->setCurrentIndex(filled || m_desk.waiting() > 0 || !m_desk.wanted().isPlain() ? 0 : 1);
    m_decision->refresh();
    for (QWidget* part : std::initializer_list<QWidget*>{m_evidence, m_facts, m_map, m_findings, m_standing, m_history})
        part->setVisible(filled);
    if (!filled) {
        m_title->setText(tr("No record matches"));
        m_claim->setText(tr("Ctrl+Shift+E shows all that wait, Ctrl+Shift+F another choice."));
        m_versions->hide();
        m_versionWords->hide();
        return;
    }
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
    m_versions->setVisible(page.conflictingFields > 0);
    m_versionWords->setVisible(page.conflictingFields > 0);
    m_versionWords->setText(tr("Two versions of this record do not agree: %n fields.", nullptr, page.conflictingFields));
    m_map->setVisible(page.at.has_value());
    if (page.at)
        m_map->setSceneSoon(reviewScene(page, *m_bench.session()));
    m_standing->setText(standingHtml(page, m_desk.pack()));
    m_findings->setFindings(visit.findings, &m_desk.pack());
    m_history->setText(historyHtml(page, m_desk.pack()));
}

} // namespace cupule::ui
