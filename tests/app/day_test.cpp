#include <filesystem>
#include <fstream>

#include "tests/app/command.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("a profile is made, shown and changed", "[app][profile]")
{
    Command command;
    const std::string folder = command.path("who");
    const Said made = command.run({"profile", "make", "--profile", folder, "--code", "MH", "--name", "Mary Hill", "--role",
                                   "volunteer,verifier", "--json"});
    REQUIRE(made.code == 0);
    CHECK(made.json()["roles"] == nlohmann::json({"volunteer", "verifier"}));
    CHECK(command.run({"profile", "make", "--profile", folder, "--code", "XX"}).code == 1);
    CHECK(command.run({"profile", "change", "--profile", folder, "--role", "office"}).code == 0);
    const auto shown = command.run({"profile", "show", "--profile", folder, "--json"}).json();
    CHECK(shown["roles"] == nlohmann::json({"office"}));
    CHECK(shown["code"] == "MH");
    CHECK(shown["device"] == made.json()["device"]);
    CHECK(command.run({"profile", "show", "--profile", command.path("nobody")}).code == 2);
    CHECK(command.run({"profile", "change", "--profile", folder, "--role", "wolf"}).code == 2);
}

TEST_CASE("a store is made once, and a demonstration says so in everything", "[app][new]")
{
    Command command;
    const std::string store = command.path("a.cupule");
    const auto made = command.json("OF", {"new", store, "--demonstration", "--region", "MAR"});
    CHECK(made["name"] == "a");
    CHECK(made["demonstration"] == true);
    CHECK(std::filesystem::exists(store));
    CHECK(command.as("OF", {"new", store}).code != 0);
    CHECK(command.json("OF", {"prove", store})["demonstration"] == true);
    CHECK(command.as("OF", {"prove", store}).out.rfind("Demonstration", 0) == 0);
    const auto real = command.json("OF", {"new", command.path("b.cupule")});
    CHECK(real["demonstration"] == false);
    CHECK_FALSE(command.json("OF", {"prove", command.path("b.cupule")}).contains("demonstration"));
    CHECK(command.as("OF", {"new", command.path("c.cupule"), "--zone", "Europe/Nowhere"}).code != 0);
    CHECK_FALSE(std::filesystem::exists(command.path("c.cupule")));
}

TEST_CASE("what is no store is named as such", "[app]")
{
    Command command;
    std::ofstream(command.path("text.cupule")) << "this is no store, but long enough to have been one, had it wanted to be one";
    for (const char* name : {"text.cupule", "missing.cupule"}) {
        CAPTURE(name);
        const Said said = command.as("MH", {"check", command.path(name), "--json"});
        CHECK(said.code == 3);
        CHECK(said.json()["error"].get<std::string>().rfind("store.", 0) == 0);
        CHECK_FALSE(said.err.empty());
    }
}

TEST_CASE("a table is imported once, and what is set aside is named", "[app][import]")
{
    Command command;
    const std::string store = command.path("a.cupule");
    command.json("OF", {"new", store, "--region", "MAR"});
    const std::string table = command.path("day.csv");
    std::ofstream(table) << "site,tree,date,observer,grid ref,S02\nWeir Wood,W03,2026-06-11,MH,SO 612 094,not seen\n"
                            "Weir Wood,W04,2026-02-30,MH,SO 613 094,not seen\n";
    const auto dry = command.json("OF", {"import", store, table, "--dry-run"}, 1);
    CHECK(dry["dry_run"] == true);
    CHECK(command.json("OF", {"list", "visits", store})["count"] == 0);
    const auto first = command.json("OF", {"import", store, table, "--today", "2026-06-30"}, 1);
    CHECK(first["rows"] == 2);
    CHECK(first["kept"] == 1);
    CHECK(first["set_aside"] == 1);
    CHECK(first["known_already"] == 0);
    REQUIRE(first["problems"].size() == 1);
    for (const char* key : {"file", "row", "line", "column", "value", "kind", "cause"}) {
        CAPTURE(key);
        CHECK(first["problems"][0].contains(key));
    }
    CHECK(first["problems"][0]["row"] == 2);
    CHECK(first["problems"][0]["line"] == 3);
    CHECK(first["problems"][0]["kind"] == "impossible_date");
    const auto again = command.json("OF", {"import", store, table}, 1);
    CHECK(again["kept"] == 0);
    CHECK(again["known_already"] == 1);
    CHECK(command.as("OF", {"import", store, command.path("missing.csv")}).code == 3);
    CHECK(command.as("OF", {"import", store}).code == 2);
}

TEST_CASE("checks list what they find, and the exit code says whether anything stops or is asked", "[app][check]")
{
    Command command;
    const std::string store = command.vale();
    const auto all = command.json("MH", {"check", store}, 1);
    CHECK(all["checked"] == 2);
    const auto one = command.json("MH", {"check", store, "W03@2026-06-11"}, 1);
    REQUIRE(one["visits"].size() == 1);
    bool evidence = false;
    for (const auto& finding : one["visits"][0]["findings"]) {
        CHECK_FALSE(finding["sentence"].get<std::string>().empty());
        CHECK_FALSE(finding["source"].get<std::string>().empty());
        evidence = evidence || finding["code"] == "gall.no-evidence";
    }
    CHECK(evidence);
    CHECK(command.json("MH", {"check", store, "--day", "2026-06-12"})["checked"] == 0);
    CHECK(command.as("MH", {"check", store, "--day", "June"}).code == 2);
    CHECK(command.as("MH", {"check", store, "W99@2026-06-11"}).code == 2);
}

TEST_CASE("a day is handed in: what goes goes once, what stays says why", "[app][hand-in]")
{
    Command command;
    const std::string store = command.vale();
    const auto dry = command.json("MH", {"hand-in", store, "--day", "2026-06-11", "--dry-run"}, 1);
    CHECK(dry["handed_in"].size() == 1);
    const auto first = command.json("MH", {"hand-in", store, "--day", "2026-06-11"}, 1);
    REQUIRE(first["handed_in"].size() == 1);
    CHECK(first["handed_in"][0]["tree"] == "W04");
    CHECK(first["handed_in"][0]["state"] == "submitted");
    REQUIRE(first["stays"].size() == 1);
    CHECK(first["stays"][0]["tree"] == "W03");
    CHECK(first["stays"][0]["findings"].size() >= 1);
    const auto again = command.json("MH", {"hand-in", store, "--day", "2026-06-11"}, 1);
    CHECK(again["handed_in"].empty());
    CHECK(command.json("JB", {"hand-in", store, "--day", "2026-06-11"})["stays"].empty());
}

TEST_CASE("answers are corrected, cleared, undone and done again", "[app][enter]")
{
    Command command;
    const std::string store = command.vale();
    const auto shown = command.json("MH", {"correct", store, "W03@2026-06-11", "S02=not-seen", "note=no gall after all"});
    CHECK(shown["positive"] == false);
    CHECK(shown["visit"]["note"] == "no gall after all");
    CHECK(command.json("MH", {"undo", store})["what"] == "correct");
    CHECK(command.json("MH", {"show", "visit", "W03@2026-06-11", store})["positive"] == true);
    command.json("MH", {"redo", store});
    CHECK(command.json("MH", {"show", "visit", "W03@2026-06-11", store})["positive"] == false);
    CHECK(command.as("MH", {"redo", store}).code == 1);
    CHECK(command.as("JB", {"correct", store, "W03@2026-06-11", "note=mine"}).code == 1);
    for (const char* answer : {"S99=seen", "S02=perhaps", "minutes=long", "K01=sideways", "nothing", "position=SO 61 2"}) {
        CAPTURE(answer);
        const int code = command.as("MH", {"correct", store, "W03@2026-06-11", answer}).code;
        CHECK((code == 2 || code == 3));
    }
    CHECK(command.json("MH", {"strike", store, "W03@2026-06-11"})["struck"] == true);
    CHECK(command.json("MH", {"list", "visits", store})["count"] == 1);
}

TEST_CASE("an answer that does not fit leaves neither a tree nor a visit behind", "[app][enter]")
{
    Command command;
    const std::string store = command.vale();
    const auto count = [&](const char* noun) { return command.json("MH", {"list", noun, store})["count"].get<int>(); };
    const int visits = count("visits"), trees = count("trees");
    CHECK(command.as("MH", {"enter", store, "W77", "--at", "SO 612 094", "S02=seen", "S99=seen"}).code == 2);
    CHECK(command.as("MH", {"enter", store, "W03", "minutes=long"}).code == 2);
    CHECK(count("visits") == visits);
    CHECK(count("trees") == trees);
}

TEST_CASE("an open question about the tree names the character to look at next", "[app][enter]")
{
    Command command;
    const std::string store = command.vale();
    const Said said = command.as("MH", {"enter", store, "W05", "--at", "SO 612 094", "K01=alternate"});
    CHECK(said.code == 0);
    CHECK(said.says("Look next at: "));
    const auto host = command.json("MH", {"show", "visit", "W05@2026-06-11", store})["host"];
    CHECK(host["answer"] == "cannot-tell");
    REQUIRE_FALSE(host["next"].empty());
    CHECK(host["next"][0]["expected_bits"].get<double>() > 0);
    CHECK_FALSE(host["next"][0]["reason"].get<std::string>().empty());
    CHECK_FALSE(command.as("MH", {"show", "visit", "W03@2026-06-11", store}).says("Look next at"));
}

TEST_CASE("a photo is put with a visit, and shows what somebody says it shows", "[app][photo]")
{
    const auto picture = sharedPath("reference/files/photos/no_exif.jpg");
    if (!picture)
        return skipped("reference/files/photos is not here");
    Command command;
    const std::string store = command.vale();
    REQUIRE(command.as("MH", {"import", store, *picture}).says("in the tray, since no visit fits: 1"));
    CHECK(command.as("MH", {"photo", store, "no_exif.jpg", "--shows", "S99"}).code == 2);
    const auto photo = command.json("MH", {"photo", store, "no_exif.jpg", "--visit", "W03@2026-06-11", "--shows", "S02,K03"});
    CHECK(photo["evidenceFor"].size() == 2);
    const auto findings = command.json("MH", {"check", store, "W03@2026-06-11"}, 1)["visits"][0]["findings"];
    for (const auto& finding : findings)
        CHECK(finding["code"] != "gall.no-evidence");
    CHECK(command.json("MH", {"undo", store})["what"] == "photo");
    command.json("MH", {"redo", store});
    CHECK(command.json("MH", {"photo", store, "no_exif.jpg", "--visit", "none", "--shows", "nothing"})["evidenceFor"].empty());
    CHECK(command.as("JB", {"photo", store, "no_exif.jpg", "--visit", "W03@2026-06-11"}).code == 1);
}

TEST_CASE("every noun is listed and shown by the name in the list", "[app][list]")
{
    Command command;
    const std::string store = command.vale();
    for (const char* noun : {"visits", "trees", "sites", "people"}) {
        CAPTURE(noun);
        const auto list = command.json("MH", {"list", noun, store});
        REQUIRE(list["count"].get<int>() > 0);
        const auto item = list["items"][0];
        const auto shown = command.json("MH", {"show", noun, item["name"], store});
        CHECK(shown["id"] == item["id"]);
        CHECK(command.as("MH", {"list", noun, store}).says(item["name"].get<std::string>()));
    }
    for (const char* noun : {"photos", "samples", "leaves", "regimes", "decisions"}) {
        CAPTURE(noun);
        CHECK(command.json("MH", {"list", noun, store})["count"] == 0);
    }
    CHECK(command.as("MH", {"list", "wolves", store}).code == 2);
    const std::string visit = command.json("MH", {"list", "visits", store})["items"][0]["id"];
    CHECK(command.json("MH", {"show", "visit", visit.substr(24), store})["id"] == visit);
    CHECK(command.as("MH", {"show", "tree", "W03", store}).says("SO 612 094"));
}

TEST_CASE("the season says what can be seen and what finding nothing is worth", "[app][season]")
{
    Command command;
    const std::string store = command.vale();
    const auto june = command.json("MH", {"season", store});
    CHECK(june["date"] == "2026-06-11");
    CHECK(june["signs"].size() > 10);
    CHECK(command.json("MH", {"season", store, "--on", "2026-01-20"})["worth"] != june["worth"]);
    CHECK(command.json("MH", {"season", store, "--leafing", "2026-05-08"})["shift_days"].get<int>() > 0);
    CHECK(command.json("MH", {"season", store})["shift_days"].get<int>() > 0);
}
