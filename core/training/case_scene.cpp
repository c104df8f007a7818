#include "core/training/case_scene.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "core/rules/season.h"
#include "core/training/case_signs.h"

namespace cupule {

namespace {

constexpr std::string_view leafCharacter = "K02";
constexpr std::string_view fruitCharacter = "K15";

bool inMonth(const std::map<std::string, Months>& months, const std::string& region, int month)
{
    const auto found = months.find(region);
    return found != months.end() && (found->second & (1u << (month - 1))) != 0;
}

bool seenOnTree(const Pack& pack, std::string_view character, const std::string& region, int month)
{
    const Character* found = pack.character(character);
    return found != nullptr && inMonth(found->visible, region, month);
}

bool liesOnGround(const Pack& pack, std::string_view character, const std::string& region, int month)
{
    const Character* found = pack.character(character);
    return found != nullptr && found->onGroundToo && inMonth(found->onGround, region, month);
}

/// Takes off everything that is a sign.
Depiction bare(Depiction depiction)
{
    depiction.galls.clear();
    depiction.blemishes.clear();
    depiction.tree = {};
    return depiction;
}

/// What the topic is about; nothing where there is no drawing of it that month.
std::optional<Depiction> mainDrawing(const Pack& pack, const CaseRequest& request, const DifficultyStep& step, int month, CivilDate date, Dice& dice)
{
    const Topic& topic = request.topic;
    std::string sign = topic.subject;
    if (topic.kind != AskedKind::sign && topic.kind != AskedKind::look) {
        const auto lines = gallLinesInSeason(date, {request.place.region, 0}, pack);
        if (lines.empty())
            return std::nullopt;
        sign = lines[static_cast<std::size_t>(dice.whole(0, static_cast<int>(lines.size()) - 1))]->id;
    }
    auto made = drawingOf(sign, month, step, dice);
    const bool always = topic.kind == AskedKind::look || topic.kind == AskedKind::order;
    if (!made || always || dice.chance(step.shareThere))
        return made;
    const bool changesTree = made->taxon != "castanea-sativa";
    *made = bare(*made);
    if (changesTree && dice.chance(0.5) && hasDepiction(made->subject, "castanea-sativa"))
        made->taxon = "castanea-sativa";
    return made;
}

std::optional<Depiction> firstOf(const std::string& taxon, const std::vector<CaseDrawing>& parts)
{
    for (const CaseDrawing& part : parts)
        if (part.depiction.taxon == taxon && !part.onGround)
            return part.depiction;
    return std::nullopt;
}

/// Parts of a tree that say what tree it is, as they can be met that month.
std::vector<CaseDrawing> evidence(const Pack& pack, const std::string& taxon, const std::string& region, int month, const DifficultyStep& step, Dice& dice)
{
    std::vector<CaseDrawing> parts;
    for (const Subject subject : {Subject::flowers, Subject::fruit, Subject::leaf, Subject::twig, Subject::nut, Subject::bark, Subject::shoot}) {
        Depiction depiction;
        depiction.subject = subject;
        depiction.taxon = taxon;
        depiction.season = seasonDrawn(month);
        const bool leafy = subject == Subject::leaf || subject == Subject::shoot;
        bool ground = false;
        if (leafy && !seenOnTree(pack, leafCharacter, region, month))
            continue;
        if (subject == Subject::fruit && !seenOnTree(pack, fruitCharacter, region, month)) {
            ground = liesOnGround(pack, fruitCharacter, region, month);
            depiction.season = Season::autumn;
            if (!ground)
                continue;
        }
        depiction.view.scaleBar = subject == Subject::leaf;
        if (undrawable(depiction).empty())
            parts.push_back({depiction, ground, ground && step.step >= 4 && dice.chance(0.5)});
    }
    if (step.step >= 3)
        for (std::size_t i = parts.size(); i > 1; --i)
            std::swap(parts[i - 1], parts[static_cast<std::size_t>(dice.whole(0, static_cast<int>(i) - 1))]);
    return parts;
}

bool sameSubject(const CaseDrawing& a, const CaseDrawing& b)
{
    return a.depiction.subject == b.depiction.subject;
}

void addDistractors(Scene& scene, const DifficultyStep& step, Dice& dice)
{
    int left = step.distractors;
    for (CaseDrawing& drawing : scene.drawings) {
        const Subject subject = drawing.depiction.subject;
        const bool leafy = subject == Subject::leaf || subject == Subject::shoot;
        if (left > 0 && leafy && drawing.depiction.blemishes.empty() && addDistractor(drawing.depiction, dice))
            --left;
    }
}

void setAsMet(Scene& scene, const DifficultyStep& step, Dice& dice)
{
    for (CaseDrawing& drawing : scene.drawings) {
        Depiction& depiction = drawing.depiction;
        depiction.seed = static_cast<std::uint32_t>(dice.in(1, 4294967295.0));
        const bool bar = depiction.view.scaleBar || !depiction.galls.empty();
        depiction = asMet(depiction, step.clutter);
        depiction.view.scaleBar = bar;
        depiction.view.smallness = step.smallness * dice.in(0.6, 1);
    }
}

/// Every drawing can be made, and everything in it is in season.
bool holds(const Pack& pack, Scene& scene, const std::string& region)
{
    std::set<std::string> signs;
    for (const CaseDrawing& drawing : scene.drawings) {
        if (!undrawable(drawing.depiction).empty())
            return false;
        for (const std::string& sign : signsShown(drawing.depiction))
            signs.insert(sign);
    }
    scene.signs.assign(signs.begin(), signs.end());
    return std::ranges::all_of(scene.signs, [&](const std::string& id) {
        const Sign* sign = pack.sign(id);
        return sign != nullptr && seasonOf(*sign, scene.date, {region, 0}, pack).state != SeasonState::outOfSeason;
    });
}

} // namespace

std::optional<Scene> drawnScene(const Pack& pack, const CaseRequest& request, const DifficultyStep& step, Dice& dice)
{
    const int month = request.place.month > 0 ? request.place.month : dice.whole(1, 12);
    const auto date = CivilDate::make(request.place.year, month, dice.whole(1, 28));
    if (!date)
        return std::nullopt;
    Scene scene{*date, {}, {}, {}};
    const std::string& region = request.place.region;
    std::optional<Depiction> main;
    if (request.topic.kind == AskedKind::host)
        main = firstOf(request.topic.subject, evidence(pack, request.topic.subject, region, month, step, dice));
    else
        main = mainDrawing(pack, request, step, month, *date, dice);
    if (!main)
        return std::nullopt;
    scene.taxon = main->taxon;
    scene.drawings.push_back({*main, false, false});
    for (CaseDrawing& part : evidence(pack, scene.taxon, region, month, step, dice)) {
        const bool doubled = std::ranges::any_of(scene.drawings, [&](const CaseDrawing& other) { return sameSubject(part, other); });
        if (!doubled && static_cast<int>(scene.drawings.size()) < step.drawings)
            scene.drawings.push_back(part);
    }
    addDistractors(scene, step, dice);
    setAsMet(scene, step, dice);
    return holds(pack, scene, region) ? std::optional(scene) : std::nullopt;
}

std::vector<CharacterSeen> charactersOf(const Pack& pack, const Scene& scene, const std::string& region)
{
    const int month = scene.date.month();
    std::vector<CharacterSeen> shown;
    for (const Character& character : pack.characters) {
        const KindRow* row = pack.row(scene.taxon, character.id);
        if (row == nullptr || row->states.empty() || !character.decidesHost)
            continue;
        for (const CaseDrawing& drawing : scene.drawings) {
            const bool there = drawing.onGround ? liesOnGround(pack, character.id, region, month) : inMonth(character.visible, region, month);
            const auto ids = charactersShown(drawing.depiction);
            if (!there || std::ranges::find(ids, character.id) == ids.end())
                continue;
            CharacterSeen seen;
            seen.character = character.id;
            seen.state = row->states.front();
            seen.onGround = drawing.onGround;
            if (drawing.onGround)
                seen.otherTreeNear = drawing.otherTreeNear;
            shown.push_back(seen);
            break;
        }
    }
    return shown;
}

} // namespace cupule
