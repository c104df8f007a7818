// What the tags of a photo say about its place. Stays in core/exchange/photo.

#pragma once

#include "core/exchange/photo/exif_detail.h"
#include "core/exchange/photo/moment_detail.h"
#include "core/exchange/photo/reader.h"

namespace cupule::photo_detail {

PhotoPosition positionOf(const Tags& tags, const Notes& note);

} // namespace cupule::photo_detail
