// What must hold between the parts of the host key.

#include "core/protocol/sections.h"

namespace cupule {

namespace {

constexpr std::size_t mostKinds = 64; ///< the rules hold sets of kinds in one machine word

std::string at(const char* list, std::size_t index)
{
    return std::string("/") + list + "/" + std::to_string(index);
}

class HostCheck {
public:
    HostCheck(const Pack& pack, std::vector<PackFault>& faults) : m_pack(pack), m_faults(faults) {}

    void characters()
    {
        checkDoubles(
            m_pack.characters, "/characters", [](const Character& c) { return c.id; }, m_faults);
        for (std::size_t i = 0; i < m_pack.characters.size(); ++i)
            character(m_pack.characters[i], at("characters", i));
    }

    void kinds()
    {
        checkDoubles(
            m_pack.kinds, "/kinds", [](const Kind& k) { return k.id; }, m_faults);
        if (m_pack.kinds.size() > mostKinds)
            add("/kinds", "pack.too-many", std::to_string(mostKinds));
        const bool anyHost =
            std::any_of(m_pack.kinds.begin(), m_pack.kinds.end(), [](const Kind& k) { return k.host; });
        if (!m_pack.kinds.empty() && !anyHost)
            add("/kinds", "pack.no-host");
    }

    void rows()
    {
        const auto pairOf = [](const KindRow& r) {
            return r.kind.empty() || r.character.empty() ? std::string{} : r.kind + ' ' + r.character;
        };
        checkDoubles(m_pack.key, "/key", pairOf, m_faults);
        for (std::size_t i = 0; i < m_pack.key.size(); ++i)
            row(m_pack.key[i], at("key", i));
    }

    void limits()
    {
        for (std::size_t i = 0; i < m_pack.countedLimits.size(); ++i) {
            const CountedLimit& limit = m_pack.countedLimits[i];
            const std::string path = at("countedLimits", i);
            known(limit.character, path + "/character");
            const Character* measured = known(limit.measuredBy, path + "/measuredBy");
            if (measured != nullptr && measured->unit.empty())
                add(path + "/measuredBy", "pack.no-value", limit.measuredBy);
        }
        known(m_pack.marginCharacter, "/marginCharacter");
        known(m_pack.arrangementCharacter, "/arrangementCharacter");
    }

private:
    void add(std::string path, std::string code, std::string detail = {})
    {
        m_faults.push_back({std::move(path), std::move(code), std::move(detail)});
    }

    const Character* known(const std::string& id, const std::string& path)
    {
        const Character* found = id.empty() ? nullptr : m_pack.character(id);
        if (!id.empty() && found == nullptr)
            add(path, "pack.dangling", id);
        return found;
    }

    void character(const Character& character, const std::string& path)
    {
        checkRegions(character.visible, true, path + "/visible", m_pack, m_faults);
        checkRegions(character.onGround, false, path + "/onGround", m_pack, m_faults);
        checkDoubles(
            character.states, path + "/states", [](const CharacterState& s) { return s.id; }, m_faults);
        std::vector<std::string> met;
        for (std::size_t i = 0; i < character.states.size(); ++i)
            checkAliases(character.states[i].alsoCalled, path + "/states/" + std::to_string(i), met,
                         m_faults);
        if (character.hardMin > character.hardMax)
            add(path + "/value/hardMin", "pack.order", "hardMin, hardMax");
        if (!character.onGround.empty() && !character.onGroundToo)
            add(path + "/onGround", "pack.not-on-ground");
    }

    void row(const KindRow& row, const std::string& path)
    {
        const Kind* kind = row.kind.empty() ? nullptr : m_pack.kind(row.kind);
        if (!row.kind.empty() && kind == nullptr)
            add(path + "/kind", "pack.dangling", row.kind);
        const Character* character = known(row.character, path + "/character");
        if (row.min && row.max && *row.min > *row.max)
            add(path + "/min", "pack.order", "min, max");
        if (character != nullptr)
            rowOf(row, *character, path);
        if (kind != nullptr)
            markOf(row, *kind, path);
    }

    void rowOf(const KindRow& row, const Character& character, const std::string& path)
    {
        const auto states = [&](const std::vector<std::string>& ids, const char* member) {
            for (std::size_t i = 0; i < ids.size(); ++i)
                if (!ids[i].empty() && m_pack.state(character.id, ids[i]) == nullptr)
                    add(path + '/' + member + '/' + std::to_string(i), "pack.dangling", ids[i]);
        };
        states(row.states, "states");
        states(row.groundStates, "groundStates");
        if (row.states.empty() && !character.states.empty())
            add(path + "/states", "pack.missing");
        if ((row.min || row.max) && character.unit.empty())
            add(path + (row.min ? "/min" : "/max"), "pack.no-value", character.id);
        const bool outside =
            (row.min && *row.min < character.hardMin) || (row.max && *row.max > character.hardMax);
        if (!character.unit.empty() && outside)
            add(path + "/min", "pack.order", "min and max inside hardMin and hardMax");
        if ((row.mark == Mark::notForHost) == character.decidesHost)
            add(path + "/mark", "pack.mark", character.id);
        const auto limited = [&](const CountedLimit& limit) { return limit.character == character.id; };
        const auto& limits = m_pack.countedLimits;
        if (row.mark == Mark::diagnosticIfCounted && std::none_of(limits.begin(), limits.end(), limited))
            add(path + "/mark", "pack.no-limit", character.id);
    }

    void markOf(const KindRow& row, const Kind& kind, const std::string& path)
    {
        const bool forHosts = row.mark == Mark::diagnostic || row.mark == Mark::diagnosticIfCounted ||
                              row.mark == Mark::pointsToOtherHost;
        if (kind.host ? row.mark == Mark::contradicts : forHosts)
            add(path + "/mark", "pack.mark", kind.id);
        for (std::size_t i = 0; kind.host && i < row.states.size(); ++i) {
            const CharacterState* state = m_pack.state(row.character, row.states[i]);
            if (state != nullptr && state->rulesOut)
                add(path + "/states/" + std::to_string(i), "pack.host-ruled-out", row.states[i]);
        }
    }

    const Pack& m_pack;
    std::vector<PackFault>& m_faults;
};

} // namespace

void checkHost(const Pack& pack, std::vector<PackFault>& faults)
{
    HostCheck check(pack, faults);
    check.characters();
    check.kinds();
    check.rows();
    check.limits();
}

} // namespace cupule
