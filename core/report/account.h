// The one-page account of a season: what was looked for, what was found where and how sure, what waits, samples by
// state, cautions. The data is gathered by core/task/account.h; here it becomes a document.
//
//  - Places are coarse on purpose (the square of the pack's size: the name of a wood would be an exact place), people are
//    not named.
//  - It says what was seen, never what follows from it: the status of a place is the authority's to declare.

#pragma once

#include <array>
#include <map>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/protocol/pack.h"
#include "core/record/sample.h"
#include "core/record/visit.h"
#include "core/report/document.h"
#include "core/report/words.h"

namespace cupule::report {

/// A positive record, as an account tells of it.
struct AccountFind {
    std::string tree, square;       ///< square: name of the coarse square, or empty
    CivilDate date;
    std::vector<std::string> signs; ///< pack ids
    RecordState state = RecordState::submitted;
    bool oneOfTwo = false;
    bool earlierGenerationOnly = false;
    bool laboratory = false; ///< a laboratory report stands behind the acceptance
    int verifiers = 0;       ///< different people who accepted it
    bool told = false;       ///< the authority has been told
};

/// What accepted "nothing seen" amount to together under a stated assumption, tree by tree within a year.
struct AccountDetection {
    bool measured = false;                 ///< a planner chose what was measured of each observer (lower bound); else the protocol's
    double a = 0, b = 0, c = 0;            ///< the protocol's chances that a look of that worth finds a gall that is there
    int looks = 0;                         ///< accepted, of worth A to C, with a stated share of the crown
    int looksLeftOut = 0;                  ///< of worth A to C without one
    int trees = 0;                         ///< that had such a look, counted once a year; without a gall claimed
    double found = 0;                      ///< 0 to 1: of these trees, had all of them carried galls, how many would have been found
    int people = 0, notMeasured = 0;       ///< who looked, and of whom nothing measured is told
    double lowest = 0, highest = 0;        ///< of the measured lower bounds; meaningless where nobody is measured
};

struct AccountData {
    std::string storeName;
    bool demonstration = false;
    int year = 0; ///< 0 = all years
    CivilDate made;
    int visits = 0, trees = 0, sites = 0, people = 0;
    CivilDate first, last; ///< of the visits; meaningless where there are none
    std::map<RecordState, int> byState;
    std::map<RecordState, int> nothingByState;
    AccountDetection detection;
    std::map<char, int> nothingWorth;    ///< accepted "nothing seen" by worth letter
    int treesNothing = 0;                ///< trees with an accepted "nothing seen" and no positive
    std::array<double, 24> halfMonths{}; ///< visits by half-month
    std::vector<AccountFind> finds;      ///< oldest first; struck-out and rejected ones left out
    int returnedWaiting = 0, correctionsWaiting = 0, oneOfTwo = 0;
    std::map<SampleState, int> samples;
    int samplesLacking = 0; ///< samples that cannot close yet
    std::int64_t journalLines = 0;
    bool journalWhole = true;
};

Document account(const AccountData& data, const Pack& pack, const Words& words);

} // namespace cupule::report
