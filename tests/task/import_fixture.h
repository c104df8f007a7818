// A store of its own in a temporary folder, with a clock that stands still, and files written into the same folder.

#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/record/visit.h"
#include "core/task/import.h"
#include "core/task/session.h"

namespace cupule::test {

class ImportBench {
public:
    explicit ImportBench(const std::string& zone = "Europe/London");

    [[nodiscard]] Session& session() { return *m_session; }
    [[nodiscard]] const std::string& folder() const { return m_folder; }
    /// The path of a file with these bytes.
    std::string file(const std::string& name, const std::string& bytes) const;
    /// Imports a table of these bytes, by default as "day.csv"; a fault fails the test.
    ImportReport table(const std::string& bytes, const ImportOptions& options = {}, const std::string& name = "day.csv");
    ImportReport files(const std::vector<std::string>& paths, const ImportOptions& options = {});

    std::vector<Visit> visits();
    /// Labels of all trees with how many there are of each.
    std::map<std::string, int> trees();
    std::vector<Tree> treesLabelled(const std::string& label);
    std::int64_t journalLines();

private:
    std::string m_folder;
    FixedClock m_clock;
    SeededRandom m_random;
    std::unique_ptr<Session> m_session;
};

/// "kind column value" of each problem whose row was set aside, in order.
std::vector<std::string> asideKinds(const ImportReport& report);
std::string content(const std::string& path);

} // namespace cupule::test
