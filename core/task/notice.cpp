#include "core/task/notice.h"

#include "core/task/deciding.h"
#include "core/task/programme.h"
#include "core/task/samples.h"

namespace cupule {

namespace {

std::string called(const Person& person, bool names)
{
    return !names || person.name.empty() ? person.code : person.code + ", " + person.name;
}

Status addSamples(Session& session, const ReviewPage& page, report::NoticeData& data)
{
    for (const SampleLine& line : page.samples) {
        const auto sample = samplePage(session, line.id);
        if (!sample)
            return fail(sample.error());
        report::NoticeSample told{line.number, line.state, {}, {}};
        for (const CustodyLine& entry : sample->lines)
            if (entry.kind == CustodyKind::result) {
                told.reportNumber = entry.reportNumber;
                told.finding = entry.finding;
            }
        data.samples.push_back(std::move(told));
    }
    return {};
}

Status addRules(Session& session, const Uid& site, report::NoticeData& data)
{
    const auto leaves = allLeaves(session);
    const auto regimes = allRegimes(session);
    if (!leaves)
        return fail(leaves.error());
    if (!regimes)
        return fail(regimes.error());
    for (const Leave& leave : *leaves)
        if (inForce(leave, data.visit.date, site))
            data.leaves.push_back(leave);
    for (const Regime& regime : *regimes)
        if (inForce(regime, session.today(), site))
            data.regimes.push_back(regime);
    return {};
}

Status addDecisions(Session& session, const ReviewPage& page, report::NoticeData& data)
{
    const auto people = allPeople(session);
    if (!people)
        return fail(people.error());
    // what one of two decided is kept from everybody, the one included: the paper travels
    if (page.oneOfTwo)
        return {};
    for (const Decision& decision : page.decisions) {
        std::string by;
        for (const Person& person : *people)
            if (person.id == decision.by)
                by = called(person, data.names);
        data.decisions.push_back({decision, by});
    }
    return {};
}

} // namespace

Result<report::NoticeData> gatherNotice(Session& session, const Uid& visit, bool names)
{
    const auto page = reviewPageWith(session, visit, Sight{}); // the duty to tell is everybody's, and needs the place
    if (!page)
        return fail(page.error());
    const VisitPage& shown = page->visit;
    if (!shown.positive.positive)
        return fail("notice.no-find", FaultKind::refused);
    const auto set = programme(session);
    if (!set)
        return fail(set.error());
    report::NoticeData data;
    data.storeName = session.info().name;
    data.demonstration = session.info().demonstration;
    data.made = session.today();
    data.names = names;
    data.madeBy = called(session.profile().person, names);
    data.tell = set->tell;
    data.visit = shown.visit;
    data.state = shown.state;
    data.oneOfTwo = page->oneOfTwo;
    data.newGround = page->newGround;
    data.tree = shown.tree ? shown.tree->label : std::string();
    data.site = shown.site ? shown.site->name : std::string();
    data.place = placeOf(shown.visit, shown.tree);
    data.host = shown.host;
    for (const ChecklistLine& line : shown.checklist)
        if (line.observation.answer == Answer::seen && !line.struck)
            data.signs.push_back({line.observation, line.season.state});
    data.observer = called(shown.observer, names);
    for (const Person& companion : shown.companions)
        data.companions.push_back(called(companion, names));
    data.photos = shown.photos;
    for (const HistoryLine& earlier : shown.history)
        data.earlier.push_back({earlier.line.date, earlier.line.summary, earlier.line.state});
    data.nearestFindMetres = page->nearestFindMetres;
    data.nearestFindTree = page->nearestFindTree;
    data.told = page->told;
    if (auto added = addSamples(session, *page, data); !added)
        return fail(added.error());
    if (auto added = addRules(session, shown.site ? shown.site->id : Uid{}, data); !added)
        return fail(added.error());
    if (auto added = addDecisions(session, *page, data); !added)
        return fail(added.error());
    return data;
}

} // namespace cupule
