#include "demo/season/rows.h"

#include <cmath>

#include <fmt/format.h>

#include "core/base/random.h"

namespace cupule::demo {

namespace {

/// A reference in the square SO, of eight figures as a receiver shows it, or of six as read off a map.
std::string gridReference(double easting, double northing, bool fromMap)
{
    const auto figures = [&](double metres) {
        return static_cast<int>(std::floor(std::fmod(metres, 100'000) / (fromMap ? 100 : 10)));
    };
    return fromMap ? fmt::format("SO {:03d} {:03d}", figures(easting), figures(northing))
                   : fmt::format("SO {:04d} {:04d}", figures(easting), figures(northing));
}

void describeHost(SeasonRow& row, SeededRandom& random)
{
    auto& c = row.cells;
    const int month = row.date.month();
    const bool leaves = month >= 5 && month <= 11;
    switch (row.tree.kind) {
    case ValeKind::chestnut:
        c["leaf arrangement"] = "alternate";
        if (leaves) {
            c["leaf type"] = "simple";
            c["leaf margin"] = "teeth-with-points";
            c["teeth counted on one side"] = std::to_string(16 + random.below(8));
        }
        if (month >= 6 && month <= 10)
            c["leaf underside"] = "bald-or-thin";
        if (month >= 6 && month <= 7)
            c["male flower form"] = "long-slender-catkins";
        if (month >= 9)
            c["fruit case"] = "dense-spines";
        break;
    case ValeKind::horseChestnut:
        c["leaf arrangement"] = "opposite";
        c["leaf type"] = "compound-palmate";
        break;
    case ValeKind::oak:
        c["leaf arrangement"] = "alternate";
        c["leaf type"] = "lobed";
        break;
    case ValeKind::hornbeam:
        c["leaf arrangement"] = "alternate";
        c["leaf type"] = "simple";
        c["leaf margin"] = "double-teeth";
        break;
    }
}

/// What a careful volunteer types who saw no gall: every gall line that can be seen then, answered.
void describeNothing(SeasonRow& row)
{
    auto& c = row.cells;
    const int month = row.date.month();
    if (row.tree.kind != ValeKind::chestnut)
        return;
    for (const char* sign : {"S01", "S02", "S03", "S29"})
        if (month >= 5 && month <= 8)
            c[sign] = "not seen";
    if (month >= 6 && month <= 8)
        c["S04"] = "not seen";
    if (month >= 6 && month <= 9)
        c["S13"] = "not seen";
    c["S05"] = "not seen";
}

void describeEffort(SeasonRow& row, SeededRandom& random)
{
    auto& c = row.cells;
    c["minutes"] = std::to_string(6 + random.below(10));
    c["trees"] = std::to_string(1);
    c["crown"] = std::to_string(50 + 10 * random.below(5));
    c["height m"] = std::to_string(4 + random.below(9));
    c["binoculars"] = random.below(3) == 0 ? "no" : "yes";
    c["lower and inner crown"] = "yes";
    c["light"] = random.below(5) == 0 ? "fair" : "good";
    c["leaves"] = row.date.month() == 10 ? "falling" : "open";
    c["clothes"] = "done";
    c["boots"] = "done";
    c["vehicle"] = "done";
    c["tools"] = "none used";
}

SeasonRow plainRow(const Outing& outing, const ValeTree& tree, int minute, SeededRandom& random)
{
    SeasonRow row;
    row.tree = tree;
    row.date = outing.date;
    row.minuteOfDay = minute;
    auto& c = row.cells;
    c["tree"] = tree.label;
    c["site"] = sites()[tree.site].name;
    c["grid ref"] = gridReference(tree.eastingMetres + static_cast<double>(random.below(7)) - 3,
                                  tree.northingMetres + static_cast<double>(random.below(7)) - 3,
                                  sites()[tree.site].letter == "P");
    c["date"] = outing.date.text();
    c["time"] = fmt::format("{:02d}:{:02d}", minute / 60, minute % 60);
    c["observer"] = volunteers()[outing.person].name;
    c["with"] = outing.companions;
    describeHost(row, random);
    describeNothing(row);
    describeEffort(row, random);
    return row;
}

/// The one story of the season: a first gall at Tanner's Hanger, more of them later, one far away at Lower Stane, and in
/// autumn what is left of them on the twigs.
void tellStory(SeasonRow& row)
{
    auto& c = row.cells;
    const std::string at = row.tree.label + " " + row.date.text();
    const auto seen = [&](const std::string& sign, const std::string& millimetres, const std::string& note) {
        c[sign] = "seen";
        if (!millimetres.empty())
            c[sign + " size"] = millimetres;
        c["note"] = note;
    };
    if (at == "T-03 2026-06-11")
        seen("S02", "14.2", "one green lump on the midrib, leaf bent at it");
    else if (at == "T-01 2026-06-27")
        seen("S01", "11", "two green and pink lumps at a shoot tip");
    else if (at == "T-05 2026-07-25") {
        seen("S02", "18", "three lumps, one with a hole");
        c["S06"] = "seen";
    } else if (at == "L-03 2026-07-25")
        seen("S01", "12.5", "green lump on a low shoot, photo taken");
    else if (at == "T-03 2026-09-12")
        seen("S05", "15", "the twig of June, lump dry and brown");
    else if (at == "T-01 2026-10-17")
        seen("S05", "12", "dry lump at the tip of this year's shoot");
    else if (at == "T-03 2026-10-17")
        seen("S05", "15", "the same twig as in June and September");
    else if (at == "T-05 2026-10-17")
        seen("S05", "17", "two dry lumps, both with holes");
    else if (at == "T-06 2026-10-17")
        seen("S05", "13", "one dry lump, on older wood");
    if (at == "T-03 2026-06-11")
        c["S26"] = "seen";
}

/// Mistakes that people make; each is either set aside by the import or asked about later.
void makeMistakes(SeasonRow& row)
{
    auto& c = row.cells;
    const std::string at = row.tree.label + " " + row.date.text();
    if (at == "Q-05 2026-05-16")
        c["grid ref"].pop_back();                                  // a figure lost: an odd number of digits
    else if (at == "N-02 2026-05-30")
        c["grid ref"] = "SI" + c["grid ref"].substr(2);            // I for O
    else if (at == "H-04 2026-06-06")
        c["date"] = "2026-06-31";
    else if (at == "Q-06 2026-06-06")
        c["date"] = "2027-06-06";
    else if (at == "Q-09 2026-06-06") {
        c["gall size mm"] = "142";                                 // a decimal point lost
        c["gall count"] = "1";
    } else if (at == "P-06 2026-05-23")
        c["grid ref"] = "3.521E+05";                               // through a spreadsheet
    else if (at == "Q-02 2026-08-15")
        c["grid ref"] = "SO 52l6 4122";                            // a letter for a figure
    else if (at == "H-08 2026-06-20")
        c["S01"] = "seen";                                         // galls on a horse chestnut
    else if (at == "Q-03 2026-05-16")
        c["S06"] = "seen";                                         // a hole before any wasp flies
    else if (at == "P-05 2026-06-13") {
        c["S10"] = "seen";                                         // puckered leaves without a gall
        c["note"] = "leaves puckered all over, no lump found";
    } else if (at == "L-05 2026-05-23") {
        for (const char* heading : {"minutes", "trees", "crown", "height m", "binoculars", "light"})
            c[heading].clear();                                    // how long, how well: not written down
    } else if (at == "H-02 2026-06-06")
        c["symptoms"] = "bark crack; sap run";                     // words that the checklist does not know
    else if (at == "N-03 2026-05-30")
        c["grid ref"] = "SO 5270 3990";                            // the car park, not the tree
    else if (at == "P-02 2026-07-04")
        c["clothes"] = c["boots"] = c["vehicle"] = "";
}

/// Entered by hand on the day (demo/walk.sh), so it is not typed up again.
bool enteredByHand(const SeasonRow& row)
{
    return row.tree.label == "T-03" && row.date.text() == "2026-06-27";
}

} // namespace

const std::vector<std::string>& headings()
{
    static const std::vector<std::string> all{
        "tree", "site", "grid ref", "date", "time", "observer", "with", "leaf arrangement", "leaf type", "leaf margin",
        "teeth counted on one side", "leaf underside", "male flower form", "fruit case", "S01", "S01 size", "S02", "S02 size", "S03",
        "S04", "S05", "S05 size", "S06", "S10", "S13", "S26", "S29", "gall count", "gall size mm", "symptoms", "minutes",
        "trees", "crown", "height m", "binoculars", "lower and inner crown", "light", "leaves", "clothes", "boots",
        "vehicle", "tools", "note"};
    return all;
}

std::vector<SeasonRow> seasonRows()
{
    SeededRandom random(7);
    const auto vale = trees();
    std::vector<SeasonRow> rows;
    for (const Outing& outing : outings()) {
        int minute = outing.startMinute;
        int index = 0;
        for (const ValeTree& tree : vale) {
            if (tree.site != outing.site)
                continue;
            if (index >= outing.first && index < outing.first + outing.count) {
                SeasonRow row = plainRow(outing, tree, minute, random);
                tellStory(row);
                makeMistakes(row);
                if (!enteredByHand(row))
                    rows.push_back(std::move(row));
                minute += 9 + static_cast<int>(random.below(9));
            }
            ++index;
        }
    }
    // Typed up twice, and once more with another answer.
    for (std::size_t i = 0, all = rows.size(); i < all; ++i) {
        const std::string at = rows[i].tree.label + " " + rows[i].date.text();
        if (at == "P-01 2026-05-23")
            rows.push_back(rows[i]);
        if (at == "H-06 2026-06-20") {
            SeasonRow again = rows[i];
            again.cells["S01"] = "could not be judged";
            again.cells["note"] = "crown too high on this side";
            rows.push_back(again);
        }
    }
    // The verifier was out herself that day: this record is for somebody else to decide.
    for (const SeasonRow& row : std::vector<SeasonRow>(rows)) {
        if (row.tree.label == "Q-01" && row.date.text() == "2026-06-11") {
            SeasonRow own = row;
            own.minuteOfDay += 25;
            own.cells["time"] = fmt::format("{:02d}:{:02d}", own.minuteOfDay / 60, own.minuteOfDay % 60);
            own.cells["observer"] = "Ruth Abara";
            own.cells["with"] = "MH";
            own.cells["note"] = "second look, with Maud";
            rows.push_back(own);
        }
    }
    return rows;
}

bool isEarly(CivilDate date)
{
    return date <= *CivilDate::make(2026, 6, 11);
}

std::string asCsv(const std::vector<SeasonRow>& rows, bool early)
{
    const auto cell = [](const std::string& text) {
        return text.find_first_of(",\"\n") == std::string::npos ? text : "\"" + text + "\"";
    };
    std::string out;
    for (std::size_t i = 0; i < headings().size(); ++i)
        out.append(i > 0 ? "," : "").append(headings()[i]);
    out += "\r\n";
    for (const SeasonRow& row : rows) {
        if (isEarly(row.date) != early)
            continue;
        for (std::size_t i = 0; i < headings().size(); ++i) {
            const auto at = row.cells.find(headings()[i]);
            out += i > 0 ? "," : "";
            out += at == row.cells.end() ? std::string() : cell(at->second);
        }
        out += "\r\n";
    }
    return out;
}

} // namespace cupule::demo
