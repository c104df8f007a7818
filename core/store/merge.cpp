#include "core/store/merge.h"

#include <algorithm>
#include <iterator>

#include "core/base/read_ahead.h"
#include "core/record/decision.h"
#include "core/store/merge_nouns.h"
#include "core/store/noun_rows.h"
#include "core/store/practice.h"
#include "core/store/tree_rows.h"

namespace cupule {

namespace {

constexpr std::int64_t linesBetweenLooks = 1000;
constexpr std::size_t nounsAhead = 500;

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
        if (!runs.empty() && runs.back().chain == put.at.chain && runs.back().last + 1 == line.number && runs.back().fresh == put.fresh)
            runs.back().last = line.number;
        else
            runs.push_back({put.at.chain, line.number, line.number, put.fresh});
    });
}

const Merger::Run& Merger::runOf(const Uid& incarnation, int branch, std::int64_t number) const
{
    const auto runs = m_runs.find({incarnation, branch});
    if (runs != m_runs.end()) {
        const auto after = std::upper_bound(runs->second.begin(), runs->second.end(), number,
                                            [](std::int64_t n, const Run& run) { return n < run.first; });
        if (after != runs->second.begin() && number <= std::prev(after)->last)
            return *std::prev(after);
    }
    throwFault("merge.line", FaultKind::refused, {{"incarnation", incarnation.text()}, {"number", std::to_string(number)}});
}

Status Merger::record(GoingRecord record, int branch)
{
    return guarded([&] {
        const Run& run = runOf(record.incarnation, branch, record.number);
        const LineMark line{run.chain, record.number};
        if (record.type == "revision")
            return revision(record, line, run.fresh);
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

/// Counts it where the row that `q` found is the same revision; columns: uid, content, entity.
bool Merger::isKnown(const GoingRecord& record, const Query& q)
{
    const bool same = q.uid(0) == record.id && q.view(1) == record.content && q.uid(2) == record.entity;
    m_merged.known += same ? 1 : 0;
    return same;
}

/// A line may have come without its record before, and the other way round.
void Merger::revision(const GoingRecord& record, const LineMark& line, bool freshLine)
{
    if (!freshLine) {                      // most of what is known is found by its line, which is one row after the other
        Query at(m_core.db, "SELECT uid, content, entity FROM revision WHERE line_chain = :chain AND line_number = :number");
        if (at.bind(":chain", line.chain).bind(":number", line.number).step() && isKnown(record, at))
            return;
    }
    Query q(m_core.db, "INSERT INTO revision (uid, noun, entity, line_chain, line_number, content, commitment) "
                       "VALUES (:uid, :noun, :entity, :chain, :number, :content, :commitment) ON CONFLICT DO NOTHING");
    q.bind(":uid", record.id).bind(":noun", record.noun).bind(":entity", record.entity).bind(":chain", line.chain);
    q.bind(":number", line.number).bind(":content", record.content).bind(":commitment", record.commitment).run();
    if (m_core.db.changes() == 0) {
        Query known(m_core.db, "SELECT uid, content, entity FROM revision WHERE uid = :uid");
        if (known.bind(":uid", record.id).step() && isKnown(record, known))
            return;
        altered(record.noun, record.entity);
    }
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
            m_personal.insert({rankOf(personal.noun), personal.entity});
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

/// Personal data may come without the noun, whose row takes them up when it comes.
void Merger::addPersonal()
{
    for (const auto& named : m_personal) {
        Query any(m_core.db, "SELECT 1 FROM revision WHERE entity = :entity LIMIT 1");
        if (any.bind(":entity", named.second).step())
            m_touched.insert(named);
    }
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
        addPersonal();
        putAll(progress);
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

std::vector<Merger::Touched> Merger::nextTouched(Place& at)
{
    std::vector<Touched> next;
    for (; at != m_touched.end() && next.size() < nounsAhead; ++at) {
        std::string noun = nounOfRank(at->first);
        NounStands stands = standNow(m_core, noun, at->second);
        next.push_back({std::move(noun), at->second, std::move(stands), {}});
    }
    return next;
}

/// How a noun stands follows from its revisions alone, so that the next ones can be read beside those that are put.
void Merger::putAll(const Progress& progress)
{
    auto at = m_touched.cbegin();
    const auto read = [](Touched& each) { each.incoming = readNoun(each.noun, each.stands.content); };
    taken(useReadAhead([&] { return nextTouched(at); }, read, [&](Touched& each) {
        put(each);
        look(progress);
        return Status();
    }));
}

void Merger::put(Touched& touched)
{
    auto& [noun, entity, stands, incoming] = touched;
    const auto named = rowsNamed(m_core, incoming);
    if (!named) {
        Query q(m_core.db, "INSERT INTO waiting (entity, noun) VALUES (:entity, :noun)");
        q.bind(":entity", entity).bind(":noun", noun).run();
        return;
    }
    const RowBefore before = rowBefore(m_core, noun, entity);
    if (before.draft && before.content != stands.content)
        m_merged.keptDrafts.push_back(keepDraft(m_change, before.content));
    m_trees.insert(before.tree);
    if (before.there)                      // the tree of a new visit is counted once the visit is judged
        m_trees.insert(named->tree.value_or(0));
    putNoun(m_core, incoming, stands, *named, before.there);
    if (!before.there)
        findClash(m_core, incoming, m_merged.clashes);
    const auto* visit = std::get_if<Visit>(&incoming);
    MergedNoun& merged = m_merged.nouns.emplace_back();
    merged = {noun, entity, !before.there || before.draft, visit == nullptr ? Uid{} : visit->tree, stands.conflicts, {}, {}};
    if (!merged.made && before.content != stands.content && m_changesKept++ < mostChangesKept) {
        merged.before = before.content;
        merged.after = stands.content;
    }
}

} // namespace cupule
