#include "ui/photos/measure_panel.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QPixmap>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/photos/measure_words.h"
#include "ui/widgets/measure_editor.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

RoleLabel* wrapped(TextRole role, const QString& words, QWidget* parent, Tone tone = Tone::second)
{
    auto* label = new RoleLabel(role, words, parent, tone);
    label->setWordWrap(true);
    return label;
}

} // namespace

MeasurePanel::MeasurePanel(const QString& what, const Pack& pack, const Sign* sign, QWidget* parent)
    : QScrollArea(parent), m_pack(pack), m_number(new RoleLabel(TextRole::emptyTitle, this)),
      m_sure(new RoleLabel(TextRole::heading, this)), m_between(wrapped(TextRole::caption, {}, this)),
      m_range(new RangeStrip(this)), m_coins(new QComboBox(this)), m_coinSource(wrapped(TextRole::caption, {}, this)), m_known(new QLineEdit(this)), m_knownError(new QLineEdit(this)),
      m_scale(wrapped(TextRole::caption, {}, this)), m_line(wrapped(TextRole::caption, {}, this)), m_swatch(new QLabel(this)),
      m_colour(wrapped(TextRole::caption, tr("C picks a patch on the photo."), this))
{
    setObjectName(QStringLiteral("measurePanel"));
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* page = new QWidget(this);
    setGround(*page, "page");
    auto* column = new QVBoxLayout(page);
    column->addWidget(wrapped(TextRole::caption, what, page));
    auto* measuring = makeMeasuring(sign);
    measuring->setVisible(sign != nullptr);
    column->addWidget(measuring);
    column->addWidget(new RoleLabel(TextRole::heading, tr("Colour of a patch"), page));
    auto* colour = new QHBoxLayout;
    colour->addWidget(m_swatch, 0, Qt::AlignTop);
    colour->addWidget(m_colour, 1);
    column->addLayout(colour);
    column->addStretch(1);
    m_swatch->hide();
    m_colour->setObjectName(QStringLiteral("measureColour"));
    m_number->setObjectName(QStringLiteral("measureNumber"));
    setWidget(page);
}

/// Everything but the colour, which is also picked where nothing is measured.
QWidget* MeasurePanel::makeMeasuring(const Sign* sign)
{
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    auto* big = new QHBoxLayout;
    big->addWidget(m_number);
    big->addWidget(m_sure);
    big->addStretch(1);
    column->addLayout(big);
    column->addWidget(m_between);
    column->addWidget(m_range);
    m_range->setVisible(sign != nullptr && sign->unit == "mm");
    if (sign != nullptr)
        m_range->setRange(sign->usualMin, sign->usualMax, sign->hardMax,
                          tr("usual %1 to %2 mm").arg(numberText(sign->usualMin), numberText(sign->usualMax)));
    column->addWidget(makeScale());
    column->addWidget(new RoleLabel(TextRole::heading, tr("2  Across what you measure"), part));
    column->addWidget(m_line);
    column->addWidget(makeErrors());
    column->addWidget(wrapped(TextRole::caption, lengthFormula(), part));
    return part;
}

QWidget* MeasurePanel::makeScale()
{
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    auto* head = new RoleLabel(TextRole::heading, tr("1  Along something you know"), part);
    head->setBuddy(m_known);
    column->addWidget(head);
    m_known->setObjectName(QStringLiteral("measureKnown"));
    m_known->setAccessibleName(tr("Known length in mm"));
    m_knownError->setObjectName(QStringLiteral("measureKnownError"));
    m_knownError->setAccessibleName(tr("Standard uncertainty of the known length in mm"));
    m_knownError->setToolTip(tr("One standard uncertainty of the known length itself"));
    auto* row = new QHBoxLayout;
    for (QLineEdit* field : {m_known, m_knownError}) {
        field->setAlignment(Qt::AlignRight);
        field->setMaximumWidth(scaled(field == m_known ? 90 : 64, font()));
        connect(field, &QLineEdit::textChanged, this, &MeasurePanel::knownChanged);
        connect(field, &QLineEdit::textEdited, this, [this] {   // no longer the coin's
            m_coins->setCurrentIndex(0);
            m_coinSource->clear();
        });
    }
    row->addWidget(m_known);
    row->addWidget(new RoleLabel(TextRole::body, tr("mm, ±", "known length, then its uncertainty"), part));
    row->addWidget(m_knownError);
    row->addWidget(new RoleLabel(TextRole::body, tr("mm"), part));
    row->addStretch(1);
    column->addLayout(row);
    column->addWidget(makeCoins());
    column->addWidget(m_scale);
    return part;
}

/// Coins and cards of the pack: their size, and where it was published.
QWidget* MeasurePanel::makeCoins()
{
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    m_coins->setObjectName(QStringLiteral("measureCoins"));
    m_coins->setAccessibleName(tr("A coin or card of known size"));
    m_coins->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_coins->setMinimumContentsLength(16);
    m_coins->addItem(tr("a ruler, or something else"));
    for (const KnownLength& known : m_pack.knownLengths)
        m_coins->addItem(tr("%1, %2 mm").arg(text(known.words), numberText(known.millimetres, 2)));
    connect(m_coins, &QComboBox::activated, this, &MeasurePanel::takeCoin);
    column->addWidget(m_coins);
    column->addWidget(m_coinSource);
    part->setVisible(!m_pack.knownLengths.empty());
    return part;
}

void MeasurePanel::takeCoin(int index)
{
    if (index <= 0) {
        m_coinSource->clear();
        return;
    }
    const KnownLength& known = m_pack.knownLengths[std::size_t(index) - 1];
    setKnown(known.millimetres, known.uncertaintyMillimetres);
    m_coinSource->setText(tr("Lay the line across its middle. Size: %1 (%2).").arg(text(known.source.text), basisWord(known.source.basis)));
}

void MeasurePanel::askCoin()
{
    m_coins->setFocus(Qt::ShortcutFocusReason);
    m_coins->showPopup();
}

QWidget* MeasurePanel::makeErrors()
{
    auto* part = new QWidget(this);
    auto* grid = new QGridLayout(part);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(new RoleLabel(TextRole::heading, tr("Where the error comes from"), part), 0, 0, 1, 2);
    const QString rows[] = {tr("the two ends of what you measure"), tr("the two ends of the scale"), tr("the known length itself"),
                            tr("scale nearer or farther than the gall")};
    for (int row = 0; row < 4; ++row) {
        grid->addWidget(wrapped(TextRole::caption, rows[row], part, Tone::first), row + 1, 0);
        auto* value = new RoleLabel(TextRole::caption, row == 3 ? tr("not known") : QString(), part, Tone::second);
        value->setAlignment(Qt::AlignRight);
        grid->addWidget(value, row + 1, 1);
        if (row < 3)
            m_errors[row] = value;
    }
    grid->setColumnStretch(0, 1);
    return part;
}

void MeasurePanel::setKnown(double millimetres, double uncertaintyMillimetres)
{
    m_known->setText(millimetres > 0 ? numberText(millimetres, 2) : QString());
    m_knownError->setText(numberText(uncertaintyMillimetres, 2));
}

std::optional<double> MeasurePanel::known() const
{
    return readTypedNumber(m_known->text());
}

double MeasurePanel::knownUncertainty() const
{
    const QString typed = m_knownError->text();
    return typed.trimmed().isEmpty() ? 0 : readTypedNumber(typed).value_or(-1);
}

void MeasurePanel::showLength(const std::optional<PhotoLength>& length, double scalePixels, double linePixels, const QString& fault)
{
    m_number->setText(length ? lengthNumber(length->millimetres, *length) : tr("–"));
    m_sure->setText(length ? lengthSure(*length) : QString());
    m_between->setText(length ? lengthBetween(*length) : tr("First a known length, then across what you measure."));
    m_range->setValue(length ? std::optional(length->millimetres) : std::nullopt);
    if (!fault.isEmpty())
        m_scale->setText(fault);
    else if (scalePixels < 0)
        m_scale->setText(tr("Drag along a ruler or a coin on the photo and type its length."));
    else if (known().value_or(0) > 0)
        m_scale->setText(tr("%1 pixels: %2 to the millimetre").arg(numberText(scalePixels, 0), numberText(scalePixels / *known(), 1)));
    else
        m_scale->setText(tr("%1 pixels. Now type how long that is.").arg(numberText(scalePixels, 0)));
    m_line->setText(linePixels < 0 ? tr("Drag across it, or set the ends with Tab and the arrow keys.")
                                   : tr("%1 pixels. Drag an end, or nudge it with the arrow keys; zoomed in, an end is set more finely.")
                                         .arg(numberText(linePixels, 0)));
    const double parts[] = {length ? length->fromEnds : 0, length ? length->fromScaleEnds : 0, length ? length->fromKnownLength : 0};
    for (std::size_t i = 0; i < 3; ++i)
        m_errors[i]->setText(length ? tr("± %1 mm").arg(QLocale().toString(2 * parts[i], 'f', 2)) : QString());
}

void MeasurePanel::showColour(const Lab& colour, const QColor& shown)
{
    QPixmap swatch(scaled(28, font()), scaled(28, font()));
    swatch.fill(shown);
    m_swatch->setPixmap(swatch);
    m_swatch->show();
    m_colour->setText(colourText(colour, m_pack));
    widget()->layout()->activate();
    ensureWidgetVisible(m_colour);
}

QString MeasurePanel::number() const
{
    return m_number->text();
}

QString MeasurePanel::colour() const
{
    return m_colour->text();
}

} // namespace cupule::ui
