// Small things with UTF-8 text that every room needs.

#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cupule {

/// ASCII blanks, tabs, line ends, no-break and zero-width spaces and the byte-order mark, off both ends.
std::string_view trim(std::string_view text);
/// A-Z to a-z; other bytes stay.
std::string lowerAscii(std::string_view text);
std::vector<std::string> split(std::string_view text, char separator);
bool isUtf8(std::string_view bytes);
/// Windows-1252, the five unassigned bytes as U+FFFD; ISO 8859-1 is its subset for printable text.
std::string fromWindows1252(std::string_view bytes);
/// UTF-16 in the named byte order, without the mark; lone surrogates become U+FFFD.
std::string fromUtf16(std::string_view bytes, bool littleEndian);
/// Unpaired or cut bytes become U+FFFD.
std::string madeUtf8(std::string_view bytes);
/// One code point at `at`, which moves past it; U+FFFD and one byte further where the bytes are no UTF-8.
char32_t nextCodePoint(std::string_view text, std::size_t& at);
void appendUtf8(std::string& out, char32_t codePoint);

/// Digits with an optional sign and a point, nothing else around them; never of the locale.
std::optional<double> parseNumber(std::string_view text);
std::optional<int> parseWhole(std::string_view text);
/// The shortest text that reads back as the same number.
std::string numberText(double value);

} // namespace cupule
