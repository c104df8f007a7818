#include "core/task/audit_gate.h"

#include "core/store/audits.h"
#include "core/store/decisions.h"
#include "core/store/leaves.h"
#include "core/store/people.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/task/deciding.h"
#include "core/task/lines.h"

namespace cupule {

Result<AuditGate> AuditGate::of(Session& session)
{
    AuditGate gate(session);
    auto people = session.store().people().all();
    if (!people)
        return fail(people.error());
    auto leaves = session.store().leaves().all();
    if (!leaves)
        return fail(leaves.error());
    gate.m_people = std::move(*people);
    gate.m_leaves = std::move(*leaves);
    return gate;
}

Result<Uid> AuditGate::siteOf(const Uid& tree)
{
    const auto known = m_sites.find(tree);
    if (known != m_sites.end())
        return known->second;
    const auto found = keptTree(m_session, tree);
    if (!found)
        return fail(found.error());
    return m_sites[tree] = *found ? (*found)->site : Uid{};
}

Result<std::vector<bool>> AuditGate::may(const VisitRow& row, const std::vector<Uid>& verifiers)
{
    const auto visit = m_session.store().visits().find(row.id);
    if (!visit)
        return fail(visit.error());
    const auto decisions = m_session.store().decisions().ofVisit(row.id);
    if (!decisions)
        return fail(decisions.error());
    const auto site = siteOf(row.tree);
    if (!site)
        return fail(site.error());
    const auto earlier = standingDecisions(*decisions);
    DecidingContext context;
    context.people = m_people;
    context.earlier = earlier;
    context.landowners = landownersAt(*site, m_leaves, m_people);
    context.roles = {Role::verifier};
    std::vector<bool> answers;
    for (const Uid& verifier : verifiers)
        answers.push_back(*visit && mayNotDecide(**visit, verifier, row.standing.head, context).empty());
    return answers;
}

Result<bool> AuditGate::untouched(const VisitRow& row)
{
    const auto decisions = m_session.store().decisions().ofVisit(row.id);
    if (!decisions)
        return fail(decisions.error());
    const auto whole = undivided(row);
    if (!whole)
        return whole;
    return *whole && standingDecisions(*decisions).empty();
}

Result<bool> AuditGate::undivided(const VisitRow& row)
{
    const auto heads = m_session.store().revisions().heads(row.id);
    if (!heads)
        return fail(heads.error());
    return heads->size() == 1;
}

} // namespace cupule
