// Where the position of a visit may be taken from instead of being typed: its tree, its photos, the points of a receiver.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/task/session.h"

namespace cupule {

struct PlaceOffer {
    enum class From { tree, photo, point };
    From from = From::tree;
    std::string name;                       ///< label, name of the file, name of the point; may be empty
    std::optional<LocalTime> time;          ///< of the photo or point, in the store's zone where its own is known
    Position position;                      ///< `obtained` says where from
};

/// The place of its tree, where it has one, then its photos that have one, by time. Faults are the store's.
Result<std::vector<PlaceOffer>> placeOffers(Session& session, const Uid& visit);

inline constexpr std::size_t mostPointOffers = 200;

/// Points of a GPX file for a visit: those that bear the label of its tree first, then those of its day, nearest in time first, then
/// named ones, at most mostPointOffers. Faults of readGpx().
Result<std::vector<PlaceOffer>> pointOffers(Session& session, const std::string& path, const Uid& visit);

} // namespace cupule
