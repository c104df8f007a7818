#include "core/base/file.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>

#include <fcntl.h>
#include <unistd.h>

namespace cupule {

namespace {

constexpr int anybodysMode = 0666;   // less what the user's mask takes away
constexpr int ownersMode = 0600;

using File = std::unique_ptr<std::FILE, int (*)(std::FILE*)>;

/// A file that was not there before, so that it never has rights it should not have.
File madeAnew(const std::string& path, int mode)
{
    ::unlink(path.c_str());
    const int made = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    return File(made < 0 ? nullptr : ::fdopen(made, "wb"), &std::fclose);
}

Status written(const std::string& path, std::string_view content, int mode)
{
    const std::string beside = path + ".writing";
    const auto bad = [&] {
        const int error = errno;
        std::error_code ignored;
        std::filesystem::remove(beside, ignored);
        Fault fault{error == ENOSPC ? "file.full" : "file.write", FaultKind::io, {{"file", path}},
                    {path, 0, 0, -1, {}}, std::strerror(error)};
        return fail(std::move(fault));
    };
    File file = madeAnew(beside, mode);
    if (!file)
        return bad();
    if (std::fwrite(content.data(), 1, content.size(), file.get()) != content.size()
        || std::fflush(file.get()) != 0 || fsync(fileno(file.get())) != 0)
        return bad();
    if (std::fclose(file.release()) != 0 || std::rename(beside.c_str(), path.c_str()) != 0)
        return bad();
    return {};
}

} // namespace

Result<std::string> readFile(const std::string& path, std::int64_t limit)
{
    const auto bad = [&](const char* code) {
        Fault fault{code, FaultKind::io, {{"file", path}}, {path, 0, 0, -1, {}}, std::strerror(errno)};
        return fail(std::move(fault));
    };
    std::error_code ignored;
    if (std::filesystem::is_directory(path, ignored))
        return bad("file.folder");
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"), &std::fclose);
    if (!file)
        return bad("file.open");
    std::string content;
    char buffer[1 << 16];
    for (;;) {
        const std::size_t count = std::fread(buffer, 1, sizeof buffer, file.get());
        content.append(buffer, count);
        if (static_cast<std::int64_t>(content.size()) > limit)
            return bad("file.large");
        if (count < sizeof buffer)
            break;
    }
    if (std::ferror(file.get()) != 0)
        return bad("file.read");
    return content;
}

Status writeFile(const std::string& path, std::string_view content)
{
    return written(path, content, anybodysMode);
}

Status writePrivateFile(const std::string& path, std::string_view content)
{
    return written(path, content, ownersMode);
}

} // namespace cupule
