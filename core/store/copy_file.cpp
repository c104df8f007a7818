#include "core/store/copy_file.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <memory>

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

namespace cupule {

namespace {

namespace fs = std::filesystem;

constexpr int pagesAtOnce = 2000;
constexpr std::int64_t spareBytes = 1 << 20;

[[noreturn]] void notWritten(const std::string& target, int error)
{
    throwFault(error == ENOSPC ? "backup.full" : "backup.write", FaultKind::io, {{"file", target}, {"can", "free-space"}},
               std::strerror(error));
}

void flush(const std::string& path)
{
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    const int done = file < 0 ? -1 : ::fsync(file);
    const int error = errno;
    if (file >= 0)
        ::close(file);
    if (done != 0)
        notWritten(path, error);
}

struct Beside {
    std::string path;
    ~Beside()
    {
        std::error_code ignored;
        for (const char* end : {"", "-journal", "-wal", "-shm"})
            fs::remove(path + end, ignored);
    }
};

void copyPages(Connection& from, const std::string& beside, const Progress& progress)
{
    sqlite3* raw = nullptr;
    int code = sqlite3_open_v2(beside.c_str(), &raw, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX, nullptr);
    const std::unique_ptr<sqlite3, int (*)(sqlite3*)> to(raw, &sqlite3_close);
    if (code != SQLITE_OK)
        notWritten(beside, errno);
    const std::unique_ptr<sqlite3_backup, int (*)(sqlite3_backup*)> backup(
        sqlite3_backup_init(raw, "main", from.handle(), "main"), &sqlite3_backup_finish);
    if (!backup)
        from.failed(sqlite3_errcode(raw), "backup");
    do {
        if (progress.cancelled())
            throwFault("job.cancelled", FaultKind::refused);
        code = sqlite3_backup_step(backup.get(), pagesAtOnce);
        const int whole = sqlite3_backup_pagecount(backup.get());
        progress.tell(whole - sqlite3_backup_remaining(backup.get()), whole);
    } while (code == SQLITE_OK);
    if (code == SQLITE_FULL)
        notWritten(beside, ENOSPC);
    if (code != SQLITE_DONE)
        throwFault(code == SQLITE_BUSY || code == SQLITE_LOCKED ? "store.in-use" : "backup.write", FaultKind::io,
                   {{"file", beside}, {"can", "try-again"}}, sqlite3_errmsg(raw));
}

} // namespace

void refuseSmallDisk(Connection& from, const std::string& target, std::int64_t mediaBytes)
{
    const std::int64_t needed = from.number("PRAGMA page_count") * from.number("PRAGMA page_size") + mediaBytes + spareBytes;
    const fs::path folder = fs::path(target).parent_path();
    std::error_code error;
    const auto space = fs::space(folder.empty() ? "." : folder, error);
    if (error || static_cast<std::int64_t>(space.available) >= needed)
        return;
    throwFault("backup.full", FaultKind::io,
               {{"file", target}, {"needed", std::to_string(needed)}, {"free", std::to_string(space.available)}, {"can", "free-space"}});
}

void copyStoreFile(Connection& from, const std::string& target, const Progress& progress)
{
    refuseSmallDisk(from, target, 0);
    const Beside beside{target + ".writing"};
    copyPages(from, beside.path, progress);
    flush(beside.path);
    std::error_code error;
    fs::rename(beside.path, target, error);
    if (error)
        notWritten(target, error.value());
    flush(fs::path(target).parent_path().empty() ? "." : fs::path(target).parent_path().string());
}

} // namespace cupule
