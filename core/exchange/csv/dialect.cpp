#include "core/exchange/csv/dialect.h"

#include <algorithm>
#include <array>
#include <map>

#include "core/base/text.h"
#include "core/exchange/csv/encoding_detail.h"
#include "core/exchange/csv/tokenizer.h"

namespace cupule {

namespace {

constexpr std::size_t sampleBytes = std::size_t{1} << 16;
constexpr std::size_t sampleRecords = 1000;
constexpr std::array<char, 4> delimiters = {',', ';', '\t', '|'};

// ---- Encoding: one pass over all bytes

struct Looked {
    csv_detail::EncodingJudge judge;
    csv_detail::Head head;
};

Result<Looked> lookAtBytes(const std::string& path, const Progress& progress)
{
    auto source = openFile(path);
    if (!source)
        return tl::unexpected<Fault>(source.error());
    Looked looked;
    std::vector<char> piece(std::size_t{1} << 18);
    for (;;) {
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::io, {{"file", path}});
        const auto got = (*source)->read(piece);
        if (!got)
            return tl::unexpected<Fault>(got.error());
        if (*got == 0)
            break;
        const std::string_view bytes(piece.data(), *got);
        if (looked.judge.bytes == 0)
            looked.head = csv_detail::readHead(bytes.substr(0, 4096));
        looked.judge.add(bytes);
        progress.tell(looked.judge.bytes, 0);
    }
    looked.judge.finish();
    return looked;
}

/// The physical line on which a byte stands; a second pass, for damaged files only.
std::int64_t lineOfByte(const std::string& path, std::int64_t offset)
{
    auto source = openFile(path);
    std::vector<char> piece(std::size_t{1} << 18);
    std::int64_t line = 1;
    char before = 0;
    while (source && offset > 0) {
        const auto got = (*source)->read(piece);
        if (!got || *got == 0)
            break;
        const std::size_t count = std::min(*got, static_cast<std::size_t>(offset));
        for (std::size_t i = 0; i < count; ++i) {
            if (piece[i] == '\r' || (piece[i] == '\n' && before != '\r'))
                ++line;
            before = piece[i];
        }
        offset -= static_cast<std::int64_t>(count);
    }
    return line;
}

void settleEncoding(CsvDialect& out, const Looked& looked, const DialectChoice& told)
{
    using Mark = csv_detail::Head::Mark;
    const auto is = [&](TextEncoding encoding, const char* name, Sureness sure) {
        out.encoding = {encoding, name};
        out.encodingSure = sure;
    };
    out.byteOrderMark = looked.head.mark != Mark::none;
    if (told.encoding) {
        out.encoding = *told.encoding;
        out.encodingSure = Sureness::told;
    } else if (looked.head.mark == Mark::utf16le || looked.head.looksUtf16le) {
        is(TextEncoding::utf16le, "UTF-16LE", out.byteOrderMark ? Sureness::certain : Sureness::likely);
    } else if (looked.head.mark == Mark::utf16be || looked.head.looksUtf16be) {
        is(TextEncoding::utf16be, "UTF-16BE", out.byteOrderMark ? Sureness::certain : Sureness::likely);
    } else if (looked.judge.badBytes == 0 || looked.head.mark == Mark::utf8) {
        is(TextEncoding::utf8, "UTF-8", Sureness::certain);
    } else if (looked.judge.letters > looked.judge.badBytes) {
        is(TextEncoding::utf8, "UTF-8", Sureness::likely);
    } else {
        is(TextEncoding::windows1252, "Windows-1252", Sureness::guessed);
    }
    if (out.encoding.encoding == TextEncoding::utf8)
        out.badBytes = looked.judge.badBytes;
    else if (out.encoding.encoding == TextEncoding::windows1252)
        out.badBytes = looked.judge.unassigned1252;
}

// ---- The rest: the first part, decoded

struct Sample {
    std::string text;
    bool whole = false;   ///< the file has no more
};

Result<Sample> takeSample(const std::string& path, const EncodingChoice& encoding)
{
    auto file = openFile(path);
    if (!file)
        return tl::unexpected<Fault>(file.error());
    const auto source = decoded(std::move(*file), encoding);
    Sample sample;
    sample.text.resize(sampleBytes);
    std::size_t have = 0;
    while (have < sampleBytes && !sample.whole) {
        const auto got = source->read({sample.text.data() + have, sampleBytes - have});
        if (!got)
            return tl::unexpected<Fault>(got.error());
        have += *got;
        sample.whole = *got == 0;
    }
    sample.text.resize(have);
    if (!sample.whole)
        if (const auto last = sample.text.find_last_of("\r\n"); last != std::string::npos && last > 0)
            sample.text.resize(last + 1);
    return sample;
}

LineEnds lineEndsOf(std::string_view text)
{
    bool lf = false;
    bool crlf = false;
    bool cr = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n') {
            crlf = true;
            ++i;
        } else if (text[i] == '\r') {
            cr = true;
        } else if (text[i] == '\n') {
            lf = true;
        }
    }
    if (static_cast<int>(lf) + static_cast<int>(crlf) + static_cast<int>(cr) > 1)
        return LineEnds::mixed;
    return lf ? LineEnds::lf : crlf ? LineEnds::crlf : cr ? LineEnds::cr : LineEnds::none;
}

struct SampleRecord {
    std::vector<std::string> fields;
    std::int64_t line = 0;
    std::size_t width = 0;   ///< fields, empty ones at the end not counted
    bool flawed = false;
    bool hash = false;       ///< begins with #
};

/// The records of the sample that hold anything.
std::vector<SampleRecord> recordsOf(std::string_view text, char delimiter)
{
    std::vector<SampleRecord> records;
    CsvTokenizer tokenizer(textSource(text), delimiter);
    CsvRecord record;
    while (records.size() < sampleRecords) {
        const auto more = tokenizer.next(record);
        if (!more || !*more)
            break;
        SampleRecord one;
        for (const auto field : record.fields) {
            one.fields.emplace_back(field);
            if (!trim(field).empty())
                one.width = one.fields.size();
        }
        one.line = record.line;
        one.flawed = record.flaws != CsvFlaw::none;
        one.hash = record.raw.starts_with('#');
        if (one.width > 0)
            records.push_back(std::move(one));
    }
    return records;
}

/// The number of fields that most records have (all of their fields, empty ones too); the larger of two as frequent.
std::size_t usualWidth(const std::vector<SampleRecord>& records)
{
    std::map<std::size_t, std::size_t> counts;
    for (const auto& record : records)
        if (!record.hash)
            ++counts[record.fields.size()];
    std::size_t usual = 1;
    std::size_t most = 0;
    for (const auto& [width, count] : counts)
        if (count >= most) {
            usual = width;
            most = count;
        }
    return usual;
}

/// Share of the records that have the usual number of fields, if that is more than one.
double agreement(const std::vector<SampleRecord>& records)
{
    const std::size_t usual = usualWidth(records);
    if (usual < 2)
        return 0;
    double all = 0;
    double good = 0;
    for (const auto& record : records) {
        if (record.hash && record.fields.size() != usual)
            continue;
        all += 1;
        good += record.fields.size() != usual ? 0 : record.flawed ? 0.9 : 1;
    }
    return good / all;
}

std::optional<char> delimiterHint(std::string_view text)
{
    if (lowerAscii(text.substr(0, 4)) != "sep=" || text.size() < 5)
        return std::nullopt;
    const bool alone = text.size() == 5 || text[5] == '\r' || text[5] == '\n';
    return alone && std::find(delimiters.begin(), delimiters.end(), text[4]) != delimiters.end()
               ? std::optional(text[4])
               : std::nullopt;
}

void settleDelimiter(CsvDialect& out, const Sample& sample, const DialectChoice& told)
{
    if (told.delimiter) {
        out.delimiter = *told.delimiter;
        out.delimiterSure = Sureness::told;
        return;
    }
    if (const auto hint = delimiterHint(sample.text)) {
        out.delimiter = *hint;
        out.delimiterSure = Sureness::certain;
        return;
    }
    double best = 0;
    double second = 0;
    for (const char candidate : delimiters) {
        const double score = agreement(recordsOf(sample.text, candidate));
        if (score > best) {
            second = best;
            best = score;
            out.delimiter = candidate;
        } else {
            second = std::max(second, score);
        }
    }
    if (best == 0)
        out.delimiterSure = Sureness::likely;   // one column
    else if (best >= 0.95 && second < 0.5)
        out.delimiterSure = Sureness::certain;
    else
        out.delimiterSure = best >= 0.7 && best - second > 0.05 ? Sureness::likely : Sureness::guessed;
}

bool looksLikeValue(std::string_view cell)
{
    const auto text = trim(cell);
    return !text.empty() && text.find_first_of("0123456789") != std::string_view::npos
           && text.find_first_not_of("0123456789.,-+/:TZ %") == std::string_view::npos;
}

Sureness sureOfHeader(const SampleRecord& header, bool first)
{
    for (std::size_t i = 0; i < header.fields.size(); ++i) {
        const auto name = trim(header.fields[i]);
        const bool twice = std::find_if(header.fields.begin(), header.fields.begin() + static_cast<std::ptrdiff_t>(i),
                                        [&](const auto& other) { return trim(other) == name; })
                           != header.fields.begin() + static_cast<std::ptrdiff_t>(i);
        if (name.empty() || twice || looksLikeValue(name))
            return Sureness::guessed;
    }
    return first ? Sureness::certain : Sureness::likely;
}

/// The header is the first record as wide as most of them and at least half filled: title lines are narrower, or have
/// one cell and empty ones.
const SampleRecord* findHeader(const std::vector<SampleRecord>& records)
{
    std::vector<SampleRecord> trimmed = records;   // widths without empty fields at the end
    for (auto& record : trimmed)
        record.fields.resize(record.width);
    const std::size_t usualTrimmed = usualWidth(trimmed);
    const std::size_t usual = usualWidth(records);
    for (const auto& record : records) {
        const auto filled = std::count_if(record.fields.begin(), record.fields.end(),
                                          [](const auto& field) { return !trim(field).empty(); });
        const bool wide = record.fields.size() >= usual || record.width >= usualTrimmed;
        const bool comment = record.hash && (record.width < usual || usual < 2);
        if (!comment && wide && static_cast<std::size_t>(filled) * 2 >= usual)
            return &record;
    }
    return records.empty() ? nullptr : &records.front();
}

void settleHeader(CsvDialect& out, const Sample& sample, const std::vector<SampleRecord>& records,
                  const DialectChoice& told)
{
    const bool hint = delimiterHint(sample.text).has_value();
    std::vector<SampleRecord> candidates = records;
    if (hint && !candidates.empty())
        candidates.erase(candidates.begin());
    const SampleRecord* header = findHeader(candidates);
    const std::size_t usual = usualWidth(candidates);
    out.hashComments = std::any_of(records.begin(), records.end(), [&](const auto& record) {
        return record.hash && (header == nullptr || record.line != header->line)
               && (record.fields.size() != usual || usual < 2);
    });
    if (told.headerLine) {
        out.headerLine = *told.headerLine;
        out.headerSure = Sureness::told;
    } else if (header != nullptr) {
        out.headerLine = header->line;
        out.headerSure = sureOfHeader(*header, header->line == 1);
    }
    if (out.headerLine <= 1)
        return;
    out.linesBefore = out.headerLine - 1;
    CsvTokenizer lines(textSource(sample.text), '\0');   // no delimiter: one field a line
    CsvRecord line;
    while (out.textBefore.size() < 5) {
        const auto more = lines.next(line);
        if (!more || !*more || line.line >= out.headerLine)
            break;
        if (!trim(line.raw).empty())
            out.textBefore.push_back(shownValue(trim(line.raw)));
    }
}

/// Counts what only a decimal comma and only a decimal point explains.
struct DecimalEvidence {
    std::int64_t comma = 0;
    std::int64_t point = 0;

    void add(std::string_view cell)
    {
        cell = trim(cell);
        if (!cell.empty() && (cell.front() == '-' || cell.front() == '+'))
            cell.remove_prefix(1);
        if (cell.empty() || cell.find_first_not_of("0123456789.,") != std::string_view::npos)
            return;
        const auto last = cell.find_last_of(".,");
        if (last == std::string_view::npos || last == 0)
            return;
        const char sign = cell[last];
        const char other = sign == ',' ? '.' : ',';
        const std::string_view before = cell.substr(0, last);
        const bool both = before.find(other) != std::string_view::npos;
        const bool again = before.find(sign) != std::string_view::npos;   // a date with points, or thousands
        const bool maybeThousands = cell.size() - last - 1 == 3 && last <= 3 && before != "0";
        if (!again && (both || !maybeThousands))
            ++(sign == ',' ? comma : point);
    }
};

void settleDecimal(CsvDialect& out, const std::vector<SampleRecord>& records, const DialectChoice& told)
{
    if (told.decimal) {
        out.decimal = *told.decimal;
        out.decimalSure = Sureness::told;
        return;
    }
    DecimalEvidence found;
    for (const auto& record : records)
        if (record.line > out.headerLine)
            for (const auto& field : record.fields)
                found.add(field);
    if (found.comma == 0 && found.point == 0) {
        out.decimal = out.delimiter == ';' ? ',' : '.';   // spreadsheets write ; where the comma is the decimal sign
        out.decimalSure = Sureness::guessed;
        return;
    }
    out.decimal = found.comma > found.point ? ',' : '.';
    if (found.comma == 0 || found.point == 0)
        out.decimalSure = Sureness::certain;
    else
        out.decimalSure = std::max(found.comma, found.point) > 10 * std::min(found.comma, found.point)
                              ? Sureness::likely
                              : Sureness::guessed;
}

} // namespace

Result<char> delimiterNamed(const std::string& text)
{
    static const std::map<std::string, char> names = {
        {",", ','},  {"comma", ','}, {";", ';'},   {"semicolon", ';'}, {"\t", '\t'},
        {"tab", '\t'}, {"\\t", '\t'}, {"|", '|'}, {"pipe", '|'},
    };
    if (const auto found = names.find(lowerAscii(text)); found != names.end())
        return found->second;
    return fail("csv.delimiter", FaultKind::usage, {{"delimiter", text}});
}

Result<char> decimalNamed(const std::string& text)
{
    const std::string name = lowerAscii(text);
    if (name == "." || name == "point")
        return '.';
    if (name == "," || name == "comma")
        return ',';
    return fail("csv.decimal", FaultKind::usage, {{"decimal", text}});
}

Result<CsvDialect> detectDialect(const std::string& path, const DialectChoice& told, const Progress& progress)
{
    const auto looked = lookAtBytes(path, progress);
    if (!looked)
        return tl::unexpected<Fault>(looked.error());
    if (!looked->head.binary.empty())
        return fail(Fault{"csv.binary", FaultKind::data, {{"file", path}, {"found", std::string(looked->head.binary)}},
                          {path, 0, 0, 0, {}}, {}});
    CsvDialect out;
    out.fileBytes = looked->judge.bytes;
    settleEncoding(out, *looked, told);
    if (out.badBytes > 0 && out.encoding.encoding == TextEncoding::utf8)
        out.firstBadLine = lineOfByte(path, looked->judge.firstBadByte);
    const auto sample = takeSample(path, out.encoding);
    if (!sample)
        return tl::unexpected<Fault>(sample.error());
    if (sample->whole && trim(sample->text).empty())
        return fail(Fault{"csv.empty", FaultKind::data, {{"file", path}}, {path, 0, 0, -1, {}}, {}});
    out.lineEnds = lineEndsOf(sample->text);
    settleDelimiter(out, *sample, told);
    const auto records = recordsOf(sample->text, out.delimiter);
    settleHeader(out, *sample, records, told);
    settleDecimal(out, records, told);
    return out;
}

} // namespace cupule
