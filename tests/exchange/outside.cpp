#include "tests/exchange/outside.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "tests/support/shared_data.h"

namespace cupule::test {

namespace {

std::string quoted(const std::string& word)
{
    std::string out = "'";
    for (const char c : word)
        out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

} // namespace

std::optional<std::string> printedBy(const std::vector<std::string>& command)
{
    std::string line;
    for (const auto& word : command)
        line += quoted(word) + " ";
    std::FILE* pipe = popen((line + "2>/dev/null").c_str(), "r");
    if (pipe == nullptr)
        return std::nullopt;
    std::string out;
    char piece[4096];
    for (std::size_t got = 0; (got = std::fread(piece, 1, sizeof piece, pipe)) > 0;)
        out.append(piece, got);
    return pclose(pipe) == 0 ? std::optional(out) : std::nullopt;
}

std::vector<std::string> sharedFiles(const std::string& below)
{
    std::vector<std::string> files;
    if (const auto folder = sharedPath(below))
        for (const auto& entry : std::filesystem::recursive_directory_iterator(*folder))
            if (entry.is_regular_file())
                files.push_back(entry.path().string());
    std::sort(files.begin(), files.end());
    return files;
}

std::string writtenFile(const std::string& name, const std::string& content)
{
    static const std::string folder = temporaryFolder();
    const std::string path = folder + "/" + name;
    std::ofstream(path, std::ios::binary) << content;
    return path;
}

} // namespace cupule::test
