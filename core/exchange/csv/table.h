// A table in a file: the names in its header and its rows, one after the other, however many there are.
//
//  - Rows are counted from 1 after the header; `line` is the physical line on which a row begins, so that the two
//    drift apart where a note holds a line end. Empty lines and comment lines are no rows.
//  - A row with a flaw is given all the same, with the flaw; nothing is dropped.
//  - Memory is bounded by CsvLimits. What a row points to lives until the next call. One thread at a time.

#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/exchange/csv/dialect.h"
#include "core/exchange/csv/tokenizer.h"
#include "core/exchange/problem.h"

namespace cupule {

struct CsvRow {
    std::int64_t row = 0;    ///< from 1
    std::int64_t line = 0;   ///< physical line, from 1
    std::int64_t byte = 0;   ///< in the decoded text
    /// Exactly as many as the header has; missing ones are empty, surplus ones are only in `raw`.
    std::span<const std::string_view> fields;
    std::size_t fieldsInFile = 0;   ///< as many as there really are (empty ones at the end beyond the header not counted)
    std::string_view raw;           ///< the record as it stands in the decoded text, without its line end
    bool blank = false;             ///< every field is empty: a line of delimiters, as spreadsheets leave them
    /// Why the row cannot be trusted: empty, or one of kind::wrongFieldCount, unterminatedQuote, textAfterQuote,
    /// nulByte, tooLong, badEncoding (the worst of them).
    std::string_view flaw;
    std::int64_t flawLine = 0;      ///< where it is (an unterminated quote: where the quote stands)
};

/// The flaw of a row as a problem; call only where `flaw` is not empty.
ReadProblem flawProblem(const CsvRow& row, std::size_t headerFields);

class CsvReader {
public:
    /// Opens a file the way `dialect` says. Faults "file.open", "file.read", "file.folder",
    /// "csv.no-header" (the line named as header is not there), "csv.broken-header" (argument line: a quote in it is
    /// not closed, or there is text after one, or a NUL, or it is too long).
    static Result<CsvReader> open(const std::string& path, const CsvDialect& dialect, CsvLimits limits = {});
    /// The same for text in memory, which must outlive the reader.
    static Result<CsvReader> overText(std::string_view text, const CsvDialect& dialect, CsvLimits limits = {});
    ~CsvReader();
    CsvReader(CsvReader&&) noexcept;
    CsvReader& operator=(CsvReader&&) noexcept;

    /// Names in the header, blanks off both ends, as they stand otherwise: they may be empty or come twice.
    /// Where there is no header: "1", "2", ... as many as the first row has fields.
    [[nodiscard]] const std::vector<std::string>& headers() const;
    /// The header as it stands, to be written again above rows that were set aside.
    [[nodiscard]] const std::string& headerText() const;

    /// The next row; false at the end. Fault "file.read".
    Result<bool> next(CsvRow& row);

private:
    struct State;
    explicit CsvReader(std::unique_ptr<State> state);
    static Result<CsvReader> over(std::unique_ptr<ByteSource> source, const CsvDialect& dialect, CsvLimits limits);
    std::unique_ptr<State> m_state;
};

} // namespace cupule
