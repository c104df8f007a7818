#include "ui/daysheet/character_row.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QVBoxLayout>

#include "core/base/text.h"
#include "ui/bridge/text.h"
#include "ui/figures/figure_names.h"
#include "ui/theme/theme.h"
#include "ui/widgets/choice_card.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

CharacterRow::CharacterRow(const Character& character, const QString& why, QWidget* parent)
    : QWidget(parent), m_id(text(character.id))
{
    setObjectName(QStringLiteral("character-") + m_id);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 8);
    column->setSpacing(6);
    auto* question = new RoleLabel(TextRole::strong, text(character.question.empty() ? character.name : character.question), this);
    question->setWordWrap(true);
    column->addWidget(question);
    if (!why.isEmpty() || !character.caution.empty()) {
        QStringList lines;
        if (!why.isEmpty())
            lines << why;
        if (!character.caution.empty())
            lines << text(character.caution);
        auto* small = new QLabel(lines.join(QLatin1Char(' ')), this);
        small->setWordWrap(true);
        small->setForegroundRole(QPalette::PlaceholderText);
        column->addWidget(small);
    }
    if (!character.states.empty())
        addCards(character);
    if (!character.unit.empty())
        addValueField(character);
    if (character.onGroundToo)
        addGroundBoxes();
}

void CharacterRow::addCards(const Character& character)
{
    std::vector<ChoiceRow::Choice> choices;
    bool drawn = false;
    for (const CharacterState& state : character.states) {
        choices.push_back({text(state.id), figureForState(character.id, state.id), text(state.words), QString()});
        drawn = drawn || !choices.back().figure.isEmpty();
    }
    choices.push_back({QStringLiteral("?"), QString(), tr("can't be judged"), QString()});
    m_choices = new ChoiceRow(this);
    m_choices->setChoices(choices, drawn ? ChoiceCard::Shape::beside : ChoiceCard::Shape::words);
    layout()->addWidget(m_choices);
    connect(m_choices, &ChoiceRow::choice, this, [this](const QString& state) { Q_EMIT chosen(m_id, state); });
    connect(m_choices, &ChoiceRow::backAsked, this, [this] { Q_EMIT chosen(m_id, QString()); });
}

QList<QWidget*> CharacterRow::stops() const
{
    QList<QWidget*> all;
    if (m_choices != nullptr)
        all << m_choices->cards().front();
    for (QWidget* more : std::initializer_list<QWidget*>{m_value, m_ground, m_alone})
        if (more != nullptr)
            all << more;
    return all;
}

void CharacterRow::focusFirst()
{
    stops().front()->setFocus(Qt::OtherFocusReason);
}

void CharacterRow::addValueField(const Character& character)
{
    auto* line = new QHBoxLayout;
    auto* label = new QLabel(sentenceStart(text(character.valueWords)), this);
    m_value = new QLineEdit(this);
    m_value->setObjectName(m_id + QStringLiteral("-value"));
    m_value->setMaximumWidth(fontMetrics().horizontalAdvance(QStringLiteral("0000000000")));
    label->setBuddy(m_value);
    line->addWidget(label);
    line->addWidget(m_value);
    line->addWidget(new QLabel(character.unit == "count" ? QString() : text(character.unit), this));
    line->addStretch(1);
    layout()->addItem(line);
    connect(m_value, &QLineEdit::editingFinished, this, [this] {
        if (m_setting || !m_value->isModified())
            return;
        m_value->setModified(false);
        const QString typed = m_value->text().trimmed();
        if (typed.isEmpty()) {
            Q_EMIT valueTyped(m_id, std::nullopt);
            return;
        }
        bool read = false;
        double number = locale().toDouble(typed, &read);
        if (!read) {
            const auto plain = parseNumber(utf8(typed));
            read = plain.has_value();
            number = plain.value_or(0);
        }
        if (read)
            Q_EMIT valueTyped(m_id, number);
    });
}

void CharacterRow::addGroundBoxes()
{
    auto* line = new QHBoxLayout;
    m_ground = new QCheckBox(tr("it lay on the ground"), this);
    m_alone = new QCheckBox(tr("no other tree of that kind is near enough to have dropped it"), this);
    line->addWidget(m_ground);
    line->addWidget(m_alone);
    line->addStretch(1);
    layout()->addItem(line);
    connect(m_ground, &QCheckBox::clicked, this, &CharacterRow::sayGround);
    connect(m_alone, &QCheckBox::clicked, this, &CharacterRow::sayGround);
}

void CharacterRow::sayGround()
{
    m_alone->setVisible(m_ground->isChecked());
    Q_EMIT groundSaid(m_id, m_ground->isChecked(), m_alone->isChecked() ? std::optional<bool>(false) : std::nullopt);
}

void CharacterRow::setSeen(const CharacterSeen* seen, bool mayEdit)
{
    m_setting = true;
    const QString state = seen == nullptr ? QString() : seen->notJudged ? QStringLiteral("?") : text(seen->state);
    if (m_choices != nullptr) {
        m_choices->setChosen(state);
        m_choices->setEnabled(mayEdit);
    }
    if (m_value != nullptr) {
        if (!m_value->hasFocus() || !m_value->isModified())
            m_value->setText(seen != nullptr && seen->value ? numberText(*seen->value) : QString());
        m_value->setReadOnly(!mayEdit);
    }
    if (m_ground != nullptr) {
        m_ground->setChecked(seen != nullptr && seen->onGround);
        m_alone->setChecked(seen != nullptr && seen->otherTreeNear == false);
        m_alone->setVisible(m_ground->isChecked());
        m_ground->setVisible(seen != nullptr && !seen->state.empty());
        m_ground->setEnabled(mayEdit);
        m_alone->setEnabled(mayEdit);
    }
    m_setting = false;
}

} // namespace cupule::ui
