// Sorting photos: the camera's clock, which visit they belong to, and pictures that are likely one.

#include <random>
#include <vector>

#include "core/rules/photo_clock.h"
#include "core/rules/photo_likeness.h"
#include "core/rules/photo_match.h"
#include "tests/rules/fixtures.h"
#include "tests/support/catch.h"

using namespace cupule;
using test::clock;
using test::day;
using test::uidOf;

namespace {

PhotoNote photoAt(const char* date, const char* time)
{
    PhotoNote photo;
    photo.takenDate = day(date);
    photo.takenTime = clock(time);
    return photo;
}

Position place(double latitude, double longitude)
{
    Position position;
    position.latitude = latitude;
    position.longitude = longitude;
    return position;
}

MatchVisit visitAt(int number, const char* time, std::optional<Position> where = {})
{
    return {uidOf(number), day("2026-06-11"), time == nullptr ? std::nullopt : std::optional(clock(time)), where};
}

} // namespace

TEST_CASE("the clock's offset is the median, with its spread", "[rules][photo]")
{
    CHECK_FALSE(clockOffset({}));
    const std::vector<double> two{100, 110};
    CHECK(clockOffset(two)->secondsAhead == 105);
    CHECK_FALSE(clockOffset(two)->spreadSeconds);
    const std::vector<double> five{118, 120, 121, 119, 9000};   // one stale fix
    const auto offset = clockOffset(five);
    CHECK(offset->secondsAhead == 120);
    CHECK(*offset->spreadSeconds == Approx(1.4826));
    CHECK(offset->photos == 5);
}

TEST_CASE("just under half of the photos may be wrong, and the spread is that of the good ones", "[rules][photo]")
{
    std::mt19937 dice(7);
    std::normal_distribution<double> good(-3600, 4);
    std::uniform_real_distribution<double> wild(20000, 90000);
    std::vector<double> ahead;
    for (int i = 0; i < 400; ++i)
        ahead.push_back(good(dice));
    CHECK(clockOffset(ahead)->secondsAhead == Approx(-3600).margin(1));
    CHECK(*clockOffset(ahead)->spreadSeconds == Approx(4).margin(0.8));   // 1.4826 makes it a standard deviation
    for (int i = 0; i < 390; ++i)
        ahead.push_back(wild(dice));
    CHECK(clockOffset(ahead)->secondsAhead == Approx(-3600).margin(16));   // still within the good ones
}

TEST_CASE("photos with a GPS time and photos with a visit give the offset", "[rules][photo]")
{
    std::vector<PhotoNote> photos(3);
    photos[0].clockAheadSeconds = 61;
    photos[2].clockAheadSeconds = 59;
    CHECK(clockOffsetFromGps(photos)->secondsAhead == 60);
    CHECK(clockOffsetFromGps(photos)->photos == 2);
    CHECK_FALSE(clockOffsetFromGps({}));
    Visit visit;
    visit.date = day("2026-06-11");
    CHECK_FALSE(secondsAfterVisit(photoAt("2026-06-11", "10:00"), visit));
    visit.time = clock("23:58");
    CHECK(*secondsAfterVisit(photoAt("2026-06-12", "00:03"), visit) == 300);
    CHECK_FALSE(secondsAfterVisit(PhotoNote{}, visit));
}

TEST_CASE("a corrected time may change the day", "[rules][photo]")
{
    const auto before = correctedTime(photoAt("2026-06-12", "00:10"), 1200);
    CHECK(before->date == day("2026-06-11"));
    CHECK(before->time == clock("23:50"));
    const auto after = correctedTime(photoAt("2026-06-11", "23:50"), -1200);
    CHECK(after->date == day("2026-06-12"));
    CHECK(after->time == clock("0:10"));
    CHECK(correctedTime(photoAt("1970-01-01", "00:00"), 1)->date == day("1969-12-31"));
    CHECK_FALSE(correctedTime(PhotoNote{}, 0));
    CHECK_FALSE(correctedTime(photoAt("2026-06-11", "10:00"), 1e300));
}

TEST_CASE("a visit is proposed for its place or time, the better fit first", "[rules][photo]")
{
    const Settings settings;   // 250 m, 180 min
    const Position here = place(51.78, -2.56), near = place(51.7805, -2.56), far = place(51.80, -2.56);
    const std::vector<MatchVisit> visits{visitAt(1, "09:00", far), visitAt(2, "10:00", near), visitAt(3, "10:30", here),
                                         visitAt(4, nullptr)};
    PhotoNote photo = photoAt("2026-06-11", "10:28");
    photo.position = here;

    const auto byPlace = matchVisits(photo, visits, {}, settings);   // no zone: the time says nothing
    REQUIRE(byPlace.size() == 2);
    CHECK(byPlace[0].visit == uidOf(3));
    CHECK(*byPlace[0].metres == Approx(0).margin(0.01));
    CHECK_FALSE(byPlace[0].minutes);
    CHECK(*byPlace[1].metres == Approx(55.6).margin(0.2));
    CHECK(*byPlace[1].limitMetres == 250 + byPlace[1].visitReachMetres + byPlace[1].photoReachMetres);
    photo.notWith = {uidOf(3)};
    REQUIRE(matchVisits(photo, visits, {}, settings).size() == 1);
    CHECK(matchVisits(photo, visits, {}, settings)[0].visit == uidOf(2));
    photo.notWith.clear();

    const auto both = matchVisits(photo, visits, 0.0, settings);
    REQUIRE(both.size() == 2);
    CHECK(*both[0].minutes == Approx(-2));

    photo.position.reset();
    const auto byTime = matchVisits(photo, visits, 1800.0, settings);   // half an hour ahead: 9:58
    REQUIRE(byTime.size() == 3);
    CHECK(byTime[0].visit == uidOf(2));
    CHECK(*byTime[0].minutes == Approx(-2));
    CHECK_FALSE(byTime[0].metres);
    CHECK(matchVisits(photo, visits, {}, settings).empty());
    CHECK(matchVisits(photo, visits, 86400.0, settings).empty());   // a day ahead: another day
    CHECK(matchVisits(PhotoNote{}, visits, 0.0, settings).empty());
}

TEST_CASE("the limit of time counts, to the minute", "[rules][photo]")
{
    const Settings settings;
    const std::vector<MatchVisit> visits{visitAt(1, "12:00")};
    CHECK(matchVisits(photoAt("2026-06-11", "15:00"), visits, 0.0, settings).size() == 1);
    CHECK(matchVisits(photoAt("2026-06-11", "15:01"), visits, 0.0, settings).empty());
}

TEST_CASE("two moments are two pictures; a picture without one may be a copy of any", "[rules][photo]")
{
    CHECK(takenApart(photoAt("2026-06-11", "10:15"), photoAt("2026-06-11", "10:16")));
    CHECK(takenApart(photoAt("2026-06-11", "10:15"), photoAt("2026-06-12", "10:15")));
    CHECK_FALSE(takenApart(photoAt("2026-06-11", "10:15"), photoAt("2026-06-11", "10:15")));
    CHECK_FALSE(takenApart(photoAt("2026-06-11", "10:15"), PhotoNote{}));
    CHECK_FALSE(takenApart(PhotoNote{}, PhotoNote{}));
}

TEST_CASE("the difference hash as defined", "[rules][photo]")
{
    // N. Krawetz 2013 (from memory); the values worked out independently for these pictures
    SmallGrey formula{}, rising{}, falling{}, flat{};
    for (std::size_t row = 0; row < 8; ++row)
        for (std::size_t column = 0; column < 9; ++column) {
            const std::size_t at = row * 9 + column;
            formula[at] = static_cast<std::uint8_t>((31 * row + 17 * column) % 256);
            rising[at] = static_cast<std::uint8_t>(10 * column);
            falling[at] = static_cast<std::uint8_t>(200 - 10 * column);
            flat[at] = 100;
        }
    CHECK(differenceHash(formula) == 0xfffffffffefbf7dfULL);
    CHECK(differenceHash(rising) == 0xffffffffffffffffULL);
    CHECK(differenceHash(falling) == 0);
    CHECK(differenceHash(flat) == 0);
    CHECK(bitsApart(differenceHash(formula), differenceHash(rising)) == 4);
    CHECK(bitsApart(0, ~std::uint64_t{0}) == 64);
    CHECK(likenessOf(rising) == differenceHash(rising));
    CHECK_FALSE(likenessOf(flat));
    for (std::size_t at = 0; at < flat.size(); ++at)
        flat[at] = static_cast<std::uint8_t>(100 + (at % 2) * 7);
    CHECK_FALSE(likenessOf(flat));
    flat[0] = 108;
    CHECK(likenessOf(flat));
}
