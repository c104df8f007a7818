#include "core/task/import_gpx.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>

#include "core/base/text.h"
#include "core/exchange/gpx/reader.h"
#include "core/position/geodesic.h"
#include "core/store/places.h"
#include "core/task/import_aside.h"
#include "core/task/import_report.h"
#include "core/task/import_told.h"

namespace cupule {

namespace {

constexpr std::size_t mostNamesShown = 5;

std::string timeText(const GpxTime& time)
{
    if (time.kind == GpxTime::Kind::instant)
        return instantText(time.instant);
    if (time.kind != GpxTime::Kind::localOnly)
        return {};
    std::string text = time.date.text();
    if (time.time)
        text.append(" ").append(time.time->text());
    return text;
}

std::string wordsOf(const GpxPoint& point)
{
    std::string words;
    for (const auto& text : {point.comment, point.description})
        if (!trim(text).empty())
            words += (words.empty() ? "" : "\n") + text;
    return words;
}

std::string noteOf(const GpxPoint& point)
{
    std::string note = wordsOf(point);
    if (const std::string time = timeText(point.time); !time.empty())
        note += (note.empty() ? "" : "\n") + time;
    return note;
}

class PointImport {
public:
    PointImport(Session& session, Change& change, const ImportOptions& options, ImportFile& file, ImportReport& report)
        : m_session(session), m_change(change), m_options(options), m_file(file), m_report(report)
    {
    }

    Status begin()
    {
        if (m_options.site.empty())
            return {};
        auto sites = m_session.store().sites().byName(m_options.site);
        if (!sites)
            return fail(sites.error());
        if (!sites->empty()) {
            m_site = sites->front().id;
            return {};
        }
        Site site;
        site.id = m_session.ids().make();
        site.name = m_options.site;
        m_site = site.id;
        m_newSites = 1;
        return m_session.store().sites().save(m_change, site);
    }

    Status take(const GpxPoint& point)
    {
        const std::string label(trim(point.name));
        if (label.empty()) {
            ++m_file.setAside;
            say(point, "missing-label", {}, {}, false);
            m_nameless.push_back(point.number);
            return {};
        }
        auto trees = m_site.isNull() ? m_session.store().trees().labelledAnywhere(label)
                                     : m_session.store().trees().labelled(m_site, label);
        if (!trees)
            return fail(trees.error());
        const Position here = devicePosition(point.latitude, point.longitude, "device", m_session.pack());
        double metres = 0;
        Tree* tree = match(*trees, here, metres);
        if (tree == nullptr)
            return make(point, label, here, !trees->empty(), metres);
        const bool coarse = !tree->position
                            || tree->position->uncertaintyMetres > m_session.pack().settings.sameTreeMetres;
        // Of a tree that is known another point's time is nothing new; what somebody wrote is.
        const bool saysMore = addLines(tree->note, wordsOf(point));
        ++(coarse ? m_file.kept : m_file.knownAlready);
        if (!coarse && !saysMore)
            return {};
        m_told += saysMore ? 1 : 0;
        if (coarse) {
            ++m_placed;
            tree->position = here;
        }
        return m_session.store().trees().save(m_change, *tree);
    }

    void finish()
    {
        m_report.newTrees += m_newTrees;
        m_report.newSites += m_newSites;
        if (m_placed > 0)
            m_file.notes.push_back("positions-given:" + std::to_string(m_placed));
        if (m_told > 0)
            m_file.notes.push_back("words-added:" + std::to_string(m_told));
    }

    [[nodiscard]] bool changesNothing() const { return m_newTrees + m_newSites + m_placed + m_told == 0; }
    /// Numbers of the points without a name.
    [[nodiscard]] const std::vector<std::int64_t>& nameless() const { return m_nameless; }

private:
    /// The tree that the point names; else null and how far the nearest of that label is.
    Tree* match(std::vector<Tree>& trees, const Position& here, double& metres) const
    {
        Tree* nearest = nullptr;
        Tree* unplaced = nullptr;
        std::size_t without = 0;
        double best = std::numeric_limits<double>::infinity();
        for (auto& tree : trees) {
            if (!tree.position) {
                unplaced = &tree;
                ++without;
                continue;
            }
            const double apart = distanceMetres(tree.position->latitude, tree.position->longitude, here.latitude,
                                                here.longitude);
            const double limit =
                std::max(m_session.pack().settings.sameTreeMetres, reachMetres(*tree.position) + reachMetres(here));
            if (apart < best) {
                best = apart;
                nearest = apart <= limit || !m_site.isNull() ? &tree : nullptr;
            }
        }
        metres = best < std::numeric_limits<double>::infinity() ? best : 0;
        if (nearest != nullptr)
            return nearest;
        return without == 1 && trees.size() == 1 ? unplaced : nullptr;
    }

    Status make(const GpxPoint& point, const std::string& label, const Position& here, bool elsewhere, double metres)
    {
        Tree tree;
        tree.id = m_session.ids().make();
        tree.site = m_site;
        tree.label = label;
        tree.position = here;
        tree.note = noteOf(point);
        if (auto saved = m_session.store().trees().save(m_change, tree); !saved)
            return saved;
        ++m_file.kept;
        ++m_newTrees;
        if (elsewhere)
            say(point, "same-label-elsewhere", label, numberText(std::round(metres)), true);
        return {};
    }

    void say(const GpxPoint& point, const char* kind, const std::string& value, const std::string& suggestion, bool kept)
    {
        ImportProblem problem;
        problem.file = m_file.file;
        problem.row = point.number;
        problem.line = point.line;
        problem.column = "name";
        problem.value = value;
        problem.kind = kind;
        problem.suggestion = suggestion;
        problem.kept = kept;
        m_report.problems.push_back(std::move(problem));
    }

    Session& m_session;
    Change& m_change;
    const ImportOptions& m_options;
    ImportFile& m_file;
    ImportReport& m_report;
    Uid m_site;
    std::int64_t m_newTrees = 0, m_newSites = 0, m_placed = 0, m_told = 0;
    std::vector<std::int64_t> m_nameless;
};

/// Writes the points that were set aside as a table of trees; an empty path where there are none.
Result<std::string> writeAside(const GpxFile& gpx, GpxPoint::Kind wanted, const std::vector<std::int64_t>& nameless,
                               std::span<const ImportProblem> problems, const std::string& path,
                               const std::string& target, bool exact)
{
    std::vector<std::vector<std::string>> rows;
    const auto add = [&](std::int64_t number, std::initializer_list<std::string> cells) {
        std::vector<ImportProblem> ofPoint;
        for (const auto& problem : problems)
            if (problem.row == number && !problem.kept)
                ofPoint.push_back(problem);
        const auto first = asideCells(ofPoint);
        rows.emplace_back(first.begin(), first.end()).insert(rows.back().end(), cells);
    };
    for (const auto& point : gpx.unread)
        if (point.kind == wanted)
            add(point.number, {point.name, point.latitude, point.longitude, point.description});
    for (const auto& point : gpx.points)
        if (std::find(nameless.begin(), nameless.end(), point.number) != nameless.end())
            add(point.number, {point.name, numberText(point.latitude), numberText(point.longitude), noteOf(point)});
    if (rows.empty())
        return std::string();
    return writeAsideTable(target, exact, path, {"tree", "latitude", "longitude", "note"}, rows);
}

/// The question that a damaged document raises: nothing of it is taken unasked.
ImportQuestion damaged(const Fault& fault, const std::string& path)
{
    ImportQuestion question{path, "damaged-gpx", fault.argument("entity"), {}, "--good-points"};
    std::string reading = "line " + fault.argument("line") + ": " + fault.argument("what");
    if (!question.column.empty())
        reading += " " + question.column;
    question.readings.push_back(reading + "; points that can be read: " + fault.argument("points"));
    return question;
}

void note(ImportFile& file, const char* code, std::int64_t count)
{
    if (count > 0)
        file.notes.push_back(std::string(code) + ":" + std::to_string(count));
}

/// False where the points that there are have to be asked about.
bool choosePoints(const GpxFile& gpx, const ImportOptions& options, ImportFile& file, ImportReport& report,
                  std::vector<const GpxPoint*>& points)
{
    const bool routes = gpx.waypoints == 0 && gpx.routePoints > 0;
    note(file, "track-points", gpx.trackPoints);
    note(file, routes && options.takeRoutePoints ? "route-points-taken" : "route-points", gpx.routePoints);
    if (gpx.waypoints == 0)
        file.notes.push_back("no-waypoints:0");
    const auto timeless = std::count_if(gpx.points.begin(), gpx.points.end(), [](const GpxPoint& point) {
        return point.kind == GpxPoint::Kind::trackPoint && point.time.kind == GpxTime::Kind::none;
    });
    note(file, "track-points-without-time", timeless);
    const auto wanted = routes ? GpxPoint::Kind::routePoint : GpxPoint::Kind::waypoint;
    for (const auto& point : gpx.points)
        if (point.kind == wanted)
            points.push_back(&point);
    if (!routes || options.takeRoutePoints)
        return true;
    ImportQuestion question{file.file, "route-points", {}, {}, "--route-points"};
    for (std::size_t i = 0; i < std::min(points.size(), mostNamesShown); ++i)
        question.readings.push_back(points[i]->name + " " + numberText(points[i]->latitude) + ", "
                                    + numberText(points[i]->longitude));
    report.questions.push_back(std::move(question));
    return false;
}

} // namespace

Result<ImportFile> importGpx(Session& session, const std::string& path, const std::string& asideTarget,
                             const ImportOptions& options, const Progress& progress, ImportReport& report)
{
    const std::size_t problemsBefore = report.problems.size();
    ImportFile file;
    file.file = path;
    file.format = "gpx";
    auto gpx = readGpx(path, {options.takeGoodPoints, std::int64_t{256} << 20}, progress);
    if (!gpx && gpx.error().code == "gpx.malformed" && !options.takeGoodPoints) {
        if (auto problem = asFileProblem(gpx.error(), path))
            report.problems.push_back(std::move(*problem));
        report.questions.push_back(damaged(gpx.error(), path));
        return file;
    }
    if (!gpx)
        return fail(gpx.error());
    if (gpx->damage)
        if (auto problem = asFileProblem(*gpx->damage, path))
            report.problems.push_back(std::move(*problem));
    for (const auto& problem : gpx->problems)
        report.problems.push_back(asImportProblem(problem, path));
    std::vector<const GpxPoint*> points;
    if (!choosePoints(*gpx, options, file, report, points))
        return file;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    PointImport import(session, *change, options, file, report);
    if (auto begun = import.begin(); !begun)
        return fail(begun.error());
    file.rows = gpx->waypoints == 0 && options.takeRoutePoints ? gpx->routePoints : gpx->waypoints;
    file.setAside = file.rows - static_cast<std::int64_t>(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        if (auto taken = import.take(*points[i]); !taken)
            return fail(taken.error());
        progress.tell(static_cast<std::int64_t>(i + 1), static_cast<std::int64_t>(points.size()));
    }
    import.finish();
    if (!options.dryRun && !import.changesNothing())
        if (auto kept = session.commit(*change); !kept)
            return fail(kept.error());
    if (options.dryRun)
        return file;
    const auto wanted = gpx->waypoints == 0 ? GpxPoint::Kind::routePoint : GpxPoint::Kind::waypoint;
    auto aside = writeAside(*gpx, wanted, import.nameless(), std::span(report.problems).subspan(problemsBefore), path,
                            asideTarget, !options.asideFile.empty());
    if (!aside)
        return fail(aside.error());
    file.asideFile = std::move(*aside);
    return file;
}

} // namespace cupule
