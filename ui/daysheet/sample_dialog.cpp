#include "ui/daysheet/sample_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "core/base/text.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

SampleDialog::SampleDialog(const Pack& pack, Opener opener, QWidget* parent)
    : QDialog(parent), m_pack(pack), m_opener(std::move(opener))
{
    setObjectName(QStringLiteral("sampleDialog"));
    setWindowTitle(tr("Take a sample"));
    new WordFit(this, 560);
    auto* form = new QFormLayout(this);
    auto* head = new QLabel(tr("Photograph and report is the usual way. A sample needs two leaves in force today: the owner's or "
                               "occupier's to enter and sample, and the authority's to take and to move. Bag it twice at the tree."),
                            this);
    head->setWordWrap(true);
    m_part = new QComboBox(this);
    m_part->setObjectName(QStringLiteral("samplePart"));
    for (const std::string& part : pack.plantParts)
        m_part->addItem(sentenceStart(text(part)), text(part));
    m_pieces = new QLineEdit(this);
    m_pieces->setObjectName(QStringLiteral("samplePieces"));
    m_condition = new QComboBox(this);
    m_condition->setObjectName(QStringLiteral("sampleCondition"));
    m_condition->addItem(QStringLiteral("–"), QString());
    m_condition->addItem(tr("fresh"), QStringLiteral("fresh"));
    m_condition->addItem(tr("dry"), QStringLiteral("dry"));
    m_condition->addItem(tr("with holes"), QStringLiteral("holes"));
    m_reason = new QLineEdit(this);
    m_reason->setObjectName(QStringLiteral("sampleReason"));
    m_believed = new QLineEdit(this);
    m_believed->setObjectName(QStringLiteral("sampleBelieved"));
    m_number = new QLineEdit(this);
    m_number->setObjectName(QStringLiteral("sampleNumber"));
    m_already = new QCheckBox(tr("It was taken already, without leave: put it down with that break, and tell the authority"), this);
    m_already->setObjectName(QStringLiteral("sampleAlready"));
    m_already->hide();
    m_why = new QLabel(this);
    m_why->setObjectName(QStringLiteral("sampleWhy"));
    m_why->setWordWrap(true);
    m_why->setTextFormat(Qt::RichText);
    m_why->hide();
    form->addRow(head);
    form->addRow(tr("What it is"), m_part);
    form->addRow(tr("Pieces"), m_pieces);
    form->addRow(tr("Condition"), m_condition);
    form->addRow(tr("What for"), m_reason);
    form->addRow(tr("The tree, as you believe"), m_believed);
    form->addRow(tr("Number on the label"), m_number);
    form->addRow(m_why);
    form->addRow(m_already);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* yes = box->addButton(tr("Open the sample"), QDialogButtonBox::AcceptRole);
    yes->setObjectName(QStringLiteral("sampleYes"));
    form->addRow(box);
    propose({}, 0);
    connect(box, &QDialogButtonBox::accepted, this, &SampleDialog::take);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

void SampleDialog::propose(const QString& believed, int waiting)
{
    m_believed->setText(believed);
    m_number->setPlaceholderText(waiting > 0 ? tr("as on the bag; empty: the next number")
                                             : tr("empty: the next number"));
}

Sample SampleDialog::typed() const
{
    Sample wanted;
    wanted.plantPart = utf8(m_part->currentData().toString());
    wanted.pieces = parseWhole(utf8(m_pieces->text().trimmed()));
    wanted.condition = utf8(m_condition->currentData().toString());
    wanted.reason = utf8(m_reason->text().trimmed());
    wanted.hostAsBelieved = utf8(m_believed->text().trimmed());
    wanted.number = utf8(m_number->text().trimmed());
    return wanted;
}

void SampleDialog::take()
{
    const auto opening = m_opener(typed(), m_already->isChecked());
    if (opening && opening->sample) {
        m_opened = opening->sample->id;
        accept();
        return;
    }
    QString words;
    if (!opening) {
        words = faultText(opening.error()).toHtmlEscaped();
    } else {
        words = QStringLiteral("<b>%1</b><ul>").arg(tr("It cannot be opened yet:").toHtmlEscaped());
        for (const Finding& finding : opening->why)
            words += QStringLiteral("<li>%1</li>").arg(findingText(finding, &m_pack).toHtmlEscaped());
        words += QStringLiteral("</ul>");
        m_already->show();
    }
    m_why->setText(words);
    m_why->show();
}

} // namespace cupule::ui
