#include "core/task/sight.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/task/queue.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

struct Shown {
    Vale vale;
    std::unique_ptr<Session> mary = vale.as("MH"), v1 = vale.as("V1");
    Tree tree = treeAt(*mary, "W03", "SO 61234 09412", "Weir Wood");
    Visit visit = handedIn(*mary, tree, [this](Session& session, Visit begun) {
        begun.note = "by the house of the Pennards";
        begun.position = placeAt(session, "SO 61238 09415");
        return withGall(session, begun);
    });
};

} // namespace

TEST_CASE("an exact place becomes the square that new ground goes by", "[task][sight]")
{
    Shown shown;
    const Position coarse = coarsePosition(*shown.v1, *shown.tree.position);
    CHECK(coarse.typed == "SO60");
    CHECK(coarse.squareMetres == 10'000);
    CHECK(coarse.uncertaintyMetres == Approx(7071).epsilon(0.001));
    CHECK(coarse.easting == 365'000.0);
    CHECK(coarse.northing == 205'000.0);
    Position far;   // no grid reaches it
    far.latitude = 88.888888;
    far.longitude = 12.345678;
    const Position rounded = coarsePosition(*shown.v1, far);
    CHECK(rounded.latitude == Approx(88.9));
    CHECK(rounded.typed.empty());
    CHECK(rounded.uncertaintyMetres > 5000);
}

TEST_CASE("the region's records are whole for verifiers and the office, squares and codes for others", "[task][sight]")
{
    Shown shown;
    const ReviewPage whole = reviewPage(*shown.v1, shown.visit.id).value();
    CHECK(whole.whole);
    CHECK(whole.visit.observer.name == "Mary Hill");
    CHECK(whole.at == shown.tree.position);
    CHECK(reviewPage(*shown.vale.as("OF"), shown.visit.id).value().whole);

    const ReviewPage part = reviewPage(*shown.vale.as("JB"), shown.visit.id).value();
    CHECK_FALSE(part.whole);
    CHECK(part.visit.observer.name.empty());
    CHECK(part.visit.observer.code == "MH");
    CHECK(part.visit.visit.note.empty());
    REQUIRE(part.at);
    CHECK(part.at->typed == "SO60");
    CHECK(part.visit.tree->position->typed == "SO60");
    CHECK(part.visit.site->name.empty());
    CHECK(queueLines(*shown.vale.as("JB"), 0, 1).value().front().line.siteName.empty());
    CHECK(findInQueue(*shown.vale.as("JB"), {.words = "Mary"}).value().visits.empty());
    CHECK(findInQueue(*shown.v1, {.words = "Mary"}).value().visits.size() == 1);
    // their own work stays whole
    CHECK(visitPage(*shown.mary, shown.visit.id).value().visit.position->typed == "SO 61238 09415");
}

TEST_CASE("the hidden mode leaves neither exact places nor names on any page, and nothing can be written", "[task][sight]")
{
    Shown shown;
    Session& session = *shown.v1;
    session.setHidden(true);
    std::string all;
    const VisitPage page = visitPage(session, shown.visit.id).value();
    all += toJson(page.visit) + toJson(*page.tree) + toJson(*page.site) + page.observer.name;
    for (const PhotoNote& photo : page.photos)
        all += photo.originalName;
    const TreePage tree = treePage(session, shown.tree.id).value();
    all += toJson(tree.tree) + toJson(*tree.site);
    for (const TreePlace& place : tree.places)
        all += place.position.typed;
    for (const TreeLine& line : std::vector<TreeLine>(treeLines(session, {}, 0, 10).value()))
        all += line.position + line.siteName;
    const Surroundings around = surroundingsOf(session, {.tree = shown.tree.id}).value();
    all += around.place->typed + around.site->name;
    CHECK(around.visits.empty());
    CHECK(around.neighbours.empty());
    for (const Site& site : std::vector<Site>(allSites(session).value()))
        all += site.name;
    for (const Person& person : std::vector<Person>(allPeople(session).value()))
        all += person.name + person.contact;
    for (const VisitLine& line : std::vector<VisitLine>(visitsOfDay(session, shown.visit.date, {}).value()))
        all += line.siteName;
    for (const TreeHit& hit : std::vector<TreeHit>(findTrees(session, "W03", {}, {}, 5).value()))
        all += toJson(hit.tree) + hit.siteName;
    const ReviewPage review = reviewPage(session, shown.visit.id).value();
    all += toJson(review.visit.visit) + review.at->typed;
    for (const char* secret : {"61234", "61238", "0941", "Weir", "Mary Hill", "Pennard", "IMG_"}) {
        CAPTURE(secret);
        CHECK(all.find(secret) == std::string::npos);
    }
    CHECK(all.find("SO60") != std::string::npos);
    CHECK_FALSE(page.mayEdit);
    CHECK(faultOf(decide(session, decision(session, shown.visit.id, Outcome::accept))) == "session.hidden");
    CHECK(faultOf(newTree(session, "W99", {}, {})) == "session.hidden");

    session.setHidden(false);
    CHECK(reviewPage(session, shown.visit.id).value().visit.observer.name == "Mary Hill");
    CHECK(decide(session, decision(session, shown.visit.id, Outcome::accept)));
}
