#include "ui/review/agreement_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/theme/theme.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QString tr(const char* words, int n = -1)
{
    return AgreementDialog::tr(words, nullptr, n);
}

QString share(double value)
{
    return tr("%1 %").arg(numberText(value * 100, 0));
}

QString kappaText(const std::optional<double>& kappa, const Interval& interval)
{
    if (!kappa)
        return tr("kappa has no value: both gave one and the same answer throughout.");
    return tr("kappa %1, between %2 and %3 with 95 % confidence.")
        .arg(numberText(*kappa, 2), numberText(interval.lower, 2), numberText(interval.upper, 2));
}

QString tableHtml(const VerifierPair& pair)
{
    const QString answers[] = {tr("accepted"), tr("returned"), tr("rejected")};
    QString html = QStringLiteral("<table cellspacing=\"0\" cellpadding=\"5\"><tr><td></td>");
    for (const QString& answer : answers)
        html += QStringLiteral("<td><i>%1 %2</i></td>").arg(text(pair.other).toHtmlEscaped(), answer);
    html += QStringLiteral("</tr>");
    for (std::size_t row = 0; row < pair.table.size(); ++row) {
        html += QStringLiteral("<tr><td><i>%1 %2</i></td>").arg(text(pair.one).toHtmlEscaped(), answers[row]);
        for (const std::int64_t count : pair.table[row])
            html += QStringLiteral("<td align=\"right\">%1</td>").arg(count);
        html += QStringLiteral("</tr>");
    }
    return html + QStringLiteral("</table>");
}

} // namespace

QString agreementHtml(const VerifierAgreement& agreement)
{
    if (agreement.records == 0)
        return QStringLiteral("<p>%1</p>").arg(tr("No record has been decided by two verifiers without knowing of each other yet. Finds in new "
                                                  "ground are; so are records that two offices decided before they met."));
    QString html = QStringLiteral("<p>%1</p>")
                       .arg(tr("It rests on %1, decided from %2 to %3. The second look is given without seeing the first; whoever decides third "
                               "has seen both and is not counted.")
                                .arg(tr("%n records", agreement.records), plainDate(*agreement.first, 0), plainDate(*agreement.last, 0)));
    if (agreement.all)
        html += QStringLiteral("<p><b>%1</b><br>%2 %3</p>")
                    .arg(tr("All %1 verifiers together (Fleiss)").arg(agreement.verifiers), kappaText(agreement.all->kappa, agreement.all->interval),
                         tr("They agree on %1 of the pairs, by chance alone it would be %2.").arg(share(agreement.all->observed), share(agreement.all->chance)));
    for (const VerifierPair& pair : agreement.pairs)
        html += QStringLiteral("<p><b>%1</b><br>%2 %3</p>%4")
                    .arg(tr("%1 and %2 (Cohen)").arg(text(pair.one), text(pair.other)).toHtmlEscaped(),
                         kappaText(pair.agreement.kappa, pair.agreement.interval),
                         tr("Alike in %1 of %2 records, by chance alone it would be %3.")
                             .arg(share(pair.agreement.observed)).arg(pair.agreement.things).arg(share(pair.agreement.chance)),
                         tableHtml(pair));
    if (agreement.records < 30)
        html += QStringLiteral("<p>%1</p>").arg(tr("These are few records: read the interval, not the number."));
    return html + QStringLiteral("<p><small>%1</small></p>")
                      .arg(tr("Kappa is 1 where two agree throughout and 0 where they agree as often as chance would have it. Cohen 1960; "
                              "Fleiss 1971; intervals by Fleiss, Cohen and Everitt 1969 and Gwet 2021."));
}

AgreementDialog::AgreementDialog(const VerifierAgreement& agreement, QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("agreementDialog"));
    setWindowTitle(tr("How far verifiers agree"));
    auto* column = new QVBoxLayout(this);
    QScrollArea* area = makeReadingArea("agreementPage", windowTitle(), this);
    auto* words = new QLabel(agreementHtml(agreement), area);
    words->setObjectName(QStringLiteral("agreementWords"));
    words->setTextFormat(Qt::RichText);
    words->setWordWrap(true);
    words->setAlignment(Qt::AlignTop);
    words->setMargin(scaled(10, font()));
    area->setWidget(words);
    column->addWidget(area, 1);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(box);
    resize(onAnyScreen({scaled(680, font()), scaled(520, font())}));
}

} // namespace cupule::ui
