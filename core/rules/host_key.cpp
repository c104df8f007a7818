#include "core/rules/host_key.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/rules/host_weighed.h"

namespace cupule {

namespace {

constexpr std::size_t mostKinds = 64;
constexpr double infinite = std::numeric_limits<double>::infinity();

} // namespace

HostKey::HostKey(const Pack& pack) : m_pack(&pack)
{
    for (std::size_t i = 0; i < pack.kinds.size() && i < mostKinds; ++i) {
        m_kindIndex.emplace(pack.kinds[i].id, i);
        m_all |= Kinds{1} << i;
        if (pack.kinds[i].host)
            m_hosts |= Kinds{1} << i;
    }
    std::vector<std::string_view> organs;
    for (const Character& character : pack.characters) {
        if (!character.decidesHost)
            continue;
        const auto organ = std::find(organs.begin(), organs.end(), character.organ);
        Entry entry;
        entry.character = &character;
        entry.organ = 1U << static_cast<unsigned>((organ - organs.begin()) % 32);
        if (organ == organs.end())
            organs.push_back(character.organ);
        for (const CharacterState& state : character.states)
            entry.states.push_back({0, 0, state.rulesOut});
        const bool measures =
            std::any_of(pack.countedLimits.begin(), pack.countedLimits.end(), [&](const auto& l) {
                return l.character == pack.marginCharacter && l.measuredBy == character.id;
            });
        entry.ofMargin =
            measures || character.id == pack.marginCharacter || character.id == pack.arrangementCharacter;
        m_entries.push_back(std::move(entry));
    }
    for (const KindRow& row : pack.key)
        readRow(row);
}

void HostKey::readRow(const KindRow& row)
{
    Entry* entry = entryOf(row.character);
    const auto kind = m_kindIndex.find(row.kind);
    if (entry == nullptr || kind == m_kindIndex.end())
        return;
    const Kinds bit = Kinds{1} << kind->second;
    entry->rows |= bit;
    const auto has = [](const std::vector<std::string>& ids, const std::string& id) {
        return std::find(ids.begin(), ids.end(), id) != ids.end();
    };
    for (std::size_t i = 0; i < entry->states.size(); ++i) {
        const std::string& id = entry->character->states[i].id;
        if (has(row.states, id))
            entry->states[i].shownBy |= bit;
        if (has(row.states, id) || has(row.groundStates, id))
            entry->states[i].shownFallen |= bit;
    }
    if (row.min || row.max)
        entry->ranges.push_back({kind->second, row.min.value_or(-infinite), row.max.value_or(infinite)});
    switch (row.mark) {
    case Mark::diagnostic:
        entry->diagnostic |= bit;
        break;
    case Mark::diagnosticIfCounted:
        entry->ifCounted |= bit;
        break;
    case Mark::pointsToOtherHost:
        entry->otherHost |= bit;
        break;
    case Mark::contradicts:
        entry->contradicting |= bit;
        break;
    case Mark::shared:
    case Mark::notForHost:
        break;
    }
}

HostKey::Entry* HostKey::entryOf(std::string_view character)
{
    const auto found = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry& entry) { return entry.character->id == character; });
    return found == m_entries.end() ? nullptr : &*found;
}

const HostKey::Entry* HostKey::entryOf(std::string_view character) const
{
    const auto found = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry& entry) { return entry.character->id == character; });
    return found == m_entries.end() ? nullptr : &*found;
}

std::optional<HostKey::Spoken> HostKey::lookUp(const CharacterSeen& seen) const
{
    const Entry* entry = seen.notJudged ? nullptr : entryOf(seen.character);
    if (entry == nullptr)
        return std::nullopt;
    Spoken spoken;
    spoken.seen = &seen;
    spoken.entry = entry;
    if (seen.value && std::isfinite(*seen.value) && !entry->character->unit.empty())
        spoken.value = seen.value;
    if (!seen.state.empty()) {
        const auto& states = entry->character->states;
        const auto found = std::find_if(states.begin(), states.end(),
                                        [&](const CharacterState& state) { return state.id == seen.state; });
        if (found == states.end())
            return std::nullopt;
        spoken.state = static_cast<int>(found - states.begin());
    }
    if (spoken.state < 0 && !spoken.value)
        return std::nullopt;
    if (seen.onGround)
        spoken.counted = entry->character->onGroundToo && seen.otherTreeNear == false;
    spoken.shownBy = fitting(spoken);
    return spoken;
}

HostKey::Kinds HostKey::fitting(const Spoken& spoken)
{
    Kinds kinds = spoken.entry->rows;
    if (spoken.state >= 0) {
        const State& state = spoken.entry->states[static_cast<std::size_t>(spoken.state)];
        kinds = spoken.seen->onGround ? state.shownFallen : state.shownBy;
    }
    if (spoken.value)
        for (const Range& range : spoken.entry->ranges)
            if (*spoken.value < range.min || *spoken.value > range.max)
                kinds &= ~(Kinds{1} << range.kind);
    return kinds;
}

bool HostKey::isCounted(const Entry& entry, std::span<const Spoken> all) const
{
    for (const CountedLimit& limit : m_pack->countedLimits) {
        if (limit.character != entry.character->id)
            continue;
        for (const Spoken& other : all)
            if (other.counted && other.value && *other.value >= limit.atLeast &&
                other.entry->character->id == limit.measuredBy)
                return true;
    }
    return false;
}

void HostKey::setMark(Spoken& spoken, std::span<const Spoken> all) const
{
    const Entry& entry = *spoken.entry;
    const Kinds hosts = spoken.shownBy & m_hosts;
    const bool stated = spoken.state >= 0 || entry.states.empty();
    if (hosts != 0) {
        const bool countable = stated && (hosts & entry.ifCounted) != 0;
        const bool counted = countable && isCounted(entry, all);
        if ((stated && (hosts & entry.diagnostic) != 0) || counted)
            spoken.mark = Mark::diagnostic;
        else if (stated && (hosts & entry.otherHost) != 0)
            spoken.mark = Mark::pointsToOtherHost;
        spoken.uncountedMargin = countable && !counted;
        return;
    }
    const bool rulesOut = spoken.state >= 0 && entry.states[static_cast<std::size_t>(spoken.state)].rulesOut;
    const bool allHostsKnown = (m_hosts & ~entry.rows) == 0;
    const bool allAgainst = spoken.shownBy != 0 && (spoken.shownBy & ~entry.contradicting) == 0;
    if (rulesOut || (allHostsKnown && allAgainst))
        spoken.mark = Mark::contradicts;
}

std::vector<HostKey::Spoken> HostKey::speak(std::span<const CharacterSeen> seen) const
{
    std::vector<Spoken> spoken;
    spoken.reserve(seen.size());
    for (const CharacterSeen& one : seen)
        if (auto found = lookUp(one))
            spoken.push_back(*found);
    for (Spoken& one : spoken)
        setMark(one, spoken);
    return spoken;
}

std::vector<std::string> HostKey::names(Kinds kinds) const
{
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < m_pack->kinds.size() && i < mostKinds; ++i)
        if (((kinds >> i) & 1U) != 0)
            ids.push_back(m_pack->kinds[i].id);
    return ids;
}

bool seenInMonth(const std::map<std::string, Months>& byRegion, const HostContext& context, bool inAny)
{
    if (context.month < 1 || context.month > 12)
        return inAny;
    const auto bit = static_cast<Months>(1U << static_cast<unsigned>(context.month - 1));
    const auto region = byRegion.find(context.region);
    if (region != byRegion.end())
        return (region->second & bit) != 0;
    const auto has = [bit](const auto& entry) { return (entry.second & bit) != 0; };
    return inAny ? std::any_of(byRegion.begin(), byRegion.end(), has)
                 : !byRegion.empty() && std::all_of(byRegion.begin(), byRegion.end(), has);
}

} // namespace cupule
