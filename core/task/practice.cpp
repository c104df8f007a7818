#include "core/task/practice.h"

#include <algorithm>

#include "core/store/people.h"
#include "core/store/practice.h"
#include "core/task/day.h"

namespace cupule {

namespace {

constexpr std::int64_t seeds = 1LL << 48;
constexpr int firstStep = 2;
constexpr int seriesStep = 3;
constexpr int mostCases = 10'000;

CasePlace placeOf(const PracticePlan& plan)
{
    return {plan.region, plan.month, plan.year};
}

std::set<AskedKind> kindsOf(const PracticePlan& plan)
{
    std::set<AskedKind> kinds;
    for (const std::string& name : plan.kinds)
        if (const auto kind = askedNamed(name))
            kinds.insert(*kind);
    return kinds;
}

std::vector<Topic> topicsFor(const Pack& pack, const PracticePlan& plan)
{
    auto topics = topicsOf(pack, placeOf(plan));
    const auto kinds = kindsOf(plan);
    if (!kinds.empty())
        std::erase_if(topics, [&](const Topic& topic) { return !kinds.contains(topic.kind); });
    if (!plan.topics.empty())
        std::erase_if(topics, [&](const Topic& topic) {
            return std::ranges::none_of(plan.topics, [&](const PracticeTopic& wanted) {
                return wanted.kind == askedName(topic.kind) && (wanted.subject.empty() || wanted.subject == topic.subject);
            });
        });
    return topics;
}

Status fits(const PracticeWish& wish)
{
    const auto refuse = [](const char* code, int least, int most, int value) {
        return fail(code, FaultKind::usage, {{"least", std::to_string(least)}, {"most", std::to_string(most)}, {"value", std::to_string(value)}});
    };
    if (wish.step < 0 || wish.step > static_cast<int>(difficultySteps().size()))
        return refuse("practice.step", 0, static_cast<int>(difficultySteps().size()), wish.step);
    if (wish.month < 0 || wish.month > 12)
        return refuse("practice.month", 0, 12, wish.month);
    if (wish.cases < 0 || wish.cases > mostCases)
        return refuse("practice.cases", 0, mostCases, wish.cases);
    return {};
}

PracticePlan planOf(Session& session, const PracticeWish& wish)
{
    PracticePlan plan;
    plan.cases = wish.cases;
    plan.feedbackAtEnd = wish.feedbackAtEnd;
    for (const AskedKind kind : wish.kinds)
        plan.kinds.emplace_back(askedName(kind));
    std::ranges::sort(plan.kinds);
    plan.month = wish.month;
    plan.protocol = session.pack().id;
    plan.protocolVersion = session.pack().version;
    plan.region = session.info().region;
    plan.seed = wish.seed ? *wish.seed & (seeds - 1) : static_cast<std::int64_t>(session.random().below(seeds));
    plan.series = wish.series;
    plan.step = wish.step;
    for (const Topic& topic : wish.topics)
        plan.topics.push_back({std::string(askedName(topic.kind)), topic.subject});
    plan.year = session.today().year();
    return plan;
}

/// Whose answers they are; null where nobody is named.
Result<Uid> whose(Session& session, const PracticeWish& wish)
{
    if (!wish.named)
        return Uid{};
    if (!wish.person || *wish.person == session.me())
        return session.me();
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return fail(may.error());
    const auto found = session.store().people().find(*wish.person);
    if (!found)
        return fail(found.error());
    if (!*found)
        return fail("person.unknown", FaultKind::usage, {{"id", wish.person->text()}});
    return *wish.person;
}

std::vector<GivenCase> givenOf(const std::vector<PracticeAnswer>& answers)
{
    std::vector<GivenCase> given;
    for (const PracticeAnswer& answer : answers) {
        GivenCase one{answer.number, answer.step, {}};
        for (const PracticeItem& item : answer.items)
            if (auto known = answeredItem(item))
                one.items.push_back(std::move(*known));
        given.push_back(std::move(one));
    }
    return given;
}

} // namespace

PracticeItem storedItem(const AnsweredItem& item)
{
    return {item.given, std::string(askedName(item.kind)), item.subject, item.sure, item.truth};
}

std::optional<AnsweredItem> answeredItem(const PracticeItem& item)
{
    const auto kind = askedNamed(item.kind);
    return kind ? std::optional(AnsweredItem{*kind, item.subject, item.truth, item.given, item.sure}) : std::nullopt;
}

Result<PracticeRound> beginPractice(Session& session, const PracticeWish& wish)
{
    if (auto good = fits(wish); !good)
        return fail(good.error());
    const auto person = whose(session, wish);
    if (!person)
        return fail(person.error());
    PracticeRound round;
    round.person = *person;
    round.session = {{}, wish.cohort, session.ids().make(), planOf(session, wish)};
    round.topics = topicsFor(session.pack(), round.session.plan);
    if (round.topics.empty())
        return fail("practice.topics", FaultKind::usage, {{"region", round.session.plan.region}, {"month", std::to_string(wish.month)}});
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    round.session.begun = change->at();
    if (auto kept = session.store().practice().begin(*change, round.session, round.person); !kept)
        return fail(kept.error());
    if (auto committed = session.commit(*change); !committed)
        return fail(committed.error());
    return round;
}

Result<PracticeRound> openPractice(Session& session, const Uid& practice)
{
    auto stored = session.store().practice().find(practice);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("practice.unknown", FaultKind::usage, {{"id", practice.text()}});
    const auto answers = session.store().practice().answers(practice);
    if (!answers)
        return fail(answers.error());
    PracticeRound round{std::move((*stored)->session), (*stored)->person, {}, givenOf(*answers)};
    if (round.session.plan.protocol != session.pack().id)
        return fail("practice.pack", FaultKind::refused, {{"protocol", round.session.plan.protocol}});
    round.topics = topicsFor(session.pack(), round.session.plan);
    return round;
}

std::optional<PracticeCase> nextCase(Session& session, const PracticeRound& round)
{
    const PracticePlan& plan = round.session.plan;
    if (round.done())
        return std::nullopt;
    const auto seed = static_cast<std::uint64_t>(plan.seed);
    const int number = round.nextNumber();
    const auto order = plan.series ? seriesOrder(round.topics, number, seed) : dueOrder(boxesAfter(round.topics, round.given), number, seed);
    const int follows = plan.series ? seriesStep : stepAfter(round.given, firstStep);
    for (const Topic& topic : order)
        if (auto made = makeCase(session.pack(), {seed, number, topic, plan.step > 0 ? plan.step : follows, placeOf(plan), kindsOf(plan)}))
            return made;
    return std::nullopt;
}

Status answerCase(Session& session, PracticeRound& round, const PracticeCase& practice, const std::vector<AnsweredItem>& answers, int seconds)
{
    return keepAnswers(session, round, practice, practice.id(), answers, seconds);
}

Status keepAnswers(Session& session, PracticeRound& round, const PracticeCase& practice, const std::string& caseId,
                   const std::vector<AnsweredItem>& answers, int seconds)
{
    if (answers.size() != practice.asked.size())
        return fail("practice.answers", FaultKind::usage, {{"given", std::to_string(answers.size())}, {"asked", std::to_string(practice.asked.size())}});
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    PracticeAnswer answer{change->at(), caseId, {}, practice.number, std::max(0, seconds), round.session.id, practice.step,
                          std::string(askedName(practice.topic.kind)), practice.topic.subject};
    for (const AnsweredItem& item : answers)
        answer.items.push_back(storedItem(item));
    if (auto kept = session.store().practice().answer(*change, answer); !kept) {
        if (kept.error().argument("constraint") == "practice_answer_session_unique")
            return fail("practice.answered", FaultKind::refused, {{"number", std::to_string(practice.number)}});
        return kept;
    }
    if (auto committed = session.commit(*change); !committed)
        return committed;
    round.given.push_back({practice.number, practice.step, answers});
    return {};
}

Result<std::vector<PracticeLine>> practiceLines(Session& session)
{
    const bool all = session.needOneOf({Role::trainer, Role::office}).has_value();
    const auto stored = session.store().practice().sessions(all ? Uid{} : session.me());
    if (!stored)
        return fail(stored.error());
    const auto people = session.store().people().all();
    if (!people)
        return fail(people.error());
    std::vector<PracticeLine> lines;
    for (const StoredPractice& each : *stored) {
        const auto person = std::ranges::find(*people, each.person, &Person::id);
        lines.push_back({each.session.id, each.session.cohort, person == people->end() ? std::string() : person->code, each.session.begun, each.cases,
                         each.session.plan.cases, each.session.plan.series, each.person == session.me()});
    }
    return lines;
}

Result<std::vector<std::string>> practiceCohorts(Session& session)
{
    return session.store().practice().cohorts();
}

Result<Uid> recruit(Session& session, const std::string& code, const std::string& name)
{
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return fail(may.error());
    const auto found = session.store().people().byCode(code);
    if (!found)
        return fail(found.error());
    if (*found)
        return (*found)->id;
    const auto made = newPerson(session, {{}, code, name.empty() ? code : name, {}, {}, {}});
    if (!made)
        return fail(made.error());
    return made->id;
}

} // namespace cupule
