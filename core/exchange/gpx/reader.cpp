#include "core/exchange/gpx/reader.h"

#include <algorithm>

#include <pugixml.hpp>

#include "core/base/file.h"
#include "core/base/text.h"
#include "core/exchange/csv/numbers.h"
#include "core/exchange/gpx/xml_detail.h"

namespace cupule {

namespace {

constexpr std::int64_t deepestNesting = 64;
constexpr CivilDate firstOfGps{3657};      // 1980-01-06: the time of the receivers begins (IS-GPS-200)
constexpr CivilDate lastSensible{47481};   // 2099-12-31

std::string textOf(const pugi::xml_node& node)
{
    std::string text;
    for (const auto& child : node.children())
        if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata)
            text += child.value();
    return std::string(trim(text));
}

/// Date and time of an XML Schema dateTime without zone, or of a date alone.
std::optional<GpxTime> localTime(std::string_view text)
{
    const auto date = CivilDate::parse(text.substr(0, 10));
    if (!date)
        return std::nullopt;
    GpxTime time;
    time.kind = GpxTime::Kind::localOnly;
    time.date = *date;
    if (text.size() == 10)
        return time;
    const auto clock = LocalTime::parse(text.substr(11, 8));
    if (!clock)
        return std::nullopt;
    time.time = *clock;
    return time;
}

class Reader {
public:
    Reader(std::string_view text, const gpx_detail::XmlCheck& check) : m_text(text), m_check(check), m_lines(text) {}

    /// Parses; the damage found, if any, stands in damage(). False where there is no gpx element.
    bool parse()
    {
        const auto result = m_document.load_buffer(m_text.data(), m_text.size(), pugi::parse_default,
                                                   pugi::encoding_utf8);
        if (!result) {
            m_end = static_cast<std::size_t>(std::max<std::ptrdiff_t>(result.offset, 0));
            m_broken = result.description();
        }
        for (const auto& node : m_document.children())
            if (node.type() == pugi::node_element) {
                const std::string_view name = node.name();
                const auto colon = name.find(':');
                m_prefix = colon == std::string_view::npos ? "" : std::string(name.substr(0, colon + 1));
                m_root = node;
                return name.substr(m_prefix.size()) == "gpx";
            }
        return false;
    }

    [[nodiscard]] std::optional<Fault> damage(const std::string& file) const
    {
        if (m_check.spots.empty() && m_broken.empty())
            return std::nullopt;
        Fault fault{"gpx.malformed", FaultKind::data, {}, {file, 0, 0, 0, {}}, m_broken};
        std::size_t byte = m_end;
        std::string what = m_broken;
        std::string entity;
        if (!m_check.spots.empty() && m_check.spots.front().byte <= m_end) {
            byte = m_check.spots.front().byte;
            what = m_check.spots.front().what;
            entity = m_check.spots.front().entity;
        }
        fault.place.byte = static_cast<std::int64_t>(byte);
        fault.place.line = gpx_detail::LineCounter(m_text).lineOf(byte);
        fault.arguments = {{"line", std::to_string(fault.place.line)}, {"what", what}};
        if (!entity.empty())
            fault.arguments.push_back({"entity", entity});
        return fault;
    }

    GpxFile read()
    {
        m_file.version = m_root.attribute("version").value();
        for (const auto& node : m_root.children()) {
            if (is(node, "wpt")) {
                ++m_file.waypoints;
                point(node, GpxPoint::Kind::waypoint, {});
            } else if (is(node, "rte")) {
                ++m_file.routes;
                points(node, "rtept", GpxPoint::Kind::routePoint, textOf(child(node, "name")));
            } else if (is(node, "trk")) {
                ++m_file.tracks;
                for (const auto& segment : node.children())
                    if (is(segment, "trkseg"))
                        points(segment, "trkpt", GpxPoint::Kind::trackPoint, textOf(child(node, "name")));
            }
        }
        return std::move(m_file);
    }

private:
    [[nodiscard]] bool is(const pugi::xml_node& node, std::string_view name) const
    {
        const std::string_view full = node.name();
        return full.size() == m_prefix.size() + name.size() && full.starts_with(m_prefix) && full.ends_with(name);
    }

    [[nodiscard]] pugi::xml_node child(const pugi::xml_node& node, std::string_view name) const
    {
        for (const auto& one : node.children())
            if (is(one, name))
                return one;
        return {};
    }

    void points(const pugi::xml_node& parent, std::string_view name, GpxPoint::Kind kind, const std::string& group)
    {
        for (const auto& node : parent.children())
            if (is(node, name)) {
                ++(kind == GpxPoint::Kind::routePoint ? m_file.routePoints : m_file.trackPoints);
                point(node, kind, group);
            }
    }

    void problem(std::string_view what, std::string column, std::string_view value, bool keeps, std::string detail = {})
    {
        ReadProblem one;
        one.kind = what;
        one.row = m_point.number;
        one.line = m_point.line;
        one.column = std::move(column);
        one.value = shownValue(value);
        one.detail = std::move(detail);
        one.keeps = keeps;
        m_file.problems.push_back(std::move(one));
    }

    /// The '>' that ends an element, or npos where it is not closed.
    [[nodiscard]] std::size_t closeOf(const pugi::xml_node& node, std::size_t begin) const
    {
        char quote = '\0';
        std::size_t at = begin;
        for (; at < m_text.size() && (quote != '\0' || m_text[at] != '>'); ++at) {
            const char c = m_text[at];
            if (quote != '\0')
                quote = c == quote ? '\0' : quote;
            else if (c == '"' || c == '\'')
                quote = c;
        }
        if (at >= m_text.size())
            return std::string_view::npos;
        if (m_text[at - 1] == '/')
            return at;
        const auto last = m_text.find("</" + std::string(node.name()), at);
        return last == std::string_view::npos ? last : m_text.find('>', last);
    }

    /// True where the element is closed before the damage and holds none of it.
    [[nodiscard]] bool whole(const pugi::xml_node& node) const
    {
        if (m_broken.empty() && m_check.spots.empty())
            return true;
        const auto begin = static_cast<std::size_t>(node.offset_debug());
        const auto close = closeOf(node, begin);
        if (close == std::string_view::npos || close > m_end)
            return false;
        const auto spot = std::lower_bound(m_check.spots.begin(), m_check.spots.end(), begin,
                                           [](const auto& one, std::size_t byte) { return one.byte < byte; });
        return spot == m_check.spots.end() || spot->byte > close;
    }

    void point(const pugi::xml_node& node, GpxPoint::Kind kind, const std::string& group)
    {
        m_point = {};
        m_point.kind = kind;
        m_point.groupName = group;
        m_point.number = ++m_number;
        m_point.line = m_lines.lineOf(static_cast<std::size_t>(node.offset_debug()));
        if (!whole(node)) {
            problem(cupule::kind::damagedPoint, node.name(), {}, false);
            keepUnread(node);
            return;
        }
        if (!position(node)) {
            keepUnread(node);
            return;
        }
        m_point.name = textOf(child(node, "name"));
        m_point.comment = textOf(child(node, "cmt"));
        m_point.description = textOf(child(node, "desc"));
        elevation(textOf(child(node, "ele")));
        time(textOf(child(node, "time")));
        m_file.points.push_back(m_point);
    }

    void keepUnread(const pugi::xml_node& node)
    {
        if (m_point.kind == GpxPoint::Kind::trackPoint)
            return;
        m_file.unread.push_back({m_point.kind, m_point.number, textOf(child(node, "name")),
                                 node.attribute("lat").value(), node.attribute("lon").value(),
                                 textOf(child(node, "desc"))});
    }

    bool position(const pugi::xml_node& node)
    {
        const std::string latitudeText = node.attribute("lat").value();
        const std::string longitudeText = node.attribute("lon").value();
        const auto latitude = readNumber(latitudeText, '.');
        const auto longitude = readNumber(longitudeText, '.');
        const std::string both = latitudeText + " " + longitudeText;
        if (!latitude || !longitude) {
            problem(cupule::kind::unreadablePosition, latitude ? "lon" : "lat", both, false);
            return false;
        }
        switch (checkDegrees(*latitude, *longitude)) {
        case DegreesCheck::fine:
            break;
        case DegreesCheck::swapped:
            problem(cupule::kind::swappedCoordinates, "lat", both, false, longitudeText + " " + latitudeText);
            return false;
        case DegreesCheck::outOfRange:
            problem(cupule::kind::outOfRange, "lat", both, false);
            return false;
        case DegreesCheck::nullIsland:
            problem(cupule::kind::nullIsland, "lat", both, false);
            return false;
        }
        m_point.latitude = *latitude;
        m_point.longitude = *longitude;
        return true;
    }

    void elevation(const std::string& text)
    {
        if (text.empty())
            return;
        const auto metres = readNumber(text, '.');
        if (metres)
            m_point.elevationMetres = *metres;
        else
            problem(cupule::kind::unreadableElevation, "ele", text, true);
    }

    void time(const std::string& text)
    {
        if (text.empty())
            return;
        GpxTime& time = m_point.time;
        const auto instant = parseInstant(text);
        if (instant) {
            time.kind = GpxTime::Kind::instant;
            time.instant = *instant;
            time.date = CivilDate::of(*instant);
        } else if (const auto local = instant.error().code == "instant.zone" || text.size() == 10 ? localTime(text)
                                                                                                  : std::nullopt) {
            time = *local;
            problem(cupule::kind::localTime, "time", text, true);
        } else {
            time.kind = GpxTime::Kind::unreadable;
            const auto date = CivilDate::parse(std::string_view(text).substr(0, 10));
            const bool impossible = !date && date.error().code == "date.impossible";
            problem(impossible ? cupule::kind::impossibleDate : cupule::kind::unreadableTime, "time", text, true);
            return;
        }
        if (time.date < firstOfGps || time.date > lastSensible)
            problem(cupule::kind::absurdDate, "time", text, true);
    }

    std::string_view m_text;
    const gpx_detail::XmlCheck& m_check;
    gpx_detail::LineCounter m_lines;
    pugi::xml_document m_document;
    pugi::xml_node m_root;
    std::string m_prefix;
    std::string m_broken;                                  // what pugixml says, empty where it read to the end
    std::size_t m_end = static_cast<std::size_t>(-1);      // where it stopped
    GpxFile m_file;
    GpxPoint m_point;
    std::int64_t m_number = 0;
};

} // namespace

Result<GpxFile> readGpxText(std::string_view document, const std::string& name, const GpxOptions& options)
{
    const auto at = [&](Fault fault) {
        fault.place.file = name;
        return fail(std::move(fault));
    };
    const auto text = gpx_detail::toUtf8(document);
    if (!text)
        return at(text.error());
    const auto check = gpx_detail::checkXml(text->text);
    if (check.depth > deepestNesting)
        return at({"gpx.deep", FaultKind::data, {{"depth", std::to_string(check.depth)}}, {}, {}});
    Reader reader(text->text, check);
    const bool isGpx = reader.parse();
    auto damage = reader.damage(name);
    if (!isGpx && damage)
        return at(*damage);
    if (!isGpx)
        return at({"gpx.not-gpx", FaultKind::data, {}, {}, {}});
    GpxFile file = reader.read();
    if (damage)
        damage->arguments.push_back({"points", std::to_string(file.points.size())});
    if (damage && !options.goodPointsOnly)
        return fail(std::move(*damage));
    if (text->notAsDeclared) {
        ReadProblem problem;
        problem.kind = kind::badEncoding;
        problem.detail = "Windows-1252";
        problem.keeps = true;
        file.problems.insert(file.problems.begin(), std::move(problem));
    }
    file.damage = std::move(damage);
    return file;
}

Result<GpxFile> readGpx(const std::string& path, const GpxOptions& options, const Progress& progress)
{
    const auto document = readFile(path, options.limitBytes);
    if (!document)
        return tl::unexpected<Fault>(document.error());
    if (progress.cancelled())
        return fail("job.cancelled", FaultKind::io, {{"file", path}});
    return readGpxText(*document, path, options);
}

} // namespace cupule
