// Two visits of a day and invented photos of it in the tray, as a camera whose clock runs ten minutes ahead would bring them: some with
// a satellite time and a place, one of another day, one that fits nothing, and one sent again smaller.

#pragma once

#include <QString>

#include "core/task/session.h"

namespace cupule::test {

/// Files alone, drawn into the folder: "IMG_0611.jpg" to "IMG_0616.jpg", and "sent.jpg", which is IMG_0613 made smaller.
void drawPhotos(const QString& folder);
/// Visits to T-1 at 9.00 and T-2 at 14.00, and the photos taken in with what the camera would have written.
void makePhotoScene(Session& session, const QString& folder);

} // namespace cupule::test
