// Reads GPX 1.0 and 1.1 (Topografix): waypoints, route points and track points.
//
//  - A point whose coordinates cannot be read is a problem, never 0,0. Exactly 0,0 is no position either.
//  - A time without a zone is local and stays so; it is never taken for UTC.
//  - Not well-formed is a fault with the line (and the entity); the good points can then be read on request.
//  - No entity is ever expanded beyond the five of XML and character numbers; what the document declares is refused.
//  - The whole document is held in memory: about six times its size while it is read.
//
// Sources: GPX 1.1 schema (topografix.com/GPX/1/1), XML 1.0 fifth edition, XML Schema 1.1 part 2 dateTime.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil.h"
#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/exchange/problem.h"

namespace cupule {

struct GpxTime {
    enum class Kind {
        none,        ///< no time element, or an empty one
        instant,     ///< `instant` holds, its offset as written
        localOnly,   ///< `date` and, where written, `time`; the zone is unknown: ask
        unreadable,  ///< a problem says so
    };
    Kind kind = Kind::none;
    Instant instant;
    CivilDate date;                    ///< for `instant` too: the civil date where its offset holds
    std::optional<LocalTime> time;
    bool operator==(const GpxTime&) const = default;
};

struct GpxPoint {
    enum class Kind { waypoint, routePoint, trackPoint };
    Kind kind = Kind::waypoint;
    double latitude = 0;                     ///< degrees, WGS84, [-90, 90]
    double longitude = 0;                    ///< degrees, WGS84, [-180, 180]
    std::optional<double> elevationMetres;   ///< empty where the element is missing, empty or unreadable
    GpxTime time;
    std::string name;
    std::string comment;                     ///< cmt
    std::string description;                 ///< desc
    std::string groupName;                   ///< of its route or track
    std::int64_t line = 0;                   ///< physical line on which its element begins
    std::int64_t number = 0;                 ///< of all points in the file, from 1, unreadable ones counted
};

/// A waypoint or route point without a place that could be read, as far as its texts go.
struct GpxUnread {
    GpxPoint::Kind kind = GpxPoint::Kind::waypoint;
    std::int64_t number = 0;                 ///< as GpxPoint::number
    std::string name, latitude, longitude, description;
};

struct GpxFile {
    std::string version;                     ///< "1.0", "1.1" or whatever it says
    std::vector<GpxPoint> points;            ///< in the order of the file
    std::vector<GpxUnread> unread;           ///< each has a problem of its number; track points are left out
    ReadProblems problems;                   ///< row = GpxPoint::number
    std::int64_t waypoints = 0;              ///< as many elements as there are, readable or not
    std::int64_t routePoints = 0;
    std::int64_t trackPoints = 0;
    std::int64_t routes = 0;
    std::int64_t tracks = 0;
    std::optional<Fault> damage;             ///< what was wrong with the document, where the good points were asked for
};

struct GpxOptions {
    bool goodPointsOnly = false;             ///< read what is whole of a damaged document (only after asking)
    std::int64_t limitBytes = std::int64_t{64} << 20;
};

/// Faults "gpx.malformed" (arguments line, what, entity where one is to blame, and points: how many could still be
/// read), "gpx.not-gpx", "gpx.deep" (nested beyond 64), "gpx.encoding", "file.*", "job.cancelled".
/// `what` is entity, control-character or the word of the XML library for it.
Result<GpxFile> readGpx(const std::string& path, const GpxOptions& options = {}, const Progress& progress = {});
/// The same for a document in memory; `name` is for faults.
Result<GpxFile> readGpxText(std::string_view document, const std::string& name, const GpxOptions& options = {});

} // namespace cupule
