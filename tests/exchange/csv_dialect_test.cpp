#include "core/exchange/csv/dialect.h"

#include "tests/exchange/outside.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

CsvDialect detected(const std::string& text, const DialectChoice& told = {})
{
    const auto dialect = detectDialect(test::writtenFile("dialect.csv", text), told);
    REQUIRE(dialect);
    return *dialect;
}

std::string utf16(const std::string& ascii, bool littleEndian)
{
    std::string out;
    for (const char c : ascii)
        out += littleEndian ? std::string{c, '\0'} : std::string{'\0', c};
    return out;
}

} // namespace

TEST_CASE("The delimiter is the one that gives every row as many fields", "[csv][dialect]")
{
    const char delimiter = GENERATE(',', ';', '\t', '|');
    const std::string d(1, delimiter);
    const auto dialect = detected("tree" + d + "note" + d + "galls\nT-1" + d + "\"a, b; c\td|e\"" + d + "3\nT-2" + d + d
                                  + "0\n");
    CHECK(dialect.delimiter == delimiter);
    CHECK(dialect.delimiterSure == Sureness::certain);
    CHECK(dialect.headerLine == 1);
    CHECK(dialect.headerSure == Sureness::certain);
}

TEST_CASE("A decimal comma does not make the comma the delimiter", "[csv][dialect]")
{
    const auto dialect = detected("tree;lat;lon\nT-1;44,20110;10,43220\nT-2;44,20150;10,43310\n");
    CHECK(dialect.delimiter == ';');
    CHECK(dialect.decimal == ',');
    CHECK(dialect.decimalSure == Sureness::certain);
    const auto point = detected("tree;lat;lon\nT-1;44.20110;10.43220\n");
    CHECK(point.decimal == '.');
    CHECK(point.decimalSure == Sureness::certain);
    CHECK(detected("tree;galls\nT-1;3\n").decimalSure == Sureness::guessed);
}

TEST_CASE("Thousands are no evidence for a decimal sign", "[csv][dialect]")
{
    CHECK(detected("a\tb\n1\t1,234\n2\t5,678\n").decimalSure == Sureness::guessed);
    CHECK(detected("a\tb\n1\t\"229,932.4\"\n").decimal == '.');
    CHECK(detected("a\tb\n1\t229.932,4\n").decimal == ',');
    const auto mixed = detected("a;b\n1;1,5\n2;1.5\n");
    CHECK(mixed.decimalSure == Sureness::guessed);
}

TEST_CASE("What is told is never doubted", "[csv][dialect]")
{
    DialectChoice told;
    told.delimiter = '|';
    told.decimal = ',';
    told.encoding = encodingNamed("iso-8859-7").value();
    told.headerLine = 2;
    const auto dialect = detected("a,b\n1,2\n3,4\n", told);
    CHECK(dialect.delimiter == '|');
    CHECK(dialect.decimal == ',');
    CHECK(dialect.encoding.name == "iso-8859-7");
    CHECK(dialect.headerLine == 2);
    for (const auto sure : {dialect.delimiterSure, dialect.decimalSure, dialect.encodingSure, dialect.headerSure})
        CHECK(sure == Sureness::told);
}

TEST_CASE("Encodings are told by mark, by being well-formed, or proposed", "[csv][dialect]")
{
    CHECK(detected("a,b\n1,2\n").encoding.encoding == TextEncoding::utf8);
    const auto utf8 = detected("a,b\n1,\xC3\xA9\n");
    CHECK(utf8.encodingSure == Sureness::certain);
    CHECK_FALSE(utf8.byteOrderMark);
    CHECK(detected("\xEF\xBB\xBF" "a,b\n1,2\n").byteOrderMark);
    const bool little = GENERATE(true, false);
    const auto sixteen = little ? TextEncoding::utf16le : TextEncoding::utf16be;
    const std::string mark = little ? "\xFF\xFE" : "\xFE\xFF";
    const auto marked = detected(mark + utf16("a,b\n1,2\n", little));
    CHECK(marked.encoding.encoding == sixteen);
    CHECK(marked.encodingSure == Sureness::certain);
    const auto bare = detected(utf16("tree,note\n1,2\n", little));
    CHECK(bare.encoding.encoding == sixteen);
    CHECK(bare.encodingSure == Sureness::likely);
    const auto old = detected("a,b\n1,ch\xE2taignier\n");
    CHECK(old.encoding.encoding == TextEncoding::windows1252);
    CHECK(old.encodingSure == Sureness::guessed);
    CHECK(old.badBytes == 0);
}

TEST_CASE("A few broken bytes in a UTF-8 file are counted and placed, not taken for another encoding", "[csv][dialect]")
{
    const auto dialect = detected("a,b\r\n1,\xC3\xA9\xC3\xA8\xC3\xA0\r\n2,\xE9\r\n3,x\r\n");
    CHECK(dialect.encoding.encoding == TextEncoding::utf8);
    CHECK(dialect.encodingSure == Sureness::likely);
    CHECK(dialect.badBytes == 1);
    CHECK(dialect.firstBadLine == 3);
}

TEST_CASE("The whole file is judged, not its beginning", "[csv][dialect]")
{
    std::string text = "a,b\n";
    for (int i = 0; i < 100'000; ++i)
        text += "1,plain\n";
    text += "2,ch\xE2taignier\n";
    const auto dialect = detected(text);
    CHECK(dialect.encoding.encoding == TextEncoding::windows1252);
    CHECK(dialect.fileBytes == static_cast<std::int64_t>(text.size()));
}

TEST_CASE("Title, blank and comment lines above the header are passed over and shown", "[csv][dialect]")
{
    const std::string end = GENERATE("\n", "\r\n", "\r");
    const auto dialect = detected("Trees of the vale" + end + end + "# made by hand" + end + "tree,galls,note" + end + "T-1,3,x"
                                  + end + "#T-9,1" + end + "T-2,0,y" + end);
    CHECK(dialect.headerLine == 4);
    CHECK(dialect.headerSure == Sureness::likely);
    CHECK(dialect.linesBefore == 3);
    CHECK(dialect.textBefore == std::vector<std::string>{"Trees of the vale", "# made by hand"});
    CHECK(dialect.hashComments);
    CHECK(dialect.lineEnds == (end == "\n" ? LineEnds::lf : end == "\r" ? LineEnds::cr : LineEnds::crlf));
}

TEST_CASE("A header that looks like data is only a guess", "[csv][dialect]")
{
    CHECK(detected("1,abc,x\n2,def,y\n").headerSure == Sureness::guessed);
    CHECK(detected("id,,age\n1,a,2\n").headerSure == Sureness::guessed);
    CHECK(detected("id,name,id\n1,a,2\n").headerSure == Sureness::guessed);
    CHECK(detected("#id,name\n1,a\n").headerLine == 1);
}

TEST_CASE("A header longer than most rows is still the header", "[csv][dialect]")
{
    const auto dialect = detected("tree,galls,note\nT-1,3\nT-2,0\nT-3,1\n");
    CHECK(dialect.headerLine == 1);
}

TEST_CASE("A title with empty cells behind it is no header, and rows with empty cells at the end do not hide one",
          "[csv][dialect]")
{
    CHECK(detected("The vale;;;;\n;;;;\ntree;galls;note;x;y\nT-1;3;;;\nT-2;0;;;\n").headerLine == 3);
    CHECK(detected("tree,galls,note\nT-1,3,a,\nT-2,0,b,\n").headerLine == 1);
}

TEST_CASE("The separator line of a spreadsheet is believed", "[csv][dialect]")
{
    const auto dialect = detected("sep=;\na,x;b,y\n1,2;3,4\n");
    CHECK(dialect.delimiter == ';');
    CHECK(dialect.delimiterSure == Sureness::certain);
    CHECK(dialect.headerLine == 2);
}

TEST_CASE("One column is a table too", "[csv][dialect]")
{
    const auto dialect = detected("value\n01\n002\n");
    CHECK(dialect.delimiter == ',');
    CHECK(dialect.headerLine == 1);
}

TEST_CASE("What is no table is named", "[csv][dialect]")
{
    using namespace std::string_literals;
    const auto faultOf = [](const std::string& bytes) {
        const auto dialect = detectDialect(test::writtenFile("not.csv", bytes));
        return dialect ? std::string("read") : dialect.error().code + " " + dialect.error().argument("found");
    };
    CHECK(faultOf("") == "csv.empty ");
    CHECK(faultOf(" \n\t\r\n") == "csv.empty ");
    CHECK(faultOf("PK\x03\x04rest") == "csv.binary zip");
    CHECK(faultOf("\xD0\xCF\x11\xE0rest") == "csv.binary old-office");
    CHECK(faultOf("SQLite format 3\0rest"s) == "csv.binary sqlite");
    CHECK(faultOf("\xFF\xD8\xFFrest") == "csv.binary jpeg");
    CHECK(faultOf("<?xml version='1.0'?><gpx/>") == "csv.binary xml");
    CHECK(detectDialect("/nowhere/at/all.csv").error().code == "file.open");
    CHECK(detectDialect("/").error().code == "file.folder");
}

TEST_CASE("Looking at a file can be stopped", "[csv][dialect]")
{
    std::stop_source stop;
    stop.request_stop();
    Progress progress;
    progress.stop = stop.get_token();
    CHECK(detectDialect(test::writtenFile("stop.csv", "a,b\n"), {}, progress).error().code == "job.cancelled");
}

TEST_CASE("Names of delimiters, decimal signs and encodings are those of the command line", "[csv][dialect]")
{
    CHECK(delimiterNamed("tab") == '\t');
    CHECK(delimiterNamed("Semicolon") == ';');
    CHECK(delimiterNamed("|") == '|');
    CHECK(delimiterNamed("x").error().code == "csv.delimiter");
    CHECK(decimalNamed("comma") == ',');
    CHECK(decimalNamed("").error().kind == FaultKind::usage);
    CHECK(encodingNamed("Latin1")->encoding == TextEncoding::windows1252);
    CHECK(encodingNamed("UTF-8")->encoding == TextEncoding::utf8);
    CHECK(encodingNamed("utf_16_be")->encoding == TextEncoding::utf16be);
    CHECK(encodingNamed("ISO-8859-7")->encoding == TextEncoding::named);
    CHECK(encodingNamed("no-such-thing").error().code == "csv.encoding");
    CHECK(encodingNamed("").error().code == "csv.encoding");
}
