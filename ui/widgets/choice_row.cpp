#include <algorithm>

#include <QKeyEvent>

#include "ui/theme/theme.h"
#include "ui/widgets/choice_card.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

ChoiceRow::ChoiceRow(QWidget* parent) : QWidget(parent)
{
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void ChoiceRow::setChoices(const std::vector<Choice>& choices, ChoiceCard::Shape shape)
{
    for (ChoiceCard* card : m_cards)
        card->deleteLater();
    m_cards.clear();
    m_choices = choices;
    m_chosen.clear();
    for (std::size_t i = 0; i < choices.size(); ++i) {
        auto* card = new ChoiceCard(this);
        card->setObjectName(choices[i].id);
        card->setShape(shape);
        card->setFigure(choices[i].figure);
        card->setWords(choices[i].title, choices[i].detail);
        card->setDigit(i < 9 ? static_cast<int>(i) + 1 : 0);
        card->setFocusPolicy(i == 0 ? Qt::StrongFocus : Qt::ClickFocus); // one tab stop for the question
        card->installEventFilter(this);
        const auto index = static_cast<int>(i);
        connect(card, &QAbstractButton::clicked, this, [this, index] { choose(index); });
        card->show();
        m_cards.push_back(card);
    }
    updateGeometry();
    lay(columns(width()), width(), true);
}

void ChoiceRow::setChosen(const QString& id)
{
    m_chosen = id;
    for (std::size_t i = 0; i < m_cards.size(); ++i)
        m_cards[i]->setChecked(!id.isEmpty() && m_choices[i].id == id);
}

void ChoiceRow::choose(int index)
{
    if (index < 0 || index >= static_cast<int>(m_cards.size()))
        return;
    const QString id = m_choices[std::size_t(index)].id;
    const bool other = id != m_chosen;
    setChosen(id); // a click on the chosen card must not unset it
    if (other)
        Q_EMIT choice(id);
}

int ChoiceRow::columns(int width) const
{
    int widest = 1;
    for (const ChoiceCard* card : m_cards)
        widest = std::max(widest, card->minimumSizeHint().width());
    const int gap = scaled(6, font());
    const int count = std::max(1, static_cast<int>(m_cards.size()));
    const int most = std::clamp((width + gap) / (widest + gap), 1, count);
    const int lines = (count + most - 1) / most;
    const auto across = [count](int in) { return (count + in - 1) / in; }; // even lines: 3 + 2 rather than 4 + 1
    // one line more where long words would make narrow cards taller than that
    const bool shorter = lines < count && lay(across(lines + 1), width, false) < lay(across(lines), width, false);
    return across(shorter ? lines + 1 : lines);
}

/// So many cards in a line. Gives the height; moves the cards where `place`.
int ChoiceRow::lay(int across, int width, bool place) const
{
    if (m_cards.empty())
        return 0;
    const int gap = scaled(4, font());
    const int wide = (width - (across - 1) * gap) / across;
    int y = 0;
    for (std::size_t first = 0; first < m_cards.size(); first += std::size_t(across)) {
        const std::size_t last = std::min(m_cards.size(), first + std::size_t(across));
        int tall = 0;
        for (std::size_t i = first; i < last; ++i)
            tall = std::max(tall, m_cards[i]->heightForWidth(wide));
        for (std::size_t i = first; place && i < last; ++i)
            m_cards[i]->setGeometry(static_cast<int>(i - first) * (wide + gap), y, wide, tall);
        y += tall + gap;
    }
    return y - gap;
}

int ChoiceRow::heightForWidth(int width) const
{
    return lay(columns(width), width, false);
}

QSize ChoiceRow::sizeHint() const
{
    int wide = 0;
    for (const ChoiceCard* card : m_cards)
        wide += card->sizeHint().width() + scaled(6, font());
    return {wide, heightForWidth(std::max(wide, 100))};
}

QSize ChoiceRow::minimumSizeHint() const
{
    int widest = 0;
    for (const ChoiceCard* card : m_cards)
        widest = std::max(widest, card->minimumSizeHint().width());
    return {widest, heightForWidth(std::max(width(), widest))};
}

void ChoiceRow::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    lay(columns(width()), width(), true);
}

void ChoiceRow::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (isRestyle(*event)) {
        updateGeometry();
        lay(columns(width()), width(), true);
    }
}

bool ChoiceRow::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const auto here = std::find(m_cards.begin(), m_cards.end(), watched);
    const auto index = static_cast<int>(here - m_cards.begin());
    const auto* key = static_cast<QKeyEvent*>(event);
    const int count = static_cast<int>(m_cards.size());
    switch (key->key()) {
    case Qt::Key_Left:
    case Qt::Key_Up:
        m_cards[std::size_t((index + count - 1) % count)]->setFocus(Qt::OtherFocusReason);
        return true;
    case Qt::Key_Right:
    case Qt::Key_Down:
        m_cards[std::size_t((index + 1) % count)]->setFocus(Qt::OtherFocusReason);
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        choose(index);
        return true;
    default:
        return QWidget::eventFilter(watched, event); // goes up to keyPressEvent
    }
}

void ChoiceRow::keyPressEvent(QKeyEvent* event)
{
    const Qt::KeyboardModifiers modifiers = event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier);
    const int digit = event->key() - Qt::Key_0;
    if (modifiers == Qt::NoModifier && digit >= 1 && digit <= 9) {
        choose(digit - 1);
        return;
    }
    if (event->key() == Qt::Key_Backspace) {
        Q_EMIT backAsked();
        return;
    }
    if (event->key() == Qt::Key_Question) {
        const auto at = std::find_if(m_cards.begin(), m_cards.end(),
                                     [](const ChoiceCard* card) { return card->hasFocus(); });
        if (at != m_cards.end())
            Q_EMIT largerAsked(m_choices[std::size_t(at - m_cards.begin())].id);
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace cupule::ui
