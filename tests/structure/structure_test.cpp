// The shape of the project, read from its files: who may include whom, where SQL and Qt may stand, how long a file
// may be, and that every source and test is registered.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "tests/support/catch.h"

namespace fs = std::filesystem;

namespace {

struct SourceFile {
    std::string path;                       ///< from the top of the project
    std::vector<std::string> lines;
};

bool startsWith(const std::string& text, const std::string& with)
{
    return text.compare(0, with.size(), with) == 0;
}

std::vector<SourceFile> sources(const std::set<std::string>& endings)
{
    std::vector<SourceFile> found;
    const fs::path top = CUPULE_SOURCE_DIR;
    for (const char* room : {"app", "core", "ui", "tests", "demo", "resources"}) {
        for (const auto& entry : fs::recursive_directory_iterator(top / room)) {
            const std::string path = fs::relative(entry.path(), top).string();
            if (!entry.is_regular_file() || startsWith(path, "demo/out") || endings.count(entry.path().extension()) == 0)
                continue;
            SourceFile file{path, {}};
            std::ifstream in(entry.path());
            for (std::string line; std::getline(in, line);)
                file.lines.push_back(line);
            found.push_back(std::move(file));
        }
    }
    return found;
}

std::string roomOf(const std::string& path)
{
    const fs::path whole(path);
    const std::vector<std::string> parts(whole.begin(), whole.end());
    return parts.size() > 2 ? parts[0] + "/" + parts[1] : parts[0];
}

/// What each room may include, besides itself.
const std::map<std::string, std::set<std::string>>& allowed()
{
    static const std::map<std::string, std::set<std::string>> table = [] {
        std::map<std::string, std::set<std::string>> t;
        t["core/base"] = {};
        t["core/position"] = {"core/base"};
        t["core/record"] = {"core/base", "core/position"};
        t["core/protocol"] = {"core/base", "core/position", "core/record"};
        t["core/rules"] = {"core/base", "core/position", "core/record", "core/protocol"};
        t["core/store"] = t["core/rules"];
        t["core/store"].insert("core/rules");
        t["core/exchange"] = t["core/store"];
        t["core/exchange"].insert("core/store");
        t["core/report"] = t["core/exchange"];
        t["core/survey"] = {"core/base"};
        t["core/training"] = t["core/rules"];
        t["core/training"].insert("core/rules");
        t["core/report"].insert("core/training");
        t["core/task"] = t["core/report"];
        t["core/task"].insert({"core/exchange", "core/report", "core/survey", "core/training"});
        // The window sees core's headers, but neither the store's inside nor its language.
        const std::set<std::string> core{"core/base", "core/position", "core/record", "core/protocol", "core/rules",
                                         "core/task", "core/report", "core/training"};
        t["ui/bridge"] = core;
        t["ui/figures"] = {"core/base", "core/training"}; // a drawing is described there
        t["ui/widgets"] = core;
        t["ui/widgets"].insert({"ui/bridge", "ui/figures", "ui/theme"});
        t["ui/photos"] = core;
        t["ui/photos"].insert({"ui/bridge", "ui/figures", "ui/widgets", "ui/theme"});
        t["ui/map"] = core;
        t["ui/map"].insert({"ui/bridge", "ui/widgets", "ui/theme"});
        t["ui/theme"] = {};
        t["ui/print"] = {"core/base", "core/report", "ui/bridge", "ui/theme"};
        t["ui/shell"] = core;
        t["ui/shell"].insert({"ui/bridge", "ui/figures", "ui/widgets", "ui/theme", "core/exchange"});
        for (const char* screen : {"ui/daysheet", "ui/trees", "ui/samples", "ui/review", "ui/training"}) {
            t[screen] = core;
            t[screen].insert({"ui/bridge", "ui/figures", "ui/widgets", "ui/map", "ui/photos", "ui/shell", "ui/theme"});
        }
        return t;
    }();
    return table;
}

} // namespace

TEST_CASE("a room includes only what the one direction allows", "[structure]")
{
    static const std::regex include("^\\s*#\\s*include\\s+\"((core|ui|app)/[^\"]+)\"");
    std::vector<std::string> wrong;
    int seen = 0;
    for (const auto& file : sources({".h", ".cpp"})) {
        const std::string room = roomOf(file.path);
        if (!startsWith(room, "core/") && !startsWith(room, "ui/"))
            continue;
        const auto rule = allowed().find(room);
        if (rule == allowed().end()) {
            wrong.push_back(file.path + ": a room without a rule");
            continue;
        }
        for (const auto& line : file.lines) {
            std::smatch match;
            if (!std::regex_search(line, match, include))
                continue;
            ++seen;
            const std::string other = roomOf(match[1]);
            if (other != room && rule->second.count(other) == 0)
                wrong.push_back(file.path + " includes " + match[1].str());
        }
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
    CHECK(seen > 100);
}

TEST_CASE("libraries stay in the rooms that may know them", "[structure]")
{
    struct Rule {
        std::string include;
        std::vector<std::string> rooms;
    };
    const std::vector<Rule> rules{
        {"^\\s*#\\s*include\\s+<Q[A-Z]", {"ui/", "app/", "tests/gui/", "tests/print/", "tests/bench/", "demo/"}},
        {"sqlite3\\.h[>\"]", {"core/store/", "tests/store/", "tests/bench/"}},
        {"#\\s*include\\s+<(proj|geodesic)\\.h>", {"core/position/", "tests/position/", "tests/bench/"}},
        {"#\\s*include\\s+<exiv2/", {"core/exchange/photo/", "tests/exchange/", "demo/", "ui/figures/"}},
        {"#\\s*include\\s+<pugixml", {"core/exchange/gpx/"}},
        {"#\\s*include\\s+<qrencode", {"ui/print/"}},
        {"#\\s*include\\s+<libheif/", {"ui/photos/"}},
        {"#\\s*include\\s+<(sodium|archive|archive_entry)\\.h>", {"core/exchange/bundle/", "tests/exchange/", "tests/bench/"}},
    };
    std::vector<std::string> wrong;
    for (const auto& rule : rules) {
        const std::regex pattern(rule.include);
        for (const auto& file : sources({".h", ".cpp"})) {
            const bool may = std::any_of(rule.rooms.begin(), rule.rooms.end(),
                                         [&](const std::string& room) { return startsWith(file.path, room); });
            if (may || startsWith(file.path, "tests/structure/"))
                continue;
            for (const auto& line : file.lines)
                if (std::regex_search(line, pattern))
                    wrong.push_back(file.path + ": " + line);
        }
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
}

TEST_CASE("SQL stands only in the store", "[structure]")
{
    static const std::regex sql("\"\\s*(SELECT |INSERT |UPDATE [a-z_]+ SET|DELETE FROM|CREATE (TABLE|INDEX)|PRAGMA )",
                                std::regex::icase);
    std::vector<std::string> wrong;
    int inStore = 0;
    for (const auto& file : sources({".h", ".cpp"})) {
        const bool store = startsWith(file.path, "core/store/");
        const bool may = store || startsWith(file.path, "tests/");
        for (const auto& line : file.lines) {
            if (!std::regex_search(line, sql))
                continue;
            inStore += store ? 1 : 0;
            if (!may)
                wrong.push_back(file.path + ": " + line);
        }
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
    CHECK(inStore > 10);
}

TEST_CASE("no file is longer than 600 lines", "[structure]")
{
    std::vector<std::string> wrong;
    const auto files = sources({".h", ".cpp", ".sql", ".sh", ".txt", ".py", ".cmake"});
    for (const auto& file : files)
        if (file.lines.size() > 600)
            wrong.push_back(file.path + ": " + std::to_string(file.lines.size()));
    CAPTURE(wrong);
    CHECK(wrong.empty());
    CHECK(files.size() > 50);
}

TEST_CASE("every source and every test is named in a build file", "[structure]")
{
    std::string build;
    for (const auto& file : sources({".txt", ".cmake"}))
        for (const auto& line : file.lines)
            build += fs::path(file.path).parent_path().string() + "|" + line + "\n";
    std::vector<std::string> wrong;
    for (const auto& file : sources({".cpp"})) {
        const std::string name = fs::path(file.path).filename().string();
        // named by itself or by its path below the build file's folder
        const std::regex named("(^|[\\s/(])" + std::regex_replace(name, std::regex("\\."), "\\.") + "($|[\\s)])");
        std::istringstream lines(build);
        bool found = false;
        for (std::string line; !found && std::getline(lines, line);) {
            const auto bar = line.find('|');
            found = startsWith(file.path, line.substr(0, bar)) && std::regex_search(line.substr(bar + 1), named);
        }
        if (!found)
            wrong.push_back(file.path);
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
}

TEST_CASE("nothing is left open in the code", "[structure]")
{
    static const std::regex open("TO" "DO|FIX" "ME|not imple" "mented");
    std::vector<std::string> wrong;
    for (const auto& file : sources({".h", ".cpp", ".sql", ".sh", ".py"}))
        for (const auto& line : file.lines)
            if (std::regex_search(line, open))
                wrong.push_back(file.path + ": " + line);
    CAPTURE(wrong);
    CHECK(wrong.empty());
}
