#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <unistd.h>

#include "core/exchange/bundle/archive_library.h"
#include "core/exchange/bundle/zip.h"

namespace cupule {

namespace {

constexpr std::size_t pieceBytes = 1 << 16;
constexpr int everyoneReads = 0644;

} // namespace

struct ZipWriter::Inside {
    Inside(const ArchiveLibrary& library, const std::string& target, const Instant& at, const Progress& told)
        : lib(library), path(target), beside(target + ".writing"), made(at), progress(told), handle(library.archive_write_new()),
          entry(library.archive_entry_new())
    {
    }
    ~Inside()
    {
        lib.archive_entry_free(entry);
        if (handle != nullptr)
            lib.archive_write_free(handle);
        std::error_code ignored;
        if (!done)
            std::filesystem::remove(beside, ignored);
    }

    tl::unexpected<Fault> bad(const std::string& why) const
    {
        const char* code = errno == ENOSPC ? "file.full" : "file.write";
        return fail(Fault{code, FaultKind::io, {{"file", path}}, {path, 0, 0, -1, {}}, why});
    }
    tl::unexpected<Fault> said() const
    {
        const char* text = lib.archive_error_string(handle);
        return bad(text == nullptr ? std::string() : std::string(text));
    }

    Status header(const std::string& name, std::int64_t bytes)
    {
        lib.archive_entry_clear(entry);
        lib.archive_entry_set_pathname(entry, name.c_str());
        lib.archive_entry_set_filetype(entry, AE_IFREG);
        lib.archive_entry_set_perm(entry, everyoneReads);
        lib.archive_entry_set_size(entry, bytes);
        lib.archive_entry_set_mtime(entry, static_cast<time_t>(made.utcMilliseconds / 1000), 0);
        return lib.archive_write_header(handle, entry) == ARCHIVE_OK ? Status() : said();
    }
    Status data(std::string_view bytes)
    {
        while (!bytes.empty()) {
            if (progress.cancelled())
                return fail("job.cancelled", FaultKind::refused);
            const auto put = lib.archive_write_data(handle, bytes.data(), bytes.size());
            if (put <= 0)
                return said();
            bytes.remove_prefix(static_cast<std::size_t>(put));
            progress.tell(all += put, 0);
        }
        return {};
    }

    const ArchiveLibrary& lib;
    std::string path, beside;
    Instant made;
    Progress progress;
    std::int64_t all = 0;                  ///< bytes put in
    archive* handle;
    archive_entry* entry;
    bool done = false;
};

ZipWriter::ZipWriter(std::unique_ptr<Inside> inside) : m(std::move(inside)) {}
ZipWriter::ZipWriter(ZipWriter&&) noexcept = default;
ZipWriter::~ZipWriter() = default;

Result<ZipWriter> ZipWriter::begin(const std::string& path, const Instant& made, const Progress& progress)
{
    const auto library = archiveLibrary();
    if (!library)
        return fail(library.error());
    auto inside = std::make_unique<Inside>(**library, path, made, progress);
    const auto& lib = inside->lib;
    lib.archive_write_set_format_zip(inside->handle);
    lib.archive_write_set_bytes_in_last_block(inside->handle, 1);   // no blanks at the end
    if (lib.archive_write_open_filename(inside->handle, inside->beside.c_str()) != ARCHIVE_OK)
        return inside->said();
    return ZipWriter(std::move(inside));
}

Status ZipWriter::addText(const std::string& name, std::string_view text)
{
    m->lib.archive_write_zip_set_compression_deflate(m->handle);
    if (auto begun = m->header(name, static_cast<std::int64_t>(text.size())); !begun)
        return begun;
    return m->data(text);
}

Status ZipWriter::addFile(const std::string& name, const std::string& path, std::int64_t bytes, bool packed)
{
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"), &std::fclose);
    if (!file)
        return fail(Fault{"file.open", FaultKind::io, {{"file", path}}, {path, 0, 0, -1, {}}, std::strerror(errno)});
    if (packed)
        m->lib.archive_write_zip_set_compression_deflate(m->handle);
    else
        m->lib.archive_write_zip_set_compression_store(m->handle);
    if (auto begun = m->header(name, bytes); !begun)
        return begun;
    char piece[pieceBytes];
    std::int64_t done = 0;
    for (std::size_t got = 0; (got = std::fread(piece, 1, sizeof piece, file.get())) > 0;) {
        done += static_cast<std::int64_t>(got);
        if (done > bytes)
            break;
        if (auto put = m->data({piece, got}); !put)
            return put;
    }
    if (std::ferror(file.get()) != 0 || done != bytes)
        return fail(Fault{"file.read", FaultKind::io, {{"file", path}}, {path, 0, 0, -1, {}}, {}});
    return {};
}

Status ZipWriter::copy(const ZipFile& from, const std::string& name, bool packed)
{
    const ZipPart* part = from.part(name);
    if (part == nullptr)
        return fail("bundle.part-missing", FaultKind::refused, {{"file", from.path()}, {"part", name}});
    if (packed)
        m->lib.archive_write_zip_set_compression_deflate(m->handle);
    else
        m->lib.archive_write_zip_set_compression_store(m->handle);
    if (auto begun = m->header(name, part->bytes); !begun)
        return begun;
    return from.unpack([&](const std::string& each) { return each == name; },
                       [&](const ZipPart&, std::string_view bytes) { return m->data(bytes); });
}

Status ZipWriter::finish()
{
    if (m->lib.archive_write_close(m->handle) != ARCHIVE_OK)
        return m->said();
    m->lib.archive_write_free(m->handle);
    m->handle = nullptr;
    const int file = ::open(m->beside.c_str(), O_RDONLY | O_CLOEXEC);
    const bool flushed = file >= 0 && ::fsync(file) == 0;
    if (file >= 0)
        ::close(file);
    if (!flushed || std::rename(m->beside.c_str(), m->path.c_str()) != 0)
        return m->bad(std::strerror(errno));
    m->done = true;
    return {};
}

} // namespace cupule
