// A protocol pack: everything the engine knows about one pest and its host, read from JSON (pack_reader.h).
// The engine knows no pest by name. Every fact carries its source and whether it was read, is a judgement,
// is common practice or is from memory.

#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil.h"

namespace cupule {

enum class Basis { read, secondHand, judgement, commonPractice, memory };

/// A source as cited: the work, and on what footing the fact stands.
struct Source {
    std::string text;                       ///< author, year, title; or "common practice, no source"
    Basis basis = Basis::read;
};

struct Region {
    std::string id;                         ///< "MAR"
    std::string name;
    std::string leafingReference;           ///< "05-01", month and day of the reference leafing date
    Source source;                          ///< of the reference date
};

/// Months by bit: bit 0 = January.
using Months = std::uint16_t;

// ---------------------------------------------------------------- host key

struct CharacterState {
    std::string id;                         ///< "opposite"; what a volunteer can choose
    std::string words;                      ///< "leaves in pairs, opposite one another"
    std::vector<std::string> alsoCalled;    ///< words accepted on import, lower case
    bool rulesOut = false;                  ///< seen clearly on the tree, this alone rules the host out
};

struct Character {
    std::string id;                         ///< "K01"
    std::string name;                       ///< "leaf arrangement"
    std::string organ;                      ///< "leaf", "twig", "bud", "flower", "fruit", "bark"
    std::string question;
    std::string caution;
    std::vector<CharacterState> states;     ///< empty where only a value is asked
    std::string unit;                       ///< of the value: "count", "cm", "mm" or empty
    std::string valueWords;                 ///< "teeth counted on one side"
    double hardMin = 0, hardMax = 0;        ///< of the value, where unit is not empty
    std::map<std::string, Months> visible;  ///< on the tree, by region id
    std::map<std::string, Months> onGround; ///< on the ground only, in further months, by region id
    bool onGroundToo = false;               ///< may also be seen on the ground
    bool decidesHost = true;                ///< false: described, never counted for or against the host
    bool showsWithoutLeaves = false;        ///< can confirm a bare tree (husk, fallen leaf with its stalk)
    Source source;                          ///< of the months
};

enum class Mark { shared, diagnostic, diagnosticIfCounted, pointsToOtherHost, contradicts, notForHost };

/// What one kind of tree shows for one character. No row = unknown there, never excluded.
struct KindRow {
    std::string kind;
    std::string character;
    std::vector<std::string> states;        ///< any of these may be met
    std::vector<std::string> groundStates;  ///< further ones met in what has fallen
    std::string asPublished;                ///< the words of the source
    std::optional<double> min, max;         ///< of the value
    Mark mark = Mark::shared;
    std::vector<Source> sources;
};

struct Kind {
    std::string id;                         ///< "castanea-sativa"
    std::string name;                       ///< "Castanea sativa"
    std::string commonName;                 ///< "sweet chestnut"
    bool host = false;
};

/// When a character marked diagnosticIfCounted counts as diagnostic.
struct CountedLimit {
    std::string character;                  ///< the character that becomes diagnostic ("K03")
    std::string measuredBy;                 ///< the character whose value is compared ("K03" or "K05")
    double atLeast = 0;
    Source source;
};

// ---------------------------------------------------------------- signs and season

enum class SignGroup {
    gall,             ///< a field gall line: seen on a host it is a positive
    gallDetail,       ///< says more about a gall; without a gall line it is a question
    supporting,
    confusable,       ///< another cause, or an associated disease
    wrongHost,        ///< belongs to another kind of tree
    laboratory,       ///< entered only with a laboratory report
    computed,         ///< never answered by a person
};

/// Days of the year as published, 1 to 366, always counted as in a year with a 29 February, so that a month
/// begins on the same day in every year (1 May is 122); a window may run over the new year.
struct Window {
    int first = 0, peakFrom = 0, peakTo = 0, last = 0;   ///< last = 0: stays
};

struct Sign {
    std::string id;                         ///< "S01"
    std::string name;
    std::string shortName;                  ///< for narrow columns
    std::string part;
    SignGroup group = SignGroup::supporting;
    bool earlierGeneration = false;         ///< a past year's gall
    bool persists = false;                  ///< possible all year once it has appeared
    double shiftFactor = 0;                 ///< share of the leafing shift by which its peak moves
    std::map<std::string, Window> windows;  ///< by region id
    std::string weight, weightReason;       ///< "strong", "supporting", "weak", "confusable"
    std::string measure, unit;              ///< empty where nothing is measured
    double usualMin = 0, usualMax = 0, hardMin = 0, hardMax = 0;
    std::string action;                     ///< what to do in the field
    std::string caution;
    std::string mustNotConclude;
    bool onChecklist = true;
    bool onRuledOutTree = false;            ///< may be answered on a tree that is no host
    std::vector<std::string> alsoCalled;    ///< words accepted on import, lower case
    std::string ribbon;                     ///< season ribbon: "green", "holes", "adults", "dry" or empty
    std::vector<Source> sources;
};

/// A claim that is asked about at some time of the year (never refused for it).
struct SeasonQuestion {
    std::string code;                       ///< stable, "season.green-gall"
    std::vector<std::string> signs;
    std::vector<std::string> characters;
    std::vector<std::string> states;        ///< of the characters; empty = whatever was answered
    /// By region id: asked when the date lies outside [first, last]. A region that is not named is never
    /// asked; no region at all means always asked.
    std::map<std::string, Window> quietOutside;
    std::vector<std::string> together;      ///< asked only with one of these signs seen; empty = always
    double shiftFactor = 0;                 ///< share of the leafing shift by which the quiet time may grow
    std::string words;
    Source source;
};

struct WorthRow {
    std::array<char, 24> letters{};         ///< 'A','B','C','0' for each half-month, January first half first
    std::array<double, 24> startMoves{};    ///< share of the shift by which its start moves
    std::array<std::string, 12> lookFor;
    std::array<std::string, 12> why;
    Source source;
};

/// A condition of a full-worth "nothing seen"; any number of missing ones cost one step together.
struct WorthCondition {
    std::string id;                         ///< "minutes", "crown-photo" ...
    std::string words;
    bool essential = false;                 ///< without it the worth is 0
    Source source;
};

// ---------------------------------------------------------------- words the programme lays down

struct Reason {
    std::string id;
    std::string sentence;                   ///< said to the observer
    std::string whatToDo;
    bool accept = false, reject = false, giveBack = false;   ///< decisions it can stand for
    Source source;
};

struct Caution {
    std::string id, topic, words;
    Source source;
};

/// What a publication says on a fact.
struct Published {
    std::string words;
    std::optional<double> min, max;         ///< in the fact's unit
    Source source;
};

/// A plain fact that trainers state, with what is published beside it.
struct Fact {
    std::string id, words, unit;
    std::optional<double> min, max;         ///< as trainers state it
    Source source;
    std::vector<Published> published;
};

/// A class of numbers for what was not counted; `to` = 0: no upper end.
struct CountClass {
    std::string id, words;
    int from = 0, to = 0;
    Source source;
};

/// A colour that a gall may be called by its CIELAB values (D65); the first of the list that holds one names it. A hint
/// only: cameras are not calibrated.
struct GallColour {
    std::string id, words;
    double lightnessMin = 0, lightnessMax = 100;
    double chromaMin = 0, chromaMax = 200;
    double hueFrom = 0, hueTo = 360;        ///< degrees; from above to: over 0
    Source source;
};

/// Something of known size that lies beside a gall on a photo: a coin, a card.
struct KnownLength {
    std::string id, words;
    double millimetres = 0;
    double uncertaintyMillimetres = 0;      ///< one standard uncertainty: wear, tolerance, an edge that is not round
    Source source;
};

struct Settings {
    double newGroundKilometres = 10;        ///< no accepted find within this distance or in the same square
    double spreadKilometresPerYear = 8;     ///< fastest published average front
    double spreadLowKilometresPerYear = 5;
    double sameTreeMetres = 50;
    double usefulUncertaintyMetres = 100;   ///< coarser than this is asked about
    double photoMetres = 250;               ///< beyond both uncertainties
    int photoMinutes = 180;
    int shiftLimitDays = 21;
    double daysPer100Metres = 2.5;          ///< leafing is so much later for each 100 m of height
    double sampleWarnHours = 24, sampleAskHours = 72, sampleVoidRearingHours = 96;
    std::array<double, 4> areaWSEN{-11, 49, 2, 61};
    std::map<std::string, Source> sources;  ///< by the setting's name in the pack
};

struct Pack {
    std::string id, name, version, language;
    std::vector<Region> regions;
    std::vector<Character> characters;
    std::vector<Kind> kinds;
    std::vector<KindRow> key;
    std::vector<CountedLimit> countedLimits;
    std::string marginCharacter;            ///< the character that with arrangement alone never confirms
    std::string arrangementCharacter;
    std::vector<Sign> signs;
    std::vector<SeasonQuestion> seasonQuestions;
    std::map<std::string, WorthRow> worth;  ///< by region id
    std::vector<WorthCondition> worthConditions;
    std::vector<Reason> reasons;
    std::vector<Caution> cautions;
    std::vector<std::string> standingNotice;   ///< shown at the first gall line seen
    std::vector<std::string> plantParts;
    std::string hazardLine;                 ///< on labels and custody papers
    std::string exportNote;                 ///< on everything that leaves
    std::vector<Fact> facts;
    std::vector<CountClass> countClasses;
    std::vector<GallColour> gallColours;
    std::vector<KnownLength> knownLengths;
    Settings settings;

    [[nodiscard]] const Character* character(std::string_view id) const;
    [[nodiscard]] const CharacterState* state(std::string_view character, std::string_view id) const;
    [[nodiscard]] const Kind* kind(std::string_view id) const;
    [[nodiscard]] const KindRow* row(std::string_view kind, std::string_view character) const;
    [[nodiscard]] const Sign* sign(std::string_view id) const;
    [[nodiscard]] const Region* region(std::string_view id) const;
    [[nodiscard]] const Reason* reason(std::string_view id) const;
};

} // namespace cupule
