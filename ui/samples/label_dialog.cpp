#include "ui/samples/label_dialog.h"

#include <algorithm>

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/theme/theme.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

constexpr int labelsOfSample = 3; // inner bag, outer bag, papers
constexpr int usualCount = 4;     // as many samples as one day's box holds

} // namespace

/// The sheet in small: labels that will be printed are filled, places used up are struck.
class SheetPicture : public QWidget {
public:
    using QWidget::QWidget;
    void show(const SheetSetup& setup, int labels)
    {
        m_setup = setup;
        m_labels = labels;
        update();
    }
    QSize sizeHint() const override
    {
        const int height = scaled(230, font());
        return {static_cast<int>(height * sheetWidth / sheetHeight) + 2, height};
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        const Theme& theme = themeOf(*this);
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const double scale = std::min((width() - 2) / sheetWidth, (height() - 2) / sheetHeight);
        painter.translate(1, 1);
        painter.setPen(QPen(theme.edge, 1));
        painter.setBrush(theme.page);
        painter.drawRect(QRectF(0, 0, sheetWidth * scale, sheetHeight * scale));
        if (!m_setup.fits())
            return;
        for (int at = 0; at < m_setup.perSheet(); ++at) {
            const QRectF place = m_setup.place(at);
            const QRectF label(place.topLeft() * scale, place.size() * scale);
            const int number = at - (m_setup.free - 1);
            painter.setPen(QPen(theme.ink2, 1));
            painter.setBrush(number >= 0 && number < m_labels ? QBrush(theme.okSoft) : QBrush(Qt::NoBrush));
            painter.drawRect(label);
            if (number < 0)
                painter.drawLine(label.bottomLeft(), label.topRight());
        }
    }

private:
    SheetSetup m_setup;
    int m_labels = 0;
};

LabelDialog::LabelDialog(const QString& kept, QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("labelDialog"));
    setWindowTitle(tr("Print labels"));
    new WordFit(this, 620);
    auto* row = new QHBoxLayout;
    auto* form = new QFormLayout;
    row->addLayout(form, 1);
    buildSheet(form, readSheet(kept).value_or(SheetSetup()));
    m_picture = new SheetPicture(this);
    row->addWidget(m_picture, 0, Qt::AlignTop);
    m_says = new QLabel(this);
    m_says->setObjectName(QStringLiteral("labelSays"));
    m_says->setWordWrap(true);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_write = box->addButton(tr("Write the labels…"), QDialogButtonBox::AcceptRole);
    m_write->setObjectName(QStringLiteral("labelYes"));
    m_write->setDefault(true);
    connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addLayout(row);
    column->addWidget(m_says);
    column->addWidget(box);
    refresh();
}

QDoubleSpinBox* LabelDialog::length(double value, const char* name, const QString& said)
{
    auto* field = new QDoubleSpinBox(this);
    field->setObjectName(QString::fromLatin1(name));
    field->setAccessibleName(said);
    field->setDecimals(1);
    field->setButtonSymbols(QAbstractSpinBox::NoButtons);
    field->setRange(0, 100);
    field->setSingleStep(0.5);
    field->setSuffix(tr(" mm", "length"));
    field->setValue(value);
    connect(field, &QDoubleSpinBox::valueChanged, this, &LabelDialog::refresh);
    return field;
}

QWidget* LabelDialog::pair(QDoubleSpinBox* first, const QString& between, QDoubleSpinBox* second)
{
    auto* box = new QWidget(this);
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(first);
    row->addWidget(new QLabel(between, box));
    row->addWidget(second);
    box->setFocusProxy(first);
    return box;
}

void LabelDialog::buildSheet(QFormLayout* form, const SheetSetup& kept)
{
    const auto count = [this](int value, const char* name, int most) {
        auto* field = new QSpinBox(this);
        field->setObjectName(QString::fromLatin1(name));
        field->setRange(1, most);
        field->setButtonSymbols(QAbstractSpinBox::NoButtons);
        field->setValue(value);
        connect(field, &QSpinBox::valueChanged, this, &LabelDialog::refresh);
        return field;
    };
    m_rows = count(kept.rows, "labelRows", 20);
    m_columns = count(kept.columns, "labelColumns", 5);
    m_left = length(kept.left, "labelLeft", tr("Margin left"));
    m_right = length(kept.right, "labelRight", tr("Margin right"));
    m_top = length(kept.top, "labelTop", tr("Margin at the top"));
    m_bottom = length(kept.bottom, "labelBottom", tr("Margin at the foot"));
    m_across = length(kept.across, "labelAcross", tr("Gap between columns"));
    m_down = length(kept.down, "labelDown", tr("Gap between rows"));
    m_free = count(1, "labelFree", 100);
    form->addRow(tr("&Rows of labels"), m_rows);
    form->addRow(tr("&Columns"), m_columns);
    form->addRow(tr("Margin &left"), pair(m_left, tr("right"), m_right));
    form->addRow(tr("Margin at the &top"), pair(m_top, tr("foot"), m_bottom));
    form->addRow(tr("&Gap between columns"), pair(m_across, tr("rows"), m_down));
    form->addRow(tr("&First free place"), m_free);
}

void LabelDialog::askHowMany(int waiting, int most)
{
    setWindowTitle(tr("Labels to take along"));
    m_waiting = waiting;
    auto* column = static_cast<QVBoxLayout*>(layout());
    auto* form = new QFormLayout;
    auto* words = new QLabel(tr("Numbers are reserved for good: each belongs to the sample on whose bags it sticks, and is never "
                                "given again. Whoever opens that sample types the number off the label."),
                             this);
    words->setWordWrap(true);
    m_count = new QSpinBox(this);
    m_count->setObjectName(QStringLiteral("labelCount"));
    m_count->setRange(1, most);
    m_count->setButtonSymbols(QAbstractSpinBox::NoButtons);
    m_count->setValue(usualCount);
    connect(m_count, &QSpinBox::valueChanged, this, &LabelDialog::refresh);
    form->addRow(words);
    form->addRow(tr("&Samples to be ready for"), m_count);
    if (waiting > 0) {
        m_again = new QCheckBox(tr("No new numbers: print the %n that wait once more", nullptr, waiting), this);
        m_again->setObjectName(QStringLiteral("labelAgain"));
        connect(m_again, &QCheckBox::toggled, this, &LabelDialog::refresh);
        form->addRow(m_again);
    }
    column->insertLayout(0, form);
    m_count->setFocus(Qt::OtherFocusReason);
    m_count->selectAll();
    setTabOrder(m_count, m_rows);
    refresh();
}

SheetSetup LabelDialog::setup() const
{
    SheetSetup typed;
    typed.rows = m_rows->value();
    typed.columns = m_columns->value();
    typed.left = m_left->value();
    typed.right = m_right->value();
    typed.top = m_top->value();
    typed.bottom = m_bottom->value();
    typed.across = m_across->value();
    typed.down = m_down->value();
    typed.free = m_free->value();
    return typed;
}

int LabelDialog::count() const
{
    return m_again != nullptr && m_again->isChecked() ? 0 : m_count != nullptr ? m_count->value() : 1;
}

void LabelDialog::refresh()
{
    if (m_write == nullptr)
        return;
    if (m_again != nullptr)
        m_count->setEnabled(!m_again->isChecked());
    const SheetSetup typed = setup();
    const int samples = m_count == nullptr ? 1 : count() == 0 ? m_waiting : count();
    const int labels = labelsOfSample * samples;
    const int sheets = (labels + typed.free - 1 + typed.perSheet() - 1) / typed.perSheet();
    const QSizeF size = typed.labelSize();
    if (typed.fits())
        m_says->setText(tr("%1 labels of %2 × %3 mm on %4 sheets of A4. Print at 100 %.")
                            .arg(labels)
                            .arg(numberText(size.width(), 0), numberText(size.height(), 0))
                            .arg(sheets));
    else if (typed.free > typed.perSheet())
        m_says->setText(tr("The sheet has only %1 places.").arg(typed.perSheet()));
    else
        m_says->setText(tr("That leaves labels of %1 × %2 mm; one needs %3 × %4 mm to say all it must.")
                            .arg(numberText(std::max(0.0, size.width()), 0), numberText(std::max(0.0, size.height()), 0),
                                 numberText(smallestLabelWidth, 0), numberText(smallestLabelHeight, 0)));
    m_write->setEnabled(typed.fits());
    m_picture->show(typed, labels);
}

} // namespace cupule::ui
