#include "core/store/journal.h"

#include <algorithm>
#include <charconv>

#include "core/record/json_writer.h"
#include "core/store/journal_text.h"
#include "core/store/pieces.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

void appendWhole(std::string& out, std::int64_t value)
{
    char buffer[24];
    out.append(buffer, std::to_chars(buffer, buffer + sizeof buffer, value).ptr);
    out += '\n';
}

void appendDigest(std::string& out, const Digest& digest)
{
    static constexpr char digits[] = "0123456789abcdef";
    char text[64];
    for (std::size_t i = 0; i < digest.size(); ++i) {
        text[2 * i] = digits[digest[i] >> 4];
        text[2 * i + 1] = digits[digest[i] & 15];
    }
    out.append(text, sizeof text);
    out += '\n';
}

void appendId(std::string& out, const Uid& id)
{
    json::appendUid(out, id);
    out += '\n';
}

#define SELECT_LINES \
    "SELECT coalesce(p.of, i.uid), j.number, j.at_utc, j.at_offset, j.author, j.kind, j.noun, j.entity, j.digest, j.commitment, j.hash " \
    "FROM journal AS j JOIN incarnation AS i ON i.id = j.chain LEFT JOIN piece AS p ON p.chain = i.id "

JournalLine read(const Query& q)
{
    JournalLine line;
    line.incarnation = q.uid(0);
    line.number = q.integer(1);
    line.at = q.instant(2, 3);
    line.author = q.uid(4);
    line.kind = q.text(5);
    line.noun = q.text(6);
    line.entity = q.uid(7);
    line.digest = q.maybeDigest(8);
    line.commitment = q.maybeDigest(9);
    line.hash = q.digest(10);
    return line;
}

} // namespace

void journalText(std::string& out, const JournalLine& line, const Digest& previous)
{
    out = "cupule-journal-1\n";
    appendId(out, line.incarnation);
    appendWhole(out, line.number);
    appendWhole(out, line.at.utcMilliseconds);
    if (line.at.offsetMinutes)
        appendWhole(out, *line.at.offsetMinutes);
    else
        out += '\n';
    appendId(out, line.author);
    out += line.kind;
    out += '\n';
    out += line.noun;
    out += '\n';
    appendId(out, line.entity);
    if (line.digest)
        appendDigest(out, *line.digest);
    else
        out += '\n';
    if (line.commitment)
        appendDigest(out, *line.commitment);
    else
        out += '\n';
    appendDigest(out, previous);
}

Digest journalHash(const JournalLine& line, const Digest& previous)
{
    std::string text;
    text.reserve(512);
    journalText(text, line, previous);
    return sha256(text);
}

Result<std::vector<Incarnation>> Journal::incarnations()
{
    return guarded([&] {
        std::vector<Incarnation> all;
        Query q(m_core.db, "SELECT coalesce(piece.of, uid), device, begun_utc, begun_offset, why, "
                           "(SELECT coalesce(max(number), 0) FROM journal WHERE chain = incarnation.id), coalesce(piece.first, 1), "
                           "piece.chain IS NOT NULL FROM incarnation LEFT JOIN piece ON piece.chain = incarnation.id ORDER BY id");
        while (q.step())
            all.push_back({q.uid(0), q.uid(1), q.instant(2, 3), q.text(4), q.integer(5), q.integer(6), q.flag(7)});
        return all;
    });
}

Result<std::vector<JournalLine>> Journal::lines(const Uid& incarnation, std::int64_t from, int count)
{
    return guarded([&] {
        std::vector<JournalLine> lines;
        for (const std::int64_t chain : chainsOf(m_core, incarnation)) {
            Query q(m_core.db, SELECT_LINES "WHERE j.chain = :chain AND j.number >= :from ORDER BY j.number LIMIT :count");
            q.bind(":chain", chain).bind(":from", from).bind(":count", count);
            while (q.step())
                lines.push_back(read(q));
        }
        std::stable_sort(lines.begin(), lines.end(), [](const JournalLine& a, const JournalLine& b) { return a.number < b.number; });
        if (lines.size() > static_cast<std::size_t>(count))
            lines.resize(static_cast<std::size_t>(count));
        return lines;
    });
}

Result<std::vector<LineHere>> Journal::linesAt(const Uid& incarnation, std::int64_t number)
{
    return guarded([&] {
        std::vector<LineHere> lines;
        Query q(m_core.db, "SELECT hash, author FROM journal WHERE number = :number AND chain IN "
                           "(SELECT id FROM incarnation WHERE uid = :uid UNION SELECT chain FROM piece WHERE of = :uid) ORDER BY chain");
        q.bind(":uid", incarnation).bind(":number", number);
        while (q.step())
            lines.push_back({q.digest(0), q.uid(1)});
        return lines;
    });
}

Result<std::vector<JournalLine>> Journal::ofEntity(const Uid& entity)
{
    return guarded([&] {
        std::vector<JournalLine> lines;
        Query q(m_core.db, SELECT_LINES "WHERE j.entity = :entity ORDER BY j.chain, j.number");
        q.bind(":entity", entity);
        while (q.step())
            lines.push_back(read(q));
        return lines;
    });
}

Status Journal::note(Change& change, const std::string& kind, const std::string& noun, const Uid& entity, const std::string& text)
{
    return writtenIn(change, [&](StoreCore& core) { core.addLine({kind, noun, entity, sha256(text)}); });
}

} // namespace cupule
