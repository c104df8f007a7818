#include "tests/app/command.h"
#include "tests/support/reference_rows.h"
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

// Source: reference/geo/gridref_cases.csv, every row, run as its README says.
TEST_CASE("every published notation gives its result or its error through the program", "[app][position]")
{
    const auto rows = referenceRows("reference/geo/gridref_cases.csv");
    if (rows.empty())
        return;
    CHECK(rows.size() == 157);
    Command command;
    for (const auto& row : rows) {
        const std::string& status = row.at("status");
        CAPTURE(row.at("case"), row.at("input"), status);
        std::vector<std::string> words{"position", row.at("input"), "--json"};
        if (!row.at("system").empty())
            words.insert(words.end(), {"--system", row.at("system")});
        // G100 to G104 lie outside the usual area and are read with the whole world as the area
        if (row.at("case") >= "G100" && row.at("case") <= "G104")
            words.insert(words.end(), {"--area", "-180,-90,180,90"});
        const Said said = command.run(words);
        const auto json = said.json();
        const bool refused = json.contains("error");
        CHECK(said.code == (refused ? 3 : 0));
        if (status.starts_with("error:")) {
            CHECK(json.value("error", "") == status.substr(6));
            CHECK_FALSE(said.err.empty());
            continue;
        }
        if (refused) {
            CHECK("ok-or-error:" + json.value("error", "") == status);
            continue;
        }
        CHECK(json["warning"] == (status.starts_with("ok-warn:") ? status.substr(8) : ""));
        const auto agrees = [&](const char* column, const char* member, double margin) {
            if (const std::string& expected = row.at(column); !expected.empty())
                CHECK(json[member].get<double>() == Approx(std::stod(expected)).margin(margin).epsilon(0));
        };
        agrees("centre_easting_m", "easting", 1e-6);
        agrees("centre_northing_m", "northing", 1e-6);
        agrees("square_m", "square_m", 1e-6);
        agrees("lat_deg", "lat", 1e-9);
        agrees("lon_deg", "lon", 1e-9);
        if (const std::string& expected = row.at("uncertainty_m"); !expected.empty())
            CHECK(json["uncertainty_m"].get<double>() == Approx(std::stod(expected)).epsilon(0.1));
    }
}

TEST_CASE("a place is written in every notation that reaches it", "[app][position]")
{
    Command command;
    const auto all = command.run({"position", "SO 612 094", "--as", "all", "--json"}).json()["written"];
    CHECK(all["osgb"] == "SO 612 094");
    CHECK(all["osgb-tetrad"] == "SO60E");   // letters from the south-west, north then east: common practice
    CHECK(all["osgb-metres"] == "361250 209450");
    CHECK_FALSE(all.contains("irish"));     // the Irish Grid does not reach
    for (const auto& [notation, text] : all.items()) {
        CAPTURE(notation);
        // what is written is read back to the same place
        std::vector<std::string> words{"position", text.get<std::string>(), "--json"};
        if (notation == "osgb-metres")
            words.insert(words.end(), {"--system", "OSGB"});
        const auto back = command.run(words).json();
        CHECK(back["lat"].get<double>() == Approx(51.7824).margin(notation == "osgb-tetrad" ? 0.02 : 0.001));
    }
    CHECK(command.run({"position", "SO 612 094", "--as", "iso6709", "--digits", "3"}).says("+51.782-002.563/"));
    const Said far = command.run({"position", "SO 612 094", "--as", "irish", "--json"});
    CHECK(far.code == 3);
    CHECK(far.json()["error"] == "outside-grid");
    CHECK(command.run({"position", "SO 612 094", "--as", "chains"}).code == 2);
}

TEST_CASE("a grid file is used where one is named, and the difference is stated", "[app][position]")
{
    Command command;
    const Said without = command.run({"position", "SO 612 094"});
    CHECK(without.says("5 m"));
    CHECK(command.run({"position", "SO 612 094", "--json"}).json()["grid_difference_m"].is_null());
    const auto folder = sharedPath("reference/geo/grids");
    if (!folder)
        return skipped("reference/geo/grids is not here");
    const auto json = command.run({"position", "SO 612 094", "--grids", *folder, "--json"}).json();
    // PROJ_FACTS.md: the middle of this square through the grid, measured with PROJ 9.1.1
    CHECK(json["lat"].get<double>() == Approx(51.7823669).margin(1e-7));
    CHECK(json["lon"].get<double>() == Approx(-2.5631224).margin(1e-7));
    CHECK(json["operation_accuracy_m"].get<double>() == Approx(0.03));
    CHECK(json["grid_difference_m"].get<double>() > 0.1);
    CHECK(json["grid_difference_m"].get<double>() < 5);
    CHECK(command.run({"position", "SO 612 094", "--grids", *folder}).says("without it the position would lie"));
    CHECK(command.run({"position", "SO 612 094", "--grids", command.path("nowhere")}).code == 3);
}
