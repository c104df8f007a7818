#include "ui/review/audit_make_page.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words_audit.h"
#include "ui/review/audit_desk.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

QDoubleSpinBox* percentField(const char* name, double least, double most, double value, QWidget* parent)
{
    auto* field = new QDoubleSpinBox(parent);
    field->setObjectName(QString::fromLatin1(name));
    field->setDecimals(1);
    field->setRange(least, most);
    field->setValue(value);
    field->setSuffix(AuditMakePage::tr(" %", "percent"));
    field->setButtonSymbols(QAbstractSpinBox::NoButtons);
    return field;
}

QLabel* wrapped(const char* name, QWidget* parent, TextRole role = TextRole::body)
{
    auto* label = new RoleLabel(role, parent);
    label->setObjectName(QString::fromLatin1(name));
    label->setWordWrap(true);
    return label;
}

} // namespace

AuditMakePage::AuditMakePage(AuditDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    auto* what = wrapped("auditWhat", this);
    what->setText(tr("Routine records of “nothing seen” are accepted together once another verifier has looked at some of them, drawn "
                     "by chance and mixed with records decided before, without being told which is which."));
    m_auditor = new QComboBox(this);
    m_auditor->setObjectName(QStringLiteral("auditAuditor"));
    m_confidence = percentField("auditConfidence", 50, 99.9, 95, this);
    m_tolerable = percentField("auditTolerable", 0.1, 50, 5, this);
    auto* form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->addRow(tr("&Who looks at the drawn ones"), m_auditor);
    form->addRow(tr("&Confidence wanted"), m_confidence);
    form->addRow(tr("&Share of wrong records that must not go unnoticed"), m_tolerable);
    m_size = wrapped("auditSize", this, TextRole::heading);
    m_leftOut = wrapped("auditLeftOut", this);
    m_make = new KeyButton(tr("Draw the batch"), this);
    m_make->setObjectName(QStringLiteral("auditMake"));
    m_make->setMain(true);
    m_make->setAutoDefault(false);
    auto* away = new KeyButton(tr("Make none"), this);
    away->setObjectName(QStringLiteral("auditMakeNone"));
    away->setAutoDefault(false);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(away);
    row->addWidget(m_make);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(18, 14, 18, 14);
    column->setSpacing(12);
    column->addWidget(what);
    column->addLayout(form);
    column->addWidget(m_size);
    column->addWidget(m_leftOut);
    column->addStretch(1);
    column->addLayout(row);
    connect(m_auditor, &QComboBox::activated, this, &AuditMakePage::look);
    for (QDoubleSpinBox* field : {m_confidence, m_tolerable})
        connect(field, &QDoubleSpinBox::valueChanged, this, &AuditMakePage::refresh);
    connect(m_make, &QPushButton::clicked, this, [this] {
        m_desk.make(wanted(), [this](const Uid& audit) { Q_EMIT made(audit); });
    });
    connect(away, &QPushButton::clicked, this, &AuditMakePage::left);
}

void AuditMakePage::begin()
{
    m_people = m_desk.auditors();
    m_auditor->clear();
    for (const Person& person : m_people)
        m_auditor->addItem(person.name.empty() ? text(person.code) : tr("%1 (%2)").arg(text(person.name), text(person.code)));
    m_auditor->setFocus(Qt::OtherFocusReason);
    look();
}

AuditWanted AuditMakePage::wanted() const
{
    AuditWanted wanted;
    const int at = m_auditor->currentIndex();
    if (at >= 0 && at < static_cast<int>(m_people.size()))
        wanted.auditor = m_people[static_cast<std::size_t>(at)].id;
    wanted.confidence = m_confidence->value() / 100;
    wanted.tolerable = m_tolerable->value() / 100;
    return wanted;
}

void AuditMakePage::look()
{
    m_offer.reset();
    if (!m_people.empty())
        m_desk.offer(wanted(), [this](const AuditOffer& offer) {
            m_offer = offer;
            refresh();
        });
    refresh();
}

/// Which records could go in depends on the auditor alone; how many of them are drawn is reckoned as the shares are typed.
void AuditMakePage::refresh()
{
    const AuditWanted typed = wanted();
    const auto size = m_offer ? auditSize(m_offer->records, typed.confidence, typed.tolerable) : std::nullopt;
    m_make->setEnabled(size.has_value());
    if (m_people.empty()) {
        m_size->setText(tr("Nobody else is known here who could look. The office adds people and trusts their keys."));
    } else if (!m_offer) {
        m_size->setText(m_desk.trouble().isEmpty() ? tr("Looking through the records that wait…") : tr("No batch can be made so."));
    } else if (!size) {
        m_size->setText(tr("No record can go into a batch now: it must be complete, ask nothing, and wait undecided."));
    } else {
        const auto known = knownToMix(size->drawn);
        m_size->setText(auditSizeText(*size) + QLatin1Char(' ') +
                        tr("With known ones among them %1 looks at %2 at most.")
                            .arg(m_auditor->currentText())
                            .arg(size->drawn + known));
    }
    m_leftOut->setText(m_offer ? auditLeftOutText(*m_offer).join(QLatin1Char('\n')) : QString());
    m_leftOut->setVisible(!m_leftOut->text().isEmpty());
}

} // namespace cupule::ui
