// A sample whose chain is whole, from the tree to its disposal, for the custody tests to take apart.

#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/rules/custody.h"
#include "tests/rules/fixtures.h"

namespace cupule::test {

/// Everything that sampleStatus looks at, owned in one place. Invented people and places.
struct Case {
    Pack pack;
    Sample sample;
    std::vector<CustodyLine> lines;
    std::vector<Leave> leaves;
    std::vector<std::string> seals, bags, sameNumber;
    Uid site = uidOf(1);
    HostAnswer host = HostAnswer::host;
    bool visitRejected = false;
    Instant now = at("2026-06-20T12:00:00Z");

    /// Complete: lines 1 to 8 are cut, inner bag, outer bag, on site, hand-over, receipt, result, disposal.
    Case();
    [[nodiscard]] CustodyContext context() const;
    [[nodiscard]] SampleStatus status() const;
    CustodyLine& line(CustodyKind kind);
    void drop(CustodyKind kind);
    /// Adds a line with the next number, written when it happened.
    CustodyLine& append(CustodyKind kind, const char* out);
    /// Adds a copy of a line that corrects it, with a reason.
    CustodyLine& correct(CustodyKind kind);
};

/// Codes of findings, sorted.
std::vector<std::string> codesOf(const std::vector<Finding>& findings);

} // namespace cupule::test
