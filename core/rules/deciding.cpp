#include "core/rules/deciding.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace cupule {

std::set<Uid> everyEntryOf(const Uid& person, std::span<const Person> people)
{
    std::set<Uid> same{person};
    for (bool grown = true; grown;) {
        grown = false;
        for (const Person& known : people) {
            const bool linked = same.contains(known.id) ||
                                std::any_of(known.aliases.begin(), known.aliases.end(),
                                            [&](const Uid& alias) { return same.contains(alias); });
            if (!linked)
                continue;
            grown |= same.insert(known.id).second;
            for (const Uid& alias : known.aliases)
                if (!alias.isNull())
                    grown |= same.insert(alias).second;
        }
    }
    return same;
}

namespace {

using Uids = std::set<Uid>;

/// Everyone for whom one of `same` may not decide; the link holds either way.
Uids mayNotDecideFor(const Uids& same, std::span<const Person> people)
{
    Uids barred;
    for (const Person& person : people) {
        if (same.contains(person.id))
            barred.insert(person.notFor.begin(), person.notFor.end());
        else if (std::any_of(person.notFor.begin(), person.notFor.end(),
                             [&](const Uid& id) { return same.contains(id); }))
            barred.insert(person.id);
    }
    barred.erase(Uid{});
    return barred;
}

bool meet(const Uids& a, const Uids& b)
{
    return std::any_of(a.begin(), a.end(), [&](const Uid& id) { return b.contains(id); });
}

bool isJudgement(Outcome outcome)
{
    return outcome == Outcome::accept || outcome == Outcome::reject || outcome == Outcome::giveBack;
}

/// "decided-before" or "first-of-two" where this person has judged already, or empty.
/// A reopened record goes to somebody who has neither accepted nor rejected it.
std::string judgedBefore(const Uids& same, const Uid& revision, std::span<const Decision> earlier,
                         std::span<const Uid> audited)
{
    std::span<const Decision> standing = earlier;
    for (std::size_t i = earlier.size(); i > 0; --i) {
        if (earlier[i - 1].outcome != Outcome::reopen)
            continue;
        const auto before = earlier.first(i - 1);
        const bool settled = std::any_of(before.begin(), before.end(), [&](const Decision& d) {
            return same.contains(d.by) && (d.outcome == Outcome::accept || d.outcome == Outcome::reject);
        });
        const bool looked =
            std::any_of(audited.begin(), audited.end(), [&](const Uid& id) { return same.contains(id); });
        if (settled || looked)
            return "decided-before";
        standing = earlier.subspan(i);
        break;
    }
    bool mine = false, settles = true;
    for (const Decision& decision : standing) {
        if (decision.revision != revision || !isJudgement(decision.outcome))
            continue;
        mine |= same.contains(decision.by);
        settles &= same.contains(decision.by) && decision.outcome != Outcome::giveBack;
    }
    if (!mine)
        return {};
    return settles ? "first-of-two" : "decided-before";
}

std::string involved(const Visit& visit, const Uids& same, const DecidingContext& context)
{
    const auto isOne = [&](const Uid& id) { return !id.isNull() && same.contains(id); };
    if (isOne(visit.observer))
        return "observer";
    if (std::any_of(visit.companions.begin(), visit.companions.end(), isOne))
        return "companion";
    if (isOne(visit.trainer))
        return "trainer";
    if (std::any_of(context.landowners.begin(), context.landowners.end(), isOne))
        return "landowner";
    return {};
}

/// Everyone whose record this is or on whose ground it was made, with all their other entries.
Uids everyoneInvolved(const Visit& visit, const DecidingContext& context)
{
    Uids all;
    const auto add = [&](const Uid& id) {
        if (!id.isNull())
            all.merge(everyEntryOf(id, context.people));
    };
    add(visit.observer);
    std::for_each(visit.companions.begin(), visit.companions.end(), add);
    add(visit.trainer);
    std::for_each(context.landowners.begin(), context.landowners.end(), add);
    return all;
}

RecordState stateOf(Outcome outcome)
{
    switch (outcome) {
    case Outcome::accept:
        return RecordState::accepted;
    case Outcome::reject:
    case Outcome::withdraw:
        return RecordState::rejected;
    case Outcome::giveBack:
        return RecordState::returned;
    case Outcome::reopen:
        break;
    }
    return RecordState::submitted;
}

/// What each person said last, in the order in which they first spoke; nothing said before the last reopening
/// counts.
std::vector<Decision> standingVotes(std::span<const Decision> decisions, std::span<const Person> people)
{
    std::vector<Decision> votes;
    for (const Decision& decision : decisions) {
        if (decision.outcome == Outcome::reopen) {
            votes.clear();
            continue;
        }
        const Uids person = everyEntryOf(decision.by, people);
        const auto same = std::find_if(votes.begin(), votes.end(),
                                       [&](const Decision& d) { return person.contains(d.by); });
        if (same == votes.end())
            votes.push_back(decision);
        else
            *same = decision;
    }
    return votes;
}

/// How many people want each of accepted, rejected and returned.
struct Tally {
    std::array<int, 3> count{};
    void add(RecordState state) { ++count[index(state)]; }
    [[nodiscard]] int of(RecordState state) const { return count[index(state)]; }
    [[nodiscard]] int kinds() const
    {
        return static_cast<int>(std::count_if(count.begin(), count.end(), [](int n) { return n > 0; }));
    }
    /// The one that more people want than any other; nothing where two are level.
    [[nodiscard]] std::optional<RecordState> most() const
    {
        std::optional<RecordState> best;
        int bestCount = 0;
        for (const RecordState state :
             {RecordState::accepted, RecordState::rejected, RecordState::returned}) {
            if (of(state) > bestCount) {
                best = state;
                bestCount = of(state);
            } else if (of(state) == bestCount) {
                best.reset();
            }
        }
        return best;
    }

private:
    static std::size_t index(RecordState state)
    {
        return state == RecordState::accepted ? 0 : state == RecordState::rejected ? 1 : 2;
    }
};

} // namespace

std::string mayNotDecide(const Visit& visit, const Uid& by, const Uid& revision,
                         const DecidingContext& context)
{
    if (by.isNull() ||
        std::find(context.roles.begin(), context.roles.end(), Role::verifier) == context.roles.end())
        return "no-role";
    const Uids same = everyEntryOf(by, context.people);
    if (std::string why = involved(visit, same, context); !why.empty())
        return why;
    if (meet(mayNotDecideFor(same, context.people), everyoneInvolved(visit, context)))
        return "may-not-decide-for";
    return judgedBefore(same, revision, context.earlier, context.audited);
}

std::string mayNotAudit(const Uid& maker, const Uid& auditor, std::span<const Person> people)
{
    const Uids makers = everyEntryOf(maker, people), auditors = everyEntryOf(auditor, people);
    if (meet(makers, auditors))
        return "same-person";
    return meet(mayNotDecideFor(auditors, people), makers) ? "may-not-decide-for" : "";
}

std::vector<Decision> inOrder(std::vector<Decision> decisions)
{
    std::sort(decisions.begin(), decisions.end(), [](const Decision& a, const Decision& b) {
        const bool first = a.outcome == Outcome::reopen, second = b.outcome == Outcome::reopen;
        return std::tuple(!first, a.id) < std::tuple(!second, b.id);
    });
    Uids left;
    for (const Decision& decision : decisions)
        left.insert(decision.id);
    std::vector<Decision> ordered;
    while (!decisions.empty()) {
        const auto waits = [&](const Decision& decision) {
            return std::any_of(decision.after.begin(), decision.after.end(), [&](const Uid& known) { return left.contains(known); });
        };
        auto next = std::find_if_not(decisions.begin(), decisions.end(), waits);
        if (next == decisions.end())           // a ring can only be forged; it must not hang
            next = decisions.begin();
        left.erase(next->id);
        ordered.push_back(std::move(*next));
        decisions.erase(next);
    }
    return ordered;
}

DecidedState stateAfter(std::span<const Decision> decisions, bool newGround, std::span<const Person> people)
{
    const std::vector<Decision> votes = standingVotes(decisions, people);
    if (votes.empty())
        return {};
    Tally tally;
    for (const Decision& vote : votes)
        tally.add(stateOf(vote.outcome));
    if (tally.kinds() == 1) {
        const RecordState state = stateOf(votes.back().outcome);
        const bool event = votes.front().outcome == Outcome::withdraw;
        if (newGround && votes.size() == 1 && state != RecordState::returned && !event)
            return {RecordState::submitted, true, false};
        return {state, false, false};
    }
    std::optional<RecordState> settled = tally.most();
    if (!settled && votes.size() == 3)
        settled = stateOf(votes.back().outcome);
    const bool tooFew = newGround && settled == RecordState::accepted && tally.of(RecordState::accepted) < 2;
    if (!settled || tooFew)
        return {RecordState::submitted, false, true};
    return {*settled, false, false};
}

bool newGround(const GroundContext& context, const Pack& pack)
{
    const double limit = pack.settings.newGroundKilometres * 1000;
    const bool near = context.nearestFindMetres && *context.nearestFindMetres <= limit;
    return !context.findInSameSquare && !near;
}

QueuePlace settledPlace()
{
    return {99, "decided"};
}

QueuePlace routinePlace(BatchPlace batch)
{
    switch (batch) {
    case BatchPlace::waits:
        return {9, "in-batch"};
    case BatchPlace::failed:
        return {6, "batch-failed"};
    case BatchPlace::none:
        break;
    }
    return {8, "routine-null"};
}

QueuePlace queuePlace(const QueueInput& input)
{
    if (input.state != RecordState::submitted)
        return settledPlace();
    const bool positive = input.positive.positive;
    if (positive && input.newGround && !input.conflict)
        return input.oneOfTwo ? QueuePlace{1, "one-of-two"} : QueuePlace{0, "new-ground"};
    if (positive && input.newGround)
        return {2, "conflict"};
    if (input.oneOfTwo)
        return {1, "one-of-two"};
    if (input.conflict)
        return {4, "conflict"};
    if (positive)
        return {3, "positive"};
    if (input.fieldsApart)
        return {4, "fields-apart"};
    if (input.returnedBefore)
        return {5, "answered"};
    if (!input.nothing)
        return {7, "other"};
    const bool doubtful = input.asks > 0 || input.worth == '0';
    return doubtful ? QueuePlace{6, "doubtful-null"} : routinePlace(input.batch);
}

} // namespace cupule
