// What contradicts itself or shows that the chain was open. Nothing here is repaired, only named.

#include "core/rules/custody_detail.h"

#include <algorithm>
#include <cstdlib>

#include "core/base/text.h"
#include "core/record/names.h"

namespace cupule::custody {

namespace {

/// Hands meet: more between giving and taking than this needs a way of travel. Common practice, no source.
constexpr double handMinutes = 15;

class Breaks {
public:
    Breaks(std::vector<Noted>& out, Link link, const CustodyLine* line)
        : m_out(out), m_link(link), m_line(line)
    {
    }

    void add(std::string_view code, std::string_view field, Arguments arguments,
             std::string_view source = custodyGuide, Severity severity = Severity::ask)
    {
        if (m_line)
            arguments.insert(arguments.begin(), {"line", std::to_string(m_line->number)});
        m_out.push_back(
            {finding(code, severity, std::string(field), std::move(arguments), source), m_link, m_line});
    }

private:
    std::vector<Noted>& m_out;
    Link m_link;
    const CustodyLine* m_line;
};

bool before(const std::optional<Instant>& a, const std::optional<Instant>& b)
{
    return a && b && a->utcMilliseconds < b->utcMilliseconds;
}

std::string minutesText(const Instant& from, const Instant& to)
{
    return std::to_string(std::llabs(static_cast<long long>(hoursBetween(from, to) * 60)));
}

bool among(std::string_view mark, std::span<const std::string> others)
{
    return std::any_of(others.begin(), others.end(),
                       [&](const std::string& other) { return sameMark(mark, other); });
}

void pieces(const Chain& chain, const CustodyLine* line, Link link, std::vector<Noted>& out)
{
    const auto taken = chain.piecesTaken();
    if (line && line->pieces && taken && *line->pieces != *taken)
        Breaks(out, link, line)
            .add("custody.pieces-differ", "pieces",
                 {{"taken", std::to_string(*taken)}, {"counted", std::to_string(*line->pieces)}});
}

void taking(const Chain& chain, std::vector<Noted>& out)
{
    if (!chain.cut)
        return;
    for (const LeaveGiver giver : {LeaveGiver::owner, LeaveGiver::authority})
        if (auto lacking = leaveLacking(giver, chain.sample, chain.dayTaken(), chain.context, Severity::ask))
            out.push_back({std::move(*lacking), Link::tree, nullptr});
    pieces(chain, chain.cut, Link::cut, out);
}

void bagTimes(const Chain& chain, std::vector<Noted>& out)
{
    const CustodyLine *inner = chain.inner, *outer = chain.outer;
    if (inner && chain.cut && before(inner->out, chain.cut->out))
        Breaks(out, Link::innerBag, inner).add("custody.bag-before-cut", "inner-bag/out", {}, commonPractice);
    if (!inner || !outer || !inner->out || !outer->out)
        return;
    Breaks at(out, Link::outerBag, outer);
    if (before(outer->out, inner->out))
        at.add("custody.outer-before-inner", "outer-bag/out",
               {{"minutes", minutesText(*outer->out, *inner->out)}}, commonPractice);
    else if (!before(inner->out, outer->out))
        at.add("custody.same-closing-time", "outer-bag/out", {}, commonPractice);
}

void usedBefore(const Chain& chain, std::vector<Noted>& out)
{
    for (const CustodyLine* bag : {chain.inner, chain.outer}) {
        if (!bag || trim(bag->bag).empty() || !among(bag->bag, chain.context.bagsElsewhere))
            continue;
        const bool isInner = bag == chain.inner;
        Breaks(out, isInner ? Link::innerBag : Link::outerBag, bag)
            .add("custody.bag-used-before", isInner ? "inner-bag/bag" : "outer-bag/bag", {{"bag", bag->bag}},
                 commonPractice);
    }
    const CustodyLine* outer = chain.outer;
    if (outer && !trim(outer->seal).empty() && among(outer->seal, chain.context.sealsElsewhere))
        Breaks(out, Link::outerBag, outer)
            .add("custody.seal-used-before", "outer-bag/seal", {{"seal", outer->seal}}, commonPractice);
}

/// Two stores gave one number to two samples. A sample that its number does not tell from another is not proof by itself: ASTM D4840
/// rests on each sample's own mark.
void numberTwice(const Chain& chain, std::vector<Noted>& out)
{
    if (!chain.context.numberElsewhere.empty())
        Breaks(out, Link::cut, chain.cut)
            .add("custody.sample-number-twice", "number",
                 {{"number", chain.sample.number}, {"tree", chain.context.numberElsewhere.front()}});
}

/// When the tree was left, as well as it is known: the first hand-over, or the confirmation on site,
/// whichever is earlier.
std::optional<Instant> leftTree(const Chain& chain)
{
    std::optional<Instant> left = chain.onSite ? chain.onSite->out : std::nullopt;
    if (!chain.transfers.empty()) {
        const auto given = happenedAt(*chain.transfers.front());
        if (given && (!left || before(given, left)))
            left = given;
    }
    return left;
}

void lateBagging(const Chain& chain, std::vector<Noted>& out)
{
    const auto left = leftTree(chain);
    for (const CustodyLine* bag : {chain.inner, chain.outer}) {
        if (!bag || !before(left, bag->out))
            continue;
        const bool isInner = bag == chain.inner;
        Breaks(out, isInner ? Link::innerBag : Link::outerBag, bag)
            .add("custody.late-bagging", isInner ? "inner-bag/out" : "outer-bag/out",
                 {{"minutes", minutesText(*left, *bag->out)}}, packingGuide);
    }
}

/// Local second of the day at which something happened, where its offset is known.
std::optional<std::int64_t> localSecond(const std::optional<Instant>& at)
{
    if (!at || !at->offsetMinutes)
        return std::nullopt;
    constexpr std::int64_t day = 86'400;
    const std::int64_t second = at->utcMilliseconds / 1000 + std::int64_t{*at->offsetMinutes} * 60;
    return ((second % day) + day) % day;
}

void onSite(const Chain& chain, std::vector<Noted>& out)
{
    for (const CustodyLine& line : chain.lines)
        if (line.kind == CustodyKind::onSite && line.confirmed == false)
            Breaks(out, Link::outerBag, &line)
                .add("custody.not-double-bagged", "on-site/confirmed", {}, packingGuide, Severity::stop);
    const CustodyLine* line = chain.onSite;
    const bool deniedFirst =
        line && line->confirmed == true &&
        std::any_of(chain.written.begin(), chain.written.end(), [](const CustodyLine& l) {
            return l.kind == CustodyKind::onSite && l.confirmed == false;
        });
    if (deniedFirst)
        Breaks(out, Link::outerBag, line)
            .add("custody.confirmed-by-correction", "on-site/confirmed", {}, packingGuide);
    if (!line || !line->hygiene.leftSite)
        return;
    const auto confirmed = localSecond(line->out);
    if (!confirmed)
        return;
    // A clock text has whole minutes: the same minute is not after. More than half a day is the next day.
    const std::int64_t minutesLate = *confirmed / 60 - line->hygiene.leftSite->secondOfDay / 60;
    if (minutesLate > 0 && minutesLate < 12 * 60)
        Breaks(out, Link::outerBag, line)
            .add("custody.confirmed-after-leaving", "on-site/hygiene/leftSite",
                 {{"left", line->hygiene.leftSite->text()}}, packingGuide);
}

/// The names of those who were at the tree.
std::vector<std::string> peopleAtTree(const Chain& chain)
{
    std::vector<std::string> names;
    for (const CustodyLine* line : {chain.cut, chain.inner, chain.outer, chain.onSite})
        if (line && !trim(line->from).empty())
            names.push_back(line->from);
    return names;
}

/// Whether a receipt only says that what was handed over has come: its taker holds the sample already.
bool acknowledges(const CustodyLine& line, const std::string& holder)
{
    return line.kind == CustodyKind::receipt && !holder.empty() && sameMark(line.to, holder);
}

void joins(const Chain& chain, std::size_t at, std::vector<Noted>& out)
{
    const CustodyLine& line = *chain.transfers[at];
    const std::string holder = chain.holderBefore(at);
    const std::string giver = giverOf(line, holder), taker = takerOf(line);
    Breaks breaks(out, Link::transfer, &line);
    const std::string field(line.kind == CustodyKind::receipt ? "receipt/from" : "hand-over/from");
    if (!giver.empty() && !taker.empty() && sameMark(giver, taker))
        breaks.add("custody.same-person", field, {{"name", giver}});
    if (giver.empty() || acknowledges(line, holder))
        return;
    if (at > 0) {
        if (!holder.empty() && !sameMark(giver, holder))
            breaks.add("custody.not-joined", field, {{"giver", giver}, {"holder", holder}});
        return;
    }
    const auto names = peopleAtTree(chain);
    if (!names.empty() && !among(giver, names))
        breaks.add("custody.not-joined", field, {{"giver", giver}, {"holder", names.back()}});
}

void transferTimes(const Chain& chain, std::size_t at, std::vector<Noted>& out)
{
    const CustodyLine& line = *chain.transfers[at];
    Breaks breaks(out, Link::transfer, &line);
    const std::string kind(line.kind == CustodyKind::receipt ? "receipt" : "hand-over");
    if (before(line.in, line.out))
        breaks.add("custody.in-before-out", kind + "/in", {{"minutes", minutesText(*line.in, *line.out)}});
    else if (line.in && line.out && hoursBetween(*line.out, *line.in) * 60 > handMinutes &&
             trim(line.travel).empty())
        breaks.add("custody.gap", kind + "/in", {{"minutes", minutesText(*line.out, *line.in)}});
    if (at == 0)
        return;
    const auto had = arrivalOf(*chain.transfers[at - 1]);
    const auto gave = happenedAt(line);
    if (before(gave, had))
        breaks.add("custody.out-before-in", kind + "/out", {{"minutes", minutesText(*gave, *had)}});
}

void writtenLate(const CustodyLine& line, std::vector<Noted>& out)
{
    if (const auto hours = hoursWrittenLate(line); hours && !saysWhyLate(line))
        Breaks(out, Link::transfer, &line)
            .add("custody.written-afterwards-unsaid", name(line.kind), {{"hours", *hours}});
}

void seals(const Chain& chain, const CustodyLine& line, std::vector<Noted>& out)
{
    Breaks breaks(out, Link::transfer, &line);
    const std::string kind(line.kind == CustodyKind::receipt ? "receipt" : "hand-over");
    const std::string_view put = chain.outer ? trim(chain.outer->seal) : std::string_view();
    if (!put.empty() && !trim(line.seal).empty() && !sameMark(put, line.seal))
        breaks.add("custody.seal-differs", kind + "/seal", {{"put", std::string(put)}, {"read", line.seal}});
    if (line.sealWhole == false)
        breaks.add("custody.seal-broken", kind + "/sealWhole", {});
}

void laboratory(const Chain& chain, std::vector<Noted>& out)
{
    const CustodyLine* result = chain.result;
    if (!result)
        return;
    if (chain.receipt && before(result->out, arrivalOf(*chain.receipt)))
        Breaks(out, Link::result, result)
            .add("custody.result-before-receipt", "result/out", {}, laboratoryStandard);
    const Kind* kind = chain.context.pack ? kindNamed(result->host, *chain.context.pack) : nullptr;
    if (kind && !kind->host)
        Breaks(out, Link::result, result)
            .add("custody.host-differs", "result/host",
                 {{"laboratory", result->host}, {"believed", chain.sample.hostAsBelieved}}, custodyGuide);
}

} // namespace

void gatherBreaks(const Chain& chain, std::vector<Noted>& out)
{
    taking(chain, out);
    pieces(chain, chain.inner, Link::innerBag, out);
    bagTimes(chain, out);
    usedBefore(chain, out);
    numberTwice(chain, out);
    lateBagging(chain, out);
    onSite(chain, out);
    for (std::size_t i = 0; i < chain.transfers.size(); ++i) {
        joins(chain, i, out);
        transferTimes(chain, i, out);
        writtenLate(*chain.transfers[i], out);
        seals(chain, *chain.transfers[i], out);
        pieces(chain, chain.transfers[i], Link::transfer, out);
    }
    laboratory(chain, out);
}

} // namespace cupule::custody
