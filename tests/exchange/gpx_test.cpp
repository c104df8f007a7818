#include "core/exchange/gpx/reader.h"

#include "tests/exchange/outside.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

std::string gpx(const std::string& inside)
{
    return "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n" + inside + "</gpx>\n";
}

GpxFile good(const std::string& document)
{
    const auto file = readGpxText(document, "day.gpx");
    if (!file)
        FAIL(file.error().code << " " << file.error().argument("what"));
    return *file;
}

Fault faultOf(const std::string& document)
{
    const auto file = readGpxText(document, "day.gpx");
    REQUIRE_FALSE(file);
    return file.error();
}

std::vector<std::string> kinds(const GpxFile& file)
{
    std::vector<std::string> out;
    for (const auto& problem : file.problems)
        out.push_back(problem.kind);
    return out;
}

} // namespace

TEST_CASE("Waypoints, route points and track points are read with their lines", "[gpx]")
{
    // GPX 1.1 schema, topografix.com/GPX/1/1: wptType, rteType, trkType.
    const auto file = good(gpx("<wpt lat=\"44.2011\" lon=\"10.4322\">\n<ele>812.5</ele><time>2024-05-02T10:15:00Z</time>"
                               "<name> T-101 </name><cmt>by &amp; by</cmt><desc><![CDATA[<old> tree]]></desc></wpt>\n"
                               "<rte><name>R</name><rtept lat='1' lon='-2'/></rte>\n"
                               "<trk><name>K</name><trkseg><trkpt lat='-3' lon='4'/></trkseg><trkseg>\n"
                               "<trkpt lat='5' lon='6'><ele/></trkpt></trkseg></trk>"));
    REQUIRE(file.points.size() == 4);
    const auto& first = file.points[0];
    CHECK(first.kind == GpxPoint::Kind::waypoint);
    CHECK(first.latitude == Approx(44.2011).margin(1e-12));
    CHECK(first.elevationMetres == 812.5);
    CHECK(first.name == "T-101");
    CHECK(first.comment == "by & by");
    CHECK(first.description == "<old> tree");
    CHECK(first.time.kind == GpxTime::Kind::instant);
    CHECK(instantText(first.time.instant) == "2024-05-02T10:15:00Z");
    CHECK(first.line == 3);
    CHECK(file.points[1].groupName == "R");
    CHECK(file.points[1].longitude == -2);
    CHECK(file.points[1].line == 5);
    CHECK(file.points[2].groupName == "K");
    CHECK(file.points[3].line == 7);
    CHECK_FALSE(file.points[3].elevationMetres);
    CHECK(file.points[3].number == 4);
    CHECK(file.waypoints == 1);
    CHECK(file.routes == 1);
    CHECK(file.tracks == 1);
    CHECK(file.trackPoints == 2);
    CHECK(file.problems.empty());
}

TEST_CASE("GPX with a prefix is GPX, and strangers' elements are not", "[gpx]")
{
    const auto file = good("<g:gpx xmlns:g='http://www.topografix.com/GPX/1/0' version='1.0'><g:wpt lat='1' lon='2'>"
                           "<g:name>A</g:name><x:name>B</x:name></g:wpt><x:wpt lat='3' lon='4'/></g:gpx>");
    REQUIRE(file.points.size() == 1);
    CHECK(file.points[0].name == "A");
    CHECK(file.version == "1.0");
}

TEST_CASE("Coordinates that cannot be are problems and never 0,0", "[gpx]")
{
    const auto [attributes, expected] = GENERATE(table<std::string, std::string>({
        {"lat='undefined' lon='undefined'", "unreadable-position"},
        {"lon='2'", "unreadable-position"},
        {"", "unreadable-position"},
        {"lat='44,2' lon='10.4'", "unreadable-position"},
        {"lat='NaN' lon='10.4'", "unreadable-position"},
        {"lat='1e400' lon='10.4'", "unreadable-position"},
        {"lat='-123.09' lon='49.23'", "swapped-coordinates"},
        {"lat='95' lon='200'", "position-out-of-range"},
        {"lat='0' lon='0.0'", "null-island"},
    }));
    CAPTURE(attributes);
    const auto file = good(gpx("<wpt " + attributes + "><name>T</name></wpt><wpt lat='1' lon='2'/>"));
    CHECK(kinds(file) == std::vector<std::string>{expected});
    CHECK(file.problems[0].row == 1);
    CHECK(file.problems[0].line == 3);
    CHECK_FALSE(file.problems[0].keeps);
    CHECK(file.waypoints == 2);
    REQUIRE(file.points.size() == 1);
    CHECK(file.points[0].number == 2);
}

TEST_CASE("Times keep what they say and invent no zone", "[gpx]")
{
    // XML Schema 1.1 part 2, 3.3.7 dateTime: the zone is optional and its absence is not UTC.
    const auto one = [](const std::string& time) { return good(gpx("<wpt lat='1' lon='2'><time>" + time + "</time></wpt>")); };
    const auto zoned = one("2024-05-02T12:15:00+02:00");
    CHECK(instantText(zoned.points[0].time.instant) == "2024-05-02T12:15:00+02:00");
    CHECK(zoned.points[0].time.date == CivilDate::make(2024, 5, 2));
    const auto local = one("2024-05-02T10:15:00");
    CHECK(local.points[0].time.kind == GpxTime::Kind::localOnly);
    CHECK(local.points[0].time.date == CivilDate::make(2024, 5, 2));
    CHECK(local.points[0].time.time->text() == "10:15");
    CHECK(kinds(local) == std::vector<std::string>{"local-time"});
    const auto day = one("2024-05-02");
    CHECK(day.points[0].time.kind == GpxTime::Kind::localOnly);
    CHECK_FALSE(day.points[0].time.time);
    CHECK(one("2011-07-02T17:47:25.2Z").points[0].time.instant.utcMilliseconds % 1000 == 200);
    CHECK(kinds(one("2024-02-30T10:15:00Z")) == std::vector<std::string>{"impossible_date"});
    CHECK(kinds(one("yesterday")) == std::vector<std::string>{"unreadable-time"});
    CHECK(kinds(one("1234-12-12T08:00:00Z")) == std::vector<std::string>{"absurd-date"});
    CHECK(one("yesterday").points.size() == 1);
    CHECK(one("").points[0].time.kind == GpxTime::Kind::none);
    CHECK(kinds(one("")).empty());
}

TEST_CASE("An entity that nobody declared is a fault with line and name, and the good points are offered", "[gpx]")
{
    // XML 1.0, 4.1, well-formedness constraint "Entity Declared".
    const auto document = gpx("<wpt lat='1' lon='2'><name>A</name></wpt>\n<wpt lat='3' lon='4'><name>Casta&ntilde;o</name></wpt>\n"
                              "<wpt lat='5' lon='6'><name>C&#241;</name></wpt>\n");
    const auto fault = faultOf(document);
    CHECK(fault.code == "gpx.malformed");
    CHECK(fault.place.file == "day.gpx");
    CHECK(fault.place.line == 4);
    CHECK(fault.argument("entity") == "ntilde");
    CHECK(fault.argument("points") == "2");
    GpxOptions options;
    options.goodPointsOnly = true;
    const auto file = readGpxText(document, "day.gpx", options);
    REQUIRE(file);
    CHECK(file->points.size() == 2);
    CHECK(file->points[1].name == "Cñ");
    CHECK(file->damage->code == "gpx.malformed");
    CHECK(kinds(*file) == std::vector<std::string>{"damaged-point"});
    CHECK(file->problems[0].line == 4);
}

TEST_CASE("A document cut short is a fault, and the points before the cut can be read", "[gpx]")
{
    const auto document = gpx("<wpt lat='1' lon='2'><name>A</name></wpt>\n<wpt lat='3' lon='4'><name>B</name></wpt>\n");
    const auto secondEnds = document.rfind("</wpt>");
    for (std::size_t length = document.find("<gpx") + 80; length < document.rfind("</gpx>"); ++length) {
        CAPTURE(length);
        const auto cut = document.substr(0, length);
        const auto fault = faultOf(cut);
        CHECK(fault.code == "gpx.malformed");
        CHECK(fault.place.line >= 2);
        const auto firstEnds = document.find("</wpt>");
        const char* expected = length > secondEnds + 5 ? "2" : length > firstEnds + 5 ? "1" : "0";
        CHECK(fault.argument("points") == expected);
    }
}

TEST_CASE("Hostile documents are refused by name", "[gpx]")
{
    // The "billion laughs" and external entities: CWE-776 and CWE-611.
    const auto laughs = faultOf("<?xml version='1.0'?><!DOCTYPE lolz [<!ENTITY lol 'lol'><!ENTITY lol2 '&lol;&lol;'>]>"
                                "<gpx><wpt lat='1' lon='2'><name>&lol2;</name></wpt></gpx>");
    CHECK(laughs.argument("entity") == "lol2");
    const auto outside = faultOf("<!DOCTYPE gpx [<!ENTITY x SYSTEM 'file:///etc/passwd'>]><gpx><wpt lat='1' lon='2'>"
                                 "<name>&x;</name></wpt></gpx>");
    CHECK(outside.argument("entity") == "x");
    std::string deep;
    for (int i = 0; i < 100'000; ++i)
        deep += "<a>";
    CHECK(faultOf(gpx(deep)).code == "gpx.deep");
    using namespace std::string_literals;
    CHECK(faultOf(gpx("<wpt lat='1' lon='2'><name>a\0b</name></wpt>"s)).argument("what") == "control-character");
    CHECK(faultOf("<html></html>").code == "gpx.not-gpx");
    CHECK(faultOf("").code == "gpx.malformed");
    CHECK(faultOf("no markup at all").code == "gpx.malformed");
    CHECK(faultOf("<?xml version='1.0' encoding='x-no-such'?><gpx/>").code == "gpx.encoding");
    CHECK(good("<!DOCTYPE gpx [<!ENTITY unused 'x'> <!-- ]> -->]><gpx><wpt lat='1' lon='2'/></gpx>").points.size() == 1);
}

TEST_CASE("Comments, character data and quotes hide no markup and no entity", "[gpx]")
{
    const auto file = good(gpx("<!-- <wpt lat='9' lon='9'/> &nope; --><wpt lat=\"1\" lon='2' x='a>b'>"
                               "<name><![CDATA[&nope; </wpt>]]></name></wpt>"));
    REQUIRE(file.points.size() == 1);
    CHECK(file.points[0].name == "&nope; </wpt>");
}

TEST_CASE("Declared encodings are honoured and undeclared bytes are told", "[gpx]")
{
    const std::string inside = "<gpx><wpt lat='1' lon='2'><name>Casta\xF1o</name></wpt></gpx>";
    CHECK(good("<?xml version='1.0' encoding='ISO-8859-1'?>" + inside).points[0].name == "Castaño");
    const auto undeclared = good("<?xml version='1.0' encoding='UTF-8'?>" + inside);
    CHECK(undeclared.points[0].name == "Castaño");
    CHECK(kinds(undeclared) == std::vector<std::string>{"bad-encoding"});
    using namespace std::string_literals;
    std::string sixteen = "\xFF\xFE";
    for (const char c : "<gpx><wpt lat='1' lon='2'/></gpx>"s)
        sixteen += {c, '\0'};
    CHECK(good(sixteen).points.size() == 1);
}

TEST_CASE("A file is read by its path, up to the limit", "[gpx]")
{
    const auto path = test::writtenFile("one.gpx", gpx("<wpt lat='1' lon='2'/>"));
    CHECK(readGpx(path)->points.size() == 1);
    GpxOptions options;
    options.limitBytes = 10;
    CHECK(readGpx(path, options).error().code == "file.large");
    CHECK(readGpx(path + ".not").error().code == "file.open");
}
