#include "ui/shell/vouch_form.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int groupDigits = 5;

QString digitsOf(const QString& typed)
{
    QString digits;
    for (const QChar c : typed)
        if (c.isDigit())
            digits += c;
    return digits;
}

} // namespace

VouchForm::VouchForm(QWidget* parent) : QWidget(parent)
{
    auto* form = new QFormLayout(this);
    form->setContentsMargins(0, 0, 0, 0);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    m_heard = new QLineEdit(this);
    m_heard->setObjectName(QStringLiteral("vouchHeard"));
    m_heard->setFont(roleFont(TextRole::ids, *this));
    m_heard->setPlaceholderText(tr("30 digits, as you hear them"));
    m_heard->setMaxLength(60);
    form->addRow(tr("They &read out"), m_heard);
    m_compared = new RoleLabel(TextRole::strong, this);
    m_compared->setObjectName(QStringLiteral("vouchCompared"));
    m_compared->setWordWrap(true);
    form->addRow(QString(), m_compared);
    auto* row = new QVBoxLayout;
    for (const Role role : {Role::volunteer, Role::sampleHandler, Role::trainer, Role::verifier, Role::office}) {
        auto* box = new QCheckBox(sentenceStart(roleWord(role)), this);
        box->setChecked(role == Role::volunteer);
        row->addWidget(box);
        m_roles.append({role, box});
        connect(box, &QCheckBox::toggled, this, &VouchForm::refresh);
    }
    form->addRow(tr("It stands for"), row);
    m_rolesNote = new RoleLabel(TextRole::caption, tr("Decisions, and what holds for everybody, count only from the key of a verifier or the office."), this,
                                Tone::second);
    m_rolesNote->setWordWrap(true);
    form->addRow(QString(), m_rolesNote);
    m_instead = new QCheckBox(tr("The earlier key is no longer used: withdraw it"), this);
    m_instead->setObjectName(QStringLiteral("vouchInstead"));
    form->addRow(QString(), m_instead);
    m_another = new QCheckBox(tr("Two people chose this code: both keys are theirs"), this);
    m_another->setObjectName(QStringLiteral("vouchAnother"));
    form->addRow(QString(), m_another);
    m_vouch = new KeyButton(tr("Vouch for this key"), this);
    m_vouch->setObjectName(QStringLiteral("vouchYes"));
    m_vouch->setAutoDefault(false);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_vouch);
    buttons->addStretch(1);
    form->addRow(QString(), buttons);
    setFocusProxy(m_heard);
    connect(m_heard, &QLineEdit::textChanged, this, &VouchForm::refresh);
    for (const auto& [one, other] : {std::pair{m_instead, m_another}, std::pair{m_another, m_instead}})
        connect(one, &QCheckBox::toggled, this, [this, other = other](bool on) {
            if (on)
                other->setChecked(false);
            refresh();
        });
    connect(m_vouch, &QPushButton::clicked, this, &VouchForm::vouchAsked);
}

void VouchForm::ask(const std::string& fingerprint, KeyStanding standing, bool decides)
{
    m_digits = digitsOf(text(fingerprint));
    m_standing = standing;
    m_instead->setVisible(standing != KeyStanding::unknown);
    m_another->setVisible(standing == KeyStanding::sameCode);
    m_rolesNote->setVisible(decides);
    refresh();
}

QString VouchForm::typed() const
{
    return digitsOf(m_heard->text());
}

/// Said group by group, so that a slip of the ear is found without starting over.
QString VouchForm::comparison() const
{
    const QString heard = typed();
    if (heard.isEmpty())
        return tr("Nothing compared yet.");
    for (qsizetype from = 0; from < heard.size(); from += groupDigits) {
        const QString group = heard.mid(from, groupDigits);
        if (!m_digits.mid(from, groupDigits).startsWith(group) || from >= m_digits.size())
            return tr("Group %1 is not the same. Have it read out once more; if it stays so, the file is not theirs: do not vouch.")
                .arg(from / groupDigits + 1);
    }
    return heard.size() < m_digits.size() ? tr("The same so far: %1 of %2 digits.").arg(heard.size()).arg(m_digits.size())
                                          : tr("All %1 digits are the same.").arg(m_digits.size());
}

bool VouchForm::answered() const
{
    return m_standing == KeyStanding::unknown || m_instead->isChecked() || (m_standing == KeyStanding::sameCode && m_another->isChecked());
}

void VouchForm::refresh()
{
    m_compared->setText(comparison());
    bool any = false;
    for (const auto& [role, box] : m_roles)
        any = any || box->isChecked();
    m_vouch->setEnabled(typed() == m_digits && any && answered());
}

Vouching VouchForm::vouching() const
{
    Vouching vouching;
    for (const auto& [role, box] : m_roles)
        if (box->isChecked())
            vouching.roles.push_back(role);
    vouching.typedFingerprint = utf8(m_heard->text());
    vouching.instead = m_standing != KeyStanding::unknown && m_instead->isChecked();
    vouching.anotherPerson = m_standing == KeyStanding::sameCode && m_another->isChecked();
    vouching.remark = utf8(tr("compared by voice"));
    return vouching;
}

} // namespace cupule::ui
