#include "core/task/judge.h"

#include <algorithm>

namespace cupule {

namespace {

/// The same thing said about the same character, wherever it was seen.
bool sameWord(const CharacterSeen& a, const CharacterSeen& b)
{
    return a.character == b.character && a.state == b.state && a.value == b.value &&
           a.onGround == b.onGround && a.otherTreeNear == b.otherTreeNear && a.notJudged == b.notJudged;
}

int datedPhotosOf(const char* what, const VisitFacts& facts)
{
    return static_cast<int>(
        std::count_if(facts.photos.begin(), facts.photos.end(), [&](const PhotoNote& photo) {
            const auto& of = photo.evidenceFor;
            return photo.takenDate && std::find(of.begin(), of.end(), what) != of.end();
        }));
}

CheckContext contextOf(const VisitFacts& facts, const Visit& visit, const Pack& pack, CivilDate today)
{
    CheckContext context;
    context.pack = &pack;
    context.today = today;
    context.season = facts.season;
    context.tree = facts.tree ? &*facts.tree : nullptr;
    context.site = facts.site ? &*facts.site : nullptr;
    context.photos = facts.photos;
    context.sharedPhotos = facts.sharedPhotos;
    context.others = facts.others;
    context.samples = facts.samples;
    context.laboratoryReport = facts.laboratoryReport;
    context.dateMissing = visit.date == CivilDate{};
    if (facts.nearestFind) {
        context.nearestFindMetres = facts.nearestFind->metres;
        context.nearestFindYears = visit.date.year() - facts.nearestFind->date.year();
    }
    return context;
}

int countOf(const std::vector<Finding>& findings, Severity severity)
{
    return static_cast<int>(std::count_if(findings.begin(), findings.end(), [&](const Finding& finding) {
        return finding.severity == severity;
    }));
}

} // namespace

std::vector<CharacterSeen> joinCharacters(std::span<const CharacterSeen> own,
                                          std::span<const CharacterSeen> others)
{
    std::vector<CharacterSeen> joined(own.begin(), own.end());
    for (const auto& seen : others) {
        if (seen.notJudged ||
            std::any_of(joined.begin(), joined.end(), [&](const auto& j) { return sameWord(j, seen); }))
            continue;
        std::erase_if(joined, [&](const auto& j) { return j.character == seen.character && j.notJudged; });
        joined.push_back(seen);
    }
    return joined;
}

std::vector<std::string> signsSeen(const Visit& visit)
{
    std::vector<std::string> seen;
    for (const auto& observation : visit.observations)
        if (observation.answer == Answer::seen)
            seen.push_back(observation.sign);
    return seen;
}

bool claimsGall(const Visit& visit, const Pack& pack)
{
    return std::any_of(visit.observations.begin(), visit.observations.end(),
                       [&](const Observation& observation) {
                           const Sign* sign = pack.sign(observation.sign);
                           return observation.answer == Answer::seen && sign != nullptr &&
                                  (sign->group == SignGroup::gall || sign->group == SignGroup::laboratory);
                       });
}

std::string summaryOf(const Visit& visit, HostAnswer host, const Positive& positive, bool nothing)
{
    if (host == HostAnswer::notHost)
        return "not-host";
    if (positive.positive)
        return positive.earlierGenerationOnly ? "older-gall" : "gall";
    if (nothing)
        return "nothing-seen";
    if (!signsSeen(visit).empty())
        return "other-signs";
    const bool answered =
        std::any_of(visit.observations.begin(), visit.observations.end(),
                    [](const Observation& o) { return o.answer != Answer::open || o.noneOnTree; });
    return answered || !visit.characters.empty() || visit.gallCount ? "incomplete" : "empty";
}

Judged judgeVisit(const Visit& visit, const VisitStanding& standing, const VisitFacts& facts,
                  const Pack& pack, CivilDate today, const HostVerdict& host)
{
    Judged out;
    out.host = host;
    out.positive = positiveOf(visit, out.host.answer, pack);
    out.nothing = nothingSeen(visit, facts.season, pack);
    out.worth = worthOf(visit,
                        {facts.season, out.host.answer, datedPhotosOf(crownEvidence, facts),
                         datedPhotosOf(shootEvidence, facts)},
                        pack);
    out.findings = checkVisit(visit, contextOf(facts, visit, pack, today), out.host);
    if (standing.state == RecordState::accepted) // it is the first find now; nothing is left to be asked about that
        std::erase_if(out.findings, [](const Finding& finding) { return finding.code == "find.first"; });

    VisitShown& shown = out.shown;
    shown.host = out.host.answer;
    shown.positive = out.positive.positive;
    shown.earlierGenerationOnly = out.positive.earlierGenerationOnly;
    shown.nothing = out.nothing;
    shown.worth = out.worth.letter;
    shown.summary = summaryOf(visit, out.host.answer, out.positive, out.nothing);
    shown.signs = signsSeen(visit);
    shown.stops = countOf(out.findings, Severity::stop);
    shown.asks = countOf(out.findings, Severity::ask);

    QueueInput queue;
    queue.state = standing.correctionWaits ? RecordState::submitted : standing.state;
    queue.positive = out.positive;
    queue.newGround = facts.newGround;
    queue.oneOfTwo = standing.oneOfTwo;
    queue.conflict = standing.conflict;
    queue.fieldsApart = facts.fieldsApart;
    queue.returnedBefore = facts.returnedBefore;
    queue.batch = facts.batch;
    queue.nothing = out.nothing;
    queue.asks = shown.asks;
    queue.worth = shown.worth;
    out.place = queuePlace(queue);
    shown.queueRank = out.place.rank;
    shown.queueCode = out.place.code;
    return out;
}

} // namespace cupule
