// What has not been put down yet. Every item that is lacking is named, so that one look is enough.

#include "core/rules/custody_detail.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/record/names.h"
#include "core/rules/sample_number.h"

namespace cupule::custody {

namespace {

/// Gathers what is lacking at one link.
class Lacks {
public:
    Lacks(std::vector<Noted>& out, Link link, const CustodyLine* line)
        : m_out(out), m_link(link), m_line(line)
    {
    }

    /// Notes `code` unless `given`.
    void need(bool given, std::string_view code, std::string_view field, std::string_view source)
    {
        if (given)
            return;
        Arguments arguments;
        if (m_line)
            arguments.push_back({"line", std::to_string(m_line->number)});
        m_out.push_back({finding(code, Severity::stop, std::string(field), std::move(arguments), source),
                         m_link, m_line});
    }

private:
    std::vector<Noted>& m_out;
    Link m_link;
    const CustodyLine* m_line;
};

bool said(std::string_view text)
{
    return !trim(text).empty();
}

void sampleAndCut(const Chain& chain, std::vector<Noted>& out)
{
    const Sample& sample = chain.sample;
    Lacks tree(out, Link::tree, nullptr);
    tree.need(readSampleNumber(sample.number).has_value(), "custody.number", "sample/number",
              "ISO 7064:2003, MOD 37-2");
    tree.need(said(sample.plantPart), "custody.plant-part", "sample/plantPart", commonPractice);
    tree.need(!sample.collector.isNull() || (chain.cut && said(chain.cut->from)), "custody.collector",
              "sample/collector", custodyGuide);
    if (!chain.cut) {
        for (const LeaveGiver giver : {LeaveGiver::owner, LeaveGiver::authority})
            if (auto lacking = leaveLacking(giver, sample, chain.dayTaken(), chain.context, Severity::stop))
                out.push_back({std::move(*lacking), Link::tree, nullptr});
    }
    Lacks cut(out, Link::cut, chain.cut);
    cut.need(chain.cut, "custody.cut", "cut", custodyGuide);
    cut.need(!chain.cut || chain.cut->out, "custody.cut-time", "cut/out", custodyGuide);
    cut.need(chain.piecesTaken().has_value(), "custody.pieces", "sample/pieces", commonPractice);
}

void bags(const Chain& chain, std::vector<Noted>& out)
{
    const CustodyLine* bag = chain.inner;
    Lacks inner(out, Link::innerBag, bag);
    inner.need(bag, "custody.inner-bag", "inner-bag", packingGuide);
    inner.need(!bag || said(bag->bag), "custody.inner-bag-number", "inner-bag/bag", commonPractice);
    inner.need(!bag || bag->out, "custody.inner-bag-time", "inner-bag/out", commonPractice);

    bag = chain.outer;
    Lacks outer(out, Link::outerBag, bag);
    outer.need(bag, "custody.outer-bag", "outer-bag", packingGuide);
    outer.need(!bag || said(bag->bag), "custody.outer-bag-number", "outer-bag/bag", commonPractice);
    outer.need(!bag || bag->out, "custody.outer-bag-time", "outer-bag/out", commonPractice);
    outer.need(!bag || said(bag->seal), "custody.outer-bag-seal", "outer-bag/seal", packingGuide);
    const bool same = bag && chain.inner && said(bag->bag) && sameMark(bag->bag, chain.inner->bag);
    outer.need(!same, "custody.same-bag", "outer-bag/bag", commonPractice);
}

void beforeLeaving(const Chain& chain, std::vector<Noted>& out)
{
    const CustodyLine* line = chain.onSite;
    Lacks lacks(out, Link::outerBag, line);
    lacks.need(line && line->confirmed, "custody.not-confirmed-on-site", "on-site/confirmed", packingGuide);
    lacks.need(!line || line->out, "custody.on-site-time", "on-site/out", commonPractice);
    const Hygiene hygiene = line ? line->hygiene : Hygiene{};
    const auto cleaned = [](Confirmed value) { return value == Confirmed::done; };
    const auto settled = [](Confirmed value) { return value != Confirmed::open; };
    lacks.need(cleaned(hygiene.clothes), "custody.hygiene-clothes", "on-site/hygiene/clothes", hygieneGuide);
    lacks.need(cleaned(hygiene.boots), "custody.hygiene-boots", "on-site/hygiene/boots", hygieneGuide);
    lacks.need(settled(hygiene.vehicle), "custody.hygiene-vehicle", "on-site/hygiene/vehicle", hygieneGuide);
    lacks.need(settled(hygiene.tools), "custody.hygiene-tools", "on-site/hygiene/tools", hygieneGuide);
}

void handOver(const CustodyLine& line, const std::string& holder, std::vector<Noted>& out)
{
    Lacks lacks(out, Link::transfer, &line);
    lacks.need(said(giverOf(line, holder)), "custody.hand-over-from", "hand-over/from", custodyGuide);
    lacks.need(said(takerOf(line)), "custody.hand-over-to", "hand-over/to", custodyGuide);
    lacks.need(line.out.has_value(), "custody.hand-over-out", "hand-over/out", custodyGuide);
    lacks.need(line.in.has_value(), "custody.hand-over-in", "hand-over/in", custodyGuide);
    lacks.need(said(line.seal), "custody.hand-over-seal", "hand-over/seal", custodyGuide);
    lacks.need(line.sealWhole.has_value(), "custody.hand-over-seal-whole", "hand-over/sealWhole",
               custodyGuide);
}

void receipt(const CustodyLine& line, const std::string& holder, std::vector<Noted>& out)
{
    Lacks lacks(out, Link::transfer, &line);
    const bool heldAlready = said(line.to) && sameMark(line.to, holder);
    lacks.need(heldAlready || said(giverOf(line, holder)), "custody.receipt-from", "receipt/from",
               laboratoryStandard);
    lacks.need(said(line.to), "custody.receipt-by", "receipt/to", laboratoryStandard);
    lacks.need(arrivalOf(line).has_value(), "custody.receipt-in", "receipt/in", laboratoryStandard);
    lacks.need(said(line.seal), "custody.receipt-seal", "receipt/seal", laboratoryStandard);
    lacks.need(line.sealWhole.has_value(), "custody.receipt-seal-whole", "receipt/sealWhole",
               laboratoryStandard);
    lacks.need(line.pieces.has_value(), "custody.receipt-pieces", "receipt/pieces", laboratoryStandard);
}

void transfers(const Chain& chain, std::vector<Noted>& out)
{
    for (std::size_t i = 0; i < chain.transfers.size(); ++i) {
        const CustodyLine& line = *chain.transfers[i];
        if (line.kind == CustodyKind::receipt)
            receipt(line, chain.holderBefore(i), out);
        else
            handOver(line, chain.holderBefore(i), out);
    }
    Lacks laboratory(out, Link::transfer, nullptr);
    laboratory.need(chain.receipt, "custody.no-receipt", "receipt", laboratoryStandard);
}

void closing(const Chain& chain, std::vector<Noted>& out)
{
    const CustodyLine* line = chain.close;
    if (!line || !line->withBreak)
        return;
    Lacks lacks(out, Link::disposal, line);
    const bool second = said(line->secondPerson) && !sameMark(line->secondPerson, line->from);
    lacks.need(said(line->reason), "custody.close-reason", "close/reason", commonPractice);
    lacks.need(second, "custody.close-second-person", "close/secondPerson", commonPractice);
}

void resultOf(const Chain& chain, std::vector<Noted>& out)
{
    const CustodyLine* line = chain.result;
    Lacks lacks(out, Link::result, line);
    lacks.need(line, "custody.result", "result", laboratoryStandard);
    if (!line)
        return;
    const bool examined = line->finding != "not examined";
    const bool known = line->finding == "found" || line->finding == "not found" || !examined;
    lacks.need(known, "custody.result-finding", "result/finding", laboratoryStandard);
    lacks.need(!examined || said(line->reportNumber), "custody.result-report", "result/reportNumber",
               laboratoryStandard);
    lacks.need(line->out.has_value(), "custody.result-time", "result/out", laboratoryStandard);
    lacks.need(said(line->signedBy), "custody.result-signed", "result/signedBy", laboratoryStandard);
}

void disposalOf(const Chain& chain, std::vector<Noted>& out)
{
    const CustodyLine* line = chain.disposal;
    Lacks lacks(out, Link::disposal, line);
    lacks.need(line, "custody.disposal", "disposal", custodyGuide);
    if (!line)
        return;
    const bool destroyed = line->disposal == "destroyed", voucher = line->disposal == "voucher";
    const bool returned = line->disposal == "returned";
    lacks.need(destroyed || voucher || returned, "custody.disposal-kind", "disposal/disposal", custodyGuide);
    lacks.need(line->out.has_value(), "custody.disposal-time", "disposal/out", custodyGuide);
    lacks.need(!destroyed || said(line->order), "custody.disposal-order", "disposal/order", hygieneGuide);
    lacks.need(!destroyed || said(line->method), "custody.disposal-method", "disposal/method", hygieneGuide);
    lacks.need(!destroyed || said(line->signedBy), "custody.disposal-witness", "disposal/signedBy",
               commonPractice);
    lacks.need(!voucher || said(line->place), "custody.disposal-place", "disposal/place", custodyGuide);
    lacks.need(!returned || said(line->to), "custody.disposal-to", "disposal/to", custodyGuide);
}

} // namespace

void gatherMissing(const Chain& chain, std::vector<Noted>& out)
{
    if (chain.voided) {
        disposalOf(chain, out);
        Lacks(out, Link::disposal, chain.voided)
            .need(said(chain.voided->reason), "custody.void-reason", "void/reason", commonPractice);
        return;
    }
    sampleAndCut(chain, out);
    bags(chain, out);
    beforeLeaving(chain, out);
    transfers(chain, out);
    resultOf(chain, out);
    disposalOf(chain, out);
    closing(chain, out);
}

} // namespace cupule::custody
