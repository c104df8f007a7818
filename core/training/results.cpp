#include "core/training/results.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace cupule {

namespace {

constexpr std::int64_t farthestToGo = 1000;

/// Answers to questions of yes or no: rows true yes, no; columns yes, no, not judged.
struct Counts {
    std::int64_t yes[3] = {}, no[3] = {}, open[3] = {};
    bool any = false;

    static int column(const std::string& given) { return given == saidYes ? 0 : given == saidNo ? 1 : 2; }
    void add(const Tally& tally)
    {
        auto& row = tally.truth == saidYes ? yes : tally.truth == saidNo ? no : open;
        row[column(tally.given)] += tally.count;
        any = any || tally.count > 0;
    }
};

std::optional<PairAgreement> agreementWithKey(const Counts& counts)
{
    AnswerTable table;
    for (const auto& row : {counts.yes, counts.no, counts.open})
        table.push_back({row[0], row[1], row[2]});
    return agreementOfTwo(table);
}

bool reaches(const std::optional<Share>& share, double limit)
{
    return share && share->interval.lower >= limit;
}

SubjectResult judged(const Counts& counts, AskedKind kind, const std::string& subject, const ResultsRequest& request)
{
    SubjectResult result;
    result.kind = kind;
    result.subject = subject;
    result.table = {counts.yes[0], counts.no[0], counts.yes[1], counts.no[1]};
    result.notJudgedThere = counts.yes[2];
    result.notJudgedAbsent = counts.no[2];
    result.open = counts.open[0] + counts.open[1] + counts.open[2];
    result.openRight = counts.open[2];
    YesNoTable strict = result.table;
    strict.wrongNo += counts.yes[2];
    strict.wrongYes += counts.no[2];
    result.judged = accuracyOf(result.table);
    result.strict = accuracyOf(strict);
    if (result.judged.sensitivity && result.judged.specificity) {
        result.yesIsRight = yesIsRightAt(request.prevalence, result.judged.sensitivity->value, result.judged.specificity->value);
        result.noIsRight = noIsRightAt(request.prevalence, result.judged.sensitivity->value, result.judged.specificity->value);
    }
    result.withKey = agreementWithKey(counts);
    const std::int64_t there = strict.rightYes + strict.wrongNo;
    const std::int64_t absent = strict.rightNo + strict.wrongYes;
    result.fewThere = there < fewAnswers;
    result.fewAbsent = absent < fewAnswers;
    result.yesToGo = answersToGo(strict.rightYes, there, request.limits.sensitivity);
    result.noToGo = answersToGo(strict.rightNo, absent, request.limits.specificity);
    const bool ready = reaches(result.strict.sensitivity, request.limits.sensitivity) && reaches(result.strict.specificity, request.limits.specificity);
    result.readiness = ready ? Readiness::ready : Readiness::notYetKnown;
    return result;
}

void addSubjects(std::span<const Tally> tallies, AskedKind kind, const ResultsRequest& request, PracticeResults& results)
{
    Counts whole;
    std::map<std::string, Counts> bySubject;
    for (const Tally& tally : tallies) {
        if (tally.kind != kind)
            continue;
        whole.add(tally);
        bySubject[tally.subject].add(tally);
    }
    if (!whole.any)
        return;
    results.subjects.push_back(judged(whole, kind, {}, request));
    for (const auto& [subject, counts] : bySubject)
        results.subjects.push_back(judged(counts, kind, subject, request));
}

void addGroup(std::span<const Tally> tallies, const ResultsRequest& request, PracticeResults& results)
{
    Counts counts;
    for (const Tally& tally : tallies)
        if (tally.kind == AskedKind::sign && std::ranges::find(request.gallLines, tally.subject) != request.gallLines.end())
            counts.add(tally);
    if (counts.any)
        results.groups.push_back(judged(counts, AskedKind::sign, {}, request));
}

/// What a row of a table of confusions is called.
std::string rowOf(const Tally& tally)
{
    if (tally.kind == AskedKind::host)
        return tally.subject;
    return isYesNo(tally.kind) ? tally.subject + ' ' + tally.truth : tally.truth;
}

Confusion confusionOf(std::span<const Tally> tallies, AskedKind kind)
{
    std::map<std::string, std::string> rows;   // with the answer that is right
    std::set<std::string> given;
    for (const Tally& tally : tallies)
        if (tally.kind == kind) {
            rows[rowOf(tally)] = tally.truth;
            given.insert(tally.given);
        }
    given.erase(std::string(saidNotJudged));
    Confusion result{kind, {}, {}, {given.begin(), given.end()}, {}};
    for (auto& [row, right] : rows) {
        result.truths.push_back(row);
        result.right.push_back(std::move(right));
    }
    result.given.emplace_back(saidNotJudged);
    result.counts.assign(result.truths.size(), std::vector<std::int64_t>(result.given.size()));
    const auto place = [](const std::vector<std::string>& list, const std::string& one) {
        return static_cast<std::size_t>(std::ranges::find(list, one) - list.begin());
    };
    for (const Tally& tally : tallies)
        if (tally.kind == kind)
            result.counts[place(result.truths, rowOf(tally))][place(result.given, tally.given)] += tally.count;
    return result;
}

std::vector<Confused> confusedOf(std::span<const Tally> tallies)
{
    std::map<std::pair<AskedKind, std::string>, std::int64_t> whole;
    std::map<std::tuple<AskedKind, std::string, std::string>, std::int64_t> wrong;
    for (const Tally& tally : tallies) {
        whole[{tally.kind, rowOf(tally)}] += tally.count;
        if (tally.given != tally.truth && tally.given != saidNotJudged)
            wrong[{tally.kind, rowOf(tally), tally.given}] += tally.count;
    }
    std::vector<Confused> list;
    for (const auto& [key, times] : wrong) {
        const auto& [kind, truth, given] = key;
        list.push_back({kind, truth, given, times, whole[{kind, truth}]});
    }
    std::ranges::stable_sort(list, std::greater{}, &Confused::times);
    return list;
}

} // namespace

std::int64_t Confusion::total() const
{
    std::int64_t sum = 0;
    for (const auto& row : counts)
        for (const std::int64_t count : row)
            sum += count;
    return sum;
}

PracticeResults practiceResults(std::span<const Tally> tallies, std::span<const SureTally> sure, const ResultsRequest& request)
{
    PracticeResults results;
    for (const Tally& tally : tallies) {
        results.answers += tally.count;
        results.right += tally.given == tally.truth ? tally.count : 0;
    }
    for (const AskedKind kind : askedKinds) {
        if (isYesNo(kind))
            addSubjects(tallies, kind, request, results);
        if (Confusion confusion = confusionOf(tallies, kind); confusion.total() > 0)
            results.confusions.push_back(std::move(confusion));
    }
    addGroup(tallies, request, results);
    results.confused = confusedOf(tallies);
    results.calibration = calibrationOf(sure);
    return results;
}

std::optional<SubjectResult> resultOf(std::span<const Tally> tallies, AskedKind kind, const std::string& subject, const ResultsRequest& request)
{
    Counts counts;
    for (const Tally& tally : tallies)
        if (tally.kind == kind && (subject.empty() || tally.subject == subject))
            counts.add(tally);
    return counts.any ? std::optional(judged(counts, kind, subject, request)) : std::nullopt;
}

std::vector<CurvePoint> learningCurve(const std::vector<bool>& right, std::int64_t length)
{
    std::vector<CurvePoint> curve;
    const auto whole = static_cast<std::int64_t>(right.size());
    for (std::int64_t from = 0; from < whole; from += length) {
        const std::int64_t to = std::min(whole, from + length);
        const std::int64_t hits = std::count(right.begin() + from, right.begin() + to, true);
        curve.push_back({from + 1, to, {static_cast<double>(hits) / static_cast<double>(to - from), wilson(hits, to - from)}});
    }
    return curve;
}

std::optional<std::int64_t> answersToGo(std::int64_t hits, std::int64_t total, double limit)
{
    for (std::int64_t more = 0; more <= farthestToGo; ++more)
        if (total + more > 0 && wilson(hits + more, total + more).lower >= limit)
            return more;
    return std::nullopt;
}

std::vector<NextPractice> practiseNext(std::span<const Tally> tallies, std::size_t most)
{
    struct Sum {
        std::int64_t wrong = 0, all = 0, takenTimes = 0;
        std::string takenFor;
    };
    std::map<std::pair<AskedKind, std::string>, Sum> sums;
    for (const Tally& tally : tallies) {
        Sum& sum = sums[{tally.kind, isYesNo(tally.kind) ? tally.subject : tally.truth}];
        sum.all += tally.count;
        if (tally.given == tally.truth)
            continue;
        sum.wrong += tally.count;
        if (!isYesNo(tally.kind) && tally.given != saidNotJudged && tally.count > sum.takenTimes) {
            sum.takenTimes = tally.count;
            sum.takenFor = tally.given;
        }
    }
    std::vector<NextPractice> list;
    for (const auto& [key, sum] : sums)
        if (sum.wrong > 0)
            list.push_back({key.first, key.second, sum.takenFor, static_cast<double>(sum.wrong) / static_cast<double>(sum.all), sum.all});
    const auto pulled = [](const NextPractice& next) {
        const auto all = static_cast<double>(next.answers);
        return (next.wrong * all + 1) / (all + 2);
    };
    std::ranges::stable_sort(list, std::greater{}, pulled);
    if (list.size() > most)
        list.resize(most);
    return list;
}

} // namespace cupule
