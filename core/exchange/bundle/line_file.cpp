#include "core/exchange/bundle/line_file.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

namespace cupule {

struct LineFile::Inside {
    ~Inside()
    {
        if (file != nullptr)
            std::fclose(file);
        std::error_code ignored;
        std::filesystem::remove(path, ignored);
    }
    [[nodiscard]] tl::unexpected<Fault> bad() const
    {
        const char* code = errno == ENOSPC ? "file.full" : "file.write";
        return fail(code, FaultKind::io, {{"file", path}, {"technical", std::strerror(errno)}});
    }

    std::string path;
    std::FILE* file = nullptr;
    Sha256 hash;
    std::int64_t bytes = 0, lines = 0;
    std::string digest;
};

LineFile::LineFile(std::unique_ptr<Inside> inside) : m(std::move(inside)) {}
LineFile::LineFile(LineFile&&) noexcept = default;
LineFile::~LineFile() = default;

Result<LineFile> LineFile::begin(const std::string& path)
{
    auto inside = std::make_unique<Inside>();
    inside->path = path;
    inside->file = std::fopen(path.c_str(), "wb");
    if (inside->file == nullptr)
        return inside->bad();
    return LineFile(std::move(inside));
}

Status LineFile::add(std::string_view line)
{
    const bool put = std::fwrite(line.data(), 1, line.size(), m->file) == line.size() && std::fputc('\n', m->file) != EOF;
    if (!put)
        return m->bad();
    m->hash.add(line);
    m->hash.add(std::string_view("\n"));
    m->bytes += static_cast<std::int64_t>(line.size()) + 1;
    ++m->lines;
    return {};
}

Status LineFile::finish()
{
    const int closed = std::fclose(m->file);
    m->file = nullptr;
    if (closed != 0)
        return m->bad();
    m->digest = hex(m->hash.finish());
    return {};
}

const std::string& LineFile::path() const { return m->path; }
std::int64_t LineFile::bytes() const { return m->bytes; }
std::int64_t LineFile::lines() const { return m->lines; }
const std::string& LineFile::sha256() const { return m->digest; }

} // namespace cupule
