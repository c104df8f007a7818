#include "core/store/outgoing.h"

#include <map>
#include <set>

#include "core/store/bundle_content.h"
#include "core/store/media.h"
#include "core/store/pieces.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

/// Lines whose contents are in no bundle that somebody took in. The names need their table: `a` has such columns too.
#define NOT_ACKNOWLEDGED(chain, number) \
    "NOT EXISTS (SELECT 1 FROM bundle_line AS b JOIN acknowledgement AS a ON a.bundle = b.bundle " \
    "WHERE b.chain = " chain " AND b.number = " number ")"

class Collector {
public:
    Collector(StoreCore& core, GoingKind kind, const GoingWish& wish, const GoingTake& take)
        : m_core(core), m_take(take), m_wish(wish), m_all(wish.whole || kind != GoingKind::day), m_mayNotDecide(kind == GoingKind::reference)
    {
    }

    Going take(GoingKind kind)
    {
        switch (kind) {
        case GoingKind::day: visits(); break;
        case GoingKind::decision: decisions(); break;
        case GoingKind::reference: reference(); break;
        }
        if (m_wish.practice)
            practice(kind);
        if (kind == GoingKind::day)
            wholeChains();
        m_going.visits = static_cast<std::int64_t>(m_visits.size());
        lines();
        personal();
        return std::move(m_going);
    }

private:
    // ---------------------------------------------------------------- contents

    void add(GoingRecord record, std::int64_t chain)
    {
        const CarriedLine line{chain, record.number};
        if (!m_lines.insert(line).second)
            return;
        record.incarnation = incarnation(chain).id;
        m_going.carried.push_back(line);
        if (record.commitment)
            m_commitments.insert(*record.commitment);
        record.branch = branchOf(chain);
        if (record.type == "revision" && record.noun == "visit")
            m_visits.insert(record.entity);
        ++m_records;
        if (m_take.record)
            taken(m_take.record(record));
        else
            m_going.records.push_back(std::move(record));
    }

    /// All revisions of a noun, once. True where there are any that need to go.
    bool revisions(const Uid& entity)
    {
        if (entity.isNull() || !m_entities.insert(entity).second)
            return false;
        const std::int64_t before = m_records;
        Query q(m_core.db, "SELECT uid, noun, line_chain, line_number, content, commitment FROM revision "
                           "WHERE entity = :entity AND (:all OR " NOT_ACKNOWLEDGED("revision.line_chain", "revision.line_number") ") ORDER BY id");
        q.bind(":entity", entity).bind(":all", m_all);
        while (q.step()) {
            GoingRecord record{"revision", q.text(1), q.uid(0), entity, {}, {}, q.integer(3), q.text(4), q.maybeDigest(5)};
            if (record.noun == "person" && !m_mayNotDecide && !nounFrom<Person>(record.content).notFor.empty())
                continue;
            Query parents(m_core.db, "SELECT parent FROM revision_parent WHERE child = :child ORDER BY parent");
            parents.bind(":child", record.id);
            while (parents.step())
                record.parents.push_back(parents.uid(0));
            add(std::move(record), q.integer(2));
        }
        return m_records > before;
    }

    /// Columns: content, entity, chain, number.
    bool others(Query& q, const char* type)
    {
        const std::int64_t before = m_records;
        while (q.step())
            add({type, {}, {}, q.uid(1), {}, {}, q.integer(3), q.text(0), {}}, q.integer(2));
        return m_records > before;
    }

    bool events(const Uid& visit)
    {
        Query q(m_core.db, "SELECT event.content, visit.uid, event.line_chain, event.line_number FROM visit JOIN event ON event.visit = visit.id "
                           "WHERE visit.uid = :uid AND (:all OR (event.merged = 0 AND " NOT_ACKNOWLEDGED("event.line_chain", "event.line_number") ")) "
                           "ORDER BY event.id");
        return others(q.bind(":uid", visit).bind(":all", m_all), "event");
    }

    /// What recorders took back. Judgements travel with the word of those who made them, in decision bundles.
    bool withdrawals(std::int64_t visit)
    {
        Query q(m_core.db, "SELECT content, uid, line_chain, line_number FROM decision WHERE visit = :visit AND content ->> '$.outcome' = 'withdraw' "
                           "AND (:all OR " NOT_ACKNOWLEDGED("decision.line_chain", "decision.line_number") ") ORDER BY id");
        return others(q.bind(":visit", visit).bind(":all", m_all), "decision");
    }

    // ---------------------------------------------------------------- nouns that nouns name

    template <class Noun>
    std::optional<Noun> noun(const Uid& id)
    {
        Query q(m_core.db, "SELECT content FROM revision WHERE entity = :entity ORDER BY id DESC LIMIT 1");
        if (id.isNull() || !q.bind(":entity", id).step())
            return std::nullopt;
        return nounFrom<Noun>(q.view(0));
    }

    void tree(const Uid& id)
    {
        revisions(id);
        if (const auto found = noun<Tree>(id)) {
            revisions(found->site);
            if (!m_entities.contains(found->mergedInto) && found->mergedInto != id)
                tree(found->mergedInto);
        }
    }

    void leave(const Uid& id)
    {
        revisions(id);
        if (const auto found = noun<Leave>(id))
            revisions(found->site);
    }

    void visitNames(const Visit& visit)
    {
        tree(visit.tree);
        revisions(visit.observer);
        revisions(visit.trainer);
        for (const Uid& companion : visit.companions)
            revisions(companion);
    }

    bool photos(std::int64_t visit)
    {
        bool any = false;
        Query q(m_core.db, "SELECT uid, sha256 FROM photo WHERE visit = :visit ORDER BY id");
        q.bind(":visit", visit);
        while (q.step())
            if (revisions(q.uid(0))) {
                any = true;
                if (cameWithoutPicture(q.uid(0), q.text(1)))
                    m_going.picturesAbsent = true;
                else
                    m_pictures.insert(q.text(1));
            }
        return any;
    }

    /// A picture that was taken in here and is gone is a fault of the store; one that never came is not.
    bool cameWithoutPicture(const Uid& photo, const std::string& sha256)
    {
        Query q(m_core.db, "SELECT 1 FROM revision JOIN piece ON piece.chain = revision.line_chain WHERE entity = :entity LIMIT 1");
        return q.bind(":entity", photo).step() && !Media(m_core).path(sha256);
    }

    bool samples(std::int64_t visit)
    {
        bool any = false;
        Query q(m_core.db, "SELECT id, uid, content FROM sample WHERE visit = :visit ORDER BY id");
        q.bind(":visit", visit);
        while (q.step()) {
            bool moved = revisions(q.uid(1));
            Query lines(m_core.db, "SELECT content, uid, line_chain, line_number FROM custody WHERE sample = :sample "
                                   "AND (:all OR " NOT_ACKNOWLEDGED("custody.line_chain", "custody.line_number") ") ORDER BY number");
            moved |= others(lines.bind(":sample", q.integer(0)).bind(":all", m_all), "custody");
            any |= moved;
            if (!moved)
                continue;
            const auto sample = nounFrom<Sample>(q.view(2));
            revisions(sample.collector);
            leave(sample.leaveOwner);
            leave(sample.leaveAuthority);
        }
        return any;
    }

    bool goneBefore(const Uid& visit)
    {
        Query q(m_core.db, "SELECT 1 FROM revision AS r JOIN bundle_line AS l ON l.chain = r.line_chain AND l.number = r.line_number "
                           "JOIN bundle AS b ON b.id = l.bundle WHERE r.entity = :entity AND b.way = 'written' LIMIT 1");
        return q.bind(":entity", visit).step();
    }

    /// One visit with everything around it; nothing where nothing of it is new.
    void visit(std::int64_t row, const Uid& id, std::string_view content)
    {
        const bool before = goneBefore(id);
        bool fresh = revisions(id);
        fresh |= events(id);
        fresh |= withdrawals(row);
        fresh |= photos(row);
        fresh |= samples(row);
        if (!fresh)
            return;
        m_going.corrections = (m_going.visits == 0 || m_going.corrections) && before;
        ++m_going.visits;
        visitNames(nounFrom<Visit>(content));
    }

    void visits()
    {
        Query q(m_core.db, "SELECT id, uid, content FROM visit WHERE head IS NOT NULL ORDER BY id");
        while (q.step())
            visit(q.integer(0), q.uid(1), q.view(2));
    }

    void decisions()
    {
        Query q(m_core.db, "SELECT decision.content, decision.uid, decision.line_chain, decision.line_number FROM decision ORDER BY decision.id");
        others(q, "decision");
        Query told(m_core.db, "SELECT told.content, visit.uid, told.line_chain, told.line_number FROM told JOIN visit ON visit.id = told.visit ORDER BY told.id");
        others(told, "told");
        Query decided(m_core.db, "SELECT DISTINCT visit.uid FROM decision JOIN visit ON visit.id = decision.visit");
        while (decided.step())
            events(decided.uid(0));
        Query by(m_core.db, "SELECT DISTINCT content ->> '$.by' FROM decision");
        while (by.step())
            revisions(Uid::parse(by.view(0)).value_or(Uid{}));
        if (m_wish.office) {
            keyNotes();
            Query erased(m_core.db, "SELECT content, entity, line_chain, line_number FROM erasure ORDER BY id");
            others(erased, "erasure");
        }
        Query in(m_core.db, "SELECT uid FROM bundle WHERE way = 'merged' ORDER BY id");
        while (in.step())
            m_going.acknowledges.push_back(in.uid(0));
    }

    void keyNotes()
    {
        Query q(m_core.db, "SELECT content, uid, line_chain, line_number FROM key_note ORDER BY id");
        others(q, "key-note");
    }

    void practice(GoingKind kind)
    {
        if (m_wish.personal && kind != GoingKind::decision)
            skills();
        Query back(m_core.db, "SELECT w.content, w.uid, w.line_chain, w.line_number FROM skill AS w LEFT JOIN skill AS s ON s.uid = w.withdraws "
                              "WHERE w.withdraws IS NOT NULL AND (:everybody OR w.content ->> '$.by' = :of) "
                              "AND (:all OR " NOT_ACKNOWLEDGED("w.line_chain", "w.line_number") ") "
                              "AND (EXISTS (SELECT 1 FROM bundle_line AS g WHERE g.chain = s.line_chain AND g.number = s.line_number) "
                              "OR EXISTS (SELECT 1 FROM bundle_line AS g WHERE g.chain = w.line_chain AND g.number = w.line_number)) ORDER BY w.id");
        back.bind(":everybody", m_wish.practiceOf.isNull()).bind(":of", m_wish.practiceOf.text()).bind(":all", m_all);
        m_going.practice |= others(back, "skill");
    }

    void skills()
    {
        Query q(m_core.db, "SELECT s.content, s.uid, s.line_chain, s.line_number, s.commitment, p.uid FROM skill AS s JOIN person AS p ON p.id = s.person "
                           "WHERE (:everybody OR p.uid = :of) AND NOT EXISTS (SELECT 1 FROM skill AS w WHERE w.withdraws = s.uid) "
                           "AND (:all OR " NOT_ACKNOWLEDGED("s.line_chain", "s.line_number") ") ORDER BY s.id");
        q.bind(":everybody", m_wish.practiceOf.isNull()).bind(":of", m_wish.practiceOf).bind(":all", m_all);
        while (q.step()) {
            revisions(q.uid(5));
            add({"skill", {}, {}, q.uid(1), {}, {}, q.integer(3), q.text(0), q.maybeDigest(4)}, q.integer(2));
            m_going.practice = true;
        }
    }

    void reference()
    {
        for (const char* table : {"site", "regime", "person"}) {
            Query q(m_core.db, std::string("SELECT uid FROM ") + table + " ORDER BY id");
            while (q.step())
                revisions(q.uid(0));
        }
        keyNotes();
        Query finds(m_core.db, "SELECT visit.uid, visit.content FROM find JOIN visit ON visit.id = find.visit ORDER BY visit.id");
        while (finds.step()) {
            revisions(finds.uid(0));
            events(finds.uid(0));
            visitNames(nounFrom<Visit>(finds.view(1)));
        }
        Query decided(m_core.db, "SELECT decision.content, decision.uid, decision.line_chain, decision.line_number FROM find "
                                 "JOIN decision ON decision.visit = find.visit ORDER BY decision.id");
        others(decided, "decision");
    }

    // ---------------------------------------------------------------- journal

    const Incarnation& incarnation(std::int64_t chain)
    {
        const auto known = m_incarnations.find(chain);
        if (known != m_incarnations.end())
            return known->second;
        Query q(m_core.db, "SELECT coalesce(piece.of, uid), device, begun_utc, begun_offset, why, (SELECT max(number) FROM journal WHERE chain = :id) "
                           "FROM incarnation LEFT JOIN piece ON piece.chain = incarnation.id WHERE incarnation.id = :id");
        q.bind(":id", chain).step();
        return m_incarnations.emplace(chain, Incarnation{q.uid(0), q.uid(1), q.instant(2, 3), q.text(4), q.integer(5), 1, false}).first->second;
    }

    /// Every line of the store's own chains beyond what an acknowledged bundle had, so that whoever takes it in can walk the chain.
    void wholeChains()
    {
        std::map<Uid, std::int64_t> had;
        Query known(m_core.db, "SELECT bundle.content FROM acknowledgement JOIN bundle ON bundle.id = acknowledgement.bundle");
        while (known.step())
            for (const BundleEnd& end : m_all ? std::vector<BundleEnd>() : bundleNoteFrom(known.view(0)).ends)
                had[end.incarnation] = std::max(had[end.incarnation], end.to);
        Query chains(m_core.db, "SELECT id FROM incarnation WHERE id NOT IN (SELECT chain FROM piece) ORDER BY id");
        while (chains.step()) {
            const std::int64_t chain = chains.integer(0);
            const Incarnation& one = incarnation(chain);
            for (std::int64_t number = had[one.id] + 1; number <= one.lines; ++number)
                m_lines.insert({chain, number});
        }
    }

    /// A number for each chain of which lines go, counted within its incarnation.
    int branchOf(std::int64_t chain)
    {
        const auto known = m_branches.find(chain);
        return known != m_branches.end() ? known->second : m_branches[chain] = m_counted[incarnation(chain).id]++;
    }

    Digest hashOf(std::int64_t chain, std::int64_t number)
    {
        Query q(m_core.db, "SELECT hash FROM journal WHERE chain = :chain AND number = :number");
        return q.bind(":chain", chain).bind(":number", number).step() ? q.digest(0) : Digest{};
    }

    Digest hashBefore(std::int64_t chain, std::int64_t number)
    {
        const ChainOwner owner = ownerOf(m_core, chain);
        return number == owner.first ? owner.before : hashOf(chain, number - 1);
    }

    void lines()
    {
        CarriedLine last;
        for (const CarriedLine& at : m_lines) {
            Query q(m_core.db, "SELECT at_utc, at_offset, author, kind, noun, entity, digest, commitment, hash FROM journal "
                               "WHERE chain = :chain AND number = :number");
            if (!q.bind(":chain", at.chain).bind(":number", at.number).step())
                throwFault("store.damaged", FaultKind::data, {{"file", m_core.info.path}, {"can", "restore-backup"}});
            const Incarnation& chain = incarnation(at.chain);
            GoingLine going{{chain.id, at.number, q.instant(0, 1), q.uid(2), q.text(3), q.text(4), q.uid(5), q.maybeDigest(6),
                             q.maybeDigest(7), q.digest(8)}, {}, branchOf(at.chain)};
            const bool follows = at.number == 1 || (last.chain == at.chain && last.number + 1 == at.number);
            if (!follows)
                going.before = hashBefore(at.chain, at.number);
            if (last.chain != at.chain)
                m_going.chains.push_back({chain, hashOf(at.chain, chain.lines), 0, branchOf(at.chain)});
            ++m_going.chains.back().going;
            if (m_take.line)
                taken(m_take.line(going));
            else
                m_going.lines.push_back(std::move(going));
            last = at;
        }
    }

    void personal()
    {
        for (const Digest& commitment : m_commitments) {
            Query q(m_core.db, "SELECT noun, entity, salt, payload FROM personal WHERE commitment = :commitment");
            if (!q.bind(":commitment", commitment).step())
                continue;
            m_going.personal.push_back({q.text(0), q.uid(1), commitment, q.maybeDigest(2), q.text(3)});
        }
        m_going.pictures.assign(m_pictures.begin(), m_pictures.end());
    }

    StoreCore& m_core;
    const GoingTake& m_take;
    GoingWish m_wish;
    bool m_all;
    bool m_mayNotDecide;                   // who may not decide for whom goes along
    Going m_going;
    std::set<Uid> m_entities;
    std::set<CarriedLine> m_lines;
    std::set<Digest> m_commitments;
    std::set<std::string> m_pictures;
    std::map<std::int64_t, Incarnation> m_incarnations;
    std::map<std::int64_t, int> m_branches;
    std::map<Uid, int> m_counted;
    std::set<Uid> m_visits;                // of which a revision goes, as the manifest counts them
    std::int64_t m_records = 0;
};

} // namespace

Result<Going> Outgoing::collect(GoingKind kind, const GoingWish& wish, const GoingTake& take)
{
    return guarded([&] { return Collector(m_core, kind, wish, take).take(kind); });
}

} // namespace cupule
