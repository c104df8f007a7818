#include "tests/app/command.h"

#include <filesystem>
#include <sstream>

#include "app/program.h"
#include "app/words.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

namespace {

/// 11 June 2026, noon UTC: green galls stand on the leaves.
Instant noon()
{
    return {(static_cast<std::int64_t>(CivilDate::make(2026, 6, 11)->days) * 24 + 12) * 3'600'000, 0};
}

} // namespace

nlohmann::json Said::json() const
{
    auto parsed = nlohmann::json::parse(out, nullptr, false);
    INFO("out: " << out << "\nerr: " << err);
    REQUIRE_FALSE(parsed.is_discarded());
    return parsed;
}

Command::Command() : clock(noon()), m_folder(temporaryFolder()) {}

Said Command::run(const std::vector<std::string>& words)
{
    std::ostringstream out, err;
    const app::BridgeWords sentences;
    Said said;
    said.code = app::runProgram(words, {out, err, clock, m_random, sentences});
    said.out = out.str();
    said.err = err.str();
    return said;
}

Said Command::as(const std::string& code, std::vector<std::string> words)
{
    const std::string folder = path(code);
    if (!std::filesystem::exists(folder)) {
        const char* roles = code == "OF" ? "office" : code[0] == 'V' ? "verifier,volunteer" : "volunteer,sample-handler";
        REQUIRE(run({"profile", "make", "--profile", folder, "--code", code, "--name", "Person " + code, "--role", roles,
                     "--block", "TV"})
                    .code == 0);
    }
    words.insert(words.end(), {"--profile", folder});
    return run(words);
}

nlohmann::json Command::json(const std::string& code, std::vector<std::string> words, int expectedCode)
{
    words.emplace_back("--json");
    const Said said = as(code, std::move(words));
    INFO(said.out << said.err);
    REQUIRE(said.code == expectedCode);
    return said.json();
}

std::string Command::vale()
{
    const std::string store = path("vale.cupule");
    if (std::filesystem::exists(store))
        return store;
    REQUIRE(as("OF", {"new", store, "--name", "Tharn Vale", "--region", "MAR", "--kind", "office", "--demonstration"}).code == 0);
    // characters and effort that leave nothing open (host key of the pack)
    const std::vector<std::string> whole{"K01=alternate", "K02=simple", "K03=teeth-with-points:18", "K13=long-slender-catkins",
                                         "minutes=12", "trees=1", "crown=70", "height=5", "binoculars=yes", "inner-crown=yes",
                                         "light=good", "leaves=open", "clothes=done", "boots=done", "vehicle=none-used",
                                         "tools=none-used"};
    const auto enter = [&](const char* label, const char* where, const std::vector<std::string>& answers) {
        std::vector<std::string> words{"enter", store, label, "--at", where, "--site", "Weir Wood"};
        words.insert(words.end(), whole.begin(), whole.end());
        words.insert(words.end(), answers.begin(), answers.end());
        REQUIRE(as("MH", words).code == 0);
    };
    enter("W03", "SO 612 094", {"S02=seen:14"});
    enter("W04", "SO 613 094", {"S01=not-seen", "S02=not-seen", "S03=not-seen", "S04=none", "S05=not-seen", "S13=not-seen",
                                "S29=not-seen"});
    return store;
}

} // namespace cupule::test
