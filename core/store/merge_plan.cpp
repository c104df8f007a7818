#include "core/store/merge_plan.h"

#include <algorithm>
#include <optional>

#include "core/store/sample_key.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

/// The content that this store has under the same id, or on the same line where the record has no id of its own.
std::optional<std::string> contentHere(StoreCore& core, const GoingRecord& record)
{
    const auto one = [&](const std::string& sql) -> std::optional<std::string> {
        Query q(core.db, sql);
        q.bind(":id", record.id.isNull() ? record.entity : record.id);
        return q.step() ? std::optional(q.text(0)) : std::nullopt;
    };
    if (record.type == "revision")
        return one("SELECT content FROM revision WHERE uid = :id");
    if (record.type == "decision" || record.type == "custody")
        return one("SELECT content FROM " + record.type + " WHERE uid = :id");
    if (record.type == "key-note")
        return one("SELECT content FROM key_note WHERE uid = :id");
    Query q(core.db, "SELECT t.content FROM " + record.type + " AS t JOIN incarnation AS i ON i.id = t.line_chain "
                     "WHERE i.uid = :incarnation AND t.line_number = :number");
    q.bind(":incarnation", record.incarnation).bind(":number", record.number);
    return q.step() ? std::optional(q.text(0)) : std::nullopt;
}

std::vector<GraphRevision> revisionsHere(StoreCore& core, const Uid& entity)
{
    std::vector<GraphRevision> revisions;
    Query q(core.db, "SELECT uid, content FROM revision WHERE entity = :entity ORDER BY id");
    q.bind(":entity", entity);
    while (q.step()) {
        GraphRevision revision{q.uid(0), {}, q.text(1)};
        Query parents(core.db, "SELECT parent FROM revision_parent WHERE child = :child ORDER BY parent");
        parents.bind(":child", revision.id);
        while (parents.step())
            revision.parents.push_back(parents.uid(0));
        revisions.push_back(std::move(revision));
    }
    return revisions;
}

/// Somebody else here who has the value that must be one noun's alone.
void findClash(StoreCore& core, const PlannedNoun& planned, std::vector<PlannedClash>& clashes)
{
    std::string value;
    Uid other;
    if (planned.noun == "person") {
        value = nounFrom<Person>(planned.joined.content).code;
        Query q(core.db, "SELECT uid FROM person WHERE code = :value AND code <> '' AND uid <> :uid");
        other = q.bind(":value", value).bind(":uid", planned.entity).step() ? q.uid(0) : Uid{};
    } else if (planned.noun == "sample") {
        value = nounFrom<Sample>(planned.joined.content).number;
        Query q(core.db, "SELECT uid FROM sample WHERE number_key = :value AND uid <> :uid");
        other = q.bind(":value", sampleKey(value)).bind(":uid", planned.entity).step() ? q.uid(0) : Uid{};
    }
    if (!other.isNull())
        clashes.push_back({planned.noun, value, other, planned.entity});
}

} // namespace

std::int64_t MergePlan::conflicts() const
{
    std::int64_t all = 0;
    for (const PlannedNoun& planned : nouns)
        all += static_cast<std::int64_t>(planned.joined.conflicts.size());
    return all;
}

Status MergePlanner::add(const GoingRecord& record)
{
    return guarded([&] {
        const auto here = contentHere(m_core, record);
        if (here && *here != record.content)
            throwFault("merge.altered", FaultKind::refused,
                       {{"noun", record.noun.empty() ? record.type : record.noun}, {"id", record.entity.text()}});
        (here ? m_known : m_fresh) += 1;
        if (here || record.type != "revision")
            return;
        Arriving& arriving = m_arriving[record.entity];
        arriving.noun = record.noun;
        arriving.revisions.push_back({record.id, record.parents, record.content});
    });
}

Result<MergePlan> MergePlanner::plan()
{
    return guarded([&] {
        MergePlan plan{m_fresh, m_known, {}, {}};
        for (const auto& [entity, arriving] : m_arriving) {
            auto revisions = revisionsHere(m_core, entity);
            PlannedNoun planned{arriving.noun, entity, revisions.empty(), static_cast<std::int64_t>(arriving.revisions.size()), {}};
            revisions.insert(revisions.end(), arriving.revisions.begin(), arriving.revisions.end());
            planned.joined = taken(joinRevisions(revisions));
            findClash(m_core, planned, plan.clashes);
            plan.nouns.push_back(std::move(planned));
        }
        std::stable_sort(plan.nouns.begin(), plan.nouns.end(),
                         [](const PlannedNoun& a, const PlannedNoun& b) { return a.noun < b.noun; });
        return plan;
    });
}

} // namespace cupule
