#include "core/record/json_value.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

#include "core/base/text.h"

namespace cupule::json {

namespace {

constexpr int deepest = 64;
constexpr std::int64_t largestWhole = std::int64_t{1} << 62;
constexpr std::size_t usualValues = 48;

constexpr std::array<bool, 256> stopsText = [] {
    std::array<bool, 256> stops{};
    for (std::size_t c = 0; c < 0x20; ++c)
        stops[c] = true;
    stops['"'] = stops['\\'] = true;
    return stops;
}();

int hexDigit(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    const char lower = static_cast<char>(c | 0x20);
    return lower >= 'a' && lower <= 'f' ? lower - 'a' + 10 : -1;
}

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

} // namespace

/// Every function leaves `m_at` behind what it read, and says false where the text is wrong.
class Parser {
public:
    Parser(std::string_view text, Document& document) : m_at(text.data()), m_end(text.data() + text.size()), m_document(document)
    {
        document.m_values.reserve(usualValues);
    }
    bool all()
    {
        skipBlanks();
        if (!value({}, 0))
            return false;
        skipBlanks();
        return m_at == m_end;
    }

private:
    [[nodiscard]] bool here(char c) const { return m_at != m_end && *m_at == c; }
    bool taken(char c)
    {
        if (!here(c))
            return false;
        ++m_at;
        return true;
    }
    void skipBlanks()
    {
        while (m_at != m_end && (*m_at == ' ' || *m_at == '\t' || *m_at == '\n' || *m_at == '\r'))
            ++m_at;
    }
    Value& add(std::string_view key, Value::Kind kind)
    {
        Value& made = m_document.m_values.emplace_back();
        made.key = key;
        made.kind = kind;
        return made;
    }

    bool value(std::string_view key, int depth)
    {
        if (m_at == m_end || depth > deepest)
            return false;
        switch (*m_at) {
        case '{': return container(key, Value::Kind::object, '}', depth);
        case '[': return container(key, Value::Kind::array, ']', depth);
        case '"': {
            std::string_view text;
            if (!string(text))
                return false;
            add(key, Value::Kind::string).text = text;
            return true;
        }
        case 't': return word("true", key, Value::Kind::boolean, 1);
        case 'f': return word("false", key, Value::Kind::boolean, 0);
        case 'n': return word("null", key, Value::Kind::null, 0);
        default: return number(key);
        }
    }

    bool word(std::string_view expected, std::string_view key, Value::Kind kind, std::int64_t whole)
    {
        if (static_cast<std::size_t>(m_end - m_at) < expected.size() || std::string_view(m_at, expected.size()) != expected)
            return false;
        m_at += expected.size();
        add(key, kind).whole = whole;
        return true;
    }

    bool container(std::string_view key, Value::Kind kind, char close, int depth)
    {
        const std::size_t place = m_document.m_values.size();
        add(key, kind);
        ++m_at;
        skipBlanks();
        std::uint32_t count = 0;
        if (!taken(close)) {
            do {
                skipBlanks();
                std::string_view name;
                if (kind == Value::Kind::object && !memberName(name))
                    return false;
                if (!value(name, depth + 1))
                    return false;
                ++count;
                skipBlanks();
            } while (taken(','));
            if (!taken(close))
                return false;
        }
        Value& made = m_document.m_values[place];
        made.count = count;
        made.span = static_cast<std::uint32_t>(m_document.m_values.size() - place);
        return true;
    }

    bool memberName(std::string_view& name)
    {
        if (!here('"') || !string(name))
            return false;
        ++m_document.m_members;
        skipBlanks();
        if (!taken(':'))
            return false;
        skipBlanks();
        return true;
    }

    bool string(std::string_view& out)
    {
        const char* const from = ++m_at;
        while (m_at != m_end && !stopsText[static_cast<unsigned char>(*m_at)])
            ++m_at;
        if (!here('\\')) {
            out = std::string_view(from, static_cast<std::size_t>(m_at - from));
            return taken('"');
        }
        return escaped(from, out);
    }

    /// No text grows by resolving its escapes, so what is left of all is room enough.
    bool escaped(const char* from, std::string_view& out)
    {
        auto& room = m_document.m_unescaped;
        if (room.capacity() == 0)
            room.reserve(static_cast<std::size_t>(m_end - from));
        const std::size_t begin = room.size();
        for (;;) {
            room.insert(room.end(), from, m_at);
            if (taken('"'))
                break;
            if (!taken('\\') || !escape(room))
                return false;
            from = m_at;
            while (m_at != m_end && !stopsText[static_cast<unsigned char>(*m_at)])
                ++m_at;
        }
        out = std::string_view(room.data() + begin, room.size() - begin);
        return true;
    }

    bool escape(std::vector<char>& room)
    {
        if (m_at == m_end)
            return false;
        switch (const char c = *m_at++) {
        case '"':
        case '\\':
        case '/': room.push_back(c); return true;
        case 'b': room.push_back('\b'); return true;
        case 'f': room.push_back('\f'); return true;
        case 'n': room.push_back('\n'); return true;
        case 'r': room.push_back('\r'); return true;
        case 't': room.push_back('\t'); return true;
        case 'u': return codePoint(room);
        default: return false;
        }
    }

    bool unit(std::uint32_t& out)
    {
        if (m_end - m_at < 4)
            return false;
        out = 0;
        for (int i = 0; i < 4; ++i) {
            const int digit = hexDigit(*m_at++);
            if (digit < 0)
                return false;
            out = out * 16 + static_cast<std::uint32_t>(digit);
        }
        return true;
    }

    bool codePoint(std::vector<char>& room)
    {
        std::uint32_t point = 0;
        if (!unit(point) || (point >= 0xDC00 && point <= 0xDFFF))
            return false;
        if (point >= 0xD800 && point <= 0xDBFF) {
            std::uint32_t low = 0;
            if (!taken('\\') || !taken('u') || !unit(low) || low < 0xDC00 || low > 0xDFFF)
                return false;
            point = 0x10000 + ((point - 0xD800) << 10) + (low - 0xDC00);
        }
        std::string utf8;
        appendUtf8(utf8, point);
        room.insert(room.end(), utf8.begin(), utf8.end());
        return true;
    }

    bool digits()
    {
        const char* const from = m_at;
        while (m_at != m_end && isDigit(*m_at))
            ++m_at;
        return m_at != from;
    }

    bool number(std::string_view key)
    {
        const char* const from = m_at;
        taken('-');
        if (!taken('0') && !digits())
            return false;
        bool real = false;
        if (taken('.')) {
            real = true;
            if (!digits())
                return false;
        }
        if (here('e') || here('E')) {
            real = true;
            ++m_at;
            if (!taken('+'))
                taken('-');
            if (!digits())
                return false;
        }
        std::int64_t whole = 0;
        if (!real && std::from_chars(from, m_at, whole).ec == std::errc{} && whole <= largestWhole) {
            add(key, Value::Kind::whole).whole = whole;
            return true;
        }
        double value = 0;
        if (std::from_chars(from, m_at, value).ec != std::errc{})       // beyond doubles, or so small that it is 0
            value = std::strtod(std::string(from, m_at).c_str(), nullptr);
        add(key, Value::Kind::real).real = value;
        return std::isfinite(value);
    }

    const char* m_at;
    const char* const m_end;
    Document& m_document;
};

std::optional<Document> Document::parse(std::string_view text)
{
    std::optional<Document> document(std::in_place);
    if (!Parser(text, *document).all() || !isUtf8(text))
        document.reset();
    return document;
}

} // namespace cupule::json
