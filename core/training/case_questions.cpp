#include "core/training/case_questions.h"

#include <algorithm>

#include "core/rules/season.h"
#include "core/training/case_signs.h"
#include "core/training/custody_order.h"
#include "core/training/walk.h"

namespace cupule {

namespace {

constexpr std::size_t signsAsked = 4;
constexpr std::size_t looksOffered = 4;

bool has(const std::vector<std::string>& list, std::string_view one)
{
    return std::ranges::find(list, one) != list.end();
}

template <class T>
void shuffle(std::vector<T>& list, Dice& dice)
{
    for (std::size_t i = list.size(); i > 1; --i)
        std::swap(list[i - 1], list[static_cast<std::size_t>(dice.whole(0, static_cast<int>(i) - 1))]);
}

AskedItem yesOrNo(AskedKind kind, std::string subject, std::string_view right, std::vector<std::string> because)
{
    AskedItem item{kind, std::move(subject), {std::string(saidYes), std::string(saidNo), std::string(saidNotJudged)}, {std::string(right)}, std::move(because)};
    return item;
}

class Asker {
public:
    Asker(const Pack& pack, const PracticeCase& practice, const std::set<AskedKind>& kinds, Dice& dice)
        : m_pack(pack), m_case(practice), m_kinds(kinds), m_dice(dice)
    {
    }

    std::vector<AskedItem> ask()
    {
        if (wants(AskedKind::host))
            host();
        if (wants(AskedKind::character))
            character();
        if (wants(AskedKind::look))
            look();
        if (wants(AskedKind::sign))
            signs();
        if (wants(AskedKind::record))
            record();
        if (wants(AskedKind::conclude))
            conclude();
        if (wants(AskedKind::order))
            order();
        return std::move(m_items);
    }

private:
    bool wants(AskedKind kind) const { return m_kinds.empty() || m_kinds.contains(kind); }
    bool about(AskedKind kind) const { return m_case.topic.kind == kind; }

    void host()
    {
        const HostVerdict& verdict = m_case.verdict;
        std::string_view right = saidNotJudged;
        if (verdict.answer != HostAnswer::cannotTell)
            right = verdict.answer == HostAnswer::host ? saidYes : saidNo;
        m_items.push_back(yesOrNo(AskedKind::host, m_case.taxon, right, verdict.answer == HostAnswer::cannotTell ? verdict.lacking : verdict.decidedBy));
    }

    /// What speaks by itself: characters that only a host has, or that no host has.
    std::vector<std::string> deciders() const
    {
        const bool isHost = m_case.verdict.answer == HostAnswer::host;
        std::vector<std::string> found;
        for (const HostEvidence& evidence : m_case.verdict.evidence) {
            const bool forHost = evidence.mark == Mark::diagnostic || evidence.mark == Mark::pointsToOtherHost;
            if (evidence.counted && (isHost ? forHost : evidence.mark == Mark::contradicts) && !has(found, evidence.character))
                found.push_back(evidence.character);
        }
        return found;
    }

    void character()
    {
        if (m_case.verdict.answer == HostAnswer::cannotTell || m_case.shows.size() < 2)
            return;
        AskedItem item{AskedKind::character, "character", {}, deciders(), {}};
        item.because = item.right;
        for (const CharacterSeen& seen : m_case.shows)
            item.options.push_back(seen.character);
        if (item.right.empty() || item.right.size() == item.options.size())
            return;
        item.options.emplace_back(saidNotJudged);
        m_items.push_back(std::move(item));
    }

    // ---------------------------------------------------------------- signs

    bool isGallDrawn() const
    {
        return std::ranges::any_of(m_case.drawings, [](const CaseDrawing& drawing) { return !drawing.depiction.galls.empty(); });
    }

    bool couldBeSeen(const std::string& sign) const
    {
        if (sign == "S06")
            return isGallDrawn();
        return std::ranges::any_of(m_case.drawings, [&](const CaseDrawing& drawing) { return couldShow(drawing.depiction, sign); });
    }

    bool mayBeAsked(const Sign& sign) const
    {
        const auto drawn = drawnSigns();
        const bool ruledOut = m_case.verdict.answer == HostAnswer::notHost;
        if (sign.id == "S06" && !isGallDrawn())
            return false;
        return sign.onChecklist && std::ranges::find(drawn, sign.id) != drawn.end() && (!ruledOut || sign.onRuledOutTree)
               && seasonOf(sign, m_case.date, {m_case.region, 0}, m_pack).state != SeasonState::outOfSeason;
    }

    std::string_view truthOf(const std::string& sign) const
    {
        if (has(m_case.signs, sign))
            return saidYes;
        return couldBeSeen(sign) ? saidNo : saidNotJudged;
    }

    /// The topic's sign, those that are there, then others by lot; from the third step on also one that no drawing could show.
    void signs()
    {
        std::vector<std::string> there, absent, hidden;
        for (const Sign& sign : m_pack.signs) {
            if (!mayBeAsked(sign))
                continue;
            const std::string_view truth = truthOf(sign.id);
            (truth == saidYes ? there : truth == saidNo ? absent : hidden).push_back(sign.id);
        }
        shuffle(there, m_dice);
        shuffle(absent, m_dice);
        shuffle(hidden, m_dice);
        std::vector<std::string> chosen;
        for (const auto* list : {&there, &absent})
            if (about(AskedKind::sign) && has(*list, m_case.topic.subject))
                chosen.push_back(m_case.topic.subject);
        const std::size_t most = signsAsked - (m_case.step >= 3 && !hidden.empty() ? 1 : 0);
        for (const auto* list : {&there, &absent})
            for (const std::string& sign : *list)
                if (chosen.size() < most && !has(chosen, sign))
                    chosen.push_back(sign);
        if (most < signsAsked)
            chosen.push_back(hidden.front());
        std::ranges::sort(chosen);
        for (const std::string& sign : chosen)
            m_items.push_back(yesOrNo(AskedKind::sign, sign, truthOf(sign), {sign}));
    }

    /// Of the first drawing.
    void look()
    {
        const Depiction& main = m_case.drawings.front().depiction;
        const std::string& sign = m_case.topic.subject;
        const std::vector<std::string> shown = signsShown(main);
        if (!about(AskedKind::look) || !has(shown, sign))
            return;
        std::vector<std::string> others;
        for (const std::string_view each : drawnSigns())
            if (!has(shown, each) && each != "S06" && couldShow(main, each))
                others.emplace_back(each);
        shuffle(others, m_dice);
        AskedItem item{AskedKind::look, sign, {sign}, {sign}, {sign}};
        for (const std::string& other : others)
            if (item.options.size() < looksOffered)
                item.options.push_back(other);
        std::ranges::sort(item.options);
        item.options.emplace_back("none");
        item.options.emplace_back(saidNotJudged);
        m_items.push_back(std::move(item));
    }

    // ---------------------------------------------------------------- what follows

    bool isPositive() const
    {
        Visit visit;
        visit.date = m_case.date;
        for (const std::string& sign : m_case.signs) {
            Observation seen;
            seen.sign = sign;
            seen.answer = Answer::seen;
            visit.observations.push_back(seen);
        }
        return positiveOf(visit, m_case.verdict.answer, m_pack).positive;
    }

    std::vector<std::string> galls() const
    {
        std::vector<std::string> found;
        for (const std::string& id : m_case.signs)
            if (const Sign* sign = m_pack.sign(id); sign != nullptr && sign->group == SignGroup::gall)
                found.push_back(id);
        return found;
    }

    /// Nothing where the programme has no one answer: no gall, on a tree that may or may not be a host.
    std::string_view rightRecord() const
    {
        if (m_case.verdict.answer == HostAnswer::notHost)
            return "wrong-host";
        if (isPositive())
            return "gall-line";
        if (m_case.verdict.answer != HostAnswer::host)
            return {};
        const auto lines = gallLinesInSeason(m_case.date, {m_case.region, 0}, m_pack);
        if (!std::ranges::all_of(lines, [&](const Sign* line) { return couldBeSeen(line->id); }))
            return "not-all-judged";
        return m_case.signs.empty() ? "nothing" : "other-cause";
    }

    void record()
    {
        const std::string_view right = rightRecord();
        if (right.empty())
            return;
        AskedItem item{AskedKind::record, std::string(right), {"gall-line", "nothing", "not-all-judged", "other-cause", "wrong-host"}, {std::string(right)}, {}};
        item.because = right == "gall-line" ? galls() : right == "wrong-host" ? m_case.verdict.decidedBy : m_case.signs;
        item.options.emplace_back(saidNotJudged);
        m_items.push_back(std::move(item));
    }

    /// One conclusion that may or may not hold, and one that never does.
    void conclude()
    {
        const bool ruledOut = m_case.verdict.answer == HostAnswer::notHost;
        if (ruledOut || m_dice.chance(0.6)) {
            m_items.push_back(yesOrNo(AskedKind::conclude, "find", isPositive() ? saidYes : saidNo, galls()));
        } else {
            const bool most = worthOfDate(m_case.date, {m_case.region, 0}, m_pack) == 'A';
            m_items.push_back(yesOrNo(AskedKind::conclude, "worth-most", most ? saidYes : saidNo, {}));
        }
        std::vector<std::pair<std::string, std::string>> never{{"free", {}}};
        for (const std::string& id : m_case.signs) {
            const std::size_t count = partsOf(m_pack.sign(id)->mustNotConclude).size();
            for (std::size_t i = 0; i < count; ++i)
                never.emplace_back(id + '#' + std::to_string(i), id);
        }
        const auto& [subject, sign] = never[static_cast<std::size_t>(m_dice.whole(0, static_cast<int>(never.size()) - 1))];
        m_items.push_back(yesOrNo(AskedKind::conclude, subject, saidNo, sign.empty() ? std::vector<std::string>{} : std::vector{sign}));
    }

    /// More steps the more difficult. Asked where it is the topic, and of a third of the finds.
    void order()
    {
        if (!about(AskedKind::order) && (!isPositive() || !m_dice.chance(1.0 / 3)))
            return;
        AskedItem item{AskedKind::order, "sample", {}, {}, galls()};
        for (const std::string_view step : custodySteps())
            item.right.emplace_back(step);
        while (item.right.size() > static_cast<std::size_t>(4 + 2 * std::min(m_case.step, 4)))
            item.right.erase(item.right.begin() + m_dice.whole(0, static_cast<int>(item.right.size()) - 1));
        item.options = item.right;
        shuffle(item.options, m_dice);
        m_items.push_back(std::move(item));
    }

    const Pack& m_pack;
    const PracticeCase& m_case;
    const std::set<AskedKind>& m_kinds;
    Dice& m_dice;
    std::vector<AskedItem> m_items;
};

} // namespace

std::vector<AskedItem> questionsOf(const Pack& pack, const PracticeCase& practice, const std::set<AskedKind>& kinds, Dice& dice)
{
    return Asker(pack, practice, kinds, dice).ask();
}

} // namespace cupule
