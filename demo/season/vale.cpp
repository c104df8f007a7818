#include "demo/season/vale.h"

#include <fmt/format.h>

#include "core/base/random.h"

namespace cupule::demo {

const std::vector<ValeSite>& sites()
{
    static const std::vector<ValeSite> all{
        {"Quern Wood", "Q", 352100, 241200, 14},  {"Tanner's Hanger", "T", 354800, 243900, 10},
        {"Pellow", "P", 350400, 244700, 8},       {"Hollinmere", "H", 356300, 240500, 12},
        {"Lower Stane", "L", 364200, 251600, 10}, {"Nether Combe", "N", 348700, 239600, 6},
    };
    return all;
}

const std::vector<ValePerson>& volunteers()
{
    static const std::vector<ValePerson> all{
        {"MH", "Maud Harrow"},    {"IC", "Ines Calloway"}, {"TW", "Tobias Wren"},  {"OP", "Oswin Petherley"},
        {"DM", "Delia Marchbank"}, {"FA", "Fenn Aldous"},   {"BS", "Bryony Sallow"}, {"CT", "Corin Tapper"},
    };
    return all;
}

namespace {

ValeKind kindOf(const std::string& label)
{
    for (const char* horse : {"H-08", "H-09", "H-10", "H-11", "P-07"})
        if (label == horse)
            return ValeKind::horseChestnut;
    for (const char* oak : {"Q-12", "Q-13", "L-09", "N-06", "H-12"})
        if (label == oak)
            return ValeKind::oak;
    return label == "N-05" ? ValeKind::hornbeam : ValeKind::chestnut;
}

} // namespace

std::vector<ValeTree> trees()
{
    SeededRandom random(20260611);
    std::vector<ValeTree> all;
    for (std::size_t s = 0; s < sites().size(); ++s) {
        const ValeSite& site = sites()[s];
        for (int i = 0; i < site.trees; ++i) {
            ValeTree tree;
            tree.label = fmt::format("{}-{:02d}", site.letter, i + 1);
            tree.site = s;
            tree.kind = kindOf(tree.label);
            tree.eastingMetres = site.eastingMetres + 60.0 * (i % 4) + static_cast<double>(random.below(40));
            tree.northingMetres = site.northingMetres + 70.0 * (i / 4) + static_cast<double>(random.below(40));
            all.push_back(tree);
        }
    }
    return all;
}

std::vector<Outing> outings()
{
    const auto day = [](int month, int dayOfMonth) { return *CivilDate::make(2026, month, dayOfMonth); };
    // person: index into volunteers(); site: index into sites()
    return {
        {day(5, 16), 0, "", 0, 0, 10, 550},       {day(5, 16), 2, "IC", 1, 0, 8, 560},
        {day(5, 23), 3, "", 4, 0, 8, 600},        {day(5, 23), 4, "", 2, 0, 8, 570},
        {day(5, 30), 5, "", 3, 0, 10, 560},       {day(5, 30), 6, "", 5, 0, 6, 590},
        {day(6, 6), 1, "", 0, 4, 10, 545},        {day(6, 6), 7, "FA", 3, 2, 10, 580},
        {day(6, 11), 0, "", 0, 0, 6, 545},        {day(6, 11), 0, "", 1, 0, 6, 655},
        {day(6, 13), 3, "", 4, 0, 10, 570},       {day(6, 13), 4, "BS", 2, 0, 8, 580},
        {day(6, 20), 5, "", 3, 0, 12, 540},       {day(6, 20), 6, "", 5, 0, 6, 600},
        {day(6, 27), 1, "TW", 1, 0, 10, 560},     {day(6, 27), 2, "", 0, 0, 12, 575},
        {day(7, 4), 7, "", 2, 0, 8, 560},         {day(7, 4), 0, "", 0, 6, 8, 600},
        {day(7, 11), 4, "", 3, 0, 9, 555},        {day(7, 11), 6, "", 5, 0, 6, 560},
        {day(7, 25), 3, "", 4, 0, 10, 565},       {day(7, 25), 1, "", 1, 0, 10, 590},
        {day(8, 15), 2, "", 0, 0, 10, 560},       {day(8, 15), 5, "", 3, 0, 6, 610},
        {day(9, 12), 7, "", 2, 0, 6, 570},        {day(9, 12), 4, "", 1, 0, 8, 600},
        {day(10, 10), 0, "", 0, 0, 12, 590},      {day(10, 10), 3, "", 4, 0, 8, 600},
        {day(10, 17), 6, "", 5, 0, 5, 620},       {day(10, 17), 1, "TW", 1, 0, 6, 560},
    };
}

std::string kindLetters(ValeKind kind)
{
    switch (kind) {
    case ValeKind::chestnut: return "sweet chestnut";
    case ValeKind::horseChestnut: return "horse chestnut";
    case ValeKind::oak: return "oak";
    case ValeKind::hornbeam: return "hornbeam";
    }
    return {};
}

} // namespace cupule::demo
