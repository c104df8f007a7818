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

    [[nodiscard]] LabelRow taken() const
    {
        if (const CustodyLine* cut = first(CustodyKind::cut); cut != nullptr && cut->out)
            return row("taken", {words(momentWords(*cut->out, say))});
        return row("taken", {words(say.date(facts.visitDate) + ","), blank(timeRoom), words(say.text("h"))});
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
    [[nodiscard]] LabelRow by() const
    {
        const auto leave = std::find_if(facts.leaves.begin(), facts.leaves.end(), [](const Leave& each) {
            return each.giver == LeaveGiver::authority;
        });
        if (leave == facts.leaves.end())
            return row("by", {words(say.text("{who}. No leave of the authority is noted.", {{"who", facts.collector}}))});
        const std::string reference = leave->reference.empty() ? say.text("without a number") : leave->reference;
        if (!leave->to)
            return row("by", {words(say.text("{who}. Leave {reference}",
                                             {{"who", facts.collector}, {"reference", reference}}))});
        return row("by", {words(say.text("{who}. Leave {reference} to {date}",
                                         {{"who", facts.collector}, {"reference", reference}, {"date", say.date(*leave->to)}}))});
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
    [[nodiscard]] LabelRow record() const
    {
        return row("record", {words(facts.tree + "@" + facts.visitDate.text())});
    }
    [[nodiscard]] Label label(LabelKind kind, const char* title, CustodyKind bag, std::vector<LabelRow> rows) const
    {
        Label out;
        out.kind = kind;
        out.title = say.text(title);
        if (const CustodyLine* line = kind == LabelKind::document ? nullptr : first(bag))
            out.bag = line->bag;
        out.number = facts.sample.number;
        const Arguments place{{"tree", facts.tree}, {"square", facts.square}};
        out.where = say.text(facts.square.empty() ? "tree {tree}" : "tree {tree}, square {square}", place);
        out.rows = std::move(rows);
        out.hazard = pack.hazardLine;
        if (facts.demonstration)
            out.demonstration = say.text("Demonstration: invented, no real sample");
        return out;
    }
};

} // namespace

std::vector<Label> sampleLabels(const SampleFacts& facts, const std::string& ask, const Pack& pack, const Words& say)
{
    const Writer writer{facts, pack, say};
    std::vector<Label> labels;
    labels.push_back(writer.label(LabelKind::innerBag, "Inner bag", CustodyKind::innerBag,
                                  {writer.taken(), writer.what(), writer.host(), writer.by(),
                                   writer.row("closed", writer.closedAt(writer.first(CustodyKind::innerBag))),
                                   writer.state()}));
    labels.push_back(writer.label(LabelKind::outerBag, "Outer bag", CustodyKind::outerBag,
                                  {writer.taken(), writer.what(), writer.host(), writer.by(), writer.seal(),
                                   writer.takenIn()}));
    labels.push_back(writer.label(LabelKind::document, "Papers", CustodyKind::cut,
                                  {writer.record(), writer.taken(), writer.what(), writer.host(), writer.by(),
                                   writer.why()}));
    for (Label& label : labels)
        label.ask = say.text("Ask {who}, by the number above", {{"who", ask.empty() ? facts.storeName : ask}});
    return labels;
}

} // namespace cupule::report
