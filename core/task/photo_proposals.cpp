#include "core/task/photo_proposals.h"

#include <algorithm>

#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "core/task/edit.h"
#include "core/task/facts.h"
#include "core/task/photos.h"

namespace cupule {

namespace {

/// The photos of the day's visits and how long after their visits they were taken.
struct Placed {
    std::vector<PhotoNote> photos;
    std::vector<double> secondsAfter;
};

Result<Placed> placedPhotos(Session& session, CivilDate day)
{
    Placed placed;
    const auto rows = session.store().visits().ofDay(day, {});
    if (!rows)
        return fail(rows.error());
    for (const auto& row : *rows) {
        if (row.standing.struck)
            continue;
        const auto stored = storedVisit(session, row.id);
        if (!stored)
            return fail(stored.error());
        const auto photos = session.store().photos().ofVisit(row.id);
        if (!photos)
            return fail(photos.error());
        for (const PhotoNote& photo : *photos) {
            if (const auto seconds = secondsAfterVisit(photo, stored->visit))
                placed.secondsAfter.push_back(*seconds);
            placed.photos.push_back(photo);
        }
    }
    return placed;
}

/// Of a day within the clock's error of this one.
bool mayBeOf(const PhotoNote& photo, CivilDate day, std::optional<double> secondsAhead)
{
    if (!photo.takenDate)
        return false;
    const auto right = secondsAhead ? correctedTime(photo, *secondsAhead) : std::nullopt;
    return (right ? right->date : *photo.takenDate) == day;
}

std::optional<double> aheadOf(const PhotoNote& photo, std::optional<double> secondsAhead)
{
    return photo.clockAheadSeconds ? photo.clockAheadSeconds : secondsAhead;
}

} // namespace

Result<std::vector<MatchVisit>> visitsForPhotos(Session& session, CivilDate day)
{
    const auto rows = session.store().visits().ofDay(day, {});
    if (!rows)
        return fail(rows.error());
    std::vector<MatchVisit> visits;
    for (const auto& row : *rows) {
        if (row.standing.struck)
            continue;
        const auto stored = storedVisit(session, row.id);
        if (!stored)
            return fail(stored.error());
        const auto may = mayEdit(session, stored->visit, row.standing);
        if (!may)
            return fail(may.error());
        if (!*may)
            continue;
        const auto tree = session.store().trees().find(row.tree);
        if (!tree)
            return fail(tree.error());
        visits.push_back({row.id, stored->visit.date, stored->visit.time, placeOf(stored->visit, *tree)});
    }
    return visits;
}

Result<PhotoGround> photoGround(Session& session, CivilDate day)
{
    PhotoGround ground;
    ground.day = day;
    ground.settings = session.pack().settings;
    auto visits = visitsForPhotos(session, day);
    if (!visits)
        return fail(visits.error());
    auto placed = placedPhotos(session, day);
    if (!placed)
        return fail(placed.error());
    auto tray = trayPhotos(session);
    if (!tray)
        return fail(tray.error());
    ground.visits = std::move(*visits);
    ground.tray = std::move(*tray);
    for (const PhotoNote& photo : ground.tray)
        if (mayBeOf(photo, day, photo.clockAheadSeconds))
            placed->photos.push_back(photo);
    ground.fromGps = clockOffsetFromGps(placed->photos);
    ground.fromVisits = clockOffset(placed->secondsAfter);
    return ground;
}

PhotoProposals proposeFrom(const PhotoGround& ground, std::optional<double> secondsAhead)
{
    PhotoProposals proposals;
    proposals.fromGps = ground.fromGps;
    proposals.fromVisits = ground.fromVisits;
    proposals.secondsAhead = secondsAhead;
    for (const auto& estimate : {ground.fromGps, ground.fromVisits})
        if (!proposals.secondsAhead && estimate)
            proposals.secondsAhead = estimate->secondsAhead;
    for (const PhotoNote& photo : ground.tray) {
        const auto ahead = aheadOf(photo, proposals.secondsAhead);
        if (mayBeOf(photo, ground.day, ahead))
            proposals.photos.push_back({photo, matchVisits(photo, ground.visits, ahead, ground.settings)});
    }
    return proposals;
}

Result<PhotoProposals> proposePhotos(Session& session, CivilDate day, std::optional<double> secondsAhead)
{
    const auto ground = photoGround(session, day);
    if (!ground)
        return fail(ground.error());
    return proposeFrom(*ground, secondsAhead);
}

Status takeProposals(Session& session, const std::vector<PhotoAndVisit>& pairs, const std::string& what)
{
    std::vector<PhotoNote> changed;
    for (const auto& [photo, visit] : pairs) {
        const auto stored = storedPhoto(session, photo);
        if (!stored)
            return fail(stored.error());
        changed.push_back(*stored);
        changed.back().visit = visit;
    }
    return changePhotos(session, changed, what);
}

Status refuseVisits(Session& session, const Uid& photo, const std::vector<Uid>& visits, const std::string& what)
{
    auto stored = storedPhoto(session, photo);
    if (!stored)
        return fail(stored.error());
    for (const Uid& visit : visits)
        if (std::find(stored->notWith.begin(), stored->notWith.end(), visit) == stored->notWith.end())
            stored->notWith.push_back(visit);
    return changePhoto(session, *stored, what);
}

} // namespace cupule
