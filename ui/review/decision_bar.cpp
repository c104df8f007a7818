#include "ui/review/decision_bar.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/review/review_desk.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

DecisionBar::DecisionBar(ReviewDesk& desk, QWidget* parent) : QFrame(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("decisionBar"));
    m_steps = new QStackedWidget(this);
    m_steps->addWidget(buildClosed());
    m_steps->addWidget(buildChoice());
    m_steps->addWidget(buildReasons());
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 8, 16, 8);
    column->addWidget(m_steps);
}

QWidget* DecisionBar::buildClosed()
{
    auto* step = new QWidget(m_steps);
    auto* row = new QHBoxLayout(step);
    row->setContentsMargins(0, 0, 0, 0);
    m_open = new KeyButton(tr("Decide…"), step);
    m_open->setObjectName(QStringLiteral("decide"));
    m_open->setCap(QStringLiteral("Ctrl+Enter"));
    m_why = new QLabel(step);
    m_why->setObjectName(QStringLiteral("mayNot"));
    m_why->setWordWrap(true);
    row->addWidget(m_open);
    row->addWidget(m_why, 1);
    connect(m_open, &QPushButton::clicked, this, &DecisionBar::advance);
    return step;
}

QWidget* DecisionBar::buildChoice()
{
    auto* step = new QWidget(m_steps);
    auto* grid = new QGridLayout(step); // two by two: four in a row are wider than a small screen where the text is large
    grid->setContentsMargins(0, 0, 0, 0);
    struct Way {
        Outcome outcome;
        QString words, cap, name;
        bool laboratory = false;
    };
    for (const Way& way : {Way{Outcome::accept, tr("Accept"), QStringLiteral("1"), QStringLiteral("accept")},
                           Way{Outcome::giveBack, tr("Return…"), QStringLiteral("2"), QStringLiteral("giveBack")},
                           Way{Outcome::reject, tr("Reject…"), QStringLiteral("3"), QStringLiteral("reject")},
                           Way{Outcome::accept, tr("Accept on a report…"), QStringLiteral("4"), QStringLiteral("acceptOnReport"), true}}) {
        auto* button = new KeyButton(way.words, step);
        button->setObjectName(way.name);
        button->setCap(way.cap);
        button->setAutoDefault(false);
        button->installEventFilter(this);
        grid->addWidget(button, static_cast<int>(m_outcomes.size() / 2), static_cast<int>(m_outcomes.size() % 2));
        m_outcomes.append(button);
        connect(button, &QPushButton::clicked, this,
                [this, outcome = way.outcome, laboratory = way.laboratory] { choose(outcome, laboratory); });
    }
    auto* away = new QLabel(tr("Esc leaves it undecided."), step);
    away->setWordWrap(true);
    grid->addWidget(away, 0, 2, 2, 1);
    grid->setColumnStretch(2, 1);
    return step;
}

QWidget* DecisionBar::buildReasons()
{
    auto* step = new QWidget(m_steps);
    auto* column = new QVBoxLayout(step);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    m_reasonHead = new RoleLabel(TextRole::heading, step);
    m_reasons = new QListWidget(step);
    m_reasons->setObjectName(QStringLiteral("reasons"));
    m_reasons->setAccessibleName(tr("Reasons"));
    m_reasons->setWordWrap(true);
    m_reasons->installEventFilter(this);
    auto* row = new QHBoxLayout;
    m_remark = new QLineEdit(step);
    m_remark->setObjectName(QStringLiteral("decisionRemark"));
    m_remark->setAccessibleName(tr("Remark to the observer"));
    m_remark->setPlaceholderText(tr("a remark to the observer, in plain words"));
    connect(m_remark, &QLineEdit::textChanged, this, &DecisionBar::refreshPreview);
    m_remark->installEventFilter(this);
    m_report = new QLineEdit(step);
    m_report->setObjectName(QStringLiteral("reportNumber"));
    m_report->setAccessibleName(tr("Number of a laboratory report"));
    m_report->setPlaceholderText(tr("number of the laboratory’s report"));
    m_report->installEventFilter(this);
    m_keep = new KeyButton(tr("Keep the decision"), step);
    m_keep->setObjectName(QStringLiteral("keepDecision"));
    m_keep->setCap(QStringLiteral("Ctrl+Enter"));
    m_keep->setAutoDefault(false);
    row->addWidget(m_remark, 1);
    row->addWidget(m_keep);
    m_preview = new RoleLabel(TextRole::caption, step, Tone::second);
    m_preview->setObjectName(QStringLiteral("observerReads"));
    m_preview->setTextFormat(Qt::PlainText);
    m_preview->setWordWrap(true);
    column->addWidget(m_reasonHead);
    column->addWidget(m_report);
    column->addWidget(m_reasons);
    column->addLayout(row);
    column->addWidget(m_preview);
    setTabOrder(m_report, m_reasons);
    setTabOrder(m_reasons, m_remark);
    connect(m_reasons, &QListWidget::itemChanged, this, &DecisionBar::refreshPreview);
    connect(m_keep, &QPushButton::clicked, this, &DecisionBar::keep);
    return step;
}

void DecisionBar::refresh()
{
    m_steps->setCurrentIndex(0);
    const bool filled = m_desk.page().has_value();
    const std::string mayNot = filled ? m_desk.page()->mayNot : std::string();
    const bool submitted = filled && (m_desk.page()->visit.state == RecordState::submitted || m_desk.page()->visit.correctionWaits);
    m_open->setVisible(filled && mayNot.empty() && submitted);
    QString why;
    if (filled && !submitted)
        why = tr("Decided: %1. It can be opened again from the menu; then somebody else decides.").arg(stateWord(m_desk.page()->visit.state));
    else if (!mayNot.empty())
        why = mayNotText(mayNot);
    else if (filled && m_desk.page()->conflict)
        why = tr("Two decisions disagree, you are the third: yours settles it.");
    else if (filled && m_desk.page()->oneOfTwo)
        why = tr("One of two: another verifier has decided. What they decided shows once you have.");
    else if (filled && m_desk.page()->newGround)
        why = tr("New ground: accepting it needs two verifiers.");
    m_why->setText(why);
    setMaximumHeight(m_steps->currentWidget()->sizeHint().height() + 24);
}

void DecisionBar::advance()
{
    if (m_steps->currentIndex() == 2) {
        keep();
        return;
    }
    if (m_steps->currentIndex() == 1 || !m_open->isVisibleTo(this))
        return;
    m_steps->setCurrentIndex(1);
    m_outcomes.first()->setFocus(Qt::OtherFocusReason);
}

void DecisionBar::choose(Outcome outcome, bool laboratory)
{
    m_outcome = outcome;
    m_laboratory = laboratory;
    fillReasons();
    m_reasonHead->setText(laboratory                     ? tr("Accept on a laboratory’s report. Its number, then a digit for a reason:")
                          : outcome == Outcome::accept   ? tr("Accept. A reason may be given, a digit picks it:")
                          : outcome == Outcome::giveBack ? tr("Return it. What is asked for? A digit picks:")
                                                         : tr("Reject. Why? A digit picks:"));
    m_report->setVisible(laboratory);
    m_remark->clear();
    m_report->clear();
    refreshPreview();
    m_steps->setCurrentIndex(2);
    setMaximumHeight(QWIDGETSIZE_MAX);
    m_reasons->setCurrentRow(0);
    if (laboratory)
        m_report->setFocus(Qt::OtherFocusReason);
    else
        m_reasons->setFocus(Qt::OtherFocusReason);
}

void DecisionBar::fillReasons()
{
    m_reasons->clear();
    int digit = 1;
    for (const Reason* reason : m_desk.reasonsFor(m_outcome)) {
        const QString cap = digit <= 9 ? QStringLiteral("%1  ").arg(digit) : QStringLiteral("    ");
        auto* item = new QListWidgetItem(cap + text(reason->sentence), m_reasons);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        item->setCheckState(Qt::Unchecked);
        item->setData(Qt::UserRole, text(reason->id));
        item->setToolTip(text(reason->whatToDo));
        ++digit;
    }
    m_reasons->setFixedHeight(std::min(220, std::max(40, (m_reasons->sizeHintForRow(0) + 2) * m_reasons->count() + 8)));
}

/// The reasons in the pack's words for observers, what to do, and the remark: as they will read it.
void DecisionBar::refreshPreview()
{
    QStringList words;
    for (int i = 0; i < m_reasons->count(); ++i) {
        if (m_reasons->item(i)->checkState() != Qt::Checked)
            continue;
        if (const Reason* reason = m_desk.pack().reason(utf8(m_reasons->item(i)->data(Qt::UserRole).toString())))
            words << text(reason->sentence) << text(reason->whatToDo);
    }
    if (const QString remark = m_remark->text().trimmed(); !remark.isEmpty())
        words << remark;
    words.removeAll(QString());
    m_preview->setText(words.isEmpty() ? tr("The observer reads only what is chosen here.")
                                       : tr("The observer reads: %1").arg(words.join(QLatin1Char(' '))));
}

void DecisionBar::toggleReason(int row)
{
    if (QListWidgetItem* item = m_reasons->item(row)) {
        item->setCheckState(item->checkState() == Qt::Checked ? Qt::Unchecked : Qt::Checked);
        m_reasons->setCurrentRow(row);
    }
}

void DecisionBar::keep()
{
    std::vector<std::string> reasons;
    for (int i = 0; i < m_reasons->count(); ++i)
        if (m_reasons->item(i)->checkState() == Qt::Checked)
            reasons.push_back(utf8(m_reasons->item(i)->data(Qt::UserRole).toString()));
    if (m_desk.decide(m_outcome, reasons, m_remark->text().trimmed(), m_laboratory, m_report->text().trimmed())) {
        refresh();
        Q_EMIT kept();
    }
}

void DecisionBar::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && m_steps->currentIndex() > 0) {
        refresh();
        m_open->setFocus(Qt::OtherFocusReason);
        return;
    }
    if (m_steps->currentIndex() == 1 && event->modifiers() == Qt::NoModifier) {
        const int at = event->key() - Qt::Key_1;
        if (at >= 0 && at < m_outcomes.size()) {
            m_outcomes[at]->click();
            return;
        }
    }
    QFrame::keyPressEvent(event);
}

bool DecisionBar::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress)
        return QFrame::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Escape) {
        keyPressEvent(key);
        return true;
    }
    if (watched == m_reasons && key->modifiers() == Qt::NoModifier && key->key() >= Qt::Key_1 && key->key() <= Qt::Key_9) {
        toggleReason(key->key() - Qt::Key_1);
        return true;
    }
    if (watched == m_reasons && (key->key() == Qt::Key_Space || (key->key() == Qt::Key_Return && key->modifiers() == Qt::NoModifier))) {
        toggleReason(m_reasons->currentRow());
        return true;
    }
    if (m_steps->currentIndex() == 1 && key->modifiers() == Qt::NoModifier && key->key() >= Qt::Key_1 && key->key() <= Qt::Key_4) {
        keyPressEvent(key);
        return true;
    }
    return QFrame::eventFilter(watched, event);
}

} // namespace cupule::ui
