// Which visits the photos in the tray may belong to: proposals, taken by changePhoto (core/task/photos.h) one by one.

#pragma once

#include <optional>
#include <vector>

#include "core/record/photo.h"
#include "core/rules/photo_clock.h"
#include "core/rules/photo_match.h"
#include "core/task/session.h"

namespace cupule {

struct PhotoProposal {
    PhotoNote photo;
    std::vector<PhotoMatch> matches;                ///< best first; none: it stays in the tray
};

struct PhotoProposals {
    std::optional<ClockOffset> fromGps;             ///< of the day's photos, in the tray or with a visit
    std::optional<ClockOffset> fromVisits;          ///< of those whose visit is known
    std::optional<double> secondsAhead;             ///< in use: as given, else from GPS, else from visits
    std::vector<PhotoProposal> photos;              ///< of the tray that may be of this day, by time
};

/// `secondsAhead` as a person set it: for every photo that has no GPS time of its own.
Result<PhotoProposals> proposePhotos(Session& session, CivilDate day, std::optional<double> secondsAhead = {});

/// The visits of a day that may be given photos by the person at work.
Result<std::vector<MatchVisit>> visitsForPhotos(Session& session, CivilDate day);

} // namespace cupule
