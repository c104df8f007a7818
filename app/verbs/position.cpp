#include <array>

#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/base/text.h"
#include "core/position/transform.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

Result<std::array<double, 4>> readArea(const std::string& typed)
{
    std::array<double, 4> area{};
    const auto parts = split(typed, ',');
    bool good = parts.size() == area.size();
    for (std::size_t i = 0; good && i < area.size(); ++i) {
        const auto number = parseNumber(trim(parts[i]));
        good = number.has_value();
        area[i] = number.value_or(0);
    }
    if (!good)
        return fail("position.area", FaultKind::usage, {{"value", typed}});
    return area;
}

class PositionVerb final : public Verb {
public:
    const char* name() const override { return "position"; }
    const char* summary() const override { return "Read a position in any notation and say where it is"; }
    const char* usage() const override { return "TEXT [--system SYSTEM] [--grids FOLDER] [--area W,S,E,N]"; }
    const char* prose() const override
    {
        return "Reads a position as people write it: a British or Irish grid reference of any length, "
               "eastings and "
               "northings, UTM, MGRS, or latitude and longitude in degrees, minutes and seconds. A grid "
               "reference names a "
               "square; what is given is its middle, the side of the square, and half its diagonal as the "
               "uncertainty.\n"
               "It says which transformation was used and how good it is. A text that cannot be read, or "
               "that could be read "
               "in two ways, is refused with the reason; nothing is guessed.";
    }
    const char* examples() const override
    {
        return "cupule position SO 612 094\ncupule position \"51 46.8 N, 2 33.7 W\" --json\ncupule position "
               "361250 209450 --system OSGB";
    }
    void declare(CLI::App& options) override
    {
        options.add_option("TEXT", m_text, "the position as it was written")->required();
        options.add_option("--system", m_system,
                           "how bare numbers are read: OSGB, IG, ITM, UTM30N, WGS84 ...");
        options.add_option("--grids", m_grids,
                           "folder with grid files; without one British positions are good to 5 m");
        options.add_option("--area", m_area,
                           "west,south,east,north in degrees; a position outside is warned about");
    }
    Result<int> run(Run& run) override
    {
        PositionOptions options;
        options.system = m_system;
        if (!m_area.empty()) {
            const auto area = readArea(m_area);
            if (!area)
                return fail(area.error());
            options.areaWSEN = *area;
        }
        const auto profile = run.profile();
        auto projector = Projector::create({m_grids.empty() && profile ? profile->gridFolder : m_grids});
        if (!projector)
            return fail(projector.error());
        std::string text;
        for (const auto& word : m_text)
            text += (text.empty() ? "" : " ") + word;
        const auto position = projector->read(text, options);
        return position ? give(run, *position) : refuse(run, text, position.error());
    }

private:
    static int give(Run& run, const Position& p)
    {
        nlohmann::json json{{"typed", p.typed},           {"lat", p.latitude},
                            {"lon", p.longitude},         {"easting", nullptr},
                            {"northing", nullptr},        {"system", p.system},
                            {"square_m", p.squareMetres}, {"uncertainty_m", p.uncertaintyMetres},
                            {"operation", p.operation},   {"operation_accuracy_m", nullptr},
                            {"warning", p.warning}};
        if (p.easting)
            json["easting"] = *p.easting;
        if (p.northing)
            json["northing"] = *p.northing;
        if (p.operationAccuracyMetres >= 0)
            json["operation_accuracy_m"] = p.operationAccuracyMetres;
        run.give(std::move(json));
        run.say("{lat}, {lon} (latitude and longitude, WGS84)",
                {{"lat", run.words().number(p.latitude, 6)}, {"lon", run.words().number(p.longitude, 6)}});
        if (p.easting && p.northing)
            run.say("{system}: {easting} east, {northing} north",
                    {{"system", p.system},
                     {"easting", run.words().number(*p.easting, 1)},
                     {"northing", run.words().number(*p.northing, 1)}});
        if (p.squareMetres > 0)
            run.say("A square of {side}; the position is its middle, within {uncertainty}.",
                    {{"side", plain(ui::distanceText(p.squareMetres))},
                     {"uncertainty", plain(ui::distanceText(p.uncertaintyMetres))}});
        if (p.operationAccuracyMetres >= 0)
            run.say("Transformed by \"{operation}\", good to {accuracy}.",
                    {{"operation", p.operation},
                     {"accuracy", plain(ui::distanceText(p.operationAccuracyMetres))}});
        if (!p.warning.empty())
            run.line(plain(ui::positionKindText(p.warning)));
        return done;
    }

    /// What could not be read is data that is wrong, whatever the room says of it; a wrong option is not.
    static Result<int> refuse(Run& run, const std::string& text, const Fault& fault)
    {
        const std::string kind = positionErrorKind(fault);
        if (kind.empty() || fault.kind == FaultKind::usage)
            return fail(fault);
        nlohmann::json json{{"error", kind}, {"typed", text}, {"warning", ""}};
        for (const auto& [name, value] : fault.arguments)
            json[name] = value;
        const std::string sentence = run.words().fault(fault);
        json["sentence"] = sentence;
        run.give(std::move(json));
        run.complain(sentence);
        return broken;
    }

    std::vector<std::string> m_text;
    std::string m_system, m_grids, m_area;
};

} // namespace

std::unique_ptr<Verb> makePosition()
{
    return std::make_unique<PositionVerb>();
}

} // namespace cupule::app
