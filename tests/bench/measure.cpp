#include "tests/bench/measure.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace bench {

Spread spreadOf(std::vector<double> values)
{
    if (values.empty())
        return {};
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    const double median = values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
    return {median, values.front(), values.back()};
}

bool Line::met() const
{
    const double value = absolute ? ours.median : ratio.median;
    return atLeast ? value >= target : value <= target;
}

double seconds(const std::function<void()>& work)
{
    const auto from = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
}

void interleave(int rounds, const std::function<double()>& ours, const std::function<double()>& theirs, Line& line)
{
    std::vector<double> mine, other, ratios;
    for (int round = 0; round < rounds; ++round) {
        // who comes first changes, so that neither has the warmer machine
        const bool first = round % 2 == 0;
        const double a = first ? ours() : theirs();
        const double b = first ? theirs() : ours();
        mine.push_back(first ? a : b);
        other.push_back(first ? b : a);
        ratios.push_back(mine.back() / other.back());
    }
    line.ours = spreadOf(mine);
    line.theirs = spreadOf(other);
    line.ratio = spreadOf(ratios);
}

Run run(const std::vector<std::string>& words, const std::string& input, const std::string& output)
{
    std::vector<char*> arguments;
    for (const auto& word : words)
        arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 0, input.empty() ? "/dev/null" : input.c_str(), O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&actions, 1, output.empty() ? "/dev/null" : output.c_str(),
                                     O_WRONLY | O_CREAT | O_TRUNC, 0644);
    Run out;
    pid_t child = 0;
    out.seconds = seconds([&] {
        if (posix_spawnp(&child, arguments[0], &actions, nullptr, arguments.data(), environ) != 0)
            return;
        int status = 0;
        rusage usage{};
        if (wait4(child, &status, 0, &usage) == child && WIFEXITED(status))
            out.code = WEXITSTATUS(status);
        out.peakMiB = static_cast<double>(usage.ru_maxrss) / 1024;
    });
    posix_spawn_file_actions_destroy(&actions);
    return out;
}

bool installed(const std::string& program)
{
    return run({"sh", "-c", "command -v " + program}).code == 0;
}

namespace {

std::string shown(const Spread& spread)
{
    return fmt::format("{:.3g} ({:.3g}-{:.3g})", spread.median, spread.least, spread.most);
}

} // namespace

void Table::print() const
{
    fmt::print("{:<5} {:<48} {:<34} {:>26} {:>26} {:>22} {:>8} {}\n", "row", "work", "peer or floor", "ours", "theirs",
               "ratio (min-max)", "target", "");
    for (const auto& line : lines) {
        fmt::print("{:<5} {:<48} {:<34} {:>26} {:>26} {:>22} {:>8} {}{}\n", line.id, line.work, line.peer,
                   shown(line.ours) + " " + line.unit, line.peer.empty() ? "" : shown(line.theirs) + " " + line.unit,
                   line.peer.empty() ? "" : shown(line.ratio), fmt::format("{}{:g}", line.atLeast ? ">=" : "<=", line.target),
                   line.met() ? "met" : "MISSED", line.note.empty() ? "" : "  " + line.note);
    }
    for (const auto& out : leftOut)
        fmt::print("{:<5} left out: {}\n", out.id, out.why);
}

std::string Table::json(int rounds, long rows) const
{
    const auto spread = [](const Spread& s) {
        return nlohmann::json{{"median", s.median}, {"min", s.least}, {"max", s.most}};
    };
    nlohmann::json out{{"rounds", rounds}, {"rows", rows}, {"lines", nlohmann::json::array()}};
    for (const auto& line : lines)
        out["lines"].push_back({{"id", line.id},
                                {"work", line.work},
                                {"peer", line.peer},
                                {"unit", line.unit},
                                {"ours", spread(line.ours)},
                                {"theirs", spread(line.theirs)},
                                {"ratio", spread(line.ratio)},
                                {"target", line.target},
                                {"target_is", line.absolute ? "value" : "ratio"},
                                {"at_least", line.atLeast},
                                {"met", line.met()},
                                {"note", line.note}});
    out["left_out"] = nlohmann::json::array();
    for (const auto& left : leftOut)
        out["left_out"].push_back({{"id", left.id}, {"why", left.why}});
    return out.dump(2) + "\n";
}

} // namespace bench
