#include "ui/widgets/measure_editor.h"

#include <algorithm>
#include <limits>

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QStyle>

#include "ui/bridge/text.h"
#include "ui/theme/theme.h"
#include "ui/widgets/checklist.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

std::optional<double> readTypedNumber(const QString& typed)
{
    QString plain = typed.trimmed();
    plain.replace(QLatin1Char(','), QLatin1Char('.'));
    bool good = false;
    const double value = QLocale::c().toDouble(plain, &good);
    return good ? std::optional(value) : std::nullopt;
}

RangeStrip::RangeStrip(QWidget* parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setFocusPolicy(Qt::NoFocus);
}

void RangeStrip::setRange(double usualMin, double usualMax, double hardMax, const QString& words)
{
    m_usualMin = usualMin;
    m_usualMax = usualMax;
    m_hardMax = std::min(hardMax, usualMax * 1.6);
    setToolTip(words);
    setAccessibleName(words);
    update();
}

void RangeStrip::setValue(std::optional<double> value)
{
    m_value = value;
    update();
}

QSize RangeStrip::sizeHint() const
{
    return {scaled(140, font()), scaled(34, font())};
}

void RangeStrip::paintEvent(QPaintEvent*)
{
    if (m_hardMax <= 0)
        return;
    const Theme& theme = themeOf(*this);
    const QFont small = roleFont(TextRole::small, font());
    const double base = height() - scaled(9, font());
    const auto x = [this](double value) {
        return 2 + (width() - 4) * std::clamp(value / m_hardMax, 0.0, 1.0);
    };
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme.edge, 1));
    painter.drawLine(QPointF(x(0), base), QPointF(x(m_hardMax), base));
    const double thick = scaled(8, font());
    painter.setBrush(theme.leaf);
    painter.drawRect(QRectF(x(m_usualMin), base - thick / 2, x(m_usualMax) - x(m_usualMin), thick));
    painter.setFont(small);
    painter.setPen(theme.ink2);
    const QFontMetrics metrics(small);
    const double above = base - thick / 2 - 2 - metrics.descent();
    const QString from = numberText(m_usualMin);
    const QString to = tr("%1 usual", "upper end of the usual range").arg(numberText(m_usualMax));
    painter.drawText(QPointF(x(m_usualMin) - metrics.horizontalAdvance(from) / 2.0, above), from);
    painter.drawText(
        QPointF(std::min<double>(x(m_usualMax) - 8, width() - metrics.horizontalAdvance(to)), above), to);
    if (m_value) {
        painter.setPen(QPen(theme.nut, 2.4, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(x(*m_value), base - thick), QPointF(x(*m_value), base + thick));
    }
}

MeasureEditor::MeasureEditor(QWidget* parent)
    : QWidget(parent), m_name(new RoleLabel(TextRole::body, this)), m_field(new QLineEdit(this)),
      m_unit(new RoleLabel(TextRole::body, this)), m_range(new RangeStrip(this)),
      m_usual(new RoleLabel(TextRole::caption, this, Tone::second)),
      m_photo(new KeyButton(tr("Measure on a photo"), this)),
      m_from(new RoleLabel(TextRole::caption, this, Tone::second))
{
    setObjectName(QStringLiteral("measureEditor"));
    m_field->setObjectName(QStringLiteral("measure"));
    m_field->setAlignment(Qt::AlignRight);
    m_field->installEventFilter(this);
    m_photo->setCap(tr("M", "key for measuring on a photo"));
    m_photo->setFocusPolicy(Qt::TabFocus);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    for (QWidget* part :
         std::initializer_list<QWidget*>{m_name, m_field, m_unit, m_range, m_usual, m_photo, m_from})
        row->addWidget(part);
    row->addStretch(1);
    connect(m_photo, &QPushButton::clicked, this, [this] { Q_EMIT photoAsked(m_sign); });
    connect(m_field, &QLineEdit::textEdited, this, [this](const QString& typed) {
        const bool bad = !typed.trimmed().isEmpty() && !readTypedNumber(typed);
        m_field->setProperty("bad", bad);
        m_field->style()->polish(m_field);
        m_range->setValue(readTypedNumber(typed));
    });
    shorten();
}

void MeasureEditor::setRow(const ChecklistRow& row)
{
    const bool other = row.sign != m_sign;
    m_sign = row.sign;
    m_name->setText(sentenceStart(row.measureName));
    const QString unit = row.wholeNumber || row.unit == QLatin1String("percent") ? QString() : row.unit;
    const QString shownUnit = row.unit == QLatin1String("percent") ? QStringLiteral("%") : unit;
    m_unit->setText(row.measureError
                        ? tr("%1 ± %2", "unit, error").arg(shownUnit, numberText(*row.measureError))
                        : shownUnit);
    m_unit->setVisible(!m_unit->text().isEmpty());
    const QString usual = tr("usual %1 to %2 %3", "range, unit")
                              .arg(numberText(row.usualMin), numberText(row.usualMax), shownUnit)
                              .trimmed();
    m_range->setRange(row.usualMin, row.usualMax, row.hardMax, usual);
    m_range->setValue(row.measure);
    m_usual->setText(usual);
    m_from->setText(row.measuredOn);
    m_onPhoto = row.unit == QLatin1String("mm") || row.unit == QLatin1String("cm");
    m_field->setAccessibleName(
        tr("%1, %2: %3", "spoken: sign, measure, usual range").arg(row.words, row.measureName, usual));
    if (other || !m_field->hasFocus()) {
        m_before = row.measure ? numberText(*row.measure, row.wholeNumber ? 0 : 2) : QString();
        m_field->setText(m_before);
        m_field->setProperty("bad", false);
    }
    shorten();
}

void MeasureEditor::start()
{
    m_field->setFocus(Qt::OtherFocusReason);
    m_field->selectAll();
}

int MeasureEditor::heightFor(const QFont& font)
{
    return std::max(38, QFontMetrics(font).height() + scaled(26, font));
}

bool MeasureEditor::take()
{
    const QString typed = m_field->text().trimmed();
    if (typed == m_before)
        return true;
    const auto value = readTypedNumber(typed);
    if (!typed.isEmpty() && !value)
        return false;
    m_before = typed;
    Q_EMIT taken(m_sign, value.value_or(std::numeric_limits<double>::quiet_NaN()));
    return true;
}

bool MeasureEditor::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::FocusOut)
        take();
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (take())
            Q_EMIT movedOn();
        return true;
    case Qt::Key_Escape:
        m_field->setText(m_before);
        m_field->setProperty("bad", false);
        Q_EMIT left();
        return true;
    case Qt::Key_Up:
    case Qt::Key_Down:
        if (take())
            Q_EMIT left();
        return true;
    default:
        return QWidget::eventFilter(watched, event);
    }
}

/// First the source of the number goes, then the range becomes words, then the name of the measure.
void MeasureEditor::shorten()
{
    layout()->setSpacing(scaled(10, font()));
    m_field->setFont(roleFont(TextRole::figures, font()));
    m_field->setFixedWidth(QFontMetrics(m_field->font()).horizontalAdvance(QStringLiteral("000.0")) + 24);
    const int gap = layout()->spacing();
    const auto need = [gap](const QWidget* part) { return part->sizeHint().width() + gap; };
    int room = width() - m_field->width() - (m_unit->isHidden() ? 0 : need(m_unit));
    const auto take = [&room, &need](QWidget* part, bool wanted) { // in order of what is missed most
        const bool fits = wanted && room >= need(part);
        part->setVisible(fits);
        room -= fits ? need(part) : 0;
        return fits;
    };
    take(m_photo, m_onPhoto);
    take(m_name, true);
    const bool range = take(m_range, true);
    take(m_usual, !range);
    take(m_from, !m_from->text().isEmpty());
}

void MeasureEditor::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    shorten();
}

void MeasureEditor::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange)
        shorten();
}

} // namespace cupule::ui
