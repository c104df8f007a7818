// Results of practice: of one recruit, of a cohort. Everything is counted by the store; no list of answers is loaded but for a
// learning curve and for agreement within a series.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/task/session.h"
#include "core/training/results.h"

namespace cupule {

/// What the programme sets for results.
struct PracticeRules {
    ReadyLimits limits;
    double prevalence = 0.1;               ///< 0 to 1, at which predictive values are stated
    bool operator==(const PracticeRules&) const = default;
};
Result<PracticeRules> practiceRules(Session& session);
/// Can be undone. Roles trainer, office. Fault "practice.rules" unless each lies above 0 and below 1.
Status setPracticeRules(Session& session, const PracticeRules& rules, const std::string& what);

struct RecruitResults {
    Uid person;                            ///< null: everybody who is not named
    std::string code, name;                ///< empty where they are left out
    PracticeResults results;               ///< with the curve, in runs of `curveRun` answers
    std::vector<NextPractice> next;
    std::optional<SubjectResult> galls;    ///< the gall lines together
    std::optional<SubjectResult> hosts;
};

struct CohortResults {
    std::string cohort;                    ///< empty = everybody
    PracticeResults results;               ///< of all together; its curve is of the nth runs of everybody
    std::vector<NextPractice> next;
    std::vector<RecruitResults> recruits;  ///< by code; without curve, confusions and calibration
    std::optional<GroupAgreement> agreement;   ///< Fleiss' kappa over the questions of a series that the same people all answered
    std::int64_t agreementPeople = 0;
    std::int64_t agreementQuestions = 0;
};

inline constexpr std::int64_t curveRun = 20;
inline constexpr std::size_t nextShown = 8;

struct ResultsWish {
    std::optional<std::string> cohort = {};
    bool names = true;                     ///< false: no codes and no names; recruits come in an order that says nothing
    std::optional<PracticeRules> rules = {};   ///< nothing = the programme's
};

/// Of oneself, or of anybody for trainer and office. Fault "role.needed".
Result<RecruitResults> recruitResults(Session& session, const Uid& person, const ResultsWish& wish);
/// Roles trainer, office.
Result<CohortResults> cohortResults(Session& session, const ResultsWish& wish);

} // namespace cupule
