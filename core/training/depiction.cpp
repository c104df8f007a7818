#include "core/training/depiction.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "core/training/dice.h"

namespace cupule {

namespace {

constexpr unsigned bit(Subject subject)
{
    return 1U << static_cast<unsigned>(subject);
}

constexpr unsigned leaf = bit(Subject::leaf), shoot = bit(Subject::shoot), twig = bit(Subject::twig), flowers = bit(Subject::flowers),
                   fruit = bit(Subject::fruit), nut = bit(Subject::nut), bark = bit(Subject::bark), crown = bit(Subject::crown);

struct DrawnTaxon {
    std::string_view id;
    unsigned subjects;
};

/// What there is a painter for; ui/figures has one for each.
constexpr unsigned woody = leaf | shoot | twig | flowers | fruit;
constexpr DrawnTaxon drawn[] = {
    {"castanea-sativa", woody | nut | bark | crown},
    {"castanea-crenata", woody | nut | bark},
    {"castanea-mollissima", woody | nut | bark},
    {"castanea-hybrids", woody | nut | bark},
    {"aesculus-hippocastanum", woody | nut | bark},
    {"quercus-robur", woody | nut | bark},
    {"quercus-petraea", woody | nut | bark},
    {"quercus-cerris", woody | nut | bark},
    {"quercus-castaneifolia", woody | nut},
    {"quercus-rubra", woody},
    {"sawtooth-oaks", woody},
    {"carpinus-betulus", woody | nut | bark},
    {"fagus-sylvatica", woody | nut | bark},
    {"juglans-regia", woody | nut | bark},
    {"tilia", woody},
    {"corylus-avellana", woody},
    {"ulmus", woody},
};

constexpr auto taxonIds = [] {
    std::array<std::string_view, std::size(drawn)> ids;
    std::transform(std::begin(drawn), std::end(drawn), ids.begin(), [](const DrawnTaxon& taxon) { return taxon.id; });
    return ids;
}();

bool isAmong(double value, double least, double most)
{
    return value >= least && value <= most; // false for what is no number
}

bool isFresh(const DepictedGall& gall)
{
    return gall.tone != GallTone::brown && gall.tone != GallTone::dry;
}

/// How many galls there is room for.
int roomFor(GallSite site, const Depiction& depiction)
{
    const bool leafy = depiction.subject == Subject::leaf || depiction.subject == Subject::shoot;
    switch (site) {
    case GallSite::midrib:
    case GallSite::stalk: return leafy ? (depiction.subject == Subject::leaf ? 1 : 2) : 0;
    case GallSite::stipule: return depiction.subject == Subject::shoot ? 2 : 0;
    case GallSite::bud: return depiction.subject == Subject::shoot ? 1 : 0;
    case GallSite::catkin: return depiction.subject == Subject::flowers || (depiction.subject == Subject::shoot && depiction.season == Season::summer) ? 1 : 0;
    case GallSite::twig: return depiction.subject == Subject::twig ? 3 : 0;
    }
    return 0;
}

bool toneFits(const DepictedGall& gall)
{
    if (gall.site == GallSite::twig)
        return !isFresh(gall) && !gall.leafDead;
    if (gall.tone == GallTone::dry)
        return false;
    const bool onLeaf = gall.site == GallSite::midrib || gall.site == GallSite::stalk;
    return gall.leafDead == (gall.tone == GallTone::brown) && (!gall.leafDead || onLeaf);
}

bool numbersFit(const DepictedGall& gall)
{
    return isAmong(gall.millimetres, 2, 60) && isAmong(gall.bodies, 1, 3) && isAmong(gall.exitHoles, 0, 12) &&
           (gall.exitHoles == 0 || gall.tone != GallTone::green);
}

void judgeGalls(const Depiction& depiction, std::vector<Undrawable>& out)
{
    std::array<int, 6> used{};
    for (const DepictedGall& gall : depiction.galls) {
        const int room = roomFor(gall.site, depiction);
        if (!isChestnut(depiction.taxon))
            out.push_back(Undrawable::gallHost);
        if (room == 0)
            out.push_back(Undrawable::gallSite);
        if (!toneFits(gall))
            out.push_back(Undrawable::gallTone);
        if (!numbersFit(gall) || ++used[static_cast<std::size_t>(gall.site)] > std::max(1, room))
            out.push_back(Undrawable::gallNumber);
    }
}

void judgeBlemishes(const Depiction& depiction, std::vector<Undrawable>& out)
{
    const Subject subject = depiction.subject;
    for (const DepictedBlemish& blemish : depiction.blemishes) {
        const bool ofOak = blemish.kind == Blemish::oakMarble || blemish.kind == Blemish::oakKnopper || blemish.kind == Blemish::oakSpangle;
        const bool host = ofOak                            ? depiction.taxon == "quercus-robur"
                          : blemish.kind == Blemish::mine  ? depiction.taxon == "aesculus-hippocastanum"
                                                           : isChestnut(depiction.taxon);
        if (!host || !isAmong(blemish.extent, 0, 1))
            out.push_back(Undrawable::blemishHost);
        bool there = subject == Subject::leaf || subject == Subject::shoot;
        if (blemish.kind == Blemish::oakMarble)
            there = subject == Subject::shoot;
        else if (blemish.kind == Blemish::oakKnopper)
            there = subject == Subject::fruit;
        else if (blemish.kind == Blemish::oakSpangle || blemish.kind == Blemish::mine)
            there = subject == Subject::leaf;
        if (!there)
            out.push_back(Undrawable::blemishSite);
    }
}

bool treeFits(const Depiction& depiction)
{
    const DepictedTree& tree = depiction.tree;
    const bool ofCrown = depiction.subject == Subject::crown, winter = depiction.season == Season::winter;
    if (!isAmong(tree.dieback, 0, 1) || !isAmong(tree.browned, 0, 1) || !isAmong(tree.heldLeaves, 0, 1))
        return false;
    if ((tree.dieback > 0 || tree.browned > 0) && (!ofCrown || winter))
        return false;
    if (tree.heldLeaves > 0 && (!winter || (!ofCrown && depiction.subject != Subject::twig)))
        return false;
    if (tree.epicormic && !ofCrown)
        return false;
    return !tree.canker || (depiction.subject == Subject::bark && isChestnut(depiction.taxon));
}

bool flowersIn(std::string_view taxon, Season season)
{
    if (isChestnut(taxon) || taxon == "tilia")
        return season == Season::summer;
    if (taxon == "corylus-avellana")
        return season == Season::winter;
    return season == Season::spring;
}

bool seasonFits(const Depiction& depiction)
{
    const Season season = depiction.season;
    switch (depiction.subject) {
    case Subject::leaf:
    case Subject::shoot: return season != Season::winter;
    case Subject::twig: return season == Season::winter;
    case Subject::flowers: return flowersIn(depiction.taxon, season);
    case Subject::fruit: return depiction.taxon == "ulmus" ? season == Season::spring : season == Season::autumn;
    case Subject::nut: return season == Season::autumn;
    case Subject::crown: return season == Season::summer || season == Season::winter;
    case Subject::plate:
    case Subject::bark: return true;
    }
    return true;
}

bool viewFits(const Viewpoint& view)
{
    return isAmong(view.turnDegrees, -180, 180) && isAmong(view.slant, 0, 55) && isAmong(view.clutter, 0, 1) && isAmong(view.light, -1, 1) &&
           isAmong(view.smallness, 0, 0.8);
}

} // namespace

Depiction plateOf(std::string name, std::uint32_t seed)
{
    Depiction depiction;
    depiction.plate = std::move(name);
    depiction.seed = seed;
    return depiction;
}

bool standsAsItIs(const Depiction& depiction)
{
    if (depiction.subject != Subject::plate)
        return depiction.subject == Subject::crown || depiction.subject == Subject::bark || depiction.subject == Subject::nut;
    constexpr std::string_view parts[] = {"crown",      "trunk",        "bark",         "canker", "detail",
                                          "gall_sizes", "gall_colours", "gall_section", "acorns", "nut_",      "insect_"};
    return std::any_of(std::begin(parts), std::end(parts), [&](std::string_view part) { return depiction.plate.find(part) != std::string::npos; });
}

Depiction asMet(Depiction depiction, double much)
{
    Dice own = Dice(depiction.seed).part("met");
    const double share = std::clamp(much, 0.0, 1.0);
    depiction.view.clutter = share * own.in(0.4, 1);
    depiction.view.light = share * own.in(-1, 1);
    if (!standsAsItIs(depiction)) {
        depiction.view.turnDegrees = share * own.in(-75, 75);
        depiction.view.slant = share * own.in(0, 50);
    }
    return depiction;
}

std::span<const std::string_view> depictedTaxa()
{
    return taxonIds;
}

bool hasDepiction(Subject subject, std::string_view taxon)
{
    return std::any_of(std::begin(drawn), std::end(drawn),
                       [&](const DrawnTaxon& one) { return one.id == taxon && (one.subjects & bit(subject)) != 0; });
}

bool isChestnut(std::string_view taxon)
{
    return taxon.starts_with("castanea-");
}

bool isOak(std::string_view taxon)
{
    return taxon.starts_with("quercus-") || taxon == "sawtooth-oaks";
}

std::vector<Undrawable> undrawable(const Depiction& depiction)
{
    std::vector<Undrawable> out;
    if (!viewFits(depiction.view))
        out.push_back(Undrawable::view);
    if (depiction.subject == Subject::plate)
        return out;
    if (!hasDepiction(depiction.subject, depiction.taxon))
        out.push_back(Undrawable::taxon);
    judgeGalls(depiction, out);
    judgeBlemishes(depiction, out);
    if (!treeFits(depiction))
        out.push_back(Undrawable::tree);
    if (!seasonFits(depiction))
        out.push_back(Undrawable::season);
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

} // namespace cupule
