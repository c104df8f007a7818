#include "core/task/import.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <optional>
#include <system_error>

#include "core/base/text.h"
#include "core/store/bulk_import.h"
#include "core/task/import_aside.h"
#include "core/task/import_csv.h"
#include "core/task/import_gpx.h"
#include "core/task/import_photos.h"
#include "core/task/import_report.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

enum class Format { table, gpx, photo };

constexpr std::uintmax_t largeBytes = 4 << 20;

bool endsAs(const std::string& path, std::initializer_list<std::string_view> endings)
{
    const std::string ending = lowerAscii(fs::path(path).extension().string());
    return std::find(endings.begin(), endings.end(), ending) != endings.end();
}

bool namedAsPhoto(const std::string& path)
{
    return endsAs(path, {".jpg", ".jpeg", ".png", ".heic", ".heif", ".tif", ".tiff", ".webp"});
}

/// By its name, else by how it begins.
Format formatOf(const std::string& path)
{
    if (endsAs(path, {".gpx"}))
        return Format::gpx;
    if (namedAsPhoto(path))
        return Format::photo;
    if (endsAs(path, {".csv", ".tsv", ".txt"}))
        return Format::table;
    std::array<char, 64> head{};
    std::ifstream in(path, std::ios::binary);
    in.read(head.data(), head.size());
    const std::string_view begins(head.data(), static_cast<std::size_t>(in.gcount()));
    if (begins.starts_with("\xFF\xD8\xFF") || begins.starts_with("\x89PNG")
        || (begins.size() > 12 && begins.substr(4, 4) == "ftyp"))
        return Format::photo;
    const std::string_view text = trim(begins);
    return text.starts_with("<?xml") || text.starts_with("<gpx") ? Format::gpx : Format::table;
}

/// Folders become the photos in them, in the order of their names.
std::vector<std::string> allFiles(const std::vector<std::string>& paths)
{
    std::vector<std::string> files;
    for (const auto& path : paths) {
        std::error_code error;
        if (!fs::is_directory(path, error)) {
            files.push_back(path);
            continue;
        }
        std::vector<std::string> inside;
        for (fs::recursive_directory_iterator entry(path, fs::directory_options::skip_permission_denied, error), end;
             !error && entry != end; entry.increment(error))
            if (entry->is_regular_file(error) && namedAsPhoto(entry->path().string()))
                inside.push_back(entry->path().string());
        std::sort(inside.begin(), inside.end());
        files.insert(files.end(), inside.begin(), inside.end());
    }
    return files;
}

/// From a size on at which writing every page twice is most of the work.
bool isLarge(const std::string& path)
{
    std::error_code error;
    return fs::file_size(path, error) >= largeBytes && !error;
}

/// Where the rows or points of the `number`-th table or GPX file go that are set aside.
std::string asideTarget(const Session& session, const ImportOptions& options, const std::string& path, int number)
{
    if (options.asideFile.empty())
        return asidePath(session.info().path, path);
    if (number == 0)
        return options.asideFile;
    const fs::path told(options.asideFile);
    const std::string name = told.stem().string() + "-" + std::to_string(number + 1) + told.extension().string();
    return (told.parent_path() / name).string();
}

void addUp(const ImportFile& file, ImportReport& report)
{
    report.rows += file.rows;
    report.kept += file.kept;
    report.knownAlready += file.knownAlready;
    report.setAside += file.setAside;
    report.files.push_back(file);
}

} // namespace

Result<ImportReport> importFiles(Session& session, const std::vector<std::string>& paths, const ImportOptions& options,
                                 const Progress& progress)
{
    if (auto may = session.needOneOf({Role::volunteer, Role::trainer, Role::office}); !may)
        return fail(may.error());
    ImportReport report;
    report.dryRun = options.dryRun;
    const auto files = allFiles(paths);
    int withRows = 0;
    PhotoImport photos(session, options, progress, report);
    for (std::size_t i = 0; i < files.size(); ++i) {
        const std::string& path = files[i];
        const Format format = formatOf(path);
        if (format == Format::photo)
            progress.tell(static_cast<std::int64_t>(i), static_cast<std::int64_t>(files.size()));
        else
            photos.forgetVisits();
        std::optional<LargeImport> large;
        if (format == Format::table && !options.dryRun && isLarge(path))
            large.emplace(session.store());
        const std::string target = format == Format::photo ? "" : asideTarget(session, options, path, withRows++);
        auto file = format == Format::gpx     ? importGpx(session, path, target, options, progress, report)
                    : format == Format::photo ? photos.take(path)
                                              : importTable(session, path, target, options, progress, report);
        if (file) {
            addUp(*file, report);
            continue;
        }
        auto problem = files.size() > 1 ? asFileProblem(file.error(), path) : std::nullopt;
        if (!problem) {
            Fault fault = std::move(file.error());
            if (fault.place.file.empty())
                fault.place.file = path;
            return fail(std::move(fault));
        }
        report.problems.push_back(std::move(*problem));
    }
    return report;
}

} // namespace cupule
