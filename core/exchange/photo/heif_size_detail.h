// The size of a HEIF picture. exiv2 0.27 gives what the EXIF block claims, which may be the size before an export.
// Stays in core/exchange/photo.
//
// Source: ISO/IEC 14496-12 (boxes) and 23008-12, 6.5.3 (ispe).

#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>

namespace cupule::photo_detail {

/// Width and height of the largest picture the file holds: tiles and thumbnails are smaller than the whole.
std::optional<std::pair<std::uint32_t, std::uint32_t>> heifSize(std::string_view bytes);

} // namespace cupule::photo_detail
