#include "ui/review/review_words.h"

#include <QCoreApplication>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::ui {

namespace {

QString tr(const char* words)
{
    return QCoreApplication::translate("cupule::ui::Review", words);
}

QString line(const QString& head, const QString& words)
{
    return QStringLiteral("<br><b>%1</b> %2").arg(head.toHtmlEscaped(), words.toHtmlEscaped());
}

QString personWords(const Person& person)
{
    return text(person.name.empty() ? person.code : person.name);
}

} // namespace

QString claimText(const VisitPage& visit, const Pack& pack)
{
    QStringList signs;
    for (const Observation& observation : visit.visit.observations) {
        const Sign* sign = pack.sign(observation.sign);
        if (observation.answer != Answer::seen || sign == nullptr)
            continue;
        QString words = text(sign->name);
        if (observation.measure)
            words += QStringLiteral(" (%1 %2)").arg(numberText(*observation.measure), text(sign->unit));
        signs << words;
    }
    QString what = signs.isEmpty() ? (visit.nothing ? tr("Nothing seen") : tr("No sign is claimed"))
                                   : tr("Claims %1").arg(listText(signs));
    what += tr(", seen by %1 on %2").arg(personWords(visit.observer), plainDate(visit.visit.date, 0));
    if (visit.visit.effort.minutes)
        what += tr(", %1 minutes").arg(*visit.visit.effort.minutes);
    if (visit.visit.effort.crownPercent)
        what += tr(", %1 % of the crown").arg(*visit.visit.effort.crownPercent);
    return what + QLatin1Char('.');
}

QString factsHtml(const VisitPage& visit, const Pack& pack)
{
    QString html = QStringLiteral("<b>%1</b> %2").arg(tr("Host:"), hostText(visit.host, pack).toHtmlEscaped());
    for (const ChecklistLine& entry : visit.checklist) {
        if (entry.observation.answer == Answer::seen)
            html += line(text(entry.sign->shortName.empty() ? entry.sign->name : entry.sign->shortName) + QLatin1Char(':'),
                         seasonText(entry.season));
    }
    html += line(tr("Season:"), shiftText(visit.season.shiftDays != 0 ? std::optional<int>(visit.season.shiftDays) : std::nullopt));
    if (visit.nothing)
        html += line(tr("Worth %1:").arg(QLatin1Char(visit.worth.letter)), worthText(visit.worth, pack));
    if (visit.visit.position)
        html += line(tr("Position:"),
                     text(visit.visit.position->typed) + QStringLiteral(", ") + positionSureText(*visit.visit.position));
    if (!visit.visit.note.empty())
        html += line(tr("Note:"), text(visit.visit.note));
    return html;
}

QString standingHtml(const ReviewPage& page, const Pack& pack)
{
    QString html = QStringLiteral("<b>%1</b><br>%2").arg(tr("Why it stands here"), sentenceStart(queueText(page.place.code)).toHtmlEscaped());
    if (page.visit.positive.positive) {
        if (page.nearestFindMetres)
            html += line(tr("Nearest accepted find:"),
                         tr("%1 away (%2). Spread of %3 km a year explains %4.")
                             .arg(distanceText(*page.nearestFindMetres), text(page.nearestFindTree),
                                  numberText(pack.settings.spreadKilometresPerYear), distanceText(page.spreadExplainsMetres)));
        else
            html += line(tr("Nearest accepted find:"), tr("none is accepted yet."));
        html += line(tr("Told to the authority?"),
                     page.told ? tr("Yes, %1, by %2. Reference %3.")
                                     .arg(momentText(page.told->at), text(page.told->by),
                                          page.told->reference.empty() ? tr("none given") : text(page.told->reference))
                               : tr("Not yet. A suspicion may be enough; the authority's rules decide."));
    }
    for (const SampleLine& sample : page.samples)
        html += line(tr("Sample %1:").arg(text(sample.number)), sampleStateWord(sample.state));
    return html;
}

QString historyHtml(const ReviewPage& page)
{
    QString html;
    for (const Decision& decision : page.decisions) {
        QString words = outcomeWord(decision.outcome) + QStringLiteral(", ") + momentText(decision.at);
        if (!decision.remark.empty())
            words += QStringLiteral(": ") + text(decision.remark);
        html += QStringLiteral("<br>") + words.toHtmlEscaped();
    }
    if (!html.isEmpty())
        html = QStringLiteral("<b>%1</b>%2<br>").arg(tr("Decisions"), html);
    QString before;
    for (std::size_t i = 0; i < page.visit.history.size() && i < 4; ++i) {
        const HistoryLine& entry = page.visit.history[i];
        QString words = plainDate(entry.line.date, 0) + QStringLiteral(": ") + summaryWord(entry.line.summary);
        if (entry.line.summary == "nothing-seen")
            words += QStringLiteral(", ") + QLatin1Char(entry.line.worth);
        before += QStringLiteral("<br>") + words.toHtmlEscaped();
    }
    if (!before.isEmpty())
        html += QStringLiteral("<b>%1</b>%2").arg(tr("This tree before"), before);
    return html;
}

} // namespace cupule::ui
