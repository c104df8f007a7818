#include "core/store/opening.h"

#include <array>
#include <cstring>
#include <filesystem>
#include <fstream>

#include <fcntl.h>
#include <unistd.h>

#include "core/record/json_writer.h"
#include "core/store/copy_file.h"
#include "core/store/migrate.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t headerBytes = 100;
constexpr std::size_t userVersionAt = 60;      // https://www.sqlite.org/fileformat.html, 1.3
constexpr std::size_t applicationIdAt = 68;

[[noreturn]] void refuse(const char* code, const std::string& path, const char* can, FaultKind kind = FaultKind::data)
{
    throwFault(code, kind, {{"file", path}, {"can", can}});
}

std::int32_t bigEndian(const std::array<char, headerBytes>& header, std::size_t at)
{
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i)
        value = value << 8 | static_cast<unsigned char>(header[at + i]);
    return static_cast<std::int32_t>(value);
}

[[noreturn]] void refuseNewer(const std::string& path, std::int64_t version)
{
    throwFault("store.newer", FaultKind::data,
               {{"file", path}, {"version", std::to_string(version)}, {"known", std::to_string(newestSchema())},
                {"can", "get-newer-program"}});
}

void backUpBeforeUpgrade(StoreCore& core, const std::string& path, const OpenRequest& request, std::int64_t version)
{
    const std::string folder = request.backupFolder.empty() ? path + ".backups" : request.backupFolder;
    std::error_code error;
    fs::create_directories(folder, error);
    if (error)
        throwFault("backup.write", FaultKind::io, {{"file", folder}, {"can", "free-space"}}, error.message());
    const std::string stem = fs::path(path).stem().string();
    const std::string day = CivilDate::of(core.services.clock.now()).text();
    std::string target;
    int turn = 1;
    do
        target = folder + '/' + stem + "-version-" + std::to_string(version) + '-' + day + '-' + std::to_string(turn++) + ".cupule";
    while (fs::exists(target));
    copyStoreFile(core.db, target, {});
}

void upgrade(StoreCore& core, const std::string& path, const OpenRequest& request, std::int64_t version)
{
    backUpBeforeUpgrade(core, path, request, version);
    try {
        upgradeSchema(core.db);
    } catch (StoreError& error) {
        if (error.fault.code == "store.in-use" || error.fault.code == "store.full")
            throw;
        throwFault("store.upgrade", error.fault.kind,
                   {{"file", path}, {"version", std::to_string(version)}, {"can", "restore-backup"}}, error.fault.technical);
    }
    core.opening = Opening::upgraded;
}

Connection::Mode readingMode(const std::string& path)
{
    std::error_code ignored;
    const auto log = fs::file_size(path + "-wal", ignored);
    return ignored || log == 0 ? Connection::Mode::readUnchanging : Connection::Mode::read;
}

void checkVersion(StoreCore& core, const std::string& path, const OpenRequest& request)
{
    if (core.db.number("PRAGMA application_id") != storeApplicationId)
        refuse("store.foreign", path, "choose-other-file");
    const std::int64_t version = core.db.number("PRAGMA user_version");
    if (version > newestSchema())
        refuseNewer(path, version);
    if (version < 1 || core.db.number("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = 'store'") == 0)
        refuse("store.damaged", path, "restore-backup");
    if (version == newestSchema())
        return;
    if (core.info.readOnly)
        throwFault("store.older-read-only", FaultKind::refused,
                   {{"file", path}, {"version", std::to_string(version)}, {"can", "copy-elsewhere"}});
    upgrade(core, path, request, version);
}

} // namespace

bool onWritableGround(const std::string& path)
{
    const fs::path folder = fs::path(path).parent_path();
    const auto writable = [](const char* what) { return ::faccessat(AT_FDCWD, what, W_OK, AT_EACCESS) == 0; };
    return writable(path.c_str()) && writable(folder.empty() ? "." : folder.c_str());
}

void refuseWhatIsNoStore(const std::string& path)
{
    std::error_code error;
    const auto status = fs::status(path, error);
    if (status.type() == fs::file_type::not_found)
        refuse("store.missing", path, "choose-other-file", FaultKind::io);
    if (fs::is_directory(status))
        refuse("store.folder", path, "choose-other-file");
    std::ifstream file(path, std::ios::binary);
    if (!file)
        throwFault("store.io", FaultKind::io, {{"file", path}, {"can", "try-again"}}, std::strerror(errno));
    std::array<char, headerBytes> header{};
    file.read(header.data(), headerBytes);
    const bool whole = file.gcount() == static_cast<std::streamsize>(headerBytes);
    const bool ours = whole && bigEndian(header, applicationIdAt) == storeApplicationId;
    const bool sqlite = whole && std::memcmp(header.data(), "SQLite format 3", 16) == 0;
    if (!ours)
        refuse("store.foreign", path, "choose-other-file");
    if (!sqlite)
        refuse("store.damaged", path, "restore-backup");
    if (bigEndian(header, userVersionAt) > newestSchema())
        refuseNewer(path, bigEndian(header, userVersionAt));
}

void openCore(StoreCore& core, const std::string& path, const OpenRequest& request)
{
    refuseWhatIsNoStore(path);
    core.info.path = path;
    const bool writable = onWritableGround(path);
    core.info.readOnly = request.readOnly || !writable;
    core.device = request.device;
    core.remembered = request.seen;
    try {
        core.db.open(path, writable ? Connection::Mode::write : readingMode(path), request.waitMilliseconds);
        checkVersion(core, path, request);
        core.readInfo();
        core.findChain();
    } catch (const StoreError& error) {
        // A log that cannot be read on read-only ground: the store itself may be whole.
        if (!writable && (error.fault.code == "store.io" || error.fault.code == "store.in-use"))
            throwFault("store.read-only", FaultKind::io, {{"file", path}, {"can", "copy-elsewhere"}}, error.fault.technical);
        throw;
    }
    if (writable)
        core.db.run("PRAGMA journal_mode = WAL; PRAGMA journal_size_limit = 67108864; PRAGMA cache_size = -8000");
    if (core.info.readOnly) {
        core.db.run("PRAGMA query_only = ON");
        core.opening = Opening::readOnly;
    }
}

namespace {

struct Description {
    const StoreInfo& info;
};

template <class V>
void describe(V& v, const Description& x)
{
    v("demonstration", x.info.demonstration);
    v("kind", x.info.kind);
    v("made", x.info.made);
    v("name", x.info.name);
    v("notation", x.info.notation);
    v("region", x.info.region);
    v("store", x.info.id);
    v("zone", x.info.zone);
}

} // namespace

std::string storeContent(const StoreInfo& info)
{
    std::string content;
    json::Writer(content).object(Description{info});
    return content;
}

} // namespace cupule
