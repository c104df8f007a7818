// What the custody files share: the lines sorted by what they say, and the list in which findings are
// gathered. Only core/rules/custody*.cpp include this.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/rules/custody.h"

namespace cupule::custody {

inline constexpr std::string_view commonPractice = "common practice, no source";
inline constexpr std::string_view custodyGuide =
    "ASTM, 1999 reapproved 2018, D4840 Standard guide for sample chain-of-custody procedures";
inline constexpr std::string_view laboratoryStandard = "ISO/IEC, 2017, ISO/IEC 17025 clauses 7.4 and 7.8.2";
inline constexpr std::string_view hygieneGuide =
    "Forestry Commission, 2017, Biosecurity guidance for foresters";
inline constexpr std::string_view packingGuide =
    "US regional plant diagnostic networks, undated, Sample submission: quality and security";

/// The parts of the drawn chain, in the order in which they are passed.
enum class Link { tree, cut, innerBag, outerBag, transfer, result, disposal };

/// A finding, and the link at which it hangs.
struct Noted {
    Finding finding;
    Link link = Link::tree;
    const CustodyLine* line =
        nullptr; ///< which transfer, where link is `transfer`; null = the laboratory to come
};

/// The lines in force by what they say. Points into `lines`; not to be copied.
struct Chain {
    Chain(const Sample& ofSample, std::span<const CustodyLine> all, const CustodyContext& in);
    Chain(const Chain&) = delete;
    Chain& operator=(const Chain&) = delete;

    const Sample& sample;
    const CustodyContext& context;
    std::span<const CustodyLine> written; ///< all lines, corrected ones too
    std::vector<CustodyLine> lines;       ///< in force
    const CustodyLine* cut = nullptr;     ///< the first of its kind, as with the three below
    const CustodyLine* inner = nullptr;
    const CustodyLine* outer = nullptr;
    const CustodyLine* onSite = nullptr;
    const CustodyLine* result = nullptr;       ///< the last
    const CustodyLine* disposal = nullptr;     ///< the first
    const CustodyLine* close = nullptr;        ///< the last
    const CustodyLine* voided = nullptr;       ///< the first
    const CustodyLine* receipt = nullptr;      ///< the last in time
    std::vector<const CustodyLine*> transfers; ///< hand-overs and receipts in order of time

    /// Day on which the material was taken, as well as it is known.
    [[nodiscard]] CivilDate dayTaken() const;
    /// Who held the sample before transfer `at`: the taker of the one before; empty at the tree.
    [[nodiscard]] std::string holderBefore(std::size_t at) const;
    /// Pieces as first counted.
    [[nodiscard]] std::optional<int> piecesTaken() const;
};

/// Everything found; each list in the order of the chain.
struct Gathered {
    std::vector<Noted> missing;
    std::vector<Noted> breaks;
    std::vector<Finding> remarks;
};

Finding finding(std::string_view code, Severity severity, std::string field, Arguments arguments,
                std::string_view source);
/// By number; lines of one number by when they were written, then by id, so that every store has one order.
std::vector<const CustodyLine*> inOrder(std::span<const CustodyLine> lines);
/// Equal but for case, blanks and dashes: how numbers on bags and seals, codes and names are compared.
bool sameMark(std::string_view a, std::string_view b);
/// The kind of tree that a name means (its id, scientific or common name), or null.
const Kind* kindNamed(std::string_view text, const Pack& pack);
/// Who gave: the name, or the consignment number where `holder` is a courier known by it.
std::string giverOf(const CustodyLine& line, const std::string& holder);
/// Who took: the name, or the consignment number of a courier.
std::string takerOf(const CustodyLine& line);
/// When a transfer ended.
std::optional<Instant> arrivalOf(const CustodyLine& line);
/// When a line's event began, if it says.
std::optional<Instant> happenedAt(const CustodyLine& line);
/// From closing the outer bag to receipt, or to now; nothing where the clock says otherwise.
std::optional<double> hoursSinceSeal(const Chain& chain);
double hoursBetween(const Instant& from, const Instant& to);
/// Whole hours from the event to writing it down, where that is later than the same day's work explains.
std::optional<std::string> hoursWrittenLate(const CustodyLine& line);
/// Whether a line written late says so.
bool saysWhyLate(const CustodyLine& line);
/// A change of hands, where writing late without saying so breaks the chain.
inline bool isTransfer(const CustodyLine& line)
{
    return line.kind == CustodyKind::handOver || line.kind == CustodyKind::receipt;
}

/// The leave of the owner or occupier (to enter and to sample), or of the authority (to take and to move),
/// that is lacking on that day.
std::optional<Finding> leaveLacking(LeaveGiver giver, const Sample& sample, CivilDate day,
                                    const CustodyContext& context, Severity severity);

void gatherMissing(const Chain& chain, std::vector<Noted>& out);
void gatherBreaks(const Chain& chain, std::vector<Noted>& out);
void gatherRemarks(const Chain& chain, std::vector<Finding>& out);
std::vector<ChainLink> drawChain(const Chain& chain, const Gathered& gathered);

} // namespace cupule::custody
