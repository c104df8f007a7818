#include "core/task/photos.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/store/undo_log.h"
#include "core/task/edit.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

Status mayTouch(Session& session, const Uid& visit)
{
    if (visit.isNull())
        return {};
    const auto stored = storedVisit(session, visit);
    if (!stored)
        return fail(stored.error());
    const auto may = mayEdit(session, stored->visit, stored->row.standing);
    if (!may)
        return fail(may.error());
    return *may ? Status() : fail("visit.not-yours", FaultKind::refused, {{"id", visit.text()}});
}

/// A file is named after a person or a wood as readily as after its camera.
Result<std::vector<PhotoNote>> asSeen(Session& session, Result<std::vector<PhotoNote>> photos)
{
    const Sight sight = ownSight(session);
    if (photos && !sight.whole())
        for (PhotoNote& photo : *photos)
            hide(session, sight, photo);
    return photos;
}

} // namespace

Result<PhotoNote> storedPhoto(Session& session, const Uid& id)
{
    auto photo = session.store().photos().find(id);
    if (!photo)
        return fail(photo.error());
    if (!*photo)
        return fail("photo.unknown", FaultKind::usage, {{"id", id.text()}});
    hide(session, ownSight(session), **photo);
    return std::move(**photo);
}

Result<std::vector<PhotoNote>> trayPhotos(Session& session)
{
    auto tray = session.store().photos().tray();
    if (tray)
        std::stable_sort(tray->begin(), tray->end(), [](const PhotoNote& a, const PhotoNote& b) {
            return std::tie(a.takenDate, a.takenTime, a.originalName) <
                   std::tie(b.takenDate, b.takenTime, b.originalName);
        });
    return asSeen(session, std::move(tray));
}

Result<std::vector<PhotoNote>> copyPhotos(Session& session)
{
    return asSeen(session, session.store().photos().copies());
}

Result<std::vector<PhotoNote>> photosOfVisit(Session& session, const Uid& visit)
{
    return asSeen(session, session.store().photos().ofVisit(visit));
}

Result<std::vector<UndoPart>> savePhotos(Session& session, Change& change, const std::vector<PhotoNote>& changed)
{
    std::vector<UndoPart> parts;
    std::vector<Uid> touched;
    for (const PhotoNote& photo : changed) {
        const auto stored = storedPhoto(session, photo.id);
        if (!stored)
            return fail(stored.error());
        if (*stored == photo)
            continue;
        if (stored->sha256 != photo.sha256)
            return fail("photo.picture", FaultKind::usage, {{"id", photo.id.text()}});
        for (const Uid& visit : {stored->visit, photo.visit}) {
            if (auto may = mayTouch(session, visit); !may)
                return fail(may.error());
            if (!visit.isNull() && std::find(touched.begin(), touched.end(), visit) == touched.end())
                touched.push_back(visit);
        }
        if (auto saved = session.store().photos().save(change, photo); !saved)
            return fail(saved.error());
        parts.push_back({"photo", photo.id, toJson(*stored), toJson(photo)});
    }
    for (const Uid& visit : touched)
        if (auto done = refreshVisit(session, change, visit); !done)
            return fail(done.error());
    return parts;
}

Status changePhotos(Session& session, const std::vector<PhotoNote>& changed, const std::string& what)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto parts = savePhotos(session, *change, changed);
    if (!parts)
        return fail(parts.error());
    if (parts->empty())
        return {};
    if (auto kept = session.store().undoLog().push(*change, what, *parts); !kept)
        return kept;
    return session.commit(*change);
}

Status changePhoto(Session& session, const PhotoNote& changed, const std::string& what)
{
    return changePhotos(session, {changed}, what);
}

Result<std::string> photoPath(Session& session, const Uid& photo)
{
    const auto stored = storedPhoto(session, photo);
    if (!stored)
        return fail(stored.error());
    return session.store().media().path(stored->sha256);
}

std::vector<std::string> plainEvidence()
{
    return {crownEvidence, shootEvidence};
}

} // namespace cupule
