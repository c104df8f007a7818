#include "core/report/custody_record.h"

#include <algorithm>

#include "core/record/names.h"
#include "core/report/moments.h"
#include "core/report/paper.h"

namespace cupule::report {

namespace {

constexpr int rowsByHand = 3;

using Paper = PaperOf<CustodyRecordData>;

bool isOver(SampleState state)
{
    return state == SampleState::closed || state == SampleState::closedWithBreak || state == SampleState::voided;
}

void taken(const Paper& paper)
{
    const SampleFacts& facts = paper.data.facts;
    const Sample& sample = facts.sample;
    const Words& words = paper.words;
    paper.heading("What was taken");
    Table table = paper.table({"Fact", "As recorded"});
    const auto row = [&](const char* name, const std::string& value) { paper.row(table, name, value); };
    row("Record", words.text("{tree}@{date}, {state}", {{"tree", facts.tree},
                                                        {"date", facts.visitDate.text()},
                                                        {"state", words.state(paper.data.visitState)}}));
    row("Tree and square", facts.square.empty() ? facts.tree
                                                : words.text("{tree}, square {square}",
                                                             {{"tree", facts.tree}, {"square", facts.square}}));
    row("Place", facts.place ? placeWords(*facts.place, words) : std::string());
    row("Host as believed", sample.hostAsBelieved);
    row("Plant part", sample.plantPart);
    row("Pieces", sample.pieces ? paper.count(*sample.pieces) : std::string());
    row("Condition", sample.condition == "holes" ? words.text("with holes") : sample.condition);
    row("Taken by", facts.collectorName.empty() ? facts.collector : facts.collector + ", " + facts.collectorName);
    row("Why", sample.reason);
    if (!sample.note.empty())
        row("Note", sample.note);
    paper.out.blocks.emplace_back(std::move(table));
}

std::string giver(LeaveGiver given, const Words& words)
{
    switch (given) {
    case LeaveGiver::owner: return words.text("owner");
    case LeaveGiver::occupier: return words.text("occupier");
    case LeaveGiver::authority: return words.text("authority");
    }
    return {};
}

std::string lastDay(const Leave& leave, const Words& words)
{
    if (leave.withdrawn)
        return words.text("withdrawn from {date}", {{"date", words.date(*leave.withdrawn)}});
    return leave.to ? words.date(*leave.to) : words.text("until withdrawn");
}

void leaves(const Paper& paper)
{
    paper.heading("By whose leave");
    Table table = paper.table({"Given by", "Reference", "For", "From", "To"});
    bool authority = false, ground = false;
    for (const Leave& leave : paper.data.facts.leaves) {
        std::string scopes;
        for (const LeaveScope scope : leave.scopes)
            scopes += (scopes.empty() ? "" : ", ") + paper.words.code(name(scope));
        table.rows.push_back({giver(leave.giver, paper.words),
                              leave.reference.empty() ? paper.words.text("without a number") : leave.reference, scopes,
                              paper.words.date(leave.from), lastDay(leave, paper.words)});
        (leave.giver == LeaveGiver::authority ? authority : ground) = true;
    }
    if (!table.rows.empty())
        paper.out.blocks.emplace_back(std::move(table));
    if (!ground)
        paper.say("No leave of the owner or occupier is noted.", {}, Tone::caution);
    if (!authority)
        paper.say("No leave of the authority is noted. Tell the authority before this goes any further.", {}, Tone::caution);
}

void where(const Paper& paper)
{
    const SampleStatus& status = paper.data.status;
    paper.heading("Where it stands");
    paper.say("State: {state}.", {{"state", paper.words.state(status.state)}});
    const auto list = [&](const char* title, const std::vector<Finding>& findings, Tone tone) {
        if (findings.empty())
            return;
        paper.say(title, {}, tone);
        List items;
        for (const Finding& finding : findings)
            items.items.push_back(paper.words.finding(finding, paper.pack));
        paper.out.blocks.emplace_back(std::move(items));
    };
    list("Broken, and stays so:", status.breaks, Tone::caution);
    list("Still to be written down:", status.missing, Tone::plain);
    list("To be known:", status.remarks, Tone::note);
    if (status.mustBeVoid)
        paper.say("Double-bagging at the tree was not confirmed: this sample can never close.", {}, Tone::caution);
    if (!status.breaks.empty())
        paper.say("After a break in custody the result is never sole proof. The field record stands on its own "
                  "evidence.",
                  {}, Tone::note);
}

/// "out ... in ..." of a change of hands; the moment of anything else.
std::string when(const CustodyLine& line, const Words& words)
{
    if (line.out && line.in)
        return words.text("out {out}; in {in}", {{"out", momentWords(*line.out, words)}, {"in", momentWords(*line.in, words)}});
    if (line.in)
        return words.text("in {in}", {{"in", momentWords(*line.in, words)}});
    return line.out ? momentWords(*line.out, words) : words.text("no time");
}

std::string hands(const CustodyLine& line, const Words& words)
{
    if (!line.from.empty() && !line.to.empty())
        return words.text("{from} to {to}", {{"from", line.from}, {"to", line.to}});
    if (!line.to.empty())
        return words.text("to {to}", {{"to", line.to}});
    return line.from;
}

std::string cleaned(const CustodyLine& line, const Words& words)
{
    std::string out;
    const std::pair<const char*, Confirmed> items[] = {{"clothes", line.hygiene.clothes},
                                                       {"boots", line.hygiene.boots},
                                                       {"vehicle", line.hygiene.vehicle},
                                                       {"tools", line.hygiene.tools}};
    for (const auto& [item, done] : items) {
        const char* answer = done == Confirmed::done ? "clean" : done == Confirmed::noneUsed ? "none used" : "not confirmed";
        out += (out.empty() ? "" : ", ") + words.text("{item} {answer}", {{"item", words.text(item)},
                                                                            {"answer", words.text(answer)}});
    }
    return out;
}

/// All that a line says besides kind, moment, hands and place.
std::string facts(const CustodyLine& line, const Words& words)
{
    std::string out;
    const auto add = [&](const std::string& text) { out += (out.empty() || text.empty() ? "" : "; ") + text; };
    const auto fact = [&](const char* english, const std::string& value) {
        if (!value.empty())
            add(words.text(english, {{"value", value}}));
    };
    fact("bag {value}", line.bag);
    fact("seal {value}", line.seal);
    if (line.sealWhole)
        add(words.text(*line.sealWhole ? "seal whole" : "seal not whole"));
    if (line.pieces)
        fact("pieces: {value}", words.number(*line.pieces));
    fact("condition: {value}", line.condition);
    fact("travel: {value}", line.travel);
    if (line.celsius)
        fact("{value} °C", words.number(*line.celsius, 1));
    if (line.confirmed)
        add(words.text(*line.confirmed ? "both bags closed before leaving the tree"
                                       : "both bags not closed before leaving the tree"));
    if (line.kind == CustodyKind::onSite)
        add(cleaned(line, words));
    fact("report {value}", line.reportNumber);
    fact("finding: {value}", line.finding);
    fact("material: {value}", line.disposal);
    fact("how: {value}", line.method);
    fact("limits: {value}", line.limits);
    fact("host as the laboratory sees it: {value}", line.host);
    fact("instruction {value}", line.order);
    fact(line.kind == CustodyKind::disposal ? "witness: {value}" : "signed: {value}", line.signedBy);
    if (line.withBreak)
        add(words.text("closed with a break"));
    fact("reason: {value}", line.reason);
    fact("second person: {value}", line.secondPerson);
    fact("remark: {value}", line.remark);
    return out;
}

void lines(const Paper& paper)
{
    const auto& all = paper.data.facts.lines;
    paper.heading("Every line");
    if (all.empty())
        paper.say("No line has been written yet.");
    Table table = paper.table({"Line", "What", "When", "Hands", "Where", "Facts", "Written"});
    for (const CustodyLine& line : all) {
        std::string what = paper.words.custody(line.kind);
        if (line.corrects)
            what += paper.words.text(", in place of line {line}", {{"line", paper.count(*line.corrects)}});
        const auto correction = std::find_if(all.begin(), all.end(), [&](const CustodyLine& other) {
            return other.corrects == line.number;
        });
        if (correction != all.end())
            what += paper.words.text(", corrected by line {line}", {{"line", paper.count(correction->number)}});
        table.rows.push_back({paper.count(line.number), what, when(line, paper.words), hands(line, paper.words), line.place,
                              facts(line, paper.words), momentWords(line.written, paper.words)});
    }
    if (!table.rows.empty())
        paper.out.blocks.emplace_back(std::move(table));
    paper.say("Lines are never changed, only followed by one that says which line it corrects.", {}, Tone::note);
}

void nextHands(const Paper& paper)
{
    if (isOver(paper.data.status.state))
        return;
    paper.heading("Next changes of hands, by pencil");
    Table table = paper.table({"From", "Out: date and time", "To", "In: date and time", "Seal read off the bag",
                               "Whole?", "Pieces"});
    table.byHand = true;
    table.rows.resize(rowsByHand);
    paper.out.blocks.emplace_back(std::move(table));
    paper.say("Two different people at each change; a courier stands by the consignment number. Type these lines up and "
              "keep the paper.",
              {}, Tone::note);
}

/// What the programme sets; where nobody has, that is said.
void ofTheProgramme(const Paper& paper)
{
    const CustodyRecordData& data = paper.data;
    const SampleLimits& limits = data.limits;
    const Arguments hours{{"warn", paper.count(limits.warnHours)},
                          {"ask", paper.count(limits.askHours)},
                          {"rearing", paper.count(limits.rearingHours)}};
    if (data.limitsProposed)
        paper.say("Proposed limits, the programme's to set: warned of after {warn} hours from the seal, asked about after {ask}, of "
                  "no use for rearing after {rearing}.",
                  hours);
    else
        paper.say("Limits of the programme: warned of after {warn} hours from the seal, asked about after {ask}, of no use for "
                  "rearing after {rearing}.",
                  hours);
    if (data.mayMove.empty())
        paper.say("Who may move a sample is the programme's to set, and nobody has: ask the authority before it is moved.");
    else
        paper.say("In this programme samples are moved by: {who}.", {{"who", data.mayMove}});
    if (data.tell.empty())
        paper.say("Whom to tell of a find is the programme's to set, and nobody has: ask the coordinator or the authority.");
    else
        paper.say("Tell of a find: {who}.", {{"who", data.tell}});
}

void cautions(const Paper& paper)
{
    paper.heading("Cautions");
    List list;
    for (const Caution& caution : paper.pack.cautions)
        if (caution.topic == "samples")
            list.items.push_back(caution.words);
    list.items.push_back(paper.words.text("Live material is moved only by or for the plant-health authority, or under its "
                                          "written permission. Whether this bag may be moved, the authority says, in "
                                          "writing."));
    list.items.push_back(paper.words.text("Remains are destroyed, kept or returned only on written instruction."));
    list.items.push_back(paper.words.text("A result speaks of the material in the bag, never of the tree or the site."));
    paper.out.blocks.emplace_back(std::move(list));
    paper.regimes(paper.data.regimes);
    ofTheProgramme(paper);
    const Pack& pack = paper.pack;
    paper.out.blocks.emplace_back(Paragraph{pack.exportNote, Tone::caution});
    paper.say(paper.data.journalWhole ? "The journal behind this paper holds: {n} lines, each tied to the one before."
                                      : "The journal behind this paper does not hold. Treat every line here with doubt "
                                        "until it is explained.",
              {{"n", paper.count(static_cast<double>(paper.data.journalLines))}},
              paper.data.journalWhole ? Tone::plain : Tone::caution);
}

} // namespace

Document custodyRecord(const CustodyRecordData& data, const Pack& pack, const Words& words)
{
    Document out;
    const SampleFacts& facts = data.facts;
    out.language = pack.language.empty() ? "en" : pack.language;
    out.title = words.text("Custody record of sample {number}", {{"number", facts.sample.number}});
    out.subtitle = words.text("{store}. Made on {date}. {pack}, version {version}.",
                              {{"store", facts.storeName},
                               {"date", words.date(data.made)},
                               {"pack", pack.name},
                               {"version", pack.version}});
    if (facts.demonstration)
        out.demonstration = words.text("Demonstration: every person, place and sample on this paper is invented.");
    out.foot = facts.sample.number + ". " + pack.hazardLine + " " + pack.exportNote;
    out.code = facts.sample.number;
    const Paper paper{{pack, words, out}, data};
    out.blocks.emplace_back(Paragraph{pack.hazardLine, Tone::caution});
    taken(paper);
    leaves(paper);
    where(paper);
    lines(paper);
    nextHands(paper);
    cautions(paper);
    return out;
}

} // namespace cupule::report
