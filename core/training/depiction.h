// What a drawing shows, as a plain description: of which tree and which part of it, with what signs, at what time of the year, and
// how it is met. Whoever makes one knows what is true in the drawing; ui/figures paints it and adds no sign of its own.
//
//  - Seeded: the same description gives the same drawing on every machine; another seed gives another leaf of the same kind.
//  - Ids of taxa, characters and signs are those of the built-in protocol pack. A pack with other ids has no drawings.

#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace cupule {

/// The part that is drawn.
enum class Subject {
    plate,   ///< a figure of the handbook by its name; most show one thing, some lay out several
    leaf,    ///< one leaf with its stalk
    shoot,   ///< a leafy shoot
    twig,    ///< without leaves, with buds
    flowers, ///< catkins or what the tree has instead
    fruit,   ///< husk, cup, bract or wing, with or without its nuts
    nut,
    bark, ///< a piece of an old trunk
    crown ///< a whole tree
};

enum class Season { spring, summer, autumn, winter };

enum class GallSite { midrib, stalk, stipule, bud, catkin, twig };
/// From fresh to old; brown is this year's, dry is an earlier year's.
enum class GallTone { green, pink, red, brown, dry };

struct DepictedGall {
    GallSite site = GallSite::midrib;
    GallTone tone = GallTone::pink;
    double millimetres = 12; ///< longest diameter, 2 to 60; 0 = as the plate has it
    int bodies = 1;          ///< galls grown into one, 1 to 3
    int exitHoles = 0;       ///< up to 12, as far as there is room; -1 = as the plate has it
    bool bends = true;       ///< the leaf is bent and narrowed at it
    bool leafDead = false;   ///< browned by a fungus in summer, with its leaf
    bool operator==(const DepictedGall&) const = default;
};

/// What is no gall of the wasp, and may be taken for one.
enum class Blemish { puckered, aphids, leafSpot, mosaic, mine, frost, hail, oakMarble, oakKnopper, oakSpangle };

struct DepictedBlemish {
    Blemish kind = Blemish::leafSpot;
    double extent = 0.5; ///< 0 hardly to 1 all over; on a shoot the share of its leaves, at least one
    bool operator==(const DepictedBlemish&) const = default;
};

/// Of a crown, or of a trunk. Shares 0 to 1.
struct DepictedTree {
    double dieback = 0;     ///< of the crown without leaves in summer
    double browned = 0;     ///< of the crown with brown dead leaves in summer
    double heldLeaves = 0;  ///< of the branches that keep dead leaves in winter; on a twig: 1 a bunch, round its gall where it has one
    bool epicormic = false; ///< shoots from the trunk
    bool canker = false;    ///< on bark
    bool operator==(const DepictedTree&) const = default;
};

/// How it is met.
struct Viewpoint {
    double turnDegrees = 0; ///< clockwise
    double slant = 0;       ///< degrees, 0 to 55: turned away about its upright axis, so narrower
    double clutter = 0;     ///< 0 the part alone to 1 crowded by leaves or twigs of the same tree
    double light = 0;       ///< -1 overcast and cool, 0 as in a book, 1 a low warm sun
    double smallness = 0;   ///< 0 fills its frame to 0.8, a fifth of it
    bool scaleBar = false;  ///< in mm on the plant
    bool operator==(const Viewpoint&) const = default;
};

struct Depiction {
    Subject subject = Subject::plate;
    std::string plate = {};                    ///< "gall_midrib", of Subject::plate alone
    std::string taxon = "castanea-sativa";     ///< a kind of the pack
    Season season = Season::summer;
    std::vector<DepictedGall> galls = {};      ///< of a plate: the first one says how its largest gall is
    std::vector<DepictedBlemish> blemishes = {};
    DepictedTree tree = {};
    Viewpoint view = {};
    std::uint32_t seed = 1;
    bool operator==(const Depiction&) const = default;
};

/// A plate of the handbook as it is laid out.
Depiction plateOf(std::string name, std::uint32_t seed = 1);
/// The same as it is met outdoors: turn, slant, light and clutter drawn from its seed, up to `much`, 0 as it is to 1 a thicket.
Depiction asMet(Depiction depiction, double much);
/// Trees, bark and what is laid out side by side: never turned, slanted or crowded.
bool standsAsItIs(const Depiction& depiction);

// ---- what can be drawn

/// Every taxon of which there is a drawing, by its id in the pack.
std::span<const std::string_view> depictedTaxa();
bool hasDepiction(Subject subject, std::string_view taxon);
bool isChestnut(std::string_view taxon); ///< genus Castanea: all that carry the wasp's galls
bool isOak(std::string_view taxon);

/// Why a description has no drawing.
enum class Undrawable {
    taxon,       ///< no such tree, or not that part of it
    gallHost,    ///< a gall of the wasp on another tree than a chestnut
    gallSite,    ///< on a part that is not in the drawing, or not there at that time
    gallTone,    ///< a fresh gall in winter or on a twig, a dry one on a leaf
    gallNumber,  ///< size, bodies or holes out of their limits; a hole in a green gall
    blemishHost, ///< an oak's gall on another tree, horse chestnut's mine elsewhere, the others on another tree than a chestnut
    blemishSite, ///< on a part that is not in the drawing
    tree,        ///< dieback, held leaves, canker where there is no crown, twig or bark of a chestnut, or at another time of the year
    season,      ///< a leaf or leafy shoot in winter, a twig in summer, flowers or fruit at another time
    view         ///< out of its limits
};
/// Every reason, none for what can be drawn. A plate is asked for its name and view alone where it is painted.
std::vector<Undrawable> undrawable(const Depiction& depiction);

// ---- what is true in it

/// Characters of the host key that can be told from it, "K01"; their states are those of the taxon. What shines through clutter
/// or lies in the shade is still in the drawing. None for plates.
std::vector<std::string> charactersShown(const Depiction& depiction);
/// Signs that are in it, "S02", sorted; every other sign is not in it. None for plates.
std::vector<std::string> signsShown(const Depiction& depiction);

// ---- stable text

/// One line, the same for equal descriptions: "shoot castanea-sativa summer gall=midrib,pink,12,1,0,1,0 seed=7".
std::string textOf(const Depiction& depiction);
/// Nothing for what `textOf` does not write.
std::optional<Depiction> depictionFromText(std::string_view text);
/// Sixteen hexadecimal digits of its text.
std::string depictionId(const Depiction& depiction);

std::string_view nameOf(Subject subject);
std::string_view nameOf(Season season);
std::string_view nameOf(GallSite site);
std::string_view nameOf(GallTone tone);
std::string_view nameOf(Blemish blemish);
std::optional<GallTone> gallToneNamed(std::string_view name);

} // namespace cupule
