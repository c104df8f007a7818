#include "ui/bridge/words_audit.h"

#include <cmath>

#include <QCoreApplication>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::ui {

namespace {

struct Audit {
    Q_DECLARE_TR_FUNCTIONS(audit)
};

constexpr double slack = 1e-6; // of a tenth of a percent: what only floating point adds is no more

QString percentText(double tenths)
{
    return Audit::tr("%1 %").arg(numberText(tenths / 10, 1));
}

QString shareAtMost(double share)
{
    return percentText(std::ceil(share * 1000 - slack));
}

/// "4 of 5 (95 % interval 37.5 % to 96.4 %)".
QString skillText(const AuditSkill& skill)
{
    return Audit::tr("%1 of %2 (95 % interval %3 to %4)")
        .arg(skill.right)
        .arg(skill.shown)
        .arg(confidenceText(skill.share->lower), shareAtMost(skill.share->upper));
}

QString acceptedClaim(const AuditSize& size)
{
    const QString sure = confidenceText(size.reached);
    if (size.drawn == size.size)
        return Audit::tr("All %1 records were looked at, and none was disagreed with.").arg(size.size);
    if (size.wrong == 1)
        return Audit::tr("None of the %1 drawn was disagreed with: with %2 confidence none of the %3 records is wrong.")
            .arg(size.drawn)
            .arg(sure)
            .arg(size.size);
    const auto most = size.wrong - 1;
    return Audit::tr("None of the %1 drawn was disagreed with: with %2 confidence at most %3 of the %4 records are wrong, %5.")
        .arg(size.drawn)
        .arg(sure)
        .arg(most)
        .arg(size.size)
        .arg(shareAtMost(static_cast<double>(most) / static_cast<double>(size.size)));
}

} // namespace

QString auditStateWord(AuditState state)
{
    switch (state) {
    case AuditState::open: return Audit::tr("waits for its audit");
    case AuditState::passed: return Audit::tr("accepted");
    case AuditState::failed: return Audit::tr("sent back");
    case AuditState::givenUp: break;
    }
    return Audit::tr("given up");
}

QString auditLeftText(const std::string& why)
{
    if (why == "revised")
        return Audit::tr("It was corrected meanwhile.");
    if (why == "decided")
        return Audit::tr("Somebody decided on it meanwhile.");
    if (why == "struck")
        return Audit::tr("It was struck out meanwhile.");
    if (why == "conflict")
        return Audit::tr("Decisions on it disagree.");
    if (why == "findings")
        return Audit::tr("There is a question about it now.");
    return why == "may-not" ? Audit::tr("Who made the batch may no longer decide on it.") : QString();
}

QString auditPerson(const Person& person)
{
    return text(person.name.empty() ? person.code : person.name);
}

QString confidenceText(double chance)
{
    return percentText(std::floor(chance * 1000 + slack));
}

QString auditSizeText(const AuditSize& size)
{
    if (size.drawn == size.size)
        return Audit::tr("All %1 records must be looked at: so few leave nothing to chance.").arg(size.size);
    const QString must = Audit::tr("%1 of the %2 records must be looked at.").arg(size.drawn).arg(size.size);
    const QString why = size.wrong == 1
                            ? Audit::tr("If even one were wrong, chance draws it with %1 certainty.").arg(confidenceText(size.reached))
                            : Audit::tr("If %1 or more were wrong, chance draws at least one of them with %2 certainty.")
                                  .arg(size.wrong)
                                  .arg(confidenceText(size.reached));
    return must + QLatin1Char(' ') + why;
}

QStringList auditLeftOutText(const AuditOffer& offer)
{
    QStringList lines;
    if (offer.notYours > 0)
        lines << Audit::tr("Left out because you may not decide on them: %1.").arg(offer.notYours);
    if (offer.notTheirs > 0)
        lines << Audit::tr("Left out because the auditor may not decide on them: %1.").arg(offer.notTheirs);
    if (offer.tooMany > 0)
        lines << Audit::tr("Left for a next batch: %1.").arg(offer.tooMany);
    return lines;
}

QString auditClaimText(const AuditPage& page)
{
    const auto records = page.line.records;
    if (page.line.state == AuditState::givenUp)
        return Audit::tr("The batch was given up; its records wait as before.");
    if (!page.result)
        return Audit::tr("Looked at so far: %1 of %2. Nothing is said about the answers before the batch is closed.")
            .arg(page.line.answered)
            .arg(page.line.toAnswer);
    if (page.line.state == AuditState::passed)
        return acceptedClaim(page.result->size);
    return Audit::tr("%1 disagreed on %2 of the records drawn. All %3 records go back and are decided one by one.")
        .arg(auditPerson(page.line.auditor))
        .arg(page.result->disagreements.size())
        .arg(records - static_cast<std::int64_t>(page.result->left.size()));
}

QStringList auditGroundsText(const AuditPage& page)
{
    if (!page.result)
        return {};
    const AuditResult& result = *page.result;
    const QString who = auditPerson(page.line.auditor);
    QStringList lines;
    if (page.line.state == AuditState::passed)
        lines << Audit::tr("This holds if %1 sees every wrong record, and knew nothing of the draw.").arg(who);
    constexpr double tells = 0.01;         // below it the auditor may see nothing at all
    const bool blind = result.rejected.share && result.rejected.share->lower < tells;
    if (result.rejected.share)
        lines << Audit::tr("Known records that had been rejected, and %1 would not accept either: %2.").arg(who, skillText(result.rejected));
    if (blind)
        lines << Audit::tr("From these it cannot be said that %1 sees any wrong record.").arg(who);
    if (!result.rejected.share)
        lines << Audit::tr("No rejected record could be mixed in: how well %1 sees wrong ones is not known.").arg(who);
    if (result.accepted.share)
        lines << Audit::tr("Known records that had been accepted, and %1 would accept as well: %2.").arg(who, skillText(result.accepted));
    if (page.line.state == AuditState::passed && !blind && result.reachedBySkill && result.size.drawn > 0)
        lines << Audit::tr("If %1 sees no more than %2 of what is wrong, the confidence is %3.")
                     .arg(who, confidenceText(result.rejected.share->lower), confidenceText(*result.reachedBySkill));
    lines << Audit::tr("The draw follows from the seed %1.").arg(text(result.seed));
    return lines;
}

QString auditDisagreementText(const AuditNamed& record, const Pack& pack)
{
    QStringList parts;
    for (const std::string& id : record.reasons)
        if (const Reason* reason = pack.reason(id))
            parts << text(reason->sentence);
    if (!record.remark.empty())
        parts << text(record.remark);
    return Audit::tr("%1, %2: would be %3. %4")
        .arg(text(record.treeLabel), plainDate(record.date, 0), outcomeWord(record.outcome), parts.join(QLatin1Char(' ')))
        .trimmed();
}

} // namespace cupule::ui
