#include "core/report/notice.h"

#include "core/report/html.h"
#include "tests/report/sample_facts.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::report;

namespace {

NoticeData find()
{
    NoticeData data;
    data.storeName = "Tharn Vale";
    data.made = *CivilDate::make(2026, 6, 13);
    data.madeBy = "FA, Fenn Aldous";
    data.visit.date = *CivilDate::make(2026, 6, 11);
    data.visit.effort.minutes = 12;
    data.visit.effort.crownPercent = 60;
    data.tree = "W-03";
    data.site = "Wick";
    Position place;
    place.typed = "SO 6434 5161";
    place.system = "OSGB";
    place.latitude = 52.161;
    place.longitude = -2.522;
    place.squareMetres = 10;
    place.uncertaintyMetres = 7.07;
    place.operation = "Inverse of British National Grid + OSGB36 to WGS 84 (6)";
    place.operationAccuracyMetres = 2;
    data.place = place;
    data.observer = "IC, Ines Corrie";
    data.state = RecordState::submitted;
    NoticeSign gall;
    gall.observation.sign = "S01";
    gall.observation.answer = Answer::seen;
    gall.observation.measure = 12.5;
    gall.observation.measureError = 0.4;
    gall.observation.count = 3;
    data.signs.push_back(gall);
    return data;
}

std::string page(const NoticeData& data)
{
    return toHtml(notice(data, test::samplePack(), Words()));
}

bool says(const NoticeData& data, const std::string& part)
{
    const std::string html = page(data);
    CAPTURE(html, part);
    return html.find(part) != std::string::npos;
}

} // namespace

// Elements of a pest record after ISPM 8 (FAO 1998, list from memory): date, place, host, what was seen, who, how, references.
TEST_CASE("a notice holds what a record of a find should hold", "[report][notice]")
{
    const NoticeData data = find();
    CHECK(says(data, "11 June 2026"));
    CHECK(says(data, "W-03, Wick"));
    CHECK(says(data, "SO 6434 5161"));
    CHECK(says(data, "52.16100 N, 2.52200 W, WGS 84, ± 13 m")); // the square and 5 m for the operation without a grid file
    CHECK(says(data, "the middle of a square of 10 m; Inverse of British National Grid + OSGB36 to WGS 84 (6), good to 2 m"));
    CHECK(says(data, "number: 3, 12.5 ± 0.4 mm"));
    CHECK(says(data, "IC, Ines Corrie"));
    CHECK(says(data, "12 minutes, 60 % of the crown"));
    CHECK(says(data, "handed in"));
    CHECK(says(data, "none in this store"));
}

TEST_CASE("what a record has not, a notice says", "[report][notice]")
{
    NoticeData data = find();
    data.place.reset();
    data.visit.effort = {};
    CHECK(says(data, "not recorded"));
    CHECK(says(data, "No sample was taken. Nobody has identified the organism formally."));
    CHECK(says(data, "The programme has not set whom to tell."));
    CHECK(says(data, "Nobody has noted that the authority was told."));
}

TEST_CASE("a report of the laboratory speaks of the material", "[report][notice]")
{
    NoticeData data = find();
    data.samples = {{"26-TV-0147-H", SampleState::received, {}, {}}};
    CHECK(says(data, "No laboratory has reported yet"));
    data.samples.front().reportNumber = "R-77";
    data.samples.front().finding = "larvae found";
    CHECK(says(data, "R-77"));
    CHECK(says(data, "never of the tree or the site"));
}

TEST_CASE("what one of two decided stays veiled", "[report][notice]")
{
    NoticeData data = find();
    CHECK_FALSE(says(data, "One of two verifiers"));
    data.oneOfTwo = true;
    CHECK(says(data, "One of two verifiers has decided"));
}

TEST_CASE("a notice leaves status and measures to the authority, and never says that it was sent", "[report][notice]")
{
    NoticeData data = find();
    CHECK(says(data, "the authority alone decides"));
    CHECK(says(data, "This paper tells nobody by itself"));
    CHECK(says(data, "never for publication"));
    CHECK(says(data, "names: for the plant-health authority alone"));
    data.names = false;
    CHECK_FALSE(says(data, "names: for the plant-health authority alone"));
    data.told = Told{{}, Instant{}, "FA", "plant health, Tharn", "PH-12"};
    CHECK(says(data, "plant health, Tharn"));
    CHECK(says(data, "PH-12"));
    CHECK_FALSE(says(data, "Nobody has noted"));
    CHECK_FALSE(says(data, "Demonstration"));
    data.demonstration = true;
    CHECK(says(data, "every person, place and find on this paper is invented"));
}
