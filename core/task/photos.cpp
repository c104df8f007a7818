#include "core/task/photos.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/store/undo_log.h"
#include "core/task/edit.h"

namespace cupule {

namespace {

Result<PhotoNote> storedPhoto(Session& session, const Uid& id)
{
    auto photo = session.store().photos().find(id);
    if (!photo)
        return fail(photo.error());
    if (!*photo)
        return fail("photo.unknown", FaultKind::usage, {{"id", id.text()}});
    return std::move(**photo);
}

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

} // namespace

Result<std::vector<PhotoNote>> trayPhotos(Session& session)
{
    auto tray = session.store().photos().tray();
    if (tray)
        std::stable_sort(tray->begin(), tray->end(), [](const PhotoNote& a, const PhotoNote& b) {
            return std::tie(a.takenDate, a.takenTime, a.originalName) <
                   std::tie(b.takenDate, b.takenTime, b.originalName);
        });
    return tray;
}

Status changePhoto(Session& session, const PhotoNote& changed, const std::string& what)
{
    const auto stored = storedPhoto(session, changed.id);
    if (!stored)
        return fail(stored.error());
    if (*stored == changed)
        return {};
    if (stored->sha256 != changed.sha256)
        return fail("photo.picture", FaultKind::usage, {{"id", changed.id.text()}});
    for (const Uid& visit : {stored->visit, changed.visit})
        if (auto may = mayTouch(session, visit); !may)
            return may;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto saved = session.store().photos().save(*change, changed); !saved)
        return saved;
    for (const Uid& visit : {stored->visit, changed.visit})
        if (auto done = visit.isNull() ? Status() : refreshVisit(session, *change, visit); !done)
            return done;
    if (auto kept = session.store().undoLog().push(*change, what,
                                                   {{"photo", changed.id, toJson(*stored), toJson(changed)}});
        !kept)
        return kept;
    return session.commit(*change);
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
