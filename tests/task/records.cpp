#include "tests/task/records.h"

#include <cstdlib>
#include <fstream>

#include "tests/support/shared_data.h"

namespace cupule::test {

std::optional<Records> madeRecords(std::int64_t rows)
{
    const auto script = sharedPath("bench/make_records.py");
    if (!script) {
        skipped("bench/make_records.py is not here");
        return std::nullopt;
    }
    const std::string folder = temporaryFolder();
    const std::string command =
        "python3 '" + *script + "' --visits " + std::to_string(rows) + " --out '" + folder + "' > /dev/null 2>&1";
    if (std::system(command.c_str()) != 0) {
        skipped("python3 is not installed");
        return std::nullopt;
    }
    Records records{folder + "/visits.csv", folder + "/tracks.gpx", {}, rows};
    std::ifstream list(folder + "/expected_bad.csv");
    std::string line;
    std::getline(list, line);
    while (std::getline(list, line))
        records.expected.push_back(line);
    return records;
}

std::vector<std::string> asExpected(const ImportReport& report)
{
    std::vector<std::string> out;
    for (const auto& problem : report.problems)
        if (!problem.kept)
            out.push_back(std::to_string(problem.row) + "," + std::to_string(problem.line) + "," + problem.column + ","
                          + problem.kind + "," + problem.value);
    return out;
}

} // namespace cupule::test
