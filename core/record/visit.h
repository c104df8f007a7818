// One person (and companions) at one tree on one day: what was seen, how it was looked for, how the place was left.
// The visit carries the state of a record; the state belongs to a revision and is kept by the store.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/base/uid.h"
#include "core/position/position.h"

namespace cupule {

enum class RecordState { draft, submitted, accepted, rejected, returned };
enum class Answer { open, seen, notSeen, notJudged };
enum class Confirmed { open, done, noneUsed };     ///< noneUsed only for vehicle and tools

/// An answer about one host character (pack id "K01"). Either a state or a value; or `notJudged`.
struct CharacterSeen {
    std::string character;
    std::string state;                     ///< state id of the pack; empty where only a value or notJudged holds
    std::optional<double> value;           ///< in the character's unit (teeth on one side, cm of blade)
    bool notJudged = false;
    bool onGround = false;                 ///< the leaf, husk or nut lay on the ground
    std::optional<bool> otherTreeNear;     ///< asked where onGround: could another tree of that kind have dropped it?
    Uid photo;                             ///< the photo that shows it, or null
    bool operator==(const CharacterSeen&) const = default;
};

/// One line of the checklist (pack id "S02").
struct Observation {
    std::string sign;
    Answer answer = Answer::open;
    bool noneOnTree = false;               ///< the organ is absent; counts as not seen
    std::optional<double> measure;         ///< in the sign's unit
    std::optional<double> measureError;    ///< one standard uncertainty, same unit
    std::optional<int> count;
    std::string countClass;                ///< class id of the pack, where not counted
    std::string note;
    bool operator==(const Observation&) const = default;
};

/// How the tree was looked at. Without minutes a "nothing seen" is worth 0.
struct Effort {
    std::optional<int> minutes;            ///< per tree
    std::optional<int> trees;              ///< trees looked at
    std::optional<int> crownPercent;       ///< share of the crown that could be seen, 0 to 100
    std::optional<double> heightMetres;    ///< highest part looked at
    std::optional<bool> binoculars;
    std::optional<bool> innerCrown;        ///< lower and inner crown looked at
    std::string light;                     ///< "good", "fair", "poor" or empty
    std::string leaves;                    ///< "none", "opening", "open", "falling" or empty
    bool operator==(const Effort&) const = default;
};

/// Debris removed before leaving, item by item.
struct Hygiene {
    Confirmed clothes = Confirmed::open;
    Confirmed boots = Confirmed::open;
    Confirmed vehicle = Confirmed::open;
    Confirmed tools = Confirmed::open;
    std::optional<LocalTime> leftSite;
    bool operator==(const Hygiene&) const = default;
};

/// A column or a word that the pack does not know, kept letter for letter.
struct Remark {
    std::string heading;
    std::string text;
    bool operator==(const Remark&) const = default;
};

struct Visit {
    Uid id;
    Uid tree;
    CivilDate date;
    std::optional<LocalTime> time;
    std::string whenTyped;                 ///< date and time as typed, where read from text
    Uid observer;
    std::vector<Uid> companions;
    Uid trainer;                           ///< a trainer who was present, or null
    std::optional<Position> position;      ///< where the observer stood or the row said; the tree keeps its own
    std::vector<CharacterSeen> characters; ///< at most one for each character
    std::vector<Observation> observations; ///< at most one for each sign
    std::optional<int> gallCount;          ///< galls counted without saying which kind
    std::optional<double> gallSizeMm;      ///< largest, likewise
    Effort effort;
    Hygiene hygiene;
    std::optional<int> leafingShiftDays;   ///< observed leafing of chestnut minus the reference date, as used
    std::string leafingFrom;               ///< who observed it, on what
    std::string note;
    std::vector<Remark> remarks;
    bool operator==(const Visit&) const = default;
};

} // namespace cupule
