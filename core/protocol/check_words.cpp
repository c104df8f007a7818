// What must hold among reasons, cautions, facts and settings.

#include "core/protocol/sections.h"

namespace cupule {

namespace {

void checkFact(const Fact& fact, const std::string& path, std::vector<PackFault>& faults)
{
    if (fact.min && fact.max && *fact.min > *fact.max)
        faults.push_back({path + "/min", "pack.order", "min, max"});
    for (std::size_t i = 0; i < fact.published.size(); ++i) {
        const Published& said = fact.published[i];
        if (said.min && said.max && *said.min > *said.max)
            faults.push_back({path + "/published/" + std::to_string(i) + "/min", "pack.order", "min, max"});
    }
}

void checkColours(const Pack& pack, std::vector<PackFault>& faults)
{
    checkDoubles(
        pack.gallColours, "/gallColours", [](const GallColour& c) { return c.id; }, faults);
    for (std::size_t i = 0; i < pack.gallColours.size(); ++i) {
        const GallColour& colour = pack.gallColours[i];
        const std::string path = "/gallColours/" + std::to_string(i);
        if (colour.lightnessMin > colour.lightnessMax)
            faults.push_back({path + "/lightnessMin", "pack.order", "min, max"});
        if (colour.chromaMin > colour.chromaMax)
            faults.push_back({path + "/chromaMin", "pack.order", "min, max"});
    }
}

} // namespace

void checkWords(const Pack& pack, std::vector<PackFault>& faults)
{
    checkDoubles(
        pack.reasons, "/reasons", [](const Reason& r) { return r.id; }, faults);
    checkDoubles(
        pack.cautions, "/cautions", [](const Caution& c) { return c.id; }, faults);
    checkDoubles(
        pack.plantParts, "/plantParts", [](const std::string& part) { return part; }, faults);
    checkDoubles(
        pack.facts, "/facts", [](const Fact& f) { return f.id; }, faults);
    checkDoubles(
        pack.countClasses, "/countClasses", [](const CountClass& c) { return c.id; }, faults);
    for (std::size_t i = 0; i < pack.facts.size(); ++i)
        checkFact(pack.facts[i], "/facts/" + std::to_string(i), faults);
    for (std::size_t i = 0; i < pack.countClasses.size(); ++i) {
        const CountClass& entry = pack.countClasses[i];
        if (entry.to != 0 && entry.to < entry.from)
            faults.push_back({"/countClasses/" + std::to_string(i) + "/to", "pack.order", "from, to"});
    }
    checkColours(pack, faults);
    checkDoubles(
        pack.knownLengths, "/knownLengths", [](const KnownLength& k) { return k.id; }, faults);
    const Settings& settings = pack.settings;
    if (settings.spreadLowKilometresPerYear > settings.spreadKilometresPerYear)
        faults.push_back({"/settings/spreadLowKilometresPerYear", "pack.order", "low, high"});
    const bool hours = settings.sampleWarnHours <= settings.sampleAskHours &&
                       settings.sampleAskHours <= settings.sampleVoidRearingHours;
    if (!hours)
        faults.push_back({"/settings/sampleWarnHours", "pack.order", "warn, ask, void"});
}

} // namespace cupule
