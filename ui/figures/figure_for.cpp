// Which painter shows a description.

#include <algorithm>
#include <iterator>

#include "ui/figures/figure.h"

namespace cupule::ui {

namespace {

struct Painted {
    Subject subject;
    std::string_view taxon;
    const char* figure;
};

constexpr Painted painted[] = {
    {Subject::leaf, "castanea-sativa", "leaf_castanea"},
    {Subject::leaf, "castanea-crenata", "leaf_castanea_crenata"},
    {Subject::leaf, "castanea-mollissima", "leaf_castanea_mollissima"},
    {Subject::leaf, "aesculus-hippocastanum", "leaf_aesculus"},
    {Subject::leaf, "quercus-robur", "leaf_quercus_robur"},
    {Subject::leaf, "quercus-petraea", "leaf_quercus_petraea"},
    {Subject::leaf, "quercus-cerris", "leaf_quercus_cerris"},
    {Subject::leaf, "quercus-castaneifolia", "leaf_quercus_castaneifolia"},
    {Subject::leaf, "carpinus-betulus", "leaf_carpinus"},
    {Subject::leaf, "fagus-sylvatica", "leaf_fagus"},
    {Subject::leaf, "juglans-regia", "leaf_juglans"},
    {Subject::leaf, "castanea-hybrids", "leaf_castanea_hybrid"},
    {Subject::leaf, "quercus-rubra", "leaf_quercus_rubra"},
    {Subject::leaf, "sawtooth-oaks", "leaf_quercus_sawtooth"},
    {Subject::leaf, "tilia", "leaf_tilia"},
    {Subject::leaf, "corylus-avellana", "leaf_corylus"},
    {Subject::leaf, "ulmus", "leaf_ulmus"},
    {Subject::shoot, "castanea-sativa", "shoot_castanea"},
    {Subject::shoot, "castanea-hybrids", "shoot_castanea"},
    {Subject::shoot, "quercus-petraea", "shoot_quercus"},
    {Subject::shoot, "quercus-cerris", "shoot_quercus"},
    {Subject::shoot, "quercus-castaneifolia", "shoot_quercus"},
    {Subject::shoot, "quercus-rubra", "shoot_quercus_rubra"},
    {Subject::shoot, "sawtooth-oaks", "shoot_quercus"},
    {Subject::shoot, "juglans-regia", "shoot_juglans"},
    {Subject::shoot, "tilia", "shoot_tilia"},
    {Subject::shoot, "corylus-avellana", "shoot_corylus"},
    {Subject::shoot, "ulmus", "shoot_ulmus"},
    {Subject::shoot, "castanea-crenata", "shoot_castanea"},
    {Subject::shoot, "castanea-mollissima", "shoot_castanea"},
    {Subject::shoot, "aesculus-hippocastanum", "shoot_aesculus"},
    {Subject::shoot, "quercus-robur", "shoot_quercus"},
    {Subject::shoot, "carpinus-betulus", "shoot_carpinus"},
    {Subject::shoot, "fagus-sylvatica", "shoot_fagus"},
    {Subject::twig, "castanea-sativa", "twig_castanea"},
    {Subject::twig, "aesculus-hippocastanum", "twig_aesculus"},
    {Subject::twig, "quercus-robur", "twig_quercus"},
    {Subject::twig, "carpinus-betulus", "twig_carpinus"},
    {Subject::twig, "fagus-sylvatica", "twig_fagus"},
    {Subject::twig, "juglans-regia", "twig_juglans"},
    {Subject::flowers, "castanea-sativa", "catkin_castanea"},
    {Subject::flowers, "quercus-robur", "catkin_quercus"},
    {Subject::flowers, "aesculus-hippocastanum", "panicle_aesculus"},
    {Subject::fruit, "castanea-sativa", "husk_castanea"},
    {Subject::fruit, "castanea-mollissima", "husk_castanea_mollissima"},
    {Subject::fruit, "aesculus-hippocastanum", "husk_aesculus"},
    {Subject::fruit, "juglans-regia", "husk_juglans"},
    {Subject::twig, "castanea-crenata", "twig_castanea"},
    {Subject::twig, "castanea-hybrids", "twig_castanea"},
    {Subject::flowers, "castanea-crenata", "catkin_castanea"},
    {Subject::flowers, "castanea-mollissima", "catkin_castanea"},
    {Subject::flowers, "castanea-hybrids", "catkin_castanea"},
    {Subject::fruit, "castanea-crenata", "husk_castanea"},
    {Subject::fruit, "castanea-hybrids", "husk_castanea"},
    {Subject::nut, "castanea-crenata", "nut_castanea"},
    {Subject::nut, "castanea-hybrids", "nut_castanea"},
    {Subject::twig, "quercus-petraea", "twig_quercus"},
    {Subject::twig, "quercus-cerris", "twig_quercus_cerris"},
    {Subject::twig, "quercus-castaneifolia", "twig_quercus_cerris"},
    {Subject::twig, "quercus-rubra", "twig_quercus"},
    {Subject::twig, "sawtooth-oaks", "twig_quercus"},
    {Subject::twig, "tilia", "twig_tilia"},
    {Subject::twig, "corylus-avellana", "twig_corylus"},
    {Subject::twig, "ulmus", "twig_ulmus"},
    {Subject::flowers, "quercus-petraea", "catkin_quercus"},
    {Subject::flowers, "quercus-cerris", "catkin_quercus"},
    {Subject::flowers, "quercus-castaneifolia", "catkin_quercus"},
    {Subject::flowers, "quercus-rubra", "catkin_quercus"},
    {Subject::flowers, "sawtooth-oaks", "catkin_quercus"},
    {Subject::flowers, "carpinus-betulus", "catkin_carpinus"},
    {Subject::flowers, "fagus-sylvatica", "flowers_fagus"},
    {Subject::flowers, "juglans-regia", "catkin_juglans"},
    {Subject::flowers, "tilia", "flowers_tilia"},
    {Subject::flowers, "corylus-avellana", "catkin_corylus"},
    {Subject::flowers, "ulmus", "flowers_ulmus"},
    {Subject::fruit, "quercus-robur", "acorn_quercus"},
    {Subject::fruit, "quercus-petraea", "acorn_quercus"},
    {Subject::fruit, "quercus-cerris", "acorn_quercus_cerris"},
    {Subject::fruit, "quercus-rubra", "acorn_quercus_rubra"},
    {Subject::fruit, "sawtooth-oaks", "acorn_quercus"},
    {Subject::fruit, "carpinus-betulus", "fruit_carpinus"},
    {Subject::fruit, "fagus-sylvatica", "husk_fagus"},
    {Subject::fruit, "tilia", "fruit_tilia"},
    {Subject::fruit, "corylus-avellana", "fruit_corylus"},
    {Subject::fruit, "ulmus", "fruit_ulmus"},
    {Subject::nut, "castanea-sativa", "nut_castanea"},
    {Subject::bark, "castanea-sativa", "bark_castanea"},
    {Subject::bark, "castanea-crenata", "bark_castanea_upright"},
    {Subject::bark, "castanea-mollissima", "bark_castanea_upright"},
    {Subject::bark, "castanea-hybrids", "bark_castanea_upright"},
    {Subject::bark, "aesculus-hippocastanum", "bark_aesculus"},
    {Subject::bark, "quercus-robur", "bark_quercus"},
    {Subject::bark, "quercus-petraea", "bark_quercus"},
    {Subject::bark, "quercus-cerris", "bark_quercus_cerris"},
    {Subject::bark, "carpinus-betulus", "bark_carpinus"},
    {Subject::bark, "fagus-sylvatica", "bark_fagus"},
    {Subject::bark, "juglans-regia", "bark_juglans"},
    {Subject::nut, "castanea-mollissima", "nut_castanea_mollissima"},
    {Subject::nut, "aesculus-hippocastanum", "nut_aesculus"},
    {Subject::nut, "quercus-robur", "nut_quercus"},
    {Subject::nut, "quercus-petraea", "nut_quercus"},
    {Subject::nut, "quercus-cerris", "nut_quercus"},
    {Subject::nut, "quercus-castaneifolia", "nut_quercus"},
    {Subject::nut, "carpinus-betulus", "nut_carpinus"},
    {Subject::nut, "fagus-sylvatica", "nut_fagus"},
    {Subject::nut, "juglans-regia", "nut_juglans"},
    {Subject::fruit, "quercus-castaneifolia", "acorn_quercus_castaneifolia"},
    {Subject::twig, "castanea-mollissima", "twig_castanea_mollissima"},
};

const char* galled(const DepictedGall& gall)
{
    if (gall.leafDead)
        return "gall_browned";
    if (gall.bodies > 1)
        return "gall_merged";
    switch (gall.site) {
    case GallSite::midrib: return "gall_midrib";
    case GallSite::stalk: return "gall_petiole";
    case GallSite::stipule: return "gall_stipule";
    case GallSite::bud: return "gall_shoot_tip";
    case GallSite::catkin: return "gall_catkin";
    case GallSite::twig: return "gall_dry_twig";
    }
    return "";
}

const char* blemished(Blemish blemish)
{
    switch (blemish) {
    case Blemish::puckered: return "look_puckered";
    case Blemish::aphids: return "look_aphid_curl";
    case Blemish::leafSpot: return "look_leaf_spot";
    case Blemish::mosaic: return "look_mosaic";
    case Blemish::mine: return "look_leaf_mine";
    case Blemish::frost: return "look_frost_shoot";
    case Blemish::hail: return "look_hail";
    case Blemish::oakMarble: return "oak_gall_marble";
    case Blemish::oakKnopper: return "oak_gall_knopper";
    case Blemish::oakSpangle: return "oak_gall_spangle";
    }
    return "";
}

const char* crownLike(const Depiction& depiction)
{
    if (depiction.season == Season::winter)
        return "crown_winter_retained";
    if (depiction.tree.epicormic)
        return "trunk_epicormic";
    return depiction.tree.dieback > 0 ? "crown_dieback" : depiction.tree.browned > 0 ? "crown_browned" : "crown_healthy";
}

} // namespace

QString figureFor(const Depiction& depiction)
{
    const auto named = [](const char* id) { return QString::fromLatin1(id); };
    if (depiction.subject == Subject::plate)
        return QString::fromStdString(depiction.plate);
    if (!undrawable(depiction).empty())
        return {};
    if (!depiction.galls.empty())
        return named(depiction.tree.heldLeaves > 0 ? "winter_retained_leaves" : galled(depiction.galls.front()));
    if (!depiction.blemishes.empty())
        return named(blemished(depiction.blemishes.front().kind));
    if (depiction.subject == Subject::crown)
        return named(crownLike(depiction));
    if (depiction.tree.canker)
        return named("canker_epicormic");
    const auto* const found = std::find_if(std::begin(painted), std::end(painted), [&](const Painted& one) {
        return one.subject == depiction.subject && one.taxon == depiction.taxon;
    });
    return found == std::end(painted) ? QString() : named(found->figure);
}

} // namespace cupule::ui
