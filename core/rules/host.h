// Is this tree a host? Judged from the characters seen, by the pack's key.
//
//  - "host": at least two characters of different organs or kinds, one diagnostic, none contradicting,
//    and no other kind of the key left.
//  - "not the host": a state that rules out alone, another genus's fruit on the tree, or two contradictions of
//    different organs.
//  - otherwise "cannot tell yet", with the contradiction named if there is one.
// Galls, flower posture and other characters marked decidesHost = false are never read here.

#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/protocol/pack.h"
#include "core/record/visit.h"

namespace cupule {

enum class HostAnswer { host, notHost, cannotTell };

/// One character that spoke, and how.
struct HostEvidence {
    std::string character;
    std::string state;
    std::optional<double> value;
    Mark mark = Mark::shared;               ///< what it means for the host (diagnosticIfCounted is resolved)
    bool counted = true;                    ///< false: on the ground with another tree near, or not asked yet
    /// Stable code where not counted: "ground-not-asked", "ground-other-tree", or "ground-not-accepted" (this
    /// character is judged on the tree only).
    std::string why;
};

/// The character to look at next.
struct NextCharacter {
    std::string character;
    double expectedBits = 0;                ///< about host or not, equal weights over the kinds left
    std::vector<std::string> answersThatDecide;   ///< states after which the answer would be host or not host
    std::vector<std::string> tellsApart;    ///< kinds left, no hosts, that it can tell from every host left
};

struct HostVerdict {
    HostAnswer answer = HostAnswer::cannotTell;
    std::vector<HostEvidence> evidence;
    std::vector<std::string> decidedBy;     ///< characters that carry the answer
    std::vector<std::string> contradictions;///< characters that contradict the host
    std::vector<std::string> kindsLeft;     ///< kind ids still possible
    /// Stable codes: "contradiction", "two-organs", "diagnostic", "counted-margin", "margin-alone",
    /// "winter-organ", "kinds-left".
    std::vector<std::string> lacking;
    std::vector<NextCharacter> next;        ///< best first; empty once decided
};

struct HostContext {
    std::string region;                     ///< pack region id
    int month = 6;                          ///< 1 to 12, of the visit
};

/// Everything, `next` included. Who judges many trees builds a HostKey once (host_key.h).
HostVerdict judgeHost(std::span<const CharacterSeen> seen, const Pack& pack, const HostContext& context);

} // namespace cupule
