#include "core/protocol/pack_reader.h"

#include <array>
#include <string>
#include <utility>

#include "core/base/civil.h"
#include "core/base/text.h"
#include "core/protocol/json_tree.h"
#include "core/protocol/sections.h"

namespace cupule {

namespace {

constexpr std::array<std::pair<std::string_view, Basis>, 5> basisNames{
    {{"read", Basis::read},
     {"second-hand", Basis::secondHand},
     {"judgement", Basis::judgement},
     {"common-practice", Basis::commonPractice},
     {"memory", Basis::memory}}};

bool isMonthAndDay(const std::string& text)
{
    return text.size() == 5 && CivilDate::parse("2024-" + text).has_value();
}

} // namespace

Sources readSources(Node& root)
{
    Sources sources;
    root.members("sources", Need::required, [&](const std::string& name, Node& node) {
        const std::string text = node.text("text");
        sources.table[name] = {text, node.choice<Basis>("basis", basisNames)};
    });
    return sources;
}

Source Sources::one(Node& node) const
{
    const std::string name = node.text("source");
    const auto found = table.find(name);
    if (found != table.end())
        return found->second;
    if (!name.empty())
        node.fault("source", "pack.dangling", name);
    return {};
}

std::vector<Source> Sources::all(Node& node) const
{
    std::vector<Source> cited;
    const auto names = node.texts("sources");
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto found = table.find(names[i]);
        if (found != table.end())
            cited.push_back(found->second);
        else if (!names[i].empty())
            node.fault("sources", "pack.dangling", names[i]);
    }
    return cited;
}

void readRegions(Node& root, const Sources& sources, Pack& pack)
{
    root.each("regions", Need::required, [&](Node& node) {
        Region region;
        region.id = node.text("id");
        region.name = node.text("name");
        region.leafingReference = node.text("leafingReference");
        if (!region.leafingReference.empty() && !isMonthAndDay(region.leafingReference))
            node.fault("leafingReference", "pack.date", region.leafingReference);
        region.source = sources.one(node);
        pack.regions.push_back(std::move(region));
    });
    checkDoubles(
        pack.regions, root.pathOf("regions"), [](const Region& r) { return r.id; }, root.faults());
}

PackReading readPack(std::string_view json)
{
    PackReading reading;
    const auto tree = readTree(json, reading.faults);
    if (!tree)
        return reading;
    Pack& pack = reading.pack;
    {
        Node root(*tree, "", reading.faults);
        if (const auto format = root.text("format"); !format.empty() && format != "cupule-protocol-pack")
            root.fault("format", "pack.unknown-value", format);
        root.whole("formatVersion", 1, 1);
        pack.id = root.text("id");
        pack.name = root.text("name");
        pack.version = root.text("version");
        pack.language = root.text("language");
        const Sources sources = readSources(root);
        readRegions(root, sources, pack);
        readHost(root, sources, pack);
        readSigns(root, sources, pack);
        readSeason(root, sources, pack);
        readWords(root, sources, pack);
        readSettings(root, sources, pack);
    }
    checkHost(pack, reading.faults);
    checkSeason(pack, reading.faults);
    checkWords(pack, reading.faults);
    return reading;
}

void checkAliases(std::span<const std::string> aliases, const std::string& path,
                  std::vector<std::string>& met, std::vector<PackFault>& faults)
{
    for (std::size_t i = 0; i < aliases.size(); ++i) {
        const std::string& alias = aliases[i];
        const std::string at = path + "/alsoCalled/" + std::to_string(i);
        if (lowerAscii(trim(alias)) != alias)
            faults.push_back({at, "pack.alias-form", alias});
        if (std::find(met.begin(), met.end(), alias) != met.end())
            faults.push_back({at, "pack.duplicate", alias});
        met.push_back(alias);
    }
}

} // namespace cupule
