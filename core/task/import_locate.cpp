#include "core/task/import_locate.h"

#include <cmath>

#include "core/exchange/problem.h"

namespace cupule {

namespace {

std::string placeHeading(const ImportColumns& columns)
{
    for (const auto field : {ImportField::position, ImportField::easting, ImportField::first})
        if (const auto* column = columns.find(field))
            return column->heading;
    return {};
}

} // namespace

BatchLocator::BatchLocator(Projector& projector, const Pack& pack, std::string file, const ImportColumns& columns)
    : m_projector(projector), m_pack(pack), m_file(std::move(file)), m_column(placeHeading(columns))
{
}

Result<BatchLocator::System*> BatchLocator::systemOf(const GridSystem& system)
{
    for (auto& known : m_systems)
        if (known.system == system)
            return &known;
    auto operation = m_projector.operation(system);
    if (!operation)
        return fail(operation.error());
    m_systems.push_back({system, system.name(), std::move(*operation), {}});
    return &m_systems.back();
}

void BatchLocator::lose(TableRow& row, TableBatch& batch) const
{
    ImportProblem problem;
    problem.file = m_file;
    problem.column = m_column;
    problem.value = shownValue(row.visit.position->typed);
    problem.kind = kind::unreadablePosition;
    problem.cause = "no-transformation";
    batch.loseRow(row, std::move(problem));
}

/// A place near the edge of what the operation was made for, or beyond the grid file: as a single position would be read.
void BatchLocator::locateAlone(TableRow& row, TableBatch& batch)
{
    const auto alone = m_projector.locate(*row.place);
    if (!alone)
        return lose(row, batch);
    Position& position = *row.visit.position;
    position.latitude = alone->latitude;
    position.longitude = alone->longitude;
    position.operation.assign(alone->operation);
    position.operationAccuracyMetres = alone->operationAccuracyMetres;
}

void BatchLocator::finish(TableRow& row, TableBatch& batch, const System& system, double latitude, double longitude)
{
    const bool usual = std::isfinite(latitude) && std::isfinite(longitude)
                       && inArea(m_pack.settings.areaWSEN, latitude, longitude) && !system.operation.usesGrid;
    if (!usual)
        return locateAlone(row, batch);
    Position& position = *row.visit.position;
    position.latitude = latitude;
    position.longitude = longitude;
    position.operation.assign(system.operation.description);
    position.operationAccuracyMetres = system.operation.accuracyMetres;
}

Status BatchLocator::project(System& system, TableBatch& batch)
{
    const std::size_t count = system.rows.size();
    m_eastings.resize(count);
    m_northings.resize(count);
    m_latitudes.resize(count);
    m_longitudes.resize(count);
    for (std::size_t i = 0; i < count; ++i) {
        m_eastings[i] = system.rows[i]->place->centreEasting();
        m_northings[i] = system.rows[i]->place->centreNorthing();
    }
    if (auto done = m_projector.toGeographic(system.system, m_eastings, m_northings, m_latitudes, m_longitudes); !done)
        return fail(done.error());
    for (std::size_t i = 0; i < count; ++i)
        finish(*system.rows[i], batch, system, m_latitudes[i], m_longitudes[i]);
    return {};
}

Status BatchLocator::locate(TableBatch& batch)
{
    for (auto& system : m_systems)
        system.rows.clear();
    for (std::size_t i = 0; i < batch.good; ++i) {
        TableRow& row = batch.rows[i];
        if (!row.place || !row.place->system.isProjected())
            continue;
        const auto system = systemOf(row.place->system);
        if (!system)
            return fail(system.error());
        (*system)->rows.push_back(&row);
    }
    for (auto& system : m_systems)
        if (!system.rows.empty())
            if (auto done = project(system, batch); !done)
                return done;
    for (std::size_t i = 0; i < batch.good; ++i) {
        TableRow& row = batch.rows[i];
        if (!row.place || row.lost)
            continue;
        Position& position = *row.visit.position;
        const bool mayJudge = position.warning.empty() || row.place->warning == PositionWarning::veryCoarse;
        if (mayJudge && !inArea(m_pack.settings.areaWSEN, position.latitude, position.longitude))
            position.warning.assign("outside-area");
    }
    return {};
}

} // namespace cupule
