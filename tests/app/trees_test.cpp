#include "tests/app/command.h"
#include "tests/support/catch.h"

using namespace cupule::test;

namespace {

/// Two trees of one store, each with a draft of MH's.
std::string twoTrees(Command& command)
{
    const std::string store = command.path("trees.cupule");
    command.json("OF", {"new", store, "--region", "MAR"});
    command.json("MH", {"enter", store, "W03", "--at", "SO 6120 0940", "minutes=12", "--date", "2026-06-10"});
    command.json("MH", {"enter", store, "W03a", "--at", "SO 6128 0940", "minutes=9", "--date", "2026-06-11"});
    return store;
}

} // namespace

TEST_CASE("merging says what it means, is done, shown, undone and split again", "[app][trees]")
{
    Command command;
    const std::string store = twoTrees(command);
    const auto dry = command.json("MH", {"tree", "merge", store, "W03", "W03a", "--dry-run"});
    CHECK(dry["merged"] == false);
    CHECK(dry["visits"] == 1);
    CHECK(dry["asks"].size() == 1); // 80 m apart
    CHECK(command.json("MH", {"list", "trees", store})["count"] == 2);

    const Said done = command.as("MH", {"tree", "merge", store, "W03", "W03a"});
    REQUIRE(done.code == 0);
    CHECK(done.says("W03a is kept as W03"));
    CHECK(command.json("MH", {"list", "trees", store})["count"] == 1);
    const Said shown = command.as("MH", {"show", "tree", "W03a", store});
    CHECK(shown.says("W03"));
    CHECK(shown.says("Also entered as W03a"));
    CHECK(shown.says("W03a merged into this tree"));
    CHECK(command.json("MH", {"show", "tree", "W03", store})["visits"].size() == 2);
    CHECK(command.as("MH", {"prove", store}).code == 0);
    CHECK(command.as("MH", {"health", store}).code == 0);
    CHECK(command.as("MH", {"tree", "merge", store, "W03a", "W03"}).code == 1);

    CHECK(command.json("MH", {"undo", store})["what"] == "tree merge");
    CHECK(command.json("MH", {"list", "trees", store})["count"] == 2);
    CHECK(command.as("MH", {"redo", store}).code == 0);
    CHECK(command.json("MH", {"tree", "split", store, "W03a"})["split"] == true);
    CHECK(command.json("MH", {"list", "trees", store})["count"] == 2);
    CHECK(command.as("MH", {"tree", "split", store, "W03a"}).code == 1);
}

TEST_CASE("visits of one entry that was two trees are moved", "[app][trees]")
{
    Command command;
    const std::string store = twoTrees(command);
    command.json("MH", {"enter", store, "W03", "minutes=5", "--date", "2026-06-11"});
    const auto moved = command.json("MH", {"tree", "split", store, "W03", "--visit", "W03@2026-06-11", "--label", "W03b"});
    CHECK(moved["moved"] == 1);
    CHECK(command.json("MH", {"show", "tree", "W03b", store})["visits"].size() == 1);
    CHECK(command.as("MH", {"tree", "split", store, "W03", "--label", "W03c"}).code == 1);
}

TEST_CASE("a tree is said to be felled, on a day, and to stand after all", "[app][trees]")
{
    Command command;
    const std::string store = twoTrees(command);
    const auto felled = command.json("MH", {"tree", "mark", store, "W03", "felled", "--on", "2026-06-01"});
    CHECK(felled["fate"] == "felled");
    CHECK(felled["date"] == "2026-06-01");
    CHECK(command.as("MH", {"show", "tree", "W03", store}).says("It is felled, seen on 1 June 2026 (MH)."));
    CHECK(command.as("MH", {"tree", "mark", store, "W03", "not-found", "--on", "2030-01-01"}).code == 2);
    CHECK(command.as("MH", {"tree", "mark", store, "W03", "burnt"}).code == 2);
    CHECK(command.as("MH", {"tree", "mark", store, "W03", "stands"}).says("W03: stands."));
}
