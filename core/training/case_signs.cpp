#include "core/training/case_signs.h"

#include <algorithm>
#include <iterator>

namespace cupule {

namespace {

constexpr std::string_view drawable[] = {"S01", "S02", "S03", "S04", "S05", "S06", "S10", "S11", "S12", "S13", "S14",
                                         "S15", "S16", "S17", "S18", "S19", "S20", "S21", "S25", "S26", "S27", "S28", "S29"};

/// Signs that a part would show, by the part.
struct PartSigns {
    Subject subject;
    std::string_view signs;                // ids with a blank between
};
constexpr PartSigns partSigns[] = {
    {Subject::leaf, "S02 S10 S13 S16 S17 S18 S19 S20 S21 S26 S29"},
    {Subject::shoot, "S01 S02 S03 S10 S11 S13 S16 S17 S18 S19 S20 S26 S29"},
    {Subject::flowers, "S04"},
    {Subject::twig, "S05 S15 S25"},
    {Subject::bark, "S14"},
    {Subject::crown, "S12 S15 S27 S28"},
};

struct BlemishSign {
    std::string_view sign;
    Blemish blemish;
};
constexpr BlemishSign blemishSigns[] = {{"S10", Blemish::puckered}, {"S16", Blemish::mosaic}, {"S17", Blemish::leafSpot},
                                        {"S18", Blemish::frost},    {"S19", Blemish::aphids}, {"S21", Blemish::mine}};

GallTone freshTone(Dice& dice)
{
    constexpr GallTone tones[] = {GallTone::green, GallTone::pink, GallTone::red};
    return tones[dice.whole(0, 2)];
}

DepictedGall gallAt(GallSite site, GallTone tone, const DifficultyStep& step, Dice& dice)
{
    DepictedGall gall;
    gall.site = site;
    gall.tone = tone;
    gall.millimetres = std::clamp(dice.in(step.smallestMm, step.largestMm), 4.0, 25.0);
    gall.bends = dice.chance(0.5);
    return gall;
}

Depiction hostPart(Subject subject, int month)
{
    Depiction depiction;
    depiction.subject = subject;
    depiction.season = seasonDrawn(month);
    return depiction;
}

Subject leafy(Dice& dice)
{
    return dice.chance(0.5) ? Subject::leaf : Subject::shoot;
}

std::optional<Depiction> gallDrawing(std::string_view sign, int month, const DifficultyStep& step, Dice& dice)
{
    const auto with = [&](Subject subject, GallSite site, GallTone tone) {
        Depiction depiction = hostPart(subject, month);
        depiction.galls.push_back(gallAt(site, tone, step, dice));
        return depiction;
    };
    const GallSite onLeaf = dice.chance(0.7) ? GallSite::midrib : GallSite::stalk;
    if (sign == "S01" || sign == "S11")
        return with(Subject::shoot, GallSite::bud, freshTone(dice));
    if (sign == "S03")
        return with(Subject::shoot, GallSite::stipule, freshTone(dice));
    if (sign == "S04")
        return with(Subject::flowers, GallSite::catkin, freshTone(dice));
    if (sign == "S05" || sign == "S25") {
        Depiction depiction = with(Subject::twig, GallSite::twig, GallTone::dry);
        depiction.tree.heldLeaves = sign == "S25" ? 1 : 0;
        depiction.galls.front().exitHoles = dice.whole(0, 3);
        return depiction;
    }
    Depiction depiction = with(leafy(dice), onLeaf, sign == "S13" ? GallTone::brown : freshTone(dice));
    DepictedGall& gall = depiction.galls.front();
    if (sign == "S13")
        gall.leafDead = true;
    if (sign == "S06") {
        gall.tone = GallTone::red;
        gall.exitHoles = dice.whole(1, 3);
    }
    gall.bends = gall.bends || sign == "S26";
    gall.bodies = sign == "S29" ? dice.whole(2, 3) : 1;
    return depiction;
}

std::optional<Depiction> treeDrawing(std::string_view sign, int month, Dice& dice)
{
    Depiction depiction = hostPart(sign == "S14" ? Subject::bark : Subject::crown, month);
    if (sign == "S12")
        depiction.tree.dieback = dice.in(0.3, 0.7);
    else if (sign == "S14")
        depiction.tree.canker = true;
    else if (sign == "S15")
        depiction.tree.heldLeaves = dice.in(0.2, 0.5);
    else if (sign == "S27")
        depiction.tree.browned = dice.in(0.2, 0.6);
    else
        depiction.tree.epicormic = true;
    if (sign == "S15" && dice.chance(0.5)) {
        depiction.subject = Subject::twig;
        depiction.tree.heldLeaves = 1;
    }
    return depiction;
}

/// On oak and horse chestnut.
std::optional<Depiction> elsewhere(std::string_view sign, int month, Dice& dice)
{
    Depiction depiction = hostPart(Subject::leaf, month);
    if (sign == "S21") {
        depiction.taxon = "aesculus-hippocastanum";
        depiction.blemishes.push_back({Blemish::mine, dice.in(0.3, 0.8)});
        return depiction;
    }
    depiction.taxon = "quercus-robur";
    const bool marble = dice.chance(0.5);
    depiction.subject = marble ? Subject::shoot : Subject::leaf;
    depiction.blemishes.push_back({marble ? Blemish::oakMarble : Blemish::oakSpangle, dice.in(0.3, 0.8)});
    return depiction;
}

} // namespace

std::span<const std::string_view> drawnSigns()
{
    return drawable;
}

Season seasonDrawn(int month)
{
    if (month == 12 || month <= 3)
        return Season::winter;
    return month <= 5 ? Season::spring : month <= 8 ? Season::summer : Season::autumn;
}

std::optional<Depiction> drawingOf(std::string_view sign, int month, const DifficultyStep& step, Dice& dice)
{
    if (std::ranges::find(drawable, sign) == std::end(drawable))
        return std::nullopt;
    std::optional<Depiction> made;
    const auto blemish = std::ranges::find(blemishSigns, sign, &BlemishSign::sign);
    if (sign == "S20" || sign == "S21") {
        made = elsewhere(sign, month, dice);
    } else if (blemish != std::end(blemishSigns)) {
        made = hostPart(leafy(dice), month);
        made->blemishes.push_back({blemish->blemish, dice.in(0.3, 0.8)});
    } else if (sign == "S12" || sign == "S14" || sign == "S15" || sign == "S27" || sign == "S28") {
        made = treeDrawing(sign, month, dice);
    } else {
        made = gallDrawing(sign, month, step, dice);
    }
    return undrawable(*made).empty() ? made : std::nullopt;
}

bool couldShow(const Depiction& depiction, std::string_view sign)
{
    const auto part = std::ranges::find(partSigns, depiction.subject, &PartSigns::subject);
    if (part == std::end(partSigns) || part->signs.find(sign) == std::string_view::npos)
        return false;
    if (sign == "S15")
        return depiction.season == Season::winter;
    return sign != "S27" || depiction.season == Season::summer;
}

bool addDistractor(Depiction& depiction, Dice& dice)
{
    constexpr Blemish causes[] = {Blemish::puckered, Blemish::mosaic, Blemish::leafSpot, Blemish::frost,
                                  Blemish::aphids,   Blemish::mine,   Blemish::oakSpangle, Blemish::hail};
    const int start = dice.whole(0, static_cast<int>(std::size(causes)) - 1);
    for (int i = 0; i < static_cast<int>(std::size(causes)); ++i) {
        Depiction with = depiction;
        with.blemishes.push_back({causes[(start + i) % static_cast<int>(std::size(causes))], dice.in(0.2, 0.7)});
        if (!undrawable(with).empty())
            continue;
        depiction = with;
        return true;
    }
    return false;
}

} // namespace cupule
