// Answers of a visit as NAME=VALUE, for entering and correcting on the command line; and lists of roles.

#pragma once

#include <string>
#include <vector>

#include "core/record/visit.h"
#include "core/task/session.h"

namespace cupule::app {

/// S02=seen, S02=seen:14 (with a measure), S02=not-seen, S02=none (none on this tree); K01=alternate, K05=18 or
/// K03=teeth-with-points:17, K13=...@ground; minutes, trees, crown, height, binoculars, inner-crown, light, leaves; clothes,
/// boots, vehicle, tools, left; galls, gall-size, date, time, position, note, leafing-shift, leafing-from.
/// An empty value clears. Faults "field.unknown", "field.value" (arguments "field", "value"), those of positions.
Status setField(Visit& visit, const std::string& assignment, Session& session);

/// "volunteer,trainer". Fault "profile.role-unknown".
Result<std::vector<Role>> readRoles(const std::string& typed);

} // namespace cupule::app
