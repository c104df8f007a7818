// Every table, GPX file and photo of reference/files and reference/cases is fed to the import, each to a store of its own,
// and gives what stands here: rows with what became of them, a question, or a named fault. A file without an expectation
// fails the test, so none is forgotten when one is added. The expectations follow the columns "Expected reading" and
// "Right behaviour" of the READMEs there; what a file holds in detail is tested beside its reader (tests/exchange).

#include <algorithm>
#include <filesystem>
#include <map>

#include <nlohmann/json.hpp>

#include "core/exchange/csv/table.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

namespace fs = std::filesystem;

/// Where a path begins so, the file is not for this import; why.
const std::map<std::string, std::string> notForImport = {
    {"cases/C10/", "files of another program's store: tests/store/opening_test.cpp"},
    {"cases/C11/", "a file of another program's store: tests/store/opening_test.cpp"},
    {"cases/C12/", "a bundle"},
    {"cases/C13/", "a bundle"},
    {"cases/C14/", "a bundle"},
    {"cases/C18/", "Darwin Core and GeoPackage"},
    {"cases/C19/", "an example of records of two devices: bundles"},
    {"cases/README.md", "about the files"},
    {"cases/SHA256SUMS", "about the files"},
    {"files/README.md", "about the files"},
    {"files/SHA256SUMS", "about the files"},
    {"files/dwca/", "Darwin Core"},
    {"files/geo/", "GeoPackage and GeoJSON"},
};

/// "asks KIND", "fault CODE", or "ROWS: KEPT kept, KNOWN known, ASIDE aside", then "; KIND COUNT" of each problem, in brackets
/// where what it is about was kept. Most tables of the suites name no tree: after "tree-column" stands what becomes of them
/// when the first named column is said to be the tree, so that every row goes all the way.
const std::map<std::string, std::string>& expectations()
{
    static const std::map<std::string, std::string> table = {
        {"cases/C01/visits_day_first.csv", "4: 4 kept, 0 known, 0 aside"},
        {"cases/C02/serial_and_text.csv", "4: 3 kept, 0 known, 1 aside; impossible_date 1"},
        {"cases/C03/codes_after_spreadsheet.csv", "4: 0 kept, 0 known, 4 aside; spreadsheet-mangled 4"},
        {"cases/C04/spring_gap.csv", "3: 2 kept, 0 known, 1 aside; local-time 1"},
        {"cases/C05/gps_time_gives_zone.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"cases/C05/no_zone.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"cases/C06/no_hemisphere_letters.jpg", "1: 1 kept, 0 known, 0 aside; (no-hemisphere) 1"},
        {"cases/C06/south_west.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"cases/C06/zero_zero.jpg", "1: 1 kept, 0 known, 0 aside; (null-island) 1"},
        {"cases/C07/swapped_impossible.csv", "2: 0 kept, 0 known, 2 aside; swapped-coordinates 2"},
        {"cases/C08/semicolon_decimal_comma.csv", "2: 2 kept, 0 known, 0 aside"},
        {"cases/C09/bom_quoted_header.csv", "1: 1 kept, 0 known, 0 aside"},
        {"cases/C09/latin1_accents.csv", "1: 1 kept, 0 known, 0 aside"},
        {"cases/C15/original.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"cases/C15/other_tree_same_minute.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"cases/C15/sent_by_messenger.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"cases/C16/html_entity.gpx", "asks damaged-gpx"},
        {"cases/C16/time_without_zone.gpx", "3: 3 kept, 0 known, 0 aside; (local-time) 1"},
        {"cases/C17/across_180.csv", "2: 2 kept, 0 known, 0 aside"},
        {"cases/C17/which_is_north.csv", "4: 1 kept, 3 known, 0 aside"},
        {"cases/C20/day.csv", "2: 2 kept, 0 known, 0 aside"},
        {"cases/C20/day_saved_again_by_a_spreadsheet.csv", "asks date-order"},
        {"cases/C21/typed_and_pasted.csv", "asks tree-column, then 7: 4 kept, 3 known, 0 aside"},
        {"cases/C22/notes.csv", "5: 5 kept, 0 known, 0 aside"},
        {"files/csv/blank_header.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/bom_13_bytes.csv", "asks tree-column, then 0: 0 kept, 0 known, 0 aside"},
        // 14-Mar-14 is a date, and no label: that is what a spreadsheet makes of one.
        {"files/csv/bom_day_mon_yy.csv",
         "asks tree-column, then 251: 0 kept, 0 known, 251 aside; spreadsheet-mangled 251"},
        {"files/csv/control_characters.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/cr_only_with_cr_in_quotes.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/cr_only_with_preamble.csv",
         "asks tree-column, then 14: 3 kept, 3 known, 8 aside; missing-label 2; text-after-quote 5; wrong-field-count 1"},
        {"files/csv/duplicate_headers.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/iso8859_7_greek.csv", "asks tree-column, then 4: 4 kept, 0 known, 0 aside"},
        {"files/csv/latin1_semicolon_crlf.csv", "asks tree-column, then asks date-order"},
        {"files/csv/latin1_small.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/latin1_spanish.csv", "asks tree-column, then 115: 4 kept, 0 known, 111 aside; missing-label 111"},
        {"files/csv/leading_zeros.csv", "asks tree-column, then 3: 3 kept, 0 known, 0 aside"},
        {"files/csv/semicolon_decimal_comma.csv",
         "asks tree-column, then 5: 2 kept, 0 known, 3 aside; text-after-quote 3"},
        {"files/csv/short_row.csv", "asks tree-column, then 3: 2 kept, 0 known, 1 aside; wrong-field-count 1"},
        {"files/csv/spectrum_comma_in_quotes.csv", "asks tree-column, then 1: 1 kept, 0 known, 0 aside"},
        {"files/csv/spectrum_escaped_quotes.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/spectrum_json.csv", "asks tree-column, then 1: 1 kept, 0 known, 0 aside"},
        {"files/csv/spectrum_newlines.csv", "asks tree-column, then 3: 3 kept, 0 known, 0 aside"},
        {"files/csv/spectrum_quotes_and_newlines.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/spectrum_utf8.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/tab_with_comments.tsv", "asks tree-column, then 5: 3 kept, 1 known, 1 aside; missing-label 1"},
        {"files/csv/timestamps_mixed_zone.csv", "asks tree-column, then 4: 4 kept, 0 known, 0 aside"},
        {"files/csv/two_blank_lines_and_title.csv",
         "asks tree-column, then 76: 1 kept, 49 known, 26 aside; missing-label 10; wrong-field-count 16"},
        {"files/csv/utf16be_bom.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/utf16le_bom.csv", "asks tree-column, then 2: 2 kept, 0 known, 0 aside"},
        {"files/csv/utf16le_real.csv", "asks tree-column, then 327: 327 kept, 0 known, 0 aside"},
        {"files/gpx/bom.gpx", "1: 1 kept, 0 known, 0 aside"},
        {"files/gpx/coordinates_undefined.gpx", "2: 0 kept, 0 known, 2 aside; unreadable-position 5"},
        {"files/gpx/dates_1234_and_4096.gpx", "2: 2 kept, 0 known, 0 aside; (absurd-date) 2"},
        {"files/gpx/empty_elevation.gpx", "0: 0 kept, 0 known, 0 aside"},
        {"files/gpx/empty_track.gpx", "0: 0 kept, 0 known, 0 aside"},
        {"files/gpx/gpx10_all_fields.gpx", "2: 1 kept, 0 known, 1 aside; (local-time) 1; missing-label 1"},
        {"files/gpx/gpx11_all_fields.gpx", "2: 1 kept, 0 known, 1 aside; (local-time) 1; missing-label 1"},
        {"files/gpx/handheld_desktop_bom_extensions.gpx", "2: 2 kept, 0 known, 0 aside"},
        // Two of the 86 have one name and lie 39 m apart: one tree.
        {"files/gpx/latin1_declared.gpx", "86: 85 kept, 1 known, 0 aside"},
        {"files/gpx/non_ascii_name.gpx", "1: 1 kept, 0 known, 0 aside"},
        {"files/gpx/route_only.gpx", "asks route-points"},
        {"files/gpx/subsecond_times.gpx", "0: 0 kept, 0 known, 0 aside"},
        {"files/gpx/track_without_times.gpx", "7: 7 kept, 0 known, 0 aside"},
        {"files/gpx/trig_points.gpx", "2: 2 kept, 0 known, 0 aside"},
        {"files/occurrences/belgium_first_last_year.csv", "asks tree-column, then 8: 8 kept, 0 known, 0 aside"},
        {"files/occurrences/city_trees_castanea_quercus.csv", "567: 567 kept, 0 known, 0 aside"},
        {"files/occurrences/defoliation_20km_1975_2002.csv", "asks tree-column, then 5688: 40 kept, 5648 known, 0 aside"},
        {"files/occurrences/tuscany_castanea_sativa.csv",
         "asks tree-column, then 65: 59 kept, 6 known, 0 aside; (same-label-elsewhere) 58"},
        {"files/occurrences/tuscany_fagaceae.csv",
         "asks tree-column, then 1505: 1129 kept, 376 known, 0 aside; (same-label-elsewhere) 1116"},
        {"files/photos/corrupt_huge_tag.jpg",
         "1: 1 kept, 0 known, 0 aside; (damaged-metadata) 1; (missing-date) 1; (unreadable-time) 1"},
        {"files/photos/corrupt_ifd_loop.jpg", "1: 1 kept, 0 known, 0 aside; (damaged-metadata) 1; (missing-date) 1"},
        {"files/photos/fuzzed_gps.jpg", "1: 1 kept, 0 known, 0 aside; (damaged-metadata) 1; (unreadable-time) 1"},
        {"files/photos/gps_but_no_zone_no_gpstime.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/gps_degrees_stored_as_text.jpg",
         "1: 1 kept, 0 known, 0 aside; (unreadable-position) 1; (unreadable-time) 1"},
        {"files/photos/gps_ifd_empty.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/gps_no_refs_empty.jpg", "1: 1 kept, 0 known, 0 aside; (damaged-metadata) 1"},
        {"files/photos/gps_nonsense_values.jpg",
         "1: 1 kept, 0 known, 0 aside; (future_date) 1; (unreadable-date) 1; (unreadable-position) 1"},
        {"files/photos/gps_refs_but_empty_exif_value_in_xmp.jpg", "1: 1 kept, 0 known, 0 aside; (position-from-xmp) 1"},
        {"files/photos/gps_zero_zero.jpg", "1: 1 kept, 0 known, 0 aside; (null-island) 1"},
        {"files/photos/heif_no_gps.heif", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/huge_thumbnail.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/invalid_exif_small.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/many_conflicting_dates.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/ne_camera_day_behind_gps.jpg", "1: 1 kept, 0 known, 0 aside; (camera-clock) 1"},
        {"files/photos/ne_png_xmp_only.png", "1: 1 kept, 0 known, 0 aside; (no-hemisphere) 1"},
        {"files/photos/no_exif.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/nw_heic.heic", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/nw_phone_1h_offset.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/offset_half_hour_0630.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/offset_minus07.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/offset_plus02_with_gps.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/orientation_1.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_2.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_3.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_4.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_5.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_6.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_6_portrait.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_7.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/orientation_8.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
        {"files/photos/se_near_equator.jpg", "1: 1 kept, 0 known, 0 aside"},
        {"files/photos/se_no_time.jpg", "1: 1 kept, 0 known, 0 aside; (missing-date) 1"},
    };
    return table;
}

std::string firstColumnIsTheTree(const std::string& path)
{
    const auto dialect = detectDialect(path);
    REQUIRE(dialect);
    const auto reader = CsvReader::open(path, *dialect);
    REQUIRE(reader);
    const auto named = std::find_if(reader->headers().begin(), reader->headers().end(),
                                    [](const std::string& heading) { return !heading.empty(); });
    REQUIRE(named != reader->headers().end());
    return nlohmann::json{{"columns", {{*named, "tree"}}}}.dump();
}

std::string outcome(ImportBench& bench, const std::string& path, const ImportOptions& options = {})
{
    const auto report = importFiles(bench.session(), {path}, options);
    if (!report) {
        CHECK(report.error().place.file == path);
        return "fault " + report.error().code;
    }
    REQUIRE(report->files.size() == 1);
    CHECK(report->rows == report->kept + report->knownAlready + report->setAside);
    if (!report->questions.empty()) {
        CHECK(report->kept == 0);
        std::string asked;
        for (const auto& question : report->questions)
            asked += (asked.empty() ? "asks " : ", ") + question.kind;
        if (asked != "asks tree-column" || !options.columnsFile.empty())
            return asked;
        ImportOptions told;
        told.columnsFile = bench.file("columns.json", firstColumnIsTheTree(path));
        return asked + ", then " + outcome(bench, path, told);
    }
    std::string out = std::to_string(report->rows) + ": " + std::to_string(report->kept) + " kept, "
                      + std::to_string(report->knownAlready) + " known, " + std::to_string(report->setAside) + " aside";
    std::map<std::string, int> problems;
    for (const auto& problem : report->problems)
        ++problems[problem.kept ? "(" + problem.kind + ")" : problem.kind];
    for (const auto& [kind, count] : problems)
        out += "; " + kind + " " + std::to_string(count);
    return out;
}

bool isForImport(const std::string& below)
{
    return std::none_of(notForImport.begin(), notForImport.end(),
                        [&](const auto& entry) { return below.starts_with(entry.first); });
}

} // namespace

TEST_CASE("every file beside the project gives its stated reading, a question or a named fault", "[import][files][cases]")
{
    const auto root = test::sharedPath("reference");
    if (!root)
        return test::skipped("reference is not here");
    std::map<std::string, std::string> given;
    for (const char* folder : {"files", "cases"})
        for (const auto& entry : fs::recursive_directory_iterator(fs::path(*root) / folder)) {
            const std::string below = fs::relative(entry.path(), *root).string();
            if (!entry.is_regular_file() || !isForImport(below))
                continue;
            CAPTURE(below);
            ImportBench bench;
            given[below] = outcome(bench, entry.path().string());
            CHECK(bench.journalLines() > 0);   // and the journal proves whole
        }
    for (const auto& [below, said] : given) {
        const auto expected = expectations().find(below);
        CAPTURE(below);
        CHECK(said == (expected == expectations().end() ? "no expectation" : expected->second));
    }
    for (const auto& [below, expected] : expectations()) {
        CAPTURE(below);
        CHECK(given.contains(below));
    }
}
