#include "ui/training/results_page.h"

#include <algorithm>
#include <cmath>
#include <span>

#include <QCheckBox>
#include <QComboBox>
#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words_practice.h"
#include "ui/shell/place.h"
#include "ui/theme/theme.h"
#include "ui/training/confusion_table.h"
#include "ui/training/learning_pictures.h"
#include "ui/training/results_table.h"
#include "ui/training/skill_dialog.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int besideCharacters = 125; // of the page's width, so that table and details stand side by side
constexpr int casesOffered = 20;
constexpr std::size_t nextListed = 5;      // of what to practise next, and what the cases are then about

QString decimals(double value)
{
    return QLocale().toString(value, 'f', 2);
}

} // namespace

ResultsPage::ResultsPage(Workbench& bench, Prompts& prompts, QWidget* parent) : QWidget(parent), m_bench(bench), m_prompts(prompts), m_desk(bench, this)
{
    setObjectName(QStringLiteral("resultsPage"));
    m_empty = new EmptyState(this);
    m_empty->setTitle(tr("No answers yet"), tr("Start with 20 cases: it takes about 15 minutes. What people find, miss and confuse then stands here, with "
                                               "how far the numbers can be believed."));
    connect(m_empty->addWay(QStringLiteral("gall_midrib"), tr("Practise on cases"), tr("Trees drawn anew each time, with a key that follows from how they were made."),
                            tr("To the cases"), {}),
            &QPushButton::clicked, this, [this] { Q_EMIT casesAsked({}, {}, 0); });
    auto* filled = new QWidget(this);
    m_panes = new QBoxLayout(QBoxLayout::LeftToRight, filled);
    m_panes->setContentsMargins(0, 0, 0, 0);
    m_panes->setSpacing(0);
    m_panes->addWidget(buildTable(), 7);
    m_panes->addWidget(buildSide(), 3);
    m_stack = new QStackedWidget(this);
    m_stack->addWidget(m_empty);
    m_stack->addWidget(filled);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_stack);
    connect(&m_desk, &ResultsDesk::listChanged, this, &ResultsPage::refreshList);
    connect(&m_desk, &ResultsDesk::shownChanged, this, &ResultsPage::refreshSide);
}

QWidget* ResultsPage::buildHead()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(20, 12, 16, 6);
    column->setSpacing(6);
    m_title = new RoleLabel(TextRole::title, box);
    m_facts = new RoleLabel(TextRole::body, box, Tone::second);
    for (QLabel* label : {m_title, m_facts}) {
        label->setWordWrap(true);
        column->addWidget(label);
    }
    auto* row = new QHBoxLayout;
    m_cohort = new QComboBox(box);
    m_cohort->setObjectName(QStringLiteral("resultsCohort"));
    m_cohort->setAccessibleName(tr("Cohort"));
    m_subject = new QComboBox(box);
    m_subject->setObjectName(QStringLiteral("resultsSubject"));
    m_subject->setAccessibleName(tr("Whose yes and no"));
    for (QComboBox* choice : {m_cohort, m_subject}) {
        choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        choice->setMinimumContentsLength(8);
        row->addWidget(choice, 1);
    }
    auto* sheet = new KeyButton(tr("Print…"), box);
    sheet->setObjectName(QStringLiteral("practiceSheet"));
    row->addWidget(sheet);
    m_names = new QCheckBox(tr("Names"), box);
    m_names->setObjectName(QStringLiteral("resultsNames"));
    m_names->setChecked(true);
    row->addWidget(m_names);
    column->addLayout(row);
    connect(sheet, &QPushButton::clicked, this, &ResultsPage::writeSheet);
    connect(m_names, &QCheckBox::toggled, &m_desk, &ResultsDesk::setNames);
    connect(m_cohort, &QComboBox::activated, this, [this](int index) {
        m_desk.setCohort(index == 0 ? std::nullopt : std::optional(utf8(m_cohort->itemText(index))));
    });
    connect(m_subject, &QComboBox::activated, this, [this](int index) {
        const auto subjects = m_desk.subjects();
        if (index >= 0 && index < static_cast<int>(subjects.size()))
            m_desk.setSubject(subjects[static_cast<std::size_t>(index)]);
    });
    return box;
}

QWidget* ResultsPage::buildTable()
{
    auto* box = new QWidget(this);
    setGround(*box, "page");
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(buildHead());
    m_table = new QTableView(box);
    m_table->setObjectName(QStringLiteral("resultsTable"));
    m_table->setAccessibleName(tr("Recruits"));
    m_model = new ResultsModel(m_desk, this);
    m_table->setModel(m_model);
    auto* intervals = new IntervalDelegate(*m_model, this);
    m_table->setItemDelegateForColumn(ResultsModel::found, intervals);
    m_table->setItemDelegateForColumn(ResultsModel::passed, intervals);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->setMinimumHeight(120);
    m_table->viewport()->installEventFilter(this);
    column->addWidget(m_table, 1);
    m_foot = new RoleLabel(TextRole::caption, box, Tone::second);
    m_foot->setWordWrap(true);
    m_foot->setContentsMargins(20, 6, 16, 8);
    column->addWidget(m_foot);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& current) {
        if (!m_setting && current.isValid())
            m_desk.show(ResultsModel::recruitOf(current.row()));
    });
    return box;
}

QWidget* ResultsPage::buildSide()
{
    m_side = makePageArea(this);
    auto* box = new QWidget(m_side);
    setGround(*box, "panel");
    m_side->setWidget(box);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(14, 12, 14, 12);
    column->setSpacing(6);
    m_who = new RoleLabel(TextRole::heading, box);
    m_numbers = new RoleLabel(TextRole::caption, box, Tone::second);
    m_next = new QLabel(box);
    m_next->setTextFormat(Qt::RichText);
    m_cases = new KeyButton(tr("Practise %1 cases of these").arg(casesOffered), box);
    m_cases->setObjectName(QStringLiteral("makeCases"));
    m_cases->setMain(true);
    m_tell = new KeyButton(tr("What is told…"), box);
    m_tell->setObjectName(QStringLiteral("tellSkill"));
    auto* confusionHead = new RoleLabel(TextRole::heading, tr("What was taken for what"), box);
    m_kind = new QComboBox(box);
    m_kind->setObjectName(QStringLiteral("confusionKind"));
    m_kind->setAccessibleName(tr("Which questions"));
    m_kind->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_kind->setMinimumContentsLength(10);
    m_confusion = new ConfusionTable(box);
    auto* key = new RoleLabel(TextRole::caption, tr("Rows: what it was. Columns: what was said. Thick frame: one time in five or more."), box, Tone::second);
    m_sureHead = new RoleLabel(TextRole::heading, tr("As often right as sure?"), box);
    m_sure = new SharePicture(tr("How often right, by how sure"), tr("sure"), true, box);
    m_sureWords = new RoleLabel(TextRole::caption, box, Tone::second);
    auto* curveHead = new RoleLabel(TextRole::heading, tr("Right, answer after answer"), box);
    m_curve = new SharePicture(tr("Share right in the order of the answers"), tr("answers"), false, box);
    for (QLabel* label : std::initializer_list<QLabel*>{m_who, m_numbers, m_next, confusionHead, key, m_sureHead, m_sureWords, curveHead})
        label->setWordWrap(true);
    auto* head = new QHBoxLayout;
    head->addWidget(m_who, 1);
    head->addWidget(m_tell, 0, Qt::AlignTop);
    column->addLayout(head);
    for (QWidget* part : std::initializer_list<QWidget*>{m_numbers, confusionHead, m_kind, m_confusion, key, m_next, m_cases, m_sureHead, m_sure, m_sureWords, curveHead, m_curve})
        column->addWidget(part);
    column->addStretch(1);
    setTabOrder(m_kind, m_confusion);
    setTabOrder(m_confusion, m_cases);
    setTabOrder(m_tell, m_kind);
    connect(m_tell, &QPushButton::clicked, this, &ResultsPage::askTold);
    connect(m_kind, &QComboBox::activated, this, &ResultsPage::refreshConfusion);
    connect(m_cases, &QPushButton::clicked, this, [this] {
        const auto& next = m_desk.next();
        const std::size_t some = std::min(nextListed, next.size());
        Q_EMIT casesAsked(text(m_desk.wanted().value_or(std::string())), topicsToPractise(std::span(next).first(some)), casesOffered);
    });
    return m_side;
}

void ResultsPage::enter()
{
    m_desk.refresh();
}

void ResultsPage::nextPane(int step)
{
    focusNextOf({m_cohort, m_table, m_kind, m_confusion}, step);
}

void ResultsPage::refreshList()
{
    m_stack->setCurrentIndex(m_desk.cohort() != nullptr ? 1 : 0);
    if (m_desk.cohort() == nullptr)
        return;
    refreshChoices();
    const CohortResults& cohort = *m_desk.cohort();
    m_title->setText(m_desk.wanted() ? text(*m_desk.wanted()) : tr("Everybody"));
    m_facts->setText(tr("%n recruits", nullptr, static_cast<int>(cohort.recruits.size())) + QStringLiteral(", ") +
                     tr("%n answers", nullptr, static_cast<int>(cohort.results.answers)));
    m_foot->setText(footWords());
    m_setting = true;
    m_table->setCurrentIndex(m_model->index(m_desk.shown() + 1, 0));
    m_setting = false;
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 14);
    placeColumns();
}

/// The bars take what names, kappa and the words at the end leave.
void ResultsPage::placeColumns()
{
    const int character = m_table->fontMetrics().averageCharWidth();
    const int who = 14 * character, kappa = m_table->isColumnHidden(ResultsModel::agreement) ? 0 : 8 * character, words = 26 * character;
    const int bar = std::max(24 * character, (m_table->viewport()->width() - who - kappa - words) / 2);
    m_table->setColumnWidth(ResultsModel::who, who);
    m_table->setColumnWidth(ResultsModel::found, bar);
    m_table->setColumnWidth(ResultsModel::passed, bar);
    m_table->setColumnWidth(ResultsModel::agreement, kappa);
}

void ResultsPage::refreshChoices()
{
    m_cohort->clear();
    m_cohort->addItem(tr("Everybody"));
    for (const std::string& each : m_desk.cohorts())
        m_cohort->addItem(text(each));
    m_cohort->setCurrentIndex(m_desk.wanted() ? std::max(0, m_cohort->findText(text(*m_desk.wanted()))) : 0);
    m_subject->clear();
    const auto subjects = m_desk.subjects();
    for (std::size_t i = 0; i < subjects.size(); ++i) {
        const bool together = subjects[i] == ResultSubject{};
        m_subject->addItem(together ? tr("Gall lines together") : subjectText(subjects[i].kind, subjects[i].subject, m_desk.pack()));
        if (subjects[i] == m_desk.subject())
            m_subject->setCurrentIndex(static_cast<int>(i));
    }
}

QString ResultsPage::footWords() const
{
    const ReadyLimits& limits = m_desk.rules().limits;
    QString words = tr("Bar: 95 in 100. Dashed: what this programme asks, %1 and %2. Filled dot: at or above it; ring: below. Ready only when the whole bar is.")
                        .arg(numberText(limits.sensitivity, 2), numberText(limits.specificity, 2));
    const SubjectResult* all = m_desk.resultOf(-1);
    if (all != nullptr && (all->fewThere || all->fewAbsent))
        words += QLatin1Char(' ') + tr("Fewer than %1 answers a side are few: read the bars, not the dots.").arg(fewAnswers);
    return words;
}

void ResultsPage::refreshSide()
{
    const PracticeResults* results = m_desk.results();
    m_who->setText(m_desk.cohort() != nullptr ? sentenceStart(m_desk.nameOf(m_desk.shown())) : QString());
    const SubjectResult* on = m_desk.cohort() != nullptr ? m_desk.resultOf(m_desk.shown()) : nullptr;
    QStringList numbers;
    if (on != nullptr && on->yesIsRight && on->noIsRight)
        numbers << tr("Where %1 in 100 trees carry it, a yes is right %2 and a no %3 times in 100.")
                       .arg(std::lround(m_desk.rules().prevalence * 100)).arg(std::lround(*on->yesIsRight * 100)).arg(std::lround(*on->noIsRight * 100));
    if (on != nullptr && on->judged.ratioOfYes && on->judged.ratioOfNo)
        numbers << tr("Likelihood ratios: of a yes %1, of a no %2.").arg(numberText(on->judged.ratioOfYes->value, 1), numberText(on->judged.ratioOfNo->value, 2));
    if (m_desk.shown() < 0 && m_desk.cohort() != nullptr && m_desk.cohort()->agreement && m_desk.cohort()->agreement->kappa)
        numbers << tr("Fleiss' kappa of %1 people over %2 questions: %3.").arg(m_desk.cohort()->agreementPeople).arg(m_desk.cohort()->agreementQuestions)
                       .arg(decimals(*m_desk.cohort()->agreement->kappa));
    if (on != nullptr && on->readiness != Readiness::ready && on->yesToGo && on->noToGo)
        numbers << tr("Ready after %1 more found and %2 more left clean, all right.").arg(*on->yesToGo).arg(*on->noToGo);
    m_numbers->setText(numbers.join(QLatin1Char('\n')));
    m_numbers->setVisible(!numbers.isEmpty());
    m_next->setText(nextWords());
    m_cases->setText(m_desk.next().empty() ? tr("Practise %1 cases of everything").arg(casesOffered) : tr("Practise %1 cases of these").arg(casesOffered));
    const bool one = m_desk.cohort() != nullptr && !m_desk.shownPerson().isNull();
    m_tell->setEnabled(one);
    m_tell->setToolTip(one ? QString() : tr("Choose one recruit who is named."));
    m_sure->setDots(results != nullptr ? reliabilityDots(results->calibration) : std::vector<SharePicture::Dot>{}, QStringLiteral("0"), QStringLiteral("100"));
    m_sureWords->setText(results != nullptr && results->calibration
                             ? tr("Brier score %1 (0 is perfect, 0.25 says nothing). %2.")
                                   .arg(numberText(results->calibration->brier, 3), results->calibration->overSure > 0.05 ? tr("Surer than right") : results->calibration->overSure < -0.05 ? tr("More often right than sure") : tr("About as sure as right"))
                             : QString());
    const bool curved = results != nullptr && !results->curve.empty();
    m_curve->setDots(curved ? curveDots(results->curve) : std::vector<SharePicture::Dot>{}, QStringLiteral("1"), curved ? QString::number(results->curve.back().to) : QString());
    m_setting = true;
    const int kind = m_kind->currentIndex();
    m_kind->clear();
    if (results != nullptr)
        for (const Confusion& confusion : results->confusions)
            m_kind->addItem(tr("%1 (%2 answers)").arg(askedKindText(confusion.kind)).arg(confusion.total()));
    int looks = 0; // what is it: says most, and is shown first
    for (int i = 0; results != nullptr && i < m_kind->count(); ++i)
        if (results->confusions[static_cast<std::size_t>(i)].kind == AskedKind::look)
            looks = i;
    m_kind->setCurrentIndex(std::clamp(kind < 0 ? looks : kind, m_kind->count() > 0 ? 0 : -1, m_kind->count() - 1));
    m_setting = false;
    refreshConfusion();
}

QString ResultsPage::nextWords() const
{
    const auto& coming = m_desk.next();
    if (coming.empty())
        return tr("Nothing was answered wrongly so far.");
    QString lines;
    for (std::size_t i = 0; i < std::min(nextListed, coming.size()); ++i) {
        const NextPractice& each = coming[i];
        QString words = topicText({each.kind, each.subject}, m_desk.pack());
        if (!each.takenFor.empty() && each.kind == AskedKind::look)
            words = tr("%1, taken for %2").arg(words, saidText(each.kind, each.takenFor, m_desk.pack()));
        lines += QStringLiteral("<li>%1</li>").arg(tr("%1: %2 of %3 wrong").arg(words).arg(std::lround(each.wrong * static_cast<double>(each.answers))).arg(each.answers).toHtmlEscaped());
    }
    return QStringLiteral("<b>%1</b><ol style='margin-left:-20px'>%2</ol>").arg(tr("Practise next"), lines);
}

void ResultsPage::refreshConfusion()
{
    const PracticeResults* results = m_desk.results();
    const int at = m_kind->currentIndex();
    const bool some = results != nullptr && at >= 0 && at < static_cast<int>(results->confusions.size());
    m_confusion->setConfusion(some ? std::optional(results->confusions[static_cast<std::size_t>(at)]) : std::nullopt, some ? &m_desk.pack() : nullptr);
    m_confusion->setMinimumHeight(std::min(m_confusion->sizeHint().height(), scaled(420, font())));
}

void ResultsPage::askTold()
{
    if (m_desk.cohort() != nullptr && !m_desk.shownPerson().isNull())
        SkillDialog(m_bench, m_desk.shownPerson(), m_desk.nameOf(std::max(0, m_desk.shown())), this).exec();
}

void ResultsPage::writeSheet()
{
    if (m_desk.cohort() == nullptr || m_desk.results() == nullptr || !m_writer)
        return;
    const QString path = m_prompts.fileToWrite(this, tr("Where the sheet is to lie"), tr("practice.pdf"), tr("Papers (*.pdf);;Web pages (*.html)"));
    if (path.isEmpty())
        return;
    const Status written = m_writer(*m_desk.cohort(), m_desk.shown(), *m_desk.results(), m_desk.rules(), *m_bench.session(), m_desk.names(), path);
    if (written)
        m_bench.say(tr("Written: %1.").arg(path));
    else
        m_bench.complain(written.error());
}

void ResultsPage::place()
{
    const bool beside = width() > fontMetrics().averageCharWidth() * besideCharacters;
    m_panes->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_panes->setStretch(1, beside ? 3 : 5);
    m_table->setColumnHidden(ResultsModel::agreement, !beside);
}

void ResultsPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    place();
}

bool ResultsPage::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::Resize && watched == m_table->viewport())
        placeColumns();
    return QWidget::eventFilter(watched, event);
}

void ResultsPage::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        place();
}

} // namespace cupule::ui
