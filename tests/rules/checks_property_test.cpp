// What holds for every visit, however odd: no rule gives up, and rules give only what they are listed with.

#include <algorithm>
#include <limits>
#include <set>

#include "core/base/random.h"
#include "core/protocol/pack_reader.h"
#include "core/rules/checks.h"
#include "tests/rules/scene.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::Scene;
using cupule::test::uidOf;

namespace {

template <class T>
T oneOf(Random& random, const std::vector<T>& items)
{
    return items[random.below(items.size())];
}

bool chance(Random& random, std::uint64_t oneIn)
{
    return random.below(oneIn) == 0;
}

double anyNumber(Random& random)
{
    using limits = std::numeric_limits<double>;
    return oneOf<double>(random, {0, -0.0, 1, -1, 12.5, 60, 61, 90, -90, 180, 1e300, -1e300, limits::min(), limits::max(),
                                  limits::lowest(), limits::infinity(), -limits::infinity(), limits::quiet_NaN()});
}

int anyWhole(Random& random)
{
    using limits = std::numeric_limits<int>;
    return oneOf<int>(random, {0, 1, -1, 5, 21, -22, 180, 366, limits::min(), limits::max()});
}

std::string anyText(Random& random)
{
    return oneOf<std::string>(random, {"", " ", "S02", "K01", "alternate", "opposite", "few", "\xFF\xFE", "\u00BD",
                                       std::string(4000, 'z'), std::string("a\0b", 3)});
}

CivilDate anyDate(Random& random)
{
    return {oneOf<std::int32_t>(random, {20'615, 20'700, 20'800, 0, -1, 59, -719'162, 2'932'896})};
}

Position anyPosition(Random& random)
{
    Position place = test::placeNorth(static_cast<double>(random.below(2000)));
    if (chance(random, 2))
        place.latitude = anyNumber(random);
    if (chance(random, 2))
        place.longitude = anyNumber(random);
    place.uncertaintyMetres = anyNumber(random);
    place.operationAccuracyMetres = anyNumber(random);
    place.warning = oneOf<std::string>(random, {"", "null-island", "odd"});
    return place;
}

Observation anyObservation(Random& random, const Pack& pack)
{
    Observation observation;
    observation.sign = chance(random, 12) ? anyText(random) : pack.signs[random.below(pack.signs.size())].id;
    observation.answer = static_cast<Answer>(random.below(4));
    observation.noneOnTree = chance(random, 6);
    if (chance(random, 3))
        observation.measure = anyNumber(random);
    if (chance(random, 4))
        observation.measureError = anyNumber(random);
    if (chance(random, 3))
        observation.count = anyWhole(random);
    observation.countClass = chance(random, 4) ? anyText(random) : "";
    return observation;
}

CharacterSeen anyCharacter(Random& random, const Pack& pack)
{
    CharacterSeen seen;
    const Character& character = pack.characters[random.below(pack.characters.size())];
    seen.character = chance(random, 12) ? anyText(random) : character.id;
    if (!character.states.empty() && !chance(random, 5))
        seen.state = character.states[random.below(character.states.size())].id;
    else
        seen.state = anyText(random);
    if (chance(random, 3))
        seen.value = anyNumber(random);
    seen.notJudged = chance(random, 6);
    seen.onGround = chance(random, 4);
    if (chance(random, 3))
        seen.otherTreeNear = chance(random, 2);
    return seen;
}

PhotoNote anyPhoto(Random& random)
{
    PhotoNote photo;
    photo.id = uidOf(static_cast<int>(random.below(50)));
    if (chance(random, 2))
        photo.takenDate = anyDate(random);
    if (chance(random, 2))
        photo.takenTime = LocalTime{static_cast<std::int32_t>(random.below(86'400))};
    if (chance(random, 2))
        photo.position = anyPosition(random);
    photo.evidenceFor = {anyText(random), anyText(random)};
    return photo;
}

void spoilVisit(Random& random, Scene& scene, const Pack& pack)
{
    Visit& visit = scene.visit;
    visit.date = anyDate(random);
    visit.time = LocalTime{static_cast<std::int32_t>(random.below(86'400))};
    visit.observations.clear();
    for (std::size_t count = oneOf<std::size_t>(random, {0, 1, 7, 29, 49, 300}); count > 0; --count)
        visit.observations.push_back(anyObservation(random, pack));
    for (std::size_t count = oneOf<std::size_t>(random, {0, 2, 6, 60}); count > 0; --count)
        visit.characters.push_back(anyCharacter(random, pack));
    if (chance(random, 2))
        visit.position = anyPosition(random);
    else
        visit.position.reset();
    if (chance(random, 2))
        visit.gallCount = anyWhole(random);
    if (chance(random, 2))
        visit.gallSizeMm = anyNumber(random);
    visit.effort = {anyWhole(random), anyWhole(random), anyWhole(random), anyNumber(random), {}, {}, {}, {}};
    if (chance(random, 3))
        visit.leafingShiftDays = anyWhole(random);
}

void spoilAround(Random& random, Scene& scene)
{
    scene.context.today = anyDate(random);
    scene.context.season = {oneOf<std::string>(random, {"MAR", "STH", "", "ELSEWHERE"}), anyWhole(random)};
    scene.context.dateMissing = chance(random, 10);
    if (chance(random, 2))
        scene.tree.position = anyPosition(random);
    for (std::size_t corners = random.below(7); corners > 0; --corners)
        scene.site.boundary.push_back({anyNumber(random), anyNumber(random)});
    for (std::size_t photos = random.below(4); photos > 0; --photos)
        scene.photos.push_back(anyPhoto(random));
    for (std::size_t others = random.below(4); others > 0; --others)
        scene.others.push_back({uidOf(static_cast<int>(random.below(4))), scene.visit.observer, anyDate(random),
                                static_cast<RecordState>(random.below(5)), chance(random, 2), chance(random, 2)});
    if (chance(random, 2))
        scene.context.nearestFindMetres = anyNumber(random);
    if (chance(random, 2))
        scene.context.nearestFindYears = anyWhole(random);
}

} // namespace

TEST_CASE("no rule gives up on any record", "[rules][checks]")
{
    const Pack& pack = builtInPack();
    std::set<std::string> listed, met;
    for (const Check& check : allChecks())
        listed.insert(check.codes.begin(), check.codes.end());
    for (const std::string_view code : packCodes(pack))
        listed.insert(std::string(code));
    SeededRandom random(2026);
    for (int round = 0; round < 4000; ++round) {
        Scene scene;
        spoilVisit(random, scene, pack);
        spoilAround(random, scene);
        scene.host.answer = static_cast<HostAnswer>(random.below(3));
        const auto findings = scene.findings();
        REQUIRE(std::is_sorted(findings.begin(), findings.end(),
                               [](const Finding& a, const Finding& b) { return a.severity > b.severity; }));
        for (const Finding& finding : findings) {
            met.insert(finding.code);
            REQUIRE(listed.contains(finding.code));
            REQUIRE_FALSE(finding.field.empty());
            REQUIRE_FALSE(finding.source.empty());
        }
        if (round % 16 == 0)
            REQUIRE(scene.findings() == findings);
    }
    CHECK(met.size() > listed.size() * 3 / 4);   // chance reaches most rules
}

TEST_CASE("a record of which nothing is known is judged too", "[rules][checks]")
{
    CheckContext context;
    context.pack = &builtInPack();
    const auto findings = checkVisit(Visit{}, context);
    CHECK(blocks(findings));
    const Pack empty;
    context.pack = &empty;
    CHECK(blocks(checkVisit(Visit{}, context)));
}

TEST_CASE("the host is judged from the visit's own characters where no verdict is at hand", "[rules][checks]")
{
    Scene scene;
    CharacterSeen opposite;
    opposite.character = "K01";
    opposite.state = "opposite";
    scene.visit.characters = {opposite};
    scene.see("S02");
    const auto findings = checkVisit(scene.visit, scene.context);
    CHECK(std::any_of(findings.begin(), findings.end(), [](const Finding& f) { return f.code == "gall.on-other-tree"; }));
}
