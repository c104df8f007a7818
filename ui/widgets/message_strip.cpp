#include "ui/widgets/message_strip.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/bridge/words.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr qsizetype manyWords = 200; // characters

QString markOf(MessageStrip::Kind kind)
{
    switch (kind) {
    case MessageStrip::Kind::error:
        return QStringLiteral("severity-stop");
    case MessageStrip::Kind::question:
        return QStringLiteral("severity-ask");
    case MessageStrip::Kind::note:
        return QStringLiteral("severity-note");
    case MessageStrip::Kind::done:
        break;
    }
    return QStringLiteral("severity-done");
}

QColor groundOf(MessageStrip::Kind kind, const Theme& theme)
{
    switch (kind) {
    case MessageStrip::Kind::error:
        return theme.stopSoft;
    case MessageStrip::Kind::question:
        return theme.askSoft;
    case MessageStrip::Kind::note:
        return theme.noteSoft;
    case MessageStrip::Kind::done:
        break;
    }
    return theme.okSoft;
}

} // namespace

MessageStrip::MessageStrip(QWidget* parent)
    : QFrame(parent), m_what(new RoleLabel(TextRole::strong, this)),
      m_more(new RoleLabel(TextRole::body, this)), m_button(new KeyButton(QString(), this)),
      m_away(new KeyButton(tr("Close"), this))
{
    setObjectName(QStringLiteral("message"));
    setAccessibleName(tr("message"));
    m_button->setObjectName(QStringLiteral("messageButton"));
    m_away->setCap(tr("Esc", "the key"));
    m_what->setWordWrap(true);
    m_more->setWordWrap(true);
    m_more->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(m_what);
    words->addWidget(m_more);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_button, 0, Qt::AlignVCenter);
    buttons->addWidget(m_away, 0, Qt::AlignVCenter);
    buttons->addStretch(1);
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_row->addLayout(words, 1);
    m_row->addLayout(buttons);
    connect(m_button, &QPushButton::clicked, this, &MessageStrip::buttonPressed);
    connect(m_away, &QPushButton::clicked, this, &MessageStrip::clear);
    restyle();
    hide();
}

void MessageStrip::show(Kind kind, const QString& what, const QString& more, const QString& button)
{
    m_kind = kind;
    m_what->setText(what);
    m_more->setText(more);
    m_more->setVisible(!more.isEmpty());
    m_button->setText(button);
    m_button->setVisible(!button.isEmpty());
    // beside many words buttons would take their room
    m_row->setDirection(more.size() > manyWords ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    setAccessibleDescription(what + QLatin1Char(' ') + more);
    QFrame::show();
    update();
}

void MessageStrip::showFault(const Fault& fault, const QString& button)
{
    const FaultWords words = faultWords(fault);
    QStringList more{words.where, words.kept, words.toDo};
    more.removeAll(QString());
    show(Kind::error, words.what, more.join(QLatin1Char(' ')), button);
    setToolTip(QString::fromStdString(fault.technical));
}

void MessageStrip::clear()
{
    if (isHidden())
        return;
    hide();
    Q_EMIT cleared();
}

void MessageStrip::setStays(bool stays)
{
    m_away->setVisible(!stays);
}

QString MessageStrip::what() const
{
    return m_what->text();
}

void MessageStrip::restyle()
{
    const int pad = scaled(10, font());
    layout()->setContentsMargins(scaled(52, font()), pad, scaled(14, font()), pad);
}

void MessageStrip::paintEvent(QPaintEvent*)
{
    const Theme& theme = themeOf(*this);
    QPainter painter(this);
    painter.fillRect(rect(), groundOf(m_kind, theme));
    painter.fillRect(QRect(0, height() - 1, width(), 1), theme.line);
    const int side = scaled(24, font());
    paintMark(painter, QRect(scaled(16, font()), (height() - side) / 2, side, side), markOf(m_kind),
              theme.ink);
}

void MessageStrip::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && !m_away->isHidden())
        clear();
    else
        QFrame::keyPressEvent(event);
}

void MessageStrip::changeEvent(QEvent* event)
{
    QFrame::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        restyle();
}

} // namespace cupule::ui
