// Proving the journal: the chains by themselves, then every content against its line, and every line for what it speaks of.

#include <algorithm>
#include <limits>
#include <tuple>

#include "core/record/names.h"
#include "core/store/journal.h"
#include "core/store/journal_text.h"
#include "core/store/heads.h"
#include "core/store/opening.h"
#include "core/store/personal.h"
#include "core/store/pieces.h"
#include "core/store/setting_text.h"
#include "core/store/visit_rows.h"

namespace cupule {

namespace {

constexpr std::int64_t linesBetweenLooks = 5000;

class Prover {
public:
    Prover(StoreCore& core, const Progress& progress) : m_core(core), m_progress(progress) {}

    JournalProof prove()
    {
        m_whole = m_core.db.number("SELECT count(*) FROM journal");
        readIncarnations();
        for (const auto& [chain, owner] : m_chains)
            walk(chain, owner);
        lookAtPieces();
        contents();
        practice();
        visits();
        events();
        personal();
        description();
        settings();
        noticeShorter();
        m_proof.whole = m_proof.brokenWhy.empty();
        m_proof.chains = static_cast<int>(m_chains.size());
        return m_proof;
    }

private:
    void readIncarnations()
    {
        Query q(m_core.db, "SELECT id FROM incarnation ORDER BY id");
        while (q.step())
            m_chains.emplace_back(q.integer(0), ownerOf(m_core, q.integer(0)));
    }

    const ChainOwner* ownerHere(std::int64_t chain) const
    {
        const auto found = std::find_if(m_chains.begin(), m_chains.end(), [&](const auto& each) { return each.first == chain; });
        return found == m_chains.end() ? nullptr : &found->second;
    }

    Uid chainUid(std::int64_t chain) const
    {
        const ChainOwner* owner = ownerHere(chain);
        return owner == nullptr ? Uid{} : owner->incarnation;
    }

    /// Keeps the first one in the order of chains and numbers.
    /// Chain 0 = what has no line at all; it comes last.
    void broken(std::int64_t chain, std::int64_t number, const char* why, std::string_view noun, const Uid& entity)
    {
        const std::int64_t turn = chain == 0 ? std::numeric_limits<std::int64_t>::max() : chain;
        if (!m_proof.brokenWhy.empty() && std::tie(turn, number) >= std::tie(m_brokenTurn, m_proof.brokenNumber))
            return;
        m_brokenTurn = turn;
        m_proof.brokenChain = chainUid(chain);
        m_proof.brokenNumber = number;
        m_proof.brokenWhy = why;
        m_proof.brokenNoun = noun;
        m_proof.brokenEntity = entity;
    }

    void look()
    {
        if (++m_proof.lines % linesBetweenLooks != 0)
            return;
        if (m_progress.cancelled())
            throwFault("job.cancelled", FaultKind::refused);
        m_progress.tell(m_proof.lines, m_whole);
    }

    void walk(std::int64_t chain, const ChainOwner& owner)
    {
        Query q(m_core.db, "SELECT number, at_utc, at_offset, author, kind, noun, entity, digest, commitment, hash FROM journal "
                           "WHERE chain = :chain ORDER BY number");
        q.bind(":chain", chain);
        Digest previous = owner.before;
        std::int64_t expected = owner.first;
        while (q.step()) {
            JournalLine line{owner.incarnation, q.integer(0), q.instant(1, 2), q.uid(3), q.text(4), q.text(5), q.uid(6), q.maybeDigest(7),
                             q.maybeDigest(8), q.digest(9)};
            journalText(m_text, line, previous);
            m_hash.add(m_text);
            const Digest hash = m_hash.finish();
            if (line.number != expected)
                broken(chain, expected, "gap", line.noun, line.entity);
            else if (hash != line.hash)
                broken(chain, line.number, "hash", line.noun, line.entity);
            // Lines that came in travel without what they speak of where that is a draft, or is none of the receiver's.
            if (!owner.cameIn)
                subjectOf(chain, line);
            previous = line.hash;
            expected = line.number + 1;
            look();
        }
        if (expected == owner.first)
            broken(chain, expected, "gap", "incarnation", owner.incarnation);
    }

    /// Where a piece begins: behind a line that has not arrived, or beside another one.
    void lookAtPieces()
    {
        for (const auto& [chain, owner] : m_chains) {
            if (!owner.cameIn)
                continue;
            bool follows = owner.first == 1, beside = false;
            for (const std::int64_t other : chainsOf(m_core, owner.incarnation)) {
                Query q(m_core.db, "SELECT hash FROM journal WHERE chain = :chain AND number = :number");
                follows |= q.bind(":chain", other).bind(":number", owner.first - 1).step() && q.digest(0) == owner.before;
                Query same(m_core.db, "SELECT 1 FROM journal WHERE chain = :chain AND number = :number");
                beside |= other != chain && same.bind(":chain", other).bind(":number", owner.first).step();
            }
            m_proof.gaps += follows ? 0 : 1;
            m_proof.branches += beside ? 1 : 0;
        }
    }

    /// What a line speaks of must be there.
    void subjectOf(std::int64_t chain, const JournalLine& line)
    {
        if (line.commitment)
            commitmentOf(chain, line);
        const bool draftLine = line.kind == "left" || line.kind == "imported";
        if (line.noun == "visit" && draftLine) {
            if (m_core.visitRow(line.entity) == 0)
                broken(chain, line.number, "content", line.noun, line.entity);
            return;
        }
        const char* sql = nullptr;
        if (line.kind == "erased")
            sql = "SELECT 1 FROM erasure WHERE line_chain = :chain AND line_number = :number";
        else if (line.noun == "event")
            sql = "SELECT 1 FROM event WHERE line_chain = :chain AND line_number = :number";
        else if (line.kind == "custody")
            sql = "SELECT 1 FROM custody WHERE line_chain = :chain AND line_number = :number";
        else if (line.kind == "decided")
            sql = "SELECT 1 FROM decision WHERE line_chain = :chain AND line_number = :number";
        else if (line.noun == "key")
            sql = "SELECT 1 FROM key_note WHERE line_chain = :chain AND line_number = :number";
        else if (line.noun == "bundle")
            sql = "SELECT 1 FROM bundle WHERE line_chain = :chain AND line_number = :number";
        else if (line.noun == "acknowledgement")
            sql = "SELECT 1 FROM acknowledgement WHERE line_chain = :chain AND line_number = :number";
        else if (line.noun == "audit")
            sql = "SELECT 1 FROM audit WHERE line_chain = :chain AND line_number = :number";
        else if (line.noun == "audit-step")
            sql = "SELECT 1 FROM audit_step WHERE line_chain = :chain AND line_number = :number";
        else if (const char* practised = ofPractice(line); practised != nullptr)
            sql = practised;
        else if (line.kind == "told")
            sql = "SELECT 1 FROM told WHERE line_chain = :chain AND line_number = :number";
        else if (hasRevision(line) || draftLine)
            return revisionOf(chain, line);
        if (sql == nullptr)
            return;
        Query q(m_core.db, std::string(sql));
        if (!q.bind(":chain", chain).bind(":number", line.number).step())
            broken(chain, line.number, "content", line.noun, line.entity);
    }

    static const char* ofPractice(const JournalLine& line)
    {
        if (line.kind == "practised")
            return "SELECT 1 FROM practice_session WHERE line_chain = :chain AND line_number = :number";
        if (line.kind == "answered")
            return "SELECT 1 FROM practice_answer WHERE line_chain = :chain AND line_number = :number";
        if (line.noun == "photo-case")
            return "SELECT 1 FROM photo_case WHERE line_chain = :chain AND line_number = :number";
        if (line.noun == "photo-key")
            return "SELECT 1 FROM photo_key WHERE line_chain = :chain AND line_number = :number";
        return line.noun == "skill" ? "SELECT 1 FROM skill WHERE line_chain = :chain AND line_number = :number" : nullptr;
    }

    static bool hasRevision(const JournalLine& line)
    {
        const bool change = line.kind == "made" || line.kind == "changed" || line.kind == "submitted" || line.kind == "revised"
                            || line.kind == "undone" || line.kind == "merged" || line.kind == "split";
        return change && line.noun != "store" && line.noun != "setting";
    }

    void revisionOf(std::int64_t chain, const JournalLine& line)
    {
        Query q(m_core.db, "SELECT 1 FROM revision WHERE line_chain = :chain AND line_number = :number");
        if (!q.bind(":chain", chain).bind(":number", line.number).step())
            broken(chain, line.number, "content", line.noun, line.entity);
    }

    void commitmentOf(std::int64_t chain, const JournalLine& line)
    {
        Query q(m_core.db, "SELECT entity FROM personal WHERE commitment = :commitment");
        if (!q.bind(":commitment", *line.commitment).step() || q.uid(0) != line.entity)
            broken(chain, line.number, "commitment", line.noun, line.entity);
    }

    /// Content, its line's digest and the line's entity must agree; columns: content, entity, chain, number, digest, line's
    /// entity, noun, and whether a later revision exists.
    void compare(const std::string& sql)
    {
        Query q(m_core.db, sql);
        while (q.step()) {
            m_hash.add(q.view(0));
            const bool same = q.maybeDigest(4) == m_hash.finish() && q.uid(1) == q.uid(5) && !q.flag(7);
            if (!same)
                broken(q.integer(2), q.integer(3), "content", q.view(6), q.uid(1));
        }
    }

    /// What several revisions come to is worked out again.
    void joined(const std::string& table)
    {
        Query q(m_core.db, "SELECT t.content, t.uid, t.line_chain, t.line_number, t.head, joined.conflicts FROM joined "
                           "JOIN " + table + " AS t ON t.uid = joined.entity WHERE joined.noun = '" + table + "'");
        while (q.step()) {
            const NounStands stands = stoodFrom(m_core, table, q.uid(1));
            if (stands.content != q.view(0) || stands.head != q.uid(4) || stands.conflicts.size() != static_cast<std::size_t>(q.integer(5)))
                broken(q.integer(2), q.integer(3), "content", table, q.uid(1));
        }
    }

    void contents()
    {
        for (const char* noun : {"person", "site", "tree", "photo", "sample", "leave", "regime"}) {
            const std::string table = noun;
            compare("SELECT t.content, t.uid, t.line_chain, t.line_number, j.digest, j.entity, '" + table + "', "
                    "EXISTS (SELECT 1 FROM revision_parent WHERE parent = t.head) FROM " + table + " AS t "
                    "LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number "
                    "WHERE t.uid NOT IN (SELECT entity FROM joined)");
            joined(table);
        }
        joined("visit");
        compare("SELECT t.content, t.uid, t.line_chain, t.line_number, j.digest, j.entity, 'key', 0 FROM key_note AS t "
                "LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        for (const char* noun : {"audit", "bundle", "custody", "decision"}) {
            const std::string table = noun;
            compare("SELECT t.content, t.uid, t.line_chain, t.line_number, j.digest, j.entity, '" + table + "', 0 FROM " + table
                    + " AS t LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        }
        compare("SELECT t.content, t.entity, t.line_chain, t.line_number, j.digest, j.entity, t.noun, t.noun <> j.noun FROM revision AS t "
                "LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        compare("SELECT t.content, t.uid, t.line_chain, t.line_number, j.digest, j.entity, 'audit-step', 0 FROM audit_step AS t "
                "LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        compare("SELECT t.content, t.entity, t.line_chain, t.line_number, j.digest, j.entity, 'erasure', 0 FROM erasure AS t "
                "LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        compare("SELECT t.content, visit.uid, t.line_chain, t.line_number, j.digest, j.entity, 'told', 0 FROM told AS t "
                "JOIN visit ON visit.id = t.visit LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        compare("SELECT t.content, visit.uid, t.line_chain, t.line_number, j.digest, j.entity, 'event', 0 FROM event AS t "
                "JOIN visit ON visit.id = t.visit LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
    }

    void practice()
    {
        compare("SELECT t.content, s.uid, t.line_chain, t.line_number, j.digest, j.entity, 'practice', 0 FROM practice_answer AS t "
                "JOIN practice_session AS s ON s.id = t.session LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        for (const char* each : {"photo_case", "photo_key", "practice_session", "skill"}) {
            const std::string table = each;
            compare("SELECT t.content, t.uid, t.line_chain, t.line_number, j.digest, j.entity, '" + table + "', 0 FROM " + table
                    + " AS t LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number");
        }
        for (const char* table : {"practice_session", "skill"}) {
            const std::string noun = table;
            Query held(m_core.db, "SELECT t.uid, t.line_chain, t.line_number FROM " + noun + " AS t LEFT JOIN personal AS p ON p.commitment = t.commitment "
                                  "LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number "
                                  "WHERE (t.commitment IS NOT j.commitment AND NOT (t.commitment IS NULL AND t.line_chain IN (SELECT chain FROM piece))) "
                                  "OR (t.commitment IS NOT NULL AND p.entity IS NOT t.uid)");
            while (held.step())
                broken(held.integer(1), held.integer(2), "commitment", noun, held.uid(0));
        }
    }

    /// A draft that was changed since it was last left has no line for that yet.
    void visits()
    {
        compare("SELECT t.content, t.uid, coalesce(t.line_chain, 0), coalesce(t.line_number, 0), j.digest, j.entity, 'visit', "
                "EXISTS (SELECT 1 FROM revision_parent WHERE parent = t.head) FROM visit AS t "
                "LEFT JOIN journal AS j ON j.chain = t.line_chain AND j.number = t.line_number "
                "WHERE t.dirty = 0 AND t.uid NOT IN (SELECT entity FROM joined)");
    }

    /// The state in the row is the one of its last event, or what handing in made of it.
    void events()
    {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS ", event.content, coalesce(event.line_chain, visit.line_chain, 0), "
                           "coalesce(event.line_number, visit.line_number, 0), iif(json_valid(event.content), event.content ->> '$.kind', ''), "
                           "iif(json_valid(event.content), event.content ->> '$.reason', ''), "
                           "(SELECT max(later.id) FROM event AS later WHERE later.visit = visit.id AND later.merged = 0) <> visit.event"
                           VISIT_ROW_FROM "LEFT JOIN event ON event.id = visit.event WHERE visit.head IS NOT NULL "
                           "OR visit.event IS NOT NULL OR visit.state <> 'draft' OR visit.struck = 1");
        while (q.step()) {
            const VisitRow row = readVisitRow(q);
            const bool holds = q.isNull(27) ? standsAsHandedIn(row.standing)
                                            : eventContent(row.id, row.standing, q.view(30), q.view(31)) == q.view(27) && !q.flag(32);
            if (!holds)
                broken(q.integer(28), q.integer(29), "content", "visit", row.id);
        }
    }

    static bool standsAsHandedIn(const VisitStanding& standing)
    {
        if (standing.head.isNull() || standing.oneOfTwo || standing.conflict || standing.struck)
            return false;
        if (standing.decided.isNull())
            return standing.state == RecordState::submitted && !standing.correctionWaits;
        return standing.correctionWaits && standing.state != RecordState::draft;
    }

    void personal()
    {
        Query q(m_core.db, "SELECT p.noun, p.entity, p.salt, p.payload, p.commitment, coalesce(j.chain, 0), coalesce(j.number, 0), "
                           "EXISTS (SELECT 1 FROM erasure AS e WHERE e.entity = p.entity "
                           "AND instr(e.content, lower(hex(p.commitment))) > 0), "
                           "j.chain IS NOT NULL OR EXISTS (SELECT 1 FROM revision AS r JOIN piece ON piece.chain = r.line_chain "
                           "WHERE r.entity = p.entity AND r.commitment = p.commitment) "
                           "FROM personal AS p LEFT JOIN journal AS j ON j.commitment = p.commitment");
        while (q.step()) {
            const bool holds = q.isNull(2) ? q.flag(7) : commitmentTo(q.digest(2), q.view(3)) == q.digest(4);
            m_proof.erased += q.isNull(2) ? 1 : 0;
            if (!holds || !q.flag(8))
                broken(q.integer(5), q.integer(6), "commitment", q.view(0), q.uid(1));
        }
        for (const char* table : {"person", "leave"}) {
            const std::string noun = table;
            // What is named and has not travelled is not held.
            Query held(m_core.db, "SELECT t.uid, t.line_chain, t.line_number FROM " + noun + " AS t JOIN revision AS r ON r.uid = t.head "
                                  "LEFT JOIN personal AS p ON p.commitment = coalesce(t.commitment, r.commitment) "
                                  "WHERE t.uid NOT IN (SELECT entity FROM joined) AND ((t.commitment IS NOT r.commitment "
                                  "AND (t.commitment IS NOT NULL OR p.commitment IS NOT NULL)) "
                                  "OR (t.commitment IS NOT NULL AND p.entity IS NOT t.uid))");
            while (held.step())
                broken(held.integer(1), held.integer(2), "commitment", noun, held.uid(0));
        }
    }

    void description()
    {
        Query q(m_core.db, "SELECT chain, number, digest FROM journal WHERE noun = 'store' AND kind = 'made' AND number = 2");
        const bool known = q.step();
        if (!known || q.digest(2) != sha256(storeContent(m_core.info)))
            broken(known ? q.integer(0) : 0, known ? q.integer(1) : 0, "content", "store", m_core.info.id);
    }

    void settings()
    {
        Query q(m_core.db, "SELECT s.key, s.value, j.digest, s.line_chain, s.line_number FROM setting AS s "
                           "LEFT JOIN journal AS j ON j.chain = s.line_chain AND j.number = s.line_number");
        while (q.step())
            if (q.maybeDigest(2) != sha256(settingText(q.view(0), q.view(1))))
                broken(q.integer(3), q.integer(4), "content", "setting", {});
    }

    void noticeShorter()
    {
        if (!m_core.shorter || !m_proof.brokenWhy.empty())
            return;
        m_proof.brokenWhy = "shorter-than-seen";
        m_proof.brokenChain = m_core.shorter->incarnation;
        m_proof.brokenNumber = m_core.shorter->otherContent ? m_core.shorter->seenNumber : m_core.shorter->foundNumber + 1;
    }

    StoreCore& m_core;
    const Progress& m_progress;
    JournalProof m_proof;
    std::vector<std::pair<std::int64_t, ChainOwner>> m_chains;
    std::int64_t m_brokenTurn = 0;
    std::int64_t m_whole = 0;
    std::string m_text;
    Sha256 m_hash;
};

} // namespace

Result<JournalProof> Journal::prove(const Progress& progress)
{
    return guarded([&] { return Prover(m_core, progress).prove(); });
}

} // namespace cupule
