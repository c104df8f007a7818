#include "core/store/merge.h"

#include <algorithm>
#include <iterator>

#include "core/record/decision.h"
#include "core/store/merge_nouns.h"
#include "core/store/noun_rows.h"
#include "core/store/practice.h"
#include "core/store/tree_rows.h"

namespace cupule {

namespace {

constexpr std::int64_t linesBetweenLooks = 1000;

[[noreturn]] void altered(std::string_view noun, const Uid& id)
{
    throwFault("merge.altered", FaultKind::refused, {{"noun", std::string(noun)}, {"id", id.text()}});
}

} // namespace

Status Merger::line(const Incarnation& incarnation, int branch, const JournalLine& line, const Digest& before)
{
    return guarded([&] {
        const auto put = m_pieces.put(incarnation, line, before);
        auto& runs = m_runs[{incarnation.id, branch}];
        if (!runs.empty() && runs.back().chain == put.at.chain && runs.back().last + 1 == line.number)
            runs.back().last = line.number;
        else
            runs.push_back({put.at.chain, line.number, line.number});
    });
}

LineMark Merger::markOf(const Uid& incarnation, int branch, std::int64_t number) const
{
    const auto runs = m_runs.find({incarnation, branch});
    if (runs != m_runs.end()) {
        const auto after = std::upper_bound(runs->second.begin(), runs->second.end(), number,
                                            [](std::int64_t n, const Run& run) { return n < run.first; });
        if (after != runs->second.begin() && number <= std::prev(after)->last)
            return {std::prev(after)->chain, number};
    }
    throwFault("merge.line", FaultKind::refused, {{"incarnation", incarnation.text()}, {"number", std::to_string(number)}});
}

Status Merger::record(GoingRecord record, int branch)
{
    return guarded([&] {
        const LineMark line = markOf(record.incarnation, branch, record.number);
        if (record.type == "revision")
            return revision(record, line);
        const auto here = otherHere(m_core, record, line);
        if (here && *here != record.content)
            altered(record.type, record.entity);
        (here ? m_merged.known : m_merged.fresh) += 1;
        if (here)
            return;
        m_merged.carried.push_back({line.chain, line.number});
        m_others.push_back({std::move(record.type), record.entity, std::move(record.content), line});
    });
}

void Merger::revision(const GoingRecord& record, const LineMark& line)
{
    Query known(m_core.db, "SELECT content, entity FROM revision WHERE uid = :uid");
    if (known.bind(":uid", record.id).step()) {
        if (known.view(0) != record.content || known.uid(1) != record.entity)
            altered(record.noun, record.entity);
        ++m_merged.known;
        return;
    }
    Query taken(m_core.db, "SELECT 1 FROM revision WHERE line_chain = :chain AND line_number = :number");
    if (taken.bind(":chain", line.chain).bind(":number", line.number).step())
        altered(record.noun, record.entity);
    Query q(m_core.db, "INSERT INTO revision (uid, noun, entity, line_chain, line_number, content, commitment) "
                       "VALUES (:uid, :noun, :entity, :chain, :number, :content, :commitment)");
    q.bind(":uid", record.id).bind(":noun", record.noun).bind(":entity", record.entity).bind(":chain", line.chain);
    q.bind(":number", line.number).bind(":content", record.content).bind(":commitment", record.commitment).run();
    for (const Uid& parent : record.parents) {
        Query p(m_core.db, "INSERT INTO revision_parent (child, parent) VALUES (:child, :parent)");
        p.bind(":child", record.id).bind(":parent", parent).run();
    }
    ++m_merged.fresh;
    m_merged.carried.push_back({line.chain, line.number});
    m_touched.insert({rankOf(record.noun), record.entity});
}

Status Merger::personal(const GoingPersonal& personal)
{
    return guarded([&] {
        Query known(m_core.db, "SELECT 1 FROM personal WHERE commitment = :commitment");
        if (known.bind(":commitment", personal.commitment).step())
            return;
        Query erased(m_core.db, "SELECT 1 FROM erasure WHERE entity = :entity AND instr(content, :commitment) > 0");
        const bool gone = erased.bind(":entity", personal.entity).bind(":commitment", hex(personal.commitment)).step();
        Query q(m_core.db, "INSERT INTO personal (noun, entity, salt, payload, commitment) "
                           "VALUES (:noun, :entity, :salt, :payload, :commitment)");
        q.bind(":noun", personal.noun).bind(":entity", personal.entity).bind(":commitment", personal.commitment);
        if (!gone && personal.salt)
            q.bind(":salt", personal.salt).bind(":payload", personal.payload);
        q.run();
        if (personal.noun != "skill")
            m_touched.insert({rankOf(personal.noun), personal.entity});
    });
}

void Merger::addWaiting()
{
    Query nouns(m_core.db, "SELECT noun, entity FROM waiting");
    while (nouns.step())
        m_touched.insert({rankOf(nouns.view(0)), nouns.uid(1)});
    Query records(m_core.db, "SELECT type, entity, content, line_chain, line_number FROM waiting_record");
    while (records.step())
        m_others.push_back({records.text(0), records.uid(1), records.text(2), {records.integer(3), records.integer(4)}});
    m_core.db.run("DELETE FROM waiting; DELETE FROM waiting_record");
}

void Merger::look(const Progress& progress)
{
    if (++m_done % linesBetweenLooks != 0)
        return;
    if (progress.cancelled())
        throwFault("job.cancelled", FaultKind::refused);
    progress.tell(m_done, static_cast<std::int64_t>(m_touched.size() + m_others.size()));
}

Result<Merged> Merger::finish(const Progress& progress)
{
    return guarded([&] {
        addWaiting();
        for (const auto& [rank, entity] : m_touched) {
            put(nounOfRank(rank), entity);
            look(progress);
        }
        for (const OtherRecord& other : m_others) {
            if (!putOther(m_core, other))
                keepWaiting(m_core, other);
            else if (other.type == "decision")
                m_decided.insert(nounFrom<Decision>(other.content).visit);
            m_merged.erased |= other.type == "erasure";
            look(progress);
        }
        followErasures();
        for (const std::int64_t tree : m_trees)
            recountTree(m_core, tree);
        m_merged.decided.assign(m_decided.begin(), m_decided.end());
        m_merged.waiting = m_core.db.number("SELECT (SELECT count(*) FROM waiting) + (SELECT count(*) FROM waiting_record)");
        return std::move(m_merged);
    });
}

/// Who practised is told by this store alone, and what is told of a person may come in after they were erased: neither is named in the
/// erasure that came in.
void Merger::followErasures()
{
    std::set<Uid> people = fillSkills(m_core);
    for (const OtherRecord& other : m_others)
        if (other.type == "erasure")
            people.insert(other.entity);
    for (const Uid& person : people) {
        Query order(m_core.db, "SELECT coalesce(content ->> '$.order', '') FROM erasure WHERE entity = :person ORDER BY id LIMIT 1");
        if (order.bind(":person", person).step())
            m_merged.erased |= erasePractice(m_core, person, order.text(0));
    }
}

void Merger::put(const std::string& noun, const Uid& entity)
{
    Query any(m_core.db, "SELECT 1 FROM revision WHERE entity = :entity LIMIT 1");
    if (!any.bind(":entity", entity).step())
        return;                                // personal data came without the noun, whose row takes them up when it comes
    const NounStands stands = standNow(m_core, noun, entity);
    MergingNoun incoming = readNoun(noun, stands.content);
    if (namesMissing(m_core, incoming)) {
        Query q(m_core.db, "INSERT INTO waiting (entity, noun) VALUES (:entity, :noun)");
        q.bind(":entity", entity).bind(":noun", noun).run();
        return;
    }
    const RowBefore before = rowBefore(m_core, noun, entity);
    if (before.draft && before.content != stands.content)
        m_merged.keptDrafts.push_back(keepDraft(m_change, before.content));
    m_trees.insert(before.tree);
    if (const auto* visit = std::get_if<Visit>(&incoming))
        m_trees.insert(m_core.treeRow(visit->tree));
    putNoun(m_core, incoming, stands);
    if (!before.there)
        findClash(m_core, incoming, m_merged.clashes);
    m_merged.nouns.push_back({noun, entity, !before.there || before.draft, stands.conflicts, {}, {}});
    MergedNoun& merged = m_merged.nouns.back();
    if (!merged.made && before.content != stands.content && m_changesKept++ < mostChangesKept) {
        merged.before = before.content;
        merged.after = stands.content;
    }
}

} // namespace cupule
