// Tables nobody on the project made: those of the public suites beside the project (reference/files/csv, sources in
// its README) against Python's csv module, and the small inputs that broke other programs (reference/cases).

#include <algorithm>
#include <map>

#include <nlohmann/json.hpp>

#include "core/exchange/csv/dates.h"
#include "core/exchange/csv/numbers.h"
#include "core/exchange/csv/table.h"
#include "tests/exchange/outside.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using Table = std::vector<std::vector<std::string>>;

namespace {

/// How a person would open each file (last column of the README there).
struct Opened {
    char delimiter;
    std::string encoding;       // as the program names it
    std::string python;         // as Python names it
    std::int64_t headerLine;
    std::size_t fields;         // of the header
    std::size_t rows;           // empty lines and comments not counted
};
const std::map<std::string, Opened>& opened()
{
    static const std::map<std::string, Opened> table = {
        {"spectrum_comma_in_quotes.csv", {',', "UTF-8", "utf-8-sig", 1, 5, 1}},
        {"spectrum_escaped_quotes.csv", {',', "UTF-8", "utf-8-sig", 1, 2, 2}},
        {"spectrum_newlines.csv", {',', "UTF-8", "utf-8-sig", 1, 3, 3}},
        {"spectrum_quotes_and_newlines.csv", {',', "UTF-8", "utf-8-sig", 1, 2, 2}},
        {"spectrum_utf8.csv", {',', "UTF-8", "utf-8-sig", 1, 3, 2}},
        {"spectrum_json.csv", {',', "UTF-8", "utf-8-sig", 1, 2, 1}},
        {"cr_only_with_cr_in_quotes.csv", {',', "UTF-8", "utf-8-sig", 1, 3, 2}},
        {"utf16le_bom.csv", {',', "UTF-16LE", "utf-16", 1, 3, 2}},
        {"utf16be_bom.csv", {',', "UTF-16BE", "utf-16", 1, 3, 2}},
        {"latin1_small.csv", {',', "Windows-1252", "cp1252", 1, 3, 2}},
        {"short_row.csv", {',', "UTF-8", "utf-8-sig", 1, 3, 3}},
        {"cr_only_with_preamble.csv", {',', "UTF-8", "utf-8-sig", 4, 5, 16}},
        {"semicolon_decimal_comma.csv", {';', "UTF-8", "utf-8-sig", 1, 5, 5}},
        {"tab_with_comments.tsv", {'\t', "UTF-8", "utf-8-sig", 5, 5, 5}},
        {"utf16le_real.csv", {',', "UTF-16LE", "utf-16", 1, 19, 327}},
        {"latin1_spanish.csv", {',', "Windows-1252", "cp1252", 1, 8, 116}},
        {"bom_13_bytes.csv", {',', "UTF-8", "utf-8-sig", 1, 2, 0}},
        {"two_blank_lines_and_title.csv", {';', "UTF-8", "utf-8-sig", 0, 0, 0}},   // see the test of its own
        {"leading_zeros.csv", {',', "UTF-8", "utf-8-sig", 1, 1, 3}},
        {"duplicate_headers.csv", {',', "UTF-8", "utf-8-sig", 1, 5, 2}},
        {"blank_header.csv", {',', "UTF-8", "utf-8-sig", 1, 3, 2}},
        {"timestamps_mixed_zone.csv", {',', "UTF-8", "utf-8-sig", 1, 2, 4}},
        {"latin1_semicolon_crlf.csv", {';', "Windows-1252", "cp1252", 1, 8, 638}},
        {"iso8859_7_greek.csv", {',', "Windows-1252", "cp1252", 1, 3, 4}},
        {"bom_day_mon_yy.csv", {',', "UTF-8", "utf-8-sig", 1, 6, 251}},
        {"control_characters.csv", {',', "UTF-8", "utf-8-sig", 1, 5, 2}},
    };
    return table;
}

std::optional<std::string> path(const std::string& below)
{
    const auto found = test::sharedPath("reference/" + below);
    if (!found)
        test::skipped("reference/" + below + " is not beside the project");
    return found;
}

struct Content {
    CsvDialect dialect;
    std::vector<std::string> headers;
    Table rows;
    std::vector<std::int64_t> lines;
    std::vector<std::string> flaws;

    [[nodiscard]] std::string at(std::size_t row, const std::string& name) const
    {
        const auto column = std::find(headers.begin(), headers.end(), name) - headers.begin();
        return rows.at(row).at(static_cast<std::size_t>(column));
    }
};

Content contentOf(const std::string& file, const DialectChoice& told = {})
{
    Content out;
    const auto dialect = detectDialect(file, told);
    REQUIRE(dialect);
    out.dialect = *dialect;
    auto reader = CsvReader::open(file, *dialect);
    REQUIRE(reader);
    out.headers = reader->headers();
    CsvRow row;
    while (reader->next(row).value()) {
        out.rows.emplace_back(row.fields.begin(), row.fields.end());
        out.lines.push_back(row.line);
        out.flaws.emplace_back(row.flaw);
    }
    return out;
}

} // namespace

TEST_CASE("Every table of the public suites is split as Python's csv module splits it", "[csv][files][outside]")
{
    const auto folder = path("files/csv");
    if (!folder)
        return;
    for (const auto& [name, expected] : opened()) {
        CAPTURE(name);
        const auto printed = test::printedBy(
            {"python3", "-c",
             "import csv,io,json,sys\nt=open(sys.argv[1],encoding=sys.argv[2],newline='').read()\n"
             "print(json.dumps([r or [''] for r in csv.reader(io.StringIO(t,newline=''),delimiter=sys.argv[3])]))",
             *folder + "/" + name, expected.python, std::string(1, expected.delimiter)});
        if (!printed) {
            test::skipped("python3 is not installed");
            return;
        }
        CsvTokenizer tokenizer(decoded(openFile(*folder + "/" + name).value(), encodingNamed(expected.encoding).value()),
                               expected.delimiter);
        Table table;
        CsvRecord record;
        while (tokenizer.next(record).value())
            table.emplace_back(record.fields.begin(), record.fields.end());
        CHECK(table == nlohmann::json::parse(*printed).get<Table>());
    }
}

TEST_CASE("Every table of the public suites is opened the way a person would open it", "[csv][files]")
{
    const auto folder = path("files/csv");
    if (!folder)
        return;
    CHECK(test::sharedFiles("reference/files/csv").size() == opened().size());
    for (const auto& [name, expected] : opened()) {
        CAPTURE(name);
        const auto content = contentOf(*folder + "/" + name);
        CHECK(content.dialect.delimiter == expected.delimiter);
        CHECK(content.dialect.encoding.name == expected.encoding);
        if (expected.headerLine == 0)
            continue;
        CHECK(content.dialect.headerLine == expected.headerLine);
        CHECK(content.headers.size() == expected.fields);
        CHECK(content.rows.size() == expected.rows);
    }
}

TEST_CASE("The facts that the list of files states are read", "[csv][files]")
{
    const auto folder = path("files/csv");
    if (!folder)
        return;
    const auto read = [&](const char* name, const DialectChoice& told = {}) { return contentOf(*folder + "/" + name, told); };
    const auto cr = read("cr_only_with_cr_in_quotes.csv");
    CHECK(cr.dialect.lineEnds == LineEnds::cr);
    CHECK(cr.rows[1][0] == "Once upon\ra time");
    CHECK(read("utf16le_bom.csv").rows[1][2] == "\xCA\xA4");   // U+02A4
    CHECK(read("utf16be_bom.csv").rows == read("utf16le_bom.csv").rows);
    const auto latin = read("latin1_small.csv");
    CHECK(latin.rows[1][2] == "©");
    CHECK(latin.dialect.encodingSure == Sureness::guessed);
    const auto spanish = read("latin1_spanish.csv");
    CHECK(spanish.headers[7] == "Descripción");
    CHECK(readNumber(spanish.rows[0][6], spanish.dialect.decimal).value() == Approx(229932.5).margin(1e-9));
    CHECK(read("bom_13_bytes.csv").headers[0] == "kitten");
    CHECK(read("leading_zeros.csv").rows == Table{{"01"}, {"002"}, {"00003"}});
    CHECK(read("duplicate_headers.csv").headers == std::vector<std::string>{"id", "name", "id", "age", "id"});
    CHECK(read("blank_header.csv").headers[1].empty());
    CHECK(read("latin1_semicolon_crlf.csv").headers[3] == "Année");
    CHECK(read("latin1_semicolon_crlf.csv").dialect.decimal == ',');
    CHECK(read("latin1_semicolon_crlf.csv").dialect.lineEnds == LineEnds::crlf);
    CHECK(read("spectrum_json.csv").rows[0][1] == "{\"type\": \"Point\", \"coordinates\": [102.0, 0.5]}");
    DialectChoice greek;
    greek.encoding = encodingNamed("iso-8859-7").value();
    CHECK(read("iso8859_7_greek.csv", greek).rows[2][2] == "Μυρων");
    CHECK(read("iso8859_7_greek.csv").dialect.encodingSure == Sureness::guessed);
    const auto comments = read("tab_with_comments.tsv");
    CHECK(comments.dialect.hashComments);
    CHECK(comments.headers == std::vector<std::string>{"Year", "Make", "Model", "Description", "Price"});
    CHECK(comments.rows[2][3] == "MUST SELL!\\nair, moon roof, loaded");
}

TEST_CASE("Rows that do not fit are named by their line", "[csv][files]")
{
    const auto folder = path("files/csv");
    if (!folder)
        return;
    const auto shorter = contentOf(*folder + "/short_row.csv");
    CHECK(shorter.flaws == std::vector<std::string>{"", "wrong-field-count", ""});
    CHECK(shorter.lines[1] == 3);
    // Quotes inside a field are escaped with a backslash there: rows 2 and 4 to 5 are doubtful, none is shifted.
    const auto backslash = contentOf(*folder + "/semicolon_decimal_comma.csv");
    CHECK(backslash.flaws == std::vector<std::string>{"", "text-after-quote", "", "text-after-quote", "text-after-quote"});
    CHECK(backslash.lines == std::vector<std::int64_t>{2, 3, 4, 6, 7});
    CHECK(readNumber(backslash.at(0, "Price"), backslash.dialect.decimal) == 3000.0);
    CHECK(backslash.at(2, "Description") == "MUST SELL!\nair; moon roof; loaded");
}

TEST_CASE("A header that is not the first line is found", "[csv][files]")
{
    const auto folder = path("files/csv");
    if (!folder)
        return;
    const auto content = contentOf(*folder + "/two_blank_lines_and_title.csv");
    CHECK(content.dialect.headerLine > 3);
    CHECK(content.dialect.linesBefore == content.dialect.headerLine - 1);
    CHECK(content.dialect.textBefore.front().starts_with("An der vertragsärztlichen Versorgung"));
    CHECK(content.headers.at(1) == "1985");
    CHECK(contentOf(*folder + "/cr_only_with_preamble.csv").headers.at(3) == "Description");
}

TEST_CASE("Date columns of the public suites are read", "[csv][files][dates]")
{
    const auto folder = path("files/csv");
    if (!folder)
        return;
    const auto words = contentOf(*folder + "/bom_day_mon_yy.csv");
    CHECK(words.headers == std::vector<std::string>{"Date", "Open", "High", "Low", "Close", "Volume"});
    CHECK(readDate(words.rows[0][0], {})->date == CivilDate::make(2014, 3, 14));
    for (const auto& row : words.rows)
        CHECK(readDate(row[0], {}));
    const auto zones = contentOf(*folder + "/timestamps_mixed_zone.csv");
    std::vector<std::optional<int>> offsets;
    for (const auto& row : zones.rows) {
        offsets.push_back(readDate(row[0], {})->offsetMinutes);
        CHECK(readTime(row[1])->offsetMinutes == offsets.back());
    }
    CHECK(offsets == std::vector<std::optional<int>>{{}, 0, 180, -180});
}

TEST_CASE("The case files of tables are read as they should be", "[csv][cases]")
{
    if (!path("cases"))
        return;
    const auto read = [](const std::string& below) { return contentOf(*test::sharedPath("reference/cases/" + below)); };
    SECTION("C01: one order for the whole column")
    {
        const auto file = read("C01/visits_day_first.csv");
        DateEvidence evidence;
        for (std::size_t i = 0; i < file.rows.size(); ++i)
            evidence.add(file.at(i, "date"), static_cast<std::int64_t>(i + 1));
        const auto decision = evidence.decide();
        CHECK(decision.dayProof == DateEvidence::Sample{4, "23/05/2023"});
        std::vector<std::string> dates;
        for (std::size_t i = 0; i < file.rows.size(); ++i)
            dates.push_back(readDate(file.at(i, "date"), decision.order)->date.text());
        CHECK(dates == std::vector<std::string>{"2023-05-04", "2023-06-05", "2023-05-11", "2023-05-23"});
    }
    SECTION("C02: day counts of a spreadsheet among dates")
    {
        const auto file = read("C02/serial_and_text.csv");
        CHECK(readDate(file.at(0, "date"), {})->date.text() == "2023-05-26");
        CHECK(readDate(file.at(0, "date"), {})->dayCount);
        CHECK_FALSE(readDate(file.at(1, "date"), {})->dayCount);
        CHECK(readDate(file.at(2, "date"), {})->time->text() == "14:30");
        CHECK(readDate(file.at(3, "date"), {}).error() == DateFault::neverWas);
    }
    SECTION("C03: codes that cannot be repaired")
    {
        const auto file = read("C03/codes_after_spreadsheet.csv");
        for (std::size_t i = 0; i < file.rows.size(); ++i) {
            CHECK(spreadsheetMangling(file.at(i, "sample")) == Mangling::exponent);
            CHECK(spreadsheetMangling(file.at(i, "tree")) == Mangling::none);
            CHECK(spreadsheetMangling(file.at(i, "grid")) == Mangling::none);
        }
    }
    SECTION("C04: a local time is left to the zone")
    {
        const auto file = read("C04/spring_gap.csv");
        const auto gap = readDate(file.at(1, "local_time"), {});
        CHECK(gap->date.text() == "2024-03-31");
        CHECK(gap->time->text() == "02:30");
        CHECK_FALSE(gap->offsetMinutes);
    }
    SECTION("C07: coordinates that can only be the other way round")
    {
        const auto file = read("C07/swapped_impossible.csv");
        for (std::size_t i = 0; i < 2; ++i)
            CHECK(checkDegrees(readNumber(file.at(i, "lat"), '.').value(), readNumber(file.at(i, "lon"), '.').value())
                  == DegreesCheck::swapped);
    }
    SECTION("C08: semicolons and decimal commas")
    {
        const auto file = read("C08/semicolon_decimal_comma.csv");
        CHECK(file.dialect.delimiter == ';');
        CHECK(file.dialect.decimal == ',');
        REQUIRE(file.rows.size() == 2);
        CHECK(file.headers.size() == 6);
        CHECK(readNumber(file.at(0, "lat"), ',').value() == Approx(44.2011).margin(1e-12));
        CHECK(readNumber(file.at(0, "lon"), ',').value() == Approx(10.4322).margin(1e-12));
        CHECK(readNumber(file.at(0, "height_m"), ',') == 12.5);
        CHECK(file.at(0, "note") == "north side; two galls");
        CHECK(file.at(1, "note").empty());
        DateEvidence evidence;
        evidence.add(file.at(0, "date"), 1);
        evidence.add(file.at(1, "date"), 2);
        CHECK(readDate(file.at(0, "date"), evidence.decide().order)->date.text() == "2024-05-02");
    }
    SECTION("C09: a mark before a quoted header, and old accents")
    {
        CHECK(read("C09/bom_quoted_header.csv").headers == std::vector<std::string>{"date", "tree", "note"});
        const auto accents = read("C09/latin1_accents.csv");
        CHECK(accents.dialect.encoding.name == "Windows-1252");
        CHECK(accents.dialect.encodingSure == Sureness::guessed);
        CHECK(accents.at(0, "note") == "châtaignier près du gué à Valdoré");
    }
    SECTION("C20: the same day saved again by a spreadsheet")
    {
        const auto first = read("C20/day.csv");
        const auto again = read("C20/day_saved_again_by_a_spreadsheet.csv");
        REQUIRE(first.rows.size() == again.rows.size());
        DateEvidence evidence;
        for (std::size_t i = 0; i < 2; ++i)
            evidence.add(again.at(i, "date"), static_cast<std::int64_t>(i + 1));
        CHECK(evidence.decide().verdict == DateEvidence::Verdict::ask);   // 02/05/2024 twice: nobody can know
        for (std::size_t i = 0; i < 2; ++i) {
            CHECK(readDate(again.at(i, "date"), DateOrder::dayFirst)->date == readDate(first.at(i, "date"), {})->date);
            for (const char* column : {"lat", "lon", "galls"})
                CHECK(readNumber(again.at(i, column), again.dialect.decimal)
                      == readNumber(first.at(i, column), first.dialect.decimal));
        }
    }
    SECTION("C21: what is typed under each locale")
    {
        const auto file = read("C21/typed_and_pasted.csv");
        REQUIRE(file.rows.size() == 7);
        for (std::size_t i = 0; i < 7; ++i) {
            const auto locale = file.at(i, "locale");
            CAPTURE(locale, file.at(i, "typed"));
            const auto typed = readNumber(file.at(i, "typed"), locale == "it_IT" || locale == "de_DE" ? ',' : '.');
            if (file.at(i, "expected").starts_with("ask"))
                CHECK(typed.error() == NumberFault::ambiguous);
            else
                CHECK(typed == readNumber(file.at(i, "expected"), '.'));
        }
    }
    SECTION("C22: notes that look like formulas are kept letter for letter")
    {
        const auto file = read("C22/notes.csv");
        std::vector<std::string> notes;
        for (std::size_t i = 0; i < file.rows.size(); ++i)
            notes.push_back(file.at(i, "note"));
        CHECK(notes == std::vector<std::string>{"=1+1", "+39 000 0000", "@home", "-two galls",
                                                "=HYPERLINK(\"http://example.org\",\"x\")"});
    }
}

TEST_CASE("Every table beside the project is read or refused by name, and comes to an end", "[csv][files]")
{
    std::vector<std::string> files = test::sharedFiles("reference/files");
    for (const auto& file : test::sharedFiles("reference/cases"))
        files.push_back(file);
    if (files.empty()) {
        test::skipped("reference is not beside the project");
        return;
    }
    std::size_t rows = 0;
    for (const auto& file : files) {
        CAPTURE(file);
        const auto dialect = detectDialect(file);
        if (!dialect) {
            CHECK(dialect.error().code.starts_with("csv."));
            continue;
        }
        auto reader = CsvReader::open(file, *dialect);
        if (!reader) {
            CHECK((reader.error().code == "csv.no-header" || reader.error().code == "csv.broken-header"));
            continue;
        }
        CsvRow row;
        while (reader->next(row).value())
            ++rows;
    }
    CHECK(rows > 8000);
}
