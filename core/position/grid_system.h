// The coordinate systems that a position can be given in, and their names.
//
// Sources: Ordnance Survey, "Transformations and OSGM15 User Guide" v1.3 (2020), for the National Grid, the
// Irish
//          Grid and Irish Transverse Mercator; EPSG registry for the codes and their axis orders.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace cupule {

struct GridSystem {
    enum class Kind : std::uint8_t { wgs84, osgb, ig, itm, utm };
    Kind kind = Kind::wgs84;
    std::uint8_t zone = 0;     ///< UTM: [1, 60]; else 0
    bool north = true;         ///< UTM: hemisphere of the northing
    bool operator==(const GridSystem&) const = default;

    [[nodiscard]] bool isProjected() const { return kind != Kind::wgs84; }
    /// "WGS84", "OSGB", "IG", "ITM", "UTM30N".
    [[nodiscard]] std::string name() const;
    static GridSystem utm(int zone, bool north);
};

/// A system as someone named it, with the order in which its two numbers come.
struct NamedSystem {
    GridSystem system;
    bool letteredOnly = false;  ///< "MGRS": bare numbers have no meaning there
    bool northFirst = false;    ///< northing before easting, or latitude before longitude
};

/// Reads "OSGB", "IG", "ITM", "UTM30", "UTM30N", "UTM56S", "MGRS", "WGS84" in any case, and the codes
/// "EPSG:4326", "EPSG:4258", "OGC:CRS84", "EPSG:27700", "EPSG:29902", "EPSG:29903", "EPSG:2157",
/// "EPSG:326zz", "EPSG:327zz", "EPSG:258zz" (easting first) and "EPSG:3038" to "EPSG:3051" (northing first).
/// A UTM zone without a letter is north. Fault "position.unknown-system".
Result<NamedSystem> parseSystem(std::string_view name);

} // namespace cupule
