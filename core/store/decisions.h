// Decisions, notices to the authority, and the accepted finds that "nearest find" and "new ground" are measured against.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/record/decision.h"
#include "core/store/store.h"

namespace cupule {

/// An accepted positive visit.
struct FindPlace {
    Uid visit, tree;
    std::string treeLabel;
    CivilDate date;
    double latitude = 0, longitude = 0;
    double metres = 0;                         ///< from the place asked about; 0 where none was
};

/// How far an accepted find is, and of which day.
struct FindAway {
    double metres = 0;
    CivilDate date;
};

class Decisions {
public:
    explicit Decisions(StoreCore& core) : m_core(core) {}
    /// Adds the decision, which from then on names those on its visit that nobody else names, and its journal line. State and flags of the visit are set by Visits::setStanding.
    Status add(Change& change, const Decision& decision);
    Result<std::vector<Decision>> ofVisit(const Uid& visit);                 ///< inOrder (rules/deciding.h)
    Result<std::vector<Decision>> ofRevision(const Uid& revision);
    Result<std::optional<Decision>> last(const Uid& visit);
    /// Of all records on which more than one decision was written, by record, oldest first.
    Result<std::vector<Decision>> ofManyDecided();
    /// On those of the last `most` decided records of an observer that were not accepted, newest record first.
    Result<std::vector<Decision>> ofObserver(const Uid& observer, int most);

    Status add(Change& change, const Told& told);
    Result<std::optional<Told>> told(const Uid& visit);                      ///< the last one

    /// An accepted positive begins to count, or (without `find`) no longer counts.
    Status setFind(Change& change, const Uid& visit, const std::optional<FindPlace>& find);
    Result<std::optional<FindPlace>> findOf(const Uid& visit);               ///< nothing where it does not count
    /// Nearest accepted find other than `exceptVisit`, of a day before `before` where given, at most `metres` away.
    Result<std::optional<FindPlace>> nearestFind(double latitude, double longitude, double metres, const Uid& exceptVisit,
                                                 std::optional<CivilDate> before = {});
    /// The same without its name, for whoever asks about many places.
    Result<std::optional<FindAway>> findAway(double latitude, double longitude, double metres, const Uid& exceptVisit,
                                             std::optional<CivilDate> before = {});
    /// How far alone.
    Result<std::optional<double>> metresToFind(double latitude, double longitude, double metres, const Uid& exceptVisit,
                                               std::optional<CivilDate> before = {});
    /// The `most` nearest of any day, nearest first, none farther than `metres`.
    Result<std::vector<FindPlace>> nearestFinds(double latitude, double longitude, double metres, const Uid& exceptVisit, int most);
    /// Accepted finds in a box; for the same-square question ask with the square's corners and test each.
    Result<std::vector<FindPlace>> findsInBox(double west, double south, double east, double north, int most);
    Result<std::int64_t> countFinds();

private:
    StoreCore& m_core;
};

} // namespace cupule
