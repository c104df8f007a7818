// Seeded damage: the readers get thousands of changed files and must answer with a reading or a named fault, within
// bounds, whatever the bytes. Meant for the sanitizer build; exiv2 itself is not instrumented there.

#include <chrono>

#include "core/base/file.h"
#include "core/base/random.h"
#include "core/exchange/csv/dates.h"
#include "core/exchange/csv/numbers.h"
#include "core/exchange/csv/table.h"
#include "core/exchange/gpx/reader.h"
#include "core/exchange/photo/reader.h"
#include "tests/exchange/outside.h"
#include "tests/exchange/photo_maker.h"
#include "tests/support/catch.h"

using namespace cupule;
using Steady = std::chrono::steady_clock;

namespace {

constexpr double slowest = 5;   // seconds for one small file, with room for sanitizers and a busy machine

std::string mutated(Random& random, std::string bytes, const std::vector<std::string>& words)
{
    for (std::uint64_t changes = 1 + random.below(6); changes > 0 && !bytes.empty(); --changes) {
        const auto at = static_cast<std::size_t>(random.below(bytes.size()));
        switch (random.below(6)) {
        case 0:
            bytes[at] = static_cast<char>(random.below(256));
            break;
        case 1:
            bytes[at] = static_cast<char>(bytes[at] ^ (1 << random.below(8)));
            break;
        case 2:
            bytes.erase(at, 1 + random.below(40));
            break;
        case 3:
            bytes.insert(at, words[random.below(words.size())]);
            break;
        case 4:
            bytes.insert(at, bytes.substr(random.below(bytes.size()), 1 + random.below(60)));
            break;
        default:
            if (random.below(8) == 0)
                bytes.resize(at);
            else
                bytes.replace(at, 4, std::string(4, random.below(2) == 0 ? '\xFF' : '\0'));
        }
    }
    return bytes;
}

std::vector<std::string> contents(const std::string& below, std::size_t largest)
{
    std::vector<std::string> out;
    for (const auto& path : test::sharedFiles(below))
        if (auto bytes = readFile(path); bytes && bytes->size() <= largest)
            out.push_back(std::move(*bytes));
    return out;
}

void readTable(const std::string& text, Random& random)
{
    CsvDialect dialect;
    dialect.delimiter = ",;\t|"[random.below(4)];
    dialect.hashComments = random.below(2) == 0;
    dialect.headerLine = static_cast<std::int64_t>(random.below(3));
    const char* encodings[] = {"utf-8", "utf-16le", "utf-16be", "windows-1252", "iso-8859-7", "shift_jis"};
    dialect.encoding = encodingNamed(encodings[random.below(6)]).value();
    auto reader = CsvReader::overText(text, dialect, {1 + random.below(100), 1 + random.below(2000), 1 + random.below(30)});
    if (!reader) {
        REQUIRE((reader.error().code == "csv.no-header" || reader.error().code == "csv.broken-header"));
        return;
    }
    CsvRow row;
    std::int64_t line = 0;
    std::size_t rows = 0;
    DateEvidence evidence;
    while (reader->next(row).value()) {
        REQUIRE(++rows <= 4 * text.size() + 4);
        REQUIRE(row.line > line);
        line = row.line;
        REQUIRE(row.fields.size() == reader->headers().size());
        for (const auto field : row.fields) {
            evidence.add(field, row.row);
            static_cast<void>(readDate(field, DateOrder::dayFirst));
            static_cast<void>(readTime(field));
            static_cast<void>(readNumber(field, ','));
            static_cast<void>(readNumber(field, '.'));
            static_cast<void>(spreadsheetMangling(field));
        }
        if (!row.flaw.empty())
            REQUIRE(flawProblem(row, row.fields.size()).value.size() <= 200);
    }
    static_cast<void>(evidence.decide());
}

} // namespace

TEST_CASE("Damaged tables are read to their end", "[csv][mutated]")
{
    auto seeds = contents("reference/files/csv", 40'000);
    for (auto& one : contents("reference/cases", 4'000))
        seeds.push_back(std::move(one));
    seeds.push_back("date,tree,note\n2024-05-02,T-1,\"a \"\"note\"\"\"\r\n03/04/2024,T-2,\"two\nlines\"\r45072.5,T-3,1.234,5\n");
    const std::vector<std::string> words = {"\"", "\"\"", ",", ";", "\t", "\n", "\r\n", "\r", std::string(1, '\0'), "\xEF\xBB\xBF",
                                            "\xFF\xFE", "2024-02-30", "1e99999", "\xC3", "#", "sep=;\n", std::string(70, '"')};
    SeededRandom random(20260701);
    const auto begun = Steady::now();
    int files = 0;
    while (files < 20'000 && Steady::now() - begun < std::chrono::seconds(7)) {
        const auto text = mutated(random, seeds[random.below(seeds.size())], words);
        const auto started = Steady::now();
        readTable(text, random);
        if (files % 50 == 0) {
            const auto dialect = detectDialect(test::writtenFile("mutated.csv", text));
            if (!dialect)
                REQUIRE(dialect.error().code.starts_with("csv."));
        }
        REQUIRE(std::chrono::duration<double>(Steady::now() - started).count() < slowest);
        ++files;
    }
    CHECK(files > 100);
}

TEST_CASE("Damaged GPX gives points or a named fault", "[gpx][mutated]")
{
    auto seeds = contents("reference/files/gpx", 6'000);
    for (auto& one : contents("reference/cases/C16", 4'000))
        seeds.push_back(std::move(one));
    seeds.push_back("<gpx><wpt lat='1' lon='2'><name>A &amp; B</name><time>2024-05-02T10:15:00Z</time></wpt><trk><trkseg>"
                    "<trkpt lat='3' lon='4'><ele>5</ele></trkpt></trkseg></trk></gpx>");
    const std::vector<std::string> words = {"<wpt lat='1' lon='2'>", "</wpt>", "&x;", "&#0;", "<!--", "-->", "<![CDATA[", "]]>",
                                            "<!DOCTYPE a [", "<?", "'", "\"", ">", "<", "/>", "nan", "1e999", std::string(1, '\0')};
    SeededRandom random(20260702);
    const auto begun = Steady::now();
    int files = 0;
    int read = 0;
    while (files < 20'000 && Steady::now() - begun < std::chrono::seconds(6)) {
        GpxOptions options;
        options.goodPointsOnly = random.below(2) == 0;
        const auto started = Steady::now();
        const auto file = readGpxText(mutated(random, seeds[random.below(seeds.size())], words), "mutated.gpx", options);
        REQUIRE(std::chrono::duration<double>(Steady::now() - started).count() < slowest);
        ++files;
        if (!file) {
            REQUIRE(file.error().code.starts_with("gpx."));
            continue;
        }
        ++read;
        for (const auto& point : file->points)
            REQUIRE(checkDegrees(point.latitude, point.longitude) == DegreesCheck::fine);
    }
    CHECK(files > 100);
    CHECK(read > 0);
}

TEST_CASE("Damaged photos give facts or a named fault", "[photo][mutated]")
{
    auto seeds = contents("reference/files/photos", 6'000);
    for (auto& one : contents("reference/cases/C06", 20'000))
        seeds.push_back(std::move(one));
    seeds.push_back(readFile(test::madePhoto({{"Exif.Photo.DateTimeOriginal", "2024:06:15 18:05:00"},
                                              {"Exif.GPSInfo.GPSLatitude", "33/1 27/1 36/10"},
                                              {"Exif.GPSInfo.GPSLatitudeRef", "S"},
                                              {"Exif.GPSInfo.GPSLongitude", "70/1 39/1 72/10"},
                                              {"Exif.GPSInfo.GPSLongitudeRef", "W"},
                                              {"Xmp.exif.GPSLatitude", "48,53,19.4S"}}))
                        .value());
    const std::vector<std::string> words = {"\xFF\xD8", "\xFF\xE1\xFF\xFF", "Exif", std::string(8, '\0'), std::string(8, '\xFF'),
                                            "II*", "MM", "<x:xmpmeta>"};
    SeededRandom random(20260703);
    const auto begun = Steady::now();
    int files = 0;
    while (files < 8'000 && Steady::now() - begun < std::chrono::seconds(7)) {
        const auto path = test::writtenFile("mutated.jpg", mutated(random, seeds[random.below(seeds.size())], words));
        const auto started = Steady::now();
        const auto facts = readPhoto(path);
        REQUIRE(std::chrono::duration<double>(Steady::now() - started).count() < slowest);
        ++files;
        if (!facts) {
            REQUIRE(facts.error().code == "photo.not-a-picture");
            continue;
        }
        REQUIRE(facts->orientation >= 1);
        REQUIRE(facts->orientation <= 8);
        const auto& position = facts->position;
        if (position.status == PhotoPositionStatus::read || position.status == PhotoPositionStatus::readFromXmp)
            REQUIRE(checkDegrees(position.latitude, position.longitude) == DegreesCheck::fine);
    }
    CHECK(files > 100);
}
