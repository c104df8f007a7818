#include "core/store/bulk_writer.h"

#include <sqlite3.h>

#include "core/store/cells.h"
#include "core/store/host_names.h"
#include "core/store/journal_text.h"
#include "core/store/label_key.h"

namespace cupule {

void FastStatement::check(int code)
{
    if (code != SQLITE_OK)
        m_db.failed(code, sqlite3_sql(m_statement.get()));
}

FastStatement& FastStatement::put(std::int64_t value)
{
    check(sqlite3_bind_int64(m_statement.get(), m_next++, value));
    return *this;
}

FastStatement& FastStatement::put(double value)
{
    check(sqlite3_bind_double(m_statement.get(), m_next++, value));
    return *this;
}

FastStatement& FastStatement::put(std::string_view value)
{
    check(sqlite3_bind_text64(m_statement.get(), m_next++, value.data() == nullptr ? "" : value.data(), value.size(), SQLITE_STATIC,
                              SQLITE_UTF8));
    return *this;
}

FastStatement& FastStatement::put(const Uid& value)
{
    return value.isNull() ? putNull() : put(std::span<const std::uint8_t>(value.bytes));
}

FastStatement& FastStatement::put(std::span<const std::uint8_t> value)
{
    check(sqlite3_bind_blob(m_statement.get(), m_next++, value.data(), static_cast<int>(value.size()), SQLITE_STATIC));
    return *this;
}

FastStatement& FastStatement::putNull()
{
    check(sqlite3_bind_null(m_statement.get(), m_next++));
    return *this;
}

void FastStatement::run()
{
    m_next = 1;
    const int code = sqlite3_step(m_statement.get());
    const int again = sqlite3_reset(m_statement.get());
    if (code != SQLITE_DONE && code != SQLITE_ROW)
        check(again);
}

std::int64_t FastStatement::number()
{
    m_next = 1;
    const int code = sqlite3_step(m_statement.get());
    const std::int64_t value = code == SQLITE_ROW ? sqlite3_column_int64(m_statement.get(), 0) : 0;
    check(sqlite3_reset(m_statement.get()));
    return value;
}

BulkWriter::BulkWriter(StoreCore& core)
    : m_core(core), m_ids(core.at(), core.services.random),
      m_journal(core.db, "INSERT INTO journal (chain, number, at_utc, at_offset, author, kind, noun, entity, digest, hash) "
                         "VALUES (?, ?, ?, ?, ?, 'imported', ?, ?, ?, ?)"),
      m_revision(core.db, "INSERT INTO revision (uid, noun, entity, line_chain, line_number, content) VALUES (?, 'tree', ?, ?, ?, ?)"),
      m_tree(core.db, "INSERT INTO tree (uid, site, label, label_key, latitude, longitude, uncertainty, cell, note, content, head, line_chain, "
                      "line_number) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"),
      m_treeWords(core.db, "INSERT INTO tree_words (rowid, label, note) VALUES (?, ?, ?)"),
      m_visit(core.db, "INSERT INTO visit (uid, tree, observer, day, second, note, content, state, imported, line_chain, line_number, host, "
                       "positive, earlier, none_seen, worth, summary, signs, stops, asks, queue_rank, queue_code, fingerprint) "
                       "VALUES (?, ?, ?, ?, ?, ?, ?, 'draft', 1, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"),
      m_visitWords(core.db, "INSERT INTO visit_words (rowid, note) VALUES (?, ?)"),
      m_treeCounts(core.db, "UPDATE tree SET visits = visits + ?, last_day = max(coalesce(last_day, ?), ?), "
                            "positive_waiting = positive_waiting + ?, host = ? WHERE id = ?"),
      m_fingerprint(core.db, "SELECT count(*) FROM visit WHERE fingerprint = ? AND id <= ?")
{
}

LineMark BulkWriter::addLine(std::string_view noun, const Uid& entity, const Digest& digest)
{
    auto& chain = m_core.chain;
    m_line.digest = digest;
    m_line.incarnation = chain.uid;
    m_line.number = chain.number + 1;
    m_line.at = m_core.at();
    m_line.author = m_core.author();
    m_line.kind = "imported";
    m_line.noun = noun;
    m_line.entity = entity;
    journalText(m_text, m_line, chain.hash);
    m_hash.add(m_text);
    m_line.hash = m_hash.finish();
    m_journal.put(chain.id).put(m_line.number).put(m_line.at.utcMilliseconds);
    if (m_line.at.offsetMinutes)
        m_journal.put(*m_line.at.offsetMinutes);
    else
        m_journal.putNull();
    m_journal.put(m_line.author).put(noun).put(entity).put(std::span<const std::uint8_t>(*m_line.digest));
    m_journal.put(std::span<const std::uint8_t>(m_line.hash)).run();
    chain.number = m_line.number;
    chain.hash = m_line.hash;
    return {chain.id, chain.number};
}

std::int64_t BulkWriter::addTree(const Tree& tree, std::int64_t site)
{
    m_core.writing();
    m_content.clear();
    if (!appendJson(m_content, tree))
        throwFault("record.json", FaultKind::data, {{"path", ""}, {"why", "value"}});
    m_core.setHalfWritten(true);
    m_hash.add(m_content);
    const LineMark line = addLine("tree", tree.id, m_hash.finish());
    const Uid revision = m_ids.make();
    m_revision.put(revision).put(tree.id).put(line.chain).put(line.number).put(m_content).run();
    m_key = labelKey(tree.label);
    m_tree.put(tree.id).putRow(site).put(tree.label).put(m_key);
    if (tree.position)
        m_tree.put(tree.position->latitude).put(tree.position->longitude).put(tree.position->uncertaintyMetres)
            .put(cellOf(tree.position->latitude, tree.position->longitude));
    else
        m_tree.putNull().putNull().putNull().putNull();
    m_tree.putUnlessEmpty(tree.note).put(m_content).put(revision).put(line.chain).put(line.number).run();
    const std::int64_t row = m_core.db.lastRowId();
    m_treeWords.put(row).put(tree.label).putUnlessEmpty(tree.note).run();
    m_core.setHalfWritten(false);
    return row;
}

void BulkWriter::addVisit(const Visit& visit, std::int64_t tree, std::int64_t observer, const Fingerprint& fingerprint,
                          const VisitShown& shown, const ReadyVisit& ready)
{
    m_core.writing();
    if (ready.content.empty())
        throwFault("record.json", FaultKind::data, {{"path", ""}, {"why", "value"}});
    m_core.setHalfWritten(true);
    const LineMark line = addLine("visit", visit.id, ready.digest);
    m_visit.put(visit.id).putRow(tree).putRow(observer).put(visit.date.days);
    if (visit.time)
        m_visit.put(visit.time->secondOfDay);
    else
        m_visit.putNull();
    m_signs.clear();
    for (const std::string& sign : shown.signs)
        m_signs.append(m_signs.empty() ? "" : " ").append(sign);
    m_visit.putUnlessEmpty(visit.note).put(ready.content).put(line.chain).put(line.number).put(hostName(shown.host)).put(shown.positive);
    m_visit.put(shown.earlierGenerationOnly).put(shown.nothing).put(std::string_view(&shown.worth, 1)).put(shown.summary);
    m_visit.put(m_signs).put(shown.stops).put(shown.asks).put(shown.queueRank).put(shown.queueCode);
    m_visit.put(std::span<const std::uint8_t>(fingerprint)).run();
    if (!visit.note.empty())
        m_visitWords.put(m_core.db.lastRowId()).put(visit.note).run();
    m_core.setHalfWritten(false);
}

void BulkWriter::addToTree(const CachedTree& tree)
{
    m_treeCounts.put(tree.visits).put(tree.lastDay).put(tree.lastDay).put(tree.positives).put(hostName(tree.host())).put(tree.row).run();
}

int BulkWriter::countFingerprint(const Fingerprint& fingerprint, std::int64_t lastVisit)
{
    return static_cast<int>(m_fingerprint.put(std::span<const std::uint8_t>(fingerprint)).put(lastVisit).number());
}

} // namespace cupule
