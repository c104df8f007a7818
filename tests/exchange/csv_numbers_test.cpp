#include "core/exchange/csv/numbers.h"

#include <limits>
#include <string>

#include "core/exchange/problem.h"
#include "tests/support/catch.h"

using namespace cupule;

TEST_CASE("Numbers are read with the decimal sign of the file and never guessed", "[csv][numbers]")
{
    // The decimal signs of the locales: Unicode CLDR 42, numbers/symbols (it, de: comma; en: point).
    const auto [cell, decimal, expected] = GENERATE(table<std::string, char, double>({
        {"12.5", '.', 12.5},
        {"12,5", ',', 12.5},
        {"12.5", ',', 12.5},          // a lone point that cannot part thousands
        {"44,20110", ',', 44.2011},
        {"0,05", ',', 0.05},
        {"44.20110", '.', 44.2011},
        {"0.123", ',', 0.123},
        {"229,932.4", '.', 229932.4},
        {"229,932.4", ',', 229932.4},
        {"1.234,5", ',', 1234.5},
        {"1.234.567", ',', 1234567},
        {"1,234,567", '.', 1234567},
        {"1 234,5", ',', 1234.5},
        {"1\xC2\xA0" "234", ',', 1234},
        {"1\xE2\x80\xAF" "234,5", ',', 1234.5},
        {"-12", '.', -12},
        {"\xE2\x88\x92" "12,5", ',', -12.5},
        {"+7", ',', 7},
        {".5", '.', 0.5},
        {"1.5E-03", '.', 0.0015},
        {"1,5e+2", ',', 150},
        {" 8 ", '.', 8},
    }));
    CAPTURE(cell, decimal);
    const auto read = readNumber(cell, decimal);
    REQUIRE(read);
    CHECK(*read == Approx(expected).epsilon(1e-14));   // one rounding of a decimal to binary
}

TEST_CASE("Doubtful and broken numbers are refused by kind", "[csv][numbers]")
{
    const auto [cell, decimal, expected] = GENERATE(table<std::string, char, std::string>({
        {"12,5", '.', "ambiguous-number"},      // never 125, never 12
        {"1,234", '.', "ambiguous-number"},
        {"1.234", ',', "ambiguous-number"},
        {"1.23.4", ',', "unreadable-number"},
        {"1,2.3,4", '.', "unreadable-number"},
        {"12,34.5", '.', "unreadable-number"},
        {"1 23", '.', "unreadable-number"},
        {"12 mm", '.', "unreadable-number"},
        {"1e", '.', "unreadable-number"},
        {"1e999", '.', "unreadable-number"},
        {"-", '.', "unreadable-number"},
        {"--1", '.', "unreadable-number"},
        {".", '.', "unreadable-number"},
        {"nan", '.', "unreadable-number"},
        {"0x10", '.', "unreadable-number"},
        {"02.05.2024", '.', "unreadable-number"},
        {"", '.', ""},
    }));
    CAPTURE(cell, decimal);
    const auto read = readNumber(cell, decimal);
    REQUIRE_FALSE(read);
    CHECK(numberFaultKind(read.error()) == expected);
}

TEST_CASE("Codes that a spreadsheet spoilt are told from codes", "[csv][numbers]")
{
    const auto [cell, expected] = GENERATE(table<std::string, Mangling>({
        {"1.20E+04", Mangling::exponent},
        {"3.00E+05", Mangling::exponent},
        {"0E+00", Mangling::exponent},
        {"1.23457E+11", Mangling::exponent},
        {"1,20E+04", Mangling::exponent},
        {"12E3", Mangling::none},             // the code itself
        {"SE12", Mangling::none},
        {"E+04", Mangling::none},
        {"2-May", Mangling::date},
        {"02-May-24", Mangling::date},
        {"May-24", Mangling::date},
        {"2024-05-02 00:00:00", Mangling::date},
        {"T-101", Mangling::none},
        {"2024-05-02", Mangling::none},
        {"#REF!", Mangling::errorValue},
        {"#NAME?", Mangling::errorValue},
        {"#####", Mangling::errorValue},
        {"#12", Mangling::none},
        {"32TPQ1234567890", Mangling::none},
        {"", Mangling::none},
    }));
    CAPTURE(cell);
    CHECK(spreadsheetMangling(cell) == expected);
}

TEST_CASE("Degrees that can only be the other way round are told from impossible ones", "[csv][numbers]")
{
    CHECK(checkDegrees(44.2, 10.4) == DegreesCheck::fine);
    CHECK(checkDegrees(-123.0940, 49.2360) == DegreesCheck::swapped);
    CHECK(checkDegrees(-90, 180) == DegreesCheck::fine);
    CHECK(checkDegrees(91, 181) == DegreesCheck::outOfRange);
    CHECK(checkDegrees(91, 91) == DegreesCheck::outOfRange);
    CHECK(checkDegrees(0, 0) == DegreesCheck::nullIsland);
    CHECK(checkDegrees(0, 10) == DegreesCheck::fine);
    CHECK(checkDegrees(std::numeric_limits<double>::quiet_NaN(), 10) == DegreesCheck::outOfRange);
}

TEST_CASE("A shown value is short, whole and readable", "[csv][numbers]")
{
    CHECK(shownValue("T-101") == "T-101");
    CHECK(shownValue(std::string(200, 'a')) == std::string(200, 'a'));
    CHECK(shownValue(std::string(201, 'a')) == std::string(197, 'a') + "…");
    std::string accents;
    for (int i = 0; i < 150; ++i)
        accents += "é";
    CHECK(shownValue("x" + accents).size() <= 200);
    CHECK(shownValue("a\xE9") == "a\xEF\xBF\xBD");
    CHECK(shownValue(std::string_view("a\0b", 3)) == "a b");
}
