// What is worth knowing about a sample and neither keeps it open nor breaks its chain.

#include "core/rules/custody_detail.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/text.h"
#include "core/record/names.h"

namespace cupule::custody {

namespace {

constexpr double writtenLateHours = 12;      ///< common practice, no source
constexpr double clockToleranceHours = 0.25; ///< common practice, no source
constexpr double coolFrom = 2, coolTo = 8;   ///< degrees Celsius; from memory, unverified

std::string wholeHours(double hours)
{
    return numberText(std::round(hours));
}

Arguments lineArgument(const CustodyLine& line)
{
    return {{"line", std::to_string(line.number)}};
}

void timeSinceSeal(const Chain& chain, std::vector<Finding>& out)
{
    const auto hours = hoursSinceSeal(chain);
    if (!hours || !chain.context.pack || chain.voided)
        return;
    const SampleLimits limits = chain.context.limits.value_or(proposedLimits(*chain.context.pack));
    const auto say = [&](std::string_view code, Severity severity, double limit) {
        out.push_back(finding(code, severity, "hand-over",
                              {{"hours", wholeHours(*hours)}, {"limitHours", numberText(limit)}},
                              "author's judgement; a setting of the programme"));
    };
    if (*hours > limits.rearingHours)
        say("custody.hours-rearing", Severity::ask, limits.rearingHours);
    else if (*hours > limits.askHours)
        say("custody.hours-ask", Severity::ask, limits.askHours);
    else if (*hours > limits.warnHours)
        say("custody.hours-warn", Severity::note, limits.warnHours);
}

void writtenLate(const CustodyLine& line, std::vector<Finding>& out)
{
    const auto hours = hoursWrittenLate(line);
    const bool said = saysWhyLate(line);
    if (!hours || (isTransfer(line) && !said))
        return;
    Arguments arguments = lineArgument(line);
    arguments.push_back({"hours", *hours});
    out.push_back(finding(said ? "custody.written-afterwards" : "custody.written-afterwards-unsaid",
                          said ? Severity::note : Severity::ask, std::string(name(line.kind)),
                          std::move(arguments), custodyGuide));
}

void corrections(const Chain& chain, std::vector<Finding>& out)
{
    std::set<int> numbers;
    for (const CustodyLine* line : inOrder(chain.written)) {
        Arguments arguments = lineArgument(*line);
        const auto say = [&](std::string_view code, Severity severity) {
            out.push_back(finding(code, severity, std::string(name(line->kind)), arguments, custodyGuide));
        };
        if (numbers.contains(line->number))
            say("custody.number-twice", Severity::ask);
        if (line->corrects) {
            arguments.push_back({"corrects", std::to_string(*line->corrects)});
            if (!numbers.contains(*line->corrects))
                say("custody.correction-unknown", Severity::ask);
            else if (trim(line->reason).empty() && trim(line->remark).empty())
                say("custody.corrected-unexplained", Severity::ask);
            else
                say("custody.corrected", Severity::note);
        }
        numbers.insert(line->number);
    }
}

/// A second cut, bag or departure that does not say which line it corrects.
void onceOnly(const Chain& chain, std::vector<Finding>& out)
{
    for (const CustodyLine& line : chain.lines) {
        const bool counts =
            &line == chain.cut || &line == chain.inner || &line == chain.outer || &line == chain.onSite;
        const bool once = line.kind == CustodyKind::cut || line.kind == CustodyKind::innerBag ||
                          line.kind == CustodyKind::outerBag || line.kind == CustodyKind::onSite;
        if (once && !counts)
            out.push_back(finding("custody.line-twice", Severity::ask, std::string(name(line.kind)),
                                  lineArgument(line), custodyGuide));
    }
}

void everyLine(const Chain& chain, std::vector<Finding>& out)
{
    const Instant now = chain.context.now;
    for (const CustodyLine& line : chain.lines) {
        writtenLate(line, out);
        const auto at = arrivalOf(line);
        if (at && now.utcMilliseconds != 0 && hoursBetween(now, *at) > clockToleranceHours)
            out.push_back(finding("custody.future", Severity::ask, std::string(name(line.kind)),
                                  lineArgument(line), commonPractice));
        if (line.celsius && !(*line.celsius >= coolFrom && *line.celsius <= coolTo)) {
            Arguments arguments = lineArgument(line);
            arguments.push_back({"celsius", numberText(*line.celsius)});
            out.push_back(finding("custody.temperature", Severity::note,
                                  std::string(name(line.kind)) + "/celsius", std::move(arguments),
                                  "from memory, unverified"));
        }
    }
}

/// Another host than believed is a doubt about the species only; a kind that is no host is a break.
void hostNamed(const Chain& chain, const CustodyLine& result, std::vector<Finding>& out)
{
    const std::string& believed = chain.sample.hostAsBelieved;
    if (trim(result.host).empty() || trim(believed).empty() || sameMark(result.host, believed))
        return;
    const Pack* pack = chain.context.pack;
    const Kind* named = pack ? kindNamed(result.host, *pack) : nullptr;
    if (named && (!named->host || named == kindNamed(believed, *pack)))
        return;
    out.push_back(finding("custody.host-named-otherwise", Severity::ask, "result/host",
                          {{"laboratory", result.host}, {"believed", believed}}, custodyGuide));
}

void resultAndFate(const Chain& chain, std::vector<Finding>& out)
{
    const bool found = std::any_of(chain.lines.begin(), chain.lines.end(), [](const CustodyLine& line) {
        return line.kind == CustodyKind::result && line.finding == "found";
    });
    if (found)
        out.push_back(finding("custody.found", Severity::ask, "result/finding", {}, laboratoryStandard));
    const CustodyLine *result = chain.result, *disposal = chain.disposal;
    if (disposal && disposal->out && !chain.voided &&
        (!result || (result->out && disposal->out->utcMilliseconds < result->out->utcMilliseconds)))
        out.push_back(finding("custody.disposed-before-result", Severity::ask, "disposal/out",
                              lineArgument(*disposal), hygieneGuide));
    if (result)
        hostNamed(chain, *result, out);
}

} // namespace

std::optional<double> hoursSinceSeal(const Chain& chain)
{
    if (!chain.outer || !chain.outer->out)
        return std::nullopt;
    const auto received = chain.receipt ? arrivalOf(*chain.receipt) : std::nullopt;
    const double hours = hoursBetween(*chain.outer->out, received ? *received : chain.context.now);
    return hours >= 0 ? std::optional(hours) : std::nullopt;
}

std::optional<std::string> hoursWrittenLate(const CustodyLine& line)
{
    const auto at = arrivalOf(line);
    const double hours = at ? hoursBetween(*at, line.written) : 0;
    return hours > writtenLateHours ? std::optional(wholeHours(hours)) : std::nullopt;
}

bool saysWhyLate(const CustodyLine& line)
{
    return !trim(line.remark).empty() || !trim(line.reason).empty();
}

void gatherRemarks(const Chain& chain, std::vector<Finding>& out)
{
    if (chain.context.host == HostAnswer::notHost)
        out.push_back(finding("custody.host-ruled-out", Severity::ask, "host", {}, custodyGuide));
    if (chain.context.visitRejected)
        out.push_back(finding("custody.visit-rejected", Severity::note, "visit", {}, commonPractice));
    resultAndFate(chain, out);
    timeSinceSeal(chain, out);
    corrections(chain, out);
    onceOnly(chain, out);
    everyLine(chain, out);
}

} // namespace cupule::custody
