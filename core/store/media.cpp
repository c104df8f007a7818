#include "core/store/media.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <memory>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/store/store_core.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void notWritten(const std::string& path)
{
    const int error = errno;
    throwFault(error == ENOSPC ? "media.full" : "media.write", FaultKind::io, {{"file", path}, {"can", "free-space"}},
               std::strerror(error));
}

/// A file beside its final place; gone again unless it was put there.
class Beside {
public:
    explicit Beside(const std::string& folder) : m_path(folder + "/.writing-XXXXXX")
    {
        m_file = ::mkostemp(m_path.data(), O_CLOEXEC);
        if (m_file < 0)
            notWritten(m_path);
    }
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;
    ~Beside()
    {
        if (m_file >= 0)
            ::close(m_file);
        if (!m_placed)
            ::unlink(m_path.c_str());
    }
    void write(std::string_view bytes)
    {
        while (!bytes.empty()) {
            const ssize_t count = ::write(m_file, bytes.data(), bytes.size());
            if (count < 0)
                notWritten(m_path);
            bytes.remove_prefix(static_cast<std::size_t>(count));
        }
    }
    void placeAt(const std::string& target)
    {
        if (::fsync(m_file) != 0 || ::fchmod(m_file, 0644) != 0 || ::rename(m_path.c_str(), target.c_str()) != 0)
            notWritten(target);
        m_placed = true;
    }

private:
    std::string m_path;
    int m_file = -1;
    bool m_placed = false;
};

std::string placeOf(const std::string& folder, const std::string& sha256)
{
    return folder + '/' + sha256.substr(0, 2) + '/' + sha256;
}

bool isName(const std::string& text)
{
    return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

void makeFolder(const std::string& folder)
{
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) {
        errno = error.value();
        notWritten(folder);
    }
}

void place(Beside& beside, const std::string& folder, const std::string& sha256)
{
    const std::string target = placeOf(folder, sha256);
    std::error_code ignored;
    if (fs::exists(target, ignored))
        return;   // the same bytes are kept once
    makeFolder(fs::path(target).parent_path().string());
    beside.placeAt(target);
}

void refuseReadOnly(const StoreCore& core)
{
    if (core.info.readOnly)
        throwFault("store.read-only", FaultKind::refused, {{"file", core.info.path}, {"can", "copy-elsewhere"}});
}

} // namespace

std::string Media::folder() const
{
    return m_core.info.path + ".media";
}

Result<std::string> Media::keep(std::string_view bytes)
{
    return guarded([&] {
        refuseReadOnly(m_core);
        makeFolder(folder());
        const std::string name = hex(sha256(bytes));
        Beside beside(folder());
        beside.write(bytes);
        place(beside, folder(), name);
        return name;
    });
}

Result<std::string> Media::keepFile(const std::string& path, const Progress& progress)
{
    return guarded([&] {
        refuseReadOnly(m_core);
        const std::unique_ptr<std::FILE, int (*)(std::FILE*)> from(std::fopen(path.c_str(), "rb"), &std::fclose);
        if (!from)
            throwFault("file.open", FaultKind::io, {{"file", path}}, std::strerror(errno));
        makeFolder(folder());
        Beside beside(folder());
        Sha256 hash;
        std::array<char, 1 << 16> buffer;
        std::int64_t done = 0;
        while (const std::size_t count = std::fread(buffer.data(), 1, buffer.size(), from.get())) {
            if (progress.cancelled())
                throwFault("job.cancelled", FaultKind::refused);
            hash.add(std::string_view(buffer.data(), count));
            beside.write({buffer.data(), count});
            done += static_cast<std::int64_t>(count);
            progress.tell(done, 0);
        }
        if (std::ferror(from.get()) != 0)
            throwFault("file.read", FaultKind::io, {{"file", path}}, std::strerror(errno));
        const std::string name = hex(hash.finish());
        place(beside, folder(), name);
        return name;
    });
}

Result<std::string> Media::path(const std::string& sha256) const
{
    return guarded([&] {
        const std::string path = isName(sha256) ? placeOf(folder(), sha256) : std::string();
        std::error_code ignored;
        if (path.empty() || !fs::is_regular_file(path, ignored))
            throwFault("media.missing", FaultKind::data, {{"sha256", sha256}, {"can", "find-picture"}});
        return path;
    });
}

Status Media::verify(const std::string& sha256) const
{
    return guarded([&] {
        const std::string file = taken(path(sha256));
        if (hex(taken(sha256OfFile(file))) != sha256)
            throwFault("media.damaged", FaultKind::data, {{"sha256", sha256}, {"file", file}, {"can", "find-picture"}});
    });
}

Result<std::vector<std::string>> Media::all() const
{
    return guarded([&] {
        std::vector<std::string> names;
        std::error_code ignored;
        for (fs::recursive_directory_iterator at(folder(), ignored), end; at != end; at.increment(ignored))
            if (at->is_regular_file(ignored) && isName(at->path().filename().string()))
                names.push_back(at->path().filename().string());
        std::sort(names.begin(), names.end());
        return names;
    });
}

} // namespace cupule
