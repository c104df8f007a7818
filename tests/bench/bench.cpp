// The benchmark: every row of the table in one run, ours and its peer in turn, medians of several rounds.
//
//   bench [--rows N] [--rounds R] [--only import,positions,hashing,saving,register,queue,start,window,nearest,merge,review,practice] [--json FILE] [--folder DIR]

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iostream>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "tests/bench/measure.h"
#include "tests/support/shared_data.h"

namespace {

namespace fs = std::filesystem;

struct Group {
    const char* name;
    void (*measure)(const bench::Settings&, bench::Table&);
};
constexpr Group groups[] = {{"import", &bench::measureImport},
                            {"positions", &bench::measurePositions},
                            {"hashing", &bench::measureHashing},
                            {"saving", &bench::measureSaving},
                            {"register", &bench::measureRegister},
                            {"queue", &bench::measureQueue},
                            {"start", &bench::measureStart},
                            {"window", &bench::measureWindow},
                            {"nearest", &bench::measureNearest},
                            {"merge", &bench::measureMerge},
                            {"review", &bench::measureReviewWindow},
                            {"practice", &bench::measurePractice}};

std::string selfPath()
{
    std::error_code error;
    return fs::read_symlink("/proc/self/exe", error).string();
}

} // namespace

int main(int argc, char** argv)
{
    if (argc > 2 && std::string(argv[1]) == "--part")
        return bench::runPart(argv[2], std::vector<std::string>(argv + 3, argv + argc));
    bench::Settings settings;
    std::vector<std::string> only;
    std::string json;
    CLI::App options("Measures this program beside its peers, in one run, interleaved.", "bench");
    options.add_option("--rows", settings.rows, "visits and points, 1000000 where nothing is said");
    options.add_option("--rounds", settings.rounds, "rounds of each row, 5 where nothing is said");
    options.add_option("--only", only, "groups: import, positions, hashing, saving, register, queue, start, window, nearest, merge, review, practice")->delimiter(',');
    options.add_option("--json", json, "where the table is written as JSON");
    options.add_option("--folder", settings.folder, "where files are made; a temporary folder where nothing is said");
    CLI11_PARSE(options, argc, argv);
    if (settings.folder.empty())
        settings.folder = cupule::test::temporaryFolder();
    fs::create_directories(settings.folder);
    settings.folder = fs::absolute(settings.folder).string();
    settings.self = selfPath();
    const fs::path built = fs::path(settings.self).parent_path();
    settings.bareWindow = (built / "bench_bare_window").string();
    settings.window = (built / "bench_window").string();
    settings.program = (built.parent_path().parent_path() / "app" / "cupule").string();
    bench::Table table;
    for (const auto& group : groups) {
        if (!only.empty() && std::find(only.begin(), only.end(), group.name) == only.end())
            continue;
        std::cerr << "bench: " << group.name << " ...\n";
        group.measure(settings, table);
    }
    table.print();
    const std::string path = json.empty() ? (built / "bench.json").string() : json;
    std::ofstream(path) << table.json(settings.rounds, settings.rows);
    fmt::print("written: {}\n", path);
    return 0;
}
