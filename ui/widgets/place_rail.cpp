#include "ui/widgets/place_rail.h"

#include <algorithm>

#include <QAbstractButton>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/theme/mark_painter.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

/// One place: mark, word, note. The present one stands on the page with a bar at its left.
class PlaceButton : public QAbstractButton {
    Q_OBJECT
public:
    PlaceButton(const QString& id, const QString& word, const QString& mark, QWidget* parent)
        : QAbstractButton(parent), m_mark(mark)
    {
        setObjectName(id);
        setText(word);
        setCheckable(true);
        setAttribute(Qt::WA_Hover);
        setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    }

    void setNote(const QString& note)
    {
        m_note = note;
        setAccessibleDescription(note);
        updateGeometry();
        update();
    }

    void setFolded(bool folded)
    {
        m_folded = folded;
        setToolTip(folded ? text() : QString());
        updateGeometry();
        update();
    }

    QSize sizeHint() const override
    {
        const QFontMetrics strong(roleFont(TextRole::strong, font()));
        const int tall = std::max(scaled(40, font()), strong.height() + scaled(16, font()));
        if (m_folded)
            return {scaled(52, font()), tall};
        const int note = m_note.isEmpty() ? 0 : scaled(10, font()) + noteMetrics().horizontalAdvance(m_note);
        return {wordLeft() + strong.horizontalAdvance(text()) + note + scaled(16, font()), tall};
    }

    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent*) override
    {
        const Theme& theme = themeOf(*this);
        QPainter painter(this);
        const bool here = isChecked();
        if (here) {
            painter.fillRect(rect(), theme.page);
            painter.fillRect(QRect(0, 0, 3, height()), theme.nut);
        } else if (underMouse()) {
            painter.fillRect(rect(), theme.panel);
        }
        const int side = scaled(20, font());
        const QColor ink = here ? theme.ink : theme.ink2;
        paintMark(painter, QRect(scaled(16, font()), (height() - side) / 2, side, side), m_mark, ink);
        if (!m_folded) {
            painter.setPen(ink);
            painter.setFont(roleFont(here ? TextRole::strong : TextRole::body, font()));
            painter.drawText(rect().adjusted(wordLeft(), 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, text());
            painter.setFont(roleFont(TextRole::caption, font()));
            painter.setPen(theme.ink2);
            painter.drawText(rect().adjusted(0, 0, -scaled(10, font()), 0), Qt::AlignVCenter | Qt::AlignRight,
                             m_note);
        }
        if (hasFocus())
            paintFocusRing(painter, rect().adjusted(3, 0, 0, 0), palette(), 2);
    }

    void changeEvent(QEvent* event) override
    {
        QAbstractButton::changeEvent(event);
        if (isRestyle(*event))
            updateGeometry();
    }

private:
    [[nodiscard]] int wordLeft() const { return scaled(47, font()); }
    [[nodiscard]] QFontMetrics noteMetrics() const
    {
        return QFontMetrics(roleFont(TextRole::caption, font()));
    }

    QString m_mark, m_note;
    bool m_folded = false;
};

PlaceRail::PlaceRail(QWidget* parent) : QFrame(parent)
{
    setObjectName(QStringLiteral("rail"));
    setAccessibleName(tr("places of work"));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 10, 0, 10);
    column->setSpacing(2);
    column->addStretch(1);
}

int PlaceRail::addPlace(const QString& id, const QString& word, const QString& mark)
{
    auto* button = new PlaceButton(id, word, mark, this);
    button->setFocusPolicy(m_places.empty() ? Qt::StrongFocus : Qt::ClickFocus);
    button->installEventFilter(this);
    connect(button, &QAbstractButton::clicked, this, [this, id] {
        setCurrent(id);
        Q_EMIT placeChosen(id);
    });
    const auto index = static_cast<int>(m_places.size());
    static_cast<QVBoxLayout*>(layout())->insertWidget(index, button);
    m_places.push_back(button);
    return index;
}

void PlaceRail::setShown(const QString& id, bool shown)
{
    for (PlaceButton* place : m_places)
        if (place->objectName() == id)
            place->setVisible(shown);
}

void PlaceRail::setNote(const QString& id, const QString& note)
{
    for (PlaceButton* place : m_places)
        if (place->objectName() == id)
            place->setNote(note);
}

void PlaceRail::setCurrent(const QString& id)
{
    m_current = id;
    for (PlaceButton* place : m_places) {
        const bool here = place->objectName() == id;
        place->setChecked(here);
        place->setFocusPolicy(here ? Qt::StrongFocus : Qt::ClickFocus); // one tab stop: the present place
    }
}

void PlaceRail::setFolded(bool folded)
{
    for (PlaceButton* place : m_places)
        place->setFolded(folded);
}

bool PlaceRail::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress)
        return QFrame::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        static_cast<PlaceButton*>(watched)->click();
        return true;
    }
    if (key != Qt::Key_Up && key != Qt::Key_Down)
        return QFrame::eventFilter(watched, event);
    const auto here = std::find(m_places.begin(), m_places.end(), watched) - m_places.begin();
    const int count = static_cast<int>(m_places.size());
    const int step = key == Qt::Key_Down ? 1 : count - 1;
    for (int i = (static_cast<int>(here) + step) % count; i != here; i = (i + step) % count) {
        if (m_places[std::size_t(i)]->isHidden())
            continue;
        m_places[std::size_t(i)]->setFocus(Qt::OtherFocusReason);
        break;
    }
    return true;
}

} // namespace cupule::ui

#include "place_rail.moc"
