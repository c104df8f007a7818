// The chain of a sample: its links, its state, what is missing before it can close, what is broken for good.
//
//  - Missing: a fact that can still be put down. Closing is refused until none is left, and all are named at
//    once.
//  - Break: facts that contradict each other or show that the chain was open. It stays, does not touch the field
//    record, and leaves only closing "with a break" (a reason and a second person). A break goes away only when
//    a correcting line shows that it was a slip of the pen; the correction itself stays visible as a remark.
//  - Without double-bagging confirmed before leaving the tree nothing closes, with a break or without.
//  - Of lines that happen once (cut, bags, on site) the first counts; a later one counts only if it says which
//    line it corrects.
//
// Sources: ASTM D4840 (custody), ISO/IEC 17025 clause 7.4 (receipt), Forestry Commission 2017 (hygiene).

#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/protocol/pack.h"
#include "core/record/leave.h"
#include "core/record/sample.h"
#include "core/rules/finding.h"
#include "core/rules/host.h"

namespace cupule {

enum class LinkState { whole, open, broken, ahead };

/// One link of the drawn chain: tree, cut, inner bag, outer bag, each pair of hands, laboratory, result, disposal.
struct ChainLink {
    std::string kind;                       ///< "tree", "cut", "inner-bag", "outer-bag", "hands", "laboratory", "result", "disposal"
    LinkState state = LinkState::ahead;
    std::string who;
    std::string what;                       ///< number of bag, seal or report, as the kind has it
    std::optional<Instant> when;
    int line = 0;                           ///< custody line behind it, 0 = none yet
    std::vector<std::string> lacking;       ///< codes of what would close it
    std::vector<std::string> broken;        ///< codes of what is broken at it
};

/// Hours from the seal to the laboratory, as the programme sets them; nobody published any.
struct SampleLimits {
    double warnHours = 0;                   ///< from then on it is warned of
    double askHours = 0;                    ///< from then on it is asked about
    double rearingHours = 0;                ///< from then on it is of no use for rearing
    bool operator==(const SampleLimits&) const = default;
};
/// The pack's proposal, in force until the programme sets its own.
SampleLimits proposedLimits(const Pack& pack);

struct CustodyContext {
    const Pack* pack = nullptr;             ///< never null
    std::optional<SampleLimits> limits = {};   ///< of the programme; nothing = the pack's proposal
    std::span<const Leave> leaves;          ///< all that could apply
    Uid site;                               ///< of the tree
    HostAnswer host = HostAnswer::cannotTell;
    bool visitRejected = false;
    std::span<const std::string> sealsElsewhere;   ///< seal numbers on other samples
    std::span<const std::string> bagsElsewhere;    ///< bag numbers on other samples
    std::span<const std::string> numberElsewhere;  ///< labels of the trees of other samples that have this sample's number
    Instant now;
};

struct SampleStatus {
    SampleState state = SampleState::collected;
    std::vector<ChainLink> chain;
    std::vector<Finding> missing;           ///< everything that keeps it from closing whole and can still be done
    std::vector<Finding> breaks;            ///< what is broken and stays so
    std::vector<Finding> remarks;           ///< time limits, host ruled out later, written afterwards
    bool canCloseWhole = false;
    bool canCloseWithBreak = false;         ///< with a reason and a second person
    bool mustBeVoid = false;                ///< double-bagging was not confirmed: it can never close
    std::optional<double> hoursSinceSeal;   ///< until receipt, or until now
};

/// Every code that sampleStatus and mayOpenSample can give.
std::span<const std::string_view> custodyCodes();

/// Lines in order of number; corrected lines are replaced by their corrections before anything is judged.
SampleStatus sampleStatus(const Sample& sample, std::span<const CustodyLine> lines, const CustodyContext& context);
/// The lines that count, each correction in the place of what it corrects.
std::vector<CustodyLine> linesInForce(std::span<const CustodyLine> lines);

/// What keeps a sample from being opened at all: two leaves in force that day, host not ruled out.
std::vector<Finding> mayOpenSample(const Sample& sample, CivilDate day, const CustodyContext& context);

} // namespace cupule
