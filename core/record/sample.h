// Plant material and every pair of hands it passes through. Custody lines are only ever added;
// a wrong line is followed by one that corrects it. The sample's state is computed (rules/custody.h).

#pragma once

#include <optional>
#include <string>

#include "core/base/uid.h"
#include "core/record/visit.h"

namespace cupule {

enum class SampleState { collected, sealed, moving, received, examined, disposed, closed, closedWithBreak, voided };

struct Sample {
    Uid id;
    std::string number;                    ///< with its ISO 7064 check, e.g. "26-TV-0147-H"; see rules/sample_number.h
    Uid visit;
    std::string plantPart;                 ///< part id of the pack
    std::optional<int> pieces;
    std::string condition;                 ///< "fresh", "dry", "holes" or empty
    std::string hostAsBelieved;
    std::string reason;
    Uid collector;
    Uid leaveOwner;                        ///< leave of the owner or occupier
    Uid leaveAuthority;                    ///< leave of the authority
    std::string note;
    bool operator==(const Sample&) const = default;
};

enum class CustodyKind { cut, innerBag, outerBag, onSite, handOver, receipt, result, disposal, close, voided };

struct CustodyLine {
    Uid id;
    Uid sample;
    int number = 0;                        ///< 1, 2, 3 ... within the sample
    CustodyKind kind = CustodyKind::cut;
    std::optional<int> corrects;           ///< number of the line that this one replaces
    std::optional<Instant> out;            ///< hand-over: when it left the giver; otherwise when it happened
    std::optional<Instant> in;             ///< hand-over, receipt: when the taker had it
    Instant written;                       ///< when the line was entered
    std::string from;                      ///< person code, name, or laboratory
    std::string to;
    std::string place;
    std::string bag;                       ///< innerBag, outerBag: number on the bag
    std::string seal;                      ///< outerBag: seal put on; hand-over, receipt: seal number read off the bag
    std::optional<bool> sealWhole;
    std::optional<int> pieces;             ///< as counted here
    std::string condition;
    std::string travel;                    ///< way of travel, or the courier's consignment number
    std::optional<double> celsius;
    std::optional<bool> confirmed;         ///< onSite: double-bagged before leaving the tree
    Hygiene hygiene;                       ///< onSite
    std::string reportNumber;              ///< result
    std::string finding;                   ///< result: "found", "not found", "not examined"
    std::string method;                    ///< result, disposal
    std::string limits;                    ///< result: what it does not say
    std::string host;                      ///< result: host as the laboratory sees it
    std::string signedBy;                  ///< result; disposal: witness
    std::string disposal;                  ///< "destroyed", "voucher", "returned"
    std::string order;                     ///< disposal: number of the written instruction
    std::string reason;                    ///< close with a break, void, correction
    std::string secondPerson;              ///< close with a break
    bool withBreak = false;                ///< close
    std::string remark;
    bool operator==(const CustodyLine&) const = default;
};

} // namespace cupule
