#include "ui/widgets/key_button.h"

#include <algorithm>

#include <QKeyEvent>
#include <QPainter>
#include <QStyle>

#include "ui/theme/style.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

bool g_capsShown = true; // one setting of the program, read while painting

constexpr int capPadding = 5;
constexpr int gapBeforeCap = 12;
constexpr int ringRoom = 3; // for the focus ring and its gap

int sidePadding(const QFont& font)
{
    return scaled(13, font);
}

} // namespace

int keyCapWidth(const QString& key, const QFont& font)
{
    if (key.isEmpty())
        return 0;
    const QFontMetrics metrics(roleFont(TextRole::small, font));
    return std::max(metrics.horizontalAdvance(key) + 2 * capPadding, metrics.height());
}

QRect paintKeyCap(QPainter& painter, const QRect& where, const QString& key, const QFont& font,
                  const QColor& ink, const QColor& edge)
{
    if (key.isEmpty())
        return {};
    const QFont small = roleFont(TextRole::small, font);
    const int height = QFontMetrics(small).height() + 1;
    const int width = keyCapWidth(key, font);
    const QRect cap(where.right() - width + 1, where.center().y() - height / 2, width, height);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(edge, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(cap).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
    painter.setFont(small);
    painter.setPen(ink);
    painter.drawText(cap, Qt::AlignCenter, key);
    painter.restore();
    return cap;
}

KeyButton::KeyButton(const QString& words, QWidget* parent) : QPushButton(words, parent)
{
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setCursor(Qt::ArrowCursor);
    setAttribute(Qt::WA_Hover);
}

void KeyButton::setKey(const QKeySequence& key, bool shown)
{
    setShortcut(key);
    setCap(shown ? key.toString(QKeySequence::NativeText) : QString());
}

void KeyButton::setCap(const QString& cap)
{
    m_cap = cap;
    updateGeometry();
    update();
}

void KeyButton::setMain(bool main)
{
    m_main = main;
    updateGeometry();
    update();
}

void KeyButton::showCaps(bool shown)
{
    g_capsShown = shown;
}

QString KeyButton::cap() const
{
    return g_capsShown ? m_cap : QString();
}

QSize KeyButton::sizeHint() const
{
    const QFontMetrics metrics(roleFont(m_main ? TextRole::strong : TextRole::body, font()));
    const QString key = cap();
    const int words = metrics.size(Qt::TextShowMnemonic, text()).width();
    const int width =
        words + 2 * sidePadding(font()) + (key.isEmpty() ? 0 : gapBeforeCap + keyCapWidth(key, font()));
    return {std::max(width, 24),
            std::max(24, metrics.height() + scaled(m_main ? 18 : 13, font()) + 2 * ringRoom)};
}

QSize KeyButton::minimumSizeHint() const
{
    return sizeHint();
}

/// A key acts at once; Qt would show the button pressed for a tenth of a second first.
bool KeyButton::event(QEvent* event)
{
    if (event->type() != QEvent::Shortcut)
        return QPushButton::event(event);
    if (static_cast<QShortcutEvent*>(event)->isAmbiguous())
        setFocus(Qt::ShortcutFocusReason);
    else
        click();
    return true;
}

void KeyButton::paintEvent(QPaintEvent*)
{
    const Theme& theme = themeOf(*this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool filled = m_main && isEnabled();
    const bool ring = hasFocus();
    const QRectF box =
        QRectF(rect()).adjusted(ringRoom + 0.5, ringRoom + 0.5, -ringRoom - 0.5, -ringRoom - 0.5);
    const bool over = isEnabled() && underMouse();
    painter.setPen(QPen(filled ? theme.nut : !isEnabled() ? theme.line : over ? theme.ink : theme.edge, 1));
    const QColor ground = filled ? theme.nut : !isEnabled() ? QColor(Qt::transparent) : theme.well;
    painter.setBrush(isDown() && !filled ? theme.leaf : ground);
    painter.drawRoundedRect(box, 4, 4);
    if (ring)
        paintFocusRing(painter, rect(), palette(), 6);

    const QColor ink = filled ? theme.nutInk : isEnabled() ? theme.ink : theme.ink3;
    const QRect inside = rect().adjusted(sidePadding(font()), 0, -sidePadding(font()), 0);
    const QString key = cap();
    const QRect capRect =
        paintKeyCap(painter, inside, key, font(), filled ? ink : theme.ink2, filled ? ink : theme.edge);
    const QRect wordsRect =
        key.isEmpty() ? inside : inside.adjusted(0, 0, -capRect.width() - gapBeforeCap, 0);
    painter.setFont(roleFont(m_main ? TextRole::strong : TextRole::body, font()));
    painter.setPen(ink);
    const int flags =
        Qt::AlignVCenter | Qt::TextShowMnemonic | (key.isEmpty() ? Qt::AlignHCenter : Qt::AlignLeft);
    painter.drawText(wordsRect, flags, text());
}

} // namespace cupule::ui
