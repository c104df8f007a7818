// Words for what core knows only by code. The window and the command line hand in an implementation that translates
// (ui/bridge); this one is plain English and spells a code out where it has no sentence for it.
//
// `text` works as gettext does: the English sentence is the key. Named places in braces are filled from the
// arguments: text("{n} visits", {{"n", "3"}}).

#pragma once

#include <string>
#include <string_view>

#include "core/base/civil.h"
#include "core/protocol/pack.h"
#include "core/record/decision.h"
#include "core/record/sample.h"
#include "core/record/visit.h"
#include "core/rules/finding.h"
#include "core/rules/host.h"

namespace cupule {

/// Puts the arguments into their named places; a place without an argument stays as it is.
std::string fillIn(std::string_view sentence, const Arguments& arguments);

class Words {
public:
    virtual ~Words() = default;
    [[nodiscard]] virtual std::string text(const char* english, const Arguments& arguments = {}) const;
    /// A whole sentence.
    [[nodiscard]] virtual std::string finding(const Finding& finding, const Pack& pack) const;
    /// What happened, what was kept, what to do.
    [[nodiscard]] virtual std::string fault(const Fault& fault) const;
    /// A few words for a stable code of a list ("new-ground", "closed with break").
    [[nodiscard]] virtual std::string code(std::string_view code) const;
    [[nodiscard]] virtual std::string state(RecordState state) const;
    [[nodiscard]] virtual std::string state(SampleState state) const;
    [[nodiscard]] virtual std::string outcome(Outcome outcome) const;
    [[nodiscard]] virtual std::string host(HostAnswer answer) const;
    [[nodiscard]] virtual std::string custody(CustodyKind kind) const;
    [[nodiscard]] virtual std::string date(CivilDate date) const;
    [[nodiscard]] virtual std::string number(double value, int decimals = 0) const;
};

} // namespace cupule
