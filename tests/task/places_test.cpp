// What lies around a tree, and where the position of a visit may be taken from.

#include "core/task/place_offers.h"
#include "core/task/surroundings.h"

#include <fstream>

#include "core/position/geodesic.h"
#include "core/task/photos.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

std::string gpxFile(const std::string& points)
{
    const std::string path = temporaryFolder() + "/points.gpx";
    std::ofstream(path) << "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"invented\" "
                           "xmlns=\"http://www.topografix.com/GPX/1/1\">"
                        << points << "</gpx>";
    return path;
}

std::string point(const char* name, double latitude, const char* time)
{
    std::string text = "<wpt lat=\"" + std::to_string(latitude) + "\" lon=\"-2.56\">";
    if (*time != 0)
        text += std::string("<time>") + time + "</time>";
    return text + "<name>" + name + "</name></wpt>";
}

/// A photo of the visit that knows where it was taken.
PhotoNote placedPhoto(Session& session, const Visit& visit, const std::string& reference, LocalTime time)
{
    PhotoNote photo = photoOf(session, visit, {});
    photo.position = placeAt(session, reference);
    photo.position->obtained = "photo";
    photo.takenDate = visit.date;
    photo.takenTime = time;
    done(changePhoto(session, photo, "test"));
    return photo;
}

} // namespace

TEST_CASE("a tree has its neighbours, nearest first, its visits in time, and its photos", "[task][places]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 6120 0940", "Weir Wood");
    const Tree near = treeAt(*mary, "W04", "SO 6123 0940", "Weir Wood");
    const Tree next = treeAt(*mary, "W01", "SO 6120 0950", "Weir Wood");
    treeAt(*mary, "F01", "SO 6220 0940", "Far Wood"); // 1 km away
    const auto visit = [&](int day_, const char* reference) {
        return visitTo(*mary, tree, [&](Session& session, Visit filled) {
            filled = withNothing(session, filled);
            filled.date = day(2026, 6, day_);
            filled.position.reset();
            if (reference != nullptr)
                filled.position = placeAt(session, reference);
            return filled;
        });
    };
    const Visit late = visit(9, "SO 6121 0941"), early = visit(2, "SO 6119 0940");
    visit(5, nullptr);
    const PhotoNote photo = placedPhoto(*mary, late, "SO 6122 0942", {36'000});

    const auto around = surroundingsOf(*mary, {.tree = tree.id});
    REQUIRE(around);
    CHECK(around->label == "W03");
    REQUIRE(around->site);
    CHECK(around->site->name == "Weir Wood");
    CHECK(around->place == tree.position);
    REQUIRE(around->neighbours.size() == 2);
    CHECK(around->neighbours[0].tree == near.id);
    CHECK(around->neighbours[1].tree == next.id);
    REQUIRE(around->visits.size() == 2);
    CHECK(around->visits[0].visit == early.id);
    CHECK(around->visits[1].visit == late.id);
    CHECK(around->visits[1].position == *late.position);
    REQUIRE(around->photos.size() == 1);
    CHECK(around->photos[0].photo == photo.id);
    CHECK(surroundingsOf(*mary, {.tree = tree.id, .visit = early.id})->photos.empty());
    CHECK(surroundingsOf(*mary, {.tree = tree.id, .visit = late.id})->photos.size() == 1);
}

TEST_CASE("without a place the trees of the site stand around, without a site none", "[task][places]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree placed = treeAt(*mary, "W03", "SO 6120 0940", "Weir Wood");
    const Tree other = newTree(*mary, "W09", placed.site, {}).value();
    const auto around = surroundingsOf(*mary, {.tree = other.id});
    REQUIRE(around);
    CHECK_FALSE(around->place);
    REQUIRE(around->neighbours.size() == 1);
    CHECK(around->neighbours[0].tree == placed.id);
    CHECK(surroundingsOf(*mary, {.site = placed.site})->neighbours.size() == 1);
    CHECK(surroundingsOf(*mary, {.here = placeAt(*mary, "SO 6121 0941")})->neighbours.size() == 1);
    CHECK(surroundingsOf(*mary, {})->neighbours.empty());
}

TEST_CASE("a visit may take its position from its tree and its photos", "[task][places]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 6120 0940", "Weir Wood");
    const Visit visit = visitTo(*mary, tree, [](Session& session, Visit filled) { return withNothing(session, filled); });
    placedPhoto(*mary, visit, "SO 6122 0942", {40'000});
    placedPhoto(*mary, visit, "SO 6121 0942", {36'000});
    photoOf(*mary, visit, {}); // knows no place: not offered
    const auto offers = placeOffers(*mary, visit.id);
    REQUIRE(offers);
    REQUIRE(offers->size() == 3);
    CHECK(offers->at(0).from == PlaceOffer::From::tree);
    CHECK(offers->at(0).name == "W03");
    CHECK(offers->at(0).position.obtained == "tree");
    CHECK(offers->at(0).position.typed == tree.position->typed);
    CHECK(offers->at(1).from == PlaceOffer::From::photo);
    CHECK(offers->at(1).time == LocalTime{36'000});
    CHECK(offers->at(1).position.obtained == "photo");
    CHECK(offers->at(2).time == LocalTime{40'000});
}

TEST_CASE("of a receiver's points those of the tree come first, then those nearest in time", "[task][places]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 6120 0940", "Weir Wood");
    const Visit visit = visitTo(*mary, tree, [](Session& session, Visit filled) {
        filled = withNothing(session, filled);
        filled.time = LocalTime{11 * 3600 + 27 * 60};
        return filled;
    });
    // the store stands in Europe/London: 10:20Z in June is 11.20 there (IANA zone data)
    const std::string path = gpxFile(point("A", 51.1, "2026-06-11T08:00:00Z") + point("B", 51.2, "2026-06-11T10:20:00Z") +
                                     point("C", 51.3, "2026-06-10T10:27:00Z") + point("", 51.4, "") +
                                     point(" w03 ", 51.5, "2026-06-11T06:00:00Z") + point("D", 51.6, "2026-06-11T10:30:00Z"));
    const auto offers = pointOffers(*mary, path, visit.id);
    REQUIRE(offers);
    std::string order;
    for (const PlaceOffer& offer : *offers)
        order += offer.name + "|";
    CHECK(order == "w03|D|B|A|C||");
    CHECK(offers->at(2).time == LocalTime{11 * 3600 + 20 * 60});
    CHECK_FALSE(offers->at(4).time); // of another day
    CHECK(offers->at(0).position.latitude == 51.5);
    CHECK(offers->at(0).position.obtained == "device");
    CHECK(offers->at(0).position.uncertaintyMetres > 0);
    CHECK(faultOf(pointOffers(*mary, path + "x", visit.id)).substr(0, 5) == "file.");
    std::string many;
    for (int i = 0; i < 300; ++i)
        many += point("M", 51.0 + i / 1e4, "");
    CHECK(pointOffers(*mary, gpxFile(many), visit.id)->size() == mostPointOffers);
}
