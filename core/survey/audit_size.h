// How many records of a batch must be looked at before all of them are accepted.
//
// Source: the hypergeometric case of ISPM 31 (FAO, 2008), by sample_size.h. A batch is accepted only if none of those drawn is
// wrong, so the draw must find at least one with the wanted confidence wherever as many are wrong as must not go unnoticed.

#pragma once

#include <cstdint>
#include <optional>

#include "core/survey/sample_size.h"

namespace cupule {

struct AuditSize {
    std::int64_t size = 0;                 ///< records in the batch
    std::int64_t wrong = 0;                ///< the fewest wrong ones that must not go unnoticed: the tolerable share, but at least one
    std::int64_t drawn = 0;
    double reached = 0;                    ///< the chance to draw a wrong one where there are `wrong` of them; at least as wanted
};

/// Nothing where the batch is empty, or a number is not above 0 and below 1.
std::optional<AuditSize> auditSize(std::int64_t size, double confidence, double tolerable);

/// Of a draw that is there already: the chance that it holds one of `wrong` and that it is recognized, each one with the chance
/// `sensitivity` (0 to 1).
double auditReached(const AuditSize& size, double sensitivity = 1);

/// How many records with a known decision are mixed in: a fifth of the draw, at least 5 and at most 20. Common practice, no source:
/// enough to see an auditor who says yes to everything, few enough not to wear them out.
std::int64_t knownToMix(std::int64_t drawn);

} // namespace cupule
