// Puts the positions of a batch on the globe, many at a time. Uses the session's projector on whatever thread calls.

#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/position/transform.h"
#include "core/task/import_table.h"

namespace cupule {

class BatchLocator {
public:
    BatchLocator(Projector& projector, const Pack& pack, std::string file, const ImportColumns& columns);
    /// Fills latitude, longitude, operation and warning; rows that no transformation reaches are set aside.
    Status locate(TableBatch& batch);

private:
    struct System {
        GridSystem system;
        std::string name;
        OperationInfo operation;
        std::vector<TableRow*> rows;
    };
    Result<System*> systemOf(const GridSystem& system);
    Status project(System& system, TableBatch& batch);
    void lose(TableRow& row, TableBatch& batch) const;
    void locateAlone(TableRow& row, TableBatch& batch);
    void finish(TableRow& row, TableBatch& batch, const System& system, double latitude, double longitude);

    Projector& m_projector;
    const Pack& m_pack;
    std::string m_file, m_column;
    std::vector<System> m_systems;
    std::vector<double> m_eastings, m_northings, m_latitudes, m_longitudes;
};

} // namespace cupule
