#include <algorithm>

#include "core/exchange/csv/encoding_detail.h"
#include "core/exchange/csv/scan_detail.h"

namespace cupule::csv_detail {

void EncodingJudge::add(std::string_view piece)
{
    std::size_t at = 0;
    while (at < piece.size()) {
        const std::size_t step = std::min<std::size_t>(piece.size() - at, 64);
        if (m_expected == 0 && isAscii(piece.data() + at, step)) {
            at += step;
            m_offset += static_cast<std::int64_t>(step);
            continue;
        }
        for (const std::size_t stop = at + step; at < stop; ++at, ++m_offset) {
            const auto c = static_cast<unsigned char>(piece[at]);
            if (c >= 0x80 || m_expected > 0)
                addHigh(c);
        }
    }
    bytes += static_cast<std::int64_t>(piece.size());
}

void EncodingJudge::bad(std::int64_t count)
{
    if (firstBadByte < 0)
        firstBadByte = m_offset;
    badBytes += count;
}

/// One step of the table in RFC 3629, section 4.
void EncodingJudge::addHigh(unsigned char c)
{
    if (c == 0x81 || c == 0x8D || c == 0x8F || c == 0x90 || c == 0x9D)
        ++unassigned1252;
    if (m_expected > 0) {
        if (c >= m_least && c <= m_most) {
            ++m_length;
            m_least = 0x80;
            m_most = 0xBF;
            if (--m_expected == 0)
                ++letters;
            return;
        }
        bad(m_length);
        m_expected = 0;
    }
    m_least = 0x80;
    m_most = 0xBF;
    m_length = 1;
    if (c < 0x80)
        return;
    if (c >= 0xC2 && c <= 0xDF) {
        m_expected = 1;
    } else if (c >= 0xE0 && c <= 0xEF) {
        m_expected = 2;
        m_least = c == 0xE0 ? 0xA0 : 0x80;
        m_most = c == 0xED ? 0x9F : 0xBF;
    } else if (c >= 0xF0 && c <= 0xF4) {
        m_expected = 3;
        m_least = c == 0xF0 ? 0x90 : 0x80;
        m_most = c == 0xF4 ? 0x8F : 0xBF;
    } else {
        bad(1);
    }
}

void EncodingJudge::finish()
{
    if (m_expected > 0)
        bad(m_length);
    m_expected = 0;
}

namespace {

std::string_view binaryKind(std::string_view first)
{
    struct Magic {
        std::string_view bytes;
        std::string_view name;
    };
    using namespace std::string_view_literals;
    static constexpr Magic known[] = {
        {"PK\x03\x04"sv, "zip"},             {"\xD0\xCF\x11\xE0"sv, "old-office"}, {"SQLite format 3\0"sv, "sqlite"},
        {"\x89PNG\r\n"sv, "png"},            {"\xFF\xD8\xFF"sv, "jpeg"},           {"GIF8"sv, "gif"},
        {"%PDF-"sv, "pdf"},                  {"\x1F\x8B"sv, "gzip"},               {"7z\xBC\xAF"sv, "7z"},
        {"BZh91AY"sv, "bzip2"},                  {"\xFD" "7zXZ"sv, "xz"},              {"\x28\xB5\x2F\xFD"sv, "zstd"},
        {"Rar!"sv, "rar"},                   {"II*\0"sv, "tiff"},                  {"MM\0*"sv, "tiff"},
        {"\x7F" "ELF"sv, "program"},         {"<?xml"sv, "xml"},                   {"\xEF\xBB\xBF<?xml"sv, "xml"},
        {"<gpx"sv, "xml"},                   {"<!DOCTYPE"sv, "html"},              {"<html"sv, "html"},
    };
    for (const auto& magic : known)
        if (first.starts_with(magic.bytes))
            return magic.name;
    return first.size() >= 12 && first.substr(4, 4) == "ftyp" ? "heif" : "";
}

} // namespace

Head readHead(std::string_view first)
{
    Head head;
    if (first.starts_with("\xEF\xBB\xBF"))
        head.mark = Head::Mark::utf8;
    else if (first.starts_with("\xFF\xFE"))
        head.mark = Head::Mark::utf16le;
    else if (first.starts_with("\xFE\xFF"))
        head.mark = Head::Mark::utf16be;
    head.binary = binaryKind(first);
    if (head.mark != Head::Mark::none || !head.binary.empty())
        return head;
    std::size_t nul[2] = {0, 0};
    for (std::size_t i = 0; i < first.size(); ++i)
        if (first[i] == '\0')
            ++nul[i % 2];
    const std::size_t pairs = first.size() / 2;
    if (pairs > 0 && first.size() % 2 == 0) {
        head.looksUtf16le = nul[1] * 10 >= pairs * 4 && nul[0] * 10 < pairs;
        head.looksUtf16be = nul[0] * 10 >= pairs * 4 && nul[1] * 10 < pairs;
    }
    return head;
}

} // namespace cupule::csv_detail
