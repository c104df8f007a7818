#include "ui/training/case_setup.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QLocale>
#include <QRegularExpressionValidator>
#include <QSpinBox>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_practice.h"
#include "ui/training/cases_desk.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int usualCases = 20, mostCases = 400;

QComboBox* choice(QWidget* parent, const char* name)
{
    auto* box = new QComboBox(parent);
    box->setObjectName(QString::fromLatin1(name));
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(16);
    return box;
}

/// What a choice of questions stands for, as numbers of AskedKind; none = everything.
struct AskedChoice {
    const char* words;
    std::vector<AskedKind> kinds;
};

const std::vector<AskedChoice>& askedChoices()
{
    static const std::vector<AskedChoice> all{
        {QT_TRANSLATE_NOOP("cupule::ui::CaseSetup", "everything"), {}},
        {QT_TRANSLATE_NOOP("cupule::ui::CaseSetup", "is it a chestnut, and by what"), {AskedKind::host, AskedKind::character}},
        {QT_TRANSLATE_NOOP("cupule::ui::CaseSetup", "which signs are there"), {AskedKind::sign, AskedKind::look}},
        {QT_TRANSLATE_NOOP("cupule::ui::CaseSetup", "what to write down, what may be concluded"), {AskedKind::record, AskedKind::conclude}},
        {QT_TRANSLATE_NOOP("cupule::ui::CaseSetup", "packing and labelling a sample"), {AskedKind::order}},
    };
    return all;
}

} // namespace

CaseSetup::CaseSetup(CasesDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("caseSetup"));
    setGround(*this, "page");
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(24, 18, 24, 18);
    auto* title = new RoleLabel(TextRole::title, tr("Practise on cases"), this);
    title->setWordWrap(true);
    auto* sentence = new RoleLabel(TextRole::body, tr("Each case is a tree met on a day, drawn anew. You answer by digits, say how sure you are, "
                                                      "and may say that it cannot be judged. Time is noted and never scored."),
                                   this, Tone::second);
    sentence->setWordWrap(true);
    column->addWidget(title);
    column->addWidget(sentence);
    column->addSpacing(8);
    auto* form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    addWho(*form);
    addHow(*form);
    auto* begin = new KeyButton(tr("Begin"), this);
    begin->setObjectName(QStringLiteral("beginCases"));
    begin->setMain(true);
    form->addRow(QString(), begin);
    addUnfinished(*form);
    column->addLayout(form);
    column->addStretch(1);
    setMaximumWidth(900);
    connect(begin, &QPushButton::clicked, this, &CaseSetup::begin);
    connect(&desk, &CasesDesk::listChanged, this, &CaseSetup::refresh);
}

void CaseSetup::addWho(QFormLayout& form)
{
    m_code = new QLineEdit(this);
    m_code->setObjectName(QStringLiteral("caseCode"));
    m_code->setMaxLength(12);
    m_code->setPlaceholderText(tr("empty: you"));
    m_name = new QLineEdit(this);
    m_name->setObjectName(QStringLiteral("caseName"));
    m_name->setMaxLength(80);
    m_name->setPlaceholderText(tr("where the code is new"));
    m_unnamed = new QCheckBox(tr("Keep the answers without saying whose they are"), this);
    m_unnamed->setObjectName(QStringLiteral("caseUnnamed"));
    m_cohort = choice(this, "caseCohort");
    m_cohort->setEditable(true);
    m_cohort->setInsertPolicy(QComboBox::NoInsert);
    m_cohort->lineEdit()->setPlaceholderText(tr("name of the course, where there is one"));
    m_cohort->lineEdit()->setAccessibleName(tr("Cohort"));
    form.addRow(tr("&Who (code)"), m_code);
    form.addRow(tr("&Name"), m_name);
    form.addRow(QString(), m_unnamed);
    form.addRow(tr("&Cohort"), m_cohort);
}

void CaseSetup::addHow(QFormLayout& form)
{
    m_asked = choice(this, "caseAsked");
    for (const AskedChoice& each : askedChoices())
        m_asked->addItem(tr(each.words));
    m_month = choice(this, "caseMonth");
    m_month->addItem(tr("any time of the year"));
    for (int month = 1; month <= 12; ++month)
        m_month->addItem(QLocale().standaloneMonthName(month));
    m_step = choice(this, "caseStep");
    m_step->addItem(tr("follows the answers"));
    for (const DifficultyStep& step : difficultySteps())
        m_step->addItem(difficultyText(step));
    m_cases = new QSpinBox(this);
    m_cases->setObjectName(QStringLiteral("caseCount"));
    m_cases->setRange(1, mostCases);
    m_cases->setButtonSymbols(QAbstractSpinBox::NoButtons);
    m_cases->setValue(usualCases);
    m_feedback = choice(this, "caseFeedback");
    m_feedback->addItems({tr("after each case"), tr("at the end")});
    m_series = new QCheckBox(tr("The same cases for everybody, whatever they answer"), this);
    m_series->setObjectName(QStringLiteral("caseSeries"));
    m_seed = new QLineEdit(this);
    m_seed->setObjectName(QStringLiteral("caseSeed"));
    m_seed->setPlaceholderText(tr("empty: by chance; the same number gives the same cases"));
    m_seed->setValidator(new QRegularExpressionValidator(QRegularExpression(QStringLiteral("[0-9]{0,14}")), m_seed));
    form.addRow(tr("What is as&ked"), m_asked);
    form.addRow(tr("&Month"), m_month);
    form.addRow(tr("&Difficulty"), m_step);
    form.addRow(tr("N&umber of cases"), m_cases);
    form.addRow(tr("&Feedback"), m_feedback);
    form.addRow(QString(), m_series);
    form.addRow(tr("&Seed"), m_seed);
}

void CaseSetup::addUnfinished(QFormLayout& form)
{
    m_unfinished = new QListWidget(this);
    m_unfinished->setObjectName(QStringLiteral("unfinished"));
    m_unfinished->setAccessibleName(tr("Sessions that were left"));
    m_unfinished->setWordWrap(true);
    m_unfinished->setMinimumHeight(60);
    m_unfinished->setMaximumHeight(130);
    m_goOn = new KeyButton(tr("Go on"), this);
    m_goOn->setObjectName(QStringLiteral("goOn"));
    m_left = new QLabel(tr("&Left unfinished"), this);
    m_left->setBuddy(m_unfinished);
    form.addRow(m_left, m_unfinished);
    form.addRow(QString(), m_goOn);
    const auto goOn = [this] {
        const int row = m_unfinished->currentRow();
        if (row >= 0)
            m_desk.resume(Uid::parse(utf8(m_unfinished->item(row)->data(Qt::UserRole).toString())).value());
    };
    connect(m_goOn, &QPushButton::clicked, this, goOn);
    connect(m_unfinished, &QListWidget::itemActivated, this, goOn);
}

void CaseSetup::refresh()
{
    const bool others = m_desk.forOthers();
    for (QWidget* field : {m_code, m_name})
        field->setEnabled(others);
    const QString cohort = m_cohort->currentText();
    m_cohort->clear();
    for (const std::string& each : m_desk.cohorts())
        m_cohort->addItem(text(each));
    m_cohort->setEditText(cohort);
    m_unfinished->clear();
    for (const PracticeLine& line : m_desk.lines()) {
        if (line.planned > 0 && line.cases >= line.planned)
            continue;
        const QString who = line.code.empty() ? tr("nobody named") : text(line.code);
        const QString cases = line.planned > 0 ? tr("%1 of %2 cases").arg(line.cases).arg(line.planned) : tr("%1 cases").arg(line.cases);
        auto* item = new QListWidgetItem(QStringList{who, text(line.cohort), cases, momentText(line.begun)}.join(QStringLiteral(", ")).replace(QStringLiteral(", , "), QStringLiteral(", ")), m_unfinished);
        item->setData(Qt::UserRole, text(line.id.text()));
    }
    m_unfinished->setCurrentRow(0);
    for (QWidget* part : std::initializer_list<QWidget*>{m_left, m_unfinished, m_goOn})
        part->setVisible(m_unfinished->count() > 0);
}

void CaseSetup::begin()
{
    PracticeWish wish;
    wish.cohort = utf8(m_cohort->currentText().trimmed());
    wish.named = !m_unnamed->isChecked();
    wish.series = m_series->isChecked();
    wish.feedbackAtEnd = m_feedback->currentIndex() == 1;
    wish.kinds = askedChoices()[static_cast<std::size_t>(m_asked->currentIndex())].kinds;
    wish.step = m_step->currentIndex();
    wish.month = m_month->currentIndex();
    wish.cases = m_cases->value();
    if (!m_seed->text().isEmpty())
        wish.seed = m_seed->text().toLongLong();
    m_desk.begin(wish, m_code->text().trimmed(), m_name->text().trimmed());
}

void CaseSetup::beginWith(const QString& cohort, const std::vector<Topic>& topics, int cases)
{
    PracticeWish wish;
    wish.cohort = utf8(cohort);
    wish.topics = topics;
    wish.cases = cases;
    m_desk.begin(wish, {}, {});
}

} // namespace cupule::ui
