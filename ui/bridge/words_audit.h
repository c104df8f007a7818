// What a batch and its blind audit mean, in words for the window and the command line. Qt Core only.

#pragma once

#include <QString>
#include <QStringList>

#include "core/task/audit.h"

namespace cupule::ui {

/// "waits for its audit", "accepted", "sent back", "given up".
QString auditStateWord(AuditState state);
/// Why a record left its batch.
QString auditLeftText(const std::string& why);
/// Name, or code where there is none.
QString auditPerson(const Person& person);

/// "95 %"; cut off, never rounded up to a confidence that is not reached.
QString confidenceText(double chance);
/// How many must be looked at, and what such a draw can find.
QString auditSizeText(const AuditSize& size);
/// What was left out of an offer, and why; may be empty.
QStringList auditLeftOutText(const AuditOffer& offer);
/// What a closed batch came to: with which confidence at most which share is wrong, or why it was sent back.
QString auditClaimText(const AuditPage& page);
/// What the claim rests on: chance, and an auditor who sees what is wrong; with what is known of that.
QStringList auditGroundsText(const AuditPage& page);
/// A record on which the auditor differed: what they said and why.
QString auditDisagreementText(const AuditNamed& record, const Pack& pack);

} // namespace cupule::ui
