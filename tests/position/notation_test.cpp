// What texts name. Sources: Ordnance Survey, "A guide to coordinate systems in Great Britain" (lettering and
// truncation); the published layout of the Irish Grid; NGA.STND.0037 by way of GeographicLib's
// GeoConvert 2.1.2 (MGRS); ISO 6709:2008 annex H; RFC 5870; common practice without a source for tetrads and
// for what spreadsheets do.
#include "core/position/notation.h"

#include <cmath>

#include "tests/support/reference_rows.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

/// The README of the table: run with each row's system named.
PositionOptions optionsFor(const std::string& system)
{
    PositionOptions options;
    options.system = system;
    return options;
}

std::string kindOf(const std::string& text, const PositionOptions& options = {})
{
    const auto parsed = parsePosition(text, options);
    return parsed ? "ok" : positionErrorKind(parsed.error());
}

void checkPlace(const test::Row& row, const ParsedPosition& parsed)
{
    if (!row.at("sw_easting_m").empty()) {
        // Tolerance of the table: corner, size and centre to 1e-6 m.
        CHECK(parsed.system.name() == row.at("system"));
        CHECK(parsed.cornerEasting == Approx(std::stod(row.at("sw_easting_m"))).margin(1e-6).epsilon(0));
        CHECK(parsed.cornerNorthing == Approx(std::stod(row.at("sw_northing_m"))).margin(1e-6).epsilon(0));
        CHECK(parsed.squareMetres == Approx(std::stod(row.at("square_m"))).margin(1e-6).epsilon(0));
        CHECK(parsed.centreEasting() ==
              Approx(std::stod(row.at("centre_easting_m"))).margin(1e-6).epsilon(0));
        CHECK(parsed.centreNorthing() ==
              Approx(std::stod(row.at("centre_northing_m"))).margin(1e-6).epsilon(0));
        CHECK(parsed.uncertaintyMetres == Approx(parsed.squareMetres * std::sqrt(0.5)).margin(1e-9));
    } else {
        CHECK(parsed.latitude == Approx(std::stod(row.at("lat_deg"))).margin(1e-9).epsilon(0));
        CHECK(parsed.longitude == Approx(std::stod(row.at("lon_deg"))).margin(1e-9).epsilon(0));
        CHECK(parsed.uncertaintyMetres == Approx(std::stod(row.at("uncertainty_m"))).epsilon(0.10));
    }
}

} // namespace

// Source: reference/geo/gridref_cases.csv, every row. `outside-area` needs a place and is tested with
// transform.h.
TEST_CASE("every row of the table of notations reads as the table says", "[position][notation]")
{
    const auto rows = test::referenceRows("reference/geo/gridref_cases.csv");
    if (rows.empty())
        return;
    CHECK(rows.size() == 157);
    for (const auto& row : rows) {
        CAPTURE(row.at("case"), row.at("input"), row.at("status"));
        const std::string& status = row.at("status");
        const auto parsed = parsePosition(row.at("input"), optionsFor(row.at("system")));
        if (status.starts_with("error:")) {
            REQUIRE_FALSE(parsed);
            CHECK(positionErrorKind(parsed.error()) == status.substr(6));
            CHECK(parsed.error().argument("value") == row.at("input"));
            continue;
        }
        if (!parsed && status.starts_with("ok-or-error:")) {
            CHECK(positionErrorKind(parsed.error()) == status.substr(12));
            continue;
        }
        REQUIRE(parsed);
        checkPlace(row, *parsed);
        const bool warned = status.starts_with("ok-warn:") && status != "ok-warn:outside-area";
        CHECK(warningKind(parsed->warning) == (warned ? status.substr(8) : ""));
    }
}

TEST_CASE("a British reference names the square by its digits, however spaced", "[position][notation]")
{
    struct Case {
        const char* text;
        double easting, northing, side;
    };
    const auto c = GENERATE(values<Case>({{"SO 612 094", 361200, 209400, 100},
                                          {"so612094", 361200, 209400, 100},
                                          {"  So 61 20 09 40  ", 361200, 209400, 10},
                                          {"SO6120094000", 361200, 294000, 1},
                                          {"SO 612345 094321", 361234.5, 209432.1, 0.1},
                                          {"SO6109", 361000, 209000, 1000},
                                          {"SO60", 360000, 200000, 10000},
                                          {"SO", 300000, 200000, 100000},
                                          {"HP 40 03", 440000, 1203000, 1000},
                                          {"SV 00 00", 0, 0, 1000},
                                          {"SO61E", 360000, 218000, 2000},
                                          {"SO61Z", 368000, 218000, 2000},
                                          {"SO61NE", 365000, 215000, 5000},
                                          {"GB SO 612 094", 361200, 209400, 100},
                                          {"\"SO 612 094\"", 361200, 209400, 100},
                                          {"SO\xE2\x80\x8B"
                                           "612094;",
                                           361200, 209400, 100},
                                          {"E361200 N209400", 361200, 209400, 1},
                                          {"OSGB 361200, 209400", 361200, 209400, 1}}));
    CAPTURE(c.text);
    const auto parsed = parsePosition(c.text);
    REQUIRE(parsed);
    CHECK(parsed->system.name() == "OSGB");
    CHECK(parsed->cornerEasting == Approx(c.easting).margin(1e-6).epsilon(0));
    CHECK(parsed->cornerNorthing == Approx(c.northing).margin(1e-6).epsilon(0));
    CHECK(parsed->squareMetres == Approx(c.side).margin(1e-9));
}

TEST_CASE("one letter is the Irish Grid, and a hemisphere only beside another or a decimal",
          "[position][notation]")
{
    const auto dublin = parsePosition("O 15904 34671");
    REQUIRE(dublin);
    CHECK(dublin->system.name() == "IG");
    CHECK(dublin->cornerEasting == 315904);
    CHECK(dublin->cornerNorthing == 234671);
    const auto origin = parsePosition("N 00 50");
    REQUIRE(origin);
    CHECK(origin->cornerEasting == 200000);
    CHECK(origin->cornerNorthing == 250000);
    CHECK(parsePosition("N61E")->system.name() == "IG");
    const auto angles = parsePosition("N 51.7803 W 2.5625");
    REQUIRE(angles);
    CHECK(angles->system.name() == "WGS84");
    CHECK(angles->longitude == -2.5625);
    CHECK(kindOf("O 715830 734697") == "not-a-grid-reference");
}

TEST_CASE("angles are read in the usual typographies", "[position][notation]")
{
    const auto text = GENERATE(values<std::string>({"51.7803 -2.5625",
                                                    "51,7803; -2,5625",
                                                    "51,7803, -2,5625",
                                                    "51.7803N 2.5625W",
                                                    "W2.5625 N51.7803",
                                                    "51°46′49.08″N 2°33′45.00″W",
                                                    "51°46'49.08\"N, 2°33'45.00\"W",
                                                    "51º46’49.08”N 2º33’45.00”W",
                                                    "51°46'49.08''N 2°33'45''W",
                                                    "51 46 49.08 N 2 33 45.00 W",
                                                    "51d46m49.08sN 2d33m45.00sW",
                                                    "51:46:49.08 -2:33:45.00",
                                                    "51-46-49.08N 2-33-45.00W",
                                                    "51°46.818′N 2°33.750′W",
                                                    "51.7803 −2.5625",
                                                    "51 deg 46 min 49.08 sec North, 2 deg 33 min 45 sec West",
                                                    "lat: 51.7803, lon: -2.5625",
                                                    "longitude=-2.5625 latitude=51.7803",
                                                    "geo:51.7803,-2.5625",
                                                    "+51.7803-002.5625/",
                                                    "+514649.08-0023345.00/",
                                                    "(51.7803, -2.5625)",
                                                    "\xE2\x80\x8E"
                                                    "51.7803, -2.5625",
                                                    "51.7803N -2.5625"}));
    CAPTURE(text);
    const auto parsed = parsePosition(text);
    REQUIRE(parsed);
    CHECK(parsed->system.name() == "WGS84");
    CHECK(parsed->latitude == Approx(51.7803).margin(1e-9).epsilon(0));
    CHECK(parsed->longitude == Approx(-2.5625).margin(1e-9).epsilon(0));
}

TEST_CASE("a degree of minus nought keeps its sign", "[position][notation]")
{
    CHECK(parsePosition("51:30:00 -0:33:45")->longitude == Approx(-0.5625).margin(1e-9));
    CHECK(parsePosition("51 30 0 N 0 33 45 W")->longitude == Approx(-0.5625).margin(1e-9));
    CHECK(parsePosition("+5130-00033.75/")->longitude == Approx(-0.5625).margin(1e-9));
}

TEST_CASE("each way of being wrong has its own name", "[position][notation]")
{
    struct Case {
        const char* text;
        const char* kind;
        const char* system;
    };
    const auto c = GENERATE(values<Case>({
        {"", "empty", ""},
        {" \xC2\xA0\xE2\x80\x8B ", "empty", ""},
        {"Cambridge", "not-a-grid-reference", ""},
        {"XYZ 123 456", "not-a-grid-reference", ""},
        {"N/A", "not-a-grid-reference", ""},
        {"361,200 209,400", "ambiguous-comma", ""},
        {"E 361,200 N 209,400", "ambiguous-comma", "OSGB"},
        {"51°46″49.08′N 2°33″45.00′W", "not-a-grid-reference", ""},
        {"SO 61 0", "odd-digit-count", ""},
        {"SO 6120 940", "odd-digit-count", ""},
        {"SO 61 2094", "unequal-halves", ""},
        {"SO 1234567 1234567", "too-many-digits", ""},
        {"SI 612 094", "illegal-letter-I", ""},
        {"IH 123 456", "illegal-letter-I", "IG"},
        {"30OWC3036", "illegal-letter-O", ""},
        {"SO61O", "bad-tetrad-letter", ""},
        {"5O 612 094", "letter-digit-confusion", ""},
        {"SO 6l2 094", "letter-in-digits", ""},
        {"SO 61200.5 09400.25", "mixed-decimals", ""},
        {"51.5 46.818 N 2 33.75 W", "mixed-decimals", ""},
        {"AA 12 34", "outside-grid", ""},
        {"712000 194000", "outside-grid", "OSGB"},
        {"612094", "ambiguous-number", ""},
        {"61 20 09 40", "ambiguous-number", ""},
        {"361200 209400", "ambiguous-number", "MGRS"},
        {"51.7803-2.5625", "ambiguous-number", ""},
        {"51,7803,-2,5625", "ambiguous-comma", ""},
        {"361,200.5 209,400.2", "ambiguous-comma", "OSGB"},
        {"30S 530181 4000000", "ambiguous-hemisphere", ""},
        {"51.7803N 2.5625", "ambiguous-hemisphere", ""},
        {"51.7803", "one-number", ""},
        {"51°46′49″N", "one-number", ""},
        {"51.7803 -2.5625 120", "too-many-tokens", ""},
        {"51.7803 -2.5625 120 extra", "too-many-tokens", ""},
        {"6.12E+05 1.94E+05", "spreadsheet-mangled", ""},
        {"12-Sep", "spreadsheet-mangled", ""},
        {"2024-09-12", "spreadsheet-mangled", ""},
        {"#######", "spreadsheet-mangled", ""},
        {"61UWC3036", "bad-zone", ""},
        {"32XMH1234", "bad-zone", ""},
        {"30UAC3036", "bad-column-letter", ""},
        {"30UWW3036", "bad-row-letter", ""},
        {"38VMS", "band-mismatch", ""},
        {"30U 530181 1000000", "band-mismatch", ""},
        {"51.7803 N 2.5625 N", "two-latitudes", ""},
        {"51.7803 E 2.5625 W", "two-longitudes", ""},
        {"-51.7803 N 2.5625 W", "sign-and-letter", ""},
        {"51°61′00″N 2°00′00″W", "minutes-out-of-range", ""},
        {"51°46′60.5″N 2°00′00″W", "seconds-out-of-range", ""},
        {"+516000-0020000/", "minutes-out-of-range", ""},
        {"91.0 -2.5", "latitude-out-of-range", ""},
        {"51.5 -192.5", "longitude-out-of-range", ""},
        {"+51.7803-2.5625/", "iso6709-width", ""},
        {"+51.7803-002.5625CRSMars/", "unknown-system", ""},
    }));
    CAPTURE(c.text, c.system);
    CHECK(kindOf(c.text, optionsFor(c.system)) == c.kind);
}

TEST_CASE("a likely meaning is offered and never taken", "[position][notation]")
{
    const auto fault = [](const char* text, const char* system = "") {
        const auto parsed = parsePosition(text, optionsFor(system));
        REQUIRE_FALSE(parsed);
        return parsed.error();
    };
    CHECK(fault("5O 612 094").argument("suggestion") == "SO");
    CHECK(fault("S0 612 094").argument("suggestion") == "SO");
    CHECK(fault("S0 612 094").argument("reading") == "SO 612 094");
    CHECK(fault("SO 6I2 O94").argument("suggestion") == "SO 612 094");
    CHECK(fault("209400 1009450", "IG").argument("suggestion").empty());
    CHECK(fault("1009450 345153", "OSGB").argument("suggestion") == "swapped?");
    // C07: longitude in the column of latitudes.
    CHECK(fault("-123.0940; 49.2360", "WGS84").argument("suggestion") == "swapped?");
    CHECK(fault("-123.0940; 49.2360", "WGS84").argument("reading") == "49.236, -123.094");
    CHECK(fault("-123.0940; 149.2360", "WGS84").argument("suggestion").empty());
}

TEST_CASE("bare numbers follow the named system, else degrees where both fit, else the National Grid",
          "[position][notation]")
{
    CHECK(parsePosition("361200 209400")->system.name() == "OSGB");
    CHECK(parsePosition("51.5 2.5")->system.name() == "WGS84");
    CHECK(parsePosition("51.5 2.5", optionsFor("OSGB"))->system.name() == "OSGB");
    CHECK(parsePosition("715830 734697", optionsFor("itm"))->system.name() == "ITM");
    CHECK(parsePosition("530181 5736693", optionsFor("UTM30"))->system.name() == "UTM30N");
    CHECK(parsePosition("530181 5736693", optionsFor("UTM30S"))->system.name() == "UTM30S");
    // Letters decide for themselves.
    CHECK(parsePosition("SO 612 094", optionsFor("WGS84"))->system.name() == "OSGB");
    CHECK(parsePosition("51.7803N 2.5625W", optionsFor("OSGB"))->system.name() == "WGS84");
    const auto unknown = parsePosition("SO 612 0944", optionsFor("Lambert"));
    REQUIRE_FALSE(unknown);
    CHECK(unknown.error().code == "position.unknown-system");
    CHECK(unknown.error().kind == FaultKind::usage);
}

// Source: EPSG registry, axis order of each code (C17: the four ways to give one place).
TEST_CASE("codes bring their own order of axes", "[position][notation]")
{
    const auto geographic = parsePosition("44.2011, 10.4322", optionsFor("EPSG:4326"));
    const auto longitudeFirst = parsePosition("10.4322, 44.2011", optionsFor("OGC:CRS84"));
    REQUIRE(geographic);
    REQUIRE(longitudeFirst);
    CHECK(geographic->latitude == longitudeFirst->latitude);
    CHECK(geographic->longitude == longitudeFirst->longitude);
    const auto eastFirst = parsePosition("614437.16, 4895206.23", optionsFor("EPSG:32632"));
    const auto northFirst = parsePosition("4895206.23, 614437.16", optionsFor("EPSG:3044"));
    REQUIRE(eastFirst);
    REQUIRE(northFirst);
    CHECK(eastFirst->system == northFirst->system);
    CHECK(eastFirst->cornerEasting == northFirst->cornerEasting);
    CHECK(eastFirst->cornerNorthing == northFirst->cornerNorthing);
    CHECK(kindOf("4895206.23, 614437.16", optionsFor("EPSG:32632")) == "outside-grid");
}

// C08, C21: a decimal comma is a decimal comma or a question, never thousands.
TEST_CASE("a decimal comma is understood where nothing else can be meant", "[position][notation]")
{
    PositionOptions comma;
    comma.decimal = ',';
    CHECK(parsePosition("44,20110 10,43220")->latitude == Approx(44.2011));
    CHECK(parsePosition("44,20110; 10,43220", comma)->longitude == Approx(10.4322));
    CHECK(parsePosition("44.20110; 10.43220", comma)->longitude == Approx(10.4322));
    CHECK(parsePosition("361200,250 209400,500")->cornerEasting == 361200.25);
    CHECK(kindOf("44,20110", comma) == "one-number");
    CHECK(kindOf("361.200,5 209.400,5", comma) == "ambiguous-comma");
    PositionOptions point;
    point.decimal = '.';
    CHECK(parsePosition("52,3", point)->longitude == 3);
    CHECK(kindOf("51,7803 -2,5625", point) == "too-many-tokens");
}

TEST_CASE("warnings of the text alone are given in the order of their weight", "[position][notation]")
{
    CHECK(parsePosition("SO")->warning == PositionWarning::veryCoarse);
    CHECK(parsePosition("JM 00 00")->warning == PositionWarning::seaSquare);
    CHECK(parsePosition("JM")->warning == PositionWarning::seaSquare);
    CHECK(parsePosition("A 12 34")->warning == PositionWarning::seaSquare);
    CHECK(parsePosition("0,0")->warning == PositionWarning::nullIsland);
    CHECK(parsePosition("0,0", optionsFor("ITM"))->warning == PositionWarning::nullIsland);
    CHECK(parsePosition("0.001,0.001")->warning == PositionWarning::none);
}

// Source: RFC 5870, section 3.4.3 (u is the uncertainty in metres).
TEST_CASE("a stated uncertainty wins where it is the larger", "[position][notation]")
{
    CHECK(parsePosition("geo:51.7803,-2.5625;u=35")->uncertaintyMetres == 35);
    CHECK(parsePosition("geo:51.7803,-2.5625;u=2")->uncertaintyMetres == Approx(6.5).epsilon(0.1));
    CHECK(kindOf("geo:51.7803,-2.5625;crs=Moon-2011") == "unknown-system");
}
