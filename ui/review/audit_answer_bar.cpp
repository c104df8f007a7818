#include "ui/review/audit_answer_bar.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/review/audit_desk.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

KeyButton* plainButton(const QString& words, const char* name, const QString& cap, QWidget* parent)
{
    auto* button = new KeyButton(words, parent);
    button->setObjectName(QString::fromLatin1(name));
    button->setCap(cap);
    button->setAutoDefault(false); // Enter alone must answer nothing
    return button;
}

} // namespace

AuditAnswerBar::AuditAnswerBar(AuditDesk& desk, QWidget* parent) : QFrame(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("auditAnswerBar"));
    m_steps = new QStackedWidget(this);
    m_steps->addWidget(buildClosed());
    m_steps->addWidget(buildChoice());
    m_steps->addWidget(buildReasons());
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 0);
    column->addWidget(m_steps);
    reset();
}

QWidget* AuditAnswerBar::buildClosed()
{
    auto* step = new QWidget(m_steps);
    auto* row = new QHBoxLayout(step);
    row->setContentsMargins(0, 0, 0, 0);
    m_open = plainButton(tr("Answer…"), "auditAnswer", QStringLiteral("Ctrl+Enter"), step);
    auto* back = plainButton(tr("Last answer again"), "auditTakeBack", QString(), step);
    back->setKey(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Backspace), false);
    row->addWidget(m_open);
    row->addStretch(1);
    row->addWidget(back);
    connect(m_open, &QPushButton::clicked, this, &AuditAnswerBar::advance);
    connect(back, &QPushButton::clicked, this, &AuditAnswerBar::takeBackAsked);
    return step;
}

QWidget* AuditAnswerBar::buildChoice()
{
    auto* step = new QWidget(m_steps);
    auto* row = new QHBoxLayout(step);
    row->setContentsMargins(0, 0, 0, 0);
    struct Way {
        Outcome outcome;
        QString words;
        const char* name;
    };
    for (const Way& way : {Way{Outcome::accept, tr("I would accept it"), "auditAccept"},
                           Way{Outcome::giveBack, tr("Return it…"), "auditReturn"},
                           Way{Outcome::reject, tr("Reject it…"), "auditReject"}}) {
        auto* button = plainButton(way.words, way.name, QString::number(m_outcomes.size() + 1), step);
        button->installEventFilter(this);
        row->addWidget(button);
        m_outcomes.append(button);
        connect(button, &QPushButton::clicked, this, [this, outcome = way.outcome] { choose(outcome); });
    }
    row->addStretch(1);
    return step;
}

QWidget* AuditAnswerBar::buildReasons()
{
    auto* step = new QWidget(m_steps);
    auto* column = new QVBoxLayout(step);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    m_head = new RoleLabel(TextRole::heading, step);
    m_reasons = new QListWidget(step);
    m_reasons->setObjectName(QStringLiteral("auditReasons"));
    m_reasons->setAccessibleName(tr("Reasons"));
    m_reasons->setWordWrap(true);
    m_reasons->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_reasons->setMinimumHeight(90);
    m_reasons->installEventFilter(this);
    m_remark = new QLineEdit(step);
    m_remark->setObjectName(QStringLiteral("auditRemark"));
    m_remark->setAccessibleName(tr("Remark"));
    m_remark->setPlaceholderText(tr("a remark, in plain words"));
    m_remark->installEventFilter(this);
    auto* row = new QHBoxLayout;
    auto* keep = plainButton(tr("Keep the answer"), "auditKeep", QStringLiteral("Ctrl+Enter"), step);
    row->addWidget(m_remark, 1);
    row->addWidget(keep);
    column->addWidget(m_head);
    column->addWidget(m_reasons);
    column->addLayout(row);
    connect(keep, &QPushButton::clicked, this, &AuditAnswerBar::keep);
    return step;
}

void AuditAnswerBar::reset()
{
    m_steps->setCurrentIndex(0);
    setMaximumHeight(m_steps->currentWidget()->sizeHint().height() + 12);
}

void AuditAnswerBar::advance()
{
    if (m_steps->currentIndex() == 2) {
        keep();
    } else if (m_steps->currentIndex() == 0) {
        m_steps->setCurrentIndex(1);
        m_outcomes.first()->setFocus(Qt::OtherFocusReason);
    }
}

bool AuditAnswerBar::retreat()
{
    if (m_steps->currentIndex() == 0)
        return false;
    reset();
    m_open->setFocus(Qt::OtherFocusReason);
    return true;
}

void AuditAnswerBar::choose(Outcome outcome)
{
    if (outcome == Outcome::accept) {
        Q_EMIT answered(outcome, {}, {});
        return;
    }
    m_outcome = outcome;
    m_reasons->clear();
    int digit = 1;
    for (const Reason* reason : m_desk.reasonsFor(outcome)) {
        const QString cap = digit <= 9 ? QStringLiteral("%1  ").arg(digit) : QStringLiteral("    ");
        auto* item = new QListWidgetItem(cap + text(reason->sentence), m_reasons);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        item->setCheckState(Qt::Unchecked);
        item->setData(Qt::UserRole, text(reason->id));
        ++digit;
    }
    m_head->setText(outcome == Outcome::giveBack ? tr("Return it. What would you ask for? A digit picks:")
                                                 : tr("Reject it. Why? A digit picks:"));
    m_remark->clear();
    m_steps->setCurrentIndex(2);
    setMaximumHeight(QWIDGETSIZE_MAX);
    m_reasons->setCurrentRow(0);
    m_reasons->setFocus(Qt::OtherFocusReason);
}

void AuditAnswerBar::toggle(int row)
{
    if (QListWidgetItem* item = m_reasons->item(row)) {
        item->setCheckState(item->checkState() == Qt::Checked ? Qt::Unchecked : Qt::Checked);
        m_reasons->setCurrentRow(row);
    }
}

void AuditAnswerBar::keep()
{
    std::vector<std::string> reasons;
    for (int i = 0; i < m_reasons->count(); ++i)
        if (m_reasons->item(i)->checkState() == Qt::Checked)
            reasons.push_back(utf8(m_reasons->item(i)->data(Qt::UserRole).toString()));
    Q_EMIT answered(m_outcome, reasons, m_remark->text().trimmed());
}

void AuditAnswerBar::keyPressEvent(QKeyEvent* event)
{
    const int at = event->key() - Qt::Key_1;
    if (m_steps->currentIndex() == 1 && event->modifiers() == Qt::NoModifier && at >= 0 && at < m_outcomes.size()) {
        m_outcomes[at]->click();
        return;
    }
    QFrame::keyPressEvent(event);
}

bool AuditAnswerBar::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress)
        return QFrame::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    const bool plain = key->modifiers() == Qt::NoModifier;
    const bool digit = plain && key->key() >= Qt::Key_1 && key->key() <= Qt::Key_9;
    if (watched == m_reasons && digit) {
        toggle(key->key() - Qt::Key_1);
        return true;
    }
    if (watched == m_reasons && plain && (key->key() == Qt::Key_Space || key->key() == Qt::Key_Return)) {
        toggle(m_reasons->currentRow());
        return true;
    }
    if (watched == m_remark && plain && key->key() == Qt::Key_Return)
        return true; // Ctrl+Enter keeps, Enter alone does not
    if (m_steps->currentIndex() == 1 && digit) {
        keyPressEvent(key);
        return true;
    }
    return QFrame::eventFilter(watched, event);
}

} // namespace cupule::ui
