// What Review says of versions that do not agree, of narrowing the queue and of an observer's past. Qt Core only.

#pragma once

#include <map>
#include <string>

#include <QString>

#include "core/protocol/pack.h"

namespace cupule::ui {

/// The value of a field, from its JSON: "not seen, 14 mm", "SO 5487 4391, ± 7 m", "12". `names` are those of ids that stand in it. A field
/// that is not there is "nothing".
QString fieldValueText(const std::string& path, const std::string& json, const Pack& pack, const std::map<std::string, std::string>& names);
/// The name of a field of a noun, for every path that a conflict can have.
QString conflictFieldWords(const std::string& path, const Pack& pack);
/// ConflictVersion::clockDoubt: why a clock is not believed.
QString clockDoubtText(const std::string& code);
/// "visit", "tree" and so on.
QString nounWord(const std::string& noun);
/// QueueWanted::which in a few words: "first finds in new ground".
QString queuePartText(const std::string& which);
/// CameWith::kind: "a day's file".
QString bundleKindText(const std::string& kind);

} // namespace cupule::ui
