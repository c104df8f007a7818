// How far people who judge the same things agree, beyond what chance would bring about.

#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/training/proportion.h"

namespace cupule {

/// Counts of things, a row for each answer of the one, a column for the same answer of the other: square.
using AnswerTable = std::vector<std::vector<std::int64_t>>;

/// Two people.
struct PairAgreement {
    std::int64_t things = 0;
    double observed = 0;           ///< share answered alike, 0 to 1
    Interval observedInterval;     ///< Wilson, 95 %
    double chance = 0;             ///< share that would be alike by chance, from each one's own habit
    std::optional<double> kappa;   ///< nothing where chance alone would make all alike
    double error = 0;              ///< asymptotic standard error of kappa
    double errorByChance = 0;      ///< the same if kappa were 0
    Interval interval;             ///< of kappa, 95 %, by `error`; for small numbers a rough guide
    std::optional<double> ac1;     ///< agreement that does not break down where one answer is rare
};

/// Cohen 1960, Educ. Psychol. Meas. 20:37-46; errors: Fleiss, Cohen and Everitt 1969, Psychol. Bull. 72:323-327; AC1: Gwet 2008,
/// Br. J. Math. Stat. Psychol. 61:29-48. Nothing for a table that is empty, not square or holds a negative count.
std::optional<PairAgreement> agreementOfTwo(const AnswerTable& table);

/// More than two people, not the same ones for every thing.
struct GroupAgreement {
    std::int64_t things = 0;
    double observed = 0;              ///< mean share of pairs that agree
    double chance = 0;
    std::optional<double> kappa;      ///< Fleiss: not the mean of the pairs' own kappas
    double errorByChance = 0;         ///< if kappa were 0
    double error = 0;                 ///< whatever kappa is; 0 for a single thing
    Interval interval;                ///< of kappa, 95 %, by `error`; for few things a rough guide
    std::vector<double> shares;       ///< of each answer
    std::vector<double> perThing;     ///< share of pairs that agree on it
    std::vector<std::optional<double>> perAnswer; ///< kappa of each answer against all others
    std::optional<double> ac1;
};

/// A row for each thing: how many people gave each answer, the same number (2 or more) for every thing. Fleiss 1971, Psychol. Bull.
/// 76:378-382; errorByChance: the corrected one of Fleiss, Nee and Landis 1979, Psychol. Bull. 86:974-977; error: Gwet 2021, Educ. Psychol. Meas.
/// 81:781-790 (from memory; a test holds it to the jackknife). Nothing where the rows do not hold the same number of people and answers.
std::optional<GroupAgreement> agreementOfMany(const AnswerTable& counts);

/// What two people said of the same things, as a square table over all their answers, in alphabetical order.
AnswerTable tableOfPairs(std::span<const std::pair<std::string, std::string>> pairs);

} // namespace cupule
