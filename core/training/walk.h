// A walk through one month, one thing at a time: the host key first, then the signs, then the cautions. What each step shows and says
// comes from the pack; how a trainer has arranged it comes from a lesson (lesson.h).
//
//  - Characters come in the order in which the key would ask them of an unknown tree that month (host_key.h), the rest in the pack's.
//  - Signs come with gall lines first, then what says more about a gall, what supports one, what is confused with one; within each,
//    those at their peak first. A sign is in the walk where it is expected or possible on any day of the month.
//  - Pure functions; any thread.

#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/protocol/pack.h"
#include "core/rules/season.h"

namespace cupule {

enum class StepKind { character, sign, caution };
/// Stored names: "character", "sign", "caution".
std::string_view stepKindName(StepKind kind);

/// What one state of a character says about the host.
struct StateMeaning {
    std::string state;                     ///< id
    std::string words;                     ///< of the pack
    std::vector<std::string> hosts;        ///< kind ids of hosts that show it
    std::vector<std::string> others;       ///< of other trees that show it
    bool rulesOut = false;                 ///< seen clearly on the tree, this alone rules the host out
    bool diagnostic = false;               ///< only a host shows it, so says the key; two characters are needed all the same
    bool ifCounted = false;                ///< diagnostic only where it was counted or measured (pack's countedLimits)
};

struct WalkStep {
    StepKind kind = StepKind::character;
    std::string subject;                   ///< pack id of the character or sign; of cautions their topic
    std::string title;
    std::string part;                      ///< organ, or part of the tree
    std::vector<std::string> look;         ///< what to look at, in the pack's words
    std::vector<StateMeaning> states;      ///< of a character
    SeasonState season = SeasonState::possible;   ///< of a sign: the best of the month
    std::string weight, weightReason;      ///< of a sign: "strong", "supporting", "weak", "confusable", and why
    SignGroup group = SignGroup::supporting;
    std::string measure, unit;             ///< empty where nothing is measured
    double usualMin = 0, usualMax = 0;     ///< in the unit
    std::string action;                    ///< what to do at the tree
    std::vector<std::string> mustNotConclude;
    std::vector<std::string> cautions;
    std::vector<std::string> alike;        ///< of a sign: signs of the same part and month that have other causes, and the other way round
    std::vector<Source> sources;
};

struct WalkPlace {
    std::string region;                    ///< pack region id
    int month = 6;                         ///< 1 to 12
    int shiftDays = 0;                     ///< observed leafing minus reference
};

/// Never empty: the cautions of going out are in every walk.
std::vector<WalkStep> walkOf(const Pack& pack, const WalkPlace& place);

/// "that adults are present; that the tree is dying" in its parts, trimmed, without empty ones.
std::vector<std::string> partsOf(std::string_view list);

} // namespace cupule
