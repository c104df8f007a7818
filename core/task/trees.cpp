#include "core/task/trees.h"

#include "core/base/text.h"
#include "core/position/write.h"
#include "core/store/places.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

TreeFilter filterOf(const TreeQuery& query)
{
    TreeFilter filter;
    filter.words = query.words;
    filter.site = query.site;
    filter.descending = query.descending;
    switch (query.show) {
    case TreesShown::all: filter.show = TreeShow::all; break;
    case TreesShown::standing: filter.show = TreeShow::stands; break;
    case TreesShown::gone: filter.show = TreeShow::gone; break;
    case TreesShown::findWaits: filter.show = TreeShow::findWaits; break;
    case TreesShown::findAccepted: filter.show = TreeShow::findAccepted; break;
    case TreesShown::neverSeen: filter.show = TreeShow::neverSeen; break;
    }
    switch (query.order) {
    case TreeOrder::label: filter.sort = TreeSort::label; break;
    case TreeOrder::site: filter.sort = TreeSort::site; break;
    case TreeOrder::lastVisit: filter.sort = TreeSort::lastVisit; break;
    }
    return filter;
}

/// Figures of a grid reference that name no smaller square than the one that was given.
int figuresFor(double squareMetres)
{
    int figures = 10;
    for (double side = 1; side < squareMetres && figures > 2; side *= 10)
        figures -= 2;
    return squareMetres <= 0 ? 8 : figures;
}

} // namespace

std::string positionText(Session& session, const Position& position)
{
    const auto system = parseSystem(session.info().notation);
    const bool british = system && system->system.kind == GridSystem::Kind::osgb;
    const bool irish = system && system->system.kind == GridSystem::Kind::ig;
    if (british || irish) {
        const auto grid = system->system.kind;
        if (position.system == system->system.name() && position.easting && position.northing)
            if (const auto text = writeReference(grid, {*position.easting, *position.northing},
                                                 figuresFor(position.squareMetres)))
                return *text;
        if (const auto projector = session.projector())
            if (const auto text = writePosition(**projector, position.latitude, position.longitude,
                                                british ? Notation::osgb : Notation::irish,
                                                figuresFor(position.squareMetres)))
                return *text;
    }
    if (const auto projector = session.projector())
        if (const auto text =
                writePosition(**projector, position.latitude, position.longitude, Notation::decimalDegrees))
            return *text;
    return numberText(position.latitude) + ", " + numberText(position.longitude);
}

Result<int> countTrees(Session& session, const TreeQuery& query)
{
    const auto count = session.store().trees().count(filterOf(query));
    if (!count)
        return fail(count.error());
    return static_cast<int>(*count);
}

Result<std::vector<TreeLine>> treeLines(Session& session, const TreeQuery& query, int from, int count)
{
    const auto rows = session.store().trees().window(filterOf(query), from, count);
    if (!rows)
        return fail(rows.error());
    std::vector<TreeLine> lines;
    lines.reserve(rows->size());
    for (const auto& row : *rows) {
        TreeLine line;
        line.id = row.tree.id;
        line.label = row.tree.label;
        line.siteName = row.siteName;
        line.host = row.host;
        line.fate = row.tree.fate;
        line.fateDate = row.tree.fateDate;
        line.visits = row.visits;
        line.lastVisit = row.lastVisit;
        line.positiveAccepted = row.positiveAccepted;
        line.positiveWaiting = row.positiveWaiting;
        if (row.tree.position) {
            line.position = positionText(session, *row.tree.position);
            line.uncertaintyMetres = row.tree.position->uncertaintyMetres;
        }
        lines.push_back(std::move(line));
    }
    hide(ownSight(session), lines);
    return lines;
}

} // namespace cupule
