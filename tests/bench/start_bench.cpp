// T11: from spawning the program to its first painted window, beside a bare main window. Both run without a display and say
// themselves when a widget has been flushed: Qt's own logging category "qt.widgets.painting".

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <limits>
#include <string_view>

#include "tests/bench/measure.h"

namespace bench {

namespace {

constexpr int startsARound = 10;
constexpr int longestMilliseconds = 20000;

/// Seconds until the child's messages say that something was painted; NaN where it never came.
double firstPaint(const std::vector<std::string>& words)
{
    std::array<int, 2> pipes{};
    if (pipe2(pipes.data(), O_CLOEXEC) != 0)
        return std::numeric_limits<double>::quiet_NaN();
    std::vector<char*> arguments;
    for (const auto& word : words)
        arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, pipes[1], 2);
    posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
    pid_t child = 0;
    bool painted = false;
    const double taken = seconds([&] {
        if (posix_spawnp(&child, arguments[0], &actions, nullptr, arguments.data(), environ) != 0)
            return;
        close(pipes[1]);
        std::string said;
        std::array<char, 4096> piece{};
        pollfd waiting{pipes[0], POLLIN, 0};
        while (!painted && poll(&waiting, 1, longestMilliseconds) > 0) {
            const ssize_t size = read(pipes[0], piece.data(), piece.size());
            if (size <= 0)
                break;
            said.append(piece.data(), static_cast<std::size_t>(size));
            painted = said.find("lushing") != std::string::npos;
        }
    });
    posix_spawn_file_actions_destroy(&actions);
    close(pipes[0]);
    if (child > 0) {
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
    }
    return painted ? taken : std::numeric_limits<double>::quiet_NaN();
}

/// Median milliseconds over some starts.
double start(const std::vector<std::string>& words)
{
    std::vector<double> all;
    for (int i = 0; i < startsARound; ++i)
        all.push_back(1000 * firstPaint(words));
    return spreadOf(all).median;
}

} // namespace

void measureStart(const Settings& settings, Table& table)
{
    setenv("QT_QPA_PLATFORM", "offscreen", 1);
    setenv("QT_LOGGING_RULES", "qt.widgets.painting=true", 1);
    setenv("QT_MESSAGE_PATTERN", "%{message}", 1);
    std::error_code error;
    if (!std::filesystem::exists(settings.program, error) || !std::filesystem::exists(settings.bareWindow, error)) {
        table.leftOut.push_back({"T11", "the program or the bare window is not built"});
        return;
    }
    const std::string profile = settings.folder + "/import/profile";
    const std::string full = settings.folder + "/import/bench.cupule";
    const std::string empty = settings.folder + "/empty/bench.cupule";
    if (!(start({settings.bareWindow}) > 0)) {
        table.leftOut.push_back({"T11", "this Qt does not say when it has painted"});
        return;
    }
    const std::vector<std::string> bare{settings.bareWindow};
    const auto ours = [&](const std::string& store) {
        return std::vector<std::string>{settings.program, "--profile", profile, store};
    };
    Line line{"T11", "start to first paint, no store named", "bare main window, menus, table", "ms", {}, {}, {}, 2.0, false, false, {}};
    interleave(settings.rounds, [&] { return start({settings.program, "--profile", profile}); }, [&] { return start(bare); }, line);
    line.note = line.ratio.median <= 1.5 ? "stretch 1.5 met" : "stretch 1.5 missed";
    table.lines.push_back(line);
    const std::string csv = records(settings, settings.rows);
    const std::string few = records(settings, 10);
    const bool made = !csv.empty() && !few.empty()
                      && run({settings.self, "--part", "import", csv, settings.folder + "/import"}).code == 0
                      && run({settings.self, "--part", "idle", few, settings.folder + "/empty"}).code == 0;
    if (!made) {
        table.leftOut.push_back({"T11", "the stores to open could not be made"});
        return;
    }
    Line opened{"T11", "start to first paint, store with all the visits", "the same with an empty store", "ms", {}, {}, {}, 1.1, false, false, {}};
    interleave(settings.rounds, [&] { return start(ours(full)); }, [&] { return start(ours(empty)); }, opened);
    table.lines.push_back(opened);
}

} // namespace bench
