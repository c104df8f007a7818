// W1 to W13: the longest time for which the window does not answer while it takes files in and is worked with on a full
// store. The window runs in a process of its own; what counts is the worst of all rounds.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>

#include <nlohmann/json.hpp>

#include "tests/bench/measure.h"

namespace bench {

namespace {

constexpr long mostRows = 100'000;
constexpr double longestGap = 100; // ms

struct Gaps {
    std::string id;
    std::vector<double> worst;
};

} // namespace

void measureWindow(const Settings& settings, Table& table)
{
    const long rows = std::min(settings.rows, mostRows);
    const std::string csv = records(settings, rows);
    std::error_code error;
    if (csv.empty() || !std::filesystem::exists(settings.window, error)) {
        table.leftOut.push_back({"W1-W13", csv.empty() ? "the generator of records is not here" : "the window's part is not built"});
        return;
    }
    std::vector<std::string> order;
    std::map<std::string, Gaps> gaps;
    for (int round = 0; round < settings.rounds; ++round) {
        const std::string out = settings.folder + "/window.json";
        std::filesystem::remove(out, error);
        if (run({settings.window, csv, settings.folder, out}).code != 0) {
            table.leftOut.push_back({"W1-W13", "the window's part did not end well"});
            return;
        }
        std::ifstream in(out);
        const auto found = nlohmann::json::parse(in, nullptr, false);
        for (const auto& piece : found) {
            const std::string work = piece.value("work", "");
            if (!gaps.contains(work))
                order.push_back(work);
            gaps[work].id = piece.value("id", "");
            gaps[work].worst.push_back(piece.value("worst_ms", 0.0));
        }
    }
    for (const std::string& work : order) {
        Spread spread = spreadOf(gaps[work].worst);
        spread.median = spread.most;
        table.lines.push_back({gaps[work].id, work + ": worst gap of the event loop", "", "ms", spread, {}, {}, longestGap, false, true,
                               std::to_string(rows) + " rows taken in"});
    }
}

} // namespace bench
