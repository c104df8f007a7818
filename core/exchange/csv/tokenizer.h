// Splits separated values into records (RFC 4180, read leniently), piece by piece.
//
// Why our own: the C++ readers that Debian 12 packages either want the whole file in memory, know no line numbers
// once a field holds a line end, end no record at a lone carriage return, or drop bytes they do not like (NUL, a
// quote inside a field). Here every byte of the file is accounted for, and memory does not grow with the file.
//
//  - Records end at LF, CRLF or a lone CR, mixed as they come; a quoted field may hold any of them.
//  - A quote opens a quoted field only as the first byte of a field. Elsewhere it is an ordinary byte.
//  - Text after a closing quote is appended to the field and the record is marked.
//  - A quote that is never closed, or not within the limit, does not swallow the rest: the record is given up to the
//    end of the physical line on which the quote stands, marked, and reading goes on at the next line.
//  - Lines are counted from 1 and bytes from 0, in the decoded text.
//  - One thread at a time. What a record points to lives until the next call.
//
// Source: RFC 4180 (2005), section 2. Lenient points as Python's csv module reads them with strict=False.

#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/exchange/csv/source.h"

namespace cupule {

struct CsvLimits {
    std::size_t pieceBytes = std::size_t{1} << 18;    ///< how much is read at once; the buffer starts with this
    std::size_t recordBytes = std::size_t{4} << 20;   ///< a longer record is cut and marked
    std::size_t fields = 4096;                        ///< a record with more is cut and marked
};

/// What is odd about a record; a set of bits.
enum class CsvFlaw : std::uint8_t {
    none = 0,
    textAfterQuote = 1,      ///< bytes between a closing quote and the next delimiter
    unterminatedQuote = 2,   ///< see CsvRecord::quoteLine; the record ends with the line of the quote
    tooLong = 4,             ///< beyond a limit; the fields are what came before it
    nulByte = 8,             ///< a NUL somewhere in it, kept
};
constexpr CsvFlaw operator|(CsvFlaw a, CsvFlaw b)
{
    return static_cast<CsvFlaw>(static_cast<unsigned>(a) | static_cast<unsigned>(b));
}
constexpr bool has(CsvFlaw set, CsvFlaw flaw)
{
    return (static_cast<unsigned>(set) & static_cast<unsigned>(flaw)) != 0;
}

struct CsvRecord {
    std::span<const std::string_view> fields;   ///< at least one; an empty line is one empty field
    std::string_view raw;                       ///< as it stands in the text, without its line end
    std::int64_t line = 0;                      ///< physical line on which it begins, from 1
    std::int64_t byte = 0;                      ///< offset of its first byte in the decoded text
    std::int64_t lines = 1;                     ///< how many physical lines it takes
    std::int64_t quoteLine = 0;                 ///< line of the quote that is not closed, or closed too early; else 0
    bool quoteSpansLines = false;               ///< that quote was closed (too early) on a later line
    CsvFlaw flaws = CsvFlaw::none;
};

class CsvTokenizer {
public:
    CsvTokenizer(std::unique_ptr<ByteSource> source, char delimiter, CsvLimits limits = {});
    ~CsvTokenizer();
    CsvTokenizer(CsvTokenizer&&) noexcept;
    CsvTokenizer& operator=(CsvTokenizer&&) noexcept;

    /// The next record; false at the end. Fault of the source only ("file.read").
    Result<bool> next(CsvRecord& record);

    /// Passes over whole physical lines, whatever quotes they hold. Before the first `next`. Fault "file.read".
    Status skipLines(std::int64_t count);

    /// Reads the record last given once more, up to the end of the line `quoteLine` only, and goes on after it. For a
    /// record that only hangs together because a stray quote met another one lines later; only while
    /// `quoteSpansLines` holds.
    void cutAfterQuoteLine(CsvRecord& record);

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace cupule
