#include "core/store/find_index.h"

#include <algorithm>
#include <array>
#include <cmath>
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
constexpr double shortestDegree = 110'500; // metres of latitude, a little less than at the equator

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

FindIndex::Square FindIndex::emptySquare(std::int64_t number)
{
    const double south = static_cast<double>(number / squaresPerRow) / squaresPerDegree - 90;
    const double west = static_cast<double>(number % squaresPerRow) / squaresPerDegree - 180;
    const double side = 1 / squaresPerDegree;
    Square square;
    square.number = number;
    square.middle = vectorOf(south + side / 2, west + side / 2);
    double farthest = 0;
    for (const double up : {0.0, side})
        for (const double along : {0.0, side})
            farthest = std::max(farthest, squared(square.middle, vectorOf(std::min(90.0, south + up), west + along)));
    square.reach = std::sqrt(farthest) * 1.001 + 1;
    return square;
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
    m_places.clear();
    Query q(m_db, "SELECT square FROM find_square");
    while (q.step()) {
        m_places[q.integer(0)] = m_squares.size();
        m_squares.push_back(emptySquare(q.integer(0)));
    }
    m_version = version;
    m_known = true;
}

void FindIndex::changed(std::int64_t cell)
{
    const std::int64_t number = squareOf(cell);
    const auto known = m_places.find(number);
    if (known != m_places.end()) {
        m_squares[known->second].loaded = false;
        return;
    }
    m_places[number] = m_squares.size();
    m_squares.push_back(emptySquare(number));
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
        const auto known = m_places.find(number);
        if (known != m_places.end())
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

/// The square that can hold the nearest one first, then all that can still hold a nearer one.
void FindIndex::lookEverywhere(Search& search)
{
    const auto least = [&](const Square& square) { return std::sqrt(squared(search.from, square.middle)) - square.reach; };
    const auto first = std::min_element(m_squares.begin(), m_squares.end(),
                                        [&](const Square& one, const Square& other) { return least(one) < least(other); });
    if (first == m_squares.end())
        return;
    search.candidates.clear();
    look(*first, search);
    for (Square& square : m_squares) {
        const double least2 = least(square);
        if (&square != &*first && (least2 <= 0 || least2 * least2 <= search.limit))
            look(square, search);
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

} // namespace cupule
