#include "ui/shell/programme_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "ui/bridge/text.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QLabel* sentence(const QString& words, QWidget* parent)
{
    auto* label = new QLabel(words, parent);
    label->setWordWrap(true);
    return label;
}

} // namespace

ProgrammeDialog::ProgrammeDialog(const Programme& programme, const Pack& pack, bool rules, QWidget* parent)
    : QDialog(parent), m_proposed(proposedLimits(pack))
{
    setObjectName(QStringLiteral("programmeDialog"));
    setWindowTitle(tr("What the programme sets"));
    new WordFit(this, 620);
    auto* form = new QFormLayout(this);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->addRow(sentence(tr("No law and no published figure says these: they are the programme's to set. They stand in the "
                             "notice after a find, on labels and on custody records. Every change is in the journal."),
                          this));
    m_tell = addLine(tr("&Whom to tell of a find"), tr("nobody has set it yet: name, telephone"), programme.tell, "programmeTell");
    m_answers = addLine(tr("Who &answers for samples"), tr("on labels: an office or a box number, no home address"),
                        programme.answers, "programmeAnswers");
    m_mayMove = addLine(tr("Who may &move a sample"), tr("nobody has set it yet: ask the authority first"), programme.mayMove,
                        "programmeMayMove");
    m_own = new QCheckBox(tr("The programme has set its own &hours, counted from the seal"), this);
    m_own->setObjectName(QStringLiteral("programmeOwnHours"));
    m_own->setChecked(programme.limits.has_value());
    form->addRow(m_own);
    addHours(limitsOf(programme, pack));
    m_note = sentence({}, this);
    m_note->setObjectName(QStringLiteral("programmeHoursNote"));
    form->addRow(m_note);
    addDetection(programme.detection);
    if (!rules)
        form->addRow(sentence(tr("Who may move a sample, the hours and detection are for a trainer or the office to change."), this));
    m_detection->setEnabled(rules);
    m_mayMove->setEnabled(rules);
    m_own->setEnabled(rules);
    m_buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* yes = m_buttons->addButton(tr("Keep these"), QDialogButtonBox::AcceptRole);
    yes->setObjectName(QStringLiteral("programmeYes"));
    yes->setDefault(true);
    connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    form->addRow(m_buttons);
    connect(m_own, &QCheckBox::toggled, this, &ProgrammeDialog::refreshHours);
    for (QDoubleSpinBox* hours : m_hours)
        connect(hours, &QDoubleSpinBox::valueChanged, this, &ProgrammeDialog::refreshHours);
    refreshHours();
}

QLineEdit* ProgrammeDialog::addLine(const QString& words, const QString& hint, const std::string& value, const char* name)
{
    auto* field = new QLineEdit(text(value), this);
    field->setObjectName(QString::fromLatin1(name));
    field->setPlaceholderText(hint);
    field->setMaxLength(120);
    static_cast<QFormLayout*>(layout())->addRow(words, field);
    return field;
}

void ProgrammeDialog::addHours(const SampleLimits& limits)
{
    const QString words[] = {tr("warned of after"), tr("asked about after"), tr("of no use for rearing after")};
    const double values[] = {limits.warnHours, limits.askHours, limits.rearingHours};
    const char* names[] = {"programmeWarn", "programmeAsk", "programmeRearing"};
    for (int i = 0; i < 3; ++i) {
        m_hours[i] = new QDoubleSpinBox(this);
        m_hours[i]->setObjectName(QString::fromLatin1(names[i]));
        m_hours[i]->setDecimals(0);
        m_hours[i]->setButtonSymbols(QAbstractSpinBox::NoButtons);
        m_hours[i]->setRange(1, mostLimitHours);
        m_hours[i]->setSuffix(tr(" h", "hours"));
        m_hours[i]->setValue(values[i]);
        static_cast<QFormLayout*>(layout())->addRow(words[i], m_hours[i]);
    }
}

/// What the account of the season takes a look to find; it is said there.
void ProgrammeDialog::addDetection(DetectionChoice chosen)
{
    m_detection = new QComboBox(this);
    m_detection->setObjectName(QStringLiteral("programmeDetection"));
    m_detection->addItem(tr("as the protocol states"));
    m_detection->addItem(tr("as measured of each observer (lower bound)"));
    m_detection->setCurrentIndex(chosen == DetectionChoice::measured ? 1 : 0);
    auto* form = static_cast<QFormLayout*>(layout());
    form->addRow(tr("&Detection in the account"), m_detection);
    form->addRow(sentence(tr("Measured in practice and told with consent; whoever is not measured keeps the protocol’s value. The account says which was taken, and "
                             "for how many."),
                          this));
}

/// The proposal is shown, but only the programme's own hours can be typed.
void ProgrammeDialog::refreshHours()
{
    const bool own = m_own->isChecked();
    const double proposed[] = {m_proposed.warnHours, m_proposed.askHours, m_proposed.rearingHours};
    for (int i = 0; i < 3; ++i) {
        m_hours[i]->setEnabled(own && m_own->isEnabled());
        const QSignalBlocker quiet(m_hours[i]);
        if (!own)
            m_hours[i]->setValue(proposed[i]);
    }
    const bool rises = m_hours[0]->value() < m_hours[1]->value() && m_hours[1]->value() <= m_hours[2]->value();
    m_note->setText(!own     ? tr("These hours are a proposal, the programme's to set.")
                    : !rises ? tr("The hours must rise from the first to the last.")
                             : tr("These hours are the programme's own."));
    for (QAbstractButton* button : m_buttons->buttons())
        if (m_buttons->buttonRole(button) == QDialogButtonBox::AcceptRole)
            button->setEnabled(!own || rises);
}

Programme ProgrammeDialog::programme() const
{
    Programme typed;
    typed.tell = utf8(m_tell->text().trimmed());
    typed.answers = utf8(m_answers->text().trimmed());
    typed.mayMove = utf8(m_mayMove->text().trimmed());
    typed.detection = m_detection->currentIndex() == 1 ? DetectionChoice::measured : DetectionChoice::protocol;
    if (m_own->isChecked())
        typed.limits = SampleLimits{m_hours[0]->value(), m_hours[1]->value(), m_hours[2]->value()};
    return typed;
}

} // namespace cupule::ui
