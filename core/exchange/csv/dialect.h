// Finds out how a table was written: encoding, delimiter, decimal sign, line ends, which line is the header.
//
//  - Everything found says how sure it is, and everything can be told instead (the command line's --delimiter,
//    --decimal, --encoding; the preview in the window). What is told is never doubted.
//  - The encoding is judged over the whole file (one pass, bounded memory), the rest over its first 64 KiB.
//  - An encoding that is only likely is `guessed`: it must be shown before anything is stored. Bytes alone cannot
//    tell Windows-1252 from ISO 8859-7.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/exchange/csv/source.h"
#include "core/exchange/problem.h"

namespace cupule {

enum class Sureness {
    told,      ///< by the user
    certain,   ///< proved by the bytes
    likely,    ///< all evidence points this way
    guessed,   ///< a proposal; ask
};

/// What the user says about the file; empty means "find out".
struct DialectChoice {
    std::optional<char> delimiter;
    std::optional<char> decimal;               ///< '.' or ','
    std::optional<EncodingChoice> encoding;
    std::optional<std::int64_t> headerLine;    ///< physical line from 1; 0 = there is no header
};

/// Reads "," ";" "|" "tab" "comma" "semicolon" "pipe" "\t". Fault "csv.delimiter" (usage).
Result<char> delimiterNamed(const std::string& text);
/// Reads "." "," "point" "comma". Fault "csv.decimal" (usage).
Result<char> decimalNamed(const std::string& text);

enum class LineEnds { none, lf, crlf, cr, mixed };

struct CsvDialect {
    char delimiter = ',';
    Sureness delimiterSure = Sureness::guessed;
    char decimal = '.';
    Sureness decimalSure = Sureness::guessed;
    EncodingChoice encoding;
    Sureness encodingSure = Sureness::guessed;
    bool byteOrderMark = false;
    std::int64_t badBytes = 0;                 ///< bytes that have no meaning in the encoding, in the whole file
    std::int64_t firstBadLine = 0;             ///< line of the first of them; 0 = none
    LineEnds lineEnds = LineEnds::none;
    std::int64_t headerLine = 1;               ///< physical line from 1; 0 = no header
    Sureness headerSure = Sureness::guessed;
    bool hashComments = false;                 ///< lines that begin with # are no rows
    std::int64_t linesBefore = 0;              ///< title, comment and blank lines above the header
    std::vector<std::string> textBefore;       ///< the first of them, cut, so that they can be shown
    std::int64_t fileBytes = 0;
};

/// Looks at a file. Faults "file.open", "file.read", "file.folder", "csv.empty" (nothing but blanks),
/// "csv.binary" (pictures, archives and the like, told by their first bytes), "job.cancelled".
Result<CsvDialect> detectDialect(const std::string& path, const DialectChoice& told = {},
                                 const Progress& progress = {});

} // namespace cupule
