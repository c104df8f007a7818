// Every noun as canonical JSON and back: keys sorted, no blanks, absent optionals left out, enum values by name.
// This text is what a revision holds, what its digest is taken over and what travels between stores.

#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/record/decision.h"
#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/record/photo.h"
#include "core/record/place.h"
#include "core/record/sample.h"
#include "core/record/visit.h"

namespace cupule {

std::string toJson(const Person& value);
std::string toJson(const Site& value);
std::string toJson(const Tree& value);
std::string toJson(const Visit& value);
std::string toJson(const PhotoNote& value);
std::string toJson(const Sample& value);
std::string toJson(const CustodyLine& value);
std::string toJson(const Leave& value);
std::string toJson(const Regime& value);
std::string toJson(const Decision& value);
std::string toJson(const Told& value);

/// Fault "record.json" with the path of the first wrong member. Unknown members are refused: they would be lost.
template <class Noun>
Result<Noun> fromJson(std::string_view text);

} // namespace cupule
