#include "core/store/label_key.h"

#include <algorithm>

#include "core/base/text.h"

namespace cupule {

namespace {

constexpr std::size_t longestRun = 70;       // longer runs of digits share one length letter
constexpr std::size_t digitsMoreTyped = 9;   // how many digits may still follow the typed ones

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

/// '0' + number of digits, which sorts before letters for all runs that people write.
char lengthLetter(std::size_t digits)
{
    return static_cast<char>('0' + std::min(digits, longestRun));
}

std::string_view digitsFrom(std::string_view text, std::size_t at)
{
    std::size_t end = at;
    while (end < text.size() && isDigit(text[end]))
        ++end;
    return text.substr(at, end - at);
}

std::string_view withoutZeros(std::string_view digits)
{
    const auto first = digits.find_first_not_of('0');
    return first == std::string_view::npos ? std::string_view() : digits.substr(first);
}

std::string after(std::string key)
{
    key.back() = static_cast<char>(static_cast<unsigned char>(key.back()) + 1);
    return key;
}

} // namespace

std::string labelKey(std::string_view label)
{
    std::string key;
    key.reserve(label.size() + 4);
    const std::string folded = lowerAscii(label);
    for (std::size_t at = 0; at < folded.size();) {
        if (!isDigit(folded[at])) {
            key += folded[at++];
            continue;
        }
        const auto run = digitsFrom(folded, at);
        const auto digits = withoutZeros(run);
        key += lengthLetter(digits.size());
        key += digits;
        at += run.size();
    }
    if (key.starts_with(mergedMark))
        key.insert(0, 1, ' ');
    return key;
}

std::string mergedKey(std::string_view label)
{
    return std::string(mergedMark) + labelKey(label);
}

std::vector<std::pair<std::string, std::string>> labelKeysFrom(std::string_view typed)
{
    std::size_t runBegins = typed.size();
    while (runBegins > 0 && isDigit(typed[runBegins - 1]))
        --runBegins;
    std::string key = labelKey(typed.substr(0, runBegins));
    if (runBegins == typed.size()) {
        if (key.empty())
            return {};
        return {{key, after(key)}};
    }
    const auto digits = withoutZeros(typed.substr(runBegins));
    std::vector<std::pair<std::string, std::string>> ranges;
    for (std::size_t more = 0; more <= (digits.empty() ? 0 : digitsMoreTyped); ++more) {
        const std::string from = key + lengthLetter(digits.size() + more) + std::string(digits);
        ranges.emplace_back(from, after(from));
    }
    return ranges;
}

} // namespace cupule
