#include <fstream>

#include "tests/app/command.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("a key is shown by its fingerprint, and vouched for after a call", "[app][key]")
{
    Command command;
    const std::string store = command.vale();
    const auto own = command.json("MH", {"key"});
    CHECK(own["fingerprint"].get<std::string>().size() == 35);
    CHECK(own["locked"] == false);
    const std::string key = own["key"], digits = own["fingerprint"];
    CHECK(command.json("OF", {"vouch", store, key, "MH"}, 1)["error"] == "key.not-compared");
    CHECK(command.json("MH", {"vouch", store, key, "MH", "--fingerprint", digits}, 1)["error"] == "role.needed");
    CHECK(command.json("OF", {"vouch", store, key, "MH", "--fingerprint", digits, "--role", "volunteer,sample-handler"})["vouched"] == true);
    const auto known = command.json("OF", {"key", store})["known"];
    REQUIRE(known.size() == 2);
    CHECK(known[0]["code"] == "OF");
    CHECK(known[1]["code"] == "MH");
    CHECK(known[1]["roles"].size() == 2);
    CHECK(known[1]["holds"] == true);
    CHECK(command.json("OF", {"withdraw-key", store, "MH", "--remark", "laptop lost"})["key"] == key);
    CHECK(command.json("OF", {"key", store})["known"][1]["withdrawn"] == true);
    CHECK(command.as("OF", {"key", store}).says("withdrawn"));
}

TEST_CASE("a key is renewed, locked and unlocked", "[app][key]")
{
    Command command;
    const std::string before = command.json("MH", {"key"})["key"];
    CHECK(command.json("MH", {"key", "--make"}, 1)["error"] == "key.exists");
    const std::string phrase = command.path("phrase.txt");
    std::ofstream(phrase) << "seven brown husks\nnot this line\n";
    CHECK(command.json("MH", {"key", "--lock", phrase})["locked"] == true);
    CHECK(command.json("MH", {"key", "--renew"}, 1)["error"] == "key.passphrase-needed");
    const auto renewed = command.json("MH", {"key", "--renew", "--passphrase", phrase});
    CHECK(renewed["key"] != before);
    CHECK(renewed["follows"] == 1);
    CHECK(command.json("MH", {"key", "--unlock", "--passphrase", phrase})["locked"] == false);
}

TEST_CASE("a day is handed in into a signed file, the office writes reference", "[app][hand-in]")
{
    Command command;
    const std::string store = command.vale();
    const std::string out = command.path("day.zip");
    const auto handed = command.json("MH", {"hand-in", store, "--out", out, "--without", "photos"}, 1);   // the find waits for its evidence
    CHECK(handed["stays"].size() == 1);
    CHECK(handed["bundle"]["visits"] == 1);
    CHECK(handed["bundle"]["number"] == 1);
    CHECK(handed["bundle"]["left_out"][0] == "photos");
    CHECK(handed["bundle"]["made_again"] == false);
    CHECK(std::ifstream(out).good());
    CHECK(command.json("MH", {"hand-in", store, "--out", out, "--without", "photos"}, 1)["bundle"]["made_again"] == true);
    CHECK(command.json("MH", {"hand-in", store, "--out", out, "--without", "trees"}, 2)["error"] == "hand-in.without");
    CHECK(command.json("OF", {"hand-in", store, "--kind", "reference"}, 2)["error"] == "hand-in.out");
    CHECK(command.json("OF", {"vouch", store, out}, 1)["error"] == "key.not-compared");
    const std::string digits = command.json("MH", {"key"})["fingerprint"];
    CHECK(command.json("OF", {"vouch", store, out, "--fingerprint", digits})["key"] == handed["bundle"]["key"]);
    const auto again = command.json("OF", {"merge", store, out});   // the store that wrote it knows all of it
    CHECK(again["new"] == 0);
    CHECK(again["known_already"] == handed["bundle"]["records"]);
    CHECK(again["copied_laptop"].empty());
    CHECK(command.json("OF", {"merge", store, out, "--most-bytes", "100"}, 1)["error"] == "bundle.whole-large");
    const std::string reference = command.path("reference.zip");
    CHECK(command.json("OF", {"hand-in", store, "--kind", "reference", "--out", reference})["bundle"]["kind"] == "reference");
    CHECK(command.json("MH", {"hand-in", store, "--kind", "reference", "--out", reference}, 1)["error"] == "role.needed");
    CHECK(command.as("MH", {"hand-in", store, "--out", out}).says("Written"));
}

TEST_CASE("a file that arrived: unknown key, tried out, taken in, taken in again", "[app][merge]")
{
    Command command;
    const std::string laptop = command.vale(), out = command.path("day.zip"), office = command.path("office.cupule");
    command.json("MH", {"hand-in", laptop, "--out", out}, 1);
    REQUIRE(command.as("OF", {"new", office, "--kind", "office", "--demonstration"}).code == 0);
    const auto unknown = command.json("OF", {"merge", office, out}, 1);
    CHECK(unknown["refused"]["reason"] == "key.unknown");
    CHECK(unknown["key_standing"] == "unknown");
    const std::string digits = unknown["fingerprint"];
    CHECK(command.as("OF", {"merge", office, out}).says(digits));
    command.json("OF", {"vouch", office, out, "--fingerprint", digits});
    const auto tried = command.json("OF", {"merge", office, out, "--dry-run"});
    CHECK(tried["new"] == tried["records"]);
    CHECK(tried["known_already"] == 0);
    CHECK(tried["dry_run"] == true);
    const auto taken = command.json("OF", {"merge", office, out});
    CHECK(taken["new"] == tried["new"]);
    CHECK(taken["refused"].is_null());
    CHECK(taken["conflicts"].empty());
    CHECK(taken["waiting"] == 0);
    const auto again = command.json("OF", {"merge", office, out});
    CHECK(again["new"] == 0);
    CHECK(again["known_already"] == taken["new"]);
    CHECK(command.json("OF", {"list", "visits", office})["count"] == 1);
    CHECK(command.json("OF", {"prove", office})["whole"] == true);
    const std::string real = command.path("real.cupule");
    REQUIRE(command.as("OF", {"new", real, "--kind", "office"}).code == 0);
    CHECK(command.json("OF", {"merge", real, out}, 1)["refused"]["reason"] == "bundle.demonstration");
    CHECK(command.json("OF", {"merge", office, command.path("none.zip")}, 3)["error"] == "file.open");
}
