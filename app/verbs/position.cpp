#include <array>
#include <cmath>

#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/base/text.h"
#include "core/position/transform.h"
#include "core/position/write.h"
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

struct NotationName {
    const char* name;
    Notation notation;
    bool figures; ///< precision is figures of a reference, not decimals
};
constexpr NotationName notations[] = {{"osgb", Notation::osgb, true},
                                      {"osgb-tetrad", Notation::osgbTetrad, false},
                                      {"osgb-metres", Notation::osgbMetres, false},
                                      {"irish", Notation::irish, true},
                                      {"irish-tetrad", Notation::irishTetrad, false},
                                      {"irish-metres", Notation::irishMetres, false},
                                      {"itm", Notation::itm, false},
                                      {"utm", Notation::utm, false},
                                      {"mgrs", Notation::mgrs, true},
                                      {"degrees", Notation::decimalDegrees, false},
                                      {"minutes", Notation::degreesMinutes, false},
                                      {"seconds", Notation::degreesMinutesSeconds, false},
                                      {"iso6709", Notation::iso6709, false}};

/// As many figures as name a square of that side; the usual ones for a point.
int figuresFor(double squareMetres)
{
    if (!(squareMetres >= 1))
        return -1;
    return 2 * static_cast<int>(std::floor(5 - std::log10(squareMetres) + 1e-9));
}

using Written = std::vector<std::pair<std::string, std::string>>;

/// A place of a grid is written from its metres, so that no way through degrees and back moves it.
Result<std::string> writtenFromMetres(const Position& position, Notation notation, int digits)
{
    const bool british = position.system == "OSGB";
    const auto grid = british ? GridSystem::Kind::osgb : GridSystem::Kind::ig;
    const PlanePoint place{position.easting.value_or(0), position.northing.value_or(0)};
    if (notation == (british ? Notation::osgb : Notation::irish))
        return writeReference(grid, place, digits < 0 ? 6 : digits);
    if (notation == (british ? Notation::osgbTetrad : Notation::irishTetrad))
        return writeTetrad(grid, place);
    if (notation == (british ? Notation::osgbMetres : Notation::irishMetres))
        return numberText(std::floor(place.easting)) + " " + numberText(std::floor(place.northing));
    return std::string();
}

/// The position in the notation wanted, in "all" that reach it, or in none ("").
Result<Written> writtenAs(Projector& projector, const Position& position, const std::string& wanted, int precision)
{
    Written written;
    for (const auto& [name, notation, figures] : notations) {
        if (wanted != "all" && wanted != name)
            continue;
        const int digits = precision >= 0 ? precision : figures ? figuresFor(position.squareMetres) : -1;
        const bool ofGrid = position.easting && (position.system == "OSGB" || position.system == "IG");
        auto text = ofGrid ? writtenFromMetres(position, notation, digits) : Result<std::string>(std::string());
        if (text && text->empty())
            text = writePosition(projector, position.latitude, position.longitude, notation, digits);
        if (text)
            written.emplace_back(name, std::move(*text));
        else if (wanted != "all")
            return fail(text.error());
    }
    return written;
}

class PositionVerb final : public Verb {
public:
    const char* name() const override { return "position"; }
    const char* summary() const override { return "Read a position in any notation and say where it is"; }
    const char* usage() const override
    {
        return "TEXT [--system SYSTEM] [--as NOTATION] [--digits N] [--grids FOLDER] [--area W,S,E,N]";
    }
    const char* prose() const override
    {
        return "Reads a position as people write it: a British or Irish grid reference of any length, "
               "eastings and "
               "northings, UTM, MGRS, ISO 6709, or latitude and longitude in degrees, minutes and seconds. A grid "
               "reference names a "
               "square; what is given is its middle, the side of the square, and half its diagonal as the "
               "uncertainty.\n"
               "It says which transformation was used and how good it is, and, where PROJ has a grid file, how far "
               "off the position would lie without it. A text that cannot be read, or that could be read in two "
               "ways, is refused with the reason; nothing is guessed.\n--as writes the same place in another "
               "notation: osgb, osgb-tetrad, osgb-metres, irish, irish-tetrad, irish-metres, itm, utm, mgrs, degrees, "
               "minutes, seconds, iso6709, or all of those that reach it.";
    }
    const char* examples() const override
    {
        return "cupule position SO 612 094\ncupule position \"51 46.8 N, 2 33.7 W\" --json\ncupule position "
               "361250 209450 --system OSGB\ncupule position SO 612 094 --as seconds";
    }
    void declare(CLI::App& options) override
    {
        options.add_option("TEXT", m_text, "the position as it was written")->required();
        options.add_option("--system", m_system,
                           "how bare numbers are read: OSGB, IG, ITM, UTM30N, WGS84 ...");
        std::vector<std::string> names{"all"};
        for (const auto& each : notations)
            names.emplace_back(each.name);
        options.add_option("--as", m_as, "write it in this notation, or in all")->check(CLI::IsMember(names));
        options.add_option("--digits", m_digits, "with --as: figures of a reference, or decimals");
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
        return position ? give(run, *projector, *position) : refuse(run, text, position.error());
    }

private:
    Result<int> give(Run& run, Projector& projector, const Position& p) const
    {
        const auto written = writtenAs(projector, p, m_as, m_digits);
        if (!written)
            return refuse(run, p.typed, written.error());
        const Grid grid = gridOf(projector, p);
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
        json["grid_file"] = grid.file;
        json["grid_difference_m"] = grid.difference ? nlohmann::json(*grid.difference) : nlohmann::json();
        for (const auto& [notation, text] : *written)
            json["written"][notation] = text;
        run.give(std::move(json));
        say(run, p, grid);
        for (const auto& [notation, text] : *written)
            run.say("{notation}: {text}", {{"notation", notation}, {"text", text}});
        return done;
    }

    /// The grid file behind a position and what it is worth here, if there is one.
    struct Grid {
        std::string file, refused;
        std::optional<double> difference;
        bool british = false;
    };
    static Grid gridOf(Projector& projector, const Position& p)
    {
        Grid grid;
        const auto system = parseSystem(p.system);
        if (!system || !system->system.isProjected())
            return grid;
        const auto operation = projector.operation(system->system);
        if (!operation)
            return grid;
        grid.british = system->system.kind == GridSystem::Kind::osgb;
        grid.file = operation->usesGrid ? operation->gridFile : std::string();
        grid.refused = operation->refusedGridFile;
        if (operation->usesGrid && p.easting && p.northing)
            if (const auto metres = projector.gridDifferenceMetres(*p.easting, *p.northing))
                grid.difference = *metres;
        return grid;
    }

    static void say(Run& run, const Position& p, const Grid& grid)
    {
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
        if (grid.difference)
            run.say("By the grid file {file}; without it the position would lie {metres} off.",
                    {{"file", grid.file}, {"metres", plain(ui::distanceText(*grid.difference))}});
        else if (grid.british && grid.file.empty())
            run.say("No grid file is in use: the worst of the published points is 5 m off.");
        if (!grid.refused.empty())
            run.say("The grid file {file} does not reproduce the published points and is not used.",
                    {{"file", grid.refused}});
        if (!p.warning.empty())
            run.say("Take care: {why}", {{"why", plain(ui::positionKindText(p.warning))}});
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
    std::string m_system, m_grids, m_area, m_as;
    int m_digits = -1;
};

} // namespace

std::unique_ptr<Verb> makePosition()
{
    return std::make_unique<PositionVerb>();
}

} // namespace cupule::app
