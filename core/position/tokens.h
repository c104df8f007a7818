// Numbers of a position with what stands around them: signs, marks, hemisphere letters, labels, separators.
// Inside this room only. Any thread.

#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

#include "core/base/result.h"

namespace cupule::notation {

/// What a number was marked as.
enum class Mark : std::uint8_t { none, degrees, minutes, seconds };

struct Number {
    double value = 0; ///< without its sign
    int wholeDigits = 0;
    int decimals = 0;
    bool hasPoint = false;
    char sign = 0;          ///< '+', '-' or 0
    bool glued = false;     ///< the dash before it touches what stands before the dash
    bool separated = false; ///< a comma, semicolon or slash stands before it
    bool byColon = false;   ///< marked by a colon behind it
    Mark mark = Mark::none;
};

/// A hemisphere letter or a label, with the count of numbers before it.
struct Letter {
    char name = 0; ///< 'N', 'S', 'E' or 'W'
    std::size_t at = 0;
};

/// Degrees never need more than six numbers; more than these arrays hold are `tooMany`.
struct Tokens {
    std::array<Number, 8> number{};
    std::size_t count = 0;
    std::array<Letter, 4> letter{};
    std::size_t letters = 0;
    std::array<Letter, 2> label{}; ///< "lat" as 'N', "lon" as 'E'
    std::size_t labels = 0;
    bool commaDecimals = false;      ///< a comma was read as a decimal sign
    bool unknownWord = false;
    bool malformed = false;
    bool tooMany = false;

    [[nodiscard]] std::span<const Number> numbers() const { return {number.data(), count}; }
    [[nodiscard]] bool hasMark() const;
};

/// Takes cleaned text apart. `decimal`: '.', ',' or 0 to decide from the text. Fault "ambiguous-comma".
Result<Tokens> takeApart(std::string_view text, char decimal);

} // namespace cupule::notation
