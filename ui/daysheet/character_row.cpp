#include "ui/daysheet/character_row.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QVBoxLayout>

#include "core/base/text.h"
#include "ui/bridge/text.h"
#include "ui/figures/figure.h"
#include "ui/theme/theme.h"
#include "ui/widgets/choice_card.h"
#include "ui/widgets/flow_layout.h"

namespace cupule::ui {

QString figureForState(const std::string& character, const std::string& state)
{
    struct Entry {
        const char* part;                    // of "character/state"
        const char* figure;
    };
    static const Entry table[] = {
        {"K01/alternate", "mark:leaf-alternate"},      {"K01/opposite", "mark:leaf-opposite"},
        {"K02/simple", "mark:leaf-simple"},            {"K02/lobed", "leaf_quercus_robur"},
        {"K02/palmate", "mark:leaf-compound-palmate"}, {"K02/compound-palmate", "mark:leaf-compound-palmate"},
        {"K02/pinnate", "mark:leaf-compound-pinnate"}, {"K02/compound-pinnate", "mark:leaf-compound-pinnate"},
    };
    const std::string key = character + "/" + state;
    for (const Entry& entry : table)
        if (key == entry.part)
            return QString::fromLatin1(entry.figure);
    return {};
}

CharacterRow::CharacterRow(const Character& character, const QString& why, QWidget* parent)
    : QWidget(parent), m_id(text(character.id)), m_group(new QButtonGroup(this))
{
    setObjectName(QStringLiteral("character-") + m_id);
    m_group->setExclusive(false);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 4, 0, 8);
    column->setSpacing(6);
    auto* question = new QLabel(text(character.question.empty() ? character.name : character.question), this);
    question->setFont(roleFont(TextRole::strong, *this));
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
    m_cardsBox = new QWidget(this);
    new FlowLayout(m_cardsBox, 8);
    for (const CharacterState& state : character.states)
        addCard(text(state.id), text(state.words), figureForState(character.id, state.id));
    addCard(QStringLiteral("?"), tr("can't be judged"), {});
    column->addWidget(m_cardsBox);
    if (!character.unit.empty())
        addValueField(character);
    if (character.onGroundToo)
        addGroundBoxes();
}

void CharacterRow::addCard(const QString& state, const QString& words, const QString& figure)
{
    auto* card = new ChoiceCard(m_cardsBox);
    card->setObjectName(m_id + QLatin1Char('-') + state);
    card->setCheckable(true);
    card->setShape(ChoiceCard::Shape::beside);
    card->setFigure(figure);
    card->setWords(words, QString());
    card->setDigit(static_cast<int>(m_cards.size()) + 1);
    m_group->addButton(card);
    m_cardsBox->layout()->addWidget(card);
    m_cards.emplace_back(state, card);
    connect(card, &QAbstractButton::clicked, this, [this, state](bool on) {
        Q_EMIT chosen(m_id, on ? state : QString());
    });
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
    for (const auto& [id, card] : m_cards) {
        card->setChecked(!state.isEmpty() && id == state);
        card->setEnabled(mayEdit || card->isChecked());
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

void CharacterRow::keyPressEvent(QKeyEvent* event)
{
    if (event->modifiers() == Qt::NoModifier && event->key() >= Qt::Key_1 && event->key() <= Qt::Key_9) {
        const auto at = static_cast<std::size_t>(event->key() - Qt::Key_1);
        if (at < m_cards.size() && m_cards[at].second->isEnabled()) {
            m_cards[at].second->setFocus(Qt::OtherFocusReason);
            Q_EMIT chosen(m_id, m_cards[at].first);
            return;
        }
    }
    if (event->key() == Qt::Key_Backspace) {
        Q_EMIT chosen(m_id, QString());
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace cupule::ui
