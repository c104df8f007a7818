// What spreadsheets make of references: powers of ten, dates, and number signs where a column was too narrow.
// Common practice, no source.

#include "core/position/notation_detail.h"

namespace cupule::notation {

namespace {

constexpr std::string_view months[] = {"JAN",  "FEB",     "MAR",       "APR",     "MAY",      "JUN",
                                       "JUL",  "AUG",     "SEP",       "OCT",     "NOV",      "DEC",
                                       "SEPT", "JANUARY", "FEBRUARY",  "MARCH",   "APRIL",    "JUNE",
                                       "JULY", "AUGUST",  "SEPTEMBER", "OCTOBER", "NOVEMBER", "DECEMBER"};

std::size_t runOf(std::string_view text, std::size_t at, bool (*is)(char))
{
    std::size_t end = at;
    while (end < text.size() && is(text[end]))
        ++end;
    return end - at;
}

/// "1E+05", "SO6.12094E+05", or "6.12E5" and nothing else.
bool hasPowerOfTen(std::string_view text)
{
    for (std::size_t at = 1; at + 2 < text.size(); ++at) {
        if (text[at] != 'E' || !isDigit(text[at - 1]) || (text[at + 1] != '+' && text[at + 1] != '-'))
            continue;
        const std::size_t digits = runOf(text, at + 2, isDigit);
        const std::size_t end = at + 2 + digits;
        if (digits >= 1 && digits <= 3 && (end == text.size() || text[end] != '.'))
            return true;
    }
    std::size_t at = !text.empty() && text[0] == '-' ? 1 : 0;
    const std::size_t whole = runOf(text, at, isDigit);
    at += whole;
    if (at < text.size() && text[at] == '.')
        at += 1 + runOf(text, at + 1, isDigit);
    return whole > 0 && at + 1 < text.size() && text[at] == 'E' &&
           at + 1 + runOf(text, at + 1, isDigit) == text.size();
}

bool isMonth(std::string_view word)
{
    for (const auto& month : months)
        if (month == word)
            return true;
    return false;
}

/// One month with one or two numbers of at most four digits, and a gap beside the month.
bool isNamedDate(std::string_view text)
{
    int numbers = 0;
    int names = 0;
    bool apart = false;
    for (std::size_t at = 0; at < text.size();) {
        if (const std::size_t letters = runOf(text, at, isLetter); letters > 0) {
            if (!isMonth(text.substr(at, letters)))
                return false;
            ++names;
            apart = apart || (at > 0 && isGap(text[at - 1])) ||
                    (at + letters < text.size() && isGap(text[at + letters]));
            at += letters;
        } else if (const std::size_t digits = runOf(text, at, isDigit); digits > 0) {
            if (digits > 4)
                return false;
            ++numbers;
            at += digits;
        } else if (isGap(text[at])) {
            ++at;
        } else {
            return false;
        }
    }
    return names == 1 && apart && numbers >= 1 && numbers <= 2;
}

/// "2024-09-12" or "12/09/2024", alone or before a time.
bool isNumericDate(std::string_view text)
{
    const std::size_t a = runOf(text, 0, isDigit);
    if (a == 0 || a >= text.size() || (text[a] != '-' && text[a] != '/' && text[a] != '.'))
        return false;
    const char gap = text[a];
    const std::size_t b = runOf(text, a + 1, isDigit);
    const std::size_t second = a + 1 + b;
    if (b == 0 || b > 2 || second >= text.size() || text[second] != gap)
        return false;
    const std::size_t c = runOf(text, second + 1, isDigit);
    const std::size_t end = second + 1 + c;
    const bool yearFirst = a == 4 && c >= 1 && c <= 2;
    const bool yearLast = a <= 2 && c == 4;
    return (yearFirst || yearLast) && (end == text.size() || text[end] == ' ' || text[end] == 'T');
}

} // namespace

bool isMangled(std::string_view text)
{
    return (!text.empty() && text[0] == '#') || hasPowerOfTen(text) || isNamedDate(text) ||
           isNumericDate(text);
}

} // namespace cupule::notation
