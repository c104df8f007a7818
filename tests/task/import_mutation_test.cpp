// Seeded damage to tables, GPX files and mappings: the import answers with a report or a named fault, keeps the books
// balanced and the journal whole. Meant for the sanitizer build.

#include "core/base/random.h"
#include "tests/support/catch.h"
#include "tests/task/import_fixture.h"

using namespace cupule;

namespace {

const std::string table = "tree,grid_ref,date,observer,K01,S02,gall_count,gall_size_mm,symptoms,notes\n"
                          "T-1,SO 612 094,2026-06-11 09:14,AF,alternate,seen,3,12.5,gall on midrib;curl,\"by, the \"\"gate\"\"\"\n"
                          "T-2,51.7803 -2.5625,11/06/2026,MH,opposite,not seen,,,,\"two\nlines\"\n"
                          "T-3,30UWC3018136693,11-Jun-26,MH,?,0,0,,,ch\xC3\xA2taignier\n";
const std::string track = "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\"><wpt lat=\"51.78\" lon=\"-2.56\"><name>T-1</name>"
                          "<time>2026-06-11T09:14:00Z</time></wpt><rte><rtept lat=\"51\" lon=\"-2\"/></rte></gpx>\n";
const std::string mapping = "{\"columns\": {\"notes\": \"note\", \"K01\": \"leaf arrangement\"}, \"date-order\": \"dmy\"}";

std::string damaged(Random& random, std::string bytes)
{
    const std::vector<std::string> words{"\"", ",", ";", "\n", "\r", std::string(1, '\0'), "\xFF", "\xEF\xBB\xBF", "9999999999",
                                         "-", "1e400", "NaN", "SO", "2026-02-30", "<", "&x;", "{", "]"};
    for (std::uint64_t changes = 1 + random.below(5); changes > 0 && !bytes.empty(); --changes) {
        const auto at = static_cast<std::size_t>(random.below(bytes.size()));
        switch (random.below(4)) {
        case 0: bytes[at] = static_cast<char>(random.below(256)); break;
        case 1: bytes.insert(at, words[random.below(words.size())]); break;
        case 2: bytes.erase(at, 1 + random.below(20)); break;
        default: bytes.insert(at, bytes.substr(random.below(bytes.size()), 1 + random.below(60))); break;
        }
    }
    return bytes;
}

} // namespace

TEST_CASE("damaged input is read or named, and never leaves the store in pieces", "[import][mutation]")
{
    SeededRandom random(20260630);
    test::ImportBench bench;
    std::int64_t kept = 0;
    for (int turn = 0; turn < 600; ++turn) {
        CAPTURE(turn);
        ImportOptions options;
        options.takeGoodPoints = turn % 2 == 0;
        options.takeRoutePoints = turn % 3 == 0;
        options.dateOrder = turn % 4 == 0 ? "dmy" : "";
        options.dryRun = turn % 5 == 0;
        if (turn % 7 == 0)
            options.columnsFile = bench.file("columns.json", damaged(random, mapping));
        const std::string path = turn % 3 == 2 ? bench.file("walk.gpx", damaged(random, track))
                                               : bench.file("day.csv", damaged(random, table));
        const auto report = importFiles(bench.session(), {path}, options);
        if (!report) {
            CHECK_FALSE(report.error().code.empty());
            continue;
        }
        CHECK(report->rows == report->kept + report->knownAlready + report->setAside);
        kept += options.dryRun ? 0 : report->kept;
    }
    CHECK(kept > 20);
    CHECK(bench.journalLines() >= kept);
}
