#include "ui/shell/store_dialogs.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QTimeZone>

#include "core/protocol/pack_reader.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/shell/workbench.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QDialogButtonBox* buttons(QDialog* dialog, const QString& yes)
{
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, dialog);
    box->addButton(yes, QDialogButtonBox::AcceptRole)->setDefault(true);
    QObject::connect(box, &QDialogButtonBox::accepted, dialog, &QDialog::accept);
    QObject::connect(box, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
    return box;
}

QLabel* sentence(const QString& words, QWidget* parent)
{
    auto* label = new QLabel(words, parent);
    label->setWordWrap(true);
    return label;
}

class ProfileDialog : public QDialog {
public:
    explicit ProfileDialog(QWidget* parent) : QDialog(parent)
    {
        setWindowTitle(QObject::tr("Who works here"));
        new WordFit(this, 460);
        auto* form = new QFormLayout(this);
        form->addRow(sentence(QObject::tr("Your name stays in this programme's stores and can be erased on request. "
                                          "The short code is what lists and papers show."),
                              this));
        name = new QLineEdit(this);
        name->setObjectName(QStringLiteral("profileName"));
        code = new QLineEdit(this);
        code->setObjectName(QStringLiteral("profileCode"));
        code->setMaxLength(12);
        form->addRow(QObject::tr("&Name"), name);
        form->addRow(QObject::tr("&Code, such as initials"), code);
        for (const Role role : {Role::volunteer, Role::sampleHandler, Role::trainer, Role::verifier, Role::office}) {
            auto* box = new QCheckBox(sentenceStart(roleWord(role)), this);
            box->setChecked(role == Role::volunteer);
            form->addRow(roles.isEmpty() ? QObject::tr("What you do") : QString(), box);
            roles.append({role, box});
        }
        auto* box = buttons(this, QObject::tr("This is me"));
        form->addRow(box);
        const auto enough = [this, box] {
            for (auto* button : box->buttons())
                if (box->buttonRole(button) == QDialogButtonBox::AcceptRole)
                    button->setEnabled(!name->text().trimmed().isEmpty() && !code->text().trimmed().isEmpty());
        };
        QObject::connect(name, &QLineEdit::textChanged, this, enough);
        QObject::connect(code, &QLineEdit::textChanged, this, enough);
        enough();
    }

    QLineEdit* name;
    QLineEdit* code;
    QList<std::pair<Role, QCheckBox*>> roles;
};

} // namespace

bool askProfile(Workbench& bench, QWidget* parent)
{
    ProfileDialog dialog(parent);
    if (dialog.exec() != QDialog::Accepted)
        return false;
    Person person;
    person.name = utf8(dialog.name->text().trimmed());
    person.code = utf8(dialog.code->text().trimmed());
    std::vector<Role> roles;
    for (const auto& [role, box] : dialog.roles)
        if (box->isChecked())
            roles.push_back(role);
    if (const auto status = bench.makeProfileFor(person, roles); !status) {
        bench.complain(status.error());
        return false;
    }
    return true;
}

NewStoreDialog::NewStoreDialog(QWidget* parent) : QDialog(parent)
{
    setWindowTitle(tr("A new store"));
    new WordFit(this, 460);
    auto* form = new QFormLayout(this);
    m_name = new QLineEdit(this);
    m_name->setObjectName(QStringLiteral("storeName"));
    m_region = new QComboBox(this);
    for (const Region& region : builtInPack().regions)
        m_region->addItem(text(region.name), text(region.id));
    m_kind = new QComboBox(this);
    m_kind->addItem(tr("A volunteer's laptop"), QStringLiteral("laptop"));
    m_kind->addItem(tr("The regional office"), QStringLiteral("office"));
    m_kind->addItem(tr("A training room"), QStringLiteral("training"));
    m_zone = new QComboBox(this);
    m_zone->setEditable(true);
    for (const QByteArray& zone : QTimeZone::availableTimeZoneIds())
        if (zone.startsWith("Europe/"))
            m_zone->addItem(QString::fromLatin1(zone));
    m_zone->setCurrentText(QString::fromLatin1(QTimeZone::systemTimeZoneId()));
    m_demonstration = new QCheckBox(tr("Only a demonstration: everything made from it will say so, for good"), this);
    form->addRow(tr("&Name of the programme"), m_name);
    form->addRow(tr("&Season of"), m_region);
    form->addRow(tr("&Where it is used"), m_kind);
    form->addRow(tr("&Time zone"), m_zone);
    form->addRow(QString(), m_demonstration);
    auto* box = buttons(this, tr("Choose where it is to lie…"));
    form->addRow(box);
    const auto enough = [this, box] {
        for (auto* button : box->buttons())
            if (box->buttonRole(button) == QDialogButtonBox::AcceptRole)
                button->setEnabled(!m_name->text().trimmed().isEmpty());
    };
    connect(m_name, &QLineEdit::textChanged, this, enough);
    enough();
}

NewStore NewStoreDialog::description() const
{
    NewStore made;
    made.name = utf8(m_name->text().trimmed());
    made.zone = utf8(m_zone->currentText().trimmed());
    made.region = utf8(m_region->currentData().toString());
    made.kind = utf8(m_kind->currentData().toString());
    made.demonstration = m_demonstration->isChecked();
    return made;
}

QString NewStoreDialog::proposedName() const
{
    QString name = m_name->text().trimmed().toLower();
    name.replace(QRegularExpression(QStringLiteral("[^\\p{L}\\p{N}]+")), QStringLiteral("-"));
    return (name.isEmpty() ? tr("store") : name) + QStringLiteral(".cupule");
}

} // namespace cupule::ui
