// Runs the rules over one visit: what several of them need is looked up once.

#include <array>

#include "core/rules/checks/check_detail.h"

namespace cupule {

namespace {

constexpr std::size_t few = 48; ///< answers for which no memory is taken

/// Finds ids in one of the pack's lists. Answers mostly come in the list's order, so it looks on from the
/// last hit.
template <class Item> class Lookup {
public:
    explicit Lookup(const std::vector<Item>& items) : m_items(items) {}

    const Item* find(const std::string& id)
    {
        const std::size_t size = m_items.size();
        for (std::size_t step = 0; step < size; ++step, ++m_next) {
            if (m_next >= size)
                m_next = 0;
            if (m_items[m_next].id == id)
                return &m_items[m_next++];
        }
        return nullptr;
    }

private:
    const std::vector<Item>& m_items;
    std::size_t m_next = 0;
};

/// One pointer into the pack for each answer.
template <class Item> class Looked {
public:
    template <class Answers, class IdOf>
    Looked(const Answers& answers, const std::vector<Item>& items, IdOf idOf)
    {
        if (answers.size() > few)
            m_many.resize(answers.size());
        m_all = answers.size() > few ? std::span(m_many) : std::span(m_few).first(answers.size());
        Lookup<Item> lookup(items);
        for (std::size_t i = 0; i < answers.size(); ++i)
            m_all[i] = lookup.find(idOf(answers[i]));
    }
    Looked(const Looked&) = delete;
    Looked& operator=(const Looked&) = delete;

    [[nodiscard]] std::span<const Item* const> all() const { return m_all; }

private:
    std::array<const Item*, few> m_few;
    std::vector<const Item*> m_many;
    std::span<const Item*> m_all;
};

} // namespace

namespace checks {

bool countsSomething(const Observation& observation, const Pack& pack)
{
    if (observation.count.value_or(0) > 0 || observation.measure.value_or(0) > 0)
        return true;
    if (observation.countClass.empty())
        return false;
    for (const CountClass& each : pack.countClasses)
        if (each.id == observation.countClass)
            return each.from > 0;
    return false;
}

} // namespace checks

std::vector<Finding> checkVisit(const Visit& visit, const CheckContext& context, const HostVerdict& host)
{
    const Pack& pack = *context.pack;
    const Looked<Sign> signs(
        visit.observations, pack.signs, [](const Observation& o) -> auto& { return o.sign; });
    const Looked<Character> characters(
        visit.characters, pack.characters, [](const CharacterSeen& c) -> auto& { return c.character; });
    const Positive positive = positiveOf(visit, host.answer, pack);
    CheckInput input{visit,       context,          host, positive, nothingSeen(visit, context.season, pack),
                     signs.all(), characters.all(), false};
    for (std::size_t i = 0; i < input.signs.size(); ++i)
        if (input.signs[i] && visit.observations[i].answer == Answer::seen)
            input.gallSeen |= checks::isFindGroup(input.signs[i]->group);

    std::vector<Finding> findings;
    for (const Check& check : allChecks())
        check.run(input, findings);
    sortFindings(findings);
    return findings;
}

std::vector<Finding> checkVisit(const Visit& visit, const CheckContext& context)
{
    const HostContext hostContext{context.season.region, visit.date.month()};
    return checkVisit(visit, context, judgeHost(visit.characters, *context.pack, hostContext));
}

} // namespace cupule
