// What must hold between signs, windows, questions and worth.

#include <array>

#include "core/protocol/sections.h"

namespace cupule {

namespace {

/// The conditions that rules/worth.cpp can judge.
constexpr std::array<std::string_view, 11> conditionNames{
    "minutes", "trees",       "crown-share", "height",      "binoculars", "light",
    "leaves",  "inner-crown", "crown-photo", "shoot-photo", "host"};

constexpr std::array<std::string_view, 4> ribbonNames{"green", "holes", "adults", "dry"};

/// Days after `from` on the circle of a year.
int after(int from, int day)
{
    return (day - from + 366) % 366;
}

bool isShare(double value)
{
    return value >= 0 && value <= 1;
}

class SeasonCheck {
public:
    SeasonCheck(const Pack& pack, std::vector<PackFault>& faults) : m_pack(pack), m_faults(faults) {}

    void signs()
    {
        checkDoubles(
            m_pack.signs, "/signs", [](const Sign& s) { return s.id; }, m_faults);
        std::vector<std::string> met;
        for (std::size_t i = 0; i < m_pack.signs.size(); ++i) {
            const Sign& sign = m_pack.signs[i];
            const std::string path = "/signs/" + std::to_string(i);
            checkRegions(sign.windows, true, path + "/windows", m_pack, m_faults);
            for (const auto& [region, window] : sign.windows)
                windowOf(window, sign.persists, path + "/windows/" + region);
            checkAliases(sign.alsoCalled, path, met, m_faults);
            measureOf(sign, path + "/measure");
            groupOf(sign, path);
        }
    }

    void questions()
    {
        const auto& list = m_pack.seasonQuestions;
        checkDoubles(
            list, "/seasonQuestions", [](const SeasonQuestion& q) { return q.code; }, m_faults);
        for (std::size_t i = 0; i < list.size(); ++i) {
            const std::string path = "/seasonQuestions/" + std::to_string(i);
            checkRegions(list[i].quietOutside, false, path + "/quietOutside", m_pack, m_faults);
            signNames(list[i].signs, path + "/signs/");
            signNames(list[i].together, path + "/together/");
            for (std::size_t k = 0; k < list[i].characters.size(); ++k)
                if (m_pack.character(list[i].characters[k]) == nullptr)
                    add(path + "/characters/" + std::to_string(k), "pack.dangling", list[i].characters[k]);
            for (std::size_t k = 0; k < list[i].states.size(); ++k)
                if (!anyHas(list[i].characters, list[i].states[k]))
                    add(path + "/states/" + std::to_string(k), "pack.dangling", list[i].states[k]);
            if (list[i].signs.empty() && list[i].characters.empty())
                add(path + "/signs", "pack.missing");
            if (!isShare(list[i].shiftFactor))
                add(path + "/shiftFactor", "pack.range", "0 to 1");
        }
    }

    void worth()
    {
        checkRegions(m_pack.worth, true, "/worth", m_pack, m_faults);
        for (const auto& [region, row] : m_pack.worth)
            for (std::size_t i = 0; i < row.startMoves.size(); ++i)
                if (!isShare(row.startMoves[i]))
                    add("/worth/" + region + "/startMoves/" + std::to_string(i), "pack.range", "0 to 1");
        const auto& conditions = m_pack.worthConditions;
        checkDoubles(
            conditions, "/worthConditions", [](const WorthCondition& c) { return c.id; }, m_faults);
        for (std::size_t i = 0; i < conditions.size(); ++i)
            if (!conditions[i].id.empty() && !contains(conditionNames, conditions[i].id))
                add("/worthConditions/" + std::to_string(i) + "/id", "pack.unknown-value", conditions[i].id);
    }

private:
    void add(std::string path, std::string code, std::string detail = {})
    {
        m_faults.push_back({std::move(path), std::move(code), std::move(detail)});
    }

    template <class List> static bool contains(const List& list, std::string_view word)
    {
        return std::find(list.begin(), list.end(), word) != list.end();
    }

    bool anyHas(const std::vector<std::string>& characters, const std::string& state) const
    {
        return std::any_of(characters.begin(), characters.end(), [&](const std::string& character) {
            return m_pack.state(character, state) != nullptr;
        });
    }

    void signNames(const std::vector<std::string>& ids, const std::string& path)
    {
        for (std::size_t i = 0; i < ids.size(); ++i)
            if (!ids[i].empty() && m_pack.sign(ids[i]) == nullptr)
                add(path + std::to_string(i), "pack.dangling", ids[i]);
    }

    /// first, peakFrom, peakTo, last follow each other within one turn of the year.
    void windowOf(const Window& window, bool persists, const std::string& path)
    {
        if (window.first == 0 || window.peakFrom == 0 || window.peakTo == 0)
            return;
        if (window.last == 0 && !persists)
            add(path + "/last", "pack.no-end");
        const int from = after(window.first, window.peakFrom);
        const int to = after(window.first, window.peakTo);
        const int last = window.last == 0 ? 365 : after(window.first, window.last);
        if (from > to || to > last)
            add(path, "pack.order", "first, peakFrom, peakTo, last");
    }

    void measureOf(const Sign& sign, const std::string& path)
    {
        if (sign.hardMin > sign.hardMax)
            add(path + "/hardMin", "pack.order", "hardMin, hardMax");
        if (sign.usualMin > sign.usualMax)
            add(path + "/usualMin", "pack.order", "usualMin, usualMax");
        if (sign.usualMin < sign.hardMin || sign.usualMax > sign.hardMax)
            add(path + "/usualMin", "pack.order", "usual inside hard");
    }

    void groupOf(const Sign& sign, const std::string& path)
    {
        const bool answered = sign.group != SignGroup::laboratory && sign.group != SignGroup::computed;
        if (sign.onChecklist != answered)
            add(path + "/onChecklist", "pack.checklist", sign.id);
        if (sign.earlierGeneration && sign.group != SignGroup::gall)
            add(path + "/earlierGeneration", "pack.group", sign.id);
        if (!isShare(sign.shiftFactor))
            add(path + "/shiftFactor", "pack.range", "0 to 1");
        if (!sign.ribbon.empty() && !contains(ribbonNames, sign.ribbon))
            add(path + "/ribbon", "pack.unknown-value", sign.ribbon);
    }

    const Pack& m_pack;
    std::vector<PackFault>& m_faults;
};

} // namespace

void checkSeason(const Pack& pack, std::vector<PackFault>& faults)
{
    SeasonCheck check(pack, faults);
    check.signs();
    check.questions();
    check.worth();
}

} // namespace cupule
