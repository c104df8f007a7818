#include <algorithm>
#include <cctype>
#include <filesystem>
#include <map>

#include "core/base/text.h"
#include "core/exchange/bundle/archive_library.h"
#include "core/exchange/bundle/zip.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t pieceBytes = 1 << 16;
constexpr std::int64_t neverDense = 1 << 20;

tl::unexpected<Fault> refuse(const char* code, const std::string& file, const std::string& part, std::string technical = {})
{
    return fail(Fault{code, FaultKind::refused, {{"file", file}, {"part", part}}, {file, 0, 0, -1, part}, std::move(technical)});
}

tl::unexpected<Fault> tooLarge(const char* code, const std::string& file, std::int64_t found, std::int64_t limit)
{
    return fail(Fault{code, FaultKind::refused, {{"file", file}, {"found", std::to_string(found)}, {"limit", std::to_string(limit)}},
                      {file, 0, 0, -1, {}}, {}});
}

/// An open zip file and the entry at which it stands.
class Reading {
public:
    explicit Reading(const ArchiveLibrary& library) : lib(library), handle(library.archive_read_new()) {}
    Reading(const Reading&) = delete;
    Reading& operator=(const Reading&) = delete;
    ~Reading() { lib.archive_read_free(handle); }

    Status open(const std::string& path)
    {
        lib.archive_read_support_format_zip_seekable(handle);
        if (lib.archive_read_open_filename(handle, path.c_str(), pieceBytes) != ARCHIVE_OK)
            return refuse("bundle.not-zip", path, {}, said());
        return {};
    }
    std::string said() const
    {
        const char* text = lib.archive_error_string(handle);
        return text == nullptr ? std::string() : std::string(text);
    }

    const ArchiveLibrary& lib;
    archive* handle;
    archive_entry* entry = nullptr;
};

bool leavesItsFolder(std::string_view name)
{
    const bool drive = name.size() > 1 && name[1] == ':';
    if (name.empty() || name.front() == '/' || drive || name.find('\\') != std::string_view::npos)
        return true;
    for (const auto& step : split(name, '/'))
        if (step == ".." || step == "." || step.empty())
            return true;
    return std::any_of(name.begin(), name.end(), [](unsigned char c) { return std::iscntrl(c) != 0; });
}

/// Name and kind of the entry at which `reading` stands.
Status lookAt(const Reading& reading, const std::string& file, ZipPart& part)
{
    const auto& lib = reading.lib;
    const char* name = lib.archive_entry_pathname(reading.entry);
    part.name = name == nullptr ? std::string() : std::string(name);
    if (lib.archive_entry_hardlink(reading.entry) != nullptr || lib.archive_entry_symlink(reading.entry) != nullptr)
        return refuse("bundle.part-kind", file, part.name);
    if (leavesItsFolder(part.name) && !(part.name.ends_with('/') && !leavesItsFolder(part.name.substr(0, part.name.size() - 1))))
        return refuse("bundle.path-outside", file, part.name);
    if (lib.archive_entry_filetype(reading.entry) != AE_IFREG || lib.archive_entry_is_encrypted(reading.entry) != 0)
        return refuse("bundle.part-kind", file, part.name);
    part.bytes = lib.archive_entry_size_is_set(reading.entry) != 0 ? lib.archive_entry_size(reading.entry) : -1;
    return part.bytes < 0 ? Status(refuse("bundle.size-lies", file, part.name)) : Status();
}

/// 1 where there is an entry, 0 at the end; a warning about a header is a lie of the file.
Result<bool> next(Reading& reading, const std::string& file)
{
    const int code = reading.lib.archive_read_next_header(reading.handle, &reading.entry);
    if (code == ARCHIVE_EOF)
        return false;
    if (code == ARCHIVE_OK)
        return true;
    return refuse(code == ARCHIVE_WARN ? "bundle.size-lies" : "bundle.damaged", file, {}, reading.said());
}

/// Names that a file system may take for one another.
class Names {
public:
    Status add(const std::string& file, const std::string& name)
    {
        const auto [at, added] = m_names.emplace(lowerAscii(name), name);
        if (added)
            return {};
        return refuse(at->second == name ? "bundle.part-twice" : "bundle.part-clash", file, name);
    }

private:
    std::map<std::string, std::string> m_names;
};

} // namespace

Result<ZipFile> ZipFile::open(const std::string& path, const BundleLimits& limits)
{
    std::error_code error;
    const auto fileBytes = static_cast<std::int64_t>(fs::file_size(path, error));
    if (error)
        return fail(Fault{"file.open", FaultKind::io, {{"file", path}}, {path, 0, 0, -1, {}}, error.message()});
    if (fileBytes > limits.fileBytes)
        return tooLarge("bundle.too-large", path, fileBytes, limits.fileBytes);
    const auto library = archiveLibrary();
    if (!library)
        return fail(library.error());
    Reading reading(**library);
    if (auto opened = reading.open(path); !opened)
        return fail(opened.error());
    ZipFile zip;
    zip.m_path = path;
    zip.m_limits = limits;
    Names names;
    std::int64_t whole = 0;
    for (;;) {
        const auto more = next(reading, path);
        if (!more)
            return fail(more.error());
        if (!*more)
            break;
        ZipPart part;
        if (auto good = lookAt(reading, path, part); !good)
            return fail(good.error());
        if (auto fresh = names.add(path, part.name); !fresh)
            return fail(fresh.error());
        if (part.bytes > limits.partBytes)
            return tooLarge("bundle.part-large", path, part.bytes, limits.partBytes);
        if ((whole += part.bytes) > limits.wholeBytes)
            return tooLarge("bundle.whole-large", path, whole, limits.wholeBytes);
        zip.m_places.emplace(part.name, zip.m_parts.size());
        zip.m_parts.push_back(std::move(part));
        if (static_cast<std::int64_t>(zip.m_parts.size()) > limits.parts)
            return tooLarge("bundle.part-count", path, static_cast<std::int64_t>(zip.m_parts.size()), limits.parts);
    }
    if (whole > neverDense && whole / limits.timesPacked > fileBytes)
        return tooLarge("bundle.too-dense", path, whole / std::max<std::int64_t>(fileBytes, 1), limits.timesPacked);
    return zip;
}

const ZipPart* ZipFile::part(const std::string& name) const
{
    const auto found = m_places.find(name);
    return found == m_places.end() ? nullptr : &m_parts[found->second];
}

namespace {

/// The library has one code for everything that does not hold, and tells by its words alone that a size is wrong.
bool tellsWrongSize(const std::string& said)
{
    return said.find("wrong size") != std::string::npos;
}

Status unpackOne(const Reading& reading, const std::string& file, const ZipPart& part, const ZipFile::Take& take, const Progress& progress)
{
    std::string piece(pieceBytes, '\0');
    std::int64_t done = 0;
    for (;;) {
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        const auto got = reading.lib.archive_read_data(reading.handle, piece.data(), piece.size());
        if (got < 0)
            return refuse(tellsWrongSize(reading.said()) ? "bundle.size-lies" : "bundle.damaged", file, part.name, reading.said());
        if (got == 0)
            break;
        if ((done += got) > part.bytes)
            return refuse("bundle.size-lies", file, part.name);
        if (auto taken = take(part, std::string_view(piece).substr(0, static_cast<std::size_t>(got))); !taken)
            return taken;
    }
    if (done != part.bytes)
        return refuse("bundle.size-lies", file, part.name);
    return take(part, {});
}

} // namespace

Status ZipFile::unpack(const std::function<bool(const std::string& name)>& wanted, const Take& take, const Progress& progress) const
{
    const auto library = archiveLibrary();
    if (!library)
        return fail(library.error());
    Reading reading(**library);
    if (auto opened = reading.open(m_path); !opened)
        return opened;
    for (std::size_t index = 0;; ++index) {
        const auto more = next(reading, m_path);
        if (!more)
            return fail(more.error());
        if (!*more)
            return index == m_parts.size() ? Status() : refuse("bundle.damaged", m_path, {});
        ZipPart part;
        if (auto good = lookAt(reading, m_path, part); !good)
            return good;
        // The same file as when it was opened?
        if (index >= m_parts.size() || part.name != m_parts[index].name || part.bytes != m_parts[index].bytes)
            return refuse("bundle.damaged", m_path, part.name);
        if (!wanted(part.name))
            continue;
        if (auto done = unpackOne(reading, m_path, part, take, progress); !done)
            return done;
        progress.tell(static_cast<std::int64_t>(index) + 1, static_cast<std::int64_t>(m_parts.size()));
    }
}

Result<std::string> ZipFile::text(const std::string& name) const
{
    if (part(name) == nullptr)
        return refuse("bundle.part-missing", m_path, name);
    std::string text;
    auto done = unpack([&](const std::string& each) { return each == name; },
                       [&](const ZipPart&, std::string_view bytes) -> Status {
                           text += bytes;
                           return {};
                       });
    if (!done)
        return fail(done.error());
    return text;
}

} // namespace cupule
