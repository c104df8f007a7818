// Looking after a store on the command line: older forms, what is wrong with a store, what can be worked out again.

#include <fstream>
#include <regex>
#include <sstream>

#include "app/words.h"
#include "core/store/connection.h"
#include "tests/app/command.h"
#include "tests/store/old_stores.h"
#include "tests/support/catch.h"
#include "ui/bridge/words.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("a store of an older form is brought up to date, also to be read, and that is said", "[app][keep]")
{
    for (int version = 1; version < newestSchema(); ++version) {
        CAPTURE(version);
        Bench bench;
        OldStoreMaker(bench, version).fill();
        Command command;
        const Said first = command.as("OF", {"list", "trees", bench.path});
        CHECK(first.code == 0);
        CHECK(first.says("T-1"));
        CHECK(first.err.find("brought up to date") != std::string::npos);
        CHECK(command.as("OF", {"list", "trees", bench.path}).err.empty());
    }
}

TEST_CASE("every kind of damage and every advice has words", "[app][keep]")
{
    std::stringstream source;
    for (const char* file : {"core/store/health.cpp", "core/store/sql/invariants.sql"})
        source << std::ifstream(file).rdbuf();
    const std::string text = source.str();
    int codes = 0;
    const std::regex code("add\\([^\"]*\"([a-z-]+)\""), both("\\? \"([a-z-]+)\" : \"([a-z-]+)\"");
    const auto hasWords = [&](const std::string& name) {
        CAPTURE(name);
        ++codes;
        CHECK_FALSE(ui::healthText(name).isEmpty());
    };
    for (auto at = std::sregex_iterator(text.begin(), text.end(), code); at != std::sregex_iterator(); ++at)
        hasWords((*at)[1]);
    for (auto at = std::sregex_iterator(text.begin(), text.end(), both); at != std::sregex_iterator(); ++at)
        hasWords((*at)[2]);
    CHECK(codes >= 9);
    for (const char* advice : {"restore-backup", "find-picture", "tell-office", "rebuild", "none"})
        CHECK_FALSE(ui::healthAdviceText(advice).isEmpty());
}

TEST_CASE("a change behind the journal's back is named by prove and by health", "[app][keep]")
{
    Command command;
    const std::string store = command.vale();
    REQUIRE(command.json("OF", {"prove", store})["whole"] == true);
    {
        Connection db;
        db.open(store, Connection::Mode::write, 1000);
        db.run("UPDATE tree SET content = replace(content, 'W03', 'W99') WHERE label = 'W03'");
        db.close();
    }
    const auto proof = command.json("OF", {"prove", store}, 1);
    CHECK(proof["whole"] == false);
    CHECK(proof["broken_line"].get<int>() > 0);
    CHECK(proof["broken_why"] == "content");
    const Said said = command.as("OF", {"health", store});
    CHECK(said.code == 1);
    CHECK(said.says("The journal does not hold."));
}

TEST_CASE("search text that went wrong is worked out again, and no record is touched", "[app][keep]")
{
    Command command;
    const std::string store = command.vale();
    {
        Connection db;
        db.open(store, Connection::Mode::write, 1000);
        db.run("INSERT INTO tree_words (tree_words) VALUES ('delete-all')");
        db.close();
    }
    const auto sick = command.json("OF", {"health", store}, 1);
    REQUIRE(sick["items"].size() >= 1);
    CHECK(sick["items"][0]["advice"] == "rebuild");
    CHECK(command.json("OF", {"health", store, "--rebuild"})["sound"] == true);
    CHECK(command.json("OF", {"prove", store})["whole"] == true);
}
