#include "ui/daysheet/seen_part.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QVBoxLayout>

#include "core/base/text.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/daysheet/day_desk.h"
#include "ui/daysheet/measure_here.h"
#include "ui/daysheet/sign_card.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/letter_choice.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

const QString foldKey = QStringLiteral("fold:out");

std::optional<double> readNumber(const QString& typed, const QLocale& locale)
{
    bool read = false;
    const double value = locale.toDouble(typed.trimmed(), &read);
    return read ? std::optional<double>(value) : parseNumber(utf8(typed.trimmed()));
}

void addChoices(QComboBox* box, const QList<std::pair<QString, const char*>>& choices)
{
    box->addItem(QStringLiteral("–"), QString());
    for (const auto& [words, id] : choices)
        box->addItem(words, QString::fromLatin1(id));
}

} // namespace

SeenPart::SeenPart(DayDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("seenPart"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 12);
    column->setSpacing(6);
    buildEffort();
    m_worth = new QLabel(this);
    m_worth->setObjectName(QStringLiteral("worthWords"));
    m_worth->setWordWrap(true);
    m_worth->setContentsMargins(22, 0, 22, 0);
    column->addWidget(m_worth);
    m_nothing = new KeyButton(tr("Every gall line in season: not seen"), this);
    m_nothing->setObjectName(QStringLiteral("nothingSeen"));
    m_nothing->setKey(QKeySequence(Qt::Key_F7));
    auto* row = new QHBoxLayout;
    row->setContentsMargins(22, 0, 22, 0);
    row->addWidget(m_nothing);
    row->addStretch(1);
    column->addLayout(row);
    connect(m_nothing, &QPushButton::clicked, this, [this] {
        m_desk.answerNothingSeen();
        Q_EMIT done();
    });
    buildList();
}

void SeenPart::buildEffort()
{
    m_effort = new QWidget(this);
    auto* grid = new QGridLayout(m_effort);
    grid->setContentsMargins(22, 6, 22, 0);
    grid->setHorizontalSpacing(14);
    grid->setVerticalSpacing(2);
    m_effortHead = new QLabel(m_effort);
    m_effortHead->setObjectName(QStringLiteral("effortWords"));
    m_effortHead->setWordWrap(true);
    grid->addWidget(m_effortHead, 0, 0, 1, 7);
    const auto whole = [](std::optional<double> v) { return v ? std::optional<int>(static_cast<int>(*v)) : std::nullopt; };
    m_minutes = effortField(tr("minutes"), {}, 0, [=](Visit& v, auto n) { v.effort.minutes = whole(n); });
    m_minutes->setObjectName(QStringLiteral("minutes"));
    m_trees = effortField(tr("trees"), {}, 1, [=](Visit& v, auto n) { v.effort.trees = whole(n); });
    m_trees->setObjectName(QStringLiteral("treesLooked"));
    m_crown = effortField(tr("share of crown"), QStringLiteral("%"), 2,
                          [=](Visit& v, auto n) { v.effort.crownPercent = whole(n); });
    m_crown->setObjectName(QStringLiteral("crown"));
    m_height = effortField(tr("up to height"), QStringLiteral("m"), 3,
                           [](Visit& v, auto n) { v.effort.heightMetres = n; });
    m_height->setObjectName(QStringLiteral("height"));
    m_light = new LetterChoice(m_effort);
    m_light->setObjectName(QStringLiteral("light"));
    addChoices(m_light, {{tr("good"), "good"}, {tr("fair"), "fair"}, {tr("poor"), "poor"}});
    m_leaves = new LetterChoice(m_effort);
    m_leaves->setObjectName(QStringLiteral("leaves"));
    addChoices(m_leaves, {{tr("none"), "none"}, {tr("opening"), "opening"}, {tr("fully open"), "open"}, {tr("leaf fall"), "falling"}});
    int column = 4;
    for (auto [box, words] : {std::pair{m_light, tr("light")}, std::pair{m_leaves, tr("leaves")}}) {
        auto* label = new RoleLabel(TextRole::caption, words, m_effort);
        label->setBuddy(box);
        grid->addWidget(label, 1, column);
        grid->addWidget(box, 2, column++);
    }
    connect(m_light, &QComboBox::activated, this, [this] {
        m_desk.edit(tr("light"), [&](Visit& v) { v.effort.light = utf8(m_light->currentData().toString()); });
    });
    connect(m_leaves, &QComboBox::activated, this, [this] {
        m_desk.edit(tr("leaves"), [&](Visit& v) { v.effort.leaves = utf8(m_leaves->currentData().toString()); });
    });
    m_binoculars = new QCheckBox(tr("with binoculars"), m_effort);
    m_binoculars->setObjectName(QStringLiteral("binoculars"));
    m_inner = new QCheckBox(tr("lower and inner crown looked at"), m_effort);
    m_inner->setObjectName(QStringLiteral("innerCrown"));
    auto* boxes = new QHBoxLayout;
    boxes->addWidget(m_binoculars);
    boxes->addWidget(m_inner);
    boxes->addStretch(1);
    grid->addLayout(boxes, 3, 0, 1, 7);
    connect(m_binoculars, &QCheckBox::clicked, this, [this](bool on) {
        m_desk.edit(tr("binoculars"), [&](Visit& v) { v.effort.binoculars = on; });
    });
    connect(m_inner, &QCheckBox::clicked, this, [this](bool on) {
        m_desk.edit(tr("lower and inner crown"), [&](Visit& v) { v.effort.innerCrown = on; });
    });
    grid->setColumnStretch(6, 1);
    static_cast<QVBoxLayout*>(layout())->addWidget(m_effort);
}

QLineEdit* SeenPart::effortField(const QString& name, const QString& unit, int column,
                                 const std::function<void(Visit&, std::optional<double>)>& take)
{
    auto* field = new QLineEdit(m_effort);
    auto* label = new RoleLabel(TextRole::caption, unit.isEmpty() ? name : tr("%1, %2").arg(name, unit), m_effort);
    label->setBuddy(field);
    field->setMinimumWidth(fontMetrics().horizontalAdvance(QStringLiteral("000000")));
    auto* grid = static_cast<QGridLayout*>(m_effort->layout());
    grid->addWidget(label, 1, column);
    grid->addWidget(field, 2, column);
    connect(field, &QLineEdit::editingFinished, this, [this, field, name, take] {
        if (m_setting || !field->isModified())
            return;
        field->setModified(false);
        const QString typed = field->text().trimmed();
        const auto value = readNumber(typed, locale());
        if (!typed.isEmpty() && !value) {
            refreshEffort();
            return;
        }
        m_desk.edit(name, [&](Visit& visit) { take(visit, value); });
    });
    return field;
}

void SeenPart::buildList()
{
    m_list = new ChecklistView(this);
    m_list->setObjectName(QStringLiteral("checklist"));
    m_list->setAccessibleName(tr("What was seen"));
    m_model = new ChecklistModel(m_list);
    m_list->setModel(m_model);
    m_list->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    static_cast<QVBoxLayout*>(layout())->addWidget(m_list);
    m_card = new SignCard(m_desk, this);
    static_cast<QVBoxLayout*>(layout())->addWidget(m_card);
    const auto fit = [this] { m_list->setFixedHeight(std::max(40, m_list->wholeHeight())); };
    connect(m_list, &ChecklistView::wholeHeightChanged, this, fit);
    connect(m_list, &ChecklistView::answered, &m_desk, &DayDesk::answer);
    connect(m_list, &ChecklistView::measured, &m_desk, &DayDesk::measure);
    connect(m_list, &ChecklistView::photoMeasureAsked, this, [this](const QString& sign) { measureOnPhoto(m_desk, sign, this); });
    connect(m_list, &ChecklistView::foldToggled, this, [this] {
        m_foldOpen = !m_foldOpen;
        refreshList();
    });
    connect(m_list, &ChecklistView::currentSignChanged, this, [this](const QString& id) {
        m_current = id;
        if (m_cardHere)
            m_card->setSign(id);
        Q_EMIT signShown(id);
    });
}

void SeenPart::showCard(bool here)
{
    m_cardHere = here;
    m_card->setSign(here ? m_current : QString());
}

/// C: how many were counted. Only while the list has the focus, where no text is typed.
void SeenPart::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_C || event->modifiers() != Qt::NoModifier || !m_list->hasFocus())
        return QWidget::keyPressEvent(event);
    if (m_cardHere)
        m_card->focusCount();
    else
        Q_EMIT countAsked();
}

void SeenPart::refresh()
{
    if (!m_desk.page())
        return;
    m_card->refresh();
    refreshEffort();
    refreshList();
}

void SeenPart::refreshEffort()
{
    m_setting = true;
    const VisitPage& page = *m_desk.page();
    const Effort& effort = page.visit.effort;
    const bool edit = m_desk.mayEdit();
    const auto put = [&](QLineEdit* field, std::optional<double> value) {
        if (!field->isModified())
            field->setText(value ? numberText(*value) : QString());
        field->setReadOnly(!edit);
    };
    put(m_minutes, effort.minutes ? std::optional<double>(*effort.minutes) : std::nullopt);
    put(m_trees, effort.trees ? std::optional<double>(*effort.trees) : std::nullopt);
    put(m_crown, effort.crownPercent ? std::optional<double>(*effort.crownPercent) : std::nullopt);
    put(m_height, effort.heightMetres);
    m_binoculars->setChecked(effort.binoculars.value_or(false));
    m_inner->setChecked(effort.innerCrown.value_or(false));
    m_light->setCurrentIndex(std::max(0, m_light->findData(text(effort.light))));
    m_leaves->setCurrentIndex(std::max(0, m_leaves->findData(text(effort.leaves))));
    for (QWidget* box : std::initializer_list<QWidget*>{m_binoculars, m_inner, m_light, m_leaves})
        box->setEnabled(edit);
    m_effortHead->setText(page.nothing ? tr("How you looked")
                                       : tr("How you looked. %1").arg(effortText(page.worth, page.host.answer, m_desk.pack())));
    m_nothing->setEnabled(edit && effort.minutes.has_value() && page.host.answer != HostAnswer::notHost);
    m_worth->setText(page.nothing ? worthText(page.worth, m_desk.pack()) : QString());
    m_worth->setVisible(page.nothing);
    m_setting = false;
}

void SeenPart::refreshList()
{
    const VisitPage& page = *m_desk.page();
    std::vector<ChecklistRow> rows;
    std::vector<ChecklistRow> folded;
    SeasonState last = SeasonState::expected;
    int answered = 0;
    for (const ChecklistLine& line : page.checklist) {
        ChecklistRow row = checklistRow(*line.sign, line.season, line.observation, line.struck);
        row.readOnly = !m_desk.mayEdit();
        if (row.measure)
            row.measuredOn = measuredOnPhoto(m_desk, line.sign->id, *row.measure);
        answered += line.observation.answer != Answer::open ? 1 : 0;
        if (line.season.state == SeasonState::outOfSeason && line.observation.answer == Answer::open) {
            folded.push_back(std::move(row));
            continue;
        }
        if (line.season.state != last && line.season.state == SeasonState::possible) {
            ChecklistRow heading;
            heading.kind = ChecklistRow::Kind::heading;
            heading.sign = QStringLiteral("heading:possible");
            heading.words = tr("Possible on %1").arg(plainDate(page.visit.date, page.visit.date.year()));
            rows.push_back(heading);
        }
        last = line.season.state;
        rows.push_back(std::move(row));
    }
    if (!folded.empty()) {
        ChecklistRow fold;
        fold.kind = ChecklistRow::Kind::fold;
        fold.sign = foldKey;
        fold.words = tr("Not in season on %1: %n signs", nullptr, static_cast<int>(folded.size()))
                         .arg(plainDate(page.visit.date, page.visit.date.year()));
        fold.aside = m_foldOpen ? tr("Fold them away") : tr("Show them, each with its reason");
        rows.push_back(fold);
        if (m_foldOpen)
            rows.insert(rows.end(), folded.begin(), folded.end());
    }
    if (m_model->rows() != rows) {
        const QString current = m_list->currentIndex().data(ChecklistModel::signRole).toString();
        bool sameShape = m_model->rows().size() == rows.size();
        for (std::size_t i = 0; sameShape && i < rows.size(); ++i)
            sameShape = m_model->rows()[i].sign == rows[i].sign;
        if (sameShape) {
            for (const ChecklistRow& row : rows)
                m_model->changeRow(row);
        } else {
            m_model->setRows(rows);
            if (!current.isEmpty())
                m_list->setCurrentIndex(m_model->indexOf(current));
        }
    }
    m_list->setFixedHeight(std::max(40, m_list->wholeHeight()));
    m_summary = tr("%1 of %2 answered").arg(answered).arg(page.checklist.size());
}

void SeenPart::focusFirst()
{
    m_minutes->setFocus(Qt::OtherFocusReason);
    m_minutes->selectAll();
}

bool SeenPart::goTo(const QString& field)
{
    const QStringList parts = field.split(QLatin1Char('/'));
    const QString head = parts.value(0);
    if (head == QStringLiteral("effort")) {
        const QString which = parts.value(1);
        QWidget* target = which == QStringLiteral("crownPercent") || which == QStringLiteral("crown") ? m_crown
                          : which == QStringLiteral("heightMetres")                                   ? m_height
                          : which == QStringLiteral("trees")                                          ? m_trees
                                                                                                      : m_minutes;
        target->setFocus(Qt::OtherFocusReason);
        return true;
    }
    if (head == QStringLiteral("observations") || head == QStringLiteral("gallCount")
        || head == QStringLiteral("gallSizeMm")) {
        if (parts.size() > 1) {
            if (!m_model->indexOf(parts[1]).isValid() && !m_foldOpen) {
                m_foldOpen = true;
                refreshList();
            }
            m_list->goTo(parts[1]);
            if (parts.value(2) == QStringLiteral("measure"))
                m_list->openMeasure();
        }
        if (!m_list->hasFocus() && parts.value(2) != QStringLiteral("measure"))
            m_list->setFocus(Qt::OtherFocusReason);
        return true;
    }
    return false;
}

} // namespace cupule::ui
