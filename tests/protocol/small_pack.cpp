#include "tests/protocol/small_pack.h"

#include <utility>

namespace cupule::test {

using nlohmann::json;

namespace {

constexpr const char* text = R"({
  "format": "cupule-protocol-pack", "formatVersion": 1,
  "id": "invented", "name": "An invented mite on an invented thorn", "version": "1", "language": "en",
  "sources": {"book": {"text": "Nobody, undated, A book", "basis": "read"},
              "talk": {"text": "common practice, no source", "basis": "common-practice"}},
  "regions": [{"id": "VALE", "name": "the vale", "leafingReference": "04-20", "source": "talk"}],
  "characters": [
    {"id": "A", "name": "leaf edge", "organ": "leaf", "question": "What edge?",
     "states": [{"id": "smooth", "words": "smooth", "alsoCalled": ["entire"]},
                {"id": "torn", "words": "torn", "alsoCalled": ["ragged"], "rulesOut": true}],
     "value": {"unit": "mm", "words": "width", "hardMin": 1, "hardMax": 90},
     "visible": {"VALE": [5, 6, 7]}, "onGround": {"VALE": [8]}, "onGroundToo": true, "source": "book"},
    {"id": "B", "name": "smell", "organ": "bark", "question": "What smell?",
     "visible": {"VALE": [1]}, "decidesHost": false, "source": "book"}],
  "kinds": [{"id": "thorn", "name": "Spina ficta", "commonName": "vale thorn", "host": true},
            {"id": "broom", "name": "Scopa ficta", "commonName": "vale broom"}],
  "key": [
    {"kind": "thorn", "character": "A", "states": ["smooth"], "min": 10, "max": 20, "mark": "diagnostic-if-counted",
     "asPublished": "smooth", "sources": ["book"]},
    {"kind": "broom", "character": "A", "states": ["torn"], "groundStates": ["smooth"], "mark": "contradicts",
     "asPublished": "torn", "sources": ["book", "talk"]},
    {"kind": "broom", "character": "B", "mark": "not-for-host", "asPublished": "sharp", "sources": ["talk"]}],
  "countedLimits": [{"character": "A", "measuredBy": "A", "atLeast": 15, "source": "talk"}],
  "marginCharacter": "A",
  "signs": [
    {"id": "G", "name": "green lump", "shortName": "lump", "part": "leaf", "group": "gall", "shiftFactor": 1,
     "windows": {"VALE": {"first": 122, "peakFrom": 153, "peakTo": 182, "last": 244}},
     "weight": "strong", "weightReason": "nothing else makes it",
     "measure": {"words": "width", "unit": "mm", "usualMin": 5, "usualMax": 20, "hardMin": 2, "hardMax": 60},
     "action": "photograph", "mustNotConclude": "anything else", "alsoCalled": ["lump"], "sources": ["book"]},
    {"id": "D", "name": "dry lump", "shortName": "dry", "part": "twig", "group": "gall", "earlierGeneration": true,
     "persists": true, "windows": {"VALE": {"first": 214, "peakFrom": 275, "peakTo": 121, "last": 0}},
     "weight": "supporting", "weightReason": "old", "action": "note", "mustNotConclude": "now", "ribbon": "dry",
     "sources": ["book"]}],
  "seasonQuestions": [{"code": "season.lump", "signs": ["G"], "characters": ["A"],
     "quietOutside": {"VALE": {"first": 92, "last": 274}}, "together": ["D"], "shiftFactor": 0.5,
     "words": "Now?", "source": "talk"}],
  "worth": {"VALE": {"letters": "CCCCCC00CBAAAABBBBCCCCCC",
     "startMoves": [0,0,0,0,0,0,1,1,1,1,1,1,0.5,0.5,0.5,0.5,0,0,0,0,0,0,0,0],
     "lookFor": ["a","b","c","d","e","f","g","h","i","j","k","l"],
     "why": ["a","b","c","d","e","f","g","h","i","j","k","l"], "source": "talk"}},
  "worthConditions": [{"id": "minutes", "words": "minutes", "essential": true, "source": "talk"},
                      {"id": "height", "words": "height", "source": "talk"}],
  "reasons": [{"id": "r", "sentence": "So.", "whatToDo": "Go.", "standsFor": ["return"], "source": "talk"}],
  "cautions": [{"id": "c", "topic": "people", "words": "Mind the step.", "source": "talk"}],
  "standingNotice": ["Leave it."], "plantParts": ["leaf"], "hazardLine": "Do not open.", "exportNote": "No finding.",
  "facts": [{"id": "f", "words": "It is small.", "unit": "mm", "min": 1, "max": 2, "source": "talk",
             "published": [{"words": "small", "max": 3, "source": "book"}]}],
  "countClasses": [{"id": "few", "words": "1 to 5", "from": 1, "to": 5, "source": "talk"}],
  "gallColours": [{"id": "grey", "words": "grey", "lightnessMin": 20, "lightnessMax": 80, "chromaMin": 0, "chromaMax": 9,
                   "hueFrom": 350, "hueTo": 10, "source": "talk"}],
  "knownLengths": [{"id": "penny", "words": "a penny", "millimetres": 20.3, "uncertaintyMillimetres": 0.1, "source": "book"}],
  "settings": {
    "newGroundKilometres": {"value": 10, "source": "talk"},
    "spreadKilometresPerYear": {"value": 8, "source": "book"},
    "spreadLowKilometresPerYear": {"value": 5, "source": "talk"},
    "sameTreeMetres": {"value": 50, "source": "talk"},
    "usefulUncertaintyMetres": {"value": 100, "source": "talk"},
    "photoMetres": {"value": 250, "source": "talk"},
    "photoMinutes": {"value": 180, "source": "talk"},
    "shiftLimitDays": {"value": 21, "source": "talk"},
    "daysPer100Metres": {"value": 2.5, "source": "book"},
    "sampleWarnHours": {"value": 24, "source": "talk"},
    "sampleAskHours": {"value": 72, "source": "talk"},
    "sampleVoidRearingHours": {"value": 96, "source": "talk"},
    "areaWSEN": {"value": [-11, 49, 2, 61], "source": "talk"}}
})";

} // namespace

json smallPack()
{
    return json::parse(text);
}

std::string changed(const std::string& pointer, json value)
{
    json pack = smallPack();
    pack[json::json_pointer(pointer)] = std::move(value);
    return pack.dump();
}

std::string without(const std::string& pointer)
{
    json pack = smallPack();
    const json::json_pointer at(pointer);
    json& owner = pack[at.parent_pointer()];
    if (owner.is_array())
        owner.erase(std::stoul(at.back()));
    else
        owner.erase(at.back());
    return pack.dump();
}

} // namespace cupule::test
