// Which character to look at next: the expected information about host or not host (Shannon, 1948, "A
// mathematical theory of communication", section 6), over the kinds of tree still possible, each with equal
// weight.
//
//  - Each kind shows each of its states with equal chance; a value is spread evenly over the kind's range.
//  - A kind without a row may show anything that the others left show, and so tells nothing.
//  - Where no kind but hosts is left, what would still complete the evidence is named, with no information.

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>

#include "core/rules/host_key.h"
#include "core/rules/host_weighed.h"

namespace cupule {

namespace {

constexpr std::size_t mostOutcomes = 64;

double entropyBits(double share)
{
    if (share <= 0 || share >= 1)
        return 0;
    return -share * std::log2(share) - (1 - share) * std::log2(1 - share);
}

} // namespace

/// How often each outcome is met among hosts and among the others, in kinds.
struct HostKey::Outcomes {
    std::array<double, mostOutcomes> hosts{}, others{};

    void add(std::size_t outcome, bool host, double share) { (host ? hosts : others).at(outcome) += share; }

    /// Kinds without a row, as many hosts and others as said, follow the mixture of the `known` ones.
    void addUnknown(double known, double unknownHosts, double unknownOthers)
    {
        for (std::size_t i = 0; i < mostOutcomes; ++i) {
            const double mixture = (hosts.at(i) + others.at(i)) / known;
            hosts.at(i) += unknownHosts * mixture;
            others.at(i) += unknownOthers * mixture;
        }
    }

    [[nodiscard]] double information() const
    {
        double host = 0, all = 0, rest = 0;
        for (std::size_t i = 0; i < mostOutcomes; ++i) {
            const double here = hosts.at(i) + others.at(i);
            host += hosts.at(i);
            all += here;
            if (here > 0)
                rest += here * entropyBits(hosts.at(i) / here);
        }
        return all > 0 ? entropyBits(host / all) - rest / all : 0;
    }
};

namespace {

/// One kind's share of each outcome in [from, to) for which `shows` holds; false where there is none.
template <class Outcomes, class Shows>
bool spread(Outcomes& outcomes, bool host, std::size_t from, std::size_t to, Shows shows)
{
    double count = 0;
    for (std::size_t i = from; i < to; ++i)
        count += shows(i) ? 1 : 0;
    for (std::size_t i = from; count > 0 && i < to; ++i)
        if (shows(i))
            outcomes.add(i, host, 1 / count);
    return count > 0;
}

/// Values cut into equal steps between the lowest and the highest that any kind shows.
class Steps {
public:
    Steps(double lowest, double highest) : m_lowest(lowest), m_width(highest - lowest) {}

    [[nodiscard]] std::size_t of(double value) const
    {
        const double share = m_width > 0 ? (value - m_lowest) / m_width : 0;
        const double step = std::floor(share * static_cast<double>(mostOutcomes));
        return static_cast<std::size_t>(std::clamp(step, 0.0, static_cast<double>(mostOutcomes - 1)));
    }

private:
    double m_lowest, m_width;
};

} // namespace

double HostKey::bits(const Entry& entry, Kinds left) const
{
    Outcomes outcomes;
    Kinds known = 0;
    for (Kinds rest = left & entry.rows; rest != 0 && !entry.states.empty(); rest &= rest - 1) {
        const Kinds bit = rest & (~rest + 1);
        const auto shows = [&](std::size_t i) { return (entry.states[i].shownBy & bit) != 0; };
        const std::size_t states = std::min(entry.states.size(), mostOutcomes);
        if (spread(outcomes, (bit & m_hosts) != 0, 0, states, shows))
            known |= bit;
    }
    if (entry.states.empty())
        known = spreadValues(entry, left, outcomes);
    if (known == 0)
        return 0;
    const Kinds unknown = left & ~known;
    outcomes.addUnknown(std::popcount(known), std::popcount(unknown & m_hosts),
                        std::popcount(unknown & ~m_hosts));
    return outcomes.information();
}

HostKey::Kinds HostKey::spreadValues(const Entry& entry, Kinds left, Outcomes& outcomes) const
{
    double lowest = entry.character->hardMax, highest = entry.character->hardMin;
    for (const Range& range : entry.ranges) {
        lowest = std::min(lowest, std::max(range.min, entry.character->hardMin));
        highest = std::max(highest, std::min(range.max, entry.character->hardMax));
    }
    const Steps steps(lowest, highest);
    Kinds known = 0;
    for (const Range& range : entry.ranges) {
        const Kinds bit = Kinds{1} << range.kind;
        if ((bit & left) == 0)
            continue;
        spread(outcomes, (bit & m_hosts) != 0, steps.of(range.min), steps.of(range.max) + 1,
               [](std::size_t) { return true; });
        known |= bit;
    }
    return known;
}

HostKey::Kinds HostKey::toldApart(const Entry& entry, Kinds left) const
{
    Kinds shared = 0; // kinds that show something which a host left shows too
    if (entry.states.empty()) {
        double min = entry.character->hardMax, max = entry.character->hardMin;
        for (const Range& range : entry.ranges)
            if ((((left & m_hosts) >> range.kind) & 1U) != 0) {
                min = std::min(min, range.min);
                max = std::max(max, range.max);
            }
        shared = entry.rows;
        for (const Range& range : entry.ranges)
            if (range.min > max || range.max < min)
                shared &= ~(Kinds{1} << range.kind);
    } else {
        for (const State& state : entry.states)
            if ((state.shownBy & left & m_hosts) != 0)
                shared |= state.shownBy;
    }
    return left & entry.rows & ~shared & ~m_hosts;
}

std::optional<NextCharacter> HostKey::worthOfLooking(const Entry& entry, Kinds left,
                                                     std::span<const CharacterSeen> seen,
                                                     const HostContext& context) const
{
    const Character& character = *entry.character;
    const bool onTree = seenInMonth(character.visible, context, true);
    if (!onTree && !seenInMonth(character.onGround, context, true))
        return std::nullopt;
    NextCharacter found;
    found.character = character.id;
    found.expectedBits = bits(entry, left);
    found.tellsApart = names(toldApart(entry, left));
    std::vector<CharacterSeen> supposed(seen.begin(), seen.end());
    supposed.emplace_back();
    supposed.back().character = character.id;
    if (!onTree) {
        supposed.back().onGround = true;
        supposed.back().otherTreeNear = false;
    }
    bool useful = found.expectedBits > 1e-9;
    for (std::size_t i = 0; i < character.states.size(); ++i) {
        supposed.back().state = character.states[i].id;
        if (weigh(speak(supposed), context).answer == HostAnswer::cannotTell)
            continue;
        found.answersThatDecide.push_back(character.states[i].id);
        useful = useful || (entry.states[i].shownBy & left) != 0;
    }
    return useful ? std::optional(found) : std::nullopt;
}

std::vector<NextCharacter> HostKey::next(std::span<const CharacterSeen> seen,
                                         const HostContext& context) const
{
    std::vector<NextCharacter> found;
    const Weighed weighed = weigh(speak(seen), context);
    if (weighed.answer != HostAnswer::cannotTell)
        return found;
    for (const Entry& entry : m_entries) {
        const bool asked = std::any_of(seen.begin(), seen.end(), [&](const CharacterSeen& one) {
            return one.character == entry.character->id;
        });
        if (asked)
            continue;
        if (auto one = worthOfLooking(entry, weighed.left, seen, context))
            found.push_back(std::move(*one));
    }
    std::stable_sort(found.begin(), found.end(), [](const NextCharacter& a, const NextCharacter& b) {
        const double difference = a.expectedBits - b.expectedBits;
        return std::abs(difference) > 1e-9 ? difference > 0
                                           : a.answersThatDecide.size() > b.answersThatDecide.size();
    });
    return found;
}

} // namespace cupule
