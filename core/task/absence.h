// What accepted "nothing seen" amount to together: the chance that galls would have been found on the trees that were looked at.
//
//  - Trees are counted, not visits. Looks at one tree within a year combine as 1 - the product of (1 - chance) (Cannon 2001, see
//    core/survey/sample_size.h), over the largest share of its crown that was looked at: what nobody looked at is not found by looking twice.
//  - What a look finds is the planner's choice and stands beside the number. It is never changed silently.

#pragma once

#include <optional>
#include <vector>

#include "core/report/account.h"
#include "core/survey/detection.h"
#include "core/task/session.h"

namespace cupule {

/// An accepted "nothing seen" at a tree.
struct NothingLook {
    Uid tree, observer;
    int year = 0;
    char worth = '0';
    std::optional<int> crownPercent;       ///< that was looked at
};

/// Those of worth 0 say nothing and are left out; so are those without a share of the crown, which are counted.
Result<report::AccountDetection> detectionOf(Session& session, const std::vector<NothingLook>& looks, DetectionChoice choice);

} // namespace cupule
