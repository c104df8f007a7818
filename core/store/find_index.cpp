#include "core/store/find_index.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "core/position/geodesic.h"
#include "core/store/cells.h"

namespace cupule {

namespace {

constexpr double squaresPerDegree = 20;
constexpr std::int64_t squaresPerRow = 8192;
constexpr std::int64_t columns = 7200;
constexpr std::int64_t cellsASide = 5, cellsPerRow = 65'536;
constexpr int rings = 2;                   // of squares around the own one, before all are looked at
constexpr std::int64_t squaresABlock = 20;
// Metres. A degree of latitude is 110 574 (equator) to 111 694 long (pole), one of longitude 111 320 at most.
constexpr double shortestDegree = 110'500;
constexpr double squareReach = 3'950, blockReach = 78'900;   // from the middle to the farthest corner, or more

/// How much longer a chord may be than another one whose arc along the ellipsoid is shorter: arcs of equal chords differ with the
/// radius of curvature, 6335 to 6400 km, by less than (chord / radius)^2 / 1000. Very long ones are all compared.
double doubtOf(double chord)
{
    constexpr double radius = 6'367'000;
    return chord < 3e6 ? chord * chord / (radius * radius) / 500 : 1;
}

} // namespace

/// Straight lines through the earth order places as distances along it do, but for the doubt above.
struct FindIndex::Search {
    Vector from;
    std::int64_t except = 0, before = 0;
    double best = 0, limit = 0;            // squared chords
    std::vector<std::pair<double, const NearFind*>> candidates;

    void narrow(double chord)
    {
        best = chord * chord;
        const double widened = chord * (1 + doubtOf(chord)) + 0.001;
        limit = widened * widened;
    }
};

/// Geodetic to geocentric on WGS84, height 0. Source: EPSG Guidance Note 7-2, "Geographic/geocentric conversions".
FindIndex::Vector FindIndex::vectorOf(double latitude, double longitude)
{
    constexpr double axis = 6'378'137, flattening = 1 / 298.257223563, squaredEccentricity = flattening * (2 - flattening);
    const double phi = latitude * std::numbers::pi / 180, lambda = longitude * std::numbers::pi / 180;
    const double normal = axis / std::sqrt(1 - squaredEccentricity * std::sin(phi) * std::sin(phi));
    return {normal * std::cos(phi) * std::cos(lambda), normal * std::cos(phi) * std::sin(lambda),
            normal * (1 - squaredEccentricity) * std::sin(phi)};
}

double FindIndex::squared(const Vector& one, const Vector& other)
{
    const double x = one.x - other.x, y = one.y - other.y, z = one.z - other.z;
    return x * x + y * y + z * z;
}

/// The block of a square, made where it is new.
FindIndex::Block& FindIndex::blockOf(std::int64_t number)
{
    const std::int64_t row = number / squaresPerRow / squaresABlock, column = number % squaresPerRow / squaresABlock;
    const auto [block, fresh] = m_placeOfBlock.try_emplace(row * squaresPerRow + column, m_blocks.size());
    if (fresh)
        m_blocks.push_back({vectorOf(static_cast<double>(row) - 89.5, static_cast<double>(column) - 179.5), {}, {}});
    return m_blocks[block->second];
}

void FindIndex::open(Block& block)
{
    const auto middle = [](std::int64_t steps) { return (static_cast<double>(steps) + 0.5) / squaresPerDegree; };
    for (const std::int64_t number : block.numbers) {
        if (!m_placeOfSquare.try_emplace(number, m_squares.size()).second)
            continue;
        block.squares.push_back(m_squares.size());
        m_squares.push_back({number, vectorOf(middle(number / squaresPerRow) - 90, middle(number % squaresPerRow) - 180), false, {}});
    }
    block.numbers.clear();
}

void FindIndex::readSquares()
{
    const std::int64_t version = [&] {
        Query q(m_db, "PRAGMA data_version");
        return q.step() ? q.integer(0) : 0;
    }();
    if (m_known && version == m_version)
        return;
    m_squares.clear();
    m_blocks.clear();
    m_placeOfSquare.clear();
    m_placeOfBlock.clear();
    Query q(m_db, "SELECT square FROM find_square");
    while (q.step())
        blockOf(q.integer(0)).numbers.push_back(q.integer(0));
    m_version = version;
    m_known = true;
}

void FindIndex::changed(std::int64_t cell)
{
    const std::int64_t number = squareOf(cell);
    const auto known = m_placeOfSquare.find(number);
    if (known != m_placeOfSquare.end())
        m_squares[known->second].loaded = false;
    else
        blockOf(number).numbers.push_back(number);
}

void FindIndex::load(Square& square)
{
    square.places.clear();
    const std::int64_t row = square.number / squaresPerRow * cellsASide, column = square.number % squaresPerRow * cellsASide;
    for (std::int64_t up = 0; up < cellsASide; ++up) {
        const std::int64_t first = (row + up) * cellsPerRow + column;
        Query q(m_db, "SELECT visit, day, latitude, longitude FROM find WHERE cell BETWEEN :first AND :last");
        q.bind(":first", first).bind(":last", first + cellsASide - 1);
        while (q.step())
            square.places.push_back({vectorOf(q.real(2), q.real(3)), {q.integer(0), q.integer(1), q.real(2), q.real(3), 0}});
    }
    square.loaded = true;
}

void FindIndex::look(Square& square, Search& search)
{
    if (!square.loaded)
        load(square);
    for (const Place& place : square.places) {
        const double away = squared(search.from, place.at);
        if (away > search.limit || place.find.day >= search.before || place.find.visit == search.except)
            continue;
        search.candidates.emplace_back(away, &place.find);
        if (away < search.best)
            search.narrow(std::sqrt(away));
    }
}

/// The own square and those around it; true where nothing outside can be nearer.
bool FindIndex::lookAround(double latitude, double longitude, Search& search)
{
    const std::int64_t own = squareOf(cellOf(latitude, longitude));
    const std::int64_t row = own / squaresPerRow, column = own % squaresPerRow;
    const double farthestLatitude = std::min(90.0, std::abs(latitude) + (rings + 1) / squaresPerDegree);
    const double narrow = std::min(1.0, std::cos(farthestLatitude * std::numbers::pi / 180)) * shortestDegree / squaresPerDegree;
    const auto lookAt = [&](std::int64_t number) {
        const auto block = m_placeOfBlock.find(number / squaresPerRow / squaresABlock * squaresPerRow + number % squaresPerRow / squaresABlock);
        if (number < 0 || block == m_placeOfBlock.end())
            return;
        open(m_blocks[block->second]);
        const auto known = m_placeOfSquare.find(number);
        if (known != m_placeOfSquare.end())
            look(m_squares[known->second], search);
    };
    for (std::int64_t ring = 0; ring <= rings; ++ring) {
        for (std::int64_t up = -ring; up <= ring; ++up)
            for (std::int64_t along = -ring; along <= ring; along += std::abs(up) == ring ? 1 : 2 * ring) {
                const std::int64_t beside = (column + along + columns) % columns;
                lookAt((row + up) * squaresPerRow + beside);
                if (beside == 0)           // what lies on 180 degrees itself has a column of its own
                    lookAt((row + up) * squaresPerRow + columns);
            }
        // half of a chord's shortening over the width of the rings is far below a metre
        const double covered = static_cast<double>(ring) * narrow - 1;
        if (covered > 0 && search.limit <= covered * covered)
            return true;
    }
    return false;
}

/// The square whose middle is nearest first, then all that can still hold a nearer find.
void FindIndex::lookEverywhere(Search& search)
{
    const auto nearer = [&](const auto& one, const auto& other) { return squared(search.from, one.middle) < squared(search.from, other.middle); };
    const auto mayHold = [&](const Vector& middle, double reach) {
        const double least = std::sqrt(squared(search.from, middle)) - reach;
        return least <= 0 || least * least <= search.limit;
    };
    const auto block = std::min_element(m_blocks.begin(), m_blocks.end(), nearer);
    if (block == m_blocks.end())
        return;
    open(*block);
    const std::size_t first = *std::min_element(block->squares.begin(), block->squares.end(), [&](std::size_t one, std::size_t other) {
        return nearer(m_squares[one], m_squares[other]);
    });
    search.candidates.clear();
    look(m_squares[first], search);
    for (Block& each : m_blocks) {
        if (!mayHold(each.middle, blockReach))
            continue;
        open(each);
        for (const std::size_t square : each.squares)
            if (square != first && mayHold(m_squares[square].middle, squareReach))
                look(m_squares[square], search);
    }
}

std::optional<NearFind> FindIndex::nearest(double latitude, double longitude, double metres, std::int64_t except, std::int64_t before)
{
    readSquares();
    Search search{vectorOf(latitude, longitude), except, before, 0, 0, {}};
    search.narrow(metres);                 // a chord is never longer than its arc
    if (!lookAround(latitude, longitude, search))
        lookEverywhere(search);
    std::optional<NearFind> best;
    for (const auto& [away, find] : search.candidates) {
        if (away > search.limit)
            continue;
        NearFind candidate = *find;
        candidate.metres = distanceMetres(latitude, longitude, candidate.latitude, candidate.longitude);
        const bool nearer = !best || candidate.metres < best->metres || (candidate.metres == best->metres && candidate.visit < best->visit);
        if (candidate.metres <= metres && nearer)
            best = candidate;
    }
    return best;
}

std::vector<NearFind> FindIndex::around(double latitude, double longitude, double metres, std::int64_t except, std::size_t most)
{
    readSquares();
    const Vector from = vectorOf(latitude, longitude);
    std::vector<std::pair<double, std::size_t>> squares;   // from the middle, as a heap with the nearest on top
    for (Block& block : m_blocks) {
        if (std::sqrt(squared(from, block.middle)) - blockReach > metres)
            continue;
        open(block);
        for (const std::size_t square : block.squares)
            squares.emplace_back(std::sqrt(squared(from, m_squares[square].middle)), square);
    }
    std::make_heap(squares.begin(), squares.end(), std::greater<>());
    std::vector<NearFind> found;
    double farthest = metres;
    for (auto end = squares.end(); end != squares.begin();) {
        std::pop_heap(squares.begin(), end, std::greater<>());
        const auto [away, number] = *--end;
        if (away - squareReach > farthest)
            break;
        Square& square = m_squares[number];
        if (!square.loaded)
            load(square);
        for (const Place& place : square.places) {
            if (place.find.visit == except || std::sqrt(squared(from, place.at)) > farthest)
                continue;
            found.push_back(place.find);
            found.back().metres = distanceMetres(latitude, longitude, place.find.latitude, place.find.longitude);
        }
        std::erase_if(found, [&](const NearFind& find) { return find.metres > farthest; });
        std::sort(found.begin(), found.end(), [](const NearFind& a, const NearFind& b) {
            return std::pair(a.metres, a.visit) < std::pair(b.metres, b.visit);
        });
        if (found.size() < most)
            continue;
        found.resize(most);
        farthest = most == 0 ? 0 : found.back().metres;
    }
    return found;
}

} // namespace cupule
