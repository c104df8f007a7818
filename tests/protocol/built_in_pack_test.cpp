// The pack that is built into the program. What it must hold is laid down for the programme: the field gall lines, the
// share by which each sign follows the leafing, which signs stay, what a "nothing seen" is worth.

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/protocol/built_in.h"
#include "core/protocol/pack_reader.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

std::set<std::string> signsWhere(bool (*test)(const Sign&))
{
    std::set<std::string> ids;
    for (const Sign& sign : builtInPack().signs)
        if (test(sign))
            ids.insert(sign.id);
    return ids;
}

const Fact& fact(const std::string& id)
{
    for (const Fact& entry : builtInPack().facts)
        if (entry.id == id)
            return entry;
    FAIL("no fact " << id);
    return builtInPack().facts.front();
}

} // namespace

TEST_CASE("The built-in pack has no fault", "[protocol]")
{
    std::string faults;
    for (const PackFault& fault : readPack(builtInPackText()).faults)
        faults += fault.path + ' ' + fault.code + ' ' + fault.detail + '\n';
    CHECK(faults.empty());
    CHECK(builtInPack().characters.size() == 19);
    CHECK(builtInPack().kinds.size() == 17);
    CHECK(builtInPack().key.size() == 269);
    CHECK(builtInPack().signs.size() == 29);
    CHECK(&builtInPack() == &builtInPack());
}

TEST_CASE("Field gall lines, details, laboratory and computed signs are as the programme lays down", "[protocol]")
{
    using Ids = std::set<std::string>;
    CHECK(signsWhere([](const Sign& s) { return s.group == SignGroup::gall; })
          == Ids{"S01", "S02", "S03", "S04", "S05", "S13", "S29"});
    CHECK(signsWhere([](const Sign& s) { return s.group == SignGroup::gallDetail; })
          == Ids{"S06", "S24", "S25", "S26"});
    CHECK(signsWhere([](const Sign& s) { return s.group == SignGroup::laboratory; }) == Ids{"S07"});
    CHECK(signsWhere([](const Sign& s) { return s.group == SignGroup::computed; }) == Ids{"S23"});
    CHECK(signsWhere([](const Sign& s) { return !s.onChecklist; }) == Ids{"S07", "S23"});
    CHECK(signsWhere([](const Sign& s) { return s.group == SignGroup::wrongHost; }) == Ids{"S20", "S21"});
    CHECK(signsWhere([](const Sign& s) { return s.onRuledOutTree; }) == Ids{"S14", "S15", "S20", "S21"});
    CHECK(signsWhere([](const Sign& s) { return s.earlierGeneration; }) == Ids{"S05"});
    CHECK(signsWhere([](const Sign& s) { return s.shiftFactor == 1.0; })
          == Ids{"S01", "S02", "S03", "S04", "S10", "S16", "S18", "S19", "S26", "S29"});
    CHECK(signsWhere([](const Sign& s) { return s.shiftFactor == 0.5; })
          == Ids{"S06", "S07", "S08", "S09", "S13", "S22", "S24"});
}

TEST_CASE("Galls never count for the host, and no catkin is judged by its posture", "[protocol]")
{
    CHECK_FALSE(builtInPack().character("K19")->decidesHost);
    for (const CharacterState& state : builtInPack().character("K13")->states)
        for (const char* posture : {"hang", "erect", "droop"})
            CHECK(state.words.find(posture) == std::string::npos);
    CHECK(builtInPack().state("K01", "opposite")->rulesOut);
    CHECK(builtInPack().state("K02", "compound-palmate")->rulesOut);
    CHECK(builtInPack().state("K02", "compound-pinnate")->rulesOut);
    CHECK(builtInPack().state("K02", "lobed")->rulesOut);
}

TEST_CASE("Facts of the trade stand in the pack with what is published beside them", "[protocol]")
{
    // Common practice, no source: every figure in this table.
    struct Row {
        const char* id;
        double min, max;
    };
    const auto row = GENERATE(values<Row>({{"adult-length", 2.5, 3},
                                           {"eggs-per-female", 100, 100},
                                           {"eggs-year-1", 1e2, 1e2},
                                           {"eggs-year-2", 1e4, 1e4},
                                           {"eggs-year-3", 1e6, 1e6},
                                           {"egg-hatch", 30, 40},
                                           {"adult-life", 10, 10},
                                           {"exit-hole-width", 1, 1},
                                           {"gall-size", 10, 40},
                                           {"one-generation", 1, 1},
                                           {"spread", 5, 8},
                                           {"nut-loss", 50, 70}}));
    CAPTURE(row.id);
    CHECK(fact(row.id).min == row.min);
    CHECK(fact(row.id).max == row.max);
    CHECK(fact(row.id).source.basis == Basis::commonPractice);
}

TEST_CASE("Eggs of one female multiply by her number each year", "[protocol]")
{
    // Common practice, no source: about 100 eggs each, so 10^2, 10^4, 10^6 before losses.
    double eggs = 1;
    for (const char* id : {"eggs-year-1", "eggs-year-2", "eggs-year-3"}) {
        eggs *= *fact("eggs-per-female").min;
        CHECK(fact(id).min == eggs);
    }
}

TEST_CASE("Published figures beside the facts are those of the publications", "[protocol]")
{
    const auto said = [](const std::string& id, const std::string& author) {
        for (const Published& entry : fact(id).published)
            if (entry.source.text.find(author) != std::string::npos)
                return entry;
        FAIL("nothing by " << author << " on " << id);
        return Published{};
    };
    CHECK(said("adult-length", "WSL").max == 3);            // WSL, Edelkastaniengallwespe
    CHECK(said("adult-length", "Grassi").min == 2);         // Grassi, c. 2012
    CHECK(said("eggs-per-female", "Zamora").max == 150);    // Castanea Zamora, undated
    CHECK(said("eggs-per-female", "Bolzano").max == 300);   // Province of Bolzano, undated
    CHECK(said("gall-size", "SRAL").max == 20);             // DRIAAF/SRAL 2013
    CHECK(said("gall-size", "Forestry Commission").max == 40);   // Forestry Commission England 2019
    CHECK(said("spread", "EFSA").max == 8);                 // EFSA 2010
    CHECK(said("spread", "Gilioli").max == 6.6);            // Gilioli et al. 2013
    CHECK(said("nut-loss", "SRAL").max == 80);              // DRIAAF/SRAL 2013
    CHECK(said("egg-hatch", "Asturias").min == 30);         // Principado de Asturias 2014
}

TEST_CASE("Nothing that the pack says asserts a law, a status or a duty", "[protocol]")
{
    // Common practice, no source: these words belong to the authority alone. A caution may only forbid them.
    const auto quiet = [](const std::string& words) {
        for (const char* word : {"quarantine", "disease-free", "you must report", "is required by law"})
            if (words.find(word) != std::string::npos)
                return false;
        return true;
    };
    for (const std::string& line : builtInPack().standingNotice)
        CHECK(quiet(line));
    for (const Reason& reason : builtInPack().reasons)
        CHECK((quiet(reason.sentence) && quiet(reason.whatToDo)));
    CHECK(quiet(builtInPack().hazardLine));
    CHECK(builtInPack().exportNote
          == "Volunteer observation. Not an official finding, not a declaration of absence, not a safety survey of "
             "trees.");
    const auto& notice = builtInPack().standingNotice;
    CHECK(notice.at(0).find("Leave it on the tree") == 0);
    CHECK(notice.at(2).find("competent") != std::string::npos);
}

TEST_CASE("Words that may mean several things are no sign and no state", "[protocol]")
{
    std::set<std::string> known;
    for (const Sign& sign : builtInPack().signs)
        known.insert(sign.alsoCalled.begin(), sign.alsoCalled.end());
    for (const Character& character : builtInPack().characters)
        for (const CharacterState& state : character.states) {
            known.insert(state.alsoCalled.begin(), state.alsoCalled.end());
            known.insert(state.id);
        }
    for (const char* vague : {"whorled", "needle", "unknown", "leaf curl", "galls on leaf", "galls on twig", "exit holes",
                              "dieback", "bark crack", "early leaf fall", "discolouration", "sap run"})
        CHECK(known.count(vague) == 0);
    for (const char* clear : {"alternate", "opposite", "simple", "lobed", "pinnate", "palmate"})
        CHECK(known.count(clear) == 1);
}

TEST_CASE("Classes of numbers leave no gap and do not overlap", "[protocol]")
{
    int next = 1;
    for (const CountClass& entry : builtInPack().countClasses) {
        CAPTURE(entry.id);
        CHECK(entry.from == next);
        next = entry.to + 1;
    }
    CHECK(builtInPack().countClasses.back().to == 0);
}

TEST_CASE("Every decision has reasons that can stand for it", "[protocol]")
{
    int accept = 0, reject = 0, giveBack = 0;
    for (const Reason& reason : builtInPack().reasons) {
        accept += reason.accept ? 1 : 0;
        reject += reason.reject ? 1 : 0;
        giveBack += reason.giveBack ? 1 : 0;
    }
    CHECK(accept >= 3);
    CHECK(reject >= 5);
    CHECK(giveBack >= 5);
}

TEST_CASE("Coins beside a gall have their published diameters", "[protocol]")
{
    // Council Regulation (EC) No 975/98 (later (EU) No 729/2014), annex I, as summed up by EUR-Lex; The Royal Mint,
    // specifications of United Kingdom coins, as restated by others
    const std::map<std::string, double> published{{"eu-2-euro", 25.75}, {"eu-1-euro", 23.25}, {"eu-50-cent", 24.25},
                                                  {"gb-1p", 20.3},      {"gb-2p", 25.9},      {"gb-5p", 18.0},
                                                  {"gb-10p", 24.5},     {"gb-1-pound", 23.43}, {"gb-2-pounds", 28.4}};
    std::size_t found = 0;
    for (const KnownLength& known : builtInPack().knownLengths) {
        CAPTURE(known.id);
        CHECK(known.uncertaintyMillimetres > 0);
        if (const auto entry = published.find(known.id); entry != published.end()) {
            CHECK(known.millimetres == entry->second);
            CHECK(known.source.basis == Basis::secondHand);
            ++found;
        } else {
            CHECK(known.source.basis == Basis::memory);
        }
    }
    CHECK(found == published.size());
}
