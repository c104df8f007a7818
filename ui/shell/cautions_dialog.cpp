#include "ui/shell/cautions_dialog.h"

#include <map>

#include <QDialogButtonBox>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::ui {

CautionsDialog::CautionsDialog(const Pack& pack, QWidget* parent) : QDialog(parent)
{
    setWindowTitle(tr("Cautions"));
    resize(720, 560);
    QString page = QStringLiteral("<p><b>%1</b></p>")
                       .arg(tr("This program is no emergency device. Where life or law is concerned, others decide: "
                               "the plant-health authority, the owner, the emergency services.")
                                .toHtmlEscaped());
    std::map<std::string, QString> topics;
    std::vector<std::string> order;
    for (const Caution& caution : pack.cautions) {
        if (topics.find(caution.topic) == topics.end())
            order.push_back(caution.topic);
        topics[caution.topic] += QStringLiteral("<li>%1 <small>(%2)</small></li>")
                                     .arg(text(caution.words).toHtmlEscaped(),
                                          (caution.source.basis == Basis::commonPractice
                                               ? basisWord(caution.source.basis)
                                               : text(caution.source.text))
                                              .toHtmlEscaped());
    }
    for (const std::string& topic : order)
        page += QStringLiteral("<h3>%1</h3><ul>%2</ul>").arg(sentenceStart(text(topic)).toHtmlEscaped(), topics[topic]);
    auto* browser = new QTextBrowser(this);
    browser->setHtml(page);
    browser->setAccessibleName(windowTitle());
    auto* box = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(browser);
    column->addWidget(box);
}

} // namespace cupule::ui
