// Takes in one photo: its note, its picture by hash, and the visit that it belongs to where that is plain.
//
//  - The same picture again adds nothing. The file is never written to.
//  - A visit of the same day is the photo's where their places agree within the pack's distance and both uncertainties,
//    or, where the zone of the photo is known, their times within the pack's minutes. What speaks against a visit rules it
//    out; of several the nearest is taken. Where nothing speaks for one, the photo lies in the tray.
//  - A photo without a date keeps none; a camera that says 0, 0 gave no position.

#pragma once

#include <string>

#include "core/task/import.h"

namespace cupule {

/// Appends what was found to `report`. Faults as importFiles.
Result<ImportFile> importPhoto(Session& session, const std::string& path, const ImportOptions& options,
                               const Progress& progress, ImportReport& report);

} // namespace cupule
