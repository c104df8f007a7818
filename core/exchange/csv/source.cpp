#include "core/exchange/csv/source.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <iconv.h>
#include <unistd.h>

#include "core/base/text.h"

namespace cupule {

namespace {

constexpr std::string_view utf8Mark = "\xEF\xBB\xBF";
constexpr std::size_t stageBytes = std::size_t{1} << 17;

class FileSource final : public ByteSource {
public:
    FileSource(int descriptor, std::string path) : m_descriptor(descriptor), m_path(std::move(path)) {}
    ~FileSource() override { ::close(m_descriptor); }
    FileSource(const FileSource&) = delete;
    FileSource& operator=(const FileSource&) = delete;

    Result<std::size_t> read(std::span<char> out) override
    {
        for (;;) {
            const ssize_t got = ::read(m_descriptor, out.data(), out.size());
            if (got >= 0)
                return static_cast<std::size_t>(got);
            if (errno != EINTR)
                return fail(Fault{"file.read", FaultKind::io, {{"file", m_path}}, {m_path, 0, 0, -1, {}},
                                  std::strerror(errno)});
        }
    }

private:
    int m_descriptor;
    std::string m_path;
};

class TextSource final : public ByteSource {
public:
    TextSource(std::string_view text, std::size_t piece) : m_text(text), m_piece(std::max<std::size_t>(piece, 1)) {}
    Result<std::size_t> read(std::span<char> out) override
    {
        const std::size_t count = std::min({out.size(), m_piece, m_text.size()});
        std::copy_n(m_text.data(), count, out.data());
        m_text.remove_prefix(count);
        return count;
    }

private:
    std::string_view m_text;
    std::size_t m_piece;
};

/// UTF-8: only the mark at the start goes.
class MarkDropper final : public ByteSource {
public:
    explicit MarkDropper(std::unique_ptr<ByteSource> bytes) : m_bytes(std::move(bytes)) {}
    Result<std::size_t> read(std::span<char> out) override
    {
        if (!m_begun)
            if (const auto begun = begin(); !begun)
                return tl::unexpected<Fault>(begun.error());
        if (m_head.empty())
            return m_bytes->read(out);
        const std::size_t count = std::min(out.size(), m_head.size());
        std::copy_n(m_head.data(), count, out.data());
        m_head.erase(0, count);
        return count;
    }

private:
    Status begin()
    {
        m_begun = true;
        while (m_head.size() < utf8Mark.size()) {
            char piece[3];
            const auto got = m_bytes->read({piece, utf8Mark.size() - m_head.size()});
            if (!got)
                return tl::unexpected<Fault>(got.error());
            if (*got == 0)
                break;
            m_head.append(piece, *got);
        }
        if (m_head == utf8Mark)
            m_head.clear();
        return {};
    }

    std::unique_ptr<ByteSource> m_bytes;
    std::string m_head;
    bool m_begun = false;
};

/// Everything else: bytes are gathered, converted as far as they make whole letters, and given out.
class Converter : public ByteSource {
public:
    explicit Converter(std::unique_ptr<ByteSource> bytes) : m_bytes(std::move(bytes)) {}

    Result<std::size_t> read(std::span<char> out) override
    {
        while (m_at == m_ready.size() && !m_done)
            if (const auto more = convertMore(); !more)
                return tl::unexpected<Fault>(more.error());
        const std::size_t count = std::min(out.size(), m_ready.size() - m_at);
        std::copy_n(m_ready.data() + m_at, count, out.data());
        m_at += count;
        return count;
    }

protected:
    /// Appends the UTF-8 of `in` to `out`; gives how many bytes were used. All of them must be used at the `end`.
    virtual std::size_t convert(std::string_view in, bool end, std::string& out) = 0;

private:
    Status convertMore()
    {
        const std::size_t kept = m_in.size();
        m_in.resize(kept + stageBytes);
        const auto got = m_bytes->read({m_in.data() + kept, stageBytes});
        if (!got)
            return tl::unexpected<Fault>(got.error());
        m_in.resize(kept + *got);
        m_done = *got == 0;
        m_ready.clear();
        m_at = 0;
        m_in.erase(0, convert(m_in, m_done, m_ready));
        if (!m_begun && !m_ready.empty()) {
            m_begun = true;
            if (m_ready.starts_with(utf8Mark))
                m_at = utf8Mark.size();
        }
        return {};
    }

    std::unique_ptr<ByteSource> m_bytes;
    std::string m_in;
    std::string m_ready;
    std::size_t m_at = 0;
    bool m_done = false;
    bool m_begun = false;
};

class Windows1252Source final : public Converter {
public:
    using Converter::Converter;

private:
    std::size_t convert(std::string_view in, bool /*end*/, std::string& out) override
    {
        out += fromWindows1252(in);
        return in.size();
    }
};

class Utf16Source final : public Converter {
public:
    Utf16Source(std::unique_ptr<ByteSource> bytes, bool littleEndian)
        : Converter(std::move(bytes)), m_littleEndian(littleEndian)
    {
    }

private:
    std::size_t convert(std::string_view in, bool end, std::string& out) override
    {
        std::size_t use = end ? in.size() : in.size() & ~std::size_t{1};
        if (!end && use >= 2) {
            const auto high = static_cast<unsigned char>(in[m_littleEndian ? use - 1 : use - 2]);
            if ((high & 0xFCU) == 0xD8U)
                use -= 2;   // the first half of a pair waits for the second
        }
        out += fromUtf16(in.substr(0, use), m_littleEndian);
        return use;
    }

    bool m_littleEndian;
};

class IconvSource final : public Converter {
public:
    IconvSource(std::unique_ptr<ByteSource> bytes, iconv_t converter)
        : Converter(std::move(bytes)), m_converter(converter)
    {
    }
    ~IconvSource() override { iconv_close(m_converter); }
    IconvSource(const IconvSource&) = delete;
    IconvSource& operator=(const IconvSource&) = delete;

private:
    std::size_t convert(std::string_view in, bool end, std::string& out) override
    {
        std::string copy(in);   // iconv asks for writable input
        char* from = copy.data();
        std::size_t left = copy.size();
        char piece[4096];
        while (left > 0) {
            char* to = piece;
            std::size_t room = sizeof piece;
            const std::size_t outcome = iconv(m_converter, &from, &left, &to, &room);
            const int error = outcome == static_cast<std::size_t>(-1) ? errno : 0;
            out.append(piece, sizeof piece - room);
            if (error == EINVAL && !end)
                break;   // the rest of the letter is still to come
            if (error == EILSEQ || error == EINVAL) {
                appendUtf8(out, 0xFFFD);
                ++from;
                --left;
            }
        }
        return in.size() - left;
    }

    iconv_t m_converter;
};

iconv_t noConverter()
{
    return reinterpret_cast<iconv_t>(-1);
}

} // namespace

Result<EncodingChoice> encodingNamed(std::string_view name)
{
    std::string plain;
    for (char c : lowerAscii(trim(name)))
        if (c != '-' && c != '_' && c != ' ')
            plain += c;
    if (plain == "utf8" || plain == "ascii" || plain == "usascii" || plain == "utf8sig")
        return EncodingChoice{TextEncoding::utf8, "UTF-8"};
    if (plain == "utf16le" || plain == "utf16")
        return EncodingChoice{TextEncoding::utf16le, "UTF-16LE"};
    if (plain == "utf16be")
        return EncodingChoice{TextEncoding::utf16be, "UTF-16BE"};
    if (plain == "windows1252" || plain == "cp1252" || plain == "latin1" || plain == "iso88591")
        return EncodingChoice{TextEncoding::windows1252, "Windows-1252"};
    const std::string given(trim(name));
    const iconv_t converter = given.empty() ? noConverter() : iconv_open("UTF-8", given.c_str());
    if (converter == noConverter())
        return fail("csv.encoding", FaultKind::usage, {{"encoding", given}});
    iconv_close(converter);
    return EncodingChoice{TextEncoding::named, given};
}

Result<std::unique_ptr<ByteSource>> openFile(const std::string& path)
{
    const auto bad = [&](const char* code) {
        return fail(Fault{code, FaultKind::io, {{"file", path}}, {path, 0, 0, -1, {}}, std::strerror(errno)});
    };
    std::error_code ignored;
    if (std::filesystem::is_directory(path, ignored))
        return bad("file.folder");
    const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0)
        return bad("file.open");
    return std::make_unique<FileSource>(descriptor, path);
}

std::unique_ptr<ByteSource> textSource(std::string_view text, std::size_t piece)
{
    return std::make_unique<TextSource>(text, piece);
}

std::unique_ptr<ByteSource> decoded(std::unique_ptr<ByteSource> bytes, const EncodingChoice& encoding)
{
    switch (encoding.encoding) {
    case TextEncoding::utf8:
        break;
    case TextEncoding::utf16le:
    case TextEncoding::utf16be:
        return std::make_unique<Utf16Source>(std::move(bytes), encoding.encoding == TextEncoding::utf16le);
    case TextEncoding::windows1252:
        return std::make_unique<Windows1252Source>(std::move(bytes));
    case TextEncoding::named:
        if (const iconv_t converter = iconv_open("UTF-8", encoding.name.c_str()); converter != noConverter())
            return std::make_unique<IconvSource>(std::move(bytes), converter);
        break;   // the name was tried when it was chosen; what is not UTF-8 shows in the rows
    }
    return std::make_unique<MarkDropper>(std::move(bytes));
}

} // namespace cupule
