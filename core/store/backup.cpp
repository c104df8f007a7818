#include "core/store/backup.h"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

#include "core/store/copy_file.h"
#include "core/store/media.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view ending = ".cupule";
constexpr std::size_t stampLength = 17;   // YYYY-MM-DD-hhmmss

std::string stemOf(const Store& store)
{
    return fs::path(store.info().path).stem().string();
}

std::string stampOf(const Instant& at)
{
    const CivilDate day = CivilDate::of(at);
    const std::int64_t local = at.utcMilliseconds / 1000 + at.offsetMinutes.value_or(0) * 60;
    const std::int64_t second = ((local % 86'400) + 86'400) % 86'400;
    return fmt::format("{}-{:02d}{:02d}{:02d}", day.text(), second / 3600, second / 60 % 60, second % 60);
}

struct MediaFile {
    fs::path from;
    fs::path below;                        // ab/abcdef...
    std::int64_t bytes = 0;
};

std::vector<MediaFile> mediaOf(Store& store)
{
    std::vector<MediaFile> files;
    const Media media = store.media();
    for (const std::string& name : taken(media.all())) {
        MediaFile file{fs::path(media.folder()) / name.substr(0, 2) / name, fs::path(name.substr(0, 2)) / name, 0};
        std::error_code ignored;
        file.bytes = static_cast<std::int64_t>(fs::file_size(file.from, ignored));
        files.push_back(file);
    }
    return files;
}

/// Pictures never change, so a picture that an earlier backup holds is linked, not copied again.
void copyMedia(const std::vector<MediaFile>& files, const std::string& target, const std::vector<Backup>& earlier, const Progress& progress)
{
    for (std::size_t i = 0; i < files.size(); ++i) {
        if (progress.cancelled())
            throwFault("job.cancelled", FaultKind::refused);
        const fs::path to = fs::path(target) / files[i].below;
        std::error_code error;
        fs::create_directories(to.parent_path(), error);
        const auto has = [&](const Backup& backup) { return fs::exists(fs::path(backup.path + ".media") / files[i].below); };
        const auto holder = std::find_if(earlier.begin(), earlier.end(), has);
        if (holder != earlier.end()) {
            fs::create_hard_link(fs::path(holder->path + ".media") / files[i].below, to, error);
            if (!error)
                continue;
        }
        fs::copy_file(files[i].from, to, fs::copy_options::skip_existing, error);
        if (error)
            throwFault(error == std::errc::no_space_on_device ? "backup.full" : "backup.write", FaultKind::io,
                       {{"file", to.string()}, {"can", "free-space"}}, error.message());
        progress.tell(static_cast<std::int64_t>(i + 1), static_cast<std::int64_t>(files.size()));
    }
}

std::int64_t bytesToCopy(const std::vector<MediaFile>& files, const std::vector<Backup>& earlier)
{
    std::int64_t bytes = 0;
    for (const MediaFile& file : files)
        if (earlier.empty() || !fs::exists(fs::path(earlier.front().path + ".media") / file.below))
            bytes += file.bytes;
    return bytes;
}

std::vector<Backup> listed(Store& store, const std::string& folder)
{
    std::vector<Backup> backups;
    const std::string begins = stemOf(store) + '-';
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        const std::string name = at->path().filename().string();
        if (name.size() != begins.size() + stampLength + ending.size() || !name.starts_with(begins) || !name.ends_with(ending))
            continue;
        const auto day = CivilDate::parse(std::string_view(name).substr(begins.size(), 10));
        if (day)
            backups.push_back({at->path().string(), *day, static_cast<std::int64_t>(at->file_size(error))});
    }
    std::sort(backups.begin(), backups.end(), [](const Backup& a, const Backup& b) { return a.path > b.path; });
    return backups;
}

void removeBackup(const std::string& path)
{
    std::error_code error;
    fs::remove(path, error);
    if (!error)
        fs::remove_all(path + ".media", error);
    if (error)
        throwFault("backup.write", FaultKind::io, {{"file", path}}, error.message());
}

/// Entities and their erased commitments, carried into a copy in which they are still whole.
void eraseIn(Connection& store, const std::string& path)
{
    Connection copy;
    copy.open(path, Connection::Mode::write, 3000);
    if (copy.number("PRAGMA user_version") < 1)
        return;
    copy.run("PRAGMA journal_mode = DELETE; BEGIN IMMEDIATE");
    std::int64_t erased = 0;
    Query q(store, "SELECT DISTINCT commitment FROM personal WHERE salt IS NULL");
    while (q.step()) {
        Query(copy, "UPDATE personal SET salt = NULL, payload = NULL WHERE commitment = :commitment AND salt IS NOT NULL")
            .bind(":commitment", q.digest(0)).run();
        erased += copy.changes();
    }
    if (erased > 0 && copy.number("PRAGMA user_version") >= 2) {
        copy.run("UPDATE person_words SET name = coalesce((SELECT payload ->> '$.name' FROM person JOIN personal USING (commitment) "
                 "WHERE person.id = person_words.rowid), ''); INSERT INTO person_words (person_words) VALUES ('rebuild')");
    }
    Query entities(store, "SELECT DISTINCT entity FROM erasure");
    while (entities.step())
        Query(copy, "DELETE FROM undo_step WHERE id IN (SELECT step FROM undo_part WHERE entity = :entity)")
            .bind(":entity", entities.uid(0)).run();
    copy.run("COMMIT");
    copy.close();
}

} // namespace

Result<std::string> backUpStore(Store& store, const std::string& folder, const Progress& progress)
{
    return guarded([&] {
        std::error_code error;
        fs::create_directories(folder, error);
        if (error)
            throwFault("backup.write", FaultKind::io, {{"file", folder}}, error.message());
        const std::string target = (fs::path(folder) / (stemOf(store) + '-' + stampOf(store.core().services.clock.now()))).string() + std::string(ending);
        if (fs::exists(target))
            throwFault("backup.exists", FaultKind::refused, {{"file", target}});
        const auto earlier = listed(store, folder);
        const auto media = mediaOf(store);
        refuseSmallDisk(store.core().db, target, bytesToCopy(media, earlier));
        try {
            copyMedia(media, target + ".media", earlier, progress);
            copyStoreFile(store.core().db, target, progress);
        } catch (const StoreError&) {
            fs::remove_all(target + ".media", error);
            throw;
        }
        return target;
    });
}

Result<std::vector<Backup>> backupsOf(Store& store, const std::string& folder)
{
    return guarded([&] { return listed(store, folder); });
}

Status thinBackups(Store& store, const std::string& folder, int keep)
{
    return guarded([&] {
        const auto backups = listed(store, folder);
        for (std::size_t i = static_cast<std::size_t>(keep); i < backups.size(); ++i)
            removeBackup(backups[i].path);
    });
}

Status eraseInBackups(Store& store, const std::string& folder)
{
    return guarded([&] {
        for (const Backup& backup : listed(store, folder))
            eraseIn(store.core().db, backup.path);
    });
}

} // namespace cupule
