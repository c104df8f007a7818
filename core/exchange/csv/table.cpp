#include "core/exchange/csv/table.h"

#include <cassert>
#include <optional>

#include "core/base/text.h"
#include "core/exchange/csv/scan_detail.h"

namespace cupule {

struct CsvReader::State {
    CsvTokenizer tokenizer;
    bool hashComments = false;
    std::vector<std::string> names;
    std::string headerText;
    CsvRecord record;
    bool recordWaits = false;                 // the first record was read to count its fields
    std::int64_t row = 0;
    std::vector<std::string_view> padded;     // of a row that is too short or had to be cleaned
    std::vector<std::string> cleaned;

    State(std::unique_ptr<ByteSource> source, char delimiter, CsvLimits limits)
        : tokenizer(std::move(source), delimiter, limits)
    {
    }

    [[nodiscard]] bool emptyLine() const { return record.fields.size() == 1 && trim(record.raw).empty(); }
    [[nodiscard]] bool comment() const
    {
        return hashComments && record.raw.starts_with('#') && record.fields.size() != names.size();
    }

    /// The next record that is a row.
    Result<bool> nextRecord()
    {
        for (;;) {
            const auto more = tokenizer.next(record);
            if (!more || !*more)
                return more;
            if (record.quoteSpansLines && record.fields.size() != names.size())
                tokenizer.cutAfterQuoteLine(record);
            if (!emptyLine() && !comment())
                return true;
        }
    }

    Status readHeader(std::int64_t headerLine)
    {
        if (headerLine > 1)
            if (const auto skipped = tokenizer.skipLines(headerLine - 1); !skipped)
                return skipped;
        const auto more = headerLine == 0 ? nextRecord() : tokenizer.next(record);
        if (!more)
            return tl::unexpected<Fault>(more.error());
        if (!*more)
            return fail("csv.no-header", FaultKind::data, {{"line", std::to_string(headerLine)}});
        if (headerLine == 0) {
            for (std::size_t i = 1; i <= record.fields.size(); ++i)
                names.push_back(std::to_string(i));
            recordWaits = true;
            return {};
        }
        if (record.flaws != CsvFlaw::none) {
            const auto line = record.quoteLine > 0 ? record.quoteLine : record.line;
            return fail("csv.broken-header", FaultKind::data, {{"line", std::to_string(line)}});
        }
        for (const auto field : record.fields)
            names.push_back(madeUtf8(trim(field)));
        headerText = madeUtf8(record.raw);
        return {};
    }

    [[nodiscard]] bool wellEncoded() const
    {
        return csv_detail::isAscii(record.raw.data(), record.raw.size())
               || (isUtf8(record.raw) && record.raw.find("\xEF\xBF\xBD") == std::string_view::npos);
    }

    void fillFields(CsvRow& out, bool clean)
    {
        std::size_t count = record.fields.size();
        while (count > names.size() && record.fields[count - 1].empty())
            --count;
        out.fieldsInFile = count;
        if (count >= names.size() && clean) {
            out.fields = record.fields.first(names.size());
            return;
        }
        padded.assign(names.size(), {});
        cleaned.assign(clean ? 0 : names.size(), {});
        for (std::size_t i = 0; i < names.size() && i < count; ++i) {
            padded[i] = record.fields[i];
            if (!clean) {
                cleaned[i] = madeUtf8(record.fields[i]);
                padded[i] = cleaned[i];
            }
        }
        out.fields = padded;
    }

    [[nodiscard]] std::string_view flawOf(bool clean, std::size_t fieldsInFile) const
    {
        if (record.flaws != CsvFlaw::none) {
            if (has(record.flaws, CsvFlaw::tooLong))
                return kind::tooLong;
            if (has(record.flaws, CsvFlaw::unterminatedQuote))
                return kind::unterminatedQuote;
            if (has(record.flaws, CsvFlaw::nulByte))
                return kind::nulByte;
        }
        if (!clean)
            return kind::badEncoding;
        if (has(record.flaws, CsvFlaw::textAfterQuote))
            return kind::textAfterQuote;
        return fieldsInFile == names.size() ? std::string_view{} : kind::wrongFieldCount;
    }

    void fill(CsvRow& out)
    {
        const bool clean = wellEncoded();
        out.row = ++row;
        out.line = record.line;
        out.byte = record.byte;
        out.raw = record.raw;
        fillFields(out, clean);
        out.flaw = flawOf(clean, out.fieldsInFile);
        out.flawLine = record.quoteLine > 0 ? record.quoteLine : record.line;
        out.blank = true;
        for (const auto field : out.fields)
            if (!field.empty() && !trim(field).empty()) {
                out.blank = false;
                break;
            }
    }
};

CsvReader::CsvReader(std::unique_ptr<State> state) : m_state(std::move(state)) {}
CsvReader::~CsvReader() = default;
CsvReader::CsvReader(CsvReader&&) noexcept = default;
CsvReader& CsvReader::operator=(CsvReader&&) noexcept = default;

Result<CsvReader> CsvReader::over(std::unique_ptr<ByteSource> source, const CsvDialect& dialect, CsvLimits limits)
{
    auto state = std::make_unique<State>(decoded(std::move(source), dialect.encoding), dialect.delimiter, limits);
    state->hashComments = dialect.hashComments;
    if (const auto header = state->readHeader(dialect.headerLine); !header)
        return tl::unexpected<Fault>(header.error());
    return CsvReader(std::move(state));
}

Result<CsvReader> CsvReader::open(const std::string& path, const CsvDialect& dialect, CsvLimits limits)
{
    auto source = openFile(path);
    if (!source)
        return tl::unexpected<Fault>(source.error());
    auto reader = over(std::move(*source), dialect, limits);
    if (!reader) {
        Fault fault = reader.error();
        fault.place.file = path;
        return fail(std::move(fault));
    }
    return reader;
}

Result<CsvReader> CsvReader::overText(std::string_view text, const CsvDialect& dialect, CsvLimits limits)
{
    return over(textSource(text), dialect, limits);
}

const std::vector<std::string>& CsvReader::headers() const
{
    return m_state->names;
}

const std::string& CsvReader::headerText() const
{
    return m_state->headerText;
}

Result<bool> CsvReader::next(CsvRow& row)
{
    State& s = *m_state;
    if (s.recordWaits) {
        s.recordWaits = false;
    } else {
        const auto more = s.nextRecord();
        if (!more || !*more)
            return more;
    }
    s.fill(row);
    return true;
}

ReadProblem flawProblem(const CsvRow& row, std::size_t headerFields)
{
    assert(!row.flaw.empty());
    ReadProblem problem;
    problem.kind = row.flaw;
    problem.row = row.row;
    problem.line = row.line;
    problem.value = shownValue(row.raw);
    if (row.flaw == kind::wrongFieldCount)
        problem.detail = std::to_string(row.fieldsInFile) + "/" + std::to_string(headerFields);
    else if (row.flawLine != row.line)
        problem.detail = std::to_string(row.flawLine);
    return problem;
}

} // namespace cupule
