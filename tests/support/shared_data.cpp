#include "tests/support/shared_data.h"

#include <cstdlib>
#include <filesystem>
#include <vector>

#include <unistd.h>

namespace cupule::test {

namespace fs = std::filesystem;

std::optional<std::string> sharedPath(const std::string& below)
{
    const char* named = std::getenv("CUPULE_SHARED");
    const fs::path root = named != nullptr ? fs::path(named) : fs::path(CUPULE_SOURCE_DIR) / ".." / "shared";
    const fs::path path = root / below;
    std::error_code ignored;
    if (!fs::exists(path, ignored))
        return std::nullopt;
    return fs::canonical(path).string();
}

namespace {

struct Folders {
    std::vector<fs::path> made;
    ~Folders()
    {
        std::error_code ignored;
        for (const auto& path : made)
            fs::remove_all(path, ignored);
    }
};

} // namespace

std::string temporaryFolder()
{
    static Folders folders;
    std::string name = (fs::temp_directory_path() / "cupule-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr)
        throw std::runtime_error("no temporary folder");
    folders.made.emplace_back(name);
    return name;
}

} // namespace cupule::test
