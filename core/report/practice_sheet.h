// The sheet of a recruit, and of a cohort: how far a yes and a no can be believed, what is taken for what, whether people know how sure they may
// be, how they learn, and what to practise next. Small numbers are said to be small; nobody is called not ready.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/report/document.h"
#include "core/report/words.h"
#include "core/training/results.h"

namespace cupule::report {

/// A line of a cohort.
struct SheetRecruit {
    std::string who;                       ///< code or name; empty where names are left out
    std::int64_t answers = 0, right = 0;
    std::optional<SubjectResult> galls;    ///< gall lines together
    std::optional<SubjectResult> hosts;
    std::string practiseNext;              ///< words, empty where nothing was wrong
};

struct PracticeSheet {
    std::string storeName;
    bool demonstration = false;
    CivilDate made;
    std::string who;                       ///< of a recruit; empty = names are left out
    std::string cohort;                    ///< empty = everybody
    bool ofCohort = false;
    PracticeResults results;
    std::vector<NextPractice> next;
    std::vector<SheetRecruit> recruits;    ///< of a cohort
    std::optional<GroupAgreement> agreement;
    std::int64_t agreementPeople = 0, agreementQuestions = 0;
    ReadyLimits limits;
    double prevalence = 0.1;
};

Document practiceSheet(const PracticeSheet& sheet, const Pack& pack, const Words& words);

/// A subject in words: short name of a sign, common name of a kind of tree, words for a question; the id where the pack does not know it.
std::string subjectWords(AskedKind kind, const std::string& subject, const Pack& pack, const Words& words);
/// "87 % (74 to 94)"; "-" where there is none. Percent without decimals.
std::string shareWords(const std::optional<Share>& share, const Words& words);

} // namespace cupule::report
