// The checks on a visit. One rule a file in core/rules/checks/, pure, listed in order by register.cpp.
//
//  - A rule looks at one visit and what is known around it, and says what it finds; it changes nothing and refuses
//    nothing. Severity stop keeps a visit from being handed in, ask is a question that the verifier will see was
//    asked, note is worth knowing.
//  - Nothing is allocated unless there is something to say, so that a million rows can be checked.
//  - No rule knows a pest by name: everything comes from the pack's groups, limits and questions.
//  - Any thread.

#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/protocol/pack.h"
#include "core/record/leave.h"
#include "core/record/photo.h"
#include "core/record/place.h"
#include "core/record/sample.h"
#include "core/record/visit.h"
#include "core/rules/finding.h"
#include "core/rules/host.h"
#include "core/rules/season.h"

namespace cupule {

/// Another visit to the same tree, as far as rules need it.
struct OtherVisit {
    Uid id;
    Uid observer;
    CivilDate date;
    RecordState state = RecordState::draft;
    bool positive = false;
    bool sameAnswers = false;
};

/// A photo of this visit that another visit uses too.
struct SharedPhoto {
    Uid photo;
    std::string otherTree;
    CivilDate otherDate;
};

/// Everything a rule may look at besides the visit. Pointers may be null where it is not known; lists may be empty.
struct CheckContext {
    const Pack* pack = nullptr;             ///< never null
    CivilDate today;
    SeasonContext season;
    const Tree* tree = nullptr;
    const Site* site = nullptr;
    std::span<const PhotoNote> photos;
    std::span<const SharedPhoto> sharedPhotos;
    std::span<const OtherVisit> others;     ///< visits to the same tree
    std::span<const Sample> samples;        ///< samples of this visit
    std::optional<double> nearestFindMetres;///< nearest accepted find of an earlier date; nothing = none accepted
    std::optional<int> nearestFindYears;    ///< years since that find
    bool dateMissing = false;               ///< the visit was begun without a date
    bool laboratoryReport = false;          ///< a laboratory has reported on a sample of this visit
};

/// Flights of the pest between finds that lie `years` calendar years apart: one generation a year, and at least the one
/// that brought it here.
int flightsSince(int years);
/// Metres that spread explains in so many flights, at the pack's rate (settings.spreadKilometresPerYear).
double spreadExplains(int flights, const Pack& pack);

/// What every rule gets: the visit, its context, and what is computed once for all of them.
struct CheckInput {
    const Visit& visit;
    const CheckContext& context;
    const HostVerdict& host;
    const Positive& positive;
    bool nothing = false;                   ///< nothingSeen()
    std::span<const Sign* const> signs;     ///< for each observation, in its order; null where the pack does not know it
    std::span<const Character* const> characters;   ///< for each character answered, likewise
    bool gallSeen = false;                  ///< a gall line or a laboratory find answered "seen", on whatever tree
};

using CheckFunction = void (*)(const CheckInput&, std::vector<Finding>&);

struct Check {
    std::string_view name;                  ///< file name of the rule, e.g. "date_impossible"
    CheckFunction run;
    std::vector<std::string_view> codes;    ///< every code of its own; questions of the pack bring theirs (packCodes)
};

/// In the order in which findings of one severity are listed.
const std::vector<Check>& allChecks();

/// Codes that come with a pack: its season questions.
std::vector<std::string_view> packCodes(const Pack& pack);

/// Runs all checks; sorted, worst first.
std::vector<Finding> checkVisit(const Visit& visit, const CheckContext& context);
/// The same, with the verdict already at hand.
std::vector<Finding> checkVisit(const Visit& visit, const CheckContext& context, const HostVerdict& host);

} // namespace cupule
