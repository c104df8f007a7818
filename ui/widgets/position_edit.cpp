#include "ui/widgets/position_edit.h"

#include <QEvent>
#include <QKeyEvent>
#include <QLineEdit>
#include <QVBoxLayout>

#include "ui/widgets/role_label.h"

namespace cupule::ui {

PositionEdit::PositionEdit(QWidget* parent)
    : QWidget(parent), m_field(new QLineEdit(this)),
      m_understood(new RoleLabel(TextRole::caption, this, Tone::second)),
      m_problem(new RoleLabel(TextRole::caption, this))
{
    m_field->setObjectName(QStringLiteral("position"));
    m_field->setAccessibleName(tr("position"));
    m_field->setPlaceholderText(tr("grid reference or degrees, any notation"));
    m_field->installEventFilter(this);
    m_understood->setWordWrap(true);
    m_problem->setWordWrap(true);
    m_problem->setTextFormat(Qt::RichText);
    m_problem->setTextInteractionFlags(Qt::LinksAccessibleByKeyboard | Qt::LinksAccessibleByMouse);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    column->addWidget(m_field);
    column->addWidget(m_understood);
    column->addWidget(m_problem);
    setFocusProxy(m_field);
    setFocusPolicy(Qt::StrongFocus); // otherwise no order of tabs could name this field as a whole
    connect(m_field, &QLineEdit::textEdited, this, [this](const QString& typed) {
        read();
        Q_EMIT edited(typed);
    });
    connect(m_problem, &QLabel::linkActivated, this, [this] {
        m_field->setText(m_words.proposal);
        read();
        Q_EMIT edited(m_field->text());
        m_before = m_field->text();
        Q_EMIT finished(m_before);
    });
    read();
}

void PositionEdit::setReader(Reader reader)
{
    m_reader = std::move(reader);
    read();
}

void PositionEdit::setText(const QString& text)
{
    m_before = text;
    if (m_field->text() != text)
        m_field->setText(text);
    read();
}

QString PositionEdit::text() const
{
    return m_field->text();
}

void PositionEdit::setReadOnly(bool readOnly)
{
    m_field->setReadOnly(readOnly);
}

void PositionEdit::read()
{
    const QString typed = m_field->text();
    show(m_reader && !typed.trimmed().isEmpty() ? m_reader(typed) : PositionWords{});
}

void PositionEdit::show(const PositionWords& words)
{
    m_words = words;
    QStringList understood{words.understood, words.uncertainty};
    understood.removeAll(QString());
    m_understood->setText(understood.join(QStringLiteral(", ")));
    m_understood->setVisible(!understood.isEmpty());
    QString problem = words.problem.toHtmlEscaped();
    if (!words.proposal.isEmpty())
        problem += QStringLiteral(" <a href=\"take\">%1</a>")
                       .arg(tr("Use %1", "a proposed text").arg(words.proposal).toHtmlEscaped());
    m_problem->setText(problem);
    m_problem->setVisible(!problem.isEmpty());
    m_field->setAccessibleDescription(m_understood->text() + QLatin1Char(' ') + words.problem);
}

bool PositionEdit::eventFilter(QObject* watched, QEvent* event)
{
    const bool enter =
        event->type() == QEvent::KeyPress && (static_cast<QKeyEvent*>(event)->key() == Qt::Key_Return ||
                                              static_cast<QKeyEvent*>(event)->key() == Qt::Key_Enter);
    if (enter || event->type() == QEvent::FocusOut) {
        if (m_field->text() != m_before) {
            m_before = m_field->text();
            Q_EMIT finished(m_before);
        }
    }
    return QWidget::eventFilter(watched, event);
}

void PositionEdit::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (isRestyle(*event))
        m_field->setFont(roleFont(TextRole::figures, font()));
}

} // namespace cupule::ui
