// What a rule has to say about a record. Codes and arguments only; the sentences are made in ui/bridge/words.

#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"

namespace cupule {

/// note: worth knowing. ask: a question that the verifier will see was asked. stop: blocks handing in.
enum class Severity { note, ask, stop };

struct Finding {
    std::string code;                       ///< stable, "rule.what", e.g. "date.future"
    Severity severity = Severity::note;
    std::string field;                      ///< path into the record: "date", "position", "observations/S02/measure"
    Arguments arguments;
    std::string source;                     ///< why the rule exists: a source text, or "common practice, no source"
    bool operator==(const Finding&) const = default;
};

/// The worst first; within a severity in the order of the rules.
void sortFindings(std::vector<Finding>& findings);
bool blocks(const std::vector<Finding>& findings);

} // namespace cupule
