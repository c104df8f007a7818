// The tags of one photo as plain values, so that the meaning of time and place can be worked out without exiv2.
// photo/exif.cpp is the only file that knows the library. Stays in core/exchange/photo.

#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cupule::photo_detail {

/// A tag of three (or fewer) fractions: degrees, minutes, seconds; hours, minutes, seconds; or one number.
struct Fractions {
    enum class State {
        missing,
        empty,        ///< there without a value, or one of the fractions is 0/0, "unknown"
        unreadable,   ///< another type, too many parts, a denominator of 0
        read,
    };
    State state = State::missing;
    std::vector<double> parts;
    std::string text;   ///< as it stands, for the report
};

struct Tags {
    bool damaged = false;               ///< the library complained, or gave up
    std::string complaint;              ///< its words
    int width = 0;
    int height = 0;
    bool isPicture = false;             ///< the library knows the format as one of pictures
    std::optional<int> orientation;
    std::string dateTimeOriginal;       ///< texts are empty where the tag is missing
    std::string dateTimeDigitized;
    std::string subSecOriginal;
    std::string offsetOriginal;
    Fractions latitude;
    Fractions longitude;
    std::string latitudeRef;
    std::string longitudeRef;
    Fractions altitude;
    bool belowSea = false;
    Fractions gpsTime;
    std::string gpsDate;
    std::string xmpDateTimeOriginal;
    std::string xmpLatitude;
    std::string xmpLongitude;
    std::string xmpAltitude;
    bool xmpBelowSea = false;
};

/// Reads the metadata of a file held in memory. Never throws; what cannot be read is missing and `damaged` says so.
Tags readTags(std::string_view bytes);

} // namespace cupule::photo_detail
