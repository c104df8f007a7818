// How far somebody's yes and no can be believed, against a true answer.

#pragma once

#include <cstdint>
#include <optional>

#include "core/training/proportion.h"

namespace cupule {

/// What was answered, by what was true.
struct YesNoTable {
    std::int64_t rightYes = 0;
    std::int64_t wrongYes = 0;
    std::int64_t wrongNo = 0;
    std::int64_t rightNo = 0;
};

struct Share {
    double value = 0;
    Interval interval; ///< 95 %
};

/// Shares with Wilson's interval, likelihood ratios by the log method of Simel, Samsa and Matchar 1991, J. Clin. Epidemiol. 44:763-770
/// (nothing where a zero leaves no ratio or no interval). Definitions: Altman and Bland 1994, BMJ 308:1552 and 309:102; Deeks and
/// Altman 2004, BMJ 329:168-169. A share is nothing where it would be out of none.
struct Accuracy {
    std::optional<Share> sensitivity;      ///< of those that are there, found
    std::optional<Share> specificity;      ///< of those that are not, passed
    std::optional<Share> yesIsRight;       ///< predictive value of a yes, at the share there was in this table
    std::optional<Share> noIsRight;
    std::optional<Share> right;
    std::optional<Share> ratioOfYes;       ///< positive likelihood ratio
    std::optional<Share> ratioOfNo;        ///< negative likelihood ratio
};

Accuracy accuracyOf(const YesNoTable& table);

/// What a yes (with its ratio) or a no makes of a prior chance (0 to 1): odds times ratio, by Bayes' rule.
double chanceAfter(double prior, double likelihoodRatio);

/// Predictive value of a yes, and of a no, where the share `prevalence` (0 to 1) is there. Nothing where neither answer occurs.
std::optional<double> yesIsRightAt(double prevalence, double sensitivity, double specificity);
std::optional<double> noIsRightAt(double prevalence, double sensitivity, double specificity);

} // namespace cupule
