// W1 to W19: the longest time for which the window does not answer while it takes files in, is worked with on a full store,
// reviews a region, and looks at a cohort. The window runs in a process of its own; what counts is the worst of all rounds.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>

#include <nlohmann/json.hpp>

#include "tests/bench/measure.h"
#include "tests/bench/region_store.h"

namespace bench {

namespace {

constexpr long mostRows = 100'000;
constexpr double longestGap = 100; // ms

struct Gaps {
    std::string id;
    std::vector<double> worst;
};

} // namespace

namespace {

/// Runs a part of the window's work once a round; `words` without the file that it writes.
bool gather(const Settings& settings, std::vector<std::string> words, std::vector<std::string>& order, std::map<std::string, Gaps>& gaps)
{
    const std::string out = settings.folder + "/window.json";
    words.push_back(out);
    for (int round = 0; round < settings.rounds; ++round) {
        std::error_code error;
        std::filesystem::remove(out, error);
        if (run(words).code != 0)
            return false;
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
    return true;
}

void addLines(const std::vector<std::string>& order, const std::map<std::string, Gaps>& gaps, const std::string& note, Table& table)
{
    for (const std::string& work : order) {
        const Gaps& of = gaps.at(work);
        Spread spread = spreadOf(of.worst);
        spread.median = spread.most;
        const std::string what = of.id[0] == 'W' ? work + ": worst gap of the event loop" : work;
        table.lines.push_back({of.id, what, "", "ms", spread, {}, {}, longestGap, false, true, note});
    }
}

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
    if (gather(settings, {settings.window, csv, settings.folder}, order, gaps))
        addLines(order, gaps, std::to_string(rows) + " rows taken in", table);
    else
        table.leftOut.push_back({"W1-W13", "the window's part did not end well"});
}

void measureWindowPart(const Settings& settings, const std::string& part, const Region& store, const std::string& ids, const std::string& note, Table& table)
{
    const std::string program = settings.window + "_" + part;
    std::error_code error;
    if (!std::filesystem::exists(program, error)) {
        table.leftOut.push_back({ids, "the window's part is not built"});
        return;
    }
    std::vector<std::string> order;
    std::map<std::string, Gaps> gaps;
    if (gather(settings, {program, store.path(), store.profile().folder}, order, gaps))
        addLines(order, gaps, note, table);
    else
        table.leftOut.push_back({ids, "the window's part did not end well"});
}

void measureReviewWindow(const Settings& settings, Table& table)
{
    const Region region(settings.folder, "region-" + std::to_string(settings.rows), settings.rows, "VE");
    measureWindowPart(settings, "review", region, "W14-W18", std::to_string(settings.rows) + " visits in the store", table);
}

} // namespace bench
