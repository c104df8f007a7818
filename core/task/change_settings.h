// Changing settings of a store as one step that can be undone. Inside the task room only.

#pragma once

#include <map>
#include <string>

#include "core/store/undo_log.h"
#include "core/task/session.h"

namespace cupule {

/// Sets the values that differ, with one undo step named `what`; an empty value is as good as none.
Status changeSettings(Session& session, const std::map<std::string, std::string>& values, const std::string& what);
/// Undo and redo of such a step: what is stored must be `from`, then `to` is set. Fault "undo.changed-meanwhile".
Status applySettings(Session& session, Change& change, const UndoPart& part, const std::string& from, const std::string& to);

} // namespace cupule
