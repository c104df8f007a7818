#include "core/task/absence.h"

#include <algorithm>
#include <map>

#include "core/survey/sample_size.h"
#include "core/task/skill.h"

namespace cupule {

namespace {

/// What a tree's looks of a year come to.
struct TreeYear {
    std::vector<double> chances;
    int crownPercent = 0;
};

/// Of each observer, asked for once; nothing where none is told.
class Observers {
public:
    Observers(Session& session, DetectionChoice choice) : m_session(session), m_choice(choice) {}
    Result<double> chance(const Uid& observer, char worth)
    {
        const auto known = m_known.find(observer);
        if (known != m_known.end())
            return of(known->second, worth);
        std::optional<DetectionAssumption> measured;
        if (m_choice == DetectionChoice::measured) {
            const auto told = toldSkill(m_session, observer);
            if (!told)
                return fail(told.error());
            if (*told)
                measured = measuredDetection(**told, observer.text());
        }
        return of(m_known.emplace(observer, measured).first->second, worth);
    }
    void count(report::AccountDetection& out) const
    {
        out.people = static_cast<int>(m_known.size());
        std::vector<double> chances;
        for (const auto& [observer, measured] : m_known)
            if (measured)
                chances.push_back(measured->a);
        out.notMeasured = out.people - static_cast<int>(chances.size());
        if (chances.empty())
            return;
        const auto [lowest, highest] = std::minmax_element(chances.begin(), chances.end());
        out.lowest = *lowest;
        out.highest = *highest;
    }

private:
    [[nodiscard]] double of(const std::optional<DetectionAssumption>& measured, char worth) const
    {
        return measured ? measured->of(worth) : m_assumed.of(worth);
    }

    Session& m_session;
    DetectionChoice m_choice;
    DetectionAssumption m_assumed = assumedDetection();
    std::map<Uid, std::optional<DetectionAssumption>> m_known;
};

} // namespace

Result<report::AccountDetection> detectionOf(Session& session, const std::vector<NothingLook>& looks, DetectionChoice choice)
{
    const DetectionAssumption assumed = assumedDetection();
    report::AccountDetection out;
    out.measured = choice == DetectionChoice::measured;
    out.a = assumed.a;
    out.b = assumed.b;
    out.c = assumed.c;
    Observers observers(session, choice);
    std::map<std::pair<Uid, int>, TreeYear> trees;
    for (const NothingLook& look : looks) {
        if (assumed.of(look.worth) == 0)
            continue;
        if (!look.crownPercent) {
            ++out.looksLeftOut;
            continue;
        }
        const auto chance = observers.chance(look.observer, look.worth);
        if (!chance)
            return fail(chance.error());
        TreeYear& tree = trees[{look.tree, look.year}];
        tree.chances.push_back(*chance);
        tree.crownPercent = std::max(tree.crownPercent, std::clamp(*look.crownPercent, 0, 100));
        ++out.looks;
    }
    observers.count(out);
    out.trees = static_cast<int>(trees.size());
    for (const auto& [key, tree] : trees)
        out.found += combinedChance(tree.chances) * tree.crownPercent / 100 / static_cast<double>(trees.size());
    return out;
}

} // namespace cupule
