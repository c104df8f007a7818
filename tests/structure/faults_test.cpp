// The table of faults (resources/docs/faults.md) and the sources name the same codes. A code is a string of the form "room.what"
// in core or app; those of the checks and of custody are findings and listed by their rooms.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <string>

#include "tests/support/catch.h"

namespace fs = std::filesystem;

namespace {

const fs::path top = CUPULE_SOURCE_DIR;

/// First group of every match of `form` in the lines of a file, comments left out where it is code.
void collect(std::set<std::string>& into, const fs::path& path, const std::regex& form, bool code)
{
    std::ifstream file(path);
    for (std::string line; std::getline(file, line);) {
        if (code)
            line.erase(std::min(line.find("//"), line.size()));
        for (auto it = std::sregex_iterator(line.begin(), line.end(), form); it != std::sregex_iterator(); ++it)
            into.insert((*it)[1]);
    }
}

bool holdsFindings(const std::string& path)
{
    return path.starts_with("core/rules/checks/") || path.starts_with("core/rules/custody");
}

struct Codes {
    std::set<std::string> all;        ///< outside the rooms of the findings
    std::set<std::string> findings;
};

Codes codesOfSources()
{
    // A string behind "/ " names a file.
    static const std::regex literal(R"re((?:^|[^/] |[^ ])"([a-z][a-z0-9]*(?:-[a-z0-9]+)*\.[a-z][a-z0-9]*(?:-[a-z0-9]+)*)")re");
    static const std::regex kind(R"re(refuse\("([A-Za-z0-9-]+)")re");
    Codes codes;
    for (const char* room : {"core", "app"})
        for (const auto& entry : fs::recursive_directory_iterator(top / room)) {
            const std::string path = fs::relative(entry.path(), top).string();
            if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h")
                continue;
            collect(holdsFindings(path) ? codes.findings : codes.all, entry.path(), literal, true);
            if (!path.starts_with("core/position/"))
                continue;
            std::set<std::string> kinds;
            collect(kinds, entry.path(), kind, true);
            for (const auto& one : kinds)
                codes.all.insert("position." + one);
        }
    return codes;
}

/// The kinds of error in the list above notation.h: some are chosen between where they are refused.
std::set<std::string> kindsOfPositions()
{
    static const std::regex row(R"(^//   ([a-z][A-Za-z0-9-]+)  +\S)");
    std::set<std::string> kinds;
    std::ifstream file(top / "core/position/notation.h");
    for (std::string line; std::getline(file, line) && !line.starts_with("//   warning ");) {
        std::smatch match;
        if (std::regex_search(line, match, row) && match[1] != "error")
            kinds.insert("position." + match[1].str());
    }
    return kinds;
}

std::string listed(const std::set<std::string>& some, const std::set<std::string>& without)
{
    std::string out;
    for (const auto& code : some)
        if (!without.contains(code))
            out += code + " ";
    return out;
}

} // namespace

TEST_CASE("the table of faults names every code of the sources, and no other", "[structure]")
{
    std::set<std::string> table;
    collect(table, top / "resources/docs/faults.md", std::regex(R"(^\| `([a-z-]+\.[A-Za-z0-9-]+)` \|)"), false);
    auto [codes, findings] = codesOfSources();
    codes.merge(kindsOfPositions());
    REQUIRE(codes.size() > 150);
    std::set<std::string> known = table;
    known.insert(findings.begin(), findings.end());   // a finding may be spoken of elsewhere
    CHECK(listed(codes, known) == "");
    CHECK(listed(table, codes) == "");
}

TEST_CASE("every row of the table of faults says kind, meaning, what was kept and what to do", "[structure]")
{
    static const std::regex row(R"(^\| `([a-z-]+)\.[A-Za-z0-9-]+` \|)");
    static const std::regex whole(R"(^\| `[^`]+` \| (refused|usage|data|io) \| [^|]+ \| [^|]+ \| [^|]+ \|$)");
    static const std::regex ofPack(R"(^\| `pack\.[^`]+` \| [^|]+ \|$)");
    std::ifstream file(top / "resources/docs/faults.md");
    int rows = 0;
    for (std::string line; std::getline(file, line);) {
        std::smatch match;
        if (!std::regex_search(line, match, row))
            continue;
        ++rows;
        CAPTURE(line);
        CHECK(std::regex_match(line, match[1] == "pack" ? ofPack : whole));
    }
    CHECK(rows > 150);
}
