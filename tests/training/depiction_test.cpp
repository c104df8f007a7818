// A drawing as a plain description: one text for each, and what is true in it follows from how it was made. Signs and characters:
// their names in the built-in protocol.

#include "tests/support/catch.h"

#include <set>

#include "core/training/depiction.h"
#include "core/training/dice.h"

using namespace cupule;

namespace {

Depiction of(Subject subject, Season season, std::vector<DepictedGall> galls = {})
{
    Depiction depiction;
    depiction.subject = subject;
    depiction.season = season;
    depiction.galls = std::move(galls);
    return depiction;
}

using Signs = std::vector<std::string>;
using Reasons = std::vector<Undrawable>;

} // namespace

TEST_CASE("a description has one text and comes back from it", "[depiction]")
{
    Depiction full = of(Subject::shoot, Season::autumn, {{GallSite::stalk, GallTone::red, 7.25, 2, 3, false, false}, {GallSite::bud, GallTone::pink, 22}});
    full.blemishes = {{Blemish::leafSpot, 0.3}, {Blemish::aphids, 1}};
    full.tree.dieback = 0.4;
    full.tree.canker = true;
    full.view = {-12.5, 30, 0.1, -1, 0.5, true};
    full.seed = 4294967295U;
    CHECK(textOf(full) == "shoot castanea-sativa autumn gall=stalk,red,7.25,2,3,0,0 gall=bud,pink,22,1,0,1,0 blemish=leaf-spot,0.3 "
                          "blemish=aphids,1 tree=0.4,0,0,0,1 view=-12.5,30,0.1,-1,0.5,1 seed=4294967295");
    CHECK(depictionFromText(textOf(full)) == full);
    CHECK(depictionFromText(textOf(plateOf("gall_midrib", 3))) == plateOf("gall_midrib", 3));
    CHECK(depictionId(full) == depictionId(full));
    CHECK(depictionId(full).size() == 16);
    CHECK(depictionId(full) != depictionId(plateOf("gall_midrib", 3)));
    for (const char* broken : {"", "leaf", "leaf castanea-sativa summer", "leaf castanea-sativa summer seed=-1", "leaf castanea-sativa summer seed=1.5",
                               "leaf castanea-sativa summer seed=01", "leaf castanea-sativa summer seed=1 seed=1", "tree castanea-sativa summer seed=1",
                               "leaf castanea-sativa summer gall=midrib,pink,12,1,0,1 seed=1", "leaf castanea-sativa summer gall=midrib,blue,12,1,0,1,0 seed=1",
                               "leaf castanea-sativa summer blemish=aphids,x seed=1", "leaf castanea-sativa summer view=0,0,0,0,0,2 seed=1",
                               "leaf castanea-sativa summer view=0,0,0,0,nan,1 seed=1", "leaf castanea-sativa  summer seed=1", "leaf castanea-sativa summer x=1 seed=1"}) {
        CAPTURE(broken);
        CHECK_FALSE(depictionFromText(broken));
    }
}

TEST_CASE("the signs of a drawing follow from how it was made", "[depiction]")
{
    CHECK(signsShown(of(Subject::shoot, Season::summer)).empty());
    CHECK(signsShown(of(Subject::leaf, Season::summer, {{GallSite::midrib}})) == Signs{"S02", "S26"});
    CHECK(signsShown(of(Subject::leaf, Season::summer, {{GallSite::stalk, GallTone::green, 12, 2, 0, false}})) == Signs{"S02", "S29"});
    CHECK(signsShown(of(Subject::shoot, Season::summer, {{GallSite::bud}})) == Signs{"S01", "S10", "S11"});
    CHECK(signsShown(of(Subject::shoot, Season::summer, {{GallSite::stipule}})) == Signs{"S03"});
    CHECK(signsShown(of(Subject::flowers, Season::summer, {{GallSite::catkin, GallTone::red, 9, 1, 2}})) == Signs{"S04", "S06"});
    CHECK(signsShown(of(Subject::twig, Season::winter, {{GallSite::twig, GallTone::dry}})) == Signs{"S05"});
    CHECK(signsShown(of(Subject::leaf, Season::summer, {{GallSite::midrib, GallTone::brown, 12, 1, 0, false, true}})) == Signs{"S13"});
    Depiction held = of(Subject::twig, Season::winter);
    held.tree.heldLeaves = 1;
    CHECK(signsShown(held) == Signs{"S15"});
    held.galls = {{GallSite::twig, GallTone::dry}};
    CHECK(signsShown(held) == Signs{"S05", "S25"});
    Depiction spotted = of(Subject::leaf, Season::autumn);
    spotted.blemishes = {{Blemish::leafSpot}, {Blemish::hail}, {Blemish::puckered}};
    CHECK(signsShown(spotted) == Signs{"S10", "S17"});
    CHECK(signsShown(plateOf("gall_midrib")).empty()); // a plate is asked about by nobody
}

TEST_CASE("the characters that a part shows are those of that part", "[depiction]")
{
    CHECK(charactersShown(of(Subject::twig, Season::winter)) == Signs{"K01", "K07", "K10", "K11"});
    Depiction leaf = of(Subject::leaf, Season::summer);
    CHECK(charactersShown(leaf) == Signs{"K02", "K03", "K05"});
    leaf.view.scaleBar = true; // without a scale nobody can tell a length
    CHECK(charactersShown(leaf) == Signs{"K02", "K03", "K04", "K05"});
}

TEST_CASE("what cannot be is not drawn, and each reason is told", "[depiction]")
{
    CHECK(undrawable(of(Subject::leaf, Season::summer, {{GallSite::midrib}})).empty());
    Depiction oak = of(Subject::leaf, Season::summer, {{GallSite::midrib}});
    oak.taxon = "quercus-robur";
    CHECK(undrawable(oak) == Reasons{Undrawable::gallHost});
    oak.taxon = "oak";
    CHECK(undrawable(oak) == Reasons{Undrawable::taxon, Undrawable::gallHost});
    CHECK(undrawable(of(Subject::leaf, Season::winter)) == Reasons{Undrawable::season});
    CHECK(undrawable(of(Subject::leaf, Season::summer, {{GallSite::catkin}})) == Reasons{Undrawable::gallSite});
    CHECK(undrawable(of(Subject::shoot, Season::spring, {{GallSite::catkin}})) == Reasons{Undrawable::gallSite});
    CHECK(undrawable(of(Subject::twig, Season::winter, {{GallSite::twig, GallTone::green}})) == Reasons{Undrawable::gallTone});
    CHECK(undrawable(of(Subject::leaf, Season::summer, {{GallSite::midrib, GallTone::dry}})) == Reasons{Undrawable::gallTone});
    CHECK(undrawable(of(Subject::leaf, Season::summer, {{GallSite::midrib, GallTone::brown}})) == Reasons{Undrawable::gallTone});
    CHECK(undrawable(of(Subject::leaf, Season::summer, {{GallSite::midrib, GallTone::green, 12, 1, 1}})) == Reasons{Undrawable::gallNumber});
    CHECK(undrawable(of(Subject::leaf, Season::summer, {{GallSite::midrib, GallTone::pink, 61}})) == Reasons{Undrawable::gallNumber});
    CHECK(undrawable(of(Subject::leaf, Season::summer, {{GallSite::midrib}, {GallSite::midrib}})) == Reasons{Undrawable::gallNumber});
    Depiction crown = of(Subject::crown, Season::winter);
    crown.tree.browned = 0.2;
    CHECK(undrawable(crown) == Reasons{Undrawable::tree});
    Depiction wounded = of(Subject::bark, Season::summer); // blight is a disease of chestnuts
    wounded.tree.canker = true;
    CHECK(undrawable(wounded).empty());
    wounded.taxon = "fagus-sylvatica";
    CHECK(undrawable(wounded) == Reasons{Undrawable::tree});
    Depiction mined = of(Subject::leaf, Season::summer);
    mined.blemishes = {{Blemish::mine}};
    CHECK(undrawable(mined) == Reasons{Undrawable::blemishHost});
    mined.view.smallness = 0.9;
    CHECK(undrawable(mined) == Reasons{Undrawable::blemishHost, Undrawable::view});
}

TEST_CASE("a description made at random is read back as it was, and met outdoors it stays the same part with the same signs", "[depiction]")
{
    std::set<std::string> ids;
    for (std::uint32_t seed = 1; seed <= 200; ++seed) {
        Dice dice(seed);
        Depiction made = of(static_cast<Subject>(dice.whole(1, 8)), static_cast<Season>(dice.whole(0, 3)));
        made.seed = seed;
        made.taxon = depictedTaxa()[static_cast<std::size_t>(dice.whole(0, static_cast<int>(depictedTaxa().size()) - 1))];
        for (int i = dice.whole(0, 3); i > 0; --i)
            made.galls.push_back({static_cast<GallSite>(dice.whole(0, 5)), static_cast<GallTone>(dice.whole(0, 4)), dice.in(2, 60), dice.whole(1, 3),
                                  dice.whole(0, 12), dice.chance(0.5), dice.chance(0.1)});
        const Depiction met = asMet(made, 0.7);
        CAPTURE(textOf(met));
        CHECK(depictionFromText(textOf(met)) == met);
        CHECK(signsShown(met) == signsShown(made));
        CHECK(met.view.slant <= 35);
        ids.insert(depictionId(met));
    }
    CHECK(ids.size() == 200);
}
