#include "core/base/civil.h"

#include <chrono>
#include <cstdlib>

#include <fmt/format.h>

namespace cupule {

namespace {

std::chrono::year_month_day ymd(CivilDate d)
{
    return std::chrono::year_month_day{std::chrono::sys_days{std::chrono::days{d.days}}};
}

/// Reads exactly `count` ASCII digits at `at` and moves past them.
std::optional<int> digits(std::string_view text, std::size_t& at, std::size_t count)
{
    if (at + count > text.size())
        return std::nullopt;
    int value = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const char c = text[at + i];
        if (c < '0' || c > '9')
            return std::nullopt;
        value = value * 10 + (c - '0');
    }
    at += count;
    return value;
}

bool takes(std::string_view text, std::size_t& at, char c)
{
    if (at >= text.size() || text[at] != c)
        return false;
    ++at;
    return true;
}

std::int64_t floorDivide(std::int64_t a, std::int64_t b)
{
    return a / b - (a % b < 0 ? 1 : 0);
}

} // namespace

int CivilDate::year() const
{
    return static_cast<int>(ymd(*this).year());
}
int CivilDate::month() const
{
    return static_cast<int>(static_cast<unsigned>(ymd(*this).month()));
}
int CivilDate::day() const
{
    return static_cast<int>(static_cast<unsigned>(ymd(*this).day()));
}

int CivilDate::dayOfYear() const
{
    return days - make(year(), 1, 1)->days + 1;
}

std::string CivilDate::text() const
{
    return fmt::format("{:04d}-{:02d}-{:02d}", year(), month(), day());
}

std::optional<CivilDate> CivilDate::make(int year, int month, int day)
{
    if (year < 1 || year > 9999 || month < 1 || month > 12 || day < 1 || day > 31)
        return std::nullopt;
    const std::chrono::year_month_day d{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                        std::chrono::day{static_cast<unsigned>(day)}};
    if (!d.ok())
        return std::nullopt;
    return CivilDate{static_cast<std::int32_t>(std::chrono::sys_days{d}.time_since_epoch().count())};
}

Result<CivilDate> CivilDate::parse(std::string_view text)
{
    std::size_t at = 0;
    const auto y = digits(text, at, 4);
    const bool dash1 = y && takes(text, at, '-');
    const auto m = dash1 ? digits(text, at, 2) : std::nullopt;
    const bool dash2 = m && takes(text, at, '-');
    const auto d = dash2 ? digits(text, at, 2) : std::nullopt;
    if (!d || at != text.size())
        return fail("date.form", FaultKind::data, {{"text", std::string(text)}});
    if (const auto date = make(*y, *m, *d))
        return *date;
    return fail("date.impossible", FaultKind::data, {{"text", std::string(text)}});
}

CivilDate CivilDate::of(const Instant& at)
{
    const std::int64_t local = at.utcMilliseconds + at.offsetMinutes.value_or(0) * 60'000LL;
    return CivilDate{static_cast<std::int32_t>(floorDivide(local, 86'400'000))};
}

std::string LocalTime::text() const
{
    const int h = secondOfDay / 3600;
    const int m = secondOfDay / 60 % 60;
    const int s = secondOfDay % 60;
    return s == 0 ? fmt::format("{:02d}:{:02d}", h, m) : fmt::format("{:02d}:{:02d}:{:02d}", h, m, s);
}

Result<LocalTime> LocalTime::parse(std::string_view text)
{
    const auto bad = [&] { return fail("time.form", FaultKind::data, {{"text", std::string(text)}}); };
    const auto separator = text.find_first_of(":.");
    if (separator == std::string_view::npos || separator < 1 || separator > 2)
        return bad();
    std::size_t at = 0;
    const auto h = digits(text, at, separator);
    ++at;
    const auto m = digits(text, at, 2);
    std::optional<int> s = 0;
    if (at < text.size()) {
        if (!takes(text, at, text[separator]))
            return bad();
        s = digits(text, at, 2);
    }
    if (!h || !m || !s || at != text.size() || *h > 23 || *m > 59 || *s > 59)
        return bad();
    return LocalTime{*h * 3600 + *m * 60 + *s};
}

std::string instantText(const Instant& at)
{
    const int offset = at.offsetMinutes.value_or(0);
    const std::int64_t local = at.utcMilliseconds + offset * 60'000LL;
    const std::int64_t dayMs = local - floorDivide(local, 86'400'000) * 86'400'000;
    const CivilDate date{static_cast<std::int32_t>(floorDivide(local, 86'400'000))};
    std::string out = fmt::format("{}T{:02d}:{:02d}:{:02d}", date.text(), dayMs / 3'600'000, dayMs / 60'000 % 60,
                                  dayMs / 1000 % 60);
    if (dayMs % 1000 != 0)
        out += fmt::format(".{:03d}", dayMs % 1000);
    if (offset == 0)
        return out + "Z";
    return out + fmt::format("{}{:02d}:{:02d}", offset < 0 ? '-' : '+', std::abs(offset) / 60, std::abs(offset) % 60);
}

namespace {

/// ".5", ".123456": whole milliseconds, the rest cut off. Nothing where no digit follows the point.
std::optional<int> fraction(std::string_view text, std::size_t& at)
{
    if (!takes(text, at, '.'))
        return 0;
    int milliseconds = 0;
    int place = 100;
    const std::size_t first = at;
    for (; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at) {
        milliseconds += (text[at] - '0') * place;
        place /= 10;
    }
    if (at == first)
        return std::nullopt;
    return milliseconds;
}

std::optional<int> offsetMinutes(std::string_view text, std::size_t& at)
{
    if (takes(text, at, 'Z') || takes(text, at, 'z'))
        return 0;
    const bool minus = at < text.size() && text[at] == '-';
    if (!takes(text, at, '+') && !takes(text, at, '-'))
        return std::nullopt;
    const auto h = digits(text, at, 2);
    takes(text, at, ':');
    const auto m = digits(text, at, 2);
    if (!h || !m || *h > 18 || *m > 59)
        return std::nullopt;
    return (minus ? -1 : 1) * (*h * 60 + *m);
}

} // namespace

Result<Instant> parseInstant(std::string_view text)
{
    const auto bad = [&](const char* code) {
        return fail(code, FaultKind::data, {{"text", std::string(text)}});
    };
    if (text.size() < 19 || (text[10] != 'T' && text[10] != 't' && text[10] != ' '))
        return bad("instant.form");
    const auto date = CivilDate::parse(text.substr(0, 10));
    if (!date)
        return tl::unexpected<Fault>(date.error());
    std::size_t at = 11;
    const auto h = digits(text, at, 2);
    const bool colon1 = takes(text, at, ':');
    const auto m = digits(text, at, 2);
    const bool colon2 = takes(text, at, ':');
    const auto s = digits(text, at, 2);
    if (!h || !colon1 || !m || !colon2 || !s || *h > 23 || *m > 59 || *s > 60)
        return bad("instant.form");
    const auto ms = fraction(text, at);
    if (!ms)
        return bad("instant.form");
    if (at == text.size())
        return bad("instant.zone");
    const auto offset = offsetMinutes(text, at);
    if (!offset || at != text.size())
        return bad("instant.form");
    const std::int64_t local = date->days * 86'400'000LL + *h * 3'600'000LL + *m * 60'000LL + *s * 1000LL + *ms;
    return Instant{local - *offset * 60'000LL, *offset};
}

} // namespace cupule
