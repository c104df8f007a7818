// The statements of the fast way in, bound by position and without copies. Inside the store room only.

#pragma once

#include "core/record/place.h"
#include "core/record/visit.h"
#include "core/store/bulk_import.h"
#include "core/store/store_core.h"
#include "core/store/tree_cache.h"

namespace cupule {

/// A statement whose parameters are put in order; what is put must live until run().
class FastStatement {
public:
    FastStatement(Connection& db, std::string_view sql) : m_db(db), m_statement(db.handle(), sql, true) {}
    FastStatement& put(std::int64_t value);
    FastStatement& put(int value) { return put(static_cast<std::int64_t>(value)); }
    FastStatement& put(bool value) { return put(static_cast<std::int64_t>(value)); }
    FastStatement& put(double value);
    FastStatement& put(std::string_view value);
    FastStatement& put(const Uid& value);                 ///< null id = NULL
    FastStatement& put(std::span<const std::uint8_t> value);
    FastStatement& putNull();
    FastStatement& putUnlessEmpty(std::string_view text) { return text.empty() ? putNull() : put(text); }
    FastStatement& putRow(std::int64_t row) { return row == 0 ? putNull() : put(row); }
    void run();
    /// First column of the first row; 0 where none.
    std::int64_t number();

private:
    void check(int code);

    Connection& m_db;
    Statement m_statement;
    int m_next = 1;
};

class BulkWriter {
public:
    explicit BulkWriter(StoreCore& core);
    /// The row of the new tree. `site` 0 = none.
    std::int64_t addTree(const Tree& tree, std::int64_t site);
    void addVisit(const Visit& visit, std::int64_t tree, std::int64_t observer, const Fingerprint& fingerprint,
                  const VisitShown& shown, const ReadyVisit& ready);
    void addToTree(const CachedTree& tree);
    int countFingerprint(const Fingerprint& fingerprint, std::int64_t lastVisit);

private:
    /// A journal line "imported".
    LineMark addLine(std::string_view noun, const Uid& entity, const Digest& digest);

    StoreCore& m_core;
    ManyIds m_ids;
    FastStatement m_journal, m_revision, m_tree, m_treeWords, m_visit, m_visitWords, m_treeCounts, m_fingerprint;
    Sha256 m_hash;
    JournalLine m_line;
    std::string m_content, m_text, m_key, m_signs;
};

} // namespace cupule
