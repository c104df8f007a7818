#include "core/exchange/csv/table.h"

#include <sys/resource.h>

#include "tests/exchange/outside.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

struct Kept {
    std::int64_t row;
    std::int64_t line;
    std::vector<std::string> fields;
    std::string flaw;
    std::int64_t flawLine;
    bool blank;
    std::size_t fieldsInFile;
};

std::vector<Kept> rowsOf(CsvReader& reader)
{
    std::vector<Kept> rows;
    CsvRow row;
    while (reader.next(row).value())
        rows.push_back({row.row, row.line, {row.fields.begin(), row.fields.end()}, std::string(row.flaw), row.flawLine,
                        row.blank, row.fieldsInFile});
    return rows;
}

std::vector<Kept> rowsOf(std::string_view text, const CsvDialect& dialect = {})
{
    auto reader = CsvReader::overText(text, dialect);
    REQUIRE(reader);
    return rowsOf(*reader);
}

} // namespace

TEST_CASE("Rows are counted after the header and lines as they stand", "[csv][table]")
{
    const auto rows = rowsOf("tree,note\nT-1,\"two\nlines\"\n\nT-2,x\n   \nT-3,y");
    REQUIRE(rows.size() == 3);
    CHECK(rows[0].line == 2);
    CHECK(rows[1].row == 2);
    CHECK(rows[1].line == 5);
    CHECK(rows[2].row == 3);
    CHECK(rows[2].line == 7);
}

TEST_CASE("Header names lose their outer blanks and nothing else", "[csv][table]")
{
    const auto reader = CsvReader::overText(" Tree label , ,id,\"id\"\nx,y,z,w\n", {});
    REQUIRE(reader);
    CHECK(reader->headers() == std::vector<std::string>{"Tree label", "", "id", "id"});
    CHECK(reader->headerText() == " Tree label , ,id,\"id\"");
}

TEST_CASE("A row with too few or too many fields is given and named, never shifted", "[csv][table]")
{
    const auto rows = rowsOf("a,b,c\n1,2\n1,2,3,4\n1,2,3,,\n,,\n1,2,3\n");
    REQUIRE(rows.size() == 5);
    CHECK(rows[0].flaw == kind::wrongFieldCount);
    CHECK(rows[0].fields == std::vector<std::string>{"1", "2", ""});
    CHECK(rows[0].fieldsInFile == 2);
    CHECK(rows[1].flaw == kind::wrongFieldCount);
    CHECK(rows[1].fieldsInFile == 4);
    CHECK(rows[2].flaw.empty());   // empty cells a spreadsheet adds
    CHECK(rows[3].blank);
    CHECK(rows[3].flaw.empty());
    CHECK(rows[4].flaw.empty());
    CHECK_FALSE(rows[4].blank);
}

TEST_CASE("A stray quote costs its own line and no other", "[csv][table]")
{
    const auto rows = rowsOf("tree,note,galls\nT-1,\"stray,1\nT-2,\"fine, yes\",2\nT-3,\"also fine\",3\nT-4,\"open,4\nT-5,x,5\n");
    REQUIRE(rows.size() == 5);
    CHECK(rows[0].flaw == kind::unterminatedQuote);
    CHECK(rows[0].flawLine == 2);
    CHECK(rows[1].fields == std::vector<std::string>{"T-2", "fine, yes", "2"});
    CHECK(rows[2].flaw.empty());
    CHECK(rows[3].flaw == kind::unterminatedQuote);
    CHECK(rows[3].flawLine == 5);
    CHECK(rows[4].fields == std::vector<std::string>{"T-5", "x", "5"});
}

TEST_CASE("Every flaw has its name and its problem", "[csv][table]")
{
    using namespace std::string_literals;
    const std::string text = "a,b\n1,\"x\"y\n2,\0\n3,\xE9\n4,\xC3\xA9\n5,\xEF\xBF\xBD\n6\n7,\""s + std::string(100, 'q') + "\"\n";
    auto reader = CsvReader::overText(text, {}, {32, 64, 16});
    REQUIRE(reader);
    std::vector<std::string> found;
    CsvRow row;
    while (reader->next(row).value())
        found.push_back(row.flaw.empty() ? "fine" : flawProblem(row, 2).kind);
    CHECK(found == std::vector<std::string>{"text-after-quote", "nul-byte", "bad-encoding", "fine", "bad-encoding",
                                            "wrong-field-count", "unterminated-quote"});
}

TEST_CASE("Bytes that are no UTF-8 come out as U+FFFD, and the raw text keeps them", "[csv][table]")
{
    auto reader = CsvReader::overText("a,b\n1,caf\xE9\n", {});
    REQUIRE(reader);
    CsvRow row;
    REQUIRE(reader->next(row).value());
    CHECK(row.fields[1] == "caf\xEF\xBF\xBD");
    CHECK(row.raw == "1,caf\xE9");
    const auto problem = flawProblem(row, 2);
    CHECK(problem.row == 1);
    CHECK(problem.line == 2);
    CHECK(problem.value == "1,caf\xEF\xBF\xBD");
}

TEST_CASE("Other encodings are turned into UTF-8 wherever the pieces are cut", "[csv][table]")
{
    // Code tables: Windows-1252 and ISO 8859-7 (Unicode consortium mappings), UTF-16 (RFC 2781).
    CsvDialect dialect;
    dialect.encoding = encodingNamed("windows-1252").value();
    CHECK(rowsOf("a,b\n1,ch\xE2taignier \x80\n", dialect)[0].fields[1] == "châtaignier €");
    dialect.encoding = encodingNamed("iso-8859-7").value();
    CHECK(rowsOf("a,b\n1,\xCB\xE5\n", dialect)[0].fields[1] == "Λε");
    using namespace std::string_literals;
    const std::string text = "\xFF\xFE" "a\0\n\0\x3D\xD8\x00\xDE\xE9\0\n\0"s;
    for (std::size_t piece = 1; piece < 6; ++piece) {
        const auto source = decoded(textSource(text, piece), {TextEncoding::utf16le, "UTF-16LE"});
        std::string out;
        char one[3];
        for (std::size_t got = 0; (got = source->read(one).value()) > 0;)
            out.append(one, got);
        CHECK(out == "a\n\xF0\x9F\x98\x80é\n");
    }
}

TEST_CASE("Comment lines are no rows unless they are as wide as the header", "[csv][table]")
{
    CsvDialect dialect;
    dialect.hashComments = true;
    const auto rows = rowsOf("a,b\n# a remark\n#1,2\n3,4\n", dialect);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].fields[0] == "#1");
    CHECK(rows[1].line == 4);
}

TEST_CASE("A table without header numbers its columns and keeps its first row", "[csv][table]")
{
    CsvDialect dialect;
    dialect.headerLine = 0;
    auto reader = CsvReader::overText("\n1,2\n3,4\n", dialect);
    REQUIRE(reader);
    CHECK(reader->headers() == std::vector<std::string>{"1", "2"});
    const auto rows = rowsOf(*reader);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].fields[0] == "1");
    CHECK(rows[0].line == 2);
}

TEST_CASE("The header may stand further down, below a title with a quote in it", "[csv][table]")
{
    CsvDialect dialect;
    dialect.headerLine = 3;
    const auto rows = rowsOf("The \"old\" trees\n\"open title\na,b\n1,2\n", dialect);
    REQUIRE(rows.size() == 1);
    CHECK(rows[0].line == 4);
    CHECK(CsvReader::overText("a,\"b\n1,2\n", {}).error().code == "csv.broken-header");
    CHECK(CsvReader::overText("a,\"b\n1,\"2\n", {}).error().argument("line") == "1");
    dialect.headerLine = 9;
    CHECK(CsvReader::overText("a,b\n1,2\n", dialect).error().code == "csv.no-header");
}

TEST_CASE("A large table takes no more memory than a small one", "[csv][table]")
{
    // 40 MB of rows against the 64 MiB that bench/BASELINES.md allows the whole import at any size (T3).
    std::string text = "tree,note\n";
    while (text.size() < 4'000'000)
        text += "T-1,\"a note, as long as notes go\"\n";
    const auto path = test::writtenFile("large.csv", text);
    const auto peak = [&] {
        auto reader = CsvReader::open(path, {});
        CsvRow row;
        while (reader->next(row).value())
            continue;
        rusage usage{};
        getrusage(RUSAGE_SELF, &usage);
        return usage.ru_maxrss;
    };
    text.clear();
    text.shrink_to_fit();
    const auto before = peak();
    for (int i = 0; i < 10; ++i)
        peak();
#ifdef __SANITIZE_ADDRESS__
    constexpr long room = 16'384;   // freed blocks are kept aside for a while, to notice their use
#else
    constexpr long room = 2048;
#endif
    CHECK(peak() - before < room);   // KiB
}
