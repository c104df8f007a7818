// What is drawn against what is published: the tables of the host key and of the signs, read in place. Each of their rows names
// the flora or study it was taken from.

#include "tests/support/catch.h"
#include "tests/support/reference_rows.h"

#include <map>
#include <string>
#include <vector>

#include "ui/figures/blade.h"
#include "ui/figures/figure.h"
#include "ui/figures/gall.h"
#include "ui/figures/twigs.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

struct Limits {
    double least = 0, most = 1e9;
};

/// Rows of a table by two of its columns, with two others as limits in mm; an empty cell sets none.
std::map<std::string, Limits> limitsOf(const std::vector<cupule::test::Row>& rows, const std::vector<std::string>& keys,
                                       const std::string& least, const std::string& most)
{
    std::map<std::string, Limits> found;
    for (const auto& row : rows) {
        std::string key;
        for (const auto& name : keys)
            key += (key.empty() ? "" : "/") + row.at(name);
        const auto unit = row.find("unit");
        const double scale = unit != row.end() && unit->second == "cm" ? 10 : 1;
        Limits limits;
        if (!row.at(least).empty())
            limits.least = scale * std::stod(row.at(least));
        if (!row.at(most).empty())
            limits.most = scale * std::stod(row.at(most));
        found[key] = limits;
    }
    return found;
}

Blade bladeOf(const char* kind, std::uint32_t seed)
{
    BladeForm form;
    form.kind = &bladeKind(kind);
    Dice dice(seed);
    form.length = dice.in(form.kind->lengthFrom, form.kind->lengthTo);
    return Blade(form, Dice(seed));
}

constexpr std::pair<const char*, const char*> taxa[] = {
    {"castanea-sativa", "Castanea sativa"},   {"castanea-crenata", "Castanea crenata"},
    {"castanea-mollissima", "Castanea mollissima"}, {"quercus-castaneifolia", "Quercus castaneifolia"},
    {"quercus-robur", "Quercus robur"},       {"quercus-petraea", "Quercus petraea"},
    {"quercus-cerris", "Quercus cerris"},     {"carpinus-betulus", "Carpinus betulus"},
    {"fagus-sylvatica", "Fagus sylvatica"},
};

} // namespace

TEST_CASE("blades, stalks, buds and husks are as long as the host key says", "[figures][geometry]")
{
    const auto rows = cupule::test::referenceRows("trade/host_key.csv");
    if (rows.empty())
        return;
    const auto key = limitsOf(rows, {"character_id", "taxon"}, "min", "max");
    for (const auto& [id, taxon] : taxa) {
        CAPTURE(id);
        const BladeKind& kind = bladeKind(id);
        const Limits blade = key.at(std::string("K04/") + taxon), stalk = key.at(std::string("K05/") + taxon);
        CHECK(kind.lengthFrom >= blade.least);
        CHECK(kind.lengthTo <= blade.most);
        CHECK(kind.stalkFrom >= stalk.least);
        CHECK(kind.stalkTo <= stalk.most);
    }
    const BladeKind& leaflet = bladeKind("aesculus");
    CHECK(leaflet.lengthFrom >= key.at("K04/Aesculus hippocastanum").least);
    CHECK(leaflet.lengthTo <= key.at("K04/Aesculus hippocastanum").most);
    for (std::uint32_t seed = 1; seed <= 40; ++seed) {
        Dice dice(seed);
        const BudForm bud = chestnutBud(dice);
        CHECK(bud.length <= key.at("K07/Castanea sativa").most);
        CHECK((bud.scales == 2 || bud.scales == 3)); // its words: 2-3 visible scales
        CHECK(bud.width > 0.6 * bud.length);         // squat
        const double husk = std::max(figureExtent(plate(QStringLiteral("husk_castanea"), seed)).width(), 0.0);
        CHECK(husk <= key.at("K15/Castanea sativa").most);
        CHECK(husk > 60); // its words: to 6 cm or more
    }
    CHECK(carpinusBud().length <= key.at("K07/Carpinus betulus").most);
    CHECK(fagusBud().length >= key.at("K07/Fagus sylvatica").least);
    CHECK(fagusBud().length <= key.at("K07/Fagus sylvatica").most);
    CHECK(aesculusEndBud().length >= key.at("K07/Aesculus hippocastanum").least);
    CHECK(aesculusEndBud().length <= key.at("K07/Aesculus hippocastanum").most);
}

TEST_CASE("each side vein of a chestnut leaf ends in one tooth with one bristle; oaks and beech have none", "[figures][geometry]")
{
    // K03 of the host key: Castanea sativa "each side vein ends in a tooth with a bristle" (Elwes & Henry 1909). Length of the
    // bristle from memory.
    for (std::uint32_t seed = 1; seed <= 25; ++seed) {
        CAPTURE(seed);
        const Blade blade = bladeOf("castanea-sativa", seed);
        const int veins = blade.veins(1) + blade.veins(-1);
        CHECK(blade.veins(1) >= 15); // about 20 a side, drawing judgement for 150 to 220 mm
        CHECK(blade.veins(1) <= 21);
        CHECK(static_cast<int>(blade.bristleLengths().size()) == veins);
        for (const double length : blade.bristleLengths()) {
            CHECK(length > 0.6);
            CHECK(length < 3);
        }
        for (const int side : {1, -1})
            for (int vein = 1; vein < blade.veins(side); ++vein)
                CHECK(blade.veinEnd(side, vein) > blade.veinEnd(side, vein - 1));
        CHECK(bladeOf("quercus-robur", seed).bristleLengths().empty());
        CHECK(bladeOf("fagus-sylvatica", seed).bristleLengths().empty());
        CHECK(bladeOf("quercus-robur", seed).veins(1) <= 7); // lobes a side: 3 to 7, K03
    }
}

TEST_CASE("a gall is as long as it is said to be, over the published sizes", "[figures][geometry]")
{
    const auto rows = cupule::test::referenceRows("trade/symptoms.csv");
    if (rows.empty())
        return;
    const auto usual = limitsOf(rows, {"id"}, "usual_min", "usual_max");
    const Limits single = usual.at("S01"), merged = usual.at("S29");
    for (const double diameter : {single.least, 10.0, 15.0, single.most, merged.most})
        for (std::uint32_t seed = 1; seed <= 12; ++seed) {
            CAPTURE(diameter, seed);
            const Gall gall({{0, 0}, diameter, -90, seed % 2 ? GallTone::pink : GallTone::dry}, Dice(seed));
            const QPolygonF outline = gall.outline().toFillPolygon();
            double longest = 0;
            for (const QPointF& a : outline)
                for (const QPointF& b : outline)
                    longest = std::max(longest, lengthOf(a - b));
            CHECK(longest == Approx(diameter).epsilon(0.01));
            const QRectF box = gall.outline().boundingRect();
            CHECK(std::max(box.width(), box.height()) / std::min(box.width(), box.height()) < 2.2);
        }
}

TEST_CASE("exit holes are round, 1 to 1.5 mm, apart, and inside their gall", "[figures][geometry]")
{
    const auto rows = cupule::test::referenceRows("trade/symptoms.csv");
    if (rows.empty())
        return;
    const Limits hole = limitsOf(rows, {"id"}, "usual_min", "usual_max").at("S06");
    for (std::uint32_t seed = 1; seed <= 30; ++seed) {
        CAPTURE(seed);
        const Gall gall({{0, 0}, 18, -90, GallTone::brown, 4, 6}, Dice(seed));
        CHECK(gall.holes().size() >= 3);
        CHECK(gall.holes().size() <= 6);
        for (std::size_t i = 0; i < gall.holes().size(); ++i) {
            CHECK(gall.holes()[i].diameter >= hole.least);
            CHECK(gall.holes()[i].diameter <= hole.most);
            CHECK(gall.outline().contains(gall.holes()[i].at));
            for (std::size_t k = 0; k < i; ++k)
                CHECK(lengthOf(gall.holes()[i].at - gall.holes()[k].at) >= 2.4); // drawing judgement
        }
        CHECK(Gall({{0, 0}, 18, -90, GallTone::green}, Dice(seed)).holes().empty());
    }
}

TEST_CASE("crowns are of full-grown trees, broad, and no two alike", "[figures][geometry]")
{
    // Height and spread of a free-standing old tree: from memory.
    QSizeF before;
    for (std::uint32_t seed = 1; seed <= 8; ++seed)
        for (const char* kind : {"crown_healthy", "crown_dieback", "crown_winter_retained"}) {
            CAPTURE(seed, kind);
            const QSizeF size = figureExtent(plate(QString::fromLatin1(kind), seed)).size() / 1000; // m
            CHECK(size.height() > 11);
            CHECK(size.height() < 20);
            CHECK(size.width() > 0.6 * size.height());
            CHECK(size != before);
            before = size;
        }
}

TEST_CASE("catkins are long and slender, panicles broad and at most 30 cm high", "[figures][geometry]")
{
    // K13 of the host key: "upright showy white panicle to 30 cm" (Aesculus hippocastanum).
    for (std::uint32_t seed = 1; seed <= 10; ++seed) {
        const QRectF panicle = figureExtent(plate(QStringLiteral("panicle_aesculus"), seed));
        CAPTURE(seed, panicle.width(), panicle.height());
        CHECK(panicle.height() <= 300);
        CHECK(panicle.height() > 150);
        CHECK(panicle.width() > 0.35 * panicle.height());
    }
}

TEST_CASE("leaves of lime, hazel, elm, red oak and sawtooth oak have the outline that the host key says", "[figures][geometry]")
{
    // K02 and K03 of the host key, from memory there: lime "as broad as long", hazel "nearly round with an abrupt point", elm "lop-sided
    // base", red oak "pointed lobes ending in bristles", sawtooth oaks "many regular teeth each ending in a bristle".
    for (std::uint32_t seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        const auto broad = [&](const char* kind) {
            const QRectF box = bladeOf(kind, seed).outline().boundingRect();
            return box.width() / box.height();
        };
        CHECK(broad("tilia") > 0.8);
        CHECK(broad("tilia") < 1.1);
        CHECK(broad("corylus-avellana") > 0.72);
        CHECK(broad("corylus-avellana") < 1.0);
        const Blade elm = bladeOf("ulmus", seed), hazel = bladeOf("corylus-avellana", seed);
        const auto slope = [](const Blade& blade, int side) { return dot(blade.at(0.02, 0.10, side) - blade.midrib(0), headed(-90)) / blade.length(); };
        CHECK(std::abs(slope(elm, 1) - slope(elm, -1)) > 0.04);
        CHECK(std::abs(slope(hazel, 1) - slope(hazel, -1)) < 0.03);
        CHECK(bladeOf("quercus-rubra", seed).bristleLengths().size() >= 20);
        const Blade sawtooth = bladeOf("sawtooth-oaks", seed);
        CHECK(static_cast<int>(sawtooth.bristleLengths().size()) == sawtooth.veins(1) + sawtooth.veins(-1));
        CHECK(bladeOf("tilia", seed).bristleLengths().empty());
    }
}
