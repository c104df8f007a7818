#include "ui/figures/figure_names.h"

namespace cupule::ui {

QString figureForSign(const std::string& sign)
{
    struct Entry {
        const char* sign;
        const char* figure;
    };
    static const Entry table[] = {
        {"S01", "gall_shoot_tip"},   {"S02", "gall_midrib"},      {"S03", "gall_stipule"},
        {"S04", "gall_catkin"},      {"S05", "gall_dry_twig"},    {"S06", "gall_exit_holes"},
        {"S07", "gall_section"},     {"S08", "insect_gall_wasp"}, {"S22", "insect_green_wasp"},
            {"S10", "look_puckered"},    {"S11", "gall_shoot_tip"},
        {"S12", "crown_dieback"},    {"S13", "gall_browned"},     {"S14", "canker_epicormic"},
        {"S15", "crown_winter_retained"}, {"S16", "look_mosaic"}, {"S17", "look_leaf_spot"},
        {"S18", "look_frost_shoot"}, {"S19", "look_aphid_curl"},  {"S20", "oak_gall_marble"},
        {"S21", "look_leaf_mine"},   {"S23", "crown_healthy"},    {"S25", "winter_retained_leaves"},
        {"S26", "gall_midrib"},      {"S27", "crown_browned"},    {"S28", "trunk_epicormic"},
        {"S29", "gall_merged"},
    };
    for (const Entry& entry : table)
        if (sign == entry.sign)
            return QString::fromLatin1(entry.figure);
    return {};
}

QString figureForState(const std::string& character, const std::string& state)
{
    struct Entry {
        const char* part;                    // of "character/state"
        const char* figure;
    };
    static const Entry table[] = {
        {"K01/alternate", "shoot_castanea"},        {"K01/opposite", "shoot_aesculus"},
        {"K02/simple", "leaf_castanea"},            {"K02/lobed", "leaf_quercus_robur"},
        {"K02/compound-palmate", "leaf_aesculus"},  {"K02/compound-pinnate", "leaf_juglans"},
        {"K03/teeth-with-points", "leaf_castanea"}, {"K03/double-teeth", "leaf_carpinus"},
        {"K03/fine-teeth", "leaf_tilia"},           {"K05/long-thin", "leaf_tilia"},
        {"K05/nearly-none", "leaf_quercus_robur"},  {"K05/long-common", "leaf_aesculus"},
        {"K03/rounded-lobes", "leaf_quercus_robur"}, {"K03/pointed-lobes", "leaf_quercus_cerris"},
        {"K03/no-teeth", "leaf_fagus"},             {"K07/egg-few-scales", "twig_castanea"},
        {"K07/clustered-many-scales", "twig_quercus"}, {"K07/pointed-pressed", "twig_carpinus"},
        {"K07/long-sharp", "twig_fagus"},           {"K07/very-large", "twig_aesculus"},
        {"K15/dense-spines", "husk_castanea"},      {"K15/stubby-spines", "husk_aesculus"},
        {"K15/thick-spines", "husk_castanea_mollissima"}, {"K15/smooth-husk", "husk_juglans"},
        {"K15/acorn-cup", "acorns_quercus"},        {"K17/tassel", "nut_castanea"},
        {"K17/round-no-point", "nut_aesculus"},     {"K17/hard-point", "nut_quercus"},
        {"K06/dense-hairs", "leaf_castanea_mollissima_under"}, {"K07/broad-velvety", "twig_juglans"},
        {"K09/sticky", "twig_aesculus"},            {"K10/none", "twig_castanea"},
        {"K11/horseshoe-scar", "twig_aesculus"},    {"K11/chambered-pith", "twig_juglans"},
        {"K12/fissured", "bark_castanea"},          {"K12/flaking-plates", "bark_aesculus"},
        {"K12/smooth", "bark_fagus"},               {"K07/rounded-hairy", "twig_castanea_mollissima"},
        {"K08/hairy", "twig_castanea_mollissima"},  {"K18/yellow-or-brown", "leaf_castanea_autumn"},
        {"K18/copper", "leaf_fagus_autumn"},        {"K18/early-brown", "look_leaf_mine"},
        {"K13/long-slender-catkins", "catkin_castanea"}, {"K13/spring-catkins", "catkin_quercus"},
        {"K13/showy-panicle", "panicle_aesculus"},       {"K13/round-heads", "flowers_fagus"},
        {"K13/clusters-on-bract", "flowers_tilia"},      {"K13/reddish-tufts", "flowers_ulmus"},
        {"K15/nutlet-on-bract", "fruit_carpinus"},       {"K15/soft-prickles", "husk_fagus"},
        {"K15/leafy-cup", "fruit_corylus"},              {"K15/winged-seeds", "fruit_ulmus"},
        {"K07/wiry-stipules", "twig_quercus_cerris"},    {"K07/pointed-dark-scales", "twig_ulmus"},
        {"K16/three-angled", "husk_fagus"},              {"K17/three-angled-tip", "nut_fagus"},
        {"K17/tiny-ribbed", "nut_carpinus"},           {"K11/zigzag-grey", "twig_fagus"},
    };
    const std::string key = character + "/" + state;
    for (const Entry& entry : table)
        if (key == entry.part)
            return QString::fromLatin1(entry.figure);
    return {};
}

} // namespace cupule::ui
