#include "core/position/notation_detail.h"

#include "core/base/text.h"

namespace cupule::notation {

namespace {

/// Zeros of the decimal digits beyond ASCII; each begins a run of ten. Source: Unicode 15, category Nd.
constexpr char32_t zeros[] = {
    0x660,   0x6F0,   0x7C0,   0x966,   0x9E6,   0xA66,   0xAE6,   0xB66,   0xBE6,   0xC66,   0xCE6,
    0xD66,   0xDE6,   0xE50,   0xED0,   0xF20,   0x1040,  0x1090,  0x17E0,  0x1810,  0x1946,  0x19D0,
    0x1A80,  0x1A90,  0x1B50,  0x1BB0,  0x1C40,  0x1C50,  0xA620,  0xA8D0,  0xA900,  0xA9D0,  0xA9F0,
    0xAA50,  0xABF0,  0xFF10,  0x104A0, 0x10D30, 0x11066, 0x110F0, 0x11136, 0x111D0, 0x112F0, 0x11450,
    0x114D0, 0x11650, 0x116C0, 0x11730, 0x118E0, 0x11950, 0x11C50, 0x11D50, 0x11DA0, 0x16A60, 0x16AC0,
    0x16B50, 0x1D7CE, 0x1D7D8, 0x1D7E2, 0x1D7EC, 0x1D7F6, 0x1E140, 0x1E2F0, 0x1E950, 0x1FBF0};

bool isSpace(char32_t c)
{
    return c == 0xA0 || c == 0x85 || c == 0x1680 || (c >= 0x2000 && c <= 0x200A) || c == 0x2028 ||
           c == 0x2029 || c == 0x202F || c == 0x205F || c == 0x3000;
}

/// Zero-width spaces and joiners, the soft hyphen, direction and byte-order marks.
bool isInvisible(char32_t c)
{
    return c == 0xAD || (c >= 0x200B && c <= 0x200F) || (c >= 0x202A && c <= 0x202E) ||
           (c >= 0x2060 && c <= 0x2069) || c == 0xFEFF || c == 0x61C;
}

bool isDash(char32_t c)
{
    return (c >= 0x2010 && c <= 0x2015) || c == 0x2212 || c == 0xFE58 || c == 0xFE63;
}

char mark(char32_t c)
{
    switch (c) {
    case 0xB0:  // degree sign
    case 0xBA:  // masculine ordinal, next to it on many keyboards
    case 0x2DA: // ring above
        return degree;
    case '`':
    case 0xB4:
    case 0x2B9:
    case 0x2BC:
    case 0x2018:
    case 0x2019:
    case 0x201B:
    case 0x2032:
        return prime;
    case 0x2BA:
    case 0x201C:
    case 0x201D:
    case 0x201F:
    case 0x2033:
        return doublePrime;
    case 0x66B:
        return '.';
    case 0x60C:
    case 0x3001:
        return ',';
    default:
        return unknown;
    }
}

char asciiOf(char32_t c)
{
    if (c >= 'a' && c <= 'z')
        return static_cast<char>(c - 'a' + 'A');
    if (c < 0x80)
        return (c >= 9 && c <= 13)                                           ? ' '
               : c < 0x20 || c == 0x7F || c == static_cast<char32_t>(degree) ? unknown
               : c == '`'                                                    ? prime
                                                                             : static_cast<char>(c);
    if (isSpace(c))
        return ' ';
    if (isDash(c))
        return '-';
    for (const char32_t zero : zeros)
        if (c >= zero && c <= zero + 9)
            return static_cast<char>('0' + (c - zero));
    if (c >= 0xFF01 && c <= 0xFF5E)
        return asciiOf(c - 0xFEE0);
    return mark(c);
}

bool isQuote(char c)
{
    return c == prime || c == doublePrime;
}

} // namespace

Clean::Clean(std::string_view text)
{
    for (std::size_t at = 0; at < text.size() && !m_tooLong;) {
        const char32_t c = nextCodePoint(text, at);
        if (!isInvisible(c))
            put(asciiOf(c));
    }
    strip();
}

void Clean::put(char c)
{
    if (c == ' ' && (m_end == 0 || m_buffer[m_end - 1] == ' '))
        return;
    if (m_end == m_buffer.size()) {
        m_tooLong = true;
        return;
    }
    m_buffer[m_end++] = c;
}

void Clean::strip()
{
    const auto takeEnd = [&] {
        while (m_end > m_begin && (m_buffer[m_end - 1] == ' ' || m_buffer[m_end - 1] == '.' ||
                                   m_buffer[m_end - 1] == ',' || m_buffer[m_end - 1] == ';'))
            --m_end;
    };
    const auto closes = [&](char open, char close) {
        return m_end - m_begin >= 2 && m_buffer[m_begin] == open && m_buffer[m_end - 1] == close;
    };
    for (;;) {
        takeEnd();
        while (m_begin < m_end && m_buffer[m_begin] == ' ')
            ++m_begin;
        if (m_begin < m_end && isQuote(m_buffer[m_begin])) {
            const char quote = m_buffer[m_begin++];
            if (m_end > m_begin && m_buffer[m_end - 1] == quote)
                --m_end;
        } else if (closes('(', ')') || closes('[', ']')) {
            ++m_begin;
            --m_end;
        } else {
            return;
        }
    }
}

} // namespace cupule::notation
