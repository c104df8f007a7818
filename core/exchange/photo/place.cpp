#include "core/exchange/photo/place_detail.h"

#include "core/base/text.h"

namespace cupule::photo_detail {

namespace {

using State = Fractions::State;

double summed(const std::vector<double>& parts)
{
    double degrees = 0;
    double unit = 1;
    for (const double part : parts) {
        degrees += part / unit;
        unit *= 60;
    }
    return degrees;
}

std::optional<double> degreesOf(const Fractions& tag)
{
    return tag.state == State::read ? std::optional(summed(tag.parts)) : std::nullopt;
}

/// +1, -1, 0 where the letter is missing; nothing where it is another one.
std::optional<int> signOf(const std::string& letter, char positive, char negative)
{
    if (letter.empty())
        return 0;
    const char c = letter.front() >= 'a' ? static_cast<char>(letter.front() - 'a' + 'A') : letter.front();
    return c == positive ? std::optional(1) : c == negative ? std::optional(-1) : std::nullopt;
}

/// "4074/100" or "54".
std::optional<double> fraction(std::string_view text)
{
    const auto slash = text.find('/');
    const auto above = parseNumber(text.substr(0, slash));
    const auto below = slash == std::string_view::npos ? std::optional(1.0) : parseNumber(text.substr(slash + 1));
    return above && below && *below > 0 && *above >= 0 ? std::optional(*above / *below) : std::nullopt;
}

struct XmpDegrees {
    double degrees = 0;
    int sign = 0;   ///< 0: no letter
};

/// "48,53.32356N" or "48,53,19.4N" (XMP Specification Part 2, GPSCoordinate); also "48/1 53/1 194/10", which some
/// programs copy from the EXIF tag, and which has no letter.
std::optional<XmpDegrees> xmpDegrees(std::string_view text, char positive, char negative)
{
    if (text.size() < 2)
        return std::nullopt;
    const bool letter = (text.back() >= 'A' && text.back() <= 'Z') || (text.back() >= 'a' && text.back() <= 'z');
    const auto sign = letter ? signOf(std::string(1, text.back()), positive, negative) : std::optional(0);
    const auto numbers = letter ? text.substr(0, text.size() - 1) : text;
    const auto parts = split(numbers, numbers.find(',') != std::string_view::npos ? ',' : ' ');
    std::vector<double> values;
    for (const auto& part : parts)
        if (const auto value = fraction(trim(part)))
            values.push_back(*value);
    if (!sign || parts.size() < 2 || parts.size() > 3 || values.size() != parts.size())
        return std::nullopt;
    return XmpDegrees{summed(values), *sign};
}

std::optional<double> xmpAltitude(const Tags& tags)
{
    const auto metres = fraction(tags.xmpAltitude);
    return metres ? std::optional((tags.xmpBelowSea ? -1 : 1) * *metres) : std::nullopt;
}

bool isThere(const Fractions& tag)
{
    return tag.state == State::read || tag.state == State::unreadable;
}

/// One way for both kinds of tags: degrees without sign, and the signs (0 = not told, nothing = wrong letter).
struct Given {
    std::optional<double> latitude;
    std::optional<double> longitude;
    std::optional<int> north;
    std::optional<int> east;
    std::string text;      ///< as it stands
    const char* tag;       ///< for the report
};

void judge(const Given& given, bool xmp, const Notes& note, PhotoPosition& out)
{
    const auto check = given.latitude && given.longitude && given.north && given.east
                           ? checkDegrees(*given.latitude, *given.longitude)
                           : DegreesCheck::outOfRange;
    if (check == DegreesCheck::outOfRange || check == DegreesCheck::swapped) {
        out.status = PhotoPositionStatus::unreadable;
        note(kind::unreadablePosition, given.tag, given.text, {});
        return;
    }
    if (check == DegreesCheck::nullIsland) {
        out.status = PhotoPositionStatus::noFix;
        note(kind::nullIsland, given.tag, given.text, {});
        return;
    }
    const bool letters = *given.north != 0 && *given.east != 0;
    out.latitude = *given.latitude * (letters ? *given.north : 1);
    out.longitude = *given.longitude * (letters ? *given.east : 1);
    if (!letters) {
        out.status = PhotoPositionStatus::noHemisphere;
        note(kind::noHemisphere, given.tag, given.text, numberText(out.latitude) + " " + numberText(out.longitude));
        return;
    }
    out.status = xmp ? PhotoPositionStatus::readFromXmp : PhotoPositionStatus::read;
    if (xmp)
        note(kind::positionFromXmp, given.tag, given.text, {});
}

Given givenInXmp(const Tags& tags)
{
    const auto latitude = xmpDegrees(tags.xmpLatitude, 'N', 'S');
    const auto longitude = xmpDegrees(tags.xmpLongitude, 'E', 'W');
    Given given{{}, {}, {}, {}, tags.xmpLatitude + ", " + tags.xmpLongitude, "XMP GPSLatitude"};
    if (latitude && longitude)
        given = {latitude->degrees, longitude->degrees, latitude->sign, longitude->sign, given.text, given.tag};
    return given;
}

Given givenInExif(const Tags& tags)
{
    return {degreesOf(tags.latitude),
            degreesOf(tags.longitude),
            signOf(tags.latitudeRef, 'N', 'S'),
            signOf(tags.longitudeRef, 'E', 'W'),
            tags.latitude.text + tags.latitudeRef + ", " + tags.longitude.text + tags.longitudeRef,
            "GPSLatitude"};
}

} // namespace

PhotoPosition positionOf(const Tags& tags, const Notes& note)
{
    PhotoPosition out;
    if (tags.altitude.state == State::read && tags.altitude.parts.size() == 1)
        out.altitudeMetres = (tags.belowSea ? -1 : 1) * tags.altitude.parts.front();
    else if (!tags.xmpAltitude.empty())
        out.altitudeMetres = xmpAltitude(tags);
    if (isThere(tags.latitude) || isThere(tags.longitude))
        judge(givenInExif(tags), false, note, out);
    else if (!tags.xmpLatitude.empty() || !tags.xmpLongitude.empty())
        judge(givenInXmp(tags), true, note, out);
    return out;
}

} // namespace cupule::photo_detail
