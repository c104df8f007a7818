#include "core/position/grid_squares.h"

#include "core/position/notation_detail.h"

namespace cupule {

namespace {

constexpr std::string_view gridLetters = "ABCDEFGHJKLMNOPQRSTUVWXYZ";

std::vector<GridSquare> british()
{
    std::vector<GridSquare> squares;
    for (const char first : gridLetters)
        for (const char second : gridLetters)
            if (const auto corner = notation::britishSquare(first, second);
                corner && !notation::isSeaSquare(GridSystem::Kind::osgb, *corner))
                squares.push_back({{first, second}, {corner->easting, corner->northing}});
    return squares;
}

std::vector<GridSquare> irish()
{
    std::vector<GridSquare> squares;
    for (const char letter : gridLetters)
        if (const auto corner = notation::irishSquare(letter); corner && !notation::isSeaSquare(GridSystem::Kind::ig, *corner))
            squares.push_back({{letter}, {corner->easting, corner->northing}});
    return squares;
}

} // namespace

const std::vector<GridSquare>& landSquares(GridSystem::Kind grid)
{
    static const std::vector<GridSquare> none, britishSquares = british(), irishSquares = irish();
    return grid == GridSystem::Kind::osgb ? britishSquares : grid == GridSystem::Kind::ig ? irishSquares : none;
}

const GridSquare* landSquareAt(GridSystem::Kind grid, PlanePoint place)
{
    for (const GridSquare& square : landSquares(grid)) {
        const double east = place.easting - square.corner.easting;
        const double north = place.northing - square.corner.northing;
        if (east >= 0 && east < gridSquareMetres && north >= 0 && north < gridSquareMetres)
            return &square;
    }
    return nullptr;
}

} // namespace cupule
