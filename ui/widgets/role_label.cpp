#include "ui/widgets/role_label.h"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTextEdit>

namespace cupule::ui {

RoleLabel::RoleLabel(TextRole role, QWidget* parent, Tone tone) : QLabel(parent), m_role(role), m_tone(tone)
{
    setTextFormat(Qt::PlainText);
    restyle();
}

RoleLabel::RoleLabel(TextRole role, const QString& words, QWidget* parent, Tone tone)
    : RoleLabel(role, parent, tone)
{
    setText(words);
}

void RoleLabel::setRole(TextRole role, Tone tone)
{
    m_role = role;
    m_tone = tone;
    restyle();
}

void RoleLabel::restyle()
{
    m_restyling = true;
    const QPalette application = QApplication::palette();
    const Theme& theme = themeOf(application);
    setFont(roleFont(m_role, QApplication::font()));
    QPalette own = application;
    own.setColor(QPalette::WindowText, m_tone == Tone::first    ? theme.ink
                                       : m_tone == Tone::second ? theme.ink2
                                                                : theme.ink3);
    setPalette(own);
    m_restyling = false;
}

void RoleLabel::changeEvent(QEvent* event)
{
    QLabel::changeEvent(event);
    if (!m_restyling && isRestyle(*event))
        restyle();
}

bool isRestyle(const QEvent& event)
{
    switch (event.type()) {
    case QEvent::FontChange:
    case QEvent::ApplicationFontChange:
    case QEvent::PaletteChange:
    case QEvent::ApplicationPaletteChange:
    case QEvent::StyleChange:
    case QEvent::LanguageChange:
        return true;
    default:
        return false;
    }
}

void setGround(QWidget& widget, const char* ground)
{
    widget.setAttribute(Qt::WA_StyledBackground);
    widget.setProperty("ground", QString::fromLatin1(ground));
}

bool takesText(const QWidget* widget)
{
    if (const auto* line = qobject_cast<const QLineEdit*>(widget))
        return !line->isReadOnly();
    if (const auto* combo = qobject_cast<const QComboBox*>(widget))
        return combo->isEditable();
    return qobject_cast<const QPlainTextEdit*>(widget) || qobject_cast<const QTextEdit*>(widget) ||
           qobject_cast<const QAbstractSpinBox*>(widget);
}

} // namespace cupule::ui
