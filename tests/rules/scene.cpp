#include "tests/rules/scene.h"

#include <algorithm>

#include "core/protocol/pack_reader.h"

namespace cupule::test {

namespace {

PhotoNote photo(int id, std::vector<std::string> evidenceFor)
{
    PhotoNote note;
    note.id = uidOf(id);
    note.originalName = std::to_string(id).append(".JPG");
    note.takenDate = day("2026-06-11");
    note.takenTime = clock("10:20");
    note.position = placeNorth(20);
    note.evidenceFor = std::move(evidenceFor);
    return note;
}

} // namespace

Position placeNorth(double metres)
{
    Position place;
    place.system = "WGS84";
    place.latitude = 52.2 + metres / 111'267.0;   // a minute of latitude at 52 degrees is 1854.4 m
    place.longitude = -2.35;
    place.uncertaintyMetres = 7;
    place.operation = "none";
    place.operationAccuracyMetres = 0;
    return place;
}

Scene::Scene()
{
    visit.id = uidOf(1);
    visit.tree = tree.id = uidOf(2);
    tree.label = "T-17";
    tree.position = placeNorth(0);
    visit.observer = uidOf(3);
    visit.date = day("2026-06-11");
    visit.time = clock("10:10");
    visit.position = placeNorth(5);
    for (const char* sign : {"S01", "S02", "S03", "S04", "S05", "S13", "S29"}) {
        Observation observation;
        observation.sign = sign;
        observation.answer = Answer::notSeen;
        visit.observations.push_back(observation);
    }
    visit.effort.minutes = 12;
    visit.effort.crownPercent = 70;
    visit.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::done, clock("11:00")};
    host.answer = HostAnswer::host;
    host.decidedBy = {"K03", "K15"};
    context.pack = &builtInPack();
    context.today = day("2026-06-12");
    context.season.region = "MAR";
}

Scene& Scene::withGall(const std::string& sign)
{
    see(sign);
    photos = {photo(10, {sign}), photo(11, {"K03"}), photo(12, {})};
    context.nearestFindMetres = 3000;
    context.nearestFindYears = 1;
    return *this;
}

Scene& Scene::onOtherTree()
{
    host = {};
    host.answer = HostAnswer::notHost;
    host.decidedBy = {"K01"};
    return *this;
}

Scene& Scene::see(const std::string& sign)
{
    answerTo(sign).answer = Answer::seen;
    return *this;
}

Observation& Scene::answerTo(const std::string& sign)
{
    auto& all = visit.observations;
    const auto found = std::find_if(all.begin(), all.end(), [&](const Observation& o) { return o.sign == sign; });
    if (found != all.end())
        return *found;
    all.emplace_back();
    all.back().sign = sign;
    return all.back();
}

std::vector<Finding> Scene::findings() const
{
    CheckContext full = context;
    full.tree = &tree;
    full.site = &site;
    full.photos = photos;
    full.sharedPhotos = shared;
    full.others = others;
    full.samples = samples;
    return checkVisit(visit, full, host);
}

std::optional<Finding> Scene::found(const std::string& code) const
{
    for (const Finding& finding : findings())
        if (finding.code == code)
            return finding;
    return std::nullopt;
}

std::vector<CheckCase> allCases()
{
    std::vector<CheckCase> all;
    for (const auto& cases : {recordCases(), placeCases(), signCases(), findCases()})
        all.insert(all.end(), cases.begin(), cases.end());
    return all;
}

} // namespace cupule::test
