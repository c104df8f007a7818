#include "ui/widgets/empty_state.h"

#include <QEvent>
#include <QGridLayout>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/figures/figure.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int mostWidth = 900;

/// The drawing beside a way to begin.
class FigureBox : public QWidget {
public:
    FigureBox(const QString& figure, QWidget* parent) : QWidget(parent), m_figure(figure)
    {
        setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    }
    QSize sizeHint() const override { return {scaled(140, font()), scaled(84, font())}; }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QString mark = QStringLiteral("mark:");
        if (m_figure.startsWith(mark)) {
            const int side = scaled(52, font());
            paintMark(painter, QRect((width() - side) / 2, (height() - side) / 2, side, side),
                      m_figure.sliced(mark.size()), themeOf(*this).ink2);
        } else if (hasFigure(m_figure)) {
            Depiction spec = plate(m_figure);
            spec.view.turnDegrees = 62; // lies in its row
            paintFigure(painter, rect(), spec);
        }
    }

private:
    QString m_figure;
};

QFrame* rule(QWidget* parent)
{
    auto* line = new QFrame(parent);
    line->setFixedHeight(1);
    line->setAutoFillBackground(true);
    line->setBackgroundRole(QPalette::Mid);
    return line;
}

} // namespace

EmptyState::EmptyState(QWidget* parent)
    : QWidget(parent), m_title(new RoleLabel(TextRole::emptyTitle, this)),
      m_sentence(new RoleLabel(TextRole::body, this, Tone::second)),
      m_foot(new RoleLabel(TextRole::body, this, Tone::second)), m_ways(new QGridLayout)
{
    for (QLabel* label : {m_title, m_sentence, m_foot})
        label->setWordWrap(true);
    m_foot->hide();
    m_ways->setColumnStretch(1, 1);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_title);
    column->addWidget(m_sentence);
    column->addSpacing(10);
    column->addLayout(m_ways);
    column->addSpacing(14);
    column->addWidget(m_foot);
    column->addStretch(1);
    setMaximumWidth(mostWidth);
    restyle();
}

void EmptyState::setTitle(const QString& title, const QString& sentence)
{
    m_title->setText(title);
    m_sentence->setText(sentence);
    m_sentence->setVisible(!sentence.isEmpty());
}

KeyButton* EmptyState::addWay(const QString& figure, const QString& heading, const QString& sentence,
                              const QString& button, const QKeySequence& key)
{
    const int row = 2 * m_count;
    m_ways->addWidget(rule(this), row, 0, 1, 3);
    m_ways->addWidget(new FigureBox(figure, this), row + 1, 0, Qt::AlignCenter);
    auto* words = new QVBoxLayout;
    words->setSpacing(3);
    words->addStretch(1);
    words->addWidget(new RoleLabel(TextRole::heading, heading, this));
    auto* more = new RoleLabel(TextRole::body, sentence, this, Tone::second);
    more->setWordWrap(true);
    words->addWidget(more);
    words->addStretch(1);
    m_ways->addLayout(words, row + 1, 1);
    auto* press = new KeyButton(button, this);
    if (!key.isEmpty())
        press->setKey(key);
    press->setMain(m_count == 0);
    press->setAccessibleDescription(sentence);
    m_ways->addWidget(press, row + 1, 2, Qt::AlignVCenter);
    ++m_count;
    return press;
}

void EmptyState::setFoot(const QString& words)
{
    m_foot->setText(words);
    m_foot->setVisible(!words.isEmpty());
}

void EmptyState::restyle()
{
    const int pad = scaled(34, font());
    layout()->setContentsMargins(pad, pad, pad, pad / 2);
    m_ways->setHorizontalSpacing(scaled(22, font()));
    m_ways->setVerticalSpacing(scaled(14, font()));
    setMaximumWidth(scaled(mostWidth, font()));
}

void EmptyState::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        restyle();
}

} // namespace cupule::ui
