// Every noun as canonical JSON (RFC 8785) and back: keys sorted, no blanks, members at their default left out, enum values by
// name, a moment whose offset is unknown with "-00:00" (RFC 3339, 4.3).
// This text is what a revision holds, what its digest is taken over and what travels between stores.

#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/record/audit.h"
#include "core/record/decision.h"
#include "core/record/key.h"
#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/record/photo.h"
#include "core/record/place.h"
#include "core/record/sample.h"
#include "core/record/visit.h"

namespace cupule {

std::string toJson(const Person& value);
std::string toJson(const Site& value);
std::string toJson(const Tree& value);
std::string toJson(const Visit& value);
std::string toJson(const PhotoNote& value);
std::string toJson(const Sample& value);
std::string toJson(const CustodyLine& value);
std::string toJson(const Leave& value);
std::string toJson(const Regime& value);
std::string toJson(const Decision& value);
std::string toJson(const Told& value);
std::string toJson(const KeyNote& value);
std::string toJson(const AuditBatch& value);
std::string toJson(const AuditStep& value);

/// Appends the same text. False where the noun holds what JSON cannot (a number that is not finite, text that is no UTF-8);
/// such a text must not be kept.
bool appendJson(std::string& out, const Visit& value);
bool appendJson(std::string& out, const Tree& value);

/// Fault "record.json" with the path of the first wrong member. Unknown and doubled members are refused:
/// they would be lost. Argument "why": "syntax", "missing", "unknown", "doubled", "type" or "value".
template <class Noun>
Result<Noun> fromJson(std::string_view text);

} // namespace cupule
