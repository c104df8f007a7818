#include "core/task/import_report.h"

#include "core/base/text.h"

namespace cupule {

Position devicePosition(double latitude, double longitude, std::string_view obtained, const Pack& pack)
{
    Position position;
    position.typed = numberText(latitude) + ", " + numberText(longitude);
    position.system = "WGS84";
    position.latitude = latitude;
    position.longitude = longitude;
    position.uncertaintyMetres = receiverMetres;
    position.operation = "none";
    position.operationAccuracyMetres = 0;
    position.obtained = obtained;
    if (!inArea(pack.settings.areaWSEN, latitude, longitude))
        position.warning = "outside-area";
    return position;
}

ImportProblem asImportProblem(const ReadProblem& problem, const std::string& file)
{
    ImportProblem out;
    out.file = file;
    out.row = problem.row;
    out.line = problem.line;
    out.column = problem.column;
    out.value = problem.value;
    out.kind = problem.kind;
    out.cause = problem.cause;
    out.suggestion = problem.detail;
    out.kept = problem.keeps;
    return out;
}

std::optional<ImportProblem> asFileProblem(const Fault& fault, const std::string& file)
{
    for (const std::string_view room : {"file.", "csv.", "gpx.", "photo."})
        if (fault.code.starts_with(room) && fault.code != "file.write" && fault.code != "file.full") {
            ImportProblem problem;
            problem.file = file;
            problem.line = fault.place.line;
            problem.column = fault.place.field;
            problem.kind = fault.code;
            for (const auto& argument : fault.arguments)
                if (argument.name != "file")
                    problem.value += (problem.value.empty() ? "" : ", ") + argument.name + " " + argument.value;
            return problem;
        }
    return std::nullopt;
}

} // namespace cupule
