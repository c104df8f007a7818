// Small things that the tests of the rules share.

#pragma once

#include <cstdint>

#include "core/base/civil.h"
#include "core/base/uid.h"

namespace cupule::test {

/// The same id for the same number; never null for a positive one.
inline Uid uidOf(int number)
{
    Uid id;
    id.bytes[14] = static_cast<std::uint8_t>((number >> 8) & 0xFF);
    id.bytes[15] = static_cast<std::uint8_t>(number & 0xFF);
    return id;
}

inline CivilDate day(const char* text)
{
    return CivilDate::parse(text).value();
}

inline Instant at(const char* text)
{
    return parseInstant(text).value();
}

inline LocalTime clock(const char* text)
{
    return LocalTime::parse(text).value();
}

} // namespace cupule::test
