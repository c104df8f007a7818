// How far verifiers agree where they decided on the same record without knowing of each other.
//
//  - A record counts with the first two judgements since it was last reopened, each by another person, on one revision: the second is made
//    without seeing the first (new ground, or two stores). Whoever decides third has seen both and is left out.
//  - Undone decisions, and acceptances of a whole batch, are left out.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/task/session.h"
#include "core/training/agreement.h"

namespace cupule {

struct VerifierPair {
    std::string one, other;                 ///< codes, in order
    AnswerTable table;                      ///< accepted, returned, rejected: rows are `one`'s, columns the other's
    PairAgreement agreement;
};

struct VerifierAgreement {
    int records = 0;
    int verifiers = 0;
    std::optional<CivilDate> first, last;   ///< days of the decisions
    std::vector<VerifierPair> pairs;        ///< those with the most records first
    std::optional<GroupAgreement> all;      ///< Fleiss' kappa over all records, where more than two people decided
};

/// Aliases are one person, under the first of their codes.
Result<VerifierAgreement> verifierAgreement(Session& session);

} // namespace cupule
