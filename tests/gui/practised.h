// Invented practice: recruits who answer cases, some of them well.

#pragma once

#include <cstdint>
#include <string>

#include "core/task/practice.h"

namespace cupule::test {

struct Practised {
    std::string code, name;
    int cases = 20;
    double skill = 0.85;      ///< share of questions answered as the key has it
    std::uint32_t seed = 1;
};
/// One session in a cohort, answered to its end. Roles trainer or office.
void practise(Session& session, const std::string& cohort, const Practised& recruit);
/// Twelve of them, as a course has them.
void practiseCourse(Session& session, const std::string& cohort, int cases);

} // namespace cupule::test
