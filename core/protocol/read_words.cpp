// The programme's words (reasons, cautions, notices, facts) and its settings.

#include <utility>

#include "core/protocol/sections.h"

namespace cupule {

namespace {

Reason readReason(Node& node, const Sources& sources)
{
    Reason reason;
    reason.id = node.text("id");
    reason.sentence = node.text("sentence");
    reason.whatToDo = node.text("whatToDo");
    for (const std::string& decision : node.texts("standsFor")) {
        if (decision == "accept")
            reason.accept = true;
        else if (decision == "reject")
            reason.reject = true;
        else if (decision == "return")
            reason.giveBack = true;
        else if (!decision.empty())
            node.fault("standsFor", "pack.unknown-value", decision);
    }
    reason.source = sources.one(node);
    return reason;
}

Fact readFact(Node& node, const Sources& sources)
{
    Fact fact;
    fact.id = node.text("id");
    fact.words = node.text("words");
    fact.unit = node.text("unit", Need::optional);
    fact.min = node.maybeNumber("min");
    fact.max = node.maybeNumber("max");
    fact.source = sources.one(node);
    node.each("published", Need::optional, [&](Node& said) {
        Published published;
        published.words = said.text("words");
        published.min = said.maybeNumber("min");
        published.max = said.maybeNumber("max");
        published.source = sources.one(said);
        fact.published.push_back(std::move(published));
    });
    return fact;
}

GallColour readGallColour(Node& node, const Sources& sources)
{
    GallColour colour;
    colour.id = node.text("id");
    colour.words = node.text("words");
    const auto within = [&](std::string_view name, double most, double otherwise) {
        const double value = node.maybeNumber(name).value_or(otherwise);
        if (!(value >= 0 && value <= most))
            node.fault(name, "pack.range", "0 to " + std::to_string(static_cast<int>(most)));
        return value;
    };
    colour.lightnessMin = within("lightnessMin", 100, 0);
    colour.lightnessMax = within("lightnessMax", 100, 100);
    colour.chromaMin = within("chromaMin", 200, 0);
    colour.chromaMax = within("chromaMax", 200, 200);
    colour.hueFrom = within("hueFrom", 360, 0);
    colour.hueTo = within("hueTo", 360, 360);
    colour.source = sources.one(node);
    return colour;
}

KnownLength readKnownLength(Node& node, const Sources& sources)
{
    KnownLength known;
    known.id = node.text("id");
    known.words = node.text("words");
    known.millimetres = node.number("millimetres");
    known.uncertaintyMillimetres = node.number("uncertaintyMillimetres");
    if (!(known.millimetres > 0))
        node.fault("millimetres", "pack.range", "more than 0");
    if (!(known.uncertaintyMillimetres >= 0 && known.uncertaintyMillimetres < known.millimetres))
        node.fault("uncertaintyMillimetres", "pack.range", "0 to millimetres");
    known.source = sources.one(node);
    return known;
}

/// Reads the settings one by one: each is an object with its value and its source.
class SettingReader {
public:
    SettingReader(Node& node, const Sources& sources, Settings& settings)
        : m_node(node), m_sources(sources), m_settings(settings)
    {
    }

    void positive(std::string_view name, double& value)
    {
        one(name, [&](Node& setting) {
            value = setting.number("value");
            if (!(value > 0))
                setting.fault("value", "pack.range", "more than 0");
        });
    }

    void days(std::string_view name, int& value)
    {
        one(name, [&](Node& setting) { value = setting.whole("value", 0, 180); });
    }

    void minutes(std::string_view name, int& value)
    {
        one(name, [&](Node& setting) { value = setting.whole("value", 1, 7 * 24 * 60); });
    }

    void area(std::string_view name, std::array<double, 4>& value)
    {
        one(name, [&](Node& setting) {
            const auto sides = setting.numbers("value");
            if (sides.size() != value.size()) {
                setting.fault("value", "pack.length", std::to_string(value.size()));
                return;
            }
            std::copy(sides.begin(), sides.end(), value.begin());
            const bool onEarth = value[0] >= -180 && value[2] <= 180 && value[1] >= -90 && value[3] <= 90;
            if (!onEarth || value[0] >= value[2] || value[1] >= value[3])
                setting.fault("value", "pack.range", "west, south, east, north");
        });
    }

private:
    template <class Read> void one(std::string_view name, Read read)
    {
        m_node.object(name, Need::required, [&](Node& setting) {
            read(setting);
            m_settings.sources[std::string(name)] = m_sources.one(setting);
        });
    }

    Node& m_node;
    const Sources& m_sources;
    Settings& m_settings;
};

} // namespace

void readWords(Node& root, const Sources& sources, Pack& pack)
{
    root.each("reasons", Need::required,
              [&](Node& node) { pack.reasons.push_back(readReason(node, sources)); });
    root.each("cautions", Need::required, [&](Node& node) {
        Caution caution;
        caution.id = node.text("id");
        caution.topic = node.text("topic");
        caution.words = node.text("words");
        caution.source = sources.one(node);
        pack.cautions.push_back(std::move(caution));
    });
    pack.standingNotice = root.texts("standingNotice");
    pack.plantParts = root.texts("plantParts");
    pack.hazardLine = root.text("hazardLine");
    pack.exportNote = root.text("exportNote");
    root.each("facts", Need::optional, [&](Node& node) { pack.facts.push_back(readFact(node, sources)); });
    root.each("countClasses", Need::optional, [&](Node& node) {
        CountClass countClass;
        countClass.id = node.text("id");
        countClass.words = node.text("words");
        countClass.from = node.whole("from", 0, 1'000'000);
        countClass.to = node.whole("to", 1, 1'000'000, Need::optional);
        countClass.source = sources.one(node);
        pack.countClasses.push_back(std::move(countClass));
    });
    root.each("gallColours", Need::optional,
              [&](Node& node) { pack.gallColours.push_back(readGallColour(node, sources)); });
    root.each("knownLengths", Need::optional,
              [&](Node& node) { pack.knownLengths.push_back(readKnownLength(node, sources)); });
}

void readSettings(Node& root, const Sources& sources, Pack& pack)
{
    root.object("settings", Need::required, [&](Node& node) {
        Settings& settings = pack.settings;
        SettingReader reader(node, sources, settings);
        reader.positive("newGroundKilometres", settings.newGroundKilometres);
        reader.positive("spreadKilometresPerYear", settings.spreadKilometresPerYear);
        reader.positive("spreadLowKilometresPerYear", settings.spreadLowKilometresPerYear);
        reader.positive("sameTreeMetres", settings.sameTreeMetres);
        reader.positive("usefulUncertaintyMetres", settings.usefulUncertaintyMetres);
        reader.positive("photoMetres", settings.photoMetres);
        reader.minutes("photoMinutes", settings.photoMinutes);
        reader.days("shiftLimitDays", settings.shiftLimitDays);
        reader.positive("daysPer100Metres", settings.daysPer100Metres);
        reader.positive("sampleWarnHours", settings.sampleWarnHours);
        reader.positive("sampleAskHours", settings.sampleAskHours);
        reader.positive("sampleVoidRearingHours", settings.sampleVoidRearingHours);
        reader.area("areaWSEN", settings.areaWSEN);
    });
}

} // namespace cupule
