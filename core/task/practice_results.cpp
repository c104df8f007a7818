#include "core/task/practice_results.h"

#include <algorithm>
#include <map>
#include <span>
#include <string_view>
#include <unordered_map>

#include "core/base/text.h"
#include "core/store/people.h"
#include "core/store/practice.h"
#include "core/store/settings.h"
#include "core/task/change_settings.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

constexpr const char* rulesKey = "practice/rules";
constexpr std::size_t fewestRaters = 2;

bool isShare(double value)
{
    return value > 0 && value < 1;
}

bool holds(const PracticeRules& rules)
{
    return isShare(rules.limits.sensitivity) && isShare(rules.limits.specificity) && isShare(rules.prevalence);
}

ResultsRequest requestOf(const Pack& pack, const PracticeRules& rules)
{
    ResultsRequest request{rules.prevalence, rules.limits, {}};
    for (const Sign& sign : pack.signs)
        if (sign.group == SignGroup::gall)
            request.gallLines.push_back(sign.id);
    return request;
}

/// The same answers to the same question together, in the order in which they are first met.
std::vector<Tally> talliesOf(std::span<const PracticeCount> counts)
{
    std::vector<Tally> tallies;
    std::unordered_map<std::string, std::size_t> places;
    std::string key;
    for (const PracticeCount& count : counts) {
        const auto kind = askedNamed(count.kind);
        if (!kind)
            continue;
        key.clear();
        for (const std::string* part : {&count.kind, &count.subject, &count.truth, &count.given})
            (key += *part) += '\n';
        const auto [at, fresh] = places.try_emplace(key, tallies.size());
        if (fresh)
            tallies.push_back({*kind, count.subject, count.truth, count.given, 0});
        tallies[at->second].count += count.count;
    }
    return tallies;
}

std::vector<SureTally> sureOf(const std::vector<PracticeSureCount>& counts)
{
    std::vector<SureTally> sure;
    for (const PracticeSureCount& count : counts)
        sure.push_back({count.sure, count.right, count.total});
    return sure;
}

Result<ResultsRequest> requestFor(Session& session, const ResultsWish& wish)
{
    if (wish.rules)
        return requestOf(session.pack(), *wish.rules);
    const auto rules = practiceRules(session);
    if (!rules)
        return fail(rules.error());
    return requestOf(session.pack(), *rules);
}

void fillShort(RecruitResults& recruit, const std::vector<Tally>& tallies, const ResultsRequest& request)
{
    recruit.hosts = resultOf(tallies, AskedKind::host, {}, request);
    if (!recruit.results.groups.empty())
        recruit.galls = recruit.results.groups.front();
    recruit.next = practiseNext(tallies, nextShown);
}

/// The nth run of everybody together.
std::vector<CurvePoint> curveOfRuns(const std::map<Uid, std::vector<bool>>& people)
{
    std::vector<std::pair<std::int64_t, std::int64_t>> runs;   // right, all
    for (const auto& [person, right] : people)
        for (std::size_t i = 0; i < right.size(); ++i) {
            const std::size_t run = i / static_cast<std::size_t>(curveRun);
            if (runs.size() <= run)
                runs.emplace_back(0, 0);
            runs[run].first += right[i] ? 1 : 0;
            ++runs[run].second;
        }
    std::vector<CurvePoint> curve;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        const auto& [hits, all] = runs[i];
        const auto from = static_cast<std::int64_t>(i) * curveRun;
        curve.push_back({from + 1, from + curveRun, {static_cast<double>(hits) / static_cast<double>(all), wilson(hits, all)}});
    }
    return curve;
}

/// A row of counts for each question that everybody in the series answered.
void addAgreement(const std::vector<SeriesAnswer>& answers, CohortResults& cohort)
{
    std::map<Uid, std::size_t> raters;
    std::map<std::string, std::size_t> given;
    std::map<std::string, std::vector<std::string>> questions;
    for (const SeriesAnswer& answer : answers) {
        raters.emplace(answer.session, 0);
        given.emplace(answer.given, 0);
        questions[answer.caseId + '\n' + answer.kind + '\n' + answer.subject].push_back(answer.given);
    }
    std::size_t place = 0;
    for (auto& [answer, at] : given)
        at = place++;
    AnswerTable table;
    for (const auto& [question, said] : questions) {
        if (said.size() != raters.size())
            continue;
        table.emplace_back(given.size());
        for (const std::string& each : said)
            ++table.back()[given[each]];
    }
    cohort.agreementPeople = static_cast<std::int64_t>(raters.size());
    cohort.agreementQuestions = static_cast<std::int64_t>(table.size());
    if (raters.size() >= fewestRaters)
        cohort.agreement = agreementOfMany(table);
}

struct Counted {
    std::vector<PracticeCount> answers;
    std::vector<PracticeSureCount> sure;
};

Result<Counted> countedFor(Session& session, const PracticeFilter& filter)
{
    auto answers = session.store().practice().counts(filter);
    if (!answers)
        return fail(answers.error());
    auto sure = session.store().practice().sureCounts(filter);
    if (!sure)
        return fail(sure.error());
    return Counted{std::move(*answers), std::move(*sure)};
}

void addHits(std::vector<bool>& right, std::string_view hits)
{
    for (const char hit : hits)
        right.push_back(hit == '1');
}

/// Codes and names, or an order that says nothing.
Status nameRecruits(Session& session, std::vector<RecruitResults>& recruits, bool names)
{
    if (!names) {
        const auto shuffled = [&](const RecruitResults& recruit) { return sha256(session.info().id.text() + recruit.person.text()); };
        std::ranges::sort(recruits, {}, shuffled);
        for (RecruitResults& recruit : recruits)
            recruit.person = {};
        return {};
    }
    const auto people = session.store().people().all();
    if (!people)
        return fail(people.error());
    for (RecruitResults& recruit : recruits)
        if (const auto person = std::ranges::find(*people, recruit.person, &Person::id); person != people->end()) {
            recruit.code = person->code;
            recruit.name = ownSight(session).people ? person->name : std::string();
        }
    std::ranges::stable_sort(recruits, {}, &RecruitResults::code);
    return {};
}

} // namespace

Result<PracticeRules> practiceRules(Session& session)
{
    const auto text = session.store().settings().get(rulesKey);
    if (!text)
        return fail(text.error());
    PracticeRules rules;
    const auto parts = split(text->value_or(std::string()), ' ');
    if (parts.size() != 3)
        return rules;
    const auto sensitivity = parseNumber(parts[0]), specificity = parseNumber(parts[1]), prevalence = parseNumber(parts[2]);
    if (!sensitivity || !specificity || !prevalence)
        return rules;
    const PracticeRules read{{*sensitivity, *specificity}, *prevalence};
    return holds(read) ? read : rules;
}

Status setPracticeRules(Session& session, const PracticeRules& rules, const std::string& what)
{
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return may;
    if (!holds(rules))
        return fail("practice.rules", FaultKind::usage);
    const std::string text = numberText(rules.limits.sensitivity) + ' ' + numberText(rules.limits.specificity) + ' ' + numberText(rules.prevalence);
    return changeSettings(session, {{rulesKey, text}}, what);
}

Result<RecruitResults> recruitResults(Session& session, const Uid& person, const ResultsWish& wish)
{
    if (person != session.me())
        if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
            return fail(may.error());
    const auto request = requestFor(session, wish);
    if (!request)
        return fail(request.error());
    auto practice = session.store().practice();
    const PracticeFilter filter{person, wish.cohort, {}};
    const auto counted = countedFor(session, filter);
    if (!counted)
        return fail(counted.error());
    std::vector<bool> right;
    if (auto read = practice.inOrder(filter, [&](const Uid&, std::string_view hits) { addHits(right, hits); }); !read)
        return fail(read.error());
    const auto tallies = talliesOf(counted->answers);
    RecruitResults recruit;
    recruit.person = person;
    recruit.results = practiceResults(tallies, sureOf(counted->sure), *request);
    recruit.results.curve = learningCurve(right, curveRun);
    fillShort(recruit, tallies, *request);
    std::vector<RecruitResults> one{std::move(recruit)};
    if (auto named = nameRecruits(session, one, wish.names); !named)
        return fail(named.error());
    return std::move(one.front());
}

Result<CohortResults> cohortResults(Session& session, const ResultsWish& wish)
{
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return fail(may.error());
    const auto request = requestFor(session, wish);
    if (!request)
        return fail(request.error());
    auto practice = session.store().practice();
    const PracticeFilter filter{{}, wish.cohort, {}};
    const auto counted = countedFor(session, filter);
    if (!counted)
        return fail(counted.error());
    std::map<Uid, std::vector<bool>> right;
    if (auto read = practice.inOrder(filter, [&](const Uid& person, std::string_view hits) { addHits(right[person], hits); }); !read)
        return fail(read.error());
    CohortResults cohort;
    cohort.cohort = wish.cohort.value_or(std::string());
    const auto tallies = talliesOf(counted->answers);
    cohort.results = practiceResults(tallies, sureOf(counted->sure), *request);
    cohort.results.curve = curveOfRuns(right);
    cohort.next = practiseNext(tallies, nextShown);
    for (std::span<const PracticeCount> rest = counted->answers; !rest.empty();) {
        const auto end = std::ranges::find_if(rest, [&](const PracticeCount& count) { return count.person != rest.front().person; });
        const auto own = rest.first(static_cast<std::size_t>(end - rest.begin()));
        const auto ownTallies = talliesOf(own);
        RecruitResults recruit;
        recruit.person = own.front().person;
        recruit.results = practiceResults(ownTallies, {}, *request);
        recruit.results.confusions.clear();
        fillShort(recruit, ownTallies, *request);
        cohort.recruits.push_back(std::move(recruit));
        rest = rest.subspan(own.size());
    }
    if (auto named = nameRecruits(session, cohort.recruits, wish.names); !named)
        return fail(named.error());
    const auto series = practice.series(cohort.cohort);
    if (!series)
        return fail(series.error());
    addAgreement(*series, cohort);
    return cohort;
}

} // namespace cupule
