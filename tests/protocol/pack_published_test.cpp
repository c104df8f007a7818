// The pack against the tables it was made from, read in place: every row of the host key that is marked "read" is in
// the pack with its published words, its limits, its mark and its source; every sign has the published months, or the
// finer date that the text of the table gives.

#include <array>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/base/text.h"
#include "core/protocol/pack_reader.h"
#include "tests/support/catch.h"
#include "tests/support/reference_rows.h"

using namespace cupule;

namespace {

using test::Row;

const KindRow* packRow(const Row& row)
{
    for (const Kind& kind : builtInPack().kinds)
        if (kind.name == row.at("taxon"))
            return builtInPack().row(kind.id, row.at("character_id"));
    return nullptr;
}

std::string sourcesOf(const std::vector<Source>& sources)
{
    std::string all;
    for (const Source& source : sources)
        all += (all.empty() ? "" : " | ") + source.text;
    return all;
}

Mark markNamed(const std::string& name)
{
    static const std::map<std::string, Mark> names{{"shared", Mark::shared},
                                                   {"contradicts", Mark::contradicts},
                                                   {"diagnostic_for_genus_castanea", Mark::diagnostic},
                                                   {"diagnostic_if_counted", Mark::diagnosticIfCounted},
                                                   {"points_to_another_castanea", Mark::pointsToOtherHost},
                                                   {"not_for_host", Mark::notForHost}};
    return names.at(name);
}

int monthOf(int day)
{
    static constexpr std::array<int, 12> lengths{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    int month = 0;
    while (day > lengths.at(static_cast<std::size_t>(month)))
        day -= lengths.at(static_cast<std::size_t>(month++));
    return month + 1;
}

int monthIn(const Row& row, const std::string& column)
{
    return row.at(column).empty() ? 0 : *parseWhole(row.at(column));
}

} // namespace

TEST_CASE("Every row of the host key is in the pack as published", "[protocol]")
{
    // Source of each row: its own "source" column (floras and keys); "read" rows were read in the work itself.
    const auto rows = test::referenceRows("trade/host_key.csv");
    if (rows.empty())
        return;
    int read = 0;
    for (const Row& row : rows) {
        CAPTURE(row.at("character_id"), row.at("taxon"));
        const KindRow* found = packRow(row);
        REQUIRE(found != nullptr);
        CHECK(found->asPublished == row.at("state"));
        CHECK(found->mark == markNamed(row.at("mark")));
        CHECK(sourcesOf(found->sources) == row.at("source"));
        if (!row.at("min").empty())
            CHECK(found->min == parseNumber(row.at("min")));
        if (!row.at("max").empty())
            CHECK(found->max == parseNumber(row.at("max")));
        const auto& sources = found->sources;
        const bool allRead = std::all_of(sources.begin(), sources.end(),
                                         [](const Source& s) { return s.basis == Basis::read; });
        CHECK(allRead == (row.at("confidence") == "read"));
        read += allRead ? 1 : 0;
    }
    CHECK(read == 109);
}

TEST_CASE("Every sign has its published months", "[protocol]")
{
    const auto rows = test::referenceRows("trade/symptoms.csv");
    if (rows.empty())
        return;
    int signs = 0;
    for (const Row& row : rows) {
        CAPTURE(row.at("id"));
        const Sign* sign = builtInPack().sign(row.at("id"));
        REQUIRE(sign != nullptr);
        CHECK(sourcesOf(sign->sources) == row.at("source"));
        CHECK(sign->weight == row.at("weight"));
        CHECK(sign->mustNotConclude == row.at("must_not_conclude"));
        CHECK(sign->usualMin == parseNumber(row.at("usual_min")));
        CHECK(sign->usualMax == parseNumber(row.at("usual_max")));
        CHECK(sign->hardMin == parseNumber(row.at("hard_min")));
        CHECK(sign->hardMax == parseNumber(row.at("hard_max")));
        CHECK(sign->persists == (row.at("persists_on_tree") == "yes"));
        for (const std::string region : {"MAR", "STH"}) {
            const Window& window = sign->windows.at(region);
            CHECK(monthOf(window.first) == monthIn(row, region + "_first_month"));
            CHECK(monthOf(window.peakFrom) == monthIn(row, region + "_peak_from_month"));
            CHECK(monthOf(window.peakTo) == monthIn(row, region + "_peak_to_month"));
            CHECK((window.last == 0 ? 0 : monthOf(window.last)) == monthIn(row, region + "_last_month"));
        }
        ++signs;
    }
    CHECK(signs == 29);
}

TEST_CASE("Windows begin and end on the day that the words of the table mean", "[protocol]")
{
    // "mid-" is the 15th, "late" begins on the 21st, "1st week" ends on the 7th; a bare month is its first or last day.
    const auto day = [](int month, int dayOfMonth) { return CivilDate::make(2024, month, dayOfMonth)->dayOfYear(); };
    const auto window = [](const char* sign, const char* region) { return builtInPack().sign(sign)->windows.at(region); };
    CHECK(window("S01", "MAR").first == day(5, 1));
    CHECK(window("S01", "MAR").last == day(8, 31));
    CHECK(window("S05", "STH").peakTo == day(3, 31));
    CHECK(window("S06", "STH").first == day(5, 21));
    CHECK(window("S08", "MAR").first == day(6, 15));
    CHECK(window("S08", "STH").first == day(5, 21));
    CHECK(window("S08", "STH").peakFrom == day(6, 15));
    CHECK(window("S08", "STH").last == day(8, 15));
    CHECK(window("S22", "STH").first == day(3, 21));
    CHECK(window("S22", "STH").last == day(5, 7));
    CHECK(window("S15", "MAR").peakTo == day(2, 29));
}
