// Who works, and on which day, where nobody has said so yet.

#include <cstdlib>
#include <filesystem>

#include "tests/app/command.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("the first verb that needs a person makes a profile and says so", "[app][profile]")
{
    Command command;
    const std::string profile = command.path("fresh"), store = command.path("s.cupule");
    const Said made = command.run({"new", store, "--profile", profile, "--json"});
    CHECK(made.code == 0);
    CHECK(made.json()["store"] == store);
    CHECK(made.err.find("There was no profile yet") != std::string::npos);
    const Said second = command.run({"list", "visits", store, "--profile", profile});
    CHECK(second.code == 0);
    CHECK(second.err.empty());
    // a volunteer, and nothing more until somebody says so
    CHECK(command.run({"queue", store, "--profile", profile}).code == 1);
    CHECK(command.run({"profile", "change", "--profile", profile, "--name", "Maud Harrow", "--role", "verifier"}).code == 0);
    CHECK(command.run({"queue", store, "--profile", profile}).code == 0);
    CHECK(command.run({"profile", "show", "--profile", command.path("none")}).code == 2);
    CHECK_FALSE(std::filesystem::exists(command.path("none")));
}

TEST_CASE("the profile of the environment counts where none is named", "[app][profile]")
{
    Command command;
    const std::string folder = command.path("by-environment");
    REQUIRE(command.run({"profile", "make", "--profile", folder, "--code", "EV"}).code == 0);
    REQUIRE(setenv("CUPULE_PROFILE", folder.c_str(), 1) == 0);
    const auto shown = command.run({"profile", "show", "--json"}).json();
    unsetenv("CUPULE_PROFILE");
    CHECK(shown["code"] == "EV");
    CHECK(shown["folder"] == folder);
}

TEST_CASE("a demonstration goes by the day it is told, a real store by the clock", "[app][profile]")
{
    Command command;
    for (const bool demonstration : {true, false}) {
        const std::string store = command.path(demonstration ? "demo.cupule" : "real.cupule");
        std::vector<std::string> words{"new", store, "--today", "2025-06-27"};
        if (demonstration)
            words.emplace_back("--demonstration");
        REQUIRE(command.as("OF", words).code == 0);
        REQUIRE(command.as("OF", {"enter", store, "W1", "--at", "SO 612 094", "--today", "2025-06-27"}).code == 0);
        CHECK(command.as("OF", {"show", "visit", "W1@2025-06-27", store}).code == 0);
        // the name of a backup says when it was made by the clock
        for (const auto& backup : std::filesystem::directory_iterator(store + ".backups")) {
            const std::string name = backup.path().filename().string();
            CAPTURE(name);
            CHECK(name.find(demonstration ? "-2025-06-27-" : "-2026-06-11-") != std::string::npos);
        }
    }
}

TEST_CASE("a store is backed up the first time that it is opened for writing on a day", "[app][keep]")
{
    Command command;
    const std::string store = command.path("s.cupule"), folder = store + ".backups";
    const auto backups = [&] {
        std::error_code error;
        int files = 0;
        for (const auto& entry : std::filesystem::directory_iterator(folder, error))
            files += entry.is_regular_file() ? 1 : 0;
        return files;
    };
    REQUIRE(command.as("OF", {"new", store}).code == 0);
    REQUIRE(command.as("OF", {"list", "trees", store}).code == 0);
    CHECK(backups() == 0);
    for (const char* label : {"W1", "W2"})
        REQUIRE(command.as("OF", {"enter", store, label, "--at", "SO 612 094", "--today", "2027-01-01"}).code == 0);
    CHECK(backups() == 1);
    command.clock.advanceMilliseconds(24 * 3'600'000);
    REQUIRE(command.as("OF", {"enter", store, "W3", "--at", "SO 612 094"}).code == 0);
    CHECK(backups() == 2);
}
