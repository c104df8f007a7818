#include "ui/training/cases_page.h"

#include <algorithm>
#include <array>
#include <tuple>

#include <QKeyEvent>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_practice.h"
#include "ui/shell/place.h"
#include "ui/theme/theme.h"
#include "ui/training/case_setup.h"
#include "ui/training/case_stage.h"
#include "ui/widgets/choice_card.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int besideCharacters = 105; // of the page's width, so that stage and questions stand side by side

/// Where an answer was one of two a guess is right half of the time, else less often.
std::array<int, 5> sureSteps(const AskedItem& item)
{
    return isYesNo(item.kind) ? std::array{50, 65, 80, 90, 99} : std::array{25, 50, 75, 90, 99};
}

QString outcome(const AnsweredItem& answer, const AskedItem& item, const Pack& pack)
{
    const QString mark = answer.right() ? QStringLiteral("✓") : QStringLiteral("✗");
    QString words = QStringLiteral("<p>%1 <b>%2</b> %3<br>").arg(mark, answer.right() ? CasesPage::tr("Right.") : CasesPage::tr("Not so."), askedText(item, pack).toHtmlEscaped());
    words += CasesPage::tr("You said: %1.").arg(saidText(item.kind, answer.given, pack).toHtmlEscaped());
    if (!answer.right())
        words += QLatin1Char(' ') + CasesPage::tr("The key: %1.").arg(saidText(item.kind, answer.truth, pack).toHtmlEscaped());
    if (item.kind == AskedKind::order && !answer.right()) {
        QStringList steps;
        for (const std::string& step : item.right)
            steps << custodyStepText(step).toHtmlEscaped();
        words += QLatin1Char(' ') + CasesPage::tr("One right order: %1.").arg(steps.join(QStringLiteral(", ")));
    }
    return words + QLatin1Char(' ') + becauseText(item, pack).toHtmlEscaped() + QStringLiteral("</p>");
}

} // namespace

CasesPage::CasesPage(Workbench& bench, QWidget* parent) : QWidget(parent), m_bench(bench), m_desk(bench, this)
{
    setObjectName(QStringLiteral("casesPage"));
    m_stack = new QStackedWidget(this);
    auto* area = new QScrollArea(m_stack);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setBackgroundRole(QPalette::Base);
    m_setup = new CaseSetup(m_desk, area);
    area->setWidget(m_setup);
    m_stack->addWidget(area);
    m_casePage = buildCase();
    m_stack->addWidget(m_casePage);
    m_stack->addWidget(buildEnd());
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_stack);
    connect(&m_desk, &CasesDesk::changed, this, &CasesPage::refresh);
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_shown = 0;
        m_asked = {};
        m_stack->setCurrentIndex(0);
    });
}

QWidget* CasesPage::buildCase()
{
    auto* box = new QWidget(m_stack);
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, box);
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(0);
    m_stage = new CaseStage(box);
    m_row->addWidget(m_stage, 3);
    m_row->addWidget(buildPanel(), 2);
    return box;
}

QWidget* CasesPage::buildPanel()
{
    m_panel = makePageArea(this);
    auto* box = new QWidget(m_panel);
    setGround(*box, "panel");
    m_panel->setWidget(box);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(16, 12, 16, 12);
    column->setSpacing(8);
    m_head = new RoleLabel(TextRole::heading, box);
    m_where = new RoleLabel(TextRole::caption, box, Tone::second);
    m_question = new RoleLabel(TextRole::title, box);
    m_given = new RoleLabel(TextRole::body, box, Tone::second);
    m_answers = new ChoiceRow(box);
    m_answers->setObjectName(QStringLiteral("caseAnswers"));
    m_answers->setAccessibleName(tr("Answers"));
    m_sureHead = new RoleLabel(TextRole::heading, tr("How sure are you?"), box);
    m_sure = new ChoiceRow(box);
    m_sure->setObjectName(QStringLiteral("caseSure"));
    m_sure->setAccessibleName(tr("How sure are you?"));
    m_feedback = new QLabel(box);
    m_feedback->setObjectName(QStringLiteral("caseFeedback"));
    m_feedback->setTextFormat(Qt::RichText);
    m_next = new KeyButton(tr("Next case"), box);
    m_next->setObjectName(QStringLiteral("nextCase"));
    m_next->setMain(true);
    m_next->setCap(tr("Enter"));
    for (QLabel* label : {m_head, m_where, m_question, m_given, m_sureHead, m_feedback}) {
        label->setWordWrap(true);
        column->addWidget(label);
        if (label == m_given)
            column->addWidget(m_answers);
        if (label == m_sureHead)
            column->addWidget(m_sure);
    }
    column->addWidget(m_next, 0, Qt::AlignLeft);
    column->addStretch(1);
    connect(m_answers, &ChoiceRow::choice, this, [this](const QString& id) { m_desk.give(utf8(id)); });
    connect(m_answers, &ChoiceRow::backAsked, &m_desk, &CasesDesk::back);
    connect(m_sure, &ChoiceRow::choice, this, [this](const QString& id) { m_desk.sure(id.toInt()); });
    connect(m_sure, &ChoiceRow::backAsked, &m_desk, &CasesDesk::back);
    connect(m_next, &QPushButton::clicked, &m_desk, &CasesDesk::next);
    return m_panel;
}

QWidget* CasesPage::buildEnd()
{
    auto* box = new QWidget(m_stack);
    setGround(*box, "page");
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(24, 18, 24, 18);
    m_end = new QTextBrowser(box);
    m_end->setObjectName(QStringLiteral("caseEnd"));
    m_end->setAccessibleName(tr("What came of it"));
    m_end->setFrameShape(QFrame::NoFrame);
    auto* buttons = new QHBoxLayout;
    auto* again = new KeyButton(tr("Another session"), box);
    again->setObjectName(QStringLiteral("anotherSession"));
    again->setMain(true);
    auto* results = new KeyButton(tr("To the results"), box);
    results->setObjectName(QStringLiteral("toResults"));
    buttons->addWidget(again);
    buttons->addWidget(results);
    buttons->addStretch(1);
    column->addWidget(m_end, 1);
    column->addLayout(buttons);
    connect(again, &QPushButton::clicked, &m_desk, &CasesDesk::stop);
    connect(results, &QPushButton::clicked, this, [this] {
        m_desk.stop();
        Q_EMIT resultsAsked();
    });
    return box;
}

void CasesPage::enter()
{
    if (m_desk.phase() == CasesDesk::Phase::setup)
        m_desk.refresh();
}

void CasesPage::nextPane(int step)
{
    if (m_stack->currentIndex() == 0)
        return focusNextOf(m_setup->findChildren<QWidget*>(QStringLiteral("caseCount")), step);
    focusNextOf(m_stack->currentWidget() == m_casePage ? QList<QWidget*>{m_answers, m_sure, m_next} : QList<QWidget*>{m_end}, step);
}

void CasesPage::refresh()
{
    switch (m_desk.phase()) {
    case CasesDesk::Phase::setup: m_stack->setCurrentIndex(0); m_shown = 0; m_asked = {}; return;
    case CasesDesk::Phase::done: m_stack->setCurrentIndex(2); refreshEnd(); return;
    default: break;
    }
    m_stack->setCurrentIndex(1);
    if (m_shown != m_desk.number()) {
        if (const PracticeCase* drawn = m_desk.drawn())
            m_stage->setDrawings(drawn->drawings);
        else
            m_stage->setPhoto(m_desk.picture());
        m_shown = m_desk.number();
    }
    refreshHead();
    const bool told = m_desk.phase() == CasesDesk::Phase::feedback;
    for (QWidget* asking : {static_cast<QWidget*>(m_question), static_cast<QWidget*>(m_given), static_cast<QWidget*>(m_answers)})
        asking->setVisible(!told);
    m_sureHead->setVisible(m_desk.phase() == CasesDesk::Phase::sureness);
    m_sure->setVisible(m_desk.phase() == CasesDesk::Phase::sureness);
    m_feedback->setVisible(told);
    m_next->setVisible(told);
    if (told)
        refreshFeedback();
    else
        refreshQuestion();
}

void CasesPage::refreshHead()
{
    const int planned = m_desk.round().session.plan.cases;
    m_head->setText(planned > 0 ? tr("Case %1 of %2").arg(m_desk.number()).arg(planned) : tr("Case %1").arg(m_desk.number()));
    if (const PracticeCase* at = m_desk.drawn()) {
        const Region* region = m_desk.pack().region(at->region);
        m_where->setText(tr("Met on %1, %2. Step %3.").arg(dayDate(at->date), region != nullptr ? text(region->name) : QString()).arg(at->step));
        m_where->setToolTip(difficultyText(difficultyStep(at->step)));
        return;
    }
    const PhotoCase& photo = m_desk.photo()->photoCase;
    m_where->setText(photo.date ? tr("A photo of %1.").arg(dayDate(*photo.date)) : tr("A photo."));
    m_where->setToolTip(QString());
}

void CasesPage::refreshQuestion()
{
    const AskedItem& item = m_desk.item();
    const Pack& pack = m_desk.pack();
    m_question->setText(tr("%1. %2").arg(m_desk.question() + 1).arg(askedText(item, pack)));
    std::vector<ChoiceRow::Choice> choices;
    for (const std::string& option : item.options)
        if (std::find(m_desk.order().begin(), m_desk.order().end(), option) == m_desk.order().end())
            choices.push_back({text(option), {}, optionText(item, option, pack), {}});
    const auto asked = std::tuple(m_desk.number(), m_desk.question(), m_desk.order().size());
    if (asked != m_asked) // laid out once: waiting for how sure changes no answer
        m_answers->setChoices(choices, ChoiceCard::Shape::words);
    m_asked = asked;
    QStringList order;
    for (std::size_t i = 0; i < m_desk.order().size(); ++i)
        order << tr("%1. %2").arg(i + 1).arg(custodyStepText(m_desk.order()[i]));
    m_given->setText(order.join(QLatin1Char('\n')));
    m_given->setVisible(!order.isEmpty());
    const bool waits = m_desk.phase() == CasesDesk::Phase::sureness;
    m_answers->setVisible(!waits || !choices.empty());
    m_answers->setChosen(waits ? text(m_desk.given()) : QString());
    if (waits) {
        const std::array words{tr("A guess"), tr("Rather unsure"), tr("Fairly sure"), tr("Sure"), tr("Certain")};
        const std::array steps = sureSteps(item);
        std::vector<ChoiceRow::Choice> sure;
        for (std::size_t i = 0; i < steps.size(); ++i)
            sure.push_back({QString::number(steps[i]), {}, words[i], tr("%1 in 100").arg(steps[i])});
        m_sure->setChoices(sure, ChoiceCard::Shape::words);
        m_sure->setFocus(Qt::OtherFocusReason);
    } else {
        m_answers->setFocus(Qt::OtherFocusReason);
    }
}

void CasesPage::refreshFeedback()
{
    QString html;
    const auto& answers = m_desk.answers();
    const auto right = std::count_if(answers.begin(), answers.end(), [](const AnsweredItem& a) { return a.right(); });
    html += QStringLiteral("<h3>%1</h3>").arg(tr("%1 of %2 right").arg(right).arg(answers.size()));
    for (std::size_t i = 0; i < answers.size(); ++i)
        html += outcome(answers[i], m_desk.asked()[i], m_desk.pack());
    m_feedback->setText(html);
    m_next->setFocus(Qt::OtherFocusReason);
    m_panel->ensureVisible(0, 0);
}

void CasesPage::refreshEnd()
{
    int right = 0, total = 0;
    QString wrong;
    for (const GivenCase& given : m_desk.round().given)
        for (const AnsweredItem& item : given.items) {
            ++total;
            right += item.right() ? 1 : 0;
            if (!item.right())
                wrong += QStringLiteral("<li>%1</li>")
                             .arg(tr("Case %1, %2: you said %3, the key is %4.")
                                      .arg(given.number)
                                      .arg(subjectText(item.kind, item.kind == AskedKind::record ? std::string() : item.subject, m_desk.pack()),
                                           saidText(item.kind, item.given, m_desk.pack()), saidText(item.kind, item.truth, m_desk.pack()))
                                      .toHtmlEscaped());
        }
    QString html = QStringLiteral("<h2>%1</h2><p>%2</p>")
                       .arg(tr("The session is done"), tr("%1 of %2 questions were answered as the key has it. All of them are kept.").arg(right).arg(total));
    if (!wrong.isEmpty())
        html += QStringLiteral("<h3>%1</h3><ul>%2</ul>").arg(tr("Not as the key has it"), wrong);
    m_end->setHtml(html);
    m_end->setFocus(Qt::OtherFocusReason);
}

void CasesPage::keyPressEvent(QKeyEvent* event)
{
    const bool onCase = m_stack->currentWidget() == m_casePage;
    if (onCase && event->key() == Qt::Key_Comma)
        m_stage->turn(-1);
    else if (onCase && event->key() == Qt::Key_Period)
        m_stage->turn(1);
    else if (onCase && event->key() == Qt::Key_Escape)
        m_desk.stop();
    else if (onCase && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter))
        m_desk.next();
    else
        QWidget::keyPressEvent(event);
}

void CasesPage::place()
{
    const bool beside = width() > fontMetrics().averageCharWidth() * besideCharacters;
    m_row->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_row->setStretch(1, beside ? 2 : 5); // below the drawings the questions need more of the height
}

void CasesPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    place();
}

void CasesPage::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        place();
}

} // namespace cupule::ui
