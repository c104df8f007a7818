// Cases of the checks on position and photos.

#include <limits>

#include "tests/rules/scene.h"

namespace cupule::test {

namespace {

constexpr auto stop = Severity::stop, ask = Severity::ask, note = Severity::note;

/// A site from 200 m south to so many metres north of the scene's place, wide enough.
std::vector<LatLon> boundaryTo(double north)
{
    const double south = placeNorth(-200).latitude, top = placeNorth(north).latitude;
    return {{south, -2.36}, {south, -2.34}, {top, -2.34}, {top, -2.36}};
}

void movePhoto(Scene& scene, double metres)
{
    scene.withGall();
    scene.photos[1].position = placeNorth(metres);
}

void timePhoto(Scene& scene, const char* date, const char* time)
{
    scene.withGall();
    scene.photos[1].takenDate = day(date);
    scene.photos[1].takenTime = clock(time);
}

std::vector<CheckCase> positionCases()
{
    return {
        {"position.missing", ask,
         [](Scene& s) {
             s.visit.position.reset();
             s.tree.position.reset();
         },
         [](Scene& s) { s.visit.position.reset(); }},
        {"position.impossible", stop,
         [](Scene& s) { s.visit.position->latitude = std::numeric_limits<double>::quiet_NaN(); },
         [](Scene& s) { s.visit.position->latitude = 90; }},
        {"position.null-island", stop,
         [](Scene& s) {
             s.visit.position->latitude = 0;
             s.visit.position->longitude = 0;
         },
         [](Scene& s) {
             // A place on the Greenwich meridian is no null island.
             s.visit.position->longitude = 0;
         }},
        {"position.off-area", ask, [](Scene& s) { s.visit.position->longitude = 2.001; },
         [](Scene& s) { s.visit.position->longitude = 2; }},
        {"position.coarse", ask, [](Scene& s) { s.visit.position->uncertaintyMetres = 100.5; },
         [](Scene& s) { s.visit.position->uncertaintyMetres = 100; }},
        {"position.outside-site", ask,
         [](Scene& s) {
             s.site.name = "Tharn Wood";
             s.site.boundary = boundaryTo(-15);   // the visit is 20 m north of it and good to 7 m
         },
         [](Scene& s) { s.site.boundary = boundaryTo(-1); }},
        {"tree.moved", ask, [](Scene& s) { s.visit.position = placeNorth(52); },
         [](Scene& s) { s.visit.position = placeNorth(48); }},
    };
}

std::vector<CheckCase> photoCases()
{
    return {
        {"photo.used-twice", ask,
         [](Scene& s) { s.shared = {SharedPhoto{uidOf(10), "T-18", day("2026-06-10")}}; },
         [](Scene& s) { s.withGall(); }},
        {"photo.other-day", ask, [](Scene& s) { timePhoto(s, "2026-06-12", "10:10"); },
         [](Scene& s) {
             // Past midnight, and still within the hours.
             timePhoto(s, "2026-06-12", "00:40");
             s.visit.time = clock("23:50");
             s.visit.hygiene.leftSite.reset();
             s.photos[0].takenTime.reset();
             s.photos[2].takenTime.reset();
         }},
        {"photo.other-time", ask, [](Scene& s) { timePhoto(s, "2026-06-11", "13:11"); },
         [](Scene& s) { timePhoto(s, "2026-06-11", "13:10"); }},
        {"photo.undated", note,
         [](Scene& s) {
             s.withGall();
             s.photos[2].takenDate.reset();
         },
         [](Scene& s) {
             s.withGall();
             s.photos[2].takenTime.reset();
         }},
        // 250 m, and 7 m for each place.
        {"photo.other-place", ask, [](Scene& s) { movePhoto(s, 5 + 265); }, [](Scene& s) { movePhoto(s, 5 + 263); }},
    };
}

} // namespace

std::vector<CheckCase> placeCases()
{
    std::vector<CheckCase> all = positionCases();
    const auto photos = photoCases();
    all.insert(all.end(), photos.begin(), photos.end());
    return all;
}

} // namespace cupule::test
