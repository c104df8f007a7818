// Every fault of a pack is named with its path, all of them at once. The table changes one thing at a time in a small
// invented pack; paths are JSON pointers (RFC 6901).

#include <algorithm>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/protocol/pack_reader.h"
#include "tests/protocol/small_pack.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::changed;
using cupule::test::smallPack;
using cupule::test::without;
using nlohmann::json;

namespace {

std::string faultsAsText(const PackReading& reading)
{
    std::string all;
    for (const PackFault& fault : reading.faults)
        all += fault.path + " " + fault.code + " " + fault.detail + "\n";
    return all;
}

bool holds(const PackReading& reading, const std::string& path, const std::string& code)
{
    return std::any_of(reading.faults.begin(), reading.faults.end(),
                       [&](const PackFault& fault) { return fault.path == path && fault.code == code; });
}

struct Change {
    std::string pointer;
    json value;
    std::string path;
    std::string code;
};

} // namespace

TEST_CASE("A whole pack is read without a fault", "[protocol]")
{
    const PackReading reading = readPack(smallPack().dump());
    INFO(faultsAsText(reading));
    REQUIRE(reading.good());
    const Pack& pack = reading.pack;
    CHECK(pack.character("A")->states.size() == 2);
    CHECK(pack.character("A")->visible.at("VALE") == 0b1110000);
    CHECK(pack.character("A")->onGround.at("VALE") == 0b10000000);
    CHECK_FALSE(pack.character("B")->decidesHost);
    CHECK(pack.state("A", "torn")->rulesOut);
    CHECK(pack.row("thorn", "A")->max == 20);
    CHECK(pack.row("broom", "A")->sources.at(1).basis == Basis::commonPractice);
    CHECK(pack.row("thorn", "B") == nullptr);
    CHECK(pack.kind("thorn")->host);
    CHECK(pack.sign("G")->windows.at("VALE").peakTo == 182);
    CHECK(pack.sign("D")->windows.at("VALE").last == 0);
    CHECK(pack.sign("Q") == nullptr);
    CHECK(pack.worth.at("VALE").letters.at(8) == 'C');
    CHECK(pack.worth.at("VALE").letters.at(9) == 'B');
    CHECK(pack.reason("r")->giveBack);
    CHECK_FALSE(pack.reason("r")->accept);
    CHECK(pack.facts.at(0).published.at(0).max == 3);
    CHECK(pack.settings.sources.at("daysPer100Metres").basis == Basis::read);
    CHECK(pack.region("VALE")->leafingReference == "04-20");
}

TEST_CASE("Each wrong value is named with its path", "[protocol]")
{
    const auto row = GENERATE(values<Change>({
        {"/format", "something else", "/format", "pack.unknown-value"},
        {"/formatVersion", 2, "/formatVersion", "pack.range"},
        {"/id", "", "/id", "pack.empty"},
        {"/id", 7, "/id", "pack.type"},
        {"/colour", "red", "/colour", "pack.unknown-member"},
        {"/characters/0/states/0/shade", 1, "/characters/0/states/0/shade", "pack.unknown-member"},
        {"/sources/book/basis", "hearsay", "/sources/book/basis", "pack.unknown-value"},
        {"/sources/book/text", " ", "/sources/book/text", "pack.empty"},
        {"/regions/0/leafingReference", "02-30", "/regions/0/leafingReference", "pack.date"},
        {"/regions/0/source", "no such", "/regions/0/source", "pack.dangling"},
        {"/key/0/sources", json::array(), "/key/0/sources", "pack.empty"},
        {"/key/0/sources/0", "no such", "/key/0/sources", "pack.dangling"},
        {"/key/0/kind", "oak", "/key/0/kind", "pack.dangling"},
        {"/key/0/character", "Z", "/key/0/character", "pack.dangling"},
        {"/key/0/states/0", "crooked", "/key/0/states/0", "pack.dangling"},
        {"/key/1/groundStates/0", "crooked", "/key/1/groundStates/0", "pack.dangling"},
        {"/key/0/mark", "perhaps", "/key/0/mark", "pack.unknown-value"},
        {"/key/0/mark", "contradicts", "/key/0/mark", "pack.mark"},
        {"/key/1/mark", "diagnostic", "/key/1/mark", "pack.mark"},
        {"/key/2/mark", "shared", "/key/2/mark", "pack.mark"},
        {"/key/0/min", 30, "/key/0/min", "pack.order"},
        {"/key/0/max", 95, "/key/0/min", "pack.order"},
        {"/key/2/max", 3, "/key/2/max", "pack.no-value"},
        {"/key/0/states/0", "torn", "/key/0/states/0", "pack.host-ruled-out"},
        {"/kinds/1/id", "thorn", "/kinds/1", "pack.duplicate"},
        {"/kinds/0/host", false, "/kinds", "pack.no-host"},
        {"/kinds/0/host", "yes", "/kinds/0/host", "pack.type"},
        {"/characters/1/id", "A", "/characters/1", "pack.duplicate"},
        {"/characters/0/states/1/id", "smooth", "/characters/0/states/1", "pack.duplicate"},
        {"/characters/0/states/1/alsoCalled/0", "entire", "/characters/0/states/1/alsoCalled/0", "pack.duplicate"},
        {"/characters/0/states/1/alsoCalled/0", "Ragged", "/characters/0/states/1/alsoCalled/0", "pack.alias-form"},
        {"/characters/0/visible/VALE/1", 13, "/characters/0/visible/VALE/1", "pack.range"},
        {"/characters/0/visible/VALE/1", 5, "/characters/0/visible/VALE/1", "pack.duplicate"},
        {"/characters/0/visible/HILL", json::array({1}), "/characters/0/visible/HILL", "pack.dangling"},
        {"/characters/0/onGroundToo", false, "/characters/0/onGround", "pack.not-on-ground"},
        {"/characters/0/value/hardMin", 100, "/characters/0/value/hardMin", "pack.order"},
        {"/countedLimits/0/measuredBy", "B", "/countedLimits/0/measuredBy", "pack.no-value"},
        {"/countedLimits/0/character", "B", "/key/0/mark", "pack.no-limit"},
        {"/marginCharacter", "M", "/marginCharacter", "pack.dangling"},
        {"/signs/1/id", "G", "/signs/1", "pack.duplicate"},
        {"/signs/0/group", "thing", "/signs/0/group", "pack.unknown-value"},
        {"/signs/0/group", "computed", "/signs/0/onChecklist", "pack.checklist"},
        {"/signs/1/group", "supporting", "/signs/1/earlierGeneration", "pack.group"},
        {"/signs/0/shiftFactor", 1.5, "/signs/0/shiftFactor", "pack.range"},
        {"/signs/0/ribbon", "wide", "/signs/0/ribbon", "pack.unknown-value"},
        {"/signs/1/alsoCalled", json::array({"lump"}), "/signs/1/alsoCalled/0", "pack.duplicate"},
        {"/signs/0/windows/VALE/first", 0, "/signs/0/windows/VALE/first", "pack.range"},
        {"/signs/0/windows/VALE/last", 367, "/signs/0/windows/VALE/last", "pack.range"},
        {"/signs/0/windows/VALE/first", 122.5, "/signs/0/windows/VALE/first", "pack.type"},
        {"/signs/0/windows/VALE/peakFrom", 183, "/signs/0/windows/VALE", "pack.order"},
        {"/signs/0/windows/VALE/last", 0, "/signs/0/windows/VALE/last", "pack.no-end"},
        {"/signs/0/measure/hardMin", 70, "/signs/0/measure/hardMin", "pack.order"},
        {"/signs/0/measure/usualMax", 61, "/signs/0/measure/usualMin", "pack.order"},
        {"/signs/0/measure/usualMin", 21, "/signs/0/measure/usualMin", "pack.order"},
        {"/seasonQuestions/0/signs/0", "Q", "/seasonQuestions/0/signs/0", "pack.dangling"},
        {"/seasonQuestions/0/together/0", "Q", "/seasonQuestions/0/together/0", "pack.dangling"},
        {"/seasonQuestions/0/characters/0", "Q", "/seasonQuestions/0/characters/0", "pack.dangling"},
        {"/seasonQuestions/0/states", json::array({"crooked"}), "/seasonQuestions/0/states/0", "pack.dangling"},
        {"/seasonQuestions/0/quietOutside/HILL", json({{"first", 1}, {"last", 2}}),
         "/seasonQuestions/0/quietOutside/HILL", "pack.dangling"},
        {"/worth/VALE/letters", "CCCCCC00CBAAAABBBBCCCCCD", "/worth/VALE/letters", "pack.letter"},
        {"/worth/VALE/letters", "CCC", "/worth/VALE/letters", "pack.length"},
        {"/worth/VALE/startMoves/3", -1, "/worth/VALE/startMoves/3", "pack.range"},
        {"/worth/VALE/why/11", "", "/worth/VALE/why/11", "pack.empty"},
        {"/worthConditions/1/id", "luck", "/worthConditions/1/id", "pack.unknown-value"},
        {"/worthConditions/1/id", "minutes", "/worthConditions/1", "pack.duplicate"},
        {"/reasons/0/standsFor/0", "burn", "/reasons/0/standsFor", "pack.unknown-value"},
        {"/plantParts", json::array({"leaf", "leaf"}), "/plantParts/1", "pack.duplicate"},
        {"/facts/0/min", 3, "/facts/0/min", "pack.order"},
        {"/facts/0/published/0/min", 4, "/facts/0/published/0/min", "pack.order"},
        {"/countClasses/0/to", 0, "/countClasses/0/to", "pack.range"},
        {"/countClasses/0/from", 9, "/countClasses/0/to", "pack.order"},
        {"/gallColours/0/lightnessMin", 90, "/gallColours/0/lightnessMin", "pack.order"},
        {"/gallColours/0/chromaMax", -1, "/gallColours/0/chromaMax", "pack.range"},
        {"/gallColours/0/chromaMin", 10, "/gallColours/0/chromaMin", "pack.order"},
        {"/gallColours/0/hueFrom", 361, "/gallColours/0/hueFrom", "pack.range"},
        {"/gallColours/0/hueTo", "blue", "/gallColours/0/hueTo", "pack.type"},
        {"/gallColours/1", json({{"id", "grey"}, {"words", "grey again"}, {"source", "talk"}}), "/gallColours/1",
         "pack.duplicate"},
        {"/knownLengths/0/millimetres", 0, "/knownLengths/0/millimetres", "pack.range"},
        {"/knownLengths/0/uncertaintyMillimetres", -0.1, "/knownLengths/0/uncertaintyMillimetres", "pack.range"},
        {"/knownLengths/0/uncertaintyMillimetres", 30, "/knownLengths/0/uncertaintyMillimetres", "pack.range"},
        {"/knownLengths/1",
         json({{"id", "penny"}, {"words", "again"}, {"millimetres", 2}, {"uncertaintyMillimetres", 0}, {"source", "talk"}}),
         "/knownLengths/1", "pack.duplicate"},
        {"/settings/sameTreeMetres/value", 0, "/settings/sameTreeMetres/value", "pack.range"},
        {"/settings/sameTreeMetres/value", "wide", "/settings/sameTreeMetres/value", "pack.type"},
        {"/settings/areaWSEN/value", json::array({2, 49, -11, 61}), "/settings/areaWSEN/value", "pack.range"},
        {"/settings/areaWSEN/value", json::array({2}), "/settings/areaWSEN/value", "pack.length"},
        {"/settings/spreadLowKilometresPerYear/value", 9, "/settings/spreadLowKilometresPerYear", "pack.order"},
        {"/settings/sampleAskHours/value", 100, "/settings/sampleWarnHours", "pack.order"},
    }));
    CAPTURE(row.pointer, row.value.dump());
    const PackReading reading = readPack(changed(row.pointer, row.value));
    INFO(faultsAsText(reading));
    CHECK_FALSE(reading.good());
    CHECK(holds(reading, row.path, row.code));
}

TEST_CASE("Each member that a pack cannot do without is missed by name", "[protocol]")
{
    const auto pointer = GENERATE(values<std::string>(
        {"/format", "/formatVersion", "/id", "/name", "/version", "/language", "/sources", "/regions", "/characters",
         "/kinds", "/key", "/signs", "/worth", "/worthConditions", "/reasons", "/cautions", "/standingNotice",
         "/plantParts", "/hazardLine", "/exportNote", "/settings", "/regions/0/id", "/regions/0/leafingReference",
         "/regions/0/source", "/characters/0/organ", "/characters/0/question", "/characters/0/visible",
         "/characters/0/source", "/characters/0/value/words", "/kinds/0/commonName", "/key/0/asPublished",
         "/key/0/mark", "/key/0/sources", "/key/0/states", "/countedLimits/0/atLeast", "/countedLimits/0/source",
         "/signs/0/windows", "/signs/0/windows/VALE/first", "/signs/0/weight", "/signs/0/action",
         "/signs/0/mustNotConclude", "/signs/0/sources", "/signs/0/measure/hardMax", "/seasonQuestions/0/source",
         "/worth/VALE/letters", "/worth/VALE/why", "/worthConditions/0/source", "/reasons/0/whatToDo",
         "/reasons/0/source", "/cautions/0/source", "/facts/0/source", "/facts/0/published/0/source",
         "/countClasses/0/from", "/gallColours/0/words", "/gallColours/0/source", "/knownLengths/0/millimetres",
         "/knownLengths/0/uncertaintyMillimetres", "/knownLengths/0/source", "/settings/photoMinutes", "/settings/photoMinutes/source",
         "/settings/photoMinutes/value"}));
    CAPTURE(pointer);
    const PackReading reading = readPack(without(pointer));
    INFO(faultsAsText(reading));
    CHECK(holds(reading, pointer, "pack.missing"));
}

TEST_CASE("A region that a section forgets is named", "[protocol]")
{
    json pack = smallPack();
    pack["regions"].push_back({{"id", "HILL"}, {"name", "the hill"}, {"leafingReference", "05-01"}, {"source", "talk"}});
    const PackReading reading = readPack(pack.dump());
    for (const std::string path : {"/characters/0/visible", "/signs/0/windows", "/signs/1/windows", "/worth"})
        CHECK(holds(reading, path, "pack.region-missing"));
    CHECK_FALSE(holds(reading, "/seasonQuestions/0/quietOutside", "pack.region-missing"));
}

TEST_CASE("All faults of a pack come at once", "[protocol]")
{
    json pack = smallPack();
    pack["id"] = "";
    pack["kinds"][0].erase("name");
    pack["key"][1]["kind"] = "oak";
    pack["signs"][0]["windows"]["VALE"]["last"] = 900;
    pack["settings"].erase("photoMetres");
    pack["extra"] = true;
    const PackReading reading = readPack(pack.dump());
    CHECK(holds(reading, "/id", "pack.empty"));
    CHECK(holds(reading, "/kinds/0/name", "pack.missing"));
    CHECK(holds(reading, "/key/1/kind", "pack.dangling"));
    CHECK(holds(reading, "/signs/0/windows/VALE/last", "pack.range"));
    CHECK(holds(reading, "/settings/photoMetres", "pack.missing"));
    CHECK(holds(reading, "/extra", "pack.unknown-member"));
    CHECK(reading.faults.size() == 6);
}

TEST_CASE("More kinds than the rules can hold are refused", "[protocol]")
{
    json pack = smallPack();
    for (int i = 0; i < 63; ++i) {
        const std::string id = std::string(1, 'k').append(std::to_string(i));
        pack["kinds"].push_back({{"id", id}, {"name", id}, {"commonName", id}});
    }
    CHECK(holds(readPack(pack.dump()), "/kinds", "pack.too-many"));
}
