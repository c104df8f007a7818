// Weighing the answers: who is left, what speaks for the host, what against, and what is lacking.

#include <algorithm>

#include "core/rules/host_key.h"
#include "core/rules/host_weighed.h"

namespace cupule {

namespace {

bool isDiagnostic(Mark mark)
{
    return mark == Mark::diagnostic || mark == Mark::pointsToOtherHost;
}

const char* whyNotCounted(const CharacterSeen& seen, const Character& character)
{
    if (!character.onGroundToo)
        return "ground-not-accepted";
    return seen.otherTreeNear ? "ground-other-tree" : "ground-not-asked";
}

void addOnce(std::vector<std::string>& list, const std::string& text)
{
    if (std::find(list.begin(), list.end(), text) == list.end())
        list.push_back(text);
}

} // namespace

bool HostKey::isBare(const HostContext& context) const
{
    const Character* margin = m_pack->character(m_pack->marginCharacter);
    return margin != nullptr && !seenInMonth(margin->visible, context, false);
}

bool HostKey::confirmsBareTree(const Spoken& spoken, const HostContext& context) const
{
    const Character& character = *spoken.entry->character;
    if (!character.showsWithoutLeaves)
        return false;
    return spoken.seen->onGround || isDiagnostic(spoken.mark) ||
           seenInMonth(character.visible, context, false);
}

HostKey::Weighed HostKey::weigh(std::span<const Spoken> spoken, const HostContext& context) const
{
    Weighed weighed;
    weighed.bare = isBare(context);
    Kinds hosts = m_hosts;
    Kinds others = m_all & ~m_hosts;
    for (const Spoken& one : spoken) {
        if (!one.counted)
            continue;
        const Kinds possible = one.shownBy | ~one.entry->rows;
        if (one.mark == Mark::contradicts) {
            weighed.against |= one.entry->organ;
            const bool rulesOut =
                one.state >= 0 && one.entry->states[static_cast<std::size_t>(one.state)].rulesOut;
            weighed.ruledOut = weighed.ruledOut || (rulesOut && !one.seen->onGround);
            others &= possible;
        } else if ((one.shownBy & m_hosts) != 0) {
            weighed.organs |= one.entry->organ;
            weighed.diagnostic = weighed.diagnostic || isDiagnostic(one.mark);
            weighed.uncountedMargin = weighed.uncountedMargin || one.uncountedMargin;
            weighed.beyondMargin = weighed.beyondMargin || !one.entry->ofMargin;
            weighed.bareConfirmed = weighed.bareConfirmed || confirmsBareTree(one, context);
            others &= possible;
            hosts &= possible;
        }
    }
    // Answers that point to different species still point to the genus.
    weighed.left = others | (hosts == 0 ? m_hosts : hosts);
    decide(weighed);
    return weighed;
}

void HostKey::decide(Weighed& weighed) const
{
    if (weighed.ruledOut || weighed.twoAgainst()) {
        weighed.answer = HostAnswer::notHost;
        weighed.left &= ~m_hosts;
        return;
    }
    const bool onlyHosts = (weighed.left & ~m_hosts) == 0;
    const bool enough = weighed.twoOrgans() && weighed.diagnostic && weighed.beyondMargin && onlyHosts;
    if (weighed.against == 0 && enough && (!weighed.bare || weighed.bareConfirmed))
        weighed.answer = HostAnswer::host;
}

std::vector<std::string> HostKey::deciders(std::span<const Spoken> spoken, const Weighed& weighed) const
{
    std::vector<std::string> ids;
    for (const Spoken& one : spoken) {
        if (!one.counted)
            continue;
        const bool contradicts = one.mark == Mark::contradicts;
        const bool rulesOut = contradicts && one.state >= 0 && !one.seen->onGround &&
                              one.entry->states[static_cast<std::size_t>(one.state)].rulesOut;
        const bool takesOut = (one.entry->rows & ~one.shownBy & ~m_hosts) != 0;
        const bool forHost = (one.shownBy & m_hosts) != 0 && (isDiagnostic(one.mark) || takesOut);
        const bool against = weighed.ruledOut ? rulesOut : contradicts;
        if (weighed.answer == HostAnswer::host ? forHost : against)
            addOnce(ids, one.entry->character->id);
    }
    return ids;
}

HostVerdict HostKey::judge(std::span<const CharacterSeen> seen, const HostContext& context) const
{
    const std::vector<Spoken> spoken = speak(seen);
    const Weighed weighed = weigh(spoken, context);
    HostVerdict verdict;
    verdict.answer = weighed.answer;
    verdict.evidence.reserve(spoken.size());
    for (const Spoken& one : spoken) {
        const Character& character = *one.entry->character;
        verdict.evidence.push_back({character.id, one.seen->state, one.value, one.mark, one.counted,
                                    one.counted ? "" : whyNotCounted(*one.seen, character)});
        if (one.counted && one.mark == Mark::contradicts)
            addOnce(verdict.contradictions, character.id);
    }
    verdict.kindsLeft = names(weighed.left);
    if (weighed.answer != HostAnswer::cannotTell) {
        verdict.decidedBy = deciders(spoken, weighed);
        return verdict;
    }
    const auto lacks = [&](bool lacking, const char* code) {
        if (lacking)
            verdict.lacking.emplace_back(code);
    };
    lacks(weighed.against != 0, "contradiction");
    lacks(!weighed.twoOrgans(), "two-organs");
    lacks(!weighed.diagnostic, "diagnostic");
    lacks(!weighed.diagnostic && weighed.uncountedMargin, "counted-margin");
    lacks(weighed.organs != 0 && !weighed.beyondMargin, "margin-alone");
    lacks(weighed.bare && !weighed.bareConfirmed, "winter-organ");
    lacks((weighed.left & ~m_hosts) != 0, "kinds-left");
    return verdict;
}

HostAnswer HostKey::answer(std::span<const CharacterSeen> seen, const HostContext& context) const
{
    return weigh(speak(seen), context).answer;
}

HostVerdict judgeHost(std::span<const CharacterSeen> seen, const Pack& pack, const HostContext& context)
{
    const HostKey key(pack);
    HostVerdict verdict = key.judge(seen, context);
    verdict.next = key.next(seen, context);
    return verdict;
}

} // namespace cupule
