// A practice case: a tree met on a day, as drawings, with questions whose answers follow from how the drawings were made.
//
//  - The same seed, number, topic and step give the same case on every machine. No two cases hold the same drawing: each is made
//    anew from its own seed.
//  - The host verdict is that of the host key (core/rules/host.h) over the characters that the drawings show; signs are those that were
//    drawn; what may be written down and concluded follows from both by the rules of the programme.
//  - Everything drawn is in season on the case's day in its region.

#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "core/protocol/pack.h"
#include "core/rules/host.h"
#include "core/training/answer.h"
#include "core/training/depiction.h"

namespace cupule {

/// A step of difficulty, in words that a trainer understands.
struct DifficultyStep {
    int step = 1;                          ///< 1 to 5
    int distractors = 0;                   ///< other causes drawn on the same tree
    double smallness = 0;                  ///< as of Viewpoint: how little of its frame a drawing fills
    double clutter = 0;                    ///< as of Viewpoint
    double shareThere = 0.5;               ///< cases in which what is looked for is there
    double smallestMm = 10, largestMm = 25;///< galls
    int drawings = 4;                      ///< at most, of one tree: fewer leave more open
};
std::span<const DifficultyStep> difficultySteps();
const DifficultyStep& difficultyStep(int step);   ///< the nearest there is

/// What a case is about: the spaced repetition (boxes.h) counts by it. Host: a kind of tree. Sign and look: a sign. Others: their kind.
struct Topic {
    AskedKind kind = AskedKind::sign;
    std::string subject;
    auto operator<=>(const Topic&) const = default;
};

struct CasePlace {
    std::string region;                    ///< pack region id
    int month = 0;                         ///< 1 to 12; 0 = any
    int year = 2026;
    bool operator==(const CasePlace&) const = default;
};

/// Topics of which there are cases at that place, in a stable order.
std::vector<Topic> topicsOf(const Pack& pack, const CasePlace& place);

struct CaseDrawing {
    Depiction depiction;
    bool onGround = false;                 ///< it lay under the tree
    bool otherTreeNear = false;            ///< of that kind, from which it may have fallen; said beside the drawing
    bool operator==(const CaseDrawing&) const = default;
};

/// One question of a case.
struct AskedItem {
    AskedKind kind = AskedKind::host;
    std::string subject;                   ///< as of AnsweredItem
    std::vector<std::string> options;      ///< what can be answered, as shown; "not-judged" stands last, but for an order
    std::vector<std::string> right;        ///< one or more of them; of an order one right order, all of it
    std::vector<std::string> because;      ///< pack ids behind the key: characters of the host, signs of all else
    bool operator==(const AskedItem&) const = default;
};

struct PracticeCase {
    std::uint64_t seed = 0;                ///< of the session
    int number = 1;
    Topic topic;
    int step = 1;
    std::string region;
    CivilDate date;
    std::string taxon;                     ///< true kind of tree
    std::vector<CaseDrawing> drawings;     ///< at least one
    std::vector<CharacterSeen> shows;      ///< characters that can be told from them
    HostVerdict verdict;
    std::vector<std::string> signs;        ///< true ones, by id
    std::vector<AskedItem> asked;
    [[nodiscard]] std::string id() const;  ///< 16 hexadecimal digits; equal for equal cases of any session
};

struct CaseRequest {
    std::uint64_t seed = 0;
    int number = 1;                        ///< from 1
    Topic topic;
    int step = 1;
    CasePlace place;
    std::set<AskedKind> kinds;             ///< what is asked; empty = everything
};

/// Nothing where there is no case about the topic at that place.
std::optional<PracticeCase> makeCase(const Pack& pack, const CaseRequest& request);

/// The answer to one question, against the key. `given` is one of its options; anything else counts as not judged. `sure` is kept
/// only where something was judged, between 0 and 100.
AnsweredItem answerTo(const AskedItem& item, const std::string& given, std::optional<int> sure);
/// The answer to an order: right where every step stands behind those that must come before it (custody_order.h).
AnsweredItem answerToOrder(const AskedItem& item, const std::vector<std::string>& given, std::optional<int> sure);

} // namespace cupule
