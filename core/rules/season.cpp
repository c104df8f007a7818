#include "core/rules/season.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace cupule {

namespace {

constexpr int yearDays = 366;

/// Any day number brought into [1, 366].
int wrapped(int day)
{
    return ((day - 1) % yearDays + yearDays) % yearDays + 1;
}

int moveBy(int day, int by)
{
    return day == 0 ? 0 : wrapped(day + by);
}

int share(double factor, int days)
{
    return static_cast<int>(std::lround(factor * days));
}

Window movedWindow(const Window& window, int by)
{
    return {moveBy(window.first, by), moveBy(window.peakFrom, by), moveBy(window.peakTo, by),
            moveBy(window.last, by)};
}

/// Outside a window: still to come, or over? In a window that runs over the new year the nearer end says so.
const char* beforeOrAfter(int day, const Window& window)
{
    if (window.last == 0 || window.first <= window.last)
        return day < window.first ? "not-yet" : "over";
    return window.first - day < day - window.last ? "not-yet" : "over";
}

/// Within a window and outside its peak.
const char* besidePeak(int day, const Window& window)
{
    const int sinceFirst = wrapped(day - window.first + 1);
    const int peak = wrapped(window.peakFrom - window.first + 1);
    return sinceFirst < peak ? "before-peak" : "after-peak";
}

} // namespace

int seasonDay(int month, int day)
{
    static constexpr std::array<int, 12> before{0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335};
    return before.at(static_cast<std::size_t>(month - 1)) + day;
}

int seasonDay(CivilDate date)
{
    return seasonDay(date.month(), date.day());
}

bool inWindow(int day, int first, int last)
{
    if (last == 0)
        return day >= first;
    return first <= last ? day >= first && day <= last : day >= first || day <= last;
}

UsedShift usedShift(int observedDays, const Pack& pack)
{
    const int limit = pack.settings.shiftLimitDays;
    const int days = std::clamp(observedDays, -limit, limit);
    return {days, days != observedDays};
}

std::optional<int> leafingShift(CivilDate observed, const std::string& region, const Pack& pack)
{
    const Region* found = pack.region(region);
    if (found == nullptr)
        return std::nullopt;
    const auto reference = CivilDate::parse("2024-" + found->leafingReference);
    if (!reference)
        return std::nullopt;
    return seasonDay(observed) - seasonDay(*reference);
}

int shiftFromHeight(double metresAboveReference, const Pack& pack)
{
    const double days = metresAboveReference / 100 * pack.settings.daysPer100Metres;
    return std::isfinite(days) ? static_cast<int>(std::lround(std::clamp(days, -1000.0, 1000.0))) : 0;
}

SignSeason seasonOf(const Sign& sign, CivilDate date, const SeasonContext& context, const Pack& pack)
{
    SignSeason season;
    if (sign.group == SignGroup::computed) {
        season.reason = "never-answered";
        return season;
    }
    const auto found = sign.windows.find(context.region);
    if (found == sign.windows.end()) {
        season.state = SeasonState::possible;
        season.reason = "no-window";
        return season;
    }
    const int day = seasonDay(date);
    season.published = found->second;
    season.moved =
        movedWindow(season.published, share(sign.shiftFactor, usedShift(context.shiftDays, pack).days));
    const Window& published = season.published;
    const Window& moved = season.moved;
    const bool inPublished = inWindow(day, published.first, published.last);
    const bool inMoved = inWindow(day, moved.first, moved.last);
    if (inWindow(day, moved.peakFrom, moved.peakTo)) {
        season.state = SeasonState::expected;
        season.reason = "peak";
    } else if (inPublished || inMoved) {
        season.state = SeasonState::possible;
        season.reason = inPublished ? besidePeak(day, inMoved ? moved : published) : "moved-window";
    } else if (sign.persists) {
        season.state = SeasonState::possible;
        season.reason = "persists";
    } else {
        season.reason = beforeOrAfter(day, published);
    }
    return season;
}

std::vector<const Sign*> gallLinesInSeason(CivilDate date, const SeasonContext& context, const Pack& pack)
{
    std::vector<const Sign*> lines;
    for (const Sign& sign : pack.signs)
        if (sign.group == SignGroup::gall &&
            seasonOf(sign, date, context, pack).state != SeasonState::outOfSeason)
            lines.push_back(&sign);
    return lines;
}

bool concerns(const SeasonQuestion& question, const CharacterSeen& answer)
{
    const auto among = [](const std::vector<std::string>& ids, const std::string& id) {
        return std::find(ids.begin(), ids.end(), id) != ids.end();
    };
    return !answer.notJudged && !answer.onGround && among(question.characters, answer.character) &&
           (question.states.empty() || among(question.states, answer.state));
}

bool isAsked(const SeasonQuestion& question, CivilDate date, const SeasonContext& context, const Pack& pack)
{
    if (question.quietOutside.empty())
        return true;
    const auto found = question.quietOutside.find(context.region);
    if (found == question.quietOutside.end())
        return false;
    const int day = seasonDay(date);
    const int by = share(question.shiftFactor, usedShift(context.shiftDays, pack).days);
    const Window moved = movedWindow(found->second, by);
    return !inWindow(day, found->second.first, found->second.last) && !inWindow(day, moved.first, moved.last);
}

} // namespace cupule
