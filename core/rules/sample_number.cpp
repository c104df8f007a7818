#include "core/rules/sample_number.h"

#include "core/base/text.h"

namespace cupule {

namespace {

constexpr std::string_view alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
constexpr int modulus = 37;
constexpr std::size_t bareLength = 9; ///< YY BB NNNN C without dashes

/// Place in the alphabet without '*', or -1.
int valueOf(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'A' && c <= 'Z')
        return c - 'A' + 10;
    return -1;
}

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

std::string digits(int value, int width)
{
    std::string text(static_cast<std::size_t>(width), '0');
    for (auto at = text.rbegin(); at != text.rend(); ++at, value /= 10)
        *at = static_cast<char>('0' + value % 10);
    return text;
}

std::string bareText(int year, std::string_view block, int running)
{
    return digits(year, 2) + std::string(block) + digits(running, 4);
}

/// Upper case, without blanks and without the dashes that people and word processors put in.
/// Anything else is kept, so that it is refused.
std::string bareOf(std::string_view text)
{
    std::string bare;
    std::size_t at = 0;
    const std::string_view inner = trim(text);
    while (at < inner.size()) {
        const char32_t c = nextCodePoint(inner, at);
        const bool dash = c == '-' || c == ' ' || c == 0xA0 || (c >= 0x2010 && c <= 0x2015) || c == 0x2212;
        if (dash)
            continue;
        if (c >= 'a' && c <= 'z')
            bare += static_cast<char>(c - 'a' + 'A');
        else
            appendUtf8(bare, c);
    }
    return bare;
}

bool hasForm(std::string_view bare)
{
    if (bare.size() != bareLength)
        return false;
    for (const std::size_t i : {0U, 1U, 4U, 5U, 6U, 7U})
        if (!isDigit(bare[i]))
            return false;
    return valueOf(bare[2]) >= 0 && valueOf(bare[3]) >= 0 && valueOf(bare[8]) >= 0 &&
           bare.substr(4, 4) != "0000";
}

} // namespace

char iso7064Mod37_2(std::string_view text)
{
    int sum = 0;
    for (const char c : text)
        if (const int value = valueOf(c); value >= 0)
            sum = (2 * sum + value) % modulus;
    const int check = (1 - 2 * sum) % modulus;
    return alphabet[static_cast<std::size_t>(check < 0 ? check + modulus : check)];
}

std::string SampleNumber::text() const
{
    return digits(year, 2) + '-' + block + '-' + digits(running, 4) + '-' + check;
}

std::optional<SampleNumber> makeSampleNumber(int year, std::string_view block, int running)
{
    if (year < 0 || year > 99 || running < 1 || running > 9999 || block.size() != 2)
        return std::nullopt;
    if (valueOf(block[0]) < 0 || valueOf(block[1]) < 0)
        return std::nullopt;
    const char check = iso7064Mod37_2(bareText(year, block, running));
    if (check == '*')
        return std::nullopt;
    return SampleNumber{year, std::string(block), running, check};
}

Result<SampleNumber> readSampleNumber(std::string_view text)
{
    const std::string bare = bareOf(text);
    if (!hasForm(bare))
        return fail("sample-number.form", FaultKind::data, {{"value", std::string(text)}});
    const std::string_view body = std::string_view(bare).substr(0, bareLength - 1);
    if (iso7064Mod37_2(body) != bare.back())
        return fail("sample-number.check", FaultKind::data, {{"value", std::string(text)}});
    return SampleNumber{parseWhole(body.substr(0, 2)).value_or(0), std::string(body.substr(2, 2)),
                        parseWhole(body.substr(4)).value_or(0), bare.back()};
}

} // namespace cupule
