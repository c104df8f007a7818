// Judges the encoding of a file from all of its bytes. For csv/dialect.cpp and gpx/reader.cpp.

#pragma once

#include <cstdint>
#include <string_view>

#include "core/base/result.h"
#include "core/exchange/csv/source.h"

namespace cupule::csv_detail {

/// Fed piece by piece; a letter may be cut between two pieces.
class EncodingJudge {
public:
    void add(std::string_view piece);
    void finish();

    std::int64_t bytes = 0;
    std::int64_t letters = 0;          ///< well-formed sequences of two bytes or more
    std::int64_t badBytes = 0;         ///< bytes that are no part of well-formed UTF-8
    std::int64_t firstBadByte = -1;    ///< offset
    std::int64_t unassigned1252 = 0;   ///< 81, 8D, 8F, 90 and 9D, which Windows-1252 does not know

private:
    void addHigh(unsigned char c);
    void bad(std::int64_t count);
    unsigned m_expected = 0;           // bytes of the sequence still to come
    unsigned m_length = 0;             // bytes of it seen
    unsigned m_least = 0x80;           // range of the next byte
    unsigned m_most = 0xBF;
    std::int64_t m_offset = 0;         // of the byte under way
};

/// What the first bytes alone prove or suggest.
struct Head {
    enum class Mark { none, utf8, utf16le, utf16be };
    Mark mark = Mark::none;
    bool looksUtf16le = false;         ///< no mark, but every second byte is NUL
    bool looksUtf16be = false;
    std::string_view binary;           ///< what kind of file it is instead of a table, empty if it may be one
};
Head readHead(std::string_view first);

} // namespace cupule::csv_detail
