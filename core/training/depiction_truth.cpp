// What is true in a drawing, by the way it was made. Signs and characters by their ids in the built-in pack.

#include <algorithm>
#include <set>

#include "core/training/depiction.h"

namespace cupule {

namespace {

void addSignsOf(const DepictedGall& gall, std::set<std::string>& signs)
{
    const bool onLeaf = gall.site == GallSite::midrib || gall.site == GallSite::stalk;
    if (gall.leafDead)
        signs.insert("S13");
    else if (gall.site == GallSite::twig)
        signs.insert("S05");
    else if (onLeaf)
        signs.insert("S02");
    else if (gall.site == GallSite::stipule)
        signs.insert("S03");
    else if (gall.site == GallSite::catkin)
        signs.insert("S04");
    else
        signs.insert({"S01", "S10", "S11"}); // the shoot ends in it, with small leaves round it
    if (onLeaf && gall.bends)
        signs.insert("S26");
    if (onLeaf && gall.bodies > 1)
        signs.insert("S29");
    if (gall.exitHoles > 0)
        signs.insert("S06");
}

void addSignOf(Blemish blemish, std::set<std::string>& signs)
{
    switch (blemish) {
    case Blemish::puckered: signs.insert("S10"); break;
    case Blemish::aphids: signs.insert("S19"); break;
    case Blemish::leafSpot: signs.insert("S17"); break;
    case Blemish::mosaic: signs.insert("S16"); break;
    case Blemish::mine: signs.insert("S21"); break;
    case Blemish::frost: signs.insert("S18"); break;
    case Blemish::hail: break; // on no list
    case Blemish::oakMarble:
    case Blemish::oakKnopper:
    case Blemish::oakSpangle: signs.insert("S20"); break;
    }
}

void addSignsOf(const Depiction& depiction, const DepictedTree& tree, std::set<std::string>& signs)
{
    if (tree.dieback > 0)
        signs.insert("S12");
    if (tree.browned > 0)
        signs.insert("S27");
    if (tree.heldLeaves > 0) // about a gall they say more of it; without one they hint at another disease
        signs.insert(depiction.galls.empty() ? "S15" : "S25");
    if (tree.epicormic)
        signs.insert("S28");
    if (tree.canker)
        signs.insert("S14");
}

} // namespace

std::vector<std::string> charactersShown(const Depiction& depiction)
{
    std::vector<std::string> shown;
    switch (depiction.subject) {
    case Subject::leaf: shown = {"K02", "K03", "K05"}; break;
    case Subject::shoot: shown = {"K01", "K02", "K03"}; break;
    case Subject::twig: shown = {"K01", "K07", "K10", "K11"}; break;
    case Subject::flowers: shown = {"K13"}; break;
    case Subject::fruit: shown = {"K15"}; break;
    case Subject::nut: shown = {"K17"}; break;
    case Subject::bark: shown = {"K12"}; break;
    case Subject::plate:
    case Subject::crown: break;
    }
    if (depiction.subject == Subject::leaf && depiction.view.scaleBar)
        shown.emplace_back("K04");
    std::sort(shown.begin(), shown.end());
    return shown;
}

std::vector<std::string> signsShown(const Depiction& depiction)
{
    if (depiction.subject == Subject::plate)
        return {};
    std::set<std::string> signs;
    for (const DepictedGall& gall : depiction.galls)
        addSignsOf(gall, signs);
    for (const DepictedBlemish& blemish : depiction.blemishes)
        addSignOf(blemish.kind, signs);
    addSignsOf(depiction, depiction.tree, signs);
    return {signs.begin(), signs.end()};
}

} // namespace cupule
