#include <fstream>

#include "tests/app/command.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("a position says what it is, in the names that scripts read", "[app][position]")
{
    Command command;
    const Said said = command.run({"position", "SO 612 094", "--json"});
    REQUIRE(said.code == 0);
    const auto json = said.json();
    for (const char* key : {"lat", "lon", "easting", "northing", "system", "square_m", "uncertainty_m", "operation",
                            "operation_accuracy_m", "warning"}) {
        CAPTURE(key);
        CHECK(json.contains(key));
    }
    // Ordnance Survey, "A guide to coordinate systems in Great Britain": letters and figures name the south-west corner
    CHECK(json["easting"] == 361250);
    CHECK(json["northing"] == 209450);
    CHECK(json["square_m"] == 100);
    // half the diagonal, as Darwin Core asks of coordinateUncertaintyInMeters
    CHECK(json["uncertainty_m"].get<double>() == Approx(70.71).margin(0.01));
    CHECK(json["warning"] == "");
    CHECK(json["lat"].get<double>() == Approx(51.78).margin(0.01));
    CHECK(command.run({"position", "SO", "612", "094", "--json"}).json() == json);
}

TEST_CASE("a position that cannot be read is error 3 with its kind", "[app][position]")
{
    Command command;
    const Said said = command.run({"position", "SO 612 09", "--json"});
    CHECK(said.code == 3);
    CHECK(said.json()["error"] == "odd-digit-count");
    CHECK_FALSE(said.err.empty());
    CHECK(command.run({"position", "", "--json"}).json()["error"] == "empty");
    const Said system = command.run({"position", "361250 209450", "--system", "MARS", "--json"});
    CHECK(system.code == 2);
    CHECK(command.run({"position", "--json"}).code == 2);
    CHECK(command.run({"position", "SO 612 094", "--area", "1,2,3"}).code == 2);
}

TEST_CASE("numbers below zero are no options, and the area is the one named", "[app][position]")
{
    Command command;
    const auto south = command.run({"position", "-33.4510, -70.6520", "--area", "-180,-90,180,90", "--json"}).json();
    CHECK(south["lat"].get<double>() == Approx(-33.451));
    CHECK(south["lon"].get<double>() == Approx(-70.652));
    CHECK(south["warning"] == "");
    const auto far = command.run({"position", "-33.4510", "-70.6520", "--json"}).json();
    CHECK(far["warning"] == "outside-area");
    CHECK(command.run({"position", "--json", "0,0"}).json()["warning"] == "null-island");
}

TEST_CASE("every published notation gives its result or its error through the program", "[app][position]")
{
    const auto path = sharedPath("reference/geo/gridref_cases.csv");
    if (!path) {
        skipped("reference/geo/gridref_cases.csv is not there");
        SUCCEED();
        return;
    }
    std::ifstream in(*path);
    std::string line;
    std::getline(in, line);
    int seen = 0;
    Command command;
    while (std::getline(in, line)) {
        // case,input,system,status,...: rows whose input needs no quoting are enough here; core/position reads them all
        if (line.find('"') != std::string::npos)
            continue;
        std::vector<std::string> cells;
        for (std::size_t at = 0; at <= line.size();) {
            const auto comma = std::min(line.find(',', at), line.size());
            cells.push_back(line.substr(at, comma - at));
            at = comma + 1;
        }
        if (cells.size() < 12 || cells[3].rfind("ok-or", 0) == 0)
            continue;
        CAPTURE(line);
        ++seen;
        std::vector<std::string> words{"position", cells[1], "--json"};
        if (cells[2] == "OSGB" || cells[2] == "IG" || cells[2] == "ITM")
            words.insert(words.end(), {"--system", cells[2]});
        // the rows say nothing about an area, but for the one that is about it
        if (cells[3] != "ok-warn:outside-area")
            words.insert(words.end(), {"--area", "-180,-90,180,90"});
        const Said said = command.run(words);
        if (cells[3].rfind("error:", 0) == 0) {
            CHECK(said.code == 3);
            CHECK(said.json()["error"] == cells[3].substr(6));
            continue;
        }
        REQUIRE(said.code == 0);
        const auto json = said.json();
        CHECK(json["warning"] == (cells[3] == "ok" ? "" : cells[3].substr(8)));
        if (!cells[7].empty())
            CHECK(json["easting"].get<double>() == Approx(std::stod(cells[7])).margin(0.001));
        if (!cells[6].empty())
            CHECK(json["square_m"].get<double>() == Approx(std::stod(cells[6])));
    }
    CHECK(seen > 80);
}
