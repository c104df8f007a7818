#include "ui/review/review_words.h"

#include <QCoreApplication>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_practice.h"
#include "ui/bridge/words_review.h"

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

/// By name and code; the code alone where the viewer's role gives no more.
QString decisionOf(const Decision& decision, const ReviewPage& page, const Pack& pack)
{
    for (const Person& person : page.deciders)
        if (person.id == decision.by)
            return decisionText(decision, person, pack);
    return decisionText(decision, Person{}, pack);
}

/// Two who did not know of each other, beside each other.
QString decisionsHtml(const ReviewPage& page, const Pack& pack)
{
    if (page.decisions.empty())
        return {};
    const std::size_t last = page.decisions.size() - 1;
    const bool beside = page.conflict && page.decisions.size() >= 2;
    QString html = QStringLiteral("<b>%1</b>").arg(beside ? tr("Two decisions that do not agree") : tr("Decisions"));
    for (std::size_t i = 0; i + (beside ? 2 : 0) <= last; ++i)
        html += QStringLiteral("<br>") + decisionOf(page.decisions[i], page, pack).toHtmlEscaped();
    if (beside)
        html += QStringLiteral("<table width=\"100%\" cellspacing=\"0\" cellpadding=\"4\"><tr><td width=\"50%\">%1</td><td width=\"50%\">%2</td></tr></table>")
                    .arg(decisionOf(page.decisions[last - 1], page, pack).toHtmlEscaped(), decisionOf(page.decisions[last], page, pack).toHtmlEscaped());
    return html + (beside ? QString() : QStringLiteral("<br>"));
}

QString treePastHtml(const ReviewPage& page, const Pack& pack)
{
    QString before;
    for (std::size_t i = 0; i < page.visit.history.size() && i < 4; ++i) {
        const HistoryLine& entry = page.visit.history[i];
        QString words = plainDate(entry.line.date, 0) + QStringLiteral(": ") + summaryWord(entry.line.summary);
        if (entry.line.summary == "nothing-seen")
            words += QStringLiteral(", ") + QLatin1Char(entry.line.worth);
        words += QStringLiteral(", ") + stateWord(entry.line.state) + QStringLiteral(", ") + text(entry.line.observerCode);
        if (const QString why = reasonsText(entry.reasons, pack); !why.isEmpty())
            words += QStringLiteral(". ") + why;
        before += QStringLiteral("<br>") + words.toHtmlEscaped();
    }
    return QStringLiteral("<b>%1</b>%2").arg(tr("This tree before"), before.isEmpty() ? QStringLiteral("<br>") + tr("No other visit.") : before);
}

QString countsText(const OutcomeCounts& counts)
{
    QStringList words{tr("%1 accepted").arg(counts.accepted)};
    if (counts.returned > 0)
        words << tr("%1 returned").arg(counts.returned);
    return (words << tr("%1 rejected").arg(counts.rejected)).join(QStringLiteral(", "));
}

/// What became of this person's records; counts, and no mark.
QString observerPastHtml(const ReviewPage& page, const Pack& pack)
{
    const ObserverPast& past = page.observerPast;
    QString html = QStringLiteral("<b>%1</b>").arg(tr("%1 before").arg(text(page.visit.observer.code)).toHtmlEscaped());
    if (past.records == 0)
        return html + QStringLiteral("<br>") + tr("Nothing of theirs has been decided yet.");
    for (std::size_t i = 0; i < past.bySign.size() && i < 4; ++i) {
        const Sign* sign = pack.sign(past.bySign[i].first);
        const QString name = sign == nullptr ? tr("nothing seen") : text(sign->shortName.empty() ? sign->name : sign->shortName);
        html += QStringLiteral("<br>") + (name + QStringLiteral(": ") + countsText(past.bySign[i].second)).toHtmlEscaped();
    }
    for (std::size_t i = 0; i < past.reasons.size() && i < 2; ++i)
        if (const Reason* reason = pack.reason(past.reasons[i].first))
            html += QStringLiteral("<br>") + tr("%1 times: %2").arg(past.reasons[i].second).arg(text(reason->sentence)).toHtmlEscaped();
    return html + QStringLiteral("<br>") + (past.more ? tr("(their last %1 decided records)") : tr("(%1 decided in all)")).arg(past.records);
}

/// What they were measured to find of what is claimed, told with their consent. For information, and it says so.
QString skillHtml(const ReviewPage& page, const Pack& pack)
{
    if (!page.whole)
        return {};
    const QString head = tr("%1 in practice:").arg(text(page.visit.observer.code));
    const auto& told = page.observerSkill;
    if (!told)
        return line(head, tr("not measured, or not told."));
    QStringList said;
    bool few = false;
    const auto add = [&](const std::string& sign, const QString& name) {
        const ToldSign* measured = toldSign(*told, sign);
        few |= measured != nullptr && measured->few;
        said << name + QStringLiteral(": ") + (measured == nullptr ? tr("not measured") : skillText(*measured)) + QLatin1Char('.');
    };
    for (const Observation& observation : page.visit.visit.observations)
        if (const Sign* sign = pack.sign(observation.sign); sign != nullptr && observation.answer == Answer::seen)
            add(sign->id, text(sign->shortName.empty() ? sign->name : sign->shortName));
    if (page.visit.nothing)
        add(gallLinesTogether, tr("Gall lines together"));
    if (few)
        said << tr("Read the range, not the number.");
    said << tr("Measured on drawings, %1.").arg(plainDate(told->to, 0));
    if (told->protocol != pack.id || told->protocolVersion != pack.version)
        said << tr("It was another version of the protocol: %1 %2.").arg(text(told->protocol), text(told->protocolVersion));
    return line(head, (said << tr("For information: it decides nothing.")).join(QLatin1Char(' ')));
}

QString originHtml(const ReviewPage& page)
{
    if (!page.cameWith)
        return QStringLiteral("<b>%1</b><br>%2").arg(tr("Where it came from"), tr("It was entered in this store."));
    const CameWith& came = *page.cameWith;
    const QString key = came.holds ? tr("signed with the key of %1").arg(text(came.person)) : tr("signed with a key that nobody vouches for now");
    return QStringLiteral("<b>%1</b><br>%2")
        .arg(tr("Where it came from"), tr("%1, number %2 of this key, made %3, %4 (%5).")
                                           .arg(sentenceStart(bundleKindText(came.kind))).arg(came.number)
                                           .arg(momentText(came.made), key, text(came.fingerprint)).toHtmlEscaped());
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
                         tr("%1 (%2). Spread of %3 km a year explains %4.")
                             .arg(*page.nearestFindMetres < 1 ? tr("on this spot") : tr("%1 away").arg(distanceText(*page.nearestFindMetres)),
                                  text(page.nearestFindTree),
                                  numberText(pack.settings.spreadKilometresPerYear), distanceText(page.spreadExplainsMetres)));
        else
            html += line(tr("Nearest accepted find:"), tr("none is accepted yet."));
        html += line(tr("Told to the authority?"),
                     page.told ? tr("Yes, %1, by %2. Reference %3.")
                                     .arg(momentText(page.told->at), text(page.told->by),
                                          page.told->reference.empty() ? tr("none given") : text(page.told->reference))
                               : tr("Not yet. A suspicion may be enough; the authority's rules decide."));
    }
    for (const SampleLine& sample : page.samples) {
        QStringList words{sampleStateWord(sample.state)};
        if (sample.missing > 0)
            words << tr("%1 still missing").arg(sample.missing);
        if (sample.breaks > 0)
            words << tr("broken at %1").arg(sample.breaks);
        html += line(tr("Sample %1:").arg(text(sample.number)), words.join(QStringLiteral(", ")));
    }
    html += skillHtml(page, pack);
    if (!page.whole)
        html += QStringLiteral("<br><br>") + tr("Exact places and names are left out here: the square and the code stand for them.");
    return html;
}

QString historyHtml(const ReviewPage& page, const Pack& pack)
{
    QStringList parts{decisionsHtml(page, pack), treePastHtml(page, pack), observerPastHtml(page, pack), originHtml(page)};
    parts.removeAll(QString());
    return QStringLiteral("<p>") + parts.join(QStringLiteral("</p><p>")) + QStringLiteral("</p>");
}

} // namespace cupule::ui
