// Who may decide on which records, for many records at once: people and leaves are read once. Inside the task room only.

#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/store/visits.h"
#include "core/task/session.h"

namespace cupule {

class AuditGate {
public:
    static Result<AuditGate> of(Session& session);
    [[nodiscard]] const std::vector<Person>& people() const { return m_people; }
    /// Whether a verifier may decide on the record as it stands (rules/deciding.h), in the order of `verifiers`.
    Result<std::vector<bool>> may(const VisitRow& row, const std::vector<Uid>& verifiers);
    /// Nothing that still stands has been decided on it, and its newest revision is the only one.
    Result<bool> untouched(const VisitRow& row);
    /// Its newest revision is the only one: no changes of another device are joined with it.
    Result<bool> undivided(const VisitRow& row);

private:
    explicit AuditGate(Session& session) : m_session(session) {}
    Result<Uid> siteOf(const Uid& tree);

    Session& m_session;
    std::vector<Person> m_people;
    std::vector<Leave> m_leaves;
    std::map<Uid, Uid> m_sites;             // of trees
};

} // namespace cupule
