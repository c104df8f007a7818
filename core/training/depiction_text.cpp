#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/base/hash.h"
#include "core/base/text.h"
#include "core/training/depiction.h"

namespace cupule {

namespace {

constexpr std::array<std::string_view, 9> subjects{"plate", "leaf", "shoot", "twig", "flowers", "fruit", "nut", "bark", "crown"};
constexpr std::array<std::string_view, 4> seasons{"spring", "summer", "autumn", "winter"};
constexpr std::array<std::string_view, 6> sites{"midrib", "stalk", "stipule", "bud", "catkin", "twig"};
constexpr std::array<std::string_view, 5> tones{"green", "pink", "red", "brown", "dry"};
constexpr std::array<std::string_view, 10> blemishes{"puckered", "aphids", "leaf-spot", "mosaic",      "mine",
                                                     "frost",    "hail",   "oak-marble", "oak-knopper", "oak-spangle"};

template<class Name, std::size_t N>
std::string_view nameIn(const std::array<std::string_view, N>& names, Name name)
{
    return names[static_cast<std::size_t>(name)];
}

template<class Name, std::size_t N>
bool find(const std::array<std::string_view, N>& names, std::string_view text, Name& out)
{
    const auto at = std::find(names.begin(), names.end(), text);
    if (at != names.end())
        out = static_cast<Name>(at - names.begin());
    return at != names.end();
}

std::string joined(std::initializer_list<std::string> parts)
{
    std::string text;
    for (const std::string& part : parts)
        text += (text.empty() ? "" : ",") + part;
    return text;
}

bool read(std::string_view text, double& out)
{
    const auto number = parseNumber(text);
    out = number.value_or(0);
    return number && std::isfinite(*number);
}

bool read(std::string_view text, int& out)
{
    const auto number = parseWhole(text);
    out = number.value_or(0);
    return number.has_value();
}

/// "1" or "0".
bool read(std::string_view text, bool& out)
{
    out = text == "1";
    return out || text == "0";
}

bool readGall(const std::vector<std::string>& parts, Depiction& out)
{
    DepictedGall gall;
    const bool sound = parts.size() == 7 && find(sites, parts[0], gall.site) && find(tones, parts[1], gall.tone) &&
                       read(parts[2], gall.millimetres) && read(parts[3], gall.bodies) && read(parts[4], gall.exitHoles) &&
                       read(parts[5], gall.bends) && read(parts[6], gall.leafDead);
    out.galls.push_back(gall);
    return sound;
}

bool readBlemish(const std::vector<std::string>& parts, Depiction& out)
{
    DepictedBlemish blemish;
    const bool sound = parts.size() == 2 && find(blemishes, parts[0], blemish.kind) && read(parts[1], blemish.extent);
    out.blemishes.push_back(blemish);
    return sound;
}

bool readPart(std::string_view name, std::string_view value, Depiction& out)
{
    const std::vector<std::string> parts = split(value, ',');
    if (name == "plate")
        out.plate = std::string(value);
    else if (name == "gall")
        return readGall(parts, out);
    else if (name == "blemish")
        return readBlemish(parts, out);
    else if (name == "tree")
        return parts.size() == 5 && read(parts[0], out.tree.dieback) && read(parts[1], out.tree.browned) && read(parts[2], out.tree.heldLeaves) &&
               read(parts[3], out.tree.epicormic) && read(parts[4], out.tree.canker);
    else if (name == "view")
        return parts.size() == 6 && read(parts[0], out.view.turnDegrees) && read(parts[1], out.view.slant) && read(parts[2], out.view.clutter) &&
               read(parts[3], out.view.light) && read(parts[4], out.view.smallness) && read(parts[5], out.view.scaleBar);
    else if (name == "seed") {
        double seed = 0;
        const bool sound = read(value, seed) && seed >= 0 && seed <= std::numeric_limits<std::uint32_t>::max() && seed == std::floor(seed);
        out.seed = sound ? static_cast<std::uint32_t>(seed) : 0;
        return sound;
    } else
        return false;
    return true;
}

std::string flag(bool set)
{
    return set ? "1" : "0";
}

} // namespace

std::string textOf(const Depiction& depiction)
{
    std::string text(nameOf(depiction.subject));
    text += " " + depiction.taxon + " " + std::string(nameOf(depiction.season));
    if (!depiction.plate.empty())
        text += " plate=" + depiction.plate;
    for (const DepictedGall& gall : depiction.galls)
        text += " gall=" + joined({std::string(nameOf(gall.site)), std::string(nameOf(gall.tone)), numberText(gall.millimetres),
                                   std::to_string(gall.bodies), std::to_string(gall.exitHoles), flag(gall.bends), flag(gall.leafDead)});
    for (const DepictedBlemish& blemish : depiction.blemishes)
        text += " blemish=" + joined({std::string(nameOf(blemish.kind)), numberText(blemish.extent)});
    const DepictedTree& tree = depiction.tree;
    if (tree != DepictedTree{})
        text += " tree=" + joined({numberText(tree.dieback), numberText(tree.browned), numberText(tree.heldLeaves), flag(tree.epicormic), flag(tree.canker)});
    const Viewpoint& view = depiction.view;
    if (view != Viewpoint{})
        text += " view=" + joined({numberText(view.turnDegrees), numberText(view.slant), numberText(view.clutter), numberText(view.light),
                                   numberText(view.smallness), flag(view.scaleBar)});
    return text + " seed=" + std::to_string(depiction.seed);
}

std::optional<Depiction> depictionFromText(std::string_view text)
{
    const std::vector<std::string> words = split(text, ' ');
    Depiction depiction;
    if (words.size() < 4 || !find(subjects, words[0], depiction.subject) || !find(seasons, words[2], depiction.season))
        return std::nullopt;
    depiction.taxon = words[1];
    for (std::size_t i = 3; i < words.size(); ++i) {
        const std::size_t sign = words[i].find('=');
        if (sign == std::string::npos || !readPart(std::string_view(words[i]).substr(0, sign), std::string_view(words[i]).substr(sign + 1), depiction))
            return std::nullopt;
    }
    if (textOf(depiction) != text) // one text for each description
        return std::nullopt;
    return depiction;
}

std::string depictionId(const Depiction& depiction)
{
    return hex(sha256(textOf(depiction))).substr(0, 16);
}

std::string_view nameOf(Subject subject)
{
    return nameIn(subjects, subject);
}

std::string_view nameOf(Season season)
{
    return nameIn(seasons, season);
}

std::string_view nameOf(GallSite site)
{
    return nameIn(sites, site);
}

std::string_view nameOf(GallTone tone)
{
    return nameIn(tones, tone);
}

std::string_view nameOf(Blemish blemish)
{
    return nameIn(blemishes, blemish);
}

std::optional<GallTone> gallToneNamed(std::string_view name)
{
    GallTone tone{};
    return find(tones, name, tone) ? std::optional(tone) : std::nullopt;
}

} // namespace cupule
