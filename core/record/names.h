// The stored and exchanged names of enum values. They never change once released.

#pragma once

#include <optional>
#include <string_view>

#include "core/record/audit.h"
#include "core/record/decision.h"
#include "core/record/key.h"
#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/record/sample.h"
#include "core/record/visit.h"

namespace cupule {

std::string_view name(Role value);
std::string_view name(RecordState value);
std::string_view name(Answer value);
std::string_view name(Confirmed value);
std::string_view name(SampleState value);
std::string_view name(CustodyKind value);
std::string_view name(LeaveGiver value);
std::string_view name(LeaveScope value);
std::string_view name(Outcome value);
std::string_view name(KeyStep value);
std::string_view name(AuditEvent value);
std::string_view name(AuditState value);

/// Nothing where the text names no value.
template <class Enum>
std::optional<Enum> fromName(std::string_view text);

} // namespace cupule
