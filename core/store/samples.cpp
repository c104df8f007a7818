#include "core/store/samples.h"

#include "core/store/heads.h"
#include "core/store/noun_rows.h"
#include "core/store/sample_key.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

std::vector<Sample> readAll(Query& q)
{
    std::vector<Sample> samples;
    while (q.step())
        samples.push_back(nounFrom<Sample>(q.view(0)));
    return samples;
}

std::vector<std::string> readTexts(Query& q)
{
    std::vector<std::string> texts;
    while (q.step())
        texts.push_back(q.text(0));
    return texts;
}

/// The key of the number, made different where another sample that came in from another store has it already.
std::string keyOf(StoreCore& core, const Sample& sample)
{
    Query q(core.db, "SELECT 1 FROM sample WHERE number_key = :key AND uid <> :uid");
    const std::string key = sampleKey(sample.number);
    return q.bind(":key", key).bind(":uid", sample.id).step() ? clashKey(key, sample.id) : key;
}

std::int64_t existing(StoreCore& core, const Uid& sample)
{
    const std::int64_t row = core.sampleRow(sample);
    if (row == 0)
        throwFault("store.reference", FaultKind::refused, {{"noun", "sample"}, {"id", sample.text()}});
    return row;
}

} // namespace

std::string sampleKey(std::string_view number)
{
    std::string key;
    for (const char c : number) {
        if (c >= 'a' && c <= 'z')
            key += static_cast<char>(c - 'a' + 'A');
        else if ((c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z'))
            key += c;
    }
    return key;
}

std::string clashKey(const std::string& value, const Uid& id)
{
    return value + "~" + id.text().substr(24);
}

Status Samples::save(Change& change, const Sample& sample)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(sample);
        Query before(core.db, "SELECT content, head FROM sample WHERE uid = :uid");
        const bool known = before.bind(":uid", sample.id).step();
        if (known && before.view(0) == content && !core.settles(sample.id))
            return;
        if (keyOf(core, sample) != sampleKey(sample.number) && (!known || nounFrom<Sample>(before.view(0)).number != sample.number))
            throwFault("store.constraint", FaultKind::refused, {{"constraint", "sample_number_unique"}});
        const NounEdited done = writeEdit(core, {"sample", known ? "changed" : "made", sample.id, known ? before.uid(1) : Uid{},
                                                 known ? before.text(0) : std::string(), content});
        putSample(core, nounFrom<Sample>(done.content), done.content, done.written);
    });
}

void putSample(StoreCore& core, const Sample& sample, const std::string& content, const Written& at)
{
    Query q(core.db, "INSERT INTO sample (uid, number_key, visit, content, head, line_chain, line_number) "
                     "VALUES (:uid, :key, :visit, :content, :head, :chain, :number) "
                     "ON CONFLICT (uid) DO UPDATE SET number_key = excluded.number_key, visit = excluded.visit, "
                     "content = excluded.content, head = excluded.head, line_chain = excluded.line_chain, "
                     "line_number = excluded.line_number");
    q.bind(":uid", sample.id).bind(":key", keyOf(core, sample));
    q.bind(":visit", referenced(core.visitRow(sample.visit), sample.visit, "visit")).bind(":content", content);
    q.bind(":head", at.revision).bind(":chain", at.line.chain).bind(":number", at.line.number).run();
}

Result<std::optional<Sample>> Samples::find(const Uid& id)
{
    return guarded([&]() -> std::optional<Sample> {
        Query q(m_core.db, "SELECT content FROM sample WHERE uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return nounFrom<Sample>(q.view(0));
    });
}

Result<std::vector<Uid>> Samples::allByNumber(const std::string& number)
{
    return guarded([&] {
        std::vector<Uid> samples;
        Query q(m_core.db, "SELECT uid FROM sample WHERE number_key = :key OR (number_key > :key || '~' AND number_key < :key || '~~') "
                           "ORDER BY uid");      // all but the first have a key of their own (clashKey)
        q.bind(":key", sampleKey(number));
        while (q.step())
            samples.push_back(q.uid(0));
        return samples;
    });
}

Result<std::optional<Sample>> Samples::byNumber(const std::string& number)
{
    return guarded([&]() -> std::optional<Sample> {
        Query q(m_core.db, "SELECT content FROM sample WHERE number_key = :key");
        if (!q.bind(":key", sampleKey(number)).step())
            return std::nullopt;
        return nounFrom<Sample>(q.view(0));
    });
}

Result<std::vector<Sample>> Samples::ofVisit(const Uid& visit)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM sample WHERE visit = :visit ORDER BY number_key");
        return readAll(q.bind(":visit", m_core.visitRow(visit)));
    });
}

Result<std::vector<Sample>> Samples::ofTree(const Uid& tree)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT sample.content FROM visit JOIN sample ON sample.visit = visit.id WHERE visit.tree = :tree "
                           "ORDER BY sample.number_key");
        return readAll(q.bind(":tree", m_core.treeRow(tree)));
    });
}

Result<std::vector<Sample>> Samples::all()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM sample ORDER BY number_key");
        return readAll(q);
    });
}

Result<int> Samples::highestRunning(int year, const std::string& block)
{
    return guarded([&] {
        // Year (2), block (2), running number (4), check (1), as rules/sample_number.h writes them.
        std::string from = std::to_string(year % 100 + 100).substr(1) + sampleKey(block);
        Query q(m_core.db, "SELECT max(substr(number_key, 5, 4)) FROM sample WHERE number_key >= :from AND number_key < :last "
                           "AND length(number_key) = 9");
        q.bind(":from", from).bind(":last", from + "~");
        return q.step() ? q.whole(0) : 0;
    });
}

Result<CustodyLine> Samples::addLine(Change& change, const CustodyLine& line)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::int64_t sample = existing(core, line.sample);
        Query last(core.db, "SELECT coalesce(max(number), 0) FROM custody WHERE sample = :sample");
        CustodyLine added = line;
        added.number = last.bind(":sample", sample).step() ? last.whole(0) + 1 : 1;
        const std::string content = contentOf(added);
        const LineMark mark = core.addLine({"custody", "custody", added.id, sha256(content)});
        Query q(core.db, "INSERT INTO custody (uid, sample, number, bag, seal, content, line_chain, line_number) "
                         "VALUES (:uid, :sample, :number, :bag, :seal, :content, :chain, :line)");
        q.bind(":uid", added.id).bind(":sample", sample).bind(":number", added.number).bind(":bag", added.bag);
        q.bind(":seal", added.seal).bind(":content", content).bind(":chain", mark.chain).bind(":line", mark.number).run();
        return added;
    });
}

Result<std::vector<CustodyLine>> Samples::lines(const Uid& sample)
{
    return guarded([&] {
        std::vector<CustodyLine> lines;
        Query q(m_core.db, "SELECT content FROM custody WHERE sample = :sample ORDER BY number");
        q.bind(":sample", m_core.sampleRow(sample));
        while (q.step())
            lines.push_back(nounFrom<CustodyLine>(q.view(0)));
        return lines;
    });
}

Result<std::vector<std::string>> Samples::sealsElsewhere(const Uid& sample)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT DISTINCT seal FROM custody WHERE seal <> '' AND sample <> :sample ORDER BY seal");
        return readTexts(q.bind(":sample", m_core.sampleRow(sample)));
    });
}

Result<std::vector<std::string>> Samples::bagsElsewhere(const Uid& sample)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT DISTINCT bag FROM custody WHERE bag <> '' AND sample <> :sample ORDER BY bag");
        return readTexts(q.bind(":sample", m_core.sampleRow(sample)));
    });
}

Result<std::vector<Sample>> Samples::sameNumber(const Sample& sample)
{
    return guarded([&] {
        std::vector<Sample> same;
        const std::string key = sampleKey(sample.number);
        Query q(m_core.db, "SELECT content FROM sample WHERE (number_key = :key OR number_key BETWEEN :clash AND :end) AND uid <> :uid ORDER BY uid");
        q.bind(":key", key).bind(":clash", key + "~").bind(":end", key + "~~").bind(":uid", sample.id);
        while (q.step())
            same.push_back(nounFrom<Sample>(q.view(0)));
        return same;
    });
}

} // namespace cupule
