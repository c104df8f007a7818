#include "ui/figures/figure_names.h"

namespace cupule::ui {

QString figureForSign(const std::string& sign)
{
    struct Entry {
        const char* sign;
        const char* figure;
    };
    static const Entry table[] = {
        {"S01", "gall_shoot_tip"}, {"S02", "gall_midrib"}, {"S03", "gall_stipule"}, {"S04", "gall_catkin"},
        {"S05", "gall_dry_twig"},  {"S06", "gall_exit_holes"}, {"S10", "look_puckered"}, {"S13", "gall_browned"},
        {"S26", "gall_midrib"},  {"S29", "gall_merged"},
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
        {"K03/rounded-lobes", "leaf_quercus_robur"}, {"K03/pointed-lobes", "leaf_quercus_cerris"},
        {"K03/no-teeth", "leaf_fagus"},             {"K07/egg-few-scales", "twig_castanea"},
        {"K07/clustered-many-scales", "twig_quercus"}, {"K07/pointed-pressed", "twig_carpinus"},
        {"K07/long-sharp", "twig_fagus"},           {"K07/very-large", "twig_aesculus"},
        {"K15/dense-spines", "husk_castanea"},      {"K15/stubby-spines", "husk_aesculus"},
        {"K17/tassel", "nut_castanea"},
    };
    const std::string key = character + "/" + state;
    for (const Entry& entry : table)
        if (key == entry.part)
            return QString::fromLatin1(entry.figure);
    return {};
}

} // namespace cupule::ui
