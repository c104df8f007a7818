// Which column of a table means what: headings matched by name, and mappings that can be saved and used again.
//
//  - A heading is compared without regard to case, blanks, dashes, underscores and a unit in brackets. The table of
//    headings is printed in resources/docs/import_columns.md; characters and signs of the pack are known by id and name.
//  - A heading that nobody knows is kept as a remark on each record. Nothing is dropped.
//  - A mapping file is JSON: {"columns": {"heading": "field", ...}} with the fields named below; it may also hold
//    "delimiter", "decimal", "encoding", "date-order", "zone", "system".

#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/protocol/pack.h"

namespace cupule {

enum class ImportField : std::uint8_t {
    remark,            ///< kept letter for letter under its heading
    ignored,           ///< what an earlier import wrote beside set-aside rows
    tree, site, note, code,
    position, latitude, longitude, easting, northing, first, second, system,
    date, time, zone,
    observer, companions,
    minutes, trees, crown, height, binoculars, innerCrown, light, leaves,
    clothes, boots, vehicle, tools, leftSite,
    gallCount, gallSize, symptoms, leafingShift, girth,
    character, characterValue, sign, signMeasure, signCount,
};

/// Stable names: "tree", "inner-crown", "K03", "K03 value", "S02", "S02 size", "S02 count".
struct ImportColumn {
    std::size_t index = 0;                 ///< in the row
    std::string heading;                   ///< as it stands in the file
    ImportField field = ImportField::remark;
    const Character* character = nullptr;  ///< for character, characterValue
    const Sign* sign = nullptr;            ///< for sign, signMeasure, signCount
};

std::string fieldName(const ImportColumn& column);

/// A saved mapping. Headings are matched exactly first, then as headings are.
struct ColumnMapping {
    std::map<std::string, std::string> columns;
    std::string delimiter, decimal, encoding, dateOrder, zone, system;
    bool operator==(const ColumnMapping&) const = default;
};
/// Faults "file.*", "columns.json", "columns.member" (argument "member").
Result<ColumnMapping> readColumnMapping(const std::string& path);
Result<ColumnMapping> columnMappingFromJson(std::string_view json);
std::string toJson(const ColumnMapping& mapping);

struct ImportColumns {
    std::vector<ImportColumn> all;         ///< one for each heading, in order
    std::vector<std::string> twice;        ///< headings whose field another column had already: kept as remarks
    [[nodiscard]] const ImportColumn* find(ImportField field) const;
    [[nodiscard]] bool has(ImportField field) const { return find(field) != nullptr; }
    /// A table without a date is a list of trees.
    [[nodiscard]] bool listsTrees() const { return !has(ImportField::date); }
    /// Something that only a visit can hold.
    [[nodiscard]] bool holdsAnswers() const;
};

/// Fault "columns.field" where a mapping names a field that there is not (arguments "heading", "field").
Result<ImportColumns> matchColumns(const std::vector<std::string>& headings, const ColumnMapping& mapping,
                                   const Pack& pack);

/// The form in which headings and words are compared: "Leaf_Arrangement " and "leaf arrangement" are the same.
std::string comparedWords(std::string_view text);

} // namespace cupule
