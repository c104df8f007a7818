// Whatever can be described is drawn, and what is in the description is in the drawing.

#include "tests/support/catch.h"

#include <map>
#include <set>

#include <QPainter>

#include "ui/figures/cache.h"
#include "ui/figures/figure.h"
#include "ui/figures/figure_names.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

QImage drawn(const Depiction& depiction)
{
    QImage image(220, 220, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintFigure(painter, image.rect(), depiction);
    return image;
}

Depiction of(Subject subject, std::string_view taxon, Season season, std::uint32_t seed = 1)
{
    Depiction depiction;
    depiction.subject = subject;
    depiction.taxon = taxon;
    depiction.season = season;
    depiction.seed = seed;
    return depiction;
}

constexpr Season seasons[] = {Season::spring, Season::summer, Season::autumn, Season::winter};

} // namespace

TEST_CASE("every part of every taxon that is said to be drawn is drawn, in every season in which it is there", "[figures][described]")
{
    for (const std::string_view taxon : depictedTaxa())
        for (int subject = static_cast<int>(Subject::leaf); subject <= static_cast<int>(Subject::crown); ++subject) {
            const auto part = static_cast<Subject>(subject);
            if (!hasDepiction(part, taxon))
                continue;
            CAPTURE(taxon, nameOf(part));
            int found = 0;
            for (const Season season : seasons) {
                const Depiction depiction = of(part, taxon, season);
                if (!undrawable(depiction).empty())
                    continue;
                ++found;
                CHECK(hasFigure(figureFor(depiction)));
                CHECK_FALSE(figureExtent(depiction).isEmpty());
            }
            CHECK(found > 0);
        }
}

TEST_CASE("every state of bark, bud, fruit case, tip of the nut and autumn colour in the host key has its figure", "[figures][described]")
{
    for (const auto& [character, states] : std::map<std::string, std::vector<std::string>>{
             {"K07", {"egg-few-scales", "rounded-hairy", "clustered-many-scales", "wiry-stipules", "pointed-pressed", "long-sharp", "pointed-dark-scales", "very-large", "broad-velvety"}},
             {"K12", {"fissured", "smooth", "flaking-plates"}},
             {"K15", {"dense-spines", "thick-spines", "stubby-spines", "acorn-cup", "nutlet-on-bract", "soft-prickles", "smooth-husk", "leafy-cup", "winged-seeds"}},
             {"K18", {"yellow-or-brown", "copper", "early-brown"}},
             {"K17", {"tassel", "round-no-point", "hard-point", "tiny-ribbed", "three-angled-tip"}}})
        for (const std::string& state : states) {
            CAPTURE(character, state);
            CHECK(hasFigure(figureForState(character, state)));
        }
}

TEST_CASE("bark and nuts of different trees are different figures", "[figures][described]")
{
    const auto figureOf = [](Subject subject, std::string_view taxon, Season season) { return figureFor(of(subject, taxon, season)).toStdString(); };
    // trade/host_key.csv K12: only the sweet chestnut's fissures wind; oak's are vertical; beech and hornbeam are smooth
    std::set<std::string> barks;
    for (const char* taxon : {"castanea-sativa", "castanea-mollissima", "aesculus-hippocastanum", "quercus-robur", "quercus-cerris", "carpinus-betulus", "fagus-sylvatica", "juglans-regia"})
        barks.insert(figureOf(Subject::bark, taxon, Season::winter));
    CHECK(barks.size() == 8);
    std::set<std::string> nuts; // K17
    for (const char* taxon : {"castanea-sativa", "castanea-mollissima", "aesculus-hippocastanum", "quercus-robur", "carpinus-betulus", "fagus-sylvatica", "juglans-regia"})
        nuts.insert(figureOf(Subject::nut, taxon, Season::autumn));
    CHECK(nuts.size() == 7);
    CHECK(drawn(of(Subject::nut, "quercus-cerris", Season::autumn)) != drawn(of(Subject::nut, "quercus-robur", Season::autumn)));  // the cup beside it
    CHECK(drawn(of(Subject::twig, "castanea-mollissima", Season::winter)) != drawn(of(Subject::twig, "castanea-sativa", Season::winter)));
}

TEST_CASE("each gall and each blemish that can be described changes the drawing, and nothing else does", "[figures][described]")
{
    int tried = 0;
    for (const Subject subject : {Subject::leaf, Subject::shoot, Subject::twig})
        for (const Season season : seasons) {
            const Depiction sound = of(subject, "castanea-sativa", season, 5);
            if (!undrawable(sound).empty())
                continue;
            const QImage plain = drawn(sound);
            CHECK(drawn(sound) == plain);
            for (const GallSite site : {GallSite::midrib, GallSite::stalk, GallSite::stipule, GallSite::bud, GallSite::catkin, GallSite::twig})
                for (const GallTone tone : {GallTone::green, GallTone::pink, GallTone::red, GallTone::brown, GallTone::dry}) {
                    Depiction galled = sound;
                    galled.galls = {{.site = site, .tone = tone, .leafDead = tone == GallTone::brown && site != GallSite::twig}};
                    if (!undrawable(galled).empty())
                        continue;
                    ++tried;
                    CAPTURE(textOf(galled));
                    const QImage once = drawn(galled);
                    CHECK(once != plain);
                    galled.galls.front().bodies = 3;
                    galled.galls.front().millimetres = 30;
                    CHECK(drawn(galled) != once);
                }
            for (int kind = 0; kind < 10; ++kind) {
                Depiction marked = sound;
                marked.blemishes = {{static_cast<Blemish>(kind), 0.5}};
                if (!undrawable(marked).empty())
                    continue;
                ++tried;
                CAPTURE(textOf(marked));
                CHECK(drawn(marked) != plain);
            }
        }
    CHECK(tried > 60);
}

TEST_CASE("the same leaves stand on the shoot with and without its gall", "[figures][described]")
{
    const Depiction sound = of(Subject::shoot, "castanea-sativa", Season::summer, 7);
    Depiction galled = sound;
    galled.galls = {{.site = GallSite::stipule, .millimetres = 8}};
    const QRectF before = figureExtent(sound), after = figureExtent(galled);
    CHECK(after.contains(before));
    CHECK(after.width() < 1.15 * before.width());
}

TEST_CASE("a figure that is to be small takes that share of its frame, with and without clutter", "[figures][described]")
{
    for (const double clutter : {0.0, 0.6}) {
        Depiction depiction = of(Subject::leaf, "castanea-sativa", Season::summer, 3);
        const QRectF alone = figureExtent(depiction);
        depiction.view.clutter = clutter;
        depiction.view.smallness = 0.75;
        const QRectF room = figureExtent(depiction);
        CAPTURE(clutter, room.height(), alone.height());
        CHECK(room.contains(alone));
        CHECK(room.height() > 3.7 * alone.height());
        CHECK(room.height() < 4.6 * alone.height());
    }
}

TEST_CASE("a crown wears as much of each state as is said", "[figures][described]")
{
    const auto green = [](const Depiction& depiction) {
        const QImage image = drawn(depiction);
        int count = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                count += qGreen(image.pixel(x, y)) > qRed(image.pixel(x, y)) + 12;
        return count;
    };
    for (std::uint32_t seed = 1; seed <= 4; ++seed) {
        Depiction tree = of(Subject::crown, "castanea-sativa", Season::summer, seed);
        const int full = green(tree);
        tree.tree.dieback = 0.25;
        const int some = green(tree);
        tree.tree.dieback = 0.7;
        const int most = green(tree);
        CAPTURE(seed, full, some, most);
        CHECK(some < 0.92 * full);
        CHECK(most < 0.75 * some);
        tree.tree.dieback = 0;
        tree.tree.browned = 0.4;
        CHECK(green(tree) < 0.92 * full);
    }
}
