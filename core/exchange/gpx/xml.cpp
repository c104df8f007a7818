#include <algorithm>

#include "core/base/text.h"
#include "core/exchange/csv/encoding_detail.h"
#include "core/exchange/csv/source.h"
#include "core/exchange/gpx/xml_detail.h"

namespace cupule::gpx_detail {

namespace {

constexpr std::size_t mostSpots = 1000;
constexpr std::size_t longestEntity = 64;

/// The encoding that the XML declaration names, or nothing.
std::string declaredEncoding(std::string_view document)
{
    const auto end = document.substr(0, 1000).find("?>");
    if (!document.starts_with("<?xml") || end == std::string_view::npos)
        return {};
    const auto declaration = document.substr(0, end);
    auto at = declaration.find("encoding");
    if (at == std::string_view::npos)
        return {};
    at = declaration.find_first_of("'\"", at);
    if (at == std::string_view::npos)
        return {};
    const auto close = declaration.find(declaration[at], at + 1);
    return close == std::string_view::npos ? std::string{} : std::string(declaration.substr(at + 1, close - at - 1));
}

Result<std::string> allDecoded(std::string_view document, const EncodingChoice& encoding)
{
    const auto source = decoded(textSource(document), encoding);
    std::string out;
    std::string piece(std::size_t{1} << 16, '\0');
    for (;;) {
        const auto got = source->read({piece.data(), piece.size()});
        if (!got)
            return tl::unexpected<Fault>(got.error());
        if (*got == 0)
            return out;
        out.append(piece, 0, *got);
    }
}

} // namespace

Result<XmlText> toUtf8(std::string_view document)
{
    using Mark = csv_detail::Head::Mark;
    const auto head = csv_detail::readHead(document.substr(0, 4096));
    EncodingChoice encoding;
    if (head.mark == Mark::utf16le || head.looksUtf16le) {
        encoding = {TextEncoding::utf16le, "UTF-16LE"};
    } else if (head.mark == Mark::utf16be || head.looksUtf16be) {
        encoding = {TextEncoding::utf16be, "UTF-16BE"};
    } else if (const std::string name = declaredEncoding(document); head.mark == Mark::none && !name.empty()) {
        const auto named = encodingNamed(name);
        if (!named)
            return fail("gpx.encoding", FaultKind::data, {{"encoding", name}});
        encoding = *named;
    }
    XmlText out;
    if (encoding.encoding == TextEncoding::utf8 && !isUtf8(document)) {
        encoding = {TextEncoding::windows1252, "Windows-1252"};
        out.notAsDeclared = true;
    }
    auto text = allDecoded(document, encoding);
    if (!text)
        return tl::unexpected<Fault>(text.error());
    out.text = std::move(*text);
    return out;
}

namespace {

/// Walks over markup; knows no more of XML than where text and attributes end.
class Checker {
public:
    explicit Checker(std::string_view text) : m_text(text) {}

    XmlCheck check()
    {
        while (m_at < m_text.size()) {
            const char c = m_text[m_at];
            if (c == '<')
                markup();
            else
                plain(c);
        }
        return std::move(m_found);
    }

private:
    void plain(char c)
    {
        if (c == '&')
            entity();
        else if (static_cast<unsigned char>(c) < ' ' && c != '\t' && c != '\n' && c != '\r')
            spot("control-character", {});
        ++m_at;
    }

    void spot(const char* what, std::string_view entity)
    {
        if (m_found.spots.size() < mostSpots)
            m_found.spots.push_back({m_at, what, std::string(entity)});
    }

    void entity()
    {
        const auto end = m_text.find_first_of("; <>&\"'\n\r", m_at + 1);
        const auto name = m_text.substr(m_at + 1, end == std::string_view::npos ? end : end - m_at - 1);
        const bool closed = end != std::string_view::npos && m_text[end] == ';';
        const bool number = name.size() > 1 && name[0] == '#';
        const bool known = name == "amp" || name == "lt" || name == "gt" || name == "quot" || name == "apos";
        if (!closed || !(known || number))
            spot("entity", name.substr(0, longestEntity));
    }

    void passUntil(std::string_view mark)
    {
        const auto end = m_text.find(mark, m_at);
        const std::size_t stop = end == std::string_view::npos ? m_text.size() : end + mark.size();
        for (; m_at < stop; ++m_at) {
            const char c = m_text[m_at];
            if (static_cast<unsigned char>(c) < ' ' && c != '\t' && c != '\n' && c != '\r')
                spot("control-character", {});
        }
    }

    void markup()
    {
        const auto rest = m_text.substr(m_at);
        if (rest.starts_with("<!--"))
            passUntil("-->");
        else if (rest.starts_with("<![CDATA["))
            passUntil("]]>");
        else if (rest.starts_with("<?"))
            passUntil("?>");
        else if (rest.starts_with("<!"))
            documentType();
        else
            tag(rest.starts_with("</"));
    }

    /// <!DOCTYPE ... [ ... ]>: what it declares is never used, so only its end matters.
    void documentType()
    {
        int brackets = 0;
        char quote = '\0';
        for (++m_at; m_at < m_text.size(); ++m_at) {
            const char c = m_text[m_at];
            if (c == '\0')
                spot("control-character", {});
            if (quote != '\0') {
                quote = c == quote ? '\0' : quote;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == '[' || c == ']') {
                brackets += c == '[' ? 1 : -1;
            } else if (c == '>' && brackets <= 0) {
                ++m_at;
                return;
            }
        }
    }

    void tag(bool closing)
    {
        char quote = '\0';
        char last = '\0';
        for (++m_at; m_at < m_text.size();) {
            const char c = m_text[m_at];
            if (c == '>' && quote == '\0') {
                ++m_at;
                break;
            }
            if (c == '<')
                break;   // pugixml names the fault
            if (quote != '\0')
                quote = c == quote ? '\0' : quote;
            else if (c == '"' || c == '\'')
                quote = c;
            last = c;
            plain(c);
        }
        if (closing)
            --m_depth;
        else if (last != '/')
            m_found.depth = std::max(m_found.depth, ++m_depth);
    }

    std::string_view m_text;
    std::size_t m_at = 0;
    std::int64_t m_depth = 0;
    XmlCheck m_found;
};

} // namespace

XmlCheck checkXml(std::string_view text)
{
    return Checker(text).check();
}

std::int64_t LineCounter::lineOf(std::size_t byte)
{
    for (const std::size_t stop = std::min(byte, m_text.size()); m_at < stop; ++m_at) {
        const bool second = m_text[m_at] == '\n' && m_at > 0 && m_text[m_at - 1] == '\r';
        if ((m_text[m_at] == '\n' && !second) || m_text[m_at] == '\r')
            ++m_line;
    }
    return m_line;
}

} // namespace cupule::gpx_detail
