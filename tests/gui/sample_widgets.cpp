#include "tests/gui/sample_widgets.h"

#include "core/protocol/pack_reader.h"
#include "core/rules/season.h"

namespace cupule::test {

namespace {

Instant at(const char* text)
{
    return *parseInstant(text);
}

ChainLink link(const char* kind, LinkState state, const char* who, const char* what,
               std::optional<Instant> when)
{
    ChainLink made;
    made.kind = kind;
    made.state = state;
    made.who = who;
    made.what = what;
    made.when = when;
    return made;
}

} // namespace

std::vector<ui::ChecklistRow> sampleChecklist()
{
    const Pack& pack = builtInPack();
    const CivilDate date = *CivilDate::make(2026, 6, 11);
    const SeasonContext season{pack.regions.front().id, 6};
    std::vector<ui::ChecklistRow> rows;
    int folded = 0;
    for (const SeasonState state : {SeasonState::expected, SeasonState::possible}) {
        if (state == SeasonState::possible) {
            ui::ChecklistRow heading;
            heading.kind = ui::ChecklistRow::Kind::heading;
            heading.sign = QStringLiteral("possible");
            heading.words = QStringLiteral("Possible on 11 June");
            rows.push_back(heading);
        }
        for (const Sign& sign : pack.signs) {
            const SignSeason now = seasonOf(sign, date, season, pack);
            if (!sign.onChecklist || now.state != state)
                continue;
            Observation observation;
            observation.sign = sign.id;
            observation.answer = rows.size() % 4 == 3   ? Answer::notJudged
                                 : rows.size() % 3 == 1 ? Answer::seen
                                                        : Answer::notSeen;
            if (observation.answer == Answer::seen)
                observation.measure = 14.2;
            rows.push_back(ui::checklistRow(sign, now, observation, false));
        }
    }
    for (const Sign& sign : pack.signs)
        folded += sign.onChecklist && seasonOf(sign, date, season, pack).state == SeasonState::outOfSeason;
    ui::ChecklistRow fold;
    fold.kind = ui::ChecklistRow::Kind::fold;
    fold.sign = QStringLiteral("fold");
    fold.words = QStringLiteral("Not in season on 11 June: %1 signs").arg(folded);
    fold.aside = QStringLiteral("Show them, each with its reason");
    rows.push_back(fold);
    return rows;
}

std::vector<Finding> sampleFindings()
{
    return {
        {"hygiene.open",
         Severity::stop,
         "hygiene",
         {{"items", "tools"}},
         "Forestry Commission, 2017, Biosecurity guidance for foresters"},
        {"photo.other-place",
         Severity::ask,
         "photos/2",
         {{"name", "IMG_0031.JPG"}, {"metres", "4210"}},
         "common practice, no source"},
        {"nothing.not-judged",
         Severity::ask,
         "observations",
         {{"signs", "S04"}},
         "common practice, no source"},
        {"gall.few-photos", Severity::note, "photos", {{"photos", "1"}}, "common practice, no source"},
    };
}

std::vector<ChainLink> sampleChain()
{
    std::vector<ChainLink> links{
        link("tree", LinkState::whole, "", "T-03", std::nullopt),
        link("cut", LinkState::whole, "", "3 shoots", at("2026-06-11T11:24:00+01:00")),
        link("inner-bag", LinkState::whole, "", "B-1041", at("2026-06-11T11:26:00+01:00")),
        link("outer-bag", LinkState::whole, "", "B-1042", at("2026-06-11T11:29:00+01:00")),
        link("hands", LinkState::whole, "Ines Calloway", "", at("2026-06-11T17:05:00+01:00")),
        link("hands", LinkState::whole, "Tobias Wren", "", at("2026-06-12T08:10:00+01:00")),
        link("laboratory", LinkState::open, "", "", std::nullopt),
        link("result", LinkState::ahead, "", "", std::nullopt),
        link("disposal", LinkState::ahead, "", "", std::nullopt),
    };
    links[6].lacking = {"custody.receipt-in", "custody.receipt-seal"};
    return links;
}

} // namespace cupule::test
