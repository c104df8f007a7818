#include "ui/shell/leafing_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>

#include "core/rules/season.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

LeafingDialog::LeafingDialog(const Pack& pack, const std::string& region, int year, CivilDate today,
                             std::optional<CivilDate> observed, QWidget* parent)
    : QDialog(parent), m_pack(pack), m_region(region), m_year(year), m_today(today)
{
    setObjectName(QStringLiteral("leafingDialog"));
    setWindowTitle(tr("When chestnut came into leaf in %1").arg(year));
    new WordFit(this, 560);
    auto* form = new QFormLayout(this);
    const Region* here = pack.region(region);
    std::optional<CivilDate> usual;
    if (here != nullptr)
        if (const auto day = CivilDate::parse(std::to_string(year) + '-' + here->leafingReference))
            usual = *day;
    auto* head = new QLabel(this);
    head->setWordWrap(true);
    QString words = tr("The day on which the first chestnut leaves stood open on the trees you look after. The windows of the signs "
                       "move with it, by at most %1 days.")
                        .arg(pack.settings.shiftLimitDays);
    if (usual)
        words += QLatin1Char(' ') + tr("The calendar counts with %1.").arg(plainDate(*usual, year));
    head->setText(words);
    form->addRow(head);
    m_date = new DateEdit(this);
    m_date->setObjectName(QStringLiteral("leafingDate"));
    m_date->setToday(toDate(today));
    m_date->setPlaceholderText(tr("nobody has observed it: the calendar stands"));
    if (observed)
        m_date->setDate(toDate(*observed));
    form->addRow(tr("&Seen on"), m_date);
    m_says = new QLabel(this);
    m_says->setObjectName(QStringLiteral("leafingSays"));
    m_says->setWordWrap(true);
    form->addRow(m_says);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_keep = box->addButton(tr("Move the season"), QDialogButtonBox::AcceptRole);
    m_keep->setObjectName(QStringLiteral("leafingYes"));
    m_keep->setDefault(true);
    connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    form->addRow(box);
    connect(m_date, &DateEdit::dateChanged, this, &LeafingDialog::refresh);
    connect(m_date, &QLineEdit::textChanged, this, &LeafingDialog::refresh);
    refresh();
}

std::optional<CivilDate> LeafingDialog::observed() const
{
    const QDate date = m_date->date();
    return date.isValid() ? std::optional(fromDate(date)) : std::nullopt;
}

void LeafingDialog::refresh()
{
    const auto day = observed();
    QString words;
    bool good = true;
    if (!day) {
        good = m_date->text().trimmed().isEmpty();
        words = good ? tr("Without a day the calendar stands.") : tr("This is no day yet.");
    } else if (day->year() != m_year) {
        good = false;
        words = tr("This day is not in %1.").arg(m_year);
    } else if (*day > m_today) {
        good = false;
        words = tr("This day has not come yet.");
    } else if (const auto shift = leafingShift(*day, m_region, m_pack)) {
        const UsedShift used = usedShift(*shift, m_pack);
        words = sentenceStart(shiftText(used.days, used.limited)) + QLatin1Char('.');
    }
    m_says->setText(words);
    m_keep->setEnabled(good);
    m_keep->setText(!day && good ? tr("Let the calendar stand") : tr("Move the season"));
}

} // namespace cupule::ui
