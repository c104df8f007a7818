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
