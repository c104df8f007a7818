#include "tests/store/fault_vfs.h"

#include <cstring>
#include <stdexcept>

#include <sqlite3.h>

namespace cupule::test {

namespace {

struct State {
    sqlite3_vfs* real = nullptr;
    sqlite3_vfs own{};
    std::int64_t untilFailure = 0;
    int code = 0;
    bool once = false;
    bool failed = false;
    std::int64_t logFlushes = 0, fileFlushes = 0;
};

State state;

struct File {
    sqlite3_file base;
    bool isLog;
    bool isMain;
    sqlite3_file* real;
};

sqlite3_file* realOf(sqlite3_file* file)
{
    return reinterpret_cast<File*>(file)->real;
}

int failing()
{
    if (state.code == 0)
        return SQLITE_OK;
    if (state.failed)
        return state.once ? SQLITE_OK : state.code;
    if (--state.untilFailure > 0)
        return SQLITE_OK;
    state.failed = true;
    return state.code;
}

int fileClose(sqlite3_file* f) { return realOf(f)->pMethods->xClose(realOf(f)); }
int fileRead(sqlite3_file* f, void* to, int n, sqlite3_int64 at) { return realOf(f)->pMethods->xRead(realOf(f), to, n, at); }
int fileWrite(sqlite3_file* f, const void* from, int n, sqlite3_int64 at)
{
    if (const int code = failing())
        return code == SQLITE_FULL ? code : SQLITE_IOERR_WRITE;
    return realOf(f)->pMethods->xWrite(realOf(f), from, n, at);
}
int fileTruncate(sqlite3_file* f, sqlite3_int64 size)
{
    if (failing())
        return SQLITE_IOERR_TRUNCATE;
    return realOf(f)->pMethods->xTruncate(realOf(f), size);
}
int fileSync(sqlite3_file* f, int flags)
{
    const File* file = reinterpret_cast<File*>(f);
    state.logFlushes += file->isLog ? 1 : 0;
    state.fileFlushes += file->isMain ? 1 : 0;
    if (failing())
        return SQLITE_IOERR_FSYNC;
    return realOf(f)->pMethods->xSync(realOf(f), flags);
}
int fileSize(sqlite3_file* f, sqlite3_int64* size) { return realOf(f)->pMethods->xFileSize(realOf(f), size); }
int fileLock(sqlite3_file* f, int lock) { return realOf(f)->pMethods->xLock(realOf(f), lock); }
int fileUnlock(sqlite3_file* f, int lock) { return realOf(f)->pMethods->xUnlock(realOf(f), lock); }
int fileCheck(sqlite3_file* f, int* out) { return realOf(f)->pMethods->xCheckReservedLock(realOf(f), out); }
int fileControl(sqlite3_file* f, int op, void* arg) { return realOf(f)->pMethods->xFileControl(realOf(f), op, arg); }
int fileSector(sqlite3_file* f) { return realOf(f)->pMethods->xSectorSize(realOf(f)); }
int fileDevice(sqlite3_file* f) { return realOf(f)->pMethods->xDeviceCharacteristics(realOf(f)); }
int shmMap(sqlite3_file* f, int page, int size, int extend, void volatile** out)
{
    return realOf(f)->pMethods->xShmMap(realOf(f), page, size, extend, out);
}
int shmLock(sqlite3_file* f, int offset, int n, int flags) { return realOf(f)->pMethods->xShmLock(realOf(f), offset, n, flags); }
void shmBarrier(sqlite3_file* f) { realOf(f)->pMethods->xShmBarrier(realOf(f)); }
int shmUnmap(sqlite3_file* f, int remove) { return realOf(f)->pMethods->xShmUnmap(realOf(f), remove); }

const sqlite3_io_methods methods{2,          fileClose,    fileRead,   fileWrite,  fileTruncate, fileSync, fileSize,
                                 fileLock,   fileUnlock,   fileCheck,  fileControl, fileSector,  fileDevice,
                                 shmMap,     shmLock,      shmBarrier, shmUnmap,   nullptr,      nullptr};

int vfsOpen(sqlite3_vfs*, const char* name, sqlite3_file* f, int flags, int* outFlags)
{
    File* file = reinterpret_cast<File*>(f);
    file->base.pMethods = nullptr;
    file->real = reinterpret_cast<sqlite3_file*>(file + 1);
    file->isLog = (flags & SQLITE_OPEN_WAL) != 0;
    file->isMain = (flags & SQLITE_OPEN_MAIN_DB) != 0;
    if (failing())
        return SQLITE_CANTOPEN;
    const int code = state.real->xOpen(state.real, name, file->real, flags, outFlags);
    if (code == SQLITE_OK)
        file->base.pMethods = &methods;
    return code;
}

} // namespace

FaultVfs::FaultVfs()
{
    state = {};
    state.real = sqlite3_vfs_find(nullptr);
    state.own = *state.real;
    state.own.zName = "fault";
    state.own.pNext = nullptr;
    state.own.szOsFile = static_cast<int>(sizeof(File)) + state.real->szOsFile;
    state.own.xOpen = vfsOpen;
    if (sqlite3_vfs_register(&state.own, 1) != SQLITE_OK)
        throw std::runtime_error("vfs");
}

FaultVfs::~FaultVfs()
{
    sqlite3_vfs_unregister(&state.own);
    sqlite3_vfs_register(state.real, 1);
}

void FaultVfs::failFrom(std::int64_t n, int code, bool once)
{
    state.untilFailure = n;
    state.code = n == 0 ? 0 : code;
    state.once = once;
    state.failed = false;
}

bool FaultVfs::hasFailed() const { return state.failed; }
std::int64_t FaultVfs::logFlushes() const { return state.logFlushes; }
std::int64_t FaultVfs::fileFlushes() const { return state.fileFlushes; }

void FaultVfs::resetCounts()
{
    state.logFlushes = 0;
    state.fileFlushes = 0;
}

} // namespace cupule::test
