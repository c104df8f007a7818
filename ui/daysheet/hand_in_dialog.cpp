#include "ui/daysheet/hand_in_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/daysheet/visit_list.h"

namespace cupule::ui {

namespace {

QString lineWords(const VisitLine& line)
{
    QString words = text(line.treeLabel);
    if (!line.siteName.empty())
        words += QStringLiteral(", ") + text(line.siteName);
    if (line.time)
        words += QStringLiteral(", ") + timeText(*line.time);
    words += QStringLiteral(": ") + visitSummary(line);
    if (line.summary == "nothing-seen")
        words += HandInDialog::tr(", worth %1").arg(QLatin1Char(line.worth));
    return words.toHtmlEscaped();
}

} // namespace

HandInDialog::HandInDialog(const HandInPage& page, const Pack& pack, QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("handInDialog"));
    setWindowTitle(tr("Hand in %1").arg(dayDate(page.day)));
    resize(640, 520);
    QString html;
    html += QStringLiteral("<h3>%1</h3><ul>").arg(
        page.goes.empty() ? tr("Nothing is ready to go") : tr("%n visits go", nullptr, static_cast<int>(page.goes.size())));
    for (const VisitLine& line : page.goes)
        html += QStringLiteral("<li>%1</li>").arg(lineWords(line));
    html += QStringLiteral("</ul>");
    if (!page.stays.empty()) {
        html += QStringLiteral("<h3>%1</h3><ul>").arg(tr("%n stay, and why", nullptr, static_cast<int>(page.stays.size())));
        for (const auto& [line, findings] : page.stays) {
            html += QStringLiteral("<li>%1<ul>").arg(lineWords(line));
            for (const Finding& finding : findings)
                html += QStringLiteral("<li>%1</li>").arg(findingText(finding, &pack).toHtmlEscaped());
            html += QStringLiteral("</ul></li>");
        }
        html += QStringLiteral("</ul>");
    }
    html += QStringLiteral("<p>%1</p>").arg(
        tr("What is handed in is never changed afterwards. A mistake found later makes a new version, and both are kept.")
            .toHtmlEscaped());
    auto* browser = new QTextBrowser(this);
    browser->setHtml(html);
    browser->setAccessibleName(windowTitle());
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* yes = box->addButton(tr("Hand in"), QDialogButtonBox::AcceptRole);
    yes->setObjectName(QStringLiteral("handInYes"));
    yes->setEnabled(!page.goes.empty());
    yes->setDefault(true);
    yes->setFocus(Qt::OtherFocusReason);
    connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(browser);
    column->addWidget(box);
}

} // namespace cupule::ui
