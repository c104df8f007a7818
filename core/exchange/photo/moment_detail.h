// What the tags of a photo say about its time. Stays in core/exchange/photo.

#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "core/exchange/photo/exif_detail.h"
#include "core/exchange/photo/reader.h"

namespace cupule::photo_detail {

/// Takes note of something odd; see ReadProblem.
using Notes = std::function<void(std::string_view kind, const char* column, std::string_view value, std::string detail)>;

PhotoTime timeOf(const Tags& tags, const Notes& note);

} // namespace cupule::photo_detail
