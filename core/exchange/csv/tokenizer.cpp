#include "core/exchange/csv/tokenizer.h"

#include <algorithm>
#include <bit>
#include <cassert>
#include <cstring>

#include "core/exchange/csv/scan_detail.h"

namespace cupule {

namespace {

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);
constexpr std::size_t padding = 64;   // so that a block may be read past the end

bool isLineEnd(char c)
{
    return c == '\n' || c == '\r';
}

} // namespace

struct CsvTokenizer::State {
    std::unique_ptr<ByteSource> source;
    char delimiter;
    CsvLimits limits;

    std::vector<char> buffer;         // capacity() bytes of text and the padding
    std::size_t begin = 0;            // first byte not yet given
    std::size_t end = 0;              // behind the last byte read
    bool ended = false;               // the source has no more
    bool skipping = false;            // the rest of a line that was cut is still to be passed over
    std::int64_t byte = 0;            // offset of buffer[begin] in the text
    std::int64_t line = 1;            // physical line of buffer[begin]
    std::size_t lastBegin = 0;        // of the record last given, for cutAfterQuoteLine
    std::int64_t lastByte = 0;
    std::int64_t lastLine = 1;
    std::size_t lastQuote = nowhere;

    // The scan: bits of the block at `block` that still lie ahead.
    std::size_t block = 0;
    std::uint64_t bits = 0;

    // The record under way.
    struct Unescaped {
        std::size_t field;
        std::size_t from;
        std::size_t length;
    };
    std::vector<std::string_view> views;
    std::size_t count = 0;
    std::string scratch;
    std::vector<Unescaped> unescaped;
    std::size_t fieldFrom = 0;
    std::size_t closingQuote = nowhere;   // of the field under way, if it is quoted
    bool doubled = false;                 // it holds doubled quotes
    std::int64_t lineOffset = 0;          // line ends inside quotes so far
    std::int64_t fieldLineOffset = 0;     // the same where the field under way began
    CsvFlaw flaws = CsvFlaw::none;
    std::size_t flawedQuote = nowhere;
    std::int64_t flawedQuoteLine = 0;
    bool flawedSpans = false;

    State(std::unique_ptr<ByteSource> from, char separator, CsvLimits bounds)
        : source(std::move(from)), delimiter(separator), limits(bounds)
    {
        limits.pieceBytes = std::max<std::size_t>(limits.pieceBytes, 1);
        limits.recordBytes = std::max(limits.recordBytes, limits.pieceBytes);
        buffer.resize(limits.pieceBytes + padding);
        views.resize(std::max<std::size_t>(limits.fields, 1));
    }

    [[nodiscard]] std::size_t capacity() const { return buffer.size() - padding; }
    [[nodiscard]] std::size_t longestWithEnd() const { return limits.recordBytes + 2; }

    void scanFrom(std::size_t at)
    {
        block = at & ~std::size_t{63};
        bits = block < end ? csv_detail::specialBytes(buffer.data() + block, delimiter) & (~std::uint64_t{0} << (at & 63))
                           : 0;
    }

    /// The next byte that may mean something, before `bound`, or `bound`.
    std::size_t nextSpecial(std::size_t bound)
    {
        while (bits == 0) {
            block += 64;
            if (block >= bound)
                return bound;
            bits = csv_detail::specialBytes(buffer.data() + block, delimiter);
        }
        const std::size_t at = block + static_cast<std::size_t>(std::countr_zero(bits));
        if (at >= bound)
            return bound;
        bits &= bits - 1;
        return at;
    }

    void startRecord()
    {
        count = 0;
        scratch.clear();
        unescaped.clear();
        flaws = CsvFlaw::none;
        flawedQuote = nowhere;
        flawedSpans = false;
        flawedQuoteLine = 0;
        lineOffset = 0;
        startField(begin);
    }

    void startField(std::size_t at)
    {
        fieldFrom = at;
        closingQuote = nowhere;
        doubled = false;
        fieldLineOffset = lineOffset;
    }

    /// Remembers the quote at fieldFrom as the one to blame: the first, or the first that reaches over a line end.
    void blameQuote(bool spans)
    {
        if (flawedQuote != nowhere && (flawedSpans || !spans))
            return;
        flawedQuote = fieldFrom;
        flawedQuoteLine = line + fieldLineOffset;
        flawedSpans = spans;
    }

    void put(std::string_view value)
    {
        if (count < views.size())
            views[count++] = value;
        else
            flaws = flaws | CsvFlaw::tooLong;
    }

    void putUnescaped(std::size_t from, std::size_t to, std::size_t tailFrom, std::size_t tailTo)
    {
        const std::size_t start = scratch.size();
        for (std::size_t i = from; i < to; ++i) {
            scratch += buffer[i];
            if (buffer[i] == '"')
                ++i;
        }
        scratch.append(buffer.data() + tailFrom, tailTo - tailFrom);
        if (count < views.size())
            unescaped.push_back({count, start, scratch.size() - start});
        put({});
    }

    /// Ends the field under way before `at`, which holds a delimiter, a line end or nothing.
    void putField(std::size_t at)
    {
        if (closingQuote == nowhere) {
            put({buffer.data() + fieldFrom, at - fieldFrom});
            return;
        }
        const bool tail = closingQuote + 1 != at;
        if (tail) {
            flaws = flaws | CsvFlaw::textAfterQuote;
            blameQuote(lineOffset != fieldLineOffset);
        }
        if (doubled || tail)
            putUnescaped(fieldFrom + 1, closingQuote, closingQuote + 1, at);
        else
            put({buffer.data() + fieldFrom + 1, closingQuote - fieldFrom - 1});
    }

    enum class Outcome { whole, needsMore, openQuote };

    /// Goes to the closing quote of the field that begins with a quote at fieldFrom.
    Outcome passQuoted(std::size_t bound, bool final)
    {
        for (;;) {
            const std::size_t at = nextSpecial(bound);
            if (at == bound)
                return final ? Outcome::openQuote : Outcome::needsMore;
            const char c = buffer[at];
            if (c == '\r' || (c == '\n' && buffer[at - 1] != '\r')) {
                ++lineOffset;
            } else if (c == '\0') {
                flaws = flaws | CsvFlaw::nulByte;
            } else if (c == '"') {
                if (at + 1 == bound && !final)
                    return Outcome::needsMore;
                if (at + 1 == bound || buffer[at + 1] != '"') {
                    closingQuote = at;
                    return Outcome::whole;
                }
                doubled = true;
                nextSpecial(bound);   // the second of the pair
            }
        }
    }

    /// Reads the record at `begin`, which must end before `bound` unless `final`. `textEnd` is where it ends, `after`
    /// where the next one begins.
    Outcome readRecord(std::size_t bound, bool final, std::size_t& textEnd, std::size_t& after)
    {
        startRecord();
        for (;;) {
            const std::size_t at = nextSpecial(bound);
            if (at == bound) {
                if (!final)
                    return Outcome::needsMore;
                putField(bound);
                textEnd = after = bound;
                return Outcome::whole;
            }
            const char c = buffer[at];
            if (c == delimiter) {
                putField(at);
                startField(at + 1);
            } else if (c == '\n') {
                putField(at);
                textEnd = at;
                after = at + 1;
                return Outcome::whole;
            } else if (c == '\r') {
                if (at + 1 == bound && !final)
                    return Outcome::needsMore;
                putField(at);
                textEnd = at;
                const bool pair = at + 1 < bound && buffer[at + 1] == '\n';
                after = pair ? nextSpecial(bound) + 1 : at + 1;
                return Outcome::whole;
            } else if (c == '\0') {
                flaws = flaws | CsvFlaw::nulByte;
            } else if (c == '"' && at == fieldFrom) {
                const Outcome outcome = passQuoted(bound, final);
                if (outcome != Outcome::whole)
                    return outcome;
            }
        }
    }

    /// The first line end at or after `at`, or `end`.
    [[nodiscard]] std::size_t lineEndFrom(std::size_t at) const
    {
        while (at < end && !isLineEnd(buffer[at]))
            ++at;
        return at;
    }

    [[nodiscard]] std::size_t behindLineEnd(std::size_t at) const
    {
        if (at < end && buffer[at] == '\r' && at + 1 < end && buffer[at + 1] == '\n')
            return at + 2;
        return std::min(at + 1, end);
    }

    /// Reads up to the end of the line on which the quote at `quote` stands, and leaves that quote open.
    void readCut(std::size_t quote, CsvRecord& record)
    {
        const std::size_t lineEnd = lineEndFrom(quote);
        std::size_t textEnd = 0;
        std::size_t after = 0;
        scanFrom(begin);
        const bool open = readRecord(lineEnd, true, textEnd, after) == Outcome::openQuote;
        flaws = flaws | (open ? CsvFlaw::unterminatedQuote : CsvFlaw::tooLong);
        if (open) {   // if not, a quote ends what was read so far, and whether it closes the field cannot be seen
            flawedQuote = nowhere;
            flawedSpans = false;
            blameQuote(false);
            putUnescaped(fieldFrom + 1, lineEnd, lineEnd, lineEnd);
        }
        skipping = !ended && (lineEnd == end || (buffer[lineEnd] == '\r' && lineEnd + 1 == end));
        give(lineEnd, skipping ? lineEnd : behindLineEnd(lineEnd), skipping ? 0 : 1, record);
        scanFrom(begin);
    }

    /// Gives what there is of a record longer than the limit, and remembers to pass over the rest of its line.
    void giveCutShort(CsvRecord& record)
    {
        const std::size_t textEnd = buffer[end - 1] == '\r' ? end - 1 : end;   // it may be the first half of a CRLF
        putField(std::max(textEnd, fieldFrom));
        flaws = flaws | CsvFlaw::tooLong;
        skipping = true;
        give(textEnd, textEnd, 0, record);
        scanFrom(begin);
    }

    void give(std::size_t textEnd, std::size_t after, std::int64_t lineEnds, CsvRecord& record)
    {
        for (const auto& one : unescaped)
            views[one.field] = {scratch.data() + one.from, one.length};
        record.fields = {views.data(), count};
        record.raw = {buffer.data() + begin, textEnd - begin};
        record.line = line;
        record.byte = byte;
        record.lines = 1 + lineOffset;
        record.quoteLine = flawedQuoteLine;
        record.quoteSpansLines = flawedSpans;
        record.flaws = flaws;
        lastBegin = begin;
        lastByte = byte;
        lastLine = line;
        lastQuote = flawedQuote;
        byte += static_cast<std::int64_t>(after - begin);
        line += lineOffset + lineEnds;
        begin = after;
    }

    /// Moves what is left to the front, makes room where there is none, and fills it.
    Status refill()
    {
        if (begin > 0) {
            std::memmove(buffer.data(), buffer.data() + begin, end - begin);
            end -= begin;
            begin = 0;
        }
        if (end == capacity())
            buffer.resize(std::min(capacity() * 2, longestWithEnd()) + padding);
        while (end < capacity()) {
            const auto got = source->read({buffer.data() + end, capacity() - end});
            if (!got)
                return tl::unexpected<Fault>(got.error());
            if (*got == 0) {
                ended = true;
                break;
            }
            end += *got;
        }
        return {};
    }

    /// Passes over the rest of a line that was cut.
    Status skipLine()
    {
        for (;;) {
            const std::size_t lineEnd = lineEndFrom(begin);
            const bool known = lineEnd < end && (buffer[lineEnd] == '\n' || lineEnd + 1 < end || ended);
            const std::size_t after = known ? behindLineEnd(lineEnd) : lineEnd;
            byte += static_cast<std::int64_t>(after - begin);
            begin = after;
            if (known)
                ++line;
            if (known || (ended && lineEnd == end))
                break;
            if (const auto filled = refill(); !filled)
                return filled;
        }
        skipping = false;
        scanFrom(begin);
        return {};
    }

    Result<bool> next(CsvRecord& record)
    {
        if (skipping)
            if (const auto skipped = skipLine(); !skipped)
                return tl::unexpected<Fault>(skipped.error());
        for (;;) {
            if (begin == end && ended)
                return false;
            std::size_t textEnd = 0;
            std::size_t after = 0;
            const Outcome outcome = begin == end ? Outcome::needsMore : readRecord(end, ended, textEnd, after);
            if (outcome == Outcome::whole) {
                give(textEnd, after, 1, record);
                return true;
            }
            const bool tooMuch = end - begin >= longestWithEnd();
            if (outcome == Outcome::openQuote || (tooMuch && insideQuotes())) {
                readCut(fieldFrom, record);
                return true;
            }
            if (tooMuch) {
                giveCutShort(record);
                return true;
            }
            if (const auto filled = refill(); !filled)
                return tl::unexpected<Fault>(filled.error());
            scanFrom(begin);
        }
    }

    [[nodiscard]] bool insideQuotes() const
    {
        return closingQuote == nowhere && fieldFrom < end && buffer[fieldFrom] == '"';
    }
};

CsvTokenizer::CsvTokenizer(std::unique_ptr<ByteSource> source, char delimiter, CsvLimits limits)
    : m_state(std::make_unique<State>(std::move(source), delimiter, limits))
{
}
CsvTokenizer::~CsvTokenizer() = default;
CsvTokenizer::CsvTokenizer(CsvTokenizer&&) noexcept = default;
CsvTokenizer& CsvTokenizer::operator=(CsvTokenizer&&) noexcept = default;

Result<bool> CsvTokenizer::next(CsvRecord& record)
{
    return m_state->next(record);
}

Status CsvTokenizer::skipLines(std::int64_t count)
{
    for (std::int64_t i = 0; i < count; ++i)
        if (const auto skipped = m_state->skipLine(); !skipped)
            return skipped;
    return {};
}

void CsvTokenizer::cutAfterQuoteLine(CsvRecord& record)
{
    assert(record.quoteSpansLines);
    State& s = *m_state;
    s.begin = s.lastBegin;
    s.byte = s.lastByte;
    s.line = s.lastLine;
    s.readCut(s.lastQuote, record);
}

} // namespace cupule
