// Photos of visits and those that still lie in the tray.

#pragma once

#include <string>
#include <vector>

#include "core/record/photo.h"
#include "core/task/session.h"

namespace cupule {

/// Photos that belong to no visit yet, by time taken.
Result<std::vector<PhotoNote>> trayPhotos(Session& session);
/// Caption, evidence, measures, visit: everything but the picture itself (fault "photo.picture"). Can be undone.
/// Refused with "visit.not-yours" where this person may change neither the visit it leaves nor the one it goes to.
Status changePhoto(Session& session, const PhotoNote& changed, const std::string& what);
/// Path of the picture; faults "photo.unknown", "media.missing".
Result<std::string> photoPath(Session& session, const Uid& photo);
/// What a photo may be evidence for besides signs and characters: the crown, a shoot.
std::vector<std::string> plainEvidence();

} // namespace cupule
