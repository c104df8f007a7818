// ISO 6709 point strings (annex H) and the coordinates of geo: URIs.
//
// Sources: ISO 6709:2008, annex H; RFC 5870.

#include "core/position/notation_detail.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"

namespace cupule::notation {

namespace {

/// A signed run of digits with an optional point.
struct Part {
    bool negative = false;
    std::string_view digits; ///< with the point
    std::size_t whole = 0;   ///< digits before the point
    [[nodiscard]] int decimals() const
    {
        return digits.size() > whole + 1 ? static_cast<int>(digits.size() - whole - 1) : 0;
    }
};

std::optional<Part> takePart(std::string_view& text)
{
    if (text.size() < 2 || (text[0] != '+' && text[0] != '-'))
        return std::nullopt;
    Part part{text[0] == '-', text.substr(1), 0};
    const std::size_t end = std::min(part.digits.find_first_not_of("0123456789."), part.digits.size());
    part.digits = part.digits.substr(0, end);
    part.whole = std::min(part.digits.find('.'), part.digits.size());
    if (part.whole == 0 || !parseNumber(part.digits))
        return std::nullopt;
    text.remove_prefix(1 + end);
    return part;
}

struct Degrees {
    double value = 0;
    double unit = 1;
};

/// The digits before the point select degrees, degrees and minutes, or degrees, minutes and seconds.
Result<Degrees> degreesOf(const Part& part, std::size_t degreeDigits)
{
    const double number = *parseNumber(part.digits);
    const double unit = lastPlace(part.decimals());
    const auto signedValue = [&](double value) { return part.negative ? -value : value; };
    if (part.whole == degreeDigits)
        return Degrees{signedValue(number), unit};
    const bool seconds = part.whole == degreeDigits + 4;
    const double scale = seconds ? 10'000 : 100;
    const double degrees = std::floor(number / scale);
    const double minutes = seconds ? std::floor((number - degrees * scale) / 100) : number - degrees * scale;
    const double second = seconds ? number - degrees * scale - minutes * 100 : 0;
    if (minutes >= 60)
        return refuse("minutes-out-of-range");
    if (second >= 60)
        return refuse("seconds-out-of-range");
    return Degrees{signedValue((degrees * 3600 + minutes * 60 + second) / 3600),
                   unit / (seconds ? 3600 : 60)};
}

bool isKnownSystem(std::string_view name)
{
    std::string plain;
    for (const char c : name)
        if (c != '_' && c != ':' && c != '-' && c != ' ')
            plain += c;
    return plain == "WGS84" || plain == "ETRS89" || plain == "EPSG4326" || plain == "EPSG4258" ||
           plain == "EPSG4979";
}

Result<ParsedPosition> readWidths(const Part& latitude, const Part& longitude, bool closed)
{
    const bool form = latitude.whole == 2 || latitude.whole == 4 || latitude.whole == 6;
    if (!form || longitude.whole != latitude.whole + 1) {
        // Without the closing solidus it need not be ISO 6709: plain signed degrees.
        if (closed)
            return refuse("iso6709-width");
        const auto plain = [](const Part& p) { return *parseNumber(p.digits) * (p.negative ? -1 : 1); };
        return geographic(plain(latitude), plain(longitude), lastPlace(latitude.decimals()),
                          lastPlace(longitude.decimals()));
    }
    const auto north = degreesOf(latitude, 2);
    if (!north)
        return fail(north.error());
    const auto east = degreesOf(longitude, 3);
    if (!east)
        return fail(east.error());
    return geographic(north->value, east->value, north->unit, east->unit);
}

} // namespace

std::optional<Result<ParsedPosition>> readIso6709(std::string_view text)
{
    const auto latitude = takePart(text);
    if (!latitude)
        return std::nullopt;
    const auto longitude = takePart(text);
    if (!longitude)
        return std::nullopt;
    takePart(text); // a height is kept with the typed text and not trusted
    const bool closed = text.ends_with('/');
    if (closed)
        text.remove_suffix(1);
    if (text.starts_with("CRS") && !isKnownSystem(text.substr(3)))
        return refuse("unknown-system");
    if (!text.empty() && !text.starts_with("CRS"))
        return std::nullopt;
    return readWidths(*latitude, *longitude, closed);
}

Result<ParsedPosition> readGeoUri(std::string_view text)
{
    const std::size_t parametersAt = std::min(text.find(';'), text.size());
    const auto coordinates = split(text.substr(0, parametersAt), ',');
    if (coordinates.size() < 2 || coordinates.size() > 3)
        return refuse("not-a-grid-reference");
    const auto latitude = parseNumber(coordinates[0]);
    const auto longitude = parseNumber(coordinates[1]);
    if (!latitude || !longitude)
        return refuse("not-a-grid-reference");
    const auto unitOf = [](std::string_view number) {
        const std::size_t point = number.find('.');
        return lastPlace(point == std::string_view::npos ? 0 : static_cast<int>(number.size() - point - 1));
    };
    auto parsed = geographic(*latitude, *longitude, unitOf(coordinates[0]), unitOf(coordinates[1]));
    if (!parsed)
        return parsed;
    for (const auto& parameter : split(text.substr(parametersAt), ';')) {
        if (parameter.starts_with("CRS=") && !isKnownSystem(std::string_view(parameter).substr(4)))
            return refuse("unknown-system");
        if (parameter.starts_with("U="))
            if (const auto stated = parseNumber(std::string_view(parameter).substr(2));
                stated && *stated >= 0)
                parsed->uncertaintyMetres = std::max(parsed->uncertaintyMetres, *stated);
    }
    return parsed;
}

} // namespace cupule::notation
