// Runs the program's verbs in this process, with captured streams, a clock that stands still and seeded chance.

#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/base/clock.h"
#include "core/base/random.h"

namespace cupule::test {

struct Said {
    int code = -1;
    std::string out, err;
    /// The output as JSON; fails the test where it is none.
    [[nodiscard]] nlohmann::json json() const;
    [[nodiscard]] bool says(const std::string& part) const { return out.find(part) != std::string::npos; }
};

class Command {
public:
    Command();
    /// As the person with this code (V... are verifiers, OF the office, everyone else a volunteer who handles samples).
    Said as(const std::string& code, std::vector<std::string> words);
    /// The same with --json.
    nlohmann::json json(const std::string& code, std::vector<std::string> words, int expectedCode = 0);
    /// Exactly these words.
    Said run(const std::vector<std::string>& words);
    /// The same name in every test: a store in this command's folder, made on the first call, with a find and a null in it.
    std::string vale();
    [[nodiscard]] const std::string& folder() const { return m_folder; }
    [[nodiscard]] std::string path(const std::string& name) const { return m_folder + "/" + name; }
    FixedClock clock;

private:
    std::string m_folder;
    SeededRandom m_random{5};
};

} // namespace cupule::test
