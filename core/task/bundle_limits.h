// What a signed file that arrives may ask of this machine: the limits of a store, which its office sets; until then those proposed
// (core/exchange/bundle/zip.h).

#pragma once

#include <string>

#include "core/exchange/bundle/zip.h"
#include "core/task/session.h"

namespace cupule {

Result<BundleLimits> bundleLimits(Session& session);
/// Role office; can be undone. Fault "bundle.limit" (argument "limit") where one of them is not above 0.
Status setBundleLimits(Session& session, const BundleLimits& wanted, const std::string& what);

} // namespace cupule
