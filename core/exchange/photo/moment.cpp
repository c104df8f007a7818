#include "core/exchange/photo/moment_detail.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

#include "core/base/text.h"

namespace cupule::photo_detail {

namespace {

constexpr double nearSeconds = 120;          // a fix may be a minute or two older than the picture
constexpr double doubtSeconds = 900;         // with the offset written, the two clocks may differ by this much
constexpr int wholeHoursFrom = -12 * 60;
constexpr int wholeHoursTo = 14 * 60;
// Offsets in use that are no whole hours, in minutes (IANA time zone database, zones in force since 2000).
constexpr std::array oddOffsets = {-570, -210, -150, 210, 270, 330, 345, 390, 525, 570, 630, 690, 765, 825};

struct WrittenMoment {
    CivilDate date;
    LocalTime time;
    int milliseconds = 0;
    std::optional<int> offsetMinutes;
};

/// ".47" or "470000": milliseconds, the rest cut off.
int millisecondsOf(std::string_view digits)
{
    int value = 0;
    int place = 100;
    for (const char c : digits) {
        if (c < '0' || c > '9')
            break;
        value += (c - '0') * place;
        place /= 10;
    }
    return value;
}

/// "+02:00", "-07:00", "Z".
std::optional<int> offsetOf(std::string_view text)
{
    if (text == "Z")
        return 0;
    if (text.size() != 6 || text[3] != ':' || (text[0] != '+' && text[0] != '-'))
        return std::nullopt;
    const auto hours = parseWhole(text.substr(1, 2));
    const auto minutes = parseWhole(text.substr(4, 2));
    if (!hours || !minutes || *hours < 0 || *hours > 18 || *minutes < 0 || *minutes > 59)
        return std::nullopt;
    return (text[0] == '-' ? -1 : 1) * (*hours * 60 + *minutes);
}

/// EXIF "2019:11:28 13:16:00" or XMP "2019-07-14T09:21:11.47+02:00".
std::optional<WrittenMoment> momentOf(std::string_view text)
{
    if (text.size() < 16)
        return std::nullopt;
    std::string date(text.substr(0, 10));
    for (const std::size_t i : {4U, 7U})
        if (date[i] == ':' || date[i] == '/' || date[i] == '.')
            date[i] = '-';
    const auto day = CivilDate::parse(date);
    if (!day || (text[10] != ' ' && text[10] != 'T'))
        return std::nullopt;
    auto rest = text.substr(11);
    const auto end = rest.find_first_not_of("0123456789:");
    const auto time = LocalTime::parse(rest.substr(0, end));
    if (!time)
        return std::nullopt;
    WrittenMoment moment{*day, *time, 0, {}};
    rest.remove_prefix(std::min(end, rest.size()));
    if (rest.starts_with('.')) {
        moment.milliseconds = millisecondsOf(rest.substr(1));
        rest.remove_prefix(std::min(rest.find_first_not_of("0123456789", 1), rest.size()));
    }
    moment.offsetMinutes = offsetOf(rest);
    return rest.empty() || moment.offsetMinutes ? std::optional(moment) : std::nullopt;
}

/// Blanks, colons and zeros: the Exif way of saying "unknown".
bool saysNothing(std::string_view text)
{
    return text.find_first_not_of(" :0") == std::string_view::npos;
}

std::int64_t localMilliseconds(const PhotoTime& time)
{
    return time.date.days * 86'400'000LL + time.time.secondOfDay * 1000LL + time.milliseconds;
}

void take(PhotoTime& out, const WrittenMoment& moment, PhotoTimeSource source)
{
    out.source = source;
    out.date = moment.date;
    out.time = moment.time;
    out.milliseconds = moment.milliseconds;
    out.offsetMinutes = moment.offsetMinutes;
}

void readWritten(const Tags& tags, const Notes& note, PhotoTime& out)
{
    const auto attempt = [&](const std::string& text, PhotoTimeSource source, const char* column) {
        if (out.source != PhotoTimeSource::none || saysNothing(text))
            return;
        if (const auto moment = momentOf(text))
            take(out, *moment, source);
        else
            note(kind::unreadableDate, column, text, {});
    };
    attempt(tags.dateTimeOriginal, PhotoTimeSource::original, "DateTimeOriginal");
    if (out.source == PhotoTimeSource::original) {
        out.milliseconds = millisecondsOf(tags.subSecOriginal);
        out.offsetMinutes = offsetOf(tags.offsetOriginal);
        if (!out.offsetMinutes && !saysNothing(tags.offsetOriginal))
            note(kind::unreadableTime, "OffsetTimeOriginal", tags.offsetOriginal, {});
    }
    attempt(tags.xmpDateTimeOriginal, PhotoTimeSource::xmpOriginal, "XMP DateTimeOriginal");
    attempt(tags.dateTimeDigitized, PhotoTimeSource::digitised, "DateTimeDigitized");
    if (out.source == PhotoTimeSource::digitised)
        note(kind::digitisedTime, "DateTimeDigitized", tags.dateTimeDigitized, {});
}

void readGps(const Tags& tags, const Notes& note, PhotoTime& out)
{
    std::string day = tags.gpsDate;
    if (day.size() == 10)
        std::replace(day.begin(), day.end(), ':', '-');
    const auto date = CivilDate::parse(day);
    if (!date && !saysNothing(tags.gpsDate))
        note(kind::unreadableDate, "GPSDateStamp", tags.gpsDate, {});
    const auto& time = tags.gpsTime;
    if (time.state == Fractions::State::missing || time.state == Fractions::State::empty)
        return;
    const bool good = time.state == Fractions::State::read && time.parts.size() == 3 && time.parts[0] < 24
                      && time.parts[1] < 60 && time.parts[2] < 61;
    if (!good)
        note(kind::unreadableTime, "GPSTimeStamp", time.text, {});
    if (!good || !date)
        return;
    const double seconds = time.parts[0] * 3600 + time.parts[1] * 60 + time.parts[2];
    out.gps = Instant{date->days * 86'400'000LL + std::llround(seconds * 1000), 0};
}

/// The offset in use that is nearest to a difference in seconds.
int nearestOffset(double seconds)
{
    int best = wholeHoursFrom;
    const auto attempt = [&](int minutes) {
        if (std::abs(seconds - minutes * 60.0) < std::abs(seconds - best * 60.0))
            best = minutes;
    };
    for (int minutes = wholeHoursFrom; minutes <= wholeHoursTo; minutes += 60)
        attempt(minutes);
    for (const int minutes : oddOffsets)
        attempt(minutes);
    return best;
}

void compareClocks(const Notes& note, PhotoTime& out)
{
    if (!out.gps || out.source == PhotoTimeSource::none)
        return;
    double ahead = static_cast<double>(localMilliseconds(out) - out.gps->utcMilliseconds) / 1000;
    if (out.offsetMinutes) {
        ahead -= *out.offsetMinutes * 60.0;
        out.clockDoubt = std::abs(ahead) > doubtSeconds;
    } else {
        const int offset = nearestOffset(ahead);
        out.clockDoubt = std::abs(ahead - offset * 60.0) > nearSeconds;
        if (!out.clockDoubt) {
            out.workedOutOffsetMinutes = offset;
            ahead -= offset * 60.0;
        }
    }
    out.secondsAheadOfGps = ahead;
    if (out.clockDoubt)
        note(kind::cameraClock, "DateTimeOriginal", out.date.text() + " " + out.time.text(),
             numberText(std::round(ahead)));
}

} // namespace

PhotoTime timeOf(const Tags& tags, const Notes& note)
{
    PhotoTime out;
    readWritten(tags, note, out);
    readGps(tags, note, out);
    compareClocks(note, out);
    return out;
}

} // namespace cupule::photo_detail
