#include "core/rules/custody_detail.h"

#include <algorithm>
#include <limits>
#include <map>

#include "core/base/text.h"

namespace cupule {

std::vector<CustodyLine> linesInForce(std::span<const CustodyLine> lines)
{
    std::vector<CustodyLine> inForce;
    std::map<int, std::size_t> placeOf; // line number to its place, also for lines that were corrected
    for (const CustodyLine* line : custody::inOrder(lines)) {
        const auto target = line->corrects ? placeOf.find(*line->corrects) : placeOf.end();
        if (target != placeOf.end()) {
            inForce[target->second] = *line;
            placeOf[line->number] = target->second;
        } else {
            placeOf[line->number] = inForce.size();
            inForce.push_back(*line);
        }
    }
    return inForce;
}

namespace custody {

namespace {

std::string markOf(std::string_view text)
{
    std::string mark;
    std::size_t at = 0;
    while (at < text.size()) {
        const char32_t c = nextCodePoint(text, at);
        if (c > 0x20 && c != '-' && c != 0xA0 && !(c >= 0x2010 && c <= 0x2015))
            appendUtf8(mark, c);
    }
    return lowerAscii(mark);
}

/// In order of time; a transfer without times stays behind the line before it.
std::vector<const CustodyLine*> transfersInTime(const std::vector<CustodyLine>& lines)
{
    std::vector<std::pair<std::int64_t, const CustodyLine*>> timed;
    std::int64_t last = std::numeric_limits<std::int64_t>::min();
    for (const CustodyLine& line : lines) {
        if (line.kind != CustodyKind::handOver && line.kind != CustodyKind::receipt)
            continue;
        if (const auto at = happenedAt(line))
            last = at->utcMilliseconds;
        timed.emplace_back(last, &line);
    }
    std::stable_sort(timed.begin(), timed.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<const CustodyLine*> transfers;
    for (const auto& [at, line] : timed)
        transfers.push_back(line);
    return transfers;
}

} // namespace

Chain::Chain(const Sample& ofSample, std::span<const CustodyLine> all, const CustodyContext& in)
    : sample(ofSample), context(in), written(all), lines(linesInForce(all))
{
    const auto first = [this](CustodyKind kind) -> const CustodyLine* {
        const auto at =
            std::find_if(lines.begin(), lines.end(), [&](const CustodyLine& l) { return l.kind == kind; });
        return at == lines.end() ? nullptr : &*at;
    };
    const auto last = [this](CustodyKind kind) -> const CustodyLine* {
        const auto at =
            std::find_if(lines.rbegin(), lines.rend(), [&](const CustodyLine& l) { return l.kind == kind; });
        return at == lines.rend() ? nullptr : &*at;
    };
    cut = first(CustodyKind::cut);
    inner = first(CustodyKind::innerBag);
    outer = first(CustodyKind::outerBag);
    onSite = first(CustodyKind::onSite);
    result = last(CustodyKind::result);
    disposal = first(CustodyKind::disposal);
    close = last(CustodyKind::close);
    voided = first(CustodyKind::voided);
    transfers = transfersInTime(lines);
    for (const CustodyLine* transfer : transfers)
        if (transfer->kind == CustodyKind::receipt)
            receipt = transfer;
}

CivilDate Chain::dayTaken() const
{
    for (const CustodyLine* line : {cut, inner, outer})
        if (line && line->out)
            return CivilDate::of(*line->out);
    return CivilDate::of(cut ? cut->written : context.now);
}

std::string Chain::holderBefore(std::size_t at) const
{
    return at == 0 || at > transfers.size() ? std::string() : takerOf(*transfers[at - 1]);
}

std::optional<int> Chain::piecesTaken() const
{
    if (sample.pieces)
        return sample.pieces;
    for (const CustodyLine* line : {cut, inner})
        if (line && line->pieces)
            return line->pieces;
    return std::nullopt;
}

std::vector<const CustodyLine*> inOrder(std::span<const CustodyLine> lines)
{
    std::vector<const CustodyLine*> ordered;
    for (const CustodyLine& line : lines)
        ordered.push_back(&line);
    std::sort(ordered.begin(), ordered.end(), [](const CustodyLine* a, const CustodyLine* b) {
        if (a->number != b->number)
            return a->number < b->number;
        if (a->written.utcMilliseconds != b->written.utcMilliseconds)
            return a->written.utcMilliseconds < b->written.utcMilliseconds;
        return a->id < b->id;
    });
    return ordered;
}

Finding finding(std::string_view code, Severity severity, std::string field, Arguments arguments,
                std::string_view source)
{
    return Finding{std::string(code), severity, std::move(field), std::move(arguments), std::string(source)};
}

bool sameMark(std::string_view a, std::string_view b)
{
    return markOf(a) == markOf(b);
}

const Kind* kindNamed(std::string_view text, const Pack& pack)
{
    for (const Kind& kind : pack.kinds)
        if (sameMark(text, kind.id) || sameMark(text, kind.name) || sameMark(text, kind.commonName))
            return &kind;
    return nullptr;
}

std::string giverOf(const CustodyLine& line, const std::string& holder)
{
    if (!line.from.empty() || line.travel.empty() || holder.empty())
        return line.from;
    return sameMark(line.travel, holder) ? line.travel : std::string();
}

std::string takerOf(const CustodyLine& line)
{
    return line.to.empty() ? line.travel : line.to;
}

std::optional<Instant> arrivalOf(const CustodyLine& line)
{
    return line.in ? line.in : line.out;
}

std::optional<Instant> happenedAt(const CustodyLine& line)
{
    return line.out ? line.out : line.in;
}

double hoursBetween(const Instant& from, const Instant& to)
{
    return (static_cast<double>(to.utcMilliseconds) - static_cast<double>(from.utcMilliseconds)) /
           3'600'000.0;
}

} // namespace custody

} // namespace cupule
