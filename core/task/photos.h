// Photos of visits and those that still lie in the tray.

#pragma once

#include <string>
#include <vector>

#include "core/record/photo.h"
#include "core/task/session.h"

namespace cupule {

/// Fault "photo.unknown".
Result<PhotoNote> storedPhoto(Session& session, const Uid& id);
/// Photos that belong to no visit yet and are no known copies, by time taken.
Result<std::vector<PhotoNote>> trayPhotos(Session& session);
/// Photos put aside as copies of others.
Result<std::vector<PhotoNote>> copyPhotos(Session& session);
Result<std::vector<PhotoNote>> photosOfVisit(Session& session, const Uid& visit);
/// Caption, evidence, measures, visit: everything but the picture itself (fault "photo.picture"). Can be undone.
/// Refused with "visit.not-yours" where this person may change neither the visit it leaves nor the one it goes to.
Status changePhoto(Session& session, const PhotoNote& changed, const std::string& what);
/// Several of them in one undo step: all or none.
Status changePhotos(Session& session, const std::vector<PhotoNote>& changed, const std::string& what);
/// Path of the picture; faults "photo.unknown", "media.missing".
Result<std::string> photoPath(Session& session, const Uid& photo);
/// What a photo may be evidence for besides signs and characters: the crown, a shoot.
std::vector<std::string> plainEvidence();

} // namespace cupule
