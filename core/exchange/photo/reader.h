// Reads what a photo says about itself: time, zone, place, size and which way up.
//
//  - The file is never written to. Nothing is taken from its name or its date on the disk.
//  - The time is DateTimeOriginal (or XMP exif:DateTimeOriginal, or the time of digitising, said so). Without an
//    offset it stays local. OffsetTime belongs to another tag and is never used.
//  - The zone may be worked out from the GPS time of the same photo: marked, with the seconds left over.
//  - Numbers without hemisphere letters are no position; 0/0 is no position; text where numbers belong is unreadable.
//  - Bounded: files up to PhotoOptions::limitBytes, metadata only, no pixel is decoded.
//
// Source: Exif 2.32 (CIPA DC-008-2019), tags 0x0112, 0x9003, 0x9011, 0x9291 and the GPS IFD; XMP Part 2 (Adobe, 2016).

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil.h"
#include "core/base/hash.h"
#include "core/base/result.h"
#include "core/exchange/problem.h"

namespace cupule {

enum class PhotoFormat { jpeg, png, tiff, webp, heif, other };
std::string_view photoFormatName(PhotoFormat format);

enum class PhotoTimeSource { none, original, xmpOriginal, digitised };

struct PhotoTime {
    PhotoTimeSource source = PhotoTimeSource::none;
    CivilDate date;                               ///< as written; meaningless where source is none
    LocalTime time;
    int milliseconds = 0;                         ///< from SubSecTimeOriginal
    std::optional<int> offsetMinutes;             ///< as written (OffsetTimeOriginal, or in the XMP text)
    std::optional<Instant> gps;                   ///< GPSDateStamp and GPSTimeStamp together
    /// Worked out from `gps` where no offset is written: an offset in use somewhere, within 120 s of the difference.
    std::optional<int> workedOutOffsetMinutes;
    /// Camera time minus GPS time in seconds, after the offset (written or worked out) is taken off; without one,
    /// the whole difference. Only where `gps` holds.
    std::optional<double> secondsAheadOfGps;
    bool clockDoubt = false;                      ///< the two clocks cannot both be right
};

enum class PhotoPositionStatus {
    none,           ///< nothing there, or empty tags
    read,
    readFromXmp,    ///< the EXIF tags are missing or empty
    noFix,          ///< 0 N 0 E: a camera without a fix
    noHemisphere,   ///< latitude and longitude hold the bare numbers: ask
    unreadable,     ///< wrong type, out of range, half of it missing
};
std::string_view photoPositionStatusName(PhotoPositionStatus status);

struct PhotoPosition {
    PhotoPositionStatus status = PhotoPositionStatus::none;
    double latitude = 0;                      ///< degrees; only for read, readFromXmp and noHemisphere
    double longitude = 0;
    std::optional<double> altitudeMetres;     ///< above (or below: negative) sea level, whatever the status
};

struct PhotoFacts {
    Digest sha256{};
    std::int64_t bytes = 0;
    PhotoFormat format = PhotoFormat::other;
    int width = 0;                     ///< pixels as stored; 0 = unknown
    int height = 0;
    int orientation = 1;               ///< EXIF 1 to 8; 1 where missing or out of range
    PhotoTime time;
    PhotoPosition position;
    /// The metadata are broken somewhere: show what was read, and take neither time nor place from it unasked.
    bool damaged = false;
    ReadProblems problems;             ///< row 0; all of them keep the photo
};

struct PhotoOptions {
    std::int64_t limitBytes = std::int64_t{256} << 20;
};

/// Faults "file.*", "photo.not-a-picture" (no format that a camera writes; nothing was kept).
/// Damaged metadata is a problem (kind "damaged-metadata"), not a fault: the photo is kept, time and place are asked.
Result<PhotoFacts> readPhoto(const std::string& path, const PhotoOptions& options = {});

} // namespace cupule
