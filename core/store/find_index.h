// The accepted finds of a store in memory, square by square as they are asked for: the nearest one costs a few microseconds, however
// many there are and however far off they lie. Squares are those of sql/0006_counts.sql. Inside the store room only; throws StoreError.

#pragma once

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

#include "core/base/civil.h"
#include "core/store/connection.h"

namespace cupule {

struct NearFind {
    std::int64_t visit = 0;                ///< row
    std::int64_t day = 0;
    double latitude = 0, longitude = 0;
    double metres = 0;                     ///< along the ellipsoid
};

class FindIndex {
public:
    explicit FindIndex(Connection& db) : m_db(db) {}
    /// Nearest find of a day before `before`, none farther than `metres`, without that of the visit in row `except`; of equally near
    /// ones that of the smallest row. What other connections have committed is seen.
    std::optional<NearFind> nearest(double latitude, double longitude, double metres, std::int64_t except, std::int64_t before);
    /// The `most` nearest, nearest first, none farther than `metres`.
    std::vector<NearFind> around(double latitude, double longitude, double metres, std::int64_t except, std::size_t most);
    /// Something changed in this cell (cells.h) through this connection.
    void changed(std::int64_t cell);
    /// Anything may have changed.
    void forget() { m_known = false; }

private:
    struct Vector {
        double x = 0, y = 0, z = 0;
    };
    struct Place {
        Vector at;
        NearFind find;
    };
    struct Square {
        std::int64_t number = 0;
        Vector middle;
        bool loaded = false;
        std::vector<Place> places;
    };
    /// The squares of one degree both ways.
    struct Block {
        Vector middle;
        std::vector<std::int64_t> numbers; ///< of squares that are not among `squares` yet
        std::vector<std::size_t> squares;
    };
    struct Search;
    static Vector vectorOf(double latitude, double longitude);
    static double squared(const Vector& one, const Vector& other);
    Block& blockOf(std::int64_t number);
    void open(Block& block);
    void readSquares();
    void load(Square& square);
    void look(Square& square, Search& search);
    bool lookAround(double latitude, double longitude, Search& search);
    void lookEverywhere(Search& search);

    Connection& m_db;
    bool m_known = false;
    std::int64_t m_version = 0;            // of the data, as other connections change it
    std::vector<Square> m_squares;
    std::vector<Block> m_blocks;
    std::unordered_map<std::int64_t, std::size_t> m_placeOfSquare, m_placeOfBlock;
};

} // namespace cupule
