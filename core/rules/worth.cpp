// What a "nothing seen" is worth: the pack's letter for the half-month, then the conditions, then the host.

#include <cmath>
#include <string_view>

#include "core/rules/season.h"

namespace cupule {

namespace {

constexpr std::size_t halfMonths = 24;

/// The day on which each half-month begins: the 1st and the 16th, counted with a 29 February.
int startOf(std::size_t halfMonth)
{
    return seasonDay(static_cast<int>(halfMonth / 2) + 1, halfMonth % 2 == 0 ? 1 : 16);
}

char oneDown(char letter)
{
    switch (letter) {
    case 'A':
        return 'B';
    case 'B':
        return 'C';
    default:
        return '0';
    }
}

bool isMissing(const WorthCondition& condition, const Visit& visit, const WorthContext& context)
{
    const Effort& effort = visit.effort;
    const std::string& id = condition.id;
    if (id == "minutes")
        return effort.minutes.value_or(0) <= 0;
    if (id == "trees")
        return effort.trees.value_or(0) <= 0;
    if (id == "crown-share")
        return effort.crownPercent.value_or(0) <= 0;
    if (id == "height")
        return effort.heightMetres.value_or(0) <= 0;
    if (id == "binoculars")
        return !effort.binoculars.has_value();
    if (id == "light")
        return effort.light.empty();
    if (id == "leaves")
        return effort.leaves.empty();
    if (id == "inner-crown")
        return !effort.innerCrown.value_or(false);
    if (id == "crown-photo")
        return context.crownPhotos <= 0;
    if (id == "shoot-photo")
        return context.shootPhotos <= 0;
    return id == "host" && context.host != HostAnswer::host;
}

void setLetter(Worth& worth, char letter, const char* reason)
{
    if (letter != worth.letter) {
        worth.letter = letter;
        worth.reason = reason;
    }
}

/// Worse letters come later in "ABC0".
char worse(char a, char b)
{
    static constexpr std::string_view order = "ABC0";
    return order.find(a) > order.find(b) ? a : b;
}

} // namespace

char worthOfDate(CivilDate date, const SeasonContext& context, const Pack& pack)
{
    const auto row = pack.worth.find(context.region);
    if (row == pack.worth.end())
        return '0';
    const int day = seasonDay(date);
    const int shift = usedShift(context.shiftDays, pack).days;
    char letter = row->second.letters.front();
    for (std::size_t i = 0; i < halfMonths; ++i)
        if (day >= startOf(i) + static_cast<int>(std::lround(row->second.startMoves.at(i) * shift)))
            letter = row->second.letters.at(i);
    return letter;
}

Worth worthOf(const Visit& visit, const WorthContext& context, const Pack& pack)
{
    Worth worth;
    worth.calendar = worthOfDate(visit.date, {context.season.region, 0}, pack);
    worth.shifted = worthOfDate(visit.date, context.season, pack);
    if (const auto row = pack.worth.find(context.season.region); row != pack.worth.end())
        worth.why = row->second.why.at(static_cast<std::size_t>(visit.date.month() - 1));
    bool essentialMissing = false;
    bool othersMissing = false;
    for (const WorthCondition& condition : pack.worthConditions) {
        if (!isMissing(condition, visit, context))
            continue;
        worth.missing.push_back(condition.id);
        essentialMissing = essentialMissing || condition.essential;
        othersMissing = othersMissing || condition.id != "host";
    }
    worth.letter = worth.shifted;
    worth.reason = "calendar";
    if (othersMissing)
        setLetter(worth, oneDown(worth.letter), "conditions");
    if (context.host == HostAnswer::cannotTell)
        setLetter(worth, worse(worth.letter, 'C'), "host-open");
    if (essentialMissing)
        setLetter(worth, '0', "no-effort");
    worth.ifNothing = context.host == HostAnswer::notHost ? '0' : worth.letter;
    if (context.host == HostAnswer::notHost || !nothingSeen(visit, context.season, pack)) {
        worth.letter = '0';
        worth.reason = context.host == HostAnswer::notHost ? "host-ruled-out" : "not-a-null";
    }
    return worth;
}

} // namespace cupule
