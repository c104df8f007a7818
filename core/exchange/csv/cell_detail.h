// Small things that dates and numbers share. Stays in core/exchange/csv.

#pragma once

#include <string_view>

#include "core/base/text.h"

namespace cupule::csv_detail {

constexpr bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
constexpr bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// trim(), quick where both ends are plain.
inline std::string_view trimmed(std::string_view cell)
{
    const auto plain = [](char c) { return c > ' ' && c < 0x7F; };
    return !cell.empty() && plain(cell.front()) && plain(cell.back()) ? cell : trim(cell);
}

/// 1 to 12 for an English month name, three letters ("Sept" too) or all of them, in any case; 0 otherwise.
inline int monthNamed(std::string_view word)
{
    static constexpr std::string_view names[] = {"january", "february", "march",     "april",   "may",      "june",
                                                 "july",    "august",   "september", "october", "november", "december"};
    const std::string lower = lowerAscii(word);
    for (int i = 0; i < 12; ++i)
        if (lower == names[i] || lower == names[i].substr(0, 3) || (i == 8 && lower == "sept"))
            return i + 1;
    return 0;
}

} // namespace cupule::csv_detail
