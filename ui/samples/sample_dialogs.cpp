#include "ui/samples/sample_dialogs.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QPushButton* addButtons(QDialog* dialog, QFormLayout* form, const QString& yes)
{
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, dialog);
    auto* button = box->addButton(yes, QDialogButtonBox::AcceptRole);
    button->setDefault(true);
    QObject::connect(box, &QDialogButtonBox::accepted, dialog, &QDialog::accept);
    QObject::connect(box, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
    form->addRow(box);
    return button;
}

} // namespace

CloseWithBreakDialog::CloseWithBreakDialog(const std::vector<Finding>& breaks, const Pack& pack, QWidget* parent)
    : QDialog(parent)
{
    setWindowTitle(tr("Close with a break"));
    new WordFit(this, 520);
    auto* form = new QFormLayout(this);
    QString list = QStringLiteral("<ul>");
    for (const Finding& finding : breaks)
        list += QStringLiteral("<li>%1</li>").arg(findingText(finding, &pack).toHtmlEscaped());
    auto* words = new QLabel(tr("These breaks stay in the record. The field record may stand on its photos, but the result is never sole proof.")
                                 + list + QStringLiteral("</ul>"),
                             this);
    words->setWordWrap(true);
    m_reason = new QLineEdit(this);
    m_reason->setObjectName(QStringLiteral("breakReason"));
    m_second = new QLineEdit(this);
    m_second->setObjectName(QStringLiteral("breakSecond"));
    form->addRow(words);
    form->addRow(tr("Why it closes all the same"), m_reason);
    form->addRow(tr("Second person, by code"), m_second);
    auto* yes = addButtons(this, form, tr("Close with a break"));
    const auto enough = [this, yes] {
        yes->setEnabled(!m_reason->text().trimmed().isEmpty() && !m_second->text().trimmed().isEmpty());
    };
    connect(m_reason, &QLineEdit::textChanged, this, enough);
    connect(m_second, &QLineEdit::textChanged, this, enough);
    enough();
}

QString CloseWithBreakDialog::reason() const
{
    return m_reason->text().trimmed();
}

QString CloseWithBreakDialog::secondPerson() const
{
    return m_second->text().trimmed();
}

LeaveDialog::LeaveDialog(const std::vector<Site>& sites, CivilDate today, QWidget* parent) : QDialog(parent)
{
    setWindowTitle(tr("A leave"));
    new WordFit(this, 480);
    auto* form = new QFormLayout(this);
    m_giver = new QComboBox(this);
    m_giver->setObjectName(QStringLiteral("leaveGiver"));
    for (const LeaveGiver giver : {LeaveGiver::owner, LeaveGiver::occupier, LeaveGiver::authority})
        m_giver->addItem(sentenceStart(leaveGiverWord(giver)), static_cast<int>(giver));
    m_name = new QLineEdit(this);
    m_name->setPlaceholderText(tr("kept apart, can be erased"));
    m_site = new QComboBox(this);
    m_site->addItem(tr("everywhere the giver can speak for"), QString());
    for (const Site& site : sites)
        m_site->addItem(text(site.name), text(site.id.text()));
    m_from = new DateEdit(this);
    m_from->setToday(toDate(today));
    m_from->setDate(toDate(today));
    m_to = new DateEdit(this);
    m_to->setToday(toDate(today));
    m_to->setPlaceholderText(tr("until withdrawn"));
    m_reference = new QLineEdit(this);
    m_reference->setObjectName(QStringLiteral("leaveReference"));
    form->addRow(tr("Given by the"), m_giver);
    form->addRow(tr("Name"), m_name);
    for (const LeaveScope scope : {LeaveScope::enter, LeaveScope::photograph, LeaveScope::sample, LeaveScope::move, LeaveScope::passOn}) {
        auto* box = new QCheckBox(sentenceStart(leaveScopeWord(scope)), this);
        form->addRow(m_scopes.isEmpty() ? tr("To") : QString(), box);
        m_scopes.append({scope, box});
    }
    form->addRow(tr("At"), m_site);
    form->addRow(tr("From"), m_from);
    form->addRow(tr("Last day"), m_to);
    form->addRow(tr("Reference"), m_reference);
    addButtons(this, form, tr("Keep this leave"));
    QWidget* last = m_name;
    for (const auto& [scope, box] : m_scopes) {
        setTabOrder(last, box);
        last = box;
    }
    setTabOrder(last, m_site);
}

Leave LeaveDialog::leave() const
{
    Leave made;
    made.giver = static_cast<LeaveGiver>(m_giver->currentData().toInt());
    made.giverName = utf8(m_name->text().trimmed());
    for (const auto& [scope, box] : m_scopes)
        if (box->isChecked())
            made.scopes.push_back(scope);
    if (const auto site = Uid::parse(utf8(m_site->currentData().toString())))
        made.site = *site;
    if (m_from->date().isValid())
        made.from = fromDate(m_from->date());
    if (m_to->date().isValid())
        made.to = fromDate(m_to->date());
    made.reference = utf8(m_reference->text().trimmed());
    return made;
}

} // namespace cupule::ui
