#include <set>

#include "tests/app/command.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::test;

namespace {

void enterNothing(Command& command, const char* who, const std::string& label)
{
    command.json(who, {"enter", command.vale(), label, "--at", "SO 612 094", "K01=alternate", "K02=simple", "K03=teeth-with-points:18",
                       "K13=long-slender-catkins", "minutes=12", "trees=1", "crown=70", "height=5", "binoculars=yes",
                       "inner-crown=yes", "light=good", "leaves=open", "clothes=done", "boots=done", "vehicle=none-used",
                       "tools=none-used", "S01=not-seen", "S02=not-seen", "S03=not-seen", "S04=none", "S05=not-seen", "S13=not-seen",
                       "S29=not-seen"});
}

/// Ten records for a batch, one of the auditor's own, two with a decision that is known.
std::string routine(Command& command)
{
    for (int i = 0; i < 12; ++i)
        enterNothing(command, "MH", "R" + std::to_string(i));
    enterNothing(command, "V2", "own");
    for (const char* who : {"MH", "V2"})
        command.as(who, {"hand-in", command.vale(), "--day", "2026-06-11"});
    command.json("V3", {"decide", command.vale(), "R10@2026-06-11", "accept"});
    command.json("V3", {"decide", command.vale(), "R11@2026-06-11", "reject", "--reason", "other-kind-of-tree"});
    return command.vale();
}

} // namespace

TEST_CASE("a batch is made, looked at blindly, and accepted in one go", "[app][audit]")
{
    Command command;
    const std::string store = routine(command);
    const auto offer = command.json("V1", {"audit", "make", store, "--auditor", "V2", "--tolerable", "20", "--dry-run"});
    CHECK(offer["made"] == false);
    CHECK(offer["records"] == 11); // with the plain visit of the store
    CHECK(offer["not_theirs"] == 1);
    CHECK(offer["size"]["wrong"] == 2);
    const auto made = command.json("V1", {"audit", "make", store, "--auditor", "V2", "--tolerable", "20%"});
    CHECK(made["batch"]["number"] == 1);
    const int shown = made["batch"]["to_answer"];
    CHECK(shown == made["size"]["drawn"].get<int>() + 2);
    CHECK(command.json("V1", {"audit", "finish", store, "1"}, 1)["error"] == "audit.not-finished");
    CHECK(command.json("V1", {"audit", "next", store, "1"}, 1)["error"] == "audit.not-yours");

    std::set<std::string> keys;
    auto next = command.json("V2", {"audit", "next", store, "1"});
    for (int place = 1; place <= shown; ++place) {
        REQUIRE(next["finished"] == false);
        const auto record = next["record"];
        CHECK(record["place"] == place);
        std::string names;
        for (const auto& [key, value] : record.items())
            names += key + " ";
        keys.insert(names);
        CHECK(next.dump().find("accepted") == std::string::npos);
        CHECK(next.dump().find("rejected") == std::string::npos);
        CHECK(next.dump().find("submitted") == std::string::npos);
        const bool wrong = record["tree"] == "R11";
        std::vector<std::string> words{"audit", "answer", store, "1", std::to_string(place), wrong ? "reject" : "accept"};
        if (wrong)
            words.insert(words.end(), {"--reason", "other-kind-of-tree"});
        next = command.json("V2", words);
        if (place == 1) {
            CHECK(command.json("V2", {"audit", "answer", store, "1", "1", "accept"}, 1)["error"] == "audit.other-record");
            CHECK(command.json("V2", {"audit", "take-back", store, "1"})["record"]["place"] == 1);
            next = command.json("V2", words);
        }
        CHECK_FALSE(command.json("V1", {"audit", "show", store, "1"}).contains("seed"));
    }
    CHECK(next["finished"] == true);
    CHECK(keys.size() == 1);

    const Said said = command.as("V1", {"audit", "finish", store, "1"});
    CHECK(said.code == 0);
    CHECK(said.says("confidence at most 1 of the 11 records are wrong, 9.1 %."));
    CHECK(said.says("would not accept either: 1 of 1 (95 % interval 20.6 % to 100 %)."));
    const auto page = command.json("V1", {"audit", "show", store, "1"});
    CHECK(page["state"] == "passed");
    CHECK(page["size"]["confidence_reached"].get<double>() >= 0.95);
    CHECK(command.json("V1", {"list", "visits", store, "--state", "accepted"})["count"] == 12);
    CHECK(command.json("V1", {"audit", "undo", store, "1"})["state"] == "open");
    CHECK(command.json("V1", {"list", "visits", store, "--state", "accepted"})["count"] == 1);
    CHECK(command.json("V1", {"audit", "list", store})["batches"][0]["state"] == "open");
    CHECK(command.json("V1", {"audit", "give-up", store, "1"})["state"] == "given-up");
    CHECK(command.json("OF", {"prove", store})["whole"] == true);
}

TEST_CASE("a disagreement sends the batch back, and every record says why it is in the queue", "[app][audit]")
{
    Command command;
    const std::string store = routine(command);
    const int shown = command.json("V1", {"audit", "make", store, "--auditor", "V2"})["batch"]["to_answer"];
    for (int place = 1; place <= shown; ++place)
        command.json("V2", {"audit", "answer", store, "1", std::to_string(place), "return", "--reason", "tree-not-shown", "--remark",
                            "Which tree?"});
    const Said said = command.as("V1", {"audit", "finish", store, "1"});
    CHECK(said.code == 1);
    CHECK(said.says("go back and are decided one by one"));
    CHECK(said.says("would be returned"));
    CHECK(said.says("Which tree?"));
    const auto queue = command.json("V1", {"queue", store})["queue"];
    int failed = 0;
    for (const auto& line : queue)
        failed += line["place"] == "batch-failed" ? 1 : 0;
    CHECK(failed == 11);
}

TEST_CASE("what makes no batch is refused in words", "[app][audit]")
{
    Command command;
    const std::string store = command.vale();
    CHECK(command.json("V1", {"audit", "make", store, "--auditor", "nobody"}, 2)["error"] == "name.unknown");
    enterNothing(command, "V2", "own");
    for (const char* bad : {"0", "100", "-5", "many", "5x"})
        CHECK(command.json("V1", {"audit", "make", store, "--auditor", "V2", "--tolerable=" + std::string(bad)}, 2)["error"] == "audit.share");
    CHECK(command.json("V1", {"audit", "make", store, "--auditor", "V2"}, 1)["error"] == "audit.nothing");
    CHECK(command.json("V1", {"audit", "show", store, "7"}, 2)["error"] == "audit.unknown");
    CHECK(command.json("MH", {"audit", "make", store, "--auditor", "V2"}, 1)["error"] == "role.needed");
}
