// The checks on a visit. One rule a file in core/rules/checks/, pure, listed in order by register.cpp.

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
};

/// What every rule gets: the visit, its context, and what is computed once for all of them.
struct CheckInput {
    const Visit& visit;
    const CheckContext& context;
    const HostVerdict& host;
    const Positive& positive;
    bool nothing = false;                   ///< nothingSeen()
};

using CheckFunction = void (*)(const CheckInput&, std::vector<Finding>&);

struct Check {
    std::string_view name;                  ///< file name of the rule, e.g. "date_impossible"
    CheckFunction run;
    std::vector<std::string_view> codes;    ///< every code that it can give
};

/// In the order in which findings of one severity are listed.
const std::vector<Check>& allChecks();

/// Runs all checks; sorted, worst first.
std::vector<Finding> checkVisit(const Visit& visit, const CheckContext& context);
/// The same, with the verdict already at hand.
std::vector<Finding> checkVisit(const Visit& visit, const CheckContext& context, const HostVerdict& host);

} // namespace cupule
