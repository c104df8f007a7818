// Cases of the checks on finds, on their evidence and on the tree they are said of.

#include "tests/rules/scene.h"

namespace cupule::test {

namespace {

constexpr auto stop = Severity::stop, ask = Severity::ask, note = Severity::note;

std::vector<CheckCase> evidenceCases()
{
    return {
        {"gall.no-evidence", stop,
         [](Scene& s) {
             s.withGall();
             s.photos.clear();
         },
         [](Scene& s) {
             s.withGall();
             s.photos.clear();
             s.samples.emplace_back();
         }},
        {"gall.photo-unmarked", ask,
         [](Scene& s) {
             s.withGall();
             s.photos[0].evidenceFor = {"S10"};
         },
         [](Scene& s) {
             s.withGall();
             s.photos[0].evidenceFor = {"S10", "S02"};
         }},
        {"gall.few-photos", note,
         [](Scene& s) {
             s.withGall();
             s.photos.pop_back();
         },
         [](Scene& s) { s.withGall(); }},
        {"gall.which", stop, [](Scene& s) { s.see("S26"); },
         [](Scene& s) {
             s.withGall();
             s.see("S26");
         }},
        {"gall.host-open", ask,
         [](Scene& s) {
             s.withGall();
             s.host.answer = HostAnswer::cannotTell;
         },
         [](Scene& s) { s.host.answer = HostAnswer::cannotTell; }},
        {"host.contradicted", ask,
         [](Scene& s) {
             s.host.answer = HostAnswer::cannotTell;
             s.host.contradictions = {"K09"};
         },
         [](Scene& s) {
             s.onOtherTree();
             s.host.contradictions = {"K01", "K09"};
         }},
        {"host.not-shown", ask,
         [](Scene& s) {
             s.withGall();
             s.photos[1].evidenceFor.clear();
         },
         [](Scene& s) {
             s.withGall();
             s.photos[1].evidenceFor.clear();
             s.visit.characters.emplace_back();
             s.visit.characters[0].character = "K01";
             s.visit.characters[0].state = "alternate";
             s.visit.characters[0].photo = uidOf(11);
         }},
    };
}

std::vector<CheckCase> treeCases()
{
    return {
        {"gall.on-other-tree", stop,
         [](Scene& s) {
             s.onOtherTree();
             s.visit.gallCount = 4;
         },
         [](Scene& s) {
             s.onOtherTree();
             s.visit.gallCount = 0;
         }},
        {"sign.on-other-tree", stop,
         [](Scene& s) {
             s.onOtherTree().see("S10");
         },
         [](Scene& s) {
             s.onOtherTree().see("S14").see("S20");
         }},
        {"sign.points-elsewhere", ask, [](Scene& s) { s.see("S20"); },
         [](Scene& s) {
             s.onOtherTree().see("S20");
         }},
        {"nothing.host-open", note, [](Scene& s) { s.host.answer = HostAnswer::cannotTell; },
         [](Scene& s) {
             s.host.answer = HostAnswer::cannotTell;
             s.answerTo("S02").answer = Answer::open;
         }},
        {"nothing.not-host", note, [](Scene& s) { s.onOtherTree(); },
         [](Scene& s) {
             s.onOtherTree();
             s.answerTo("S02").answer = Answer::open;
         }},
        {"nothing.after-find", note,
         [](Scene& s) {
             s.others.emplace_back();
             s.others[0] = {uidOf(70), uidOf(8), day("2025-07-01"), RecordState::accepted, true, false};
         },
         [](Scene& s) {
             s.others.emplace_back();
             s.others[0] = {uidOf(70), uidOf(8), day("2025-07-01"), RecordState::submitted, true, false};
         }},
    };
}

// Spread of 8 km a year: EFSA Panel on Plant Health, 2010 (EFSA Journal 8(6):1619).
std::vector<CheckCase> spreadCases()
{
    return {
        {"find.far", ask,
         [](Scene& s) {
             s.withGall();
             s.context.nearestFindYears = 3;
             s.context.nearestFindMetres = 24'001;
         },
         [](Scene& s) {
             s.withGall();
             s.context.nearestFindYears = 3;
             s.context.nearestFindMetres = 24'000;
         }},
        {"find.first", ask,
         [](Scene& s) {
             s.withGall();
             s.context.nearestFindMetres.reset();
         },
         [](Scene& s) { s.context.nearestFindMetres.reset(); }},
    };
}

} // namespace

std::vector<CheckCase> findCases()
{
    std::vector<CheckCase> all = evidenceCases();
    for (const auto& cases : {treeCases(), spreadCases()})
        all.insert(all.end(), cases.begin(), cases.end());
    return all;
}

} // namespace cupule::test
