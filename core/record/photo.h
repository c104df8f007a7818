// A photo and what it is evidence for. The picture lies in the media folder under its hash and is never rewritten.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/base/uid.h"
#include "core/position/position.h"

namespace cupule {

/// A length measured along a line on the picture, scaled by a line of known length. Pixels of the stored picture.
struct PhotoMeasure {
    std::string sign;
    double scaleFromX = 0, scaleFromY = 0, scaleToX = 0, scaleToY = 0;
    double scaleMillimetres = 0;
    double fromX = 0, fromY = 0, toX = 0, toY = 0;
    double millimetres = 0;
    double uncertaintyMillimetres = 0;     ///< one standard uncertainty
    bool operator==(const PhotoMeasure&) const = default;
};

struct PhotoNote {
    Uid id;
    Uid visit;                             ///< null while it lies in the tray
    std::string sha256;                    ///< of the bytes as taken in, lower-case hexadecimal
    std::string originalName;
    std::int64_t bytes = 0;
    std::string format;                    ///< "JPEG", "PNG", "HEIC"
    int widthPixels = 0, heightPixels = 0; ///< as stored, before orientation
    int orientation = 1;                   ///< EXIF, 1 to 8
    std::optional<CivilDate> takenDate;
    std::optional<LocalTime> takenTime;
    std::optional<Instant> taken;          ///< only where an offset is known
    bool offsetWorkedOut = false;          ///< the offset comes from the GPS time, not from a tag
    /// Seconds by which takenDate and takenTime lie after the GPS time of the same photo, in the store's zone: the camera's clock
    /// runs ahead by so much, or the last fix is so old.
    std::optional<double> clockAheadSeconds;
    std::optional<Position> position;
    std::string positionStatus;            ///< as the photo reader said
    std::string caption;
    std::vector<std::string> evidenceFor;  ///< sign or character ids
    std::vector<PhotoMeasure> measures;
    /// The photo of which this is the same picture, as a person said; such a one belongs to no visit and lies in no tray.
    Uid copyOf;
    /// Visits it does not belong to and photos it is no copy of, as a person said: they are not proposed again.
    std::vector<Uid> notWith;
    bool operator==(const PhotoNote&) const = default;
};

} // namespace cupule
