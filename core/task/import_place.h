// The position of a row: one text, or two numbers in columns of their own.

#pragma once

#include <array>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/position/notation.h"
#include "core/task/import_columns.h"

namespace cupule {

/// Something that cannot be read, in one cell.
struct CellProblem {
    const ImportColumn* column = nullptr;  ///< null = the row as a whole
    std::string kind, cause, suggestion;
    std::string value;                     ///< empty = the cell as it stands
};

struct RowPlace {
    std::optional<ParsedPosition> parsed;
    std::string_view typed;                ///< where one cell says it
    std::string joined;                    ///< where two cells say it; else empty
    [[nodiscard]] std::string_view text() const { return joined.empty() ? typed : std::string_view(joined); }
};

/// Reads the columns of one table. Compiled once; one thread at a time.
class PlaceReader {
public:
    /// `system` as in PositionOptions; fault "position.unknown-system". `swapped`: the columns of latitude and longitude
    /// hold each other's numbers, as a person has said.
    static Result<PlaceReader> create(const ImportColumns& columns, const std::string& system, char decimal,
                                      const std::array<double, 4>& areaWSEN, bool swapped = false);
    /// Fills `place` (nothing where the row names none); false with a problem where it cannot be read.
    bool read(std::span<const std::string_view> cells, RowPlace& place, CellProblem& problem);

private:
    struct Pair {
        const ImportColumn* first = nullptr;
        const ImportColumn* second = nullptr;
    };
    bool readText(std::string_view text, RowPlace& place, CellProblem& problem);
    bool readDegrees(std::span<const std::string_view> cells, RowPlace& place, CellProblem& problem);
    bool readPair(const Pair& pair, bool eastingFirst, std::span<const std::string_view> cells, RowPlace& place,
                  CellProblem& problem);
    /// The reader for the system that the row names; null with a problem where nobody knows it.
    const PositionReader* readerFor(std::string_view system, bool eastingFirst, CellProblem& problem);

    const ImportColumn* m_position = nullptr;
    const ImportColumn* m_system = nullptr;
    Pair m_degrees, m_metres, m_axes;
    PositionOptions m_options;
    std::optional<PositionReader> m_reader, m_degreesReader;
    std::map<std::string, std::optional<PositionReader>, std::less<>> m_readers;   // by system, "+" in front where easting first
    std::string_view m_rowSystem;
};

/// The import's kind for a fault of the position room ("bad_grid_letters" and so on).
std::string importKindOfPosition(const Fault& fault, std::string_view text);

} // namespace cupule
