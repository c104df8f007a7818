// How the place Review is put together.

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words_review.h"
#include "ui/map/small_map.h"
#include "ui/review/decision_bar.h"
#include "ui/review/evidence_view.h"
#include "ui/review/queue_list.h"
#include "ui/review/review_view.h"
#include "ui/theme/theme.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/rich_label.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

QWidget* ReviewView::buildQueue()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_count = new QLabel(box);
    m_count->setObjectName(QStringLiteral("queueCount"));
    m_count->setWordWrap(true);
    m_count->setContentsMargins(14, 12, 14, 4);
    m_words = new QLineEdit(box);
    m_words->setObjectName(QStringLiteral("queueWords"));
    m_words->setAccessibleName(tr("Words to find among these records"));
    m_words->setPlaceholderText(tr("words of tree, site, note"));
    m_words->setClearButtonEnabled(true);
    m_which = new QComboBox(box);
    m_which->setObjectName(QStringLiteral("queueWhich"));
    m_which->setAccessibleName(tr("Which records"));
    m_which->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon); // long words must not push the list out
    m_which->setMinimumContentsLength(8);
    auto* more = new KeyButton(tr("More…"), box);
    more->setObjectName(QStringLiteral("queueMore"));
    more->setAutoDefault(false);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(14, 0, 14, 8);
    row->addWidget(m_which, 1);
    row->addWidget(more);
    m_queue = new QListView(box);
    m_queue->setObjectName(QStringLiteral("queue"));
    m_queue->setAccessibleName(tr("Records to decide"));
    m_queue->setFrameShape(QFrame::NoFrame);
    m_queue->setUniformItemSizes(true);
    m_model = new QueueModel(m_desk, this);
    m_queue->setModel(m_model);
    m_queue->setItemDelegate(new QueueDelegate(*m_model, this));
    auto* words = new QHBoxLayout;
    words->setContentsMargins(14, 0, 14, 6);
    words->addWidget(m_words);
    column->addWidget(m_count);
    column->addLayout(words);
    column->addLayout(row);
    column->addWidget(m_queue, 1);
    buildNarrowing();
    connect(more, &QPushButton::clicked, this, &ReviewView::askNarrow);
    connect(m_queue->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
        const QueueLine* line = m_model->line(current.row());
        if (!m_setting && current.isValid() && line != nullptr)
            m_desk.show(line->line.id);
    });
    return box;
}

/// Typing narrows the list after a moment; Enter goes to its first record.
void ReviewView::buildNarrowing()
{
    m_typing = new QTimer(this);
    m_typing->setSingleShot(true);
    m_typing->setInterval(150);
    const auto narrow = [this] {
        m_typing->stop();
        QueueWanted wanted = m_desk.wanted();
        wanted.words = utf8(m_words->text().trimmed());
        wanted.which = utf8(m_which->currentData().toString());
        m_desk.narrow(wanted);
    };
    m_which->addItem(queuePartText({}), QString());
    for (const std::string& code : queueCodes())
        m_which->addItem(queuePartText(code), text(code));
    for (const char* part : {"corrections", "accepted", "rejected", "returned"})
        m_which->addItem(queuePartText(part), QString::fromLatin1(part));
    connect(m_words, &QLineEdit::textEdited, this, [this] { m_typing->start(); });
    connect(m_typing, &QTimer::timeout, this, narrow);
    connect(m_words, &QLineEdit::returnPressed, this, [this, narrow] {
        narrow();
        m_queue->setFocus(Qt::OtherFocusReason);
    });
    connect(m_which, &QComboBox::activated, this, narrow);
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
    QScrollArea* area = makeReadingArea("recordPage", tr("The record"), whole);
    auto* box = new QWidget(area);
    box->setBackgroundRole(QPalette::Base);
    box->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_title = new RoleLabel(TextRole::title, box);
    m_title->setTextFormat(Qt::RichText);
    m_title->setContentsMargins(22, 14, 22, 0);
    m_claim = new RichLabel(box);
    m_claim->setContentsMargins(22, 2, 22, 8);
    m_claim->setWordWrap(true);
    m_versionWords = new RoleLabel(TextRole::body, box);
    m_versionWords->setWordWrap(true);
    m_versions = new KeyButton(tr("Settle them…"), box);
    m_versions->setObjectName(QStringLiteral("versions"));
    m_versions->setCap(QStringLiteral("Ctrl+K"));
    m_versions->setAutoDefault(false);
    auto* versions = new QHBoxLayout;
    versions->setContentsMargins(22, 0, 22, 8);
    versions->addWidget(m_versions);
    versions->addWidget(m_versionWords, 1);
    connect(m_versions, &QPushButton::clicked, this, &ReviewView::askVersions);
    m_evidence = new EvidenceView(m_desk, box);
    m_evidence->setObjectName(QStringLiteral("evidence"));
    m_evidence->setMinimumHeight(220);
    m_facts = new RichLabel(box);
    m_facts->setObjectName(QStringLiteral("facts"));
    m_facts->setContentsMargins(22, 8, 22, 8);
    m_facts->setWordWrap(true);
    m_facts->setTextFormat(Qt::RichText);
    m_decision = new DecisionBar(m_desk, whole);
    column->addWidget(m_title);
    column->addWidget(m_claim);
    column->addLayout(versions);
    column->addWidget(m_evidence, 1);
    column->addWidget(m_facts);
    area->setWidget(box);
    outer->addWidget(area, 1);
    outer->addWidget(m_decision);
    return whole;
}

QWidget* ReviewView::buildReasons()
{
    QScrollArea* area = makeReadingArea("reviewReasons", tr("What speaks for it and against it"), this);
    auto* box = new QWidget(area);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_standing = new RichLabel(box);
    m_standing->setObjectName(QStringLiteral("standing"));
    m_standing->setContentsMargins(14, 12, 14, 10);
    m_standing->setWordWrap(true);
    m_standing->setTextFormat(Qt::RichText);
    m_map = new SmallMap(box);
    m_map->setObjectName(QStringLiteral("reviewMap"));
    m_map->setMinimumHeight(210);
    m_findings = new FindingList(box);
    m_findings->setObjectName(QStringLiteral("reviewFindings"));
    m_findings->setMinimumHeight(120);
    m_history = new RichLabel(box);
    m_history->setObjectName(QStringLiteral("reviewHistory"));
    m_history->setContentsMargins(14, 10, 14, 12);
    m_history->setWordWrap(true);
    m_history->setTextFormat(Qt::RichText);
    auto* map = new QHBoxLayout;
    map->setContentsMargins(14, 0, 14, 8);
    map->addWidget(m_map);
    column->addWidget(m_standing);
    column->addLayout(map);
    column->addWidget(m_findings);
    column->addWidget(m_history);
    column->addStretch(1);
    area->setWidget(box);
    connect(m_map, &SmallMap::nounAsked, this, [this](const Uid& noun) {
        if (shows(noun))
            m_desk.show(noun);
    });
    return area;
}

} // namespace cupule::ui
