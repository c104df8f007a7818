#include "core/report/notice.h"

#include <algorithm>

#include "core/report/moments.h"
#include "core/report/paper.h"

namespace cupule::report {

namespace {

constexpr std::size_t digitsOfHash = 12;
constexpr std::size_t mostEarlier = 6;

using Paper = PaperOf<NoticeData>;

/// Which square the words named, and by what it became degrees.
std::string workedOut(const Paper& paper, const Position& place)
{
    std::string out;
    if (place.squareMetres > 0)
        addPart(out, paper.words.text("the middle of a square of {metres} m", {{"metres", paper.count(place.squareMetres)}}));
    if (place.operation != "none" && place.operationAccuracyMetres >= 0)
        addPart(out, paper.words.text("{operation}, good to {metres} m",
                                      {{"operation", place.operation}, {"metres", paper.count(place.operationAccuracyMetres)}}),
                "; ");
    return out.empty() ? paper.words.text("as written") : out;
}

void where(const Paper& paper)
{
    const NoticeData& d = paper.data;
    paper.heading("Where and when");
    Table table = paper.table({"Fact", "As recorded"});
    paper.row(table, "Date", paper.words.date(d.visit.date));
    paper.row(table, "Tree and site", d.site.empty() ? d.tree : d.tree + ", " + d.site);
    if (d.place) {
        paper.row(table, "Place as written", d.place->typed);
        paper.row(table, "Place", placeWords(*d.place, paper.words));
        paper.row(table, "Worked out from it", workedOut(paper, *d.place));
    } else {
        paper.row(table, "Place as written", {});
    }
    std::string near;
    if (d.nearestFindMetres)
        near = paper.words.text("{km} km away, at {tree}",
                                {{"km", paper.count(*d.nearestFindMetres / 1000, 1)}, {"tree", d.nearestFindTree}});
    else
        near = paper.words.text("none in this store");
    paper.row(table, "Nearest accepted find", near);
    paper.out.blocks.emplace_back(std::move(table));
    if (d.newGround)
        paper.say("No accepted find lies near in this store: this is new ground as far as it knows.", {}, Tone::note);
}

std::string characterName(const Pack& pack, const std::string& id)
{
    const Character* character = pack.character(id);
    return character == nullptr ? id : character->name;
}

void host(const Paper& paper)
{
    const HostVerdict& verdict = paper.data.host;
    paper.heading("The host");
    std::string on;
    for (const std::string& id : verdict.decidedBy)
        addPart(on, characterName(paper.pack, id));
    if (on.empty())
        paper.say("Judged by its characters: {verdict}.", {{"verdict", paper.words.host(verdict.answer)}});
    else
        paper.say("Judged by its characters: {verdict}, by {characters}.",
                  {{"verdict", paper.words.host(verdict.answer)}, {"characters", on}});
    std::string against;
    for (const std::string& id : verdict.contradictions)
        addPart(against, characterName(paper.pack, id));
    if (!against.empty())
        paper.say("Against it: {characters}.", {{"characters", against}}, Tone::caution);
}

std::string seasonWord(const Paper& paper, SeasonState state)
{
    switch (state) {
    case SeasonState::expected: return paper.words.text("expected on that day");
    case SeasonState::possible: return paper.words.text("possible on that day");
    case SeasonState::outOfSeason: return paper.words.text("out of season on that day");
    }
    return {};
}

std::string amount(const Paper& paper, const NoticeSign& seen, const Sign* sign)
{
    const Observation& o = seen.observation;
    std::string out;
    if (o.count)
        addPart(out, paper.words.text("number: {n}", {{"n", paper.count(*o.count)}}));
    else if (!o.countClass.empty())
        addPart(out, paper.words.text("number: {n}", {{"n", o.countClass}}));
    if (o.measure) {
        std::string size = paper.count(*o.measure, 1);
        if (o.measureError)
            size += " ± " + paper.count(*o.measureError, 1);
        addPart(out, size + ' ' + (sign == nullptr || sign->unit.empty() ? "mm" : sign->unit.c_str()));
    }
    addPart(out, o.note, "; ");
    return out;
}

void seen(const Paper& paper)
{
    paper.heading("What was seen");
    Table table = paper.table({"Sign", "How much", "Season"});
    for (const NoticeSign& seen : paper.data.signs) {
        const Sign* sign = paper.pack.sign(seen.observation.sign);
        table.rows.push_back({sign == nullptr ? seen.observation.sign : sign->name, amount(paper, seen, sign),
                              seasonWord(paper, seen.season)});
    }
    paper.out.blocks.emplace_back(std::move(table));
    if (!paper.data.visit.note.empty())
        paper.say("Remark: {text}", {{"text", paper.data.visit.note}});
}

std::string effortWords(const Paper& paper)
{
    const Effort& effort = paper.data.visit.effort;
    std::string out;
    if (effort.minutes)
        addPart(out, paper.words.text("{n} minutes", {{"n", paper.count(*effort.minutes)}}));
    if (effort.crownPercent)
        addPart(out, paper.words.text("{n} % of the crown", {{"n", paper.count(*effort.crownPercent)}}));
    if (effort.heightMetres)
        addPart(out, paper.words.text("up to {n} m", {{"n", paper.count(*effort.heightMetres)}}));
    if (effort.binoculars)
        addPart(out, paper.words.text(*effort.binoculars ? "with binoculars" : "without binoculars"));
    return out;
}

void how(const Paper& paper)
{
    const NoticeData& d = paper.data;
    paper.heading("Who saw it, and how it was looked at");
    Table table = paper.table({"Fact", "As recorded"});
    paper.row(table, "Seen by", d.observer);
    std::string companions;
    for (const std::string& companion : d.companions)
        addPart(companions, companion);
    paper.row(table, "With", companions.empty() ? paper.words.text("nobody else named") : companions);
    paper.row(table, "Effort", effortWords(paper));
    std::string pictures;
    for (const PhotoNote& photo : d.photos)
        addPart(pictures, photo.originalName + " (SHA-256 " + photo.sha256.substr(0, digitsOfHash) + "…)", "; ");
    paper.row(table, "Pictures", pictures.empty() ? paper.words.text("none") : pictures);
    std::string leaves;
    for (const Leave& leave : d.leaves)
        addPart(leaves, leave.reference.empty() ? paper.words.text("without a number") : leave.reference);
    paper.row(table, "Leaves in force, by reference", leaves.empty() ? paper.words.text("none noted") : leaves);
    paper.out.blocks.emplace_back(std::move(table));
}

void material(const Paper& paper)
{
    paper.heading("Material and diagnosis");
    if (paper.data.samples.empty()) {
        paper.say("No sample was taken. Nobody has identified the organism formally.");
        return;
    }
    Table table = paper.table({"Sample", "State", "Report", "Finding"});
    bool reported = false;
    for (const NoticeSample& sample : paper.data.samples) {
        table.rows.push_back({sample.number, paper.words.state(sample.state),
                              sample.reportNumber.empty() ? paper.words.text("none yet") : sample.reportNumber, sample.finding});
        reported = reported || !sample.reportNumber.empty();
    }
    paper.out.blocks.emplace_back(std::move(table));
    paper.say(reported ? "A report speaks of the material in the bag, never of the tree or the site."
                       : "No laboratory has reported yet: nobody has identified the organism formally.",
              {}, Tone::note);
}

void judged(const Paper& paper)
{
    const NoticeData& d = paper.data;
    paper.heading("How it was judged here");
    paper.say("State of the record: {state}.", {{"state", paper.words.state(d.state)}});
    if (d.oneOfTwo)
        paper.say("One of two verifiers has decided; the second does not see it before deciding, and it is left out here.", {},
                  Tone::note);
    List list;
    for (const NoticeDecision& entry : d.decisions) {
        const Decision& decision = entry.decision;
        std::string reasons;
        for (const std::string& id : decision.reasons) {
            const Reason* reason = paper.pack.reason(id);
            addPart(reasons, reason == nullptr ? id : reason->sentence);
        }
        std::string line = paper.words.text("{outcome} by {who}, {when}", {{"outcome", paper.words.outcome(decision.outcome)},
                                                                             {"who", entry.by},
                                                                             {"when", momentWords(decision.at, paper.words)}});
        if (decision.laboratory)
            addPart(line, paper.words.text("on laboratory report {number}", {{"number", decision.reportNumber}}));
        addPart(line, reasons, ": ");
        addPart(line, decision.remark, ". ");
        list.items.push_back(std::move(line));
    }
    if (!list.items.empty())
        paper.out.blocks.emplace_back(std::move(list));
    if (d.earlier.empty())
        return;
    std::string earlier;
    for (std::size_t i = 0; i < std::min(d.earlier.size(), mostEarlier); ++i)
        addPart(earlier,
            paper.words.text("{date}: {what}, {state}", {{"date", paper.words.date(d.earlier[i].date)},
                                                           {"what", paper.words.code(d.earlier[i].summary)},
                                                           {"state", paper.words.state(d.earlier[i].state)}}),
            "; ");
    paper.say("The same tree at other times ({n}): {visits}.",
              {{"n", paper.count(static_cast<double>(d.earlier.size()))}, {"visits", earlier}});
}

void telling(const Paper& paper)
{
    const NoticeData& d = paper.data;
    paper.heading("To whom, and what follows");
    paper.say(d.tell.empty() ? "The programme has not set whom to tell. Look up the plant-health authority of the place."
                             : "The programme tells: {whom}",
              {{"whom", d.tell}}, d.tell.empty() ? Tone::caution : Tone::plain);
    paper.regimes(d.regimes);
    if (d.told)
        paper.say("Told before: {whom}, {when}, by {who}; reference: {reference}.",
                  {{"whom", d.told->to},
                   {"when", momentWords(d.told->at, paper.words)},
                   {"who", d.told->by},
                   {"reference", d.told->reference.empty() ? paper.words.text("none given") : d.told->reference}});
    else
        paper.say("Nobody has noted that the authority was told. Where the law speaks of a suspicion, do not wait for a decision. "
                  "This paper tells nobody by itself: send it, then note that it was sent.",
                  {}, Tone::caution);
    paper.say("Whether the pest is present, absent or under official control, how far it reaches, and what is to be done, the "
              "authority alone decides. Until it does, nothing is cut, moved, sprayed or felled because of this paper.",
              {}, Tone::caution);
}

} // namespace

Document notice(const NoticeData& data, const Pack& pack, const Words& words)
{
    Document out;
    out.language = pack.language.empty() ? "en" : pack.language;
    out.title = words.text("Notice of a suspected find: {pest}", {{"pest", pack.name}});
    out.subtitle = words.text("{store}. Made on {date} by {who}. {pack}, version {version}.",
                              {{"store", data.storeName},
                               {"date", words.date(data.made)},
                               {"who", data.madeBy},
                               {"pack", pack.name},
                               {"version", pack.version}});
    if (data.demonstration)
        out.demonstration = words.text("Demonstration: every person, place and find on this paper is invented.");
    out.foot = words.text("Record {id}. {note}", {{"id", data.visit.id.text()}, {"note", pack.exportNote}});
    const Paper paper{{pack, words, out}, data};
    paper.say(data.names ? "Holds an exact place and people's names: for the plant-health authority alone, never for publication."
                         : "Holds an exact place: for the plant-health authority alone, never for publication.",
              {}, Tone::caution);
    where(paper);
    seen(paper);
    host(paper);
    how(paper);
    material(paper);
    judged(paper);
    telling(paper);
    return out;
}

} // namespace cupule::report
