// Letters and corners of 100 km squares.
//
// Sources: Ordnance Survey, "A guide to coordinate systems in Great Britain" (SV is the square at the false origin, letters run west
//          to east and north to south without I); the published layout of the Irish Grid (A at the north-west of 5 by 5 squares,
//          V at the false origin). Rows W011 to W048 of reference/geo/worked_examples.csv hold both.

#include "core/position/grid_squares.h"

#include <algorithm>

#include "tests/support/reference_rows.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

const GridSquare* named(GridSystem::Kind grid, const std::string& letters)
{
    const auto& all = landSquares(grid);
    const auto at = std::find_if(all.begin(), all.end(), [&](const GridSquare& square) { return square.letters == letters; });
    return at == all.end() ? nullptr : &*at;
}

} // namespace

TEST_CASE("squares with land stand where the published letters put them", "[position][squares]")
{
    struct Row {
        GridSystem::Kind grid;
        const char* letters;
        double easting, northing;
    };
    const Row rows[] = {{GridSystem::Kind::osgb, "SV", 0, 0},
                        {GridSystem::Kind::osgb, "SO", 300'000, 200'000},
                        {GridSystem::Kind::osgb, "TG", 600'000, 300'000},
                        {GridSystem::Kind::osgb, "HP", 400'000, 1'200'000},
                        {GridSystem::Kind::osgb, "NA", 0, 900'000},
                        {GridSystem::Kind::ig, "V", 0, 0},
                        {GridSystem::Kind::ig, "O", 300'000, 200'000},
                        {GridSystem::Kind::ig, "C", 200'000, 400'000}};
    for (const Row& row : rows) {
        CAPTURE(row.letters);
        const GridSquare* square = named(row.grid, row.letters);
        REQUIRE(square != nullptr);
        CHECK(square->corner == PlanePoint{row.easting, row.northing});
        CHECK(landSquareAt(row.grid, {row.easting, row.northing}) == square);
        CHECK(landSquareAt(row.grid, {row.easting + 99'999.9, row.northing + 99'999.9}) == square);
    }
}

TEST_CASE("every published square is either the one of the list or at sea", "[position][squares]")
{
    const auto rows = test::referenceRows("reference/geo/worked_examples.csv");
    int seen = 0;
    for (const auto& row : rows) {
        const bool british = row.at("kind") == "osgb-letters", irish = row.at("kind") == "irish-letters";
        const auto numbers = test::numbersIn(row.at("expected"));
        if ((!british && !irish) || numbers.size() != 2)
            continue;
        const auto grid = british ? GridSystem::Kind::osgb : GridSystem::Kind::ig;
        const GridSquare* at = landSquareAt(grid, {numbers[0] + 50'000, numbers[1] + 50'000});
        CAPTURE(row.at("input"));
        CHECK((at == nullptr) == (named(grid, row.at("input")) == nullptr));
        if (at != nullptr) {
            CHECK(at->letters == row.at("input"));
            CHECK(at->corner == PlanePoint{numbers[0], numbers[1]});
        }
        ++seen;
    }
    CHECK((rows.empty() || seen >= 30));
}

TEST_CASE("there are as many squares as the layouts have with land", "[position][squares]")
{
    // from the list of notation.h: 25 Irish letters less the seven at sea; from memory: SQ and HS hold no land
    CHECK(landSquares(GridSystem::Kind::ig).size() == 18);
    CHECK(named(GridSystem::Kind::osgb, "SQ") == nullptr);
    CHECK(landSquareAt(GridSystem::Kind::osgb, {-1, 0}) == nullptr);
    CHECK(landSquareAt(GridSystem::Kind::osgb, {650'000, 1'250'000}) == nullptr);
    CHECK(landSquares(GridSystem::Kind::utm).empty());
}
