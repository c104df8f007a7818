// A vale with handed-in "nothing seen" visits and three verifiers: V1 makes batches, V2 looks, V3 has decided before.

#pragma once

#include <functional>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "core/task/audit.h"
#include "core/task/review.h"
#include "tests/task/vale.h"

namespace cupule::test {

class AuditScene : public Vale {
public:
    std::unique_ptr<Session> maker = present("V1"), auditor = present("V2"), other = present("V3");
    std::set<Uid> known;                    ///< visits that V3 has decided
    std::set<Uid> rejected;                 ///< of these

    /// Somebody whom the store knows.
    std::unique_ptr<Session> present(const std::string& code)
    {
        auto session = as(code);
        auto change = session->begin().value();
        done(session->commit(change));
        return session;
    }

    /// Visits to trees of their own, handed in by somebody on 11 June.
    std::vector<Uid> visits(int count, const std::string& who = "MH", const std::function<void(Visit&)>& adapt = {})
    {
        const auto session = as(who);
        std::vector<Uid> made;
        for (int i = 0; i < count; ++i) {
            const Tree tree = treeAt(*session, "T" + std::to_string(++m_trees), "SO 612 094");
            made.push_back(visitTo(*session, tree, [&](Session& s, const Visit& begun) {
                               Visit filled = withNothing(s, begun);
                               if (adapt)
                                   adapt(filled);
                               return filled;
                           }).id);
        }
        const HandInPage page = handIn(*session, day(2026, 6, 11), session->me()).value();
        if (static_cast<int>(page.goes.size()) < count)
            throw std::logic_error("some visits were not handed in");
        return made;
    }

    /// Decided by V3 one by one.
    void decided(int accepts, int rejects)
    {
        const auto of = visits(accepts + rejects);
        for (std::size_t i = 0; i < of.size(); ++i) {
            const bool yes = static_cast<int>(i) < accepts;
            const auto wanted = yes ? decision(*other, of[i], Outcome::accept)
                                    : decision(*other, of[i], Outcome::reject, {"other-kind-of-tree"});
            decide(*other, wanted).value();
            known.insert(of[i]);
            if (!yes)
                rejected.insert(of[i]);
        }
    }

    AuditWanted wanted(double confidence = 0.95, double tolerable = 0.1) const
    {
        AuditWanted batch;
        batch.confidence = confidence;
        batch.tolerable = tolerable;
        batch.auditor = auditor->me();
        return batch;
    }

    /// Answers to the end of the round; `answer` says what is answered on a visit. Gives the visits in the order shown.
    std::vector<Uid> answerAll(const Uid& audit, const std::function<Outcome(const Uid&)>& answer)
    {
        std::vector<Uid> shown;
        for (auto next = nextToAudit(*auditor, audit).value(); next; next = nextToAudit(*auditor, audit).value()) {
            AuditAnswer said;
            said.visit = next->page.visit.id;
            said.outcome = answer(said.visit);
            if (said.outcome != Outcome::accept)
                said.reasons = {said.outcome == Outcome::reject ? "other-kind-of-tree" : "tree-not-shown"};
            done(answerAudit(*auditor, audit, said));
            shown.push_back(said.visit);
        }
        return shown;
    }
    /// The auditor sees what is wrong with the known ones, and nothing wrong with the drawn ones.
    std::vector<Uid> answerAllWell(const Uid& audit)
    {
        return answerAll(audit, [&](const Uid& visit) { return rejected.contains(visit) ? Outcome::reject : Outcome::accept; });
    }

private:
    int m_trees = 0;
};

} // namespace cupule::test
