#include "ui/shell/hand_out_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QString kindWords(GoingKind kind)
{
    switch (kind) {
    case GoingKind::day: return HandOutDialog::tr("&What was handed in here, for the verifier");
    case GoingKind::decision: return HandOutDialog::tr("&Decisions, for those whose records they are");
    case GoingKind::reference: return HandOutDialog::tr("Accepted &finds, sites and the protocol, for verifiers");
    }
    return {};
}

QCheckBox* box(const QString& words, const char* name, bool checked, QWidget* parent)
{
    auto* made = new QCheckBox(words, parent);
    made->setObjectName(QString::fromLatin1(name));
    made->setChecked(checked);
    return made;
}

} // namespace

HandOutDialog::HandOutDialog(const std::vector<GoingKind>& kinds, const OwnKey& key, QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("handOutDialog"));
    setWindowTitle(tr("Write a signed file"));
    new WordFit(this, 560);
    auto* form = new QFormLayout(this);
    auto* head = new QLabel(tr("One file for a memory stick or a mail, signed with your key. It holds what is new since your last one that was taken in; a "
                               "copy stays beside the store."),
                            this);
    head->setWordWrap(true);
    form->addRow(head);
    auto* column = new QVBoxLayout;
    for (const GoingKind kind : kinds) {
        auto* button = new QRadioButton(kindWords(kind), this);
        button->setChecked(m_kinds.empty());
        m_kinds.emplace_back(kind, button);
        column->addWidget(button);
    }
    form->addRow(tr("It holds"), column);
    buildParts(*form);
    if (key.locked) {
        m_passphrase = new QLineEdit(this);
        m_passphrase->setObjectName(QStringLiteral("handOutPassphrase"));
        m_passphrase->setEchoMode(QLineEdit::Password);
        form->addRow(tr("&Passphrase of your key"), m_passphrase);
    }
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* yes = buttons->addButton(tr("Write it…"), QDialogButtonBox::AcceptRole);
    yes->setObjectName(QStringLiteral("handOutYes"));
    yes->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    form->addRow(buttons);
}

void HandOutDialog::buildParts(QFormLayout& form)
{
    m_photos = box(tr("ph&otos at full size"), "handOutPhotos", true, this);
    m_personal = box(tr("&names and contacts"), "handOutPersonal", true, this);
    m_practice = box(tr("what p&ractice measured, of those who agreed"), "handOutPractice", true, this);
    m_whole = box(tr("what was taken in elsewhere, &too: for a store that has nothing of this one yet"), "handOutWhole", false, this);
    auto* with = new QVBoxLayout;
    for (QCheckBox* each : {m_photos, m_personal, m_practice, m_whole})
        with->addWidget(each);
    form.addRow(tr("With"), with);
    connect(m_personal, &QCheckBox::toggled, m_practice, &QWidget::setEnabled);   // what was measured is personal, too
}

HandOut HandOutDialog::wanted() const
{
    HandOut wanted;
    for (const auto& [kind, button] : m_kinds)
        if (button->isChecked())
            wanted.kind = kind;
    wanted.photos = m_photos->isChecked();
    wanted.personal = m_personal->isChecked();
    wanted.practice = wanted.personal && m_practice->isChecked();
    wanted.whole = m_whole->isChecked();
    if (m_passphrase != nullptr)
        wanted.passphrase = utf8(m_passphrase->text());
    return wanted;
}

std::vector<GoingKind> goingKindsOf(const Session& session)
{
    std::vector<GoingKind> kinds;
    if (session.needOneOf({Role::volunteer, Role::sampleHandler, Role::trainer, Role::office}))
        kinds.push_back(GoingKind::day);
    if (session.needOneOf({Role::verifier, Role::office}))
        kinds.push_back(GoingKind::decision);
    if (session.need(Role::office))
        kinds.push_back(GoingKind::reference);
    return kinds;
}

} // namespace cupule::ui
