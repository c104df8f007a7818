// Which visits the photos in the tray may belong to: proposals, shown before any is taken.

#pragma once

#include <optional>
#include <string>
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

/// What proposals for one day are made from, read once.
struct PhotoGround {
    CivilDate day;
    std::vector<MatchVisit> visits;                 ///< that the person at work may give photos to
    std::vector<PhotoNote> tray;                    ///< all of it, by time
    std::optional<ClockOffset> fromGps, fromVisits;
    Settings settings;
};
Result<PhotoGround> photoGround(Session& session, CivilDate day);
/// `secondsAhead` as a person set it: for every photo that has no GPS time of its own.
PhotoProposals proposeFrom(const PhotoGround& ground, std::optional<double> secondsAhead = {});
Result<PhotoProposals> proposePhotos(Session& session, CivilDate day, std::optional<double> secondsAhead = {});

/// Photos go to visits, all in one undo step. Faults as changePhoto.
struct PhotoAndVisit {
    Uid photo, visit;
};
Status takeProposals(Session& session, const std::vector<PhotoAndVisit>& pairs, const std::string& what);
/// It stays in the tray and is not proposed to these visits again.
Status refuseVisits(Session& session, const Uid& photo, const std::vector<Uid>& visits, const std::string& what);

/// The visits of a day that may be given photos by the person at work.
Result<std::vector<MatchVisit>> visitsForPhotos(Session& session, CivilDate day);

} // namespace cupule
