// Cases of the checks on date, people, effort, leaving and repeats.

#include <limits>

#include "tests/rules/scene.h"

namespace cupule::test {

namespace {

constexpr auto stop = Severity::stop, ask = Severity::ask, note = Severity::note;

OtherVisit sameDay(const Scene& scene)
{
    OtherVisit other;
    other.id = uidOf(77);
    other.observer = scene.visit.observer;
    other.date = scene.visit.date;
    return other;
}

std::vector<CheckCase> dateCases()
{
    return {
        {"date.missing", stop, [](Scene& s) { s.context.dateMissing = true; },
         [](Scene& s) { s.visit.whenTyped = "11.6.2026"; }},
        {"date.unreadable", stop,
         [](Scene& s) {
             s.context.dateMissing = true;
             s.visit.whenTyped = "30.2.2026";
         },
         [](Scene& s) { s.context.dateMissing = true; }},
        {"date.future", stop, [](Scene& s) { s.context.today.days = s.visit.date.days - 1; },
         [](Scene& s) { s.context.today = s.visit.date; }},
        {"date.long-ago", ask, [](Scene& s) { s.context.today.days = s.visit.date.days + 18'264; },
         [](Scene& s) { s.context.today.days = s.visit.date.days + 18'263; }},
        {"hygiene.left-before-visit", ask, [](Scene& s) { s.visit.hygiene.leftSite = clock("10:09"); },
         [](Scene& s) { s.visit.hygiene.leftSite = clock("10:10"); }},
        {"visit.repeats", ask,
         [](Scene& s) {
             s.others = {sameDay(s)};
             s.others[0].sameAnswers = true;
         },
         [](Scene& s) {
             // The same tree on another day is a second visit, never a repeat.
             s.others = {sameDay(s)};
             s.others[0].sameAnswers = true;
             s.others[0].date.days += 1;
         }},
        {"visit.same-day", ask, [](Scene& s) { s.others = {sameDay(s)}; },
         [](Scene& s) {
             s.others = {sameDay(s), sameDay(s), sameDay(s)};
             s.others[0].observer = uidOf(9);
             s.others[1].state = RecordState::rejected;
             s.others[2].id = s.visit.id;
         }},
    };
}

std::vector<CheckCase> peopleCases()
{
    return {
        {"observer.missing", stop, [](Scene& s) { s.visit.observer = {}; }, [](Scene& s) { s.visit.trainer = {}; }},
        {"companion.is-observer", note, [](Scene& s) { s.visit.companions = {uidOf(8), s.visit.observer}; },
         [](Scene& s) { s.visit.companions = {uidOf(8)}; }},
        {"tree.missing", stop, [](Scene& s) { s.visit.tree = {}; }, [](Scene& s) { s.tree.label.clear(); }},
        {"visit.empty", stop, [](Scene& s) { s.visit.observations.clear(); },
         [](Scene& s) {
             s.visit.observations.clear();
             s.visit.note = "felled last winter";
         }},
        {"hygiene.open", ask, [](Scene& s) { s.visit.hygiene.boots = Confirmed::noneUsed; },
         [](Scene& s) { s.visit.hygiene.tools = Confirmed::noneUsed; }},
    };
}

std::vector<CheckCase> effortCases()
{
    return {
        {"effort.hard", stop, [](Scene& s) { s.visit.effort.minutes = 181; },
         [](Scene& s) {
             s.visit.effort = {180, 1, 100, 100.0, true, true, "good", "open"};
         }},
        {"effort.short", ask, [](Scene& s) { s.visit.effort.minutes = 4; }, [](Scene& s) { s.visit.effort.minutes = 5; }},
        {"effort.long", note, [](Scene& s) { s.visit.effort.minutes = 21; }, [](Scene& s) { s.visit.effort.minutes = 20; }},
        {"effort.missing", note, [](Scene& s) { s.visit.effort.minutes.reset(); },
         [](Scene& s) {
             s.withGall();
             s.visit.effort.minutes.reset();
         }},
        {"nothing.no-crown", ask, [](Scene& s) { s.visit.effort.crownPercent = 0; },
         [](Scene& s) { s.visit.effort.crownPercent = 1; }},
        {"shift.beyond-limit", ask,
         [](Scene& s) {
             s.visit.leafingShiftDays = std::numeric_limits<int>::min();
             s.visit.leafingFrom = "MH, three trees";
         },
         [](Scene& s) {
             s.visit.leafingShiftDays = -21;
             s.visit.leafingFrom = "MH, three trees";
         }},
        {"shift.unsourced", ask, [](Scene& s) { s.visit.leafingShiftDays = 3; },
         [](Scene& s) {
             s.visit.leafingShiftDays = 3;
             s.visit.leafingFrom = "MH, three trees";
         }},
    };
}

} // namespace

std::vector<CheckCase> recordCases()
{
    std::vector<CheckCase> all = dateCases();
    for (const auto& cases : {peopleCases(), effortCases()})
        all.insert(all.end(), cases.begin(), cases.end());
    return all;
}

} // namespace cupule::test
