// Cases of the checks on answers, measurements, counts and characters.

#include <limits>

#include "tests/rules/scene.h"

namespace cupule::test {

namespace {

constexpr auto stop = Severity::stop, ask = Severity::ask, note = Severity::note;

CharacterSeen character(const char* id, const char* state)
{
    CharacterSeen seen;
    seen.character = id;
    seen.state = state;
    return seen;
}

void setDate(Scene& scene, const char* date)
{
    scene.visit.date = day(date);
    scene.context.today = day("2026-12-31");
    for (PhotoNote& photo : scene.photos)
        photo.takenDate = scene.visit.date;
}

std::vector<CheckCase> answerCases()
{
    return {
        {"sign.none-and-seen", stop,
         [](Scene& s) {
             s.withGall("S04");
             s.answerTo("S04").noneOnTree = true;
         },
         [](Scene& s) { s.answerTo("S04").noneOnTree = true; }},
        {"sign.counted-not-seen", ask, [](Scene& s) { s.answerTo("S02").count = 1; },
         [](Scene& s) { s.answerTo("S02").count = 0; }},
        {"sign.seen-none-counted", ask,
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").count = 0;
         },
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").count = 1;
         }},
        {"sign.twice", ask, [](Scene& s) { s.visit.observations.push_back(s.visit.observations[3]); },
         [](Scene& s) { s.answerTo("S10").answer = Answer::notSeen; }},
        {"sign.unknown", note, [](Scene& s) { s.see("S99"); }, [](Scene& s) { s.answerTo("S28"); }},
        {"sign.computed", ask, [](Scene& s) { s.see("S23"); }, [](Scene& s) { s.answerTo("S23"); }},
        {"sign.laboratory", stop, [](Scene& s) { s.withGall("S07"); },
         [](Scene& s) {
             s.withGall("S07");
             s.context.laboratoryReport = true;
         }},
        {"distortion.no-gall", ask, [](Scene& s) { s.see("S10"); },
         [](Scene& s) {
             s.withGall();
             s.see("S10");
         }},
        {"disease.own-route", note, [](Scene& s) { s.see("S14"); }, [](Scene& s) { s.see("S16"); }},
        {"nothing.incomplete", ask, [](Scene& s) { s.answerTo("S29").answer = Answer::open; },
         [](Scene& s) { s.answerTo("S29").noneOnTree = true; }},
        {"nothing.not-judged", note, [](Scene& s) { s.answerTo("S29").answer = Answer::notJudged; },
         [](Scene& s) {
             s.answerTo("S29").answer = Answer::notJudged;
             s.answerTo("S01").answer = Answer::open;
         }},
    };
}

std::vector<CheckCase> measureCases()
{
    return {
        {"measure.hard", stop,
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").measure = 60.5;
         },
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").measure = 60;
         }},
        {"measure.unusual", ask,
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").measure = 20.5;
         },
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").measure = 20;
         }},
        {"measure.error", ask,
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").measure = 12;
             s.answerTo("S02").measureError = 12;
         },
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").measure = 12;
             s.answerTo("S02").measureError = 0.5;
         }},
        {"gall-size.hard", stop,
         [](Scene& s) {
             s.withGall();
             s.visit.gallSizeMm = 61;
         },
         [](Scene& s) {
             s.withGall();
             s.visit.gallSizeMm = 60;
         }},
        {"gall-size.unusual", ask,
         [](Scene& s) {
             s.withGall();
             s.visit.gallSizeMm = 41;
         },
         [](Scene& s) {
             s.withGall();
             s.visit.gallSizeMm = 40;
         }},
        {"count.impossible", stop, [](Scene& s) { s.visit.gallCount = -1; }, [](Scene& s) { s.visit.gallCount = 0; }},
        {"count.many", ask,
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").count = 10'001;
         },
         [](Scene& s) {
             s.withGall();
             s.answerTo("S02").count = 10'000;
         }},
        {"count.class-unknown", note, [](Scene& s) { s.answerTo("S02").countClass = "umpteen"; },
         [](Scene& s) { s.answerTo("S02").countClass.clear(); }},
    };
}

std::vector<CheckCase> characterCases()
{
    return {
        {"character.hard", stop,
         [](Scene& s) {
             s.visit.characters = {character("K05", "")};
             s.visit.characters[0].value = std::numeric_limits<double>::infinity();
         },
         [](Scene& s) {
             s.visit.characters = {character("K05", "")};
             s.visit.characters[0].value = s.context.pack->character("K05")->hardMax;
         }},
        {"character.unknown", note, [](Scene& s) { s.visit.characters = {character("K99", "alternate")}; },
         [](Scene& s) { s.visit.characters = {character("K01", "alternate")}; }},
        {"character.state-unknown", note, [](Scene& s) { s.visit.characters = {character("K01", "whorled-ish")}; },
         [](Scene& s) { s.visit.characters = {character("K01", "alternate")}; }},
        {"character.twice", ask,
         [](Scene& s) { s.visit.characters = {character("K01", "alternate"), character("K01", "alternate")}; },
         [](Scene& s) { s.visit.characters = {character("K01", "alternate"), character("K02", "")}; }},
        {"character.ground-not-asked", ask,
         [](Scene& s) {
             s.visit.characters = {character("K15", "")};
             s.visit.characters[0].onGround = true;
         },
         [](Scene& s) {
             s.visit.characters = {character("K15", "")};
             s.visit.characters[0].onGround = true;
             s.visit.characters[0].otherTreeNear = false;
         }},
    };
}

// The claims that are asked about, with the last day on which nothing is asked.
// Source: the table of claims and replies for a region in the north-west (judgement from the cited biology: Bernardo et
// al. 2013; adult window 15 May to 31 August as the widest published).
std::vector<CheckCase> seasonCases()
{
    return {
        {"season.green-gall", ask,
         [](Scene& s) {
             s.withGall("S01");
             setDate(s, "2026-10-01");
         },
         [](Scene& s) {
             s.withGall("S01");
             setDate(s, "2026-09-30");
         }},
        {"season.exit-hole-early", ask,
         [](Scene& s) {
             s.withGall("S01").see("S06");
             setDate(s, "2026-05-14");
         },
         [](Scene& s) {
             s.withGall("S01").see("S06");
             setDate(s, "2026-05-15");
         }},
        {"season.adult", ask,
         [](Scene& s) {
             s.see("S08");
             setDate(s, "2026-09-01");
         },
         [](Scene& s) {
             s.see("S08");
             setDate(s, "2026-08-31");
         }},
        {"season.bud-claim", ask, [](Scene& s) { s.see("S09"); },
         [](Scene& s) { s.answerTo("S09").answer = Answer::notSeen; }},
        {"season.dry-gall-year", ask, [](Scene& s) { s.withGall("S05"); }, [](Scene& s) { s.withGall("S13"); }},
        {"season.leaf-character", ask,
         [](Scene& s) {
             s.visit.characters = {character("K03", "")};
             setDate(s, "2026-11-01");
         },
         [](Scene& s) {
             // A leaf on the ground is there in any month.
             s.visit.characters = {character("K03", "")};
             s.visit.characters[0].onGround = true;
             setDate(s, "2026-11-01");
         }},
        {"season.catkins", ask,
         [](Scene& s) {
             s.withGall("S04");
             setDate(s, "2026-05-31");
         },
         [](Scene& s) {
             s.withGall("S04");
             setDate(s, "2026-06-01");
         }},
    };
}

} // namespace

std::vector<CheckCase> signCases()
{
    std::vector<CheckCase> all = answerCases();
    for (const auto& cases : {measureCases(), characterCases(), seasonCases()})
        all.insert(all.end(), cases.begin(), cases.end());
    return all;
}

} // namespace cupule::test
