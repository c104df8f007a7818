// Numbers as people of several countries type them, and codes that a spreadsheet has spoilt.
//
// Nothing is guessed: "12,5" in a file whose decimal sign is a point is refused, never 125.

#pragma once

#include <string_view>

#include "core/base/result.h"

namespace cupule {

enum class NumberFault {
    empty = 1,
    unreadable,   ///< kind "unreadable-number"
    ambiguous,    ///< one sign that could be decimal or thousands, e.g. 1.234 in a comma file: "ambiguous-number"
};
std::string_view numberFaultKind(NumberFault fault);

/// Reads a number of a column whose decimal sign is `decimal` ('.' or ',').
///  - The decimal sign itself always reads: 12,5 in a comma file.
///  - In a comma file a lone point reads as decimal too where it cannot part thousands (12.5, 44.2011; not 1.234).
///  - In a point file a lone comma is ambiguous and refused.
///  - Where both occur, or groups of three are parted by blanks, the grouping must be regular: 229,932.4; 1.234,5.
///  - An exponent is read: 1.5E-03. Signs + and -, and U+2212 as minus.
Result<double, NumberFault> readNumber(std::string_view cell, char decimal);

/// What a spreadsheet did to a code (a label, a sample number, a grid reference).
enum class Mangling {
    none,
    exponent,     ///< 1.20E+04: may have been 12E3, 120E2 or 12000, nobody can tell
    date,         ///< 02-May, May-24, 2024-05-02 00:00:00 in a column of codes
    errorValue,   ///< #REF!, #NAME?, #VALUE!, #N/A, #####
};
/// "12E3" is the undamaged code; only the way in which spreadsheets write an exponent counts (one digit before the
/// point, a sign, two digits or more after the E). Kind "spreadsheet-mangled".
Mangling spreadsheetMangling(std::string_view cell);

} // namespace cupule
