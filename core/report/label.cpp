#include "core/report/label.h"

#include <algorithm>

#include "core/report/moments.h"
#include "core/rules/custody.h"

namespace cupule::report {

namespace {

using Parts = std::vector<LabelPart>;

constexpr double timeRoom = 13; // of a pencil's "11.24"
constexpr double nameRoom = 22;

LabelPart words(std::string text)
{
    return {LabelPart::Kind::words, std::move(text), 0};
}

LabelPart blank(double millimetres)
{
    return {LabelPart::Kind::blank, {}, millimetres};
}

LabelPart box(std::string text)
{
    return {LabelPart::Kind::box, std::move(text), 0};
}

/// The facts of one sample with the words for them.
struct Writer {
    const SampleFacts& facts;
    const Pack& pack;
    const Words& say;
    std::vector<CustodyLine> inForce = linesInForce(facts.lines);

    [[nodiscard]] const CustodyLine* first(CustodyKind kind) const
    {
        const auto at = std::find_if(inForce.begin(), inForce.end(),
                                     [&](const CustodyLine& line) { return line.kind == kind; });
        return at == inForce.end() ? nullptr : &*at;
    }
    [[nodiscard]] LabelRow row(const char* name, Parts parts) const { return {say.text(name), std::move(parts)}; }

    [[nodiscard]] std::string collector() const
    {
        return facts.collectorName.empty() ? facts.collector : facts.collector + ", " + facts.collectorName;
    }
    [[nodiscard]] LabelRow taken() const
    {
        if (const CustodyLine* cut = first(CustodyKind::cut); cut != nullptr && cut->out)
            return row("taken", {words(say.text("{at}, by {who}", {{"at", momentWords(*cut->out, say)}, {"who", collector()}}))});
        return row("taken", {words(say.date(facts.visitDate) + ","), blank(timeRoom),
                             words(say.text("h by {who}", {{"who", collector()}}))});
    }
    [[nodiscard]] LabelRow what() const
    {
        const Sample& sample = facts.sample;
        if (sample.pieces)
            return row("what", {words(say.text("{part} × {n}", {{"part", sample.plantPart},
                                                                {"n", say.number(*sample.pieces)}}))});
        return row("what", {words(sample.plantPart + " ×"), blank(timeRoom)});
    }
    [[nodiscard]] LabelRow host() const
    {
        if (facts.sample.hostAsBelieved.empty())
            return row("host", {blank(2 * nameRoom)});
        return row("host", {words(say.text("{host}, as {who} believes",
                                           {{"host", facts.sample.hostAsBelieved}, {"who", facts.collector}}))});
    }
    [[nodiscard]] LabelRow leave() const
    {
        const auto leave = std::find_if(facts.leaves.begin(), facts.leaves.end(), [](const Leave& each) {
            return each.giver == LeaveGiver::authority;
        });
        if (leave == facts.leaves.end())
            return row("leave", {words(say.text("None of the authority is noted."))});
        const std::string reference = leave->reference.empty() ? say.text("without a number") : leave->reference;
        if (!leave->to)
            return row("leave", {words(say.text("{reference}, of the authority", {{"reference", reference}}))});
        return row("leave", {words(say.text("{reference}, of the authority, to {date}",
                                            {{"reference", reference}, {"date", say.date(*leave->to)}}))});
    }
    /// With its datum and how far off it may be, as Darwin Core asks.
    [[nodiscard]] LabelRow place() const
    {
        if (!facts.place)
            return row("place", {blank(2 * nameRoom)});
        return row("place", {words(placeWords(*facts.place, say))});
    }
    [[nodiscard]] Parts closedAt(const CustodyLine* bag) const
    {
        if (bag != nullptr && bag->out)
            return {words(momentWords(*bag->out, say))};
        return {blank(timeRoom), words(say.text("h by")), blank(nameRoom)};
    }
    [[nodiscard]] LabelRow state() const
    {
        const std::string& condition = facts.sample.condition;
        if (!condition.empty())
            return row("state", {words(condition == "holes" ? say.text("with holes") : say.text(condition.c_str()))});
        return row("state", {box(say.text("fresh")), box(say.text("dry")), box(say.text("with holes")),
                             box(say.text("no holes"))});
    }
    [[nodiscard]] LabelRow seal() const
    {
        const CustodyLine* bag = first(CustodyKind::outerBag);
        Parts parts{bag != nullptr && !bag->seal.empty() ? words(bag->seal) : blank(timeRoom), words(say.text("closed"))};
        for (auto& part : closedAt(bag))
            parts.push_back(std::move(part));
        return row("seal", std::move(parts));
    }
    [[nodiscard]] LabelRow takenIn() const
    {
        return row("taken in", {blank(timeRoom), words(say.text("h by")), blank(timeRoom), words(say.text("seal whole")),
                                box(say.text("yes")), box(say.text("no"))});
    }
    [[nodiscard]] LabelRow why() const
    {
        if (facts.sample.reason.empty())
            return row("why", {blank(2 * nameRoom)});
        return row("why", {words(facts.sample.reason)});
    }
    [[nodiscard]] Label label(LabelKind kind, const char* title, CustodyKind bag, std::vector<LabelRow> rows) const
    {
        Label out;
        out.kind = kind;
        out.title = say.text("{title}, part 1 of 1", {{"title", say.text(title)}});
        if (const CustodyLine* line = kind == LabelKind::document ? nullptr : first(bag))
            out.bag = line->bag;
        out.number = facts.sample.number;
        const Arguments where{{"record", facts.tree + "@" + facts.visitDate.text()}, {"square", facts.square}};
        out.where = say.text(facts.square.empty() ? "record {record}" : "record {record}, square {square}", where);
        out.rows = std::move(rows);
        out.hazard = pack.hazardLine;
        if (facts.demonstration)
            out.demonstration = say.text("Demonstration: invented, no real sample");
        return out;
    }
};

std::string askWords(const SampleFacts& facts, const std::string& ask, const Words& say)
{
    const std::string& who = !ask.empty() ? ask : !facts.answers.empty() ? facts.answers : facts.storeName;
    return say.text("Ask {who}, by the number above", {{"who", who}});
}

} // namespace

std::vector<Label> sampleLabels(const SampleFacts& facts, const std::string& ask, const Pack& pack, const Words& say)
{
    const Writer writer{facts, pack, say};
    std::vector<Label> labels;
    labels.push_back(writer.label(LabelKind::innerBag, "Inner bag", CustodyKind::innerBag,
                                  {writer.taken(), writer.what(), writer.host(), writer.leave(),
                                   writer.row("closed", writer.closedAt(writer.first(CustodyKind::innerBag))),
                                   writer.state()}));
    labels.push_back(writer.label(LabelKind::outerBag, "Outer bag", CustodyKind::outerBag,
                                  {writer.taken(), writer.what(), writer.host(), writer.leave(), writer.seal(),
                                   writer.takenIn()}));
    labels.push_back(writer.label(LabelKind::document, "Papers", CustodyKind::cut,
                                  {writer.taken(), writer.place(), writer.what(), writer.host(), writer.leave(),
                                   writer.why()}));
    for (Label& label : labels)
        label.ask = askWords(facts, ask, say);
    return labels;
}

std::vector<Label> reservedLabels(const std::string& number, const SampleFacts& facts, const std::string& ask, const Pack& pack,
                                  const Words& say)
{
    SampleFacts none;
    none.demonstration = facts.demonstration;
    none.sample.number = number;
    const Writer writer{none, pack, say};
    const auto open = [&](const char* name, double room = 2 * nameRoom) { return writer.row(name, {blank(room)}); };
    const LabelRow taken = writer.row("taken", {blank(nameRoom), blank(timeRoom), words(say.text("h by")), blank(nameRoom)});
    const LabelRow what = writer.row("what", {blank(nameRoom), words("×"), blank(timeRoom)});
    std::vector<Label> labels;
    labels.push_back(writer.label(LabelKind::innerBag, "Inner bag", CustodyKind::innerBag,
                                  {taken, what, open("host"), open("leave"), writer.row("closed", writer.closedAt(nullptr)),
                                   writer.state()}));
    labels.push_back(writer.label(LabelKind::outerBag, "Outer bag", CustodyKind::outerBag,
                                  {taken, what, open("host"), open("leave"), writer.seal(), writer.takenIn()}));
    labels.push_back(writer.label(LabelKind::document, "Papers", CustodyKind::cut,
                                  {taken, open("place"), what, open("host"), open("leave"), open("why")}));
    for (Label& label : labels) {
        label.where = say.text("record");
        label.reserved = true;
        label.ask = askWords(facts, ask, say);
    }
    return labels;
}

} // namespace cupule::report
