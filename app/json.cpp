#include "app/json.h"

#include "app/words.h"
#include "core/record/json.h"
#include "core/record/names.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

std::string_view linkStateName(LinkState state)
{
    switch (state) {
    case LinkState::whole: return "whole";
    case LinkState::open: return "open";
    case LinkState::broken: return "broken";
    case LinkState::ahead: return "ahead";
    }
    return {};
}

Json checklistJson(const std::vector<ChecklistLine>& checklist)
{
    Json lines = Json::array();
    for (const auto& line : checklist)
        lines.push_back({{"sign", line.sign->id},
                         {"name", line.sign->name},
                         {"season", seasonName(line.season.state)},
                         {"reason", line.season.reason},
                         {"answer", name(line.observation.answer)},
                         {"struck", line.struck}});
    return lines;
}

} // namespace

std::string_view severityName(Severity severity)
{
    switch (severity) {
    case Severity::note: return "note";
    case Severity::ask: return "ask";
    case Severity::stop: return "stop";
    }
    return {};
}

std::string_view hostName(HostAnswer answer)
{
    switch (answer) {
    case HostAnswer::host: return "host";
    case HostAnswer::notHost: return "not-host";
    case HostAnswer::cannotTell: return "cannot-tell";
    }
    return {};
}

std::string_view seasonName(SeasonState state)
{
    switch (state) {
    case SeasonState::expected: return "expected";
    case SeasonState::possible: return "possible";
    case SeasonState::outOfSeason: return "out-of-season";
    }
    return {};
}

Json contentJson(const std::string& content)
{
    return Json::parse(content, nullptr, false);
}

Json findingJson(const Finding& finding, const Pack& pack, const Words& words)
{
    Json json{{"code", finding.code},
              {"severity", severityName(finding.severity)},
              {"field", finding.field},
              {"source", finding.source},
              {"sentence", words.finding(finding, pack)}};
    for (const auto& [name, value] : finding.arguments)
        json["arguments"][name] = value;
    return json;
}

Json findingsJson(const std::vector<Finding>& findings, const Pack& pack, const Words& words)
{
    Json list = Json::array();
    for (const auto& finding : findings)
        list.push_back(findingJson(finding, pack, words));
    return list;
}

Json visitLineJson(const VisitLine& line)
{
    Json json{{"id", line.id.text()},          {"tree", line.treeLabel},
              {"tree_id", line.tree.text()},   {"site", line.siteName},
              {"observer", line.observerCode}, {"date", line.date.text()},
              {"state", name(line.state)},     {"correction_waits", line.correctionWaits},
              {"one_of_two", line.oneOfTwo},   {"worth", std::string(1, line.worth)},
              {"summary", line.summary},       {"signs_seen", line.signsSeen},
              {"stops", line.stops},           {"asks", line.asks}};
    if (line.time)
        json["time"] = line.time->text();
    return json;
}

Json hostJson(const HostVerdict& verdict, const Pack& pack)
{
    Json next = Json::array();
    for (const auto& character : verdict.next)
        next.push_back({{"character", character.character},
                        {"reason", plain(ui::nextCharacterText(character, verdict, pack))},
                        {"expected_bits", character.expectedBits},
                        {"answers_that_decide", character.answersThatDecide}});
    return {{"answer", hostName(verdict.answer)},
            {"decided_by", verdict.decidedBy},
            {"contradictions", verdict.contradictions},
            {"kinds_left", verdict.kindsLeft},
            {"lacking", verdict.lacking},
            {"next", next}};
}

Json historyJson(const std::vector<HistoryLine>& history)
{
    Json list = Json::array();
    for (const auto& line : history) {
        Json json = visitLineJson(line.line);
        if (!line.decision.empty())
            json["decision"] = {
                {"outcome", line.decision}, {"reasons", line.reasons}, {"remark", line.remark}};
        list.push_back(std::move(json));
    }
    return list;
}

Json visitPageJson(const VisitPage& page, const Pack& pack, const Words& words)
{
    Json json{{"id", page.visit.id.text()},
              {"visit", contentJson(toJson(page.visit))},
              {"state", name(page.state)},
              {"correction_waits", page.correctionWaits},
              {"one_of_two", page.oneOfTwo},
              {"revision", page.headRevision.text()},
              {"observer", page.observer.code},
              {"may_edit", page.mayEdit},
              {"host", hostJson(page.host, pack)},
              {"positive", page.positive.positive},
              {"nothing_seen", page.nothing},
              {"worth",
               {{"letter", std::string(1, page.worth.letter)},
                {"reason", page.worth.reason},
                {"missing", page.worth.missing}}},
              {"season_shift_days", page.season.shiftDays},
              {"checklist", checklistJson(page.checklist)},
              {"findings", findingsJson(page.findings, pack, words)},
              {"history", historyJson(page.history)}};
    json["decided"] = Json();
    if (page.decided)
        json["decided"] = {{"outcome", name(page.decided->decision.outcome)}, {"by", page.decided->by.code},
                           {"at", instantText(page.decided->decision.at)},    {"reasons", page.decided->decision.reasons},
                           {"remark", page.decided->decision.remark},         {"answered", page.decided->answered}};
    json["tree"] = page.tree ? contentJson(toJson(*page.tree)) : Json();
    json["site"] = page.site ? contentJson(toJson(*page.site)) : Json();
    json["photos"] = Json::array();
    for (const auto& photo : page.photos)
        json["photos"].push_back(contentJson(toJson(photo)));
    json["samples"] = Json::array();
    for (const auto& sample : page.samples)
        json["samples"].push_back(sample.number);
    return json;
}

Json samplePageJson(const SamplePage& page, const Pack& pack, const Words& words)
{
    Json chain = Json::array();
    for (const auto& link : page.status.chain) {
        Json json{{"kind", link.kind}, {"state", linkStateName(link.state)},
                  {"who", link.who},   {"what", link.what},
                  {"line", link.line}, {"lacking", link.lacking}};
        if (link.when)
            json["when"] = instantText(*link.when);
        chain.push_back(std::move(json));
    }
    Json lines = Json::array();
    for (const auto& line : page.lines)
        lines.push_back(contentJson(toJson(line)));
    return {{"id", page.sample.id.text()},
            {"number", page.sample.number},
            {"sample", contentJson(toJson(page.sample))},
            {"tree", page.treeLabel},
            {"site", page.siteName},
            {"visit_date", page.visitDate.text()},
            {"state", name(page.status.state)},
            {"can_close_whole", page.status.canCloseWhole},
            {"can_close_with_break", page.status.canCloseWithBreak},
            {"must_be_void", page.status.mustBeVoid},
            {"missing", findingsJson(page.status.missing, pack, words)},
            {"breaks", findingsJson(page.status.breaks, pack, words)},
            {"remarks", findingsJson(page.status.remarks, pack, words)},
            {"chain", chain},
            {"lines", lines}};
}

} // namespace cupule::app
