// The host key: characters with their states, kinds of tree, and what each kind shows.

#include <array>
#include <utility>

#include "core/protocol/sections.h"

namespace cupule {

namespace {

constexpr std::array<std::pair<std::string_view, Mark>, 6> markNames{
    {{"shared", Mark::shared},
     {"diagnostic", Mark::diagnostic},
     {"diagnostic-if-counted", Mark::diagnosticIfCounted},
     {"points-to-other-host", Mark::pointsToOtherHost},
     {"contradicts", Mark::contradicts},
     {"not-for-host", Mark::notForHost}}};

/// Member `name`: by region a list of months.
std::map<std::string, Months> readMonths(Node& owner, std::string_view name, Need need)
{
    std::map<std::string, Months> byRegion;
    owner.object(name, need, [&](Node& node) {
        for (const std::string& region : node.names()) {
            Months months = 0;
            for (const int month : node.wholes(region, 1, 12))
                months = static_cast<Months>(months | (1U << static_cast<unsigned>(month - 1)));
            byRegion[region] = months;
        }
    });
    return byRegion;
}

CharacterState readState(Node& node)
{
    CharacterState state;
    state.id = node.text("id");
    state.words = node.text("words");
    state.alsoCalled = node.texts("alsoCalled", Need::optional);
    state.rulesOut = node.flag("rulesOut");
    return state;
}

Character readCharacter(Node& node, const Sources& sources)
{
    Character character;
    character.id = node.text("id");
    character.name = node.text("name");
    character.organ = node.text("organ");
    character.question = node.text("question");
    character.caution = node.text("caution", Need::optional);
    node.each("states", Need::optional, [&](Node& state) { character.states.push_back(readState(state)); });
    node.object("value", Need::optional, [&](Node& value) {
        character.unit = value.text("unit");
        character.valueWords = value.text("words");
        character.hardMin = value.number("hardMin");
        character.hardMax = value.number("hardMax");
    });
    character.visible = readMonths(node, "visible", Need::required);
    character.onGround = readMonths(node, "onGround", Need::optional);
    character.onGroundToo = node.flag("onGroundToo");
    character.decidesHost = node.flag("decidesHost", true);
    character.showsWithoutLeaves = node.flag("showsWithoutLeaves");
    character.source = sources.one(node);
    return character;
}

KindRow readRow(Node& node, const Sources& sources)
{
    KindRow row;
    row.kind = node.text("kind");
    row.character = node.text("character");
    row.states = node.texts("states", Need::optional);
    row.groundStates = node.texts("groundStates", Need::optional);
    row.asPublished = node.text("asPublished");
    row.min = node.maybeNumber("min");
    row.max = node.maybeNumber("max");
    row.mark = node.choice<Mark>("mark", markNames);
    row.sources = sources.all(node);
    return row;
}

} // namespace

void readHost(Node& root, const Sources& sources, Pack& pack)
{
    root.each("characters", Need::required,
              [&](Node& node) { pack.characters.push_back(readCharacter(node, sources)); });
    root.each("kinds", Need::required, [&](Node& node) {
        Kind kind;
        kind.id = node.text("id");
        kind.name = node.text("name");
        kind.commonName = node.text("commonName");
        kind.host = node.flag("host");
        pack.kinds.push_back(std::move(kind));
    });
    root.each("key", Need::required, [&](Node& node) { pack.key.push_back(readRow(node, sources)); });
    root.each("countedLimits", Need::optional, [&](Node& node) {
        CountedLimit limit;
        limit.character = node.text("character");
        limit.measuredBy = node.text("measuredBy");
        limit.atLeast = node.number("atLeast");
        limit.source = sources.one(node);
        pack.countedLimits.push_back(std::move(limit));
    });
    pack.marginCharacter = root.text("marginCharacter", Need::optional);
    pack.arrangementCharacter = root.text("arrangementCharacter", Need::optional);
}

} // namespace cupule
