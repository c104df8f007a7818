#include "core/base/text.h"

#include "tests/support/catch.h"

using namespace cupule;

TEST_CASE("trimming takes every kind of space and no letter", "[base][text]")
{
    CHECK(trim("\xEF\xBB\xBF \t a b\xC2\xA0\xE2\x80\x8B\r\n") == "a b");
    CHECK(trim(" \xE3\x80\x80 ").empty());
    CHECK(trim("\xC3\xA9").size() == 2);
}

// Source: RFC 3629, sections 3 and 10 (overlong forms and surrogates are not UTF-8).
TEST_CASE("only well-formed UTF-8 counts as UTF-8", "[base][text]")
{
    CHECK(isUtf8("ch\xC3\xA2taignier \xF0\x9F\x8C\xB0"));
    for (const char* bad : {"\xC0\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE9", "\xFF", "\xE2\x82"}) {
        CAPTURE(bad);
        CHECK_FALSE(isUtf8(bad));
        CHECK(isUtf8(madeUtf8(bad)));
    }
}

// Source: Unicode Consortium mapping table of Windows code page 1252.
TEST_CASE("Windows-1252 and UTF-16 become UTF-8", "[base][text]")
{
    CHECK(fromWindows1252("ch\xE2taignier \x80 \x93") == "ch\xC3\xA2taignier \xE2\x82\xAC \xE2\x80\x9C");
    CHECK(fromUtf16(std::string_view("\x3C\xD8\x30\xDF\x41\x00", 6), true) == "\xF0\x9F\x8C\xB0" "A");
    CHECK(fromUtf16(std::string_view("\x00\x41\xD8\x3C", 4), false) == "A\xEF\xBF\xBD");
}

TEST_CASE("numbers are read without the locale and written so that they read back", "[base][text]")
{
    CHECK(parseNumber("+12.5") == 12.5);
    CHECK(parseNumber("-0.25") == -0.25);
    for (const char* bad : {"", "12,5", "1e3", "nan", "inf", " 1", "1 ", "0x10", "--1", "1.2.3"}) {
        CAPTURE(bad);
        CHECK_FALSE(parseNumber(bad));
    }
    CHECK(parseNumber(numberText(0.1)) == 0.1);
    CHECK(parseWhole("12") == 12);
    CHECK_FALSE(parseWhole("12.0"));
}

TEST_CASE("splitting keeps empty parts", "[base][text]")
{
    CHECK(split("a;;b", ';') == std::vector<std::string>{"a", "", "b"});
    CHECK(split("", ';') == std::vector<std::string>{""});
}
