#include "core/rules/custody.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/rules/custody_detail.h"

namespace cupule {

namespace {

using custody::Chain;
using custody::Gathered;
using custody::Noted;

constexpr std::string_view codes[] = {"custody.leave-authority",
                                      "custody.leave-owner",
                                      "custody.host-ruled-out",
                                      "custody.number",
                                      "custody.plant-part",
                                      "custody.collector",
                                      "custody.cut",
                                      "custody.cut-time",
                                      "custody.pieces",
                                      "custody.inner-bag",
                                      "custody.inner-bag-number",
                                      "custody.inner-bag-time",
                                      "custody.outer-bag",
                                      "custody.outer-bag-number",
                                      "custody.outer-bag-time",
                                      "custody.outer-bag-seal",
                                      "custody.same-bag",
                                      "custody.not-confirmed-on-site",
                                      "custody.on-site-time",
                                      "custody.hygiene-clothes",
                                      "custody.hygiene-boots",
                                      "custody.hygiene-vehicle",
                                      "custody.hygiene-tools",
                                      "custody.hand-over-from",
                                      "custody.hand-over-to",
                                      "custody.hand-over-out",
                                      "custody.hand-over-in",
                                      "custody.hand-over-seal",
                                      "custody.hand-over-seal-whole",
                                      "custody.receipt-from",
                                      "custody.receipt-by",
                                      "custody.receipt-in",
                                      "custody.receipt-seal",
                                      "custody.receipt-seal-whole",
                                      "custody.receipt-pieces",
                                      "custody.no-receipt",
                                      "custody.close-reason",
                                      "custody.close-second-person",
                                      "custody.result",
                                      "custody.result-finding",
                                      "custody.result-report",
                                      "custody.result-time",
                                      "custody.result-signed",
                                      "custody.disposal",
                                      "custody.disposal-kind",
                                      "custody.disposal-time",
                                      "custody.disposal-order",
                                      "custody.disposal-method",
                                      "custody.disposal-witness",
                                      "custody.disposal-place",
                                      "custody.disposal-to",
                                      "custody.void-reason",
                                      "custody.pieces-differ",
                                      "custody.bag-before-cut",
                                      "custody.outer-before-inner",
                                      "custody.same-closing-time",
                                      "custody.bag-used-before",
                                      "custody.seal-used-before",
                                      "custody.sample-number-twice",
                                      "custody.late-bagging",
                                      "custody.not-double-bagged",
                                      "custody.confirmed-after-leaving",
                                      "custody.confirmed-by-correction",
                                      "custody.same-person",
                                      "custody.not-joined",
                                      "custody.in-before-out",
                                      "custody.gap",
                                      "custody.out-before-in",
                                      "custody.seal-differs",
                                      "custody.seal-broken",
                                      "custody.result-before-receipt",
                                      "custody.host-differs",
                                      "custody.hours-rearing",
                                      "custody.hours-ask",
                                      "custody.hours-warn",
                                      "custody.written-afterwards",
                                      "custody.written-afterwards-unsaid",
                                      "custody.number-twice",
                                      "custody.correction-unknown",
                                      "custody.corrected-unexplained",
                                      "custody.corrected",
                                      "custody.line-twice",
                                      "custody.future",
                                      "custody.temperature",
                                      "custody.found",
                                      "custody.disposed-before-result",
                                      "custody.host-named-otherwise",
                                      "custody.visit-rejected",
                                      "custody.close-not-good"};

std::vector<Finding> findingsOf(const std::vector<Noted>& noted)
{
    std::vector<Finding> findings;
    for (const Noted& item : noted)
        findings.push_back(item.finding);
    return findings;
}

bool notDoubleBagged(const Chain& chain)
{
    return std::any_of(chain.lines.begin(), chain.lines.end(), [](const CustodyLine& line) {
        return line.kind == CustodyKind::onSite && line.confirmed == false;
    });
}

/// How far it has come, closing left aside.
SampleState stateReached(const Chain& chain)
{
    if (chain.disposal)
        return SampleState::disposed;
    if (chain.result)
        return SampleState::examined;
    if (chain.receipt)
        return SampleState::received;
    if (!chain.transfers.empty())
        return SampleState::moving;
    const bool sealed = chain.inner && chain.outer && !trim(chain.outer->seal).empty();
    return sealed ? SampleState::sealed : SampleState::collected;
}

void settleState(const Chain& chain, SampleStatus& status)
{
    status.state = stateReached(chain);
    status.mustBeVoid = !chain.voided && notDoubleBagged(chain);
    if (chain.voided) {
        status.state = SampleState::voided;
        return;
    }
    const bool complete = status.missing.empty() && !status.mustBeVoid;
    const bool whole = complete && status.breaks.empty();
    const bool withBreak = complete && !status.breaks.empty();
    if (chain.close && complete && (whole || chain.close->withBreak)) {
        status.state = chain.close->withBreak ? SampleState::closedWithBreak : SampleState::closed;
        return;
    }
    status.canCloseWhole = whole;
    status.canCloseWithBreak = withBreak;
    if (chain.close)
        status.remarks.push_back(custody::finding("custody.close-not-good", Severity::ask, "close",
                                                  {{"line", std::to_string(chain.close->number)}},
                                                  custody::custodyGuide));
}

} // namespace

SampleLimits proposedLimits(const Pack& pack)
{
    return {pack.settings.sampleWarnHours, pack.settings.sampleAskHours, pack.settings.sampleVoidRearingHours};
}

std::span<const std::string_view> custodyCodes()
{
    return codes;
}

SampleStatus sampleStatus(const Sample& sample, std::span<const CustodyLine> lines,
                          const CustodyContext& context)
{
    const Chain chain(sample, lines, context);
    Gathered gathered;
    custody::gatherMissing(chain, gathered.missing);
    custody::gatherBreaks(chain, gathered.breaks);
    custody::gatherRemarks(chain, gathered.remarks);

    SampleStatus status;
    status.chain = custody::drawChain(chain, gathered);
    status.missing = findingsOf(gathered.missing);
    status.breaks = findingsOf(gathered.breaks);
    status.remarks = std::move(gathered.remarks);
    status.hoursSinceSeal = custody::hoursSinceSeal(chain);
    settleState(chain, status);
    return status;
}

} // namespace cupule
