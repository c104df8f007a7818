#include "core/exchange/csv/numbers.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>

#include "core/base/text.h"
#include "core/exchange/csv/cell_detail.h"
#include "core/exchange/problem.h"

namespace cupule {

using csv_detail::isDigit;

std::string_view numberFaultKind(NumberFault fault)
{
    switch (fault) {
    case NumberFault::empty:
        break;
    case NumberFault::unreadable:
        return kind::unreadableNumber;
    case NumberFault::ambiguous:
        return kind::ambiguousNumber;
    }
    return {};
}

namespace {

/// The cell with one byte for each sign: '-' for U+2212, ' ' for the blanks that part groups.
std::string plainSigns(std::string_view cell)
{
    std::string out;
    for (std::size_t at = 0; at < cell.size();) {
        const char32_t c = nextCodePoint(cell, at);
        if (c == 0x2212)
            out += '-';
        else if (c == 0xA0 || c == 0x2009 || c == 0x202F)
            out += ' ';
        else
            out += c < 0x80 ? static_cast<char>(c) : '?';
    }
    return out;
}

/// Groups of digits parted by `separator`: the first of one to three, the others of three.
bool regularGroups(std::string_view whole, char separator)
{
    std::size_t group = 0;
    bool first = true;
    for (std::size_t i = 0; i <= whole.size(); ++i) {
        if (i < whole.size() && whole[i] != separator) {
            ++group;
            continue;
        }
        if (group == 0 || group > 3 || (!first && group != 3))
            return false;
        first = false;
        group = 0;
    }
    return true;
}

std::string without(std::string_view text, char separator)
{
    std::string out;
    for (const char c : text)
        if (c != separator)
            out += c;
    return out;
}

/// What the signs of a number mean once it is clear: digits, perhaps a point, digits.
struct Mantissa {
    std::string whole;
    std::string fraction;
};

Result<Mantissa, NumberFault> splitAtSign(std::string_view text, char decimal)
{
    const auto bad = [](NumberFault fault) { return tl::unexpected<NumberFault>(fault); };
    const auto commas = std::count(text.begin(), text.end(), ',');
    const auto points = std::count(text.begin(), text.end(), '.');
    if (commas == 0 && points == 0)
        return Mantissa{std::string(text), {}};
    const auto last = text.find_last_of(".,");
    const char sign = text[last];
    const char other = sign == ',' ? '.' : ',';
    const auto before = text.substr(0, last);
    const auto after = text.substr(last + 1);
    if (commas > 0 && points > 0) {
        if ((sign == ',' ? commas : points) != 1 || !regularGroups(before, other))
            return bad(NumberFault::unreadable);
        return Mantissa{without(before, other), std::string(after)};
    }
    if (commas + points > 1) {
        if (sign == decimal || !regularGroups(text, sign))
            return bad(NumberFault::unreadable);
        return Mantissa{without(text, sign), {}};
    }
    if (sign != decimal) {
        const bool maybeThousands = after.size() == 3 && !before.empty() && before.size() <= 3 && before != "0";
        if (sign == ',' || maybeThousands)
            return bad(NumberFault::ambiguous);
    }
    return Mantissa{std::string(before), std::string(after)};
}

std::optional<double> valueOf(const std::string& digits)
{
    double value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc{} || end != digits.data() + digits.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

} // namespace

Result<double, NumberFault> readNumber(std::string_view cell, char decimal)
{
    const auto bad = [](NumberFault fault) { return tl::unexpected<NumberFault>(fault); };
    cell = csv_detail::trimmed(cell);
    if (cell.empty())
        return bad(NumberFault::empty);
    if (decimal == '.')
        if (const auto plain = parseNumber(cell))
            return *plain;
    std::string text = plainSigns(cell);
    std::string number;
    if (text.front() == '-' || text.front() == '+') {
        if (text.front() == '-')
            number += '-';
        text.erase(0, 1);
    }
    std::string exponent;
    if (const auto e = text.find_first_of("eE"); e != std::string::npos) {
        exponent = text.substr(e + 1);
        text.resize(e);
        if (!exponent.empty() && exponent.front() == '+')
            exponent.erase(0, 1);
        if (exponent.empty())
            return bad(NumberFault::unreadable);
    }
    if (text.find_first_not_of("0123456789., ") != std::string::npos)
        return bad(NumberFault::unreadable);
    auto parts = splitAtSign(text, decimal);
    if (!parts)
        return bad(parts.error());
    if (parts->whole.find(' ') != std::string::npos) {
        if (!regularGroups(parts->whole, ' '))
            return bad(NumberFault::unreadable);
        parts->whole = without(parts->whole, ' ');
    }
    if (parts->whole.empty() && parts->fraction.empty())
        return bad(NumberFault::unreadable);
    number += parts->whole.empty() ? "0" : parts->whole;
    if (!parts->fraction.empty())
        number += "." + parts->fraction;
    if (!exponent.empty())
        number += "e" + exponent;
    const auto value = valueOf(number);
    return value ? Result<double, NumberFault>(*value) : bad(NumberFault::unreadable);
}

namespace {

bool exponentForm(std::string_view text)
{
    std::size_t at = 0;
    const auto digits = [&] {
        const std::size_t from = at;
        while (at < text.size() && isDigit(text[at]))
            ++at;
        return at - from;
    };
    if (at < text.size() && (text[at] == '-' || text[at] == '+'))
        ++at;
    if (digits() != 1)
        return false;
    if (at < text.size() && (text[at] == '.' || text[at] == ',')) {
        ++at;
        if (digits() == 0)
            return false;
    }
    if (at >= text.size() || (text[at] != 'E' && text[at] != 'e'))
        return false;
    ++at;
    if (at >= text.size() || (text[at] != '-' && text[at] != '+'))
        return false;
    ++at;
    return digits() >= 2 && at == text.size();
}

bool shortNumber(std::string_view text)
{
    return (text.size() == 1 || text.size() == 2) && text.find_first_not_of("0123456789") == std::string_view::npos;
}

/// "2-May", "02-May-24", "May-24", and a day with the midnight that a spreadsheet adds.
bool dateForm(std::string_view text)
{
    if (text.ends_with(" 00:00:00") || text.ends_with("T00:00:00"))
        return text.size() == 19 && text[4] == '-';
    const auto parts = split(text, '-');
    if (parts.size() < 2 || parts.size() > 3)
        return false;
    const bool monthFirst = csv_detail::monthNamed(parts[0]) != 0;
    if (monthFirst)
        return parts.size() == 2 && parts[0].size() == 3 && shortNumber(parts[1]);
    return shortNumber(parts[0]) && parts[1].size() == 3 && csv_detail::monthNamed(parts[1]) != 0
           && (parts.size() == 2 || parts[2].size() == 2 || parts[2].size() == 4);
}

bool errorForm(std::string_view text)
{
    for (const std::string_view known : {"#REF!", "#NAME?", "#VALUE!", "#N/A", "#DIV/0!", "#NUM!", "#NULL!"})
        if (text == known)
            return true;
    return text.size() >= 3 && text.find_first_not_of('#') == std::string_view::npos;
}

} // namespace

Mangling spreadsheetMangling(std::string_view cell)
{
    cell = csv_detail::trimmed(cell);
    if (cell.size() < 3)
        return Mangling::none;
    if (cell.front() == '#')
        return errorForm(cell) ? Mangling::errorValue : Mangling::none;
    if (exponentForm(cell))
        return Mangling::exponent;
    return dateForm(cell) ? Mangling::date : Mangling::none;
}

} // namespace cupule
