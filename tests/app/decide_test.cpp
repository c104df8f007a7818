#include <filesystem>
#include <fstream>

#include "core/base/file.h"
#include "tests/app/command.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// The find has no picture on the command line, so its sample is its evidence: leaves are given, a sample opened.
std::string sampled(Command& command)
{
    const std::string store = command.vale();
    command.json("MH", {"leave", "add", store, "--giver", "owner", "--name", "Ann Field", "--scope", "enter,sample", "--from",
                        "2026-05-01", "--reference", "letter 1"});
    command.json("MH", {"leave", "add", store, "--giver", "authority", "--scope", "sample,move", "--from", "2026-05-01"});
    const auto opened = command.json("MH", {"sample", "open", store, "W03@2026-06-11", "--part", "leaf with galls", "--pieces",
                                            "3", "--condition", "fresh"});
    CHECK(opened["opened"] == true);
    return opened["number"];
}

/// A store whose find and null are handed in.
std::string handedIn(Command& command)
{
    sampled(command);
    command.json("MH", {"hand-in", command.vale(), "--day", "2026-06-11"});
    return command.vale();
}

} // namespace

TEST_CASE("the queue has what was found in new ground first, for verifiers", "[app][queue]")
{
    Command command;
    const std::string store = handedIn(command);
    const auto queue = command.json("V1", {"queue", store});
    CHECK(queue["waiting"] == 2);
    REQUIRE(queue["queue"].size() == 2);
    CHECK(queue["queue"][0]["tree"] == "W03");
    CHECK(queue["queue"][0]["place"] == "new-ground");
    CHECK(command.as("MH", {"queue", store}).code == 1);
    CHECK(command.as("V1", {"queue", store}).says("Waiting: 2."));
}

TEST_CASE("a find in new ground is decided by two, one's own record by neither", "[app][decide]")
{
    Command command;
    const std::string store = handedIn(command);
    const auto refused = command.json("MH", {"decide", store, "W03@2026-06-11", "accept"}, 1);
    CHECK(refused["error"] == "role.needed");
    const auto first = command.json("V1", {"decide", store, "W03@2026-06-11", "accept", "--reason", "host-and-gall-shown"});
    CHECK(first["one_of_two"] == true);
    CHECK(first["state"] == "submitted");
    CHECK(command.json("V1", {"decide", store, "W03@2026-06-11", "accept"}, 1)["arguments"]["why"] == "first-of-two");
    CHECK(command.json("V2", {"list", "decisions", store})["count"] == 0);
    const auto second = command.json("V2", {"decide", store, "W03@2026-06-11", "accept"});
    CHECK(second["state"] == "accepted");
    CHECK(second["told"] == false);
    CHECK(command.json("V2", {"list", "decisions", store})["count"] == 2);
    const auto told = command.json("V1", {"told", store, "W03@2026-06-11", "--to", "Plant health office", "--reference", "PH 1",
                                          "--at", "2026-06-11 13:30"});
    CHECK(told["told"] == true);
    CHECK(command.json("V1", {"reopen", store, "W03@2026-06-11", "--remark", "new facts"})["state"] == "submitted");
}

TEST_CASE("a rejection without a reason shows the reasons that there are", "[app][decide]")
{
    Command command;
    const std::string store = command.vale();
    command.json("MH", {"hand-in", store, "--day", "2026-06-11"}, 1);
    const Said said = command.as("V1", {"decide", store, "W04@2026-06-11", "reject"});
    CHECK(said.code == 1);
    CHECK(said.err.find("tree-not-shown: ") != std::string::npos);
    CHECK(said.err.find("host-and-gall-shown") == std::string::npos);   // a reason to accept
}

TEST_CASE("reasons are needed and more than one may be given", "[app][decide]")
{
    Command command;
    const std::string store = handedIn(command);
    CHECK(command.json("V1", {"decide", store, "W04@2026-06-11", "return"}, 1)["error"] == "decide.reason-needed");
    CHECK(command.as("V1", {"decide", store, "W04@2026-06-11", "perhaps"}).code == 2);
    const auto returned = command.json("V1", {"decide", store, "W04@2026-06-11", "return", "--reason", "tree-not-shown", "--reason",
                                              "position-too-coarse", "--remark", "A leaf, please."});
    CHECK(returned["state"] == "returned");
    CHECK(returned["decisions"][0]["reasons"].size() == 2);
    const auto answered = command.json("MH", {"correct", store, "W04@2026-06-11", "note=with a leaf now"});
    CHECK(answered["correction_waits"] == true);
    CHECK(command.json("V1", {"decide", store, "W04@2026-06-11", "accept"})["state"] == "accepted");
    CHECK(command.json("V1", {"undecide", store, "W04@2026-06-11"})["state"] == "returned");
}

TEST_CASE("a sample goes from the tree to its close", "[app][sample]")
{
    Command command;
    const std::string number = sampled(command);
    const std::string store = command.vale();
    const auto refused = command.json("MH", {"sample", "close", store, number}, 1);
    CHECK(refused["closed"] == false);
    CHECK(refused["missing"].size() >= 8);
    const auto line = [&](std::vector<std::string> words) {
        words.insert(words.begin(), {"sample", "line", store, number});
        return command.json("MH", words);
    };
    line({"cut", "--at", "2026-06-11 13:10", "--from", "MH", "--pieces", "3"});
    line({"inner-bag", "--at", "2026-06-11 13:15", "--bag", "A12"});
    line({"outer-bag", "--at", "2026-06-11 13:18", "--bag", "B77", "--seal", "S881"});
    CHECK(line({"on-site", "--at", "2026-06-11 13:25", "--confirmed", "yes", "--clothes", "done", "--boots", "done", "--vehicle",
                "none-used", "--tools", "done"})["state"] == "sealed");
    command.clock.advanceMilliseconds(6 * 3'600'000);
    line({"receipt", "--out", "2026-06-11 16:00", "--in", "2026-06-11T16:05:00+01:00", "--from", "MH", "--to", "Tharn laboratory",
          "--seal", "S881", "--seal-whole", "yes", "--pieces", "3"});
    line({"result", "--at", "2026-06-11 17:00", "--finding", "not found", "--report", "R 7", "--signed", "Dr Lane", "--method",
          "dissection"});
    line({"disposal", "--at", "2026-06-11 18:00", "--disposal", "destroyed", "--method", "autoclave", "--order", "PH 12",
          "--signed", "T Reed", "--place", "Tharn laboratory"});
    const auto closed = command.json("MH", {"sample", "close", store, number});
    CHECK(closed["closed"] == true);
    CHECK(closed["state"] == "closed");
    CHECK(closed["breaks"].empty());
    CHECK(command.json("MH", {"sample", store, "show", number})["lines"].size() == 8);
    CHECK(command.as("MH", {"sample", "show", store, number}).says(number));
    CHECK(command.as("MH", {"sample", "show", store, "26-TV-0001-0"}).code == 3);
}

TEST_CASE("a sample without leave is refused, with both leaves named", "[app][sample]")
{
    Command command;
    const std::string store = command.vale();
    const auto refused = command.json("MH", {"sample", "open", store, "W03@2026-06-11", "--part", "dry gall"}, 1);
    CHECK(refused["opened"] == false);
    CHECK(refused["why"].size() == 2);
    CHECK(command.json("MH", {"sample", "open", store, "W03@2026-06-11", "--part", "dry gall", "--already-taken"})["opened"] ==
          true);
}

TEST_CASE("leaves, regimes and people are noted by those who may", "[app][leave]")
{
    Command command;
    const std::string store = command.vale();
    command.json("MH", {"leave", "add", store, "--giver", "owner", "--scope", "enter", "--reference", "letter 1"});
    CHECK(command.json("MH", {"leave", "withdraw", store, "letter 1", "--on", "2026-07-01"})["leave"]["withdrawn"] == "2026-07-01");
    CHECK(command.as("MH", {"leave", "add", store, "--giver", "owner", "--scope", "fly"}).code == 2);
    CHECK(command.as("MH", {"regime", "add", store, "--issuer", "Office", "--dry-galls", "keep"}).code == 1);
    CHECK(command.as("OF", {"regime", "add", store, "--issuer", "Office", "--dry-galls", "keep"}).code == 0);
    command.json("MH", {"person", "add", store, "--code", "AB", "--name", "Annabel Quillfeather"});
    CHECK(command.as("MH", {"person", "change", store, "AB", "--not-for", "MH"}).code == 1);
    CHECK(command.json("OF", {"person", "change", store, "AB", "--not-for", "MH"})["person"]["notFor"].size() == 1);
    CHECK(command.as("MH", {"person", "erase", store, "AB", "--order", "letter 2"}).code == 1);
    CHECK(command.json("OF", {"person", "erase", store, "AB", "--order", "letter 2"})["erased"] == true);
    CHECK(readFile(store).value().find("Quillfeather") == std::string::npos);
    CHECK(command.json("OF", {"prove", store})["erased"] == 1);
}

TEST_CASE("a store is proved, examined, backed up and told of in a page", "[app][keep]")
{
    Command command;
    const std::string store = handedIn(command);
    CHECK(command.json("MH", {"prove", store})["whole"] == true);
    const auto health = command.json("MH", {"health", store});
    CHECK(health["sound"] == true);
    const std::string copy = command.json("MH", {"back-up", store, command.path("copies")})["path"];
    CHECK(command.json("MH", {"prove", copy})["whole"] == true);
    const std::string page = command.path("account.html");
    const auto account = command.json("MH", {"account", store, "--out", page});
    CHECK(account["visits"] == 2);
    CHECK(account["finds"] == 1);
    CHECK(account["detection"]["choice"] == "protocol");
    CHECK(account["detection"]["protocol"] == nlohmann::json{0.7, 0.5, 0.3});
    CHECK(command.json("MH", {"account", store, "--out", page, "--detection", "measured"})["detection"]["choice"] == "measured");
    CHECK(command.as("MH", {"account", store, "--out", page, "--detection", "guessed"}).code == 2);
    CHECK(command.json("MH", {"programme", store})["detection"] == "protocol");
    CHECK(command.json("OF", {"programme", store, "--detection", "measured"})["detection"] == "measured");
    CHECK(command.json("MH", {"account", store, "--out", page})["detection"]["choice"] == "measured");
    CHECK(command.json("OF", {"programme", store, "--detection", "protocol"})["detection"] == "protocol");
    command.json("MH", {"account", store, "--out", page});
    const std::string html = readFile(page).value();
    CHECK(html.find("Tharn Vale: the season of 2026") != std::string::npos);
    CHECK(html.find("invented") != std::string::npos);
    CHECK(html.find("Person MH") == std::string::npos);
    CHECK(command.as("MH", {"account", store}).code == 2);
    CHECK(command.as("MH", {"account", store, "--out", command.path("no/such/folder/a.html")}).code == 3);
}

TEST_CASE("a notice is written of a find, by anyone, and never of finding nothing", "[app][notice]")
{
    Command command;
    const std::string store = handedIn(command);
    const std::string page = command.folder() + "/notice.html";
    const auto written = command.json("MH", {"notice", store, "W03@2026-06-11", "--out", page});
    CHECK(written["told"] == false);
    const std::string html = readFile(page).value();
    CHECK(html.find("SO 612 094") != std::string::npos);
    CHECK(html.find("letter 1") != std::string::npos);
    CHECK(html.find("Ann Field") == std::string::npos); // who gave leave stays in the store
    CHECK(html.find("No laboratory has reported yet") != std::string::npos);
    CHECK(html.find("MH, ") != std::string::npos);
    command.json("MH", {"notice", store, "W03@2026-06-11", "--without-names", "--out", page});
    CHECK(readFile(page).value().find("MH, ") == std::string::npos);
    const std::string nothing = command.json("V1", {"queue", store})["queue"][1]["id"];
    REQUIRE_FALSE(nothing.empty());
    CHECK(command.json("V1", {"notice", store, nothing, "--out", page}, 1)["error"] == "notice.no-find");
}

TEST_CASE("what the first of two decided is on no notice", "[app][notice]")
{
    Command command;
    const std::string store = handedIn(command);
    command.json("V1", {"decide", store, "W03@2026-06-11", "accept", "--reason", "host-and-gall-shown"});
    const std::string page = command.folder() + "/notice.html";
    command.json("V1", {"notice", store, "W03@2026-06-11", "--out", page});
    const std::string html = readFile(page).value();
    CHECK(html.find("One of two verifiers has decided") != std::string::npos);
    CHECK(html.find("accepted by") == std::string::npos);
}
