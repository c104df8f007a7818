// What verbs give as JSON. Names are stable: snake_case, units in the name, enum values by their stored names.

#pragma once

#include <nlohmann/json.hpp>

#include "app/run.h"
#include "core/task/day.h"
#include "core/task/samples.h"

namespace cupule::app {

using Json = nlohmann::json;

std::string_view severityName(Severity severity);
std::string_view hostName(HostAnswer answer);
std::string_view seasonName(SeasonState state);

Json findingJson(const Finding& finding, const Pack& pack, const Words& words);
Json findingsJson(const std::vector<Finding>& findings, const Pack& pack, const Words& words);
Json visitLineJson(const VisitLine& line);
Json visitPageJson(const VisitPage& page, const Pack& pack, const Words& words);
Json samplePageJson(const SamplePage& page, const Pack& pack, const Words& words);
Json hostJson(const HostVerdict& verdict, const Pack& pack);
Json historyJson(const std::vector<HistoryLine>& history);
/// A canonical content of core/record/json.h.
Json contentJson(const std::string& content);

} // namespace cupule::app
