#include "ui/review/audit_dialog.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QListWidget>
#include <QProgressBar>
#include <QScrollArea>
#include <QShortcut>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_audit.h"
#include "ui/review/audit_make_page.h"
#include "ui/review/audit_round_page.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

enum Page { batchPage, makePage, roundPage };

} // namespace

AuditDialog::AuditDialog(Workbench& bench, QWidget* parent) : QDialog(parent), m_desk(bench)
{
    setObjectName(QStringLiteral("auditDialog"));
    setWindowTitle(tr("Routine records in a batch"));
    resize(onAnyScreen({1120, 680}));
    m_pages = new QStackedWidget(this);
    m_pages->addWidget(buildBatch());
    m_making = new AuditMakePage(m_desk, m_pages);
    m_pages->addWidget(m_making);
    m_round = new AuditRoundPage(m_desk, m_pages);
    m_pages->addWidget(m_round);
    m_trouble = new RoleLabel(TextRole::body, this);
    m_trouble->setObjectName(QStringLiteral("auditTrouble"));
    m_trouble->setWordWrap(true);
    m_trouble->setContentsMargins(18, 0, 18, 6);
    m_bar = new QProgressBar(this);
    auto* right = new QVBoxLayout;
    right->addWidget(m_pages, 1);
    right->addWidget(m_trouble);
    right->addWidget(m_bar);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(buildList(), 1);
    row->addLayout(right, 3);
    connect(m_making, &AuditMakePage::made, this, &AuditDialog::showBatch);
    connect(m_making, &AuditMakePage::left, this, [this] { showBatch(chosen()); });
    connect(m_round, &AuditRoundPage::ended, this, [this] { showBatch(chosen()); });
    connect(&m_desk, &AuditDesk::changed, this, &AuditDialog::refresh);
    connect(&m_desk, &AuditDesk::progressed, this, [this](qint64 done, qint64 whole) {
        m_bar->setRange(0, whole > 0 ? 1000 : 0);
        m_bar->setValue(whole > 0 ? static_cast<int>(done * 1000 / whole) : 0);
    });
    for (const int key : {Qt::Key_Return, Qt::Key_Enter})
        connect(new QShortcut(QKeySequence(Qt::CTRL | static_cast<Qt::Key>(key)), this), &QShortcut::activated, this, [this] {
            if (m_pages->currentIndex() == roundPage)
                m_round->advance();
        });
    m_desk.refresh();
    if (m_list->count() > 0)
        m_list->setCurrentRow(0);
    refreshBatch();
}

QWidget* AuditDialog::buildList()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 12);
    auto* head = new RoleLabel(TextRole::heading, tr("Batches"), box);
    head->setContentsMargins(14, 12, 14, 4);
    m_list = new QListWidget(box);
    m_list->setObjectName(QStringLiteral("auditList"));
    m_list->setAccessibleName(tr("Batches, the newest first"));
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setWordWrap(true);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_make = new KeyButton(tr("Make a batch…"), box);
    m_make->setObjectName(QStringLiteral("auditNew"));
    m_make->setAutoDefault(false);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(14, 0, 14, 0);
    row->addWidget(m_make);
    column->addWidget(head);
    column->addWidget(m_list, 1);
    column->addLayout(row);
    connect(m_list, &QListWidget::currentRowChanged, this, [this] { showBatch(chosen()); });
    connect(m_make, &QPushButton::clicked, this, &AuditDialog::showMaking);
    return box;
}

KeyButton* AuditDialog::addButton(const QString& words, const char* name, QLayout* row)
{
    auto* button = new KeyButton(words, m_pages);
    button->setObjectName(QString::fromLatin1(name));
    button->setAutoDefault(false); // Enter alone must decide nothing
    row->addWidget(button);
    return button;
}

QWidget* AuditDialog::buildBatch()
{
    QScrollArea* area = makeReadingArea("auditBatch", tr("The batch"), m_pages);
    auto* box = new QWidget(area);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(18, 12, 18, 12);
    column->setSpacing(10);
    m_title = new RoleLabel(TextRole::title, box);
    m_claim = new RoleLabel(TextRole::heading, box);
    m_claim->setObjectName(QStringLiteral("auditClaim"));
    m_more = new RoleLabel(TextRole::body, box);
    m_more->setObjectName(QStringLiteral("auditMore"));
    for (QLabel* label : {m_title, m_claim, m_more}) {
        label->setWordWrap(true);
        column->addWidget(label);
    }
    auto* buttons = new QVBoxLayout;
    m_look = addButton(tr("Look at the records…"), "auditLook", buttons);
    m_finish = addButton(tr("Close the batch"), "auditFinish", buttons);
    m_giveUp = addButton(tr("Give the batch up"), "auditGiveUp", buttons);
    m_undo = addButton(tr("Take the acceptance back"), "auditUndo", buttons);
    m_look->setMain(true);
    m_finish->setMain(true);
    auto* row = new QHBoxLayout;
    row->addLayout(buttons);
    row->addStretch(1);
    column->addLayout(row);
    column->addStretch(1);
    area->setWidget(box);
    connect(m_look, &QPushButton::clicked, this, [this] { showRound(chosen()); });
    connect(m_finish, &QPushButton::clicked, this, [this] { m_desk.finish(chosen()); });
    connect(m_giveUp, &QPushButton::clicked, this, [this] { m_desk.giveUp(chosen()); });
    connect(m_undo, &QPushButton::clicked, this, [this] { m_desk.undo(chosen()); });
    return area;
}

Uid AuditDialog::chosen() const
{
    const int at = m_list->currentRow();
    const auto& lines = m_desk.lines();
    return at >= 0 && at < static_cast<int>(lines.size()) ? lines[static_cast<std::size_t>(at)].id : Uid{};
}

void AuditDialog::showMaking()
{
    m_pages->setCurrentIndex(makePage);
    m_making->begin();
}

void AuditDialog::showRound(const Uid& audit)
{
    m_pages->setCurrentIndex(roundPage);
    m_round->begin(audit);
}

void AuditDialog::showBatch(const Uid& audit)
{
    const auto& lines = m_desk.lines();
    for (int i = 0; i < static_cast<int>(lines.size()); ++i)
        if (lines[static_cast<std::size_t>(i)].id == audit && i != m_list->currentRow()) {
            const QSignalBlocker quiet(m_list);
            m_list->setCurrentRow(i);
        }
    m_pages->setCurrentIndex(batchPage);
    m_desk.refresh();
}

void AuditDialog::reject()
{
    if (m_desk.busy())
        m_desk.cancel();
    else if (m_pages->currentIndex() == roundPage && m_round->retreat())
        return;
    else if (m_pages->currentIndex() != batchPage)
        showBatch(chosen());
    else
        QDialog::reject();
}

void AuditDialog::refresh()
{
    const Uid at = chosen();
    {
        const QSignalBlocker quiet(m_list);
        const int row = std::max(0, m_list->currentRow());
        m_list->clear();
        for (const AuditLine& line : m_desk.lines()) {
            m_list->addItem(tr("Batch %1: %2 records, %3").arg(line.number).arg(line.records).arg(auditStateWord(line.state)));
            if (line.id == at)
                m_list->setCurrentRow(m_list->count() - 1);
        }
        if (m_list->currentRow() < 0 && m_list->count() > 0)
            m_list->setCurrentRow(std::min(row, m_list->count() - 1));
    }
    m_trouble->setText(m_desk.trouble());
    m_trouble->setVisible(!m_desk.trouble().isEmpty());
    m_bar->setVisible(m_desk.busy());
    if (m_desk.busy())
        m_bar->setRange(0, 0);
    for (KeyButton* button : {m_make, m_look, m_finish, m_giveUp, m_undo})
        button->setEnabled(!m_desk.busy());
    refreshBatch();
    if (isVisible() && focusWidget() == nullptr && !m_desk.busy()) // the button that was pressed is gone
        m_list->setFocus(Qt::OtherFocusReason);
}

void AuditDialog::refreshBatch()
{
    const auto page = m_desk.page(chosen());
    const bool open = page && page->line.state == AuditState::open;
    const bool complete = open && page->line.answered == page->line.toAnswer;
    m_look->setVisible(open && page->line.forMe && !complete);
    m_finish->setVisible(open && page->line.mine && complete);
    m_giveUp->setVisible(open && page->line.mine);
    m_undo->setVisible(page && page->line.state == AuditState::passed && page->line.mine);
    if (!page) {
        m_title->setText(tr("No batch yet"));
        m_claim->setText(tr("Many routine records of “nothing seen” can be accepted together."));
        m_more->setText(tr("Make a batch, and another verifier looks at some of its records without being told which."));
        return;
    }
    const AuditLine& line = page->line;
    m_title->setText(tr("Batch %1, %2").arg(line.number).arg(momentText(line.made)));
    m_claim->setText(auditClaimText(*page));
    QStringList more{tr("%1 records, by %2; %3 looks at the drawn ones. Wanted: %4 confidence that %5 wrong do not go unnoticed.")
                         .arg(line.records)
                         .arg(auditPerson(line.maker), auditPerson(line.auditor), confidenceText(page->confidence),
                              confidenceText(page->tolerable))};
    if (open && !complete)
        more << (line.forMe ? tr("The round can be left at any record and taken up again.")
                            : tr("It waits for %1.").arg(auditPerson(line.auditor)));
    if (complete)
        more << (line.mine ? tr("The round is complete.") : tr("The round is complete. %1 closes the batch.").arg(auditPerson(line.maker)));
    more << auditGroundsText(*page);
    if (page->result) {
        for (const AuditNamed& record : page->result->disagreements)
            more << auditDisagreementText(record, m_desk.pack());
        for (const AuditNamed& record : page->result->left)
            more << tr("%1, %2, left the batch. %3").arg(text(record.treeLabel), plainDate(record.date, 0), auditLeftText(record.why));
    }
    m_more->setText(more.join(QStringLiteral("\n\n")));
}

} // namespace cupule::ui
