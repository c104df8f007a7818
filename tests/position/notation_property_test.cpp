// Properties that hold for every text: no crash, one result, and no dependence on spacing.
#include "core/position/notation.h"

#include <cmath>
#include <string>
#include <vector>

#include "core/base/random.h"
#include "core/base/text.h"
#include "tests/support/catch.h"
#include "tests/support/reference_rows.h"

using namespace cupule;

namespace {

const std::vector<std::string>& seeds()
{
    static const std::vector<std::string> texts = [] {
        std::vector<std::string> all{"SO 612 094",
                                     "SO61E",
                                     "O 15904 34671",
                                     "30UWC3018136693",
                                     "51.7803, -2.5625",
                                     "51°46′49.08″N 2°33′45.00″W",
                                     "+514649.08-0023345/",
                                     "361200 209400",
                                     "geo:51.7803,-2.5625;u=5",
                                     "51,7803; -2,5625",
                                     "12-Sep",
                                     "lat 51.7803 lon -2.5625"};
        for (const auto& row : test::referenceRows("reference/geo/gridref_cases.csv"))
            all.push_back(row.at("input"));
        return all;
    }();
    return texts;
}

std::string mutated(std::string text, SeededRandom& random)
{
    const std::string spice = "0123456789NSEWOIabxz.,;:-+/'\" \t\xC2\xB0\xE2\x80\xB2#*()";
    for (std::uint64_t n = random.below(6); n > 0; --n) {
        const std::size_t at = text.empty() ? 0 : random.below(text.size());
        const char c =
            random.below(4) == 0 ? static_cast<char>(random.below(256)) : spice[random.below(spice.size())];
        switch (random.below(4)) {
        case 0:
            text.insert(at, 1, c);
            break;
        case 1:
            if (!text.empty())
                text[at] = c;
            break;
        case 2:
            if (!text.empty())
                text.erase(at, 1 + random.below(3));
            break;
        default:
            text += seeds()[random.below(seeds().size())];
            break;
        }
    }
    return text;
}

/// What every answer must satisfy.
bool isSound(const Result<ParsedPosition>& parsed)
{
    if (!parsed)
        return !positionErrorKind(parsed.error()).empty() && isUtf8(parsed.error().argument("value"));
    const bool finite = std::isfinite(parsed->centreEasting()) && std::isfinite(parsed->centreNorthing()) &&
                        std::isfinite(parsed->uncertaintyMetres);
    const bool inRange = std::abs(parsed->latitude) <= 90 && std::abs(parsed->longitude) <= 180 &&
                         parsed->squareMetres >= 0 && parsed->squareMetres <= 100'000;
    return finite && inRange && parsed->uncertaintyMetres >= parsed->squareMetres * 0.7;
}

} // namespace

TEST_CASE("mutated notations give a sound place or a named fault", "[position][notation][property]")
{
    SeededRandom random(20261124);
    const char* systems[] = {"", "OSGB", "IG", "ITM", "UTM30N", "MGRS", "WGS84", "OGC:CRS84"};
    std::vector<std::string> unsound; // one assertion for all: sixty thousand take longer than the reading
    for (int i = 0; i < 60'000; ++i) {
        PositionOptions options;
        options.system = systems[random.below(8)];
        const char decimals[] = {0, '.', ','};
        options.decimal = decimals[random.below(3)];
        const std::string text = mutated(seeds()[random.below(seeds().size())], random);
        if (!isSound(parsePosition(text, options)))
            unsound.push_back(options.system + ": " + text);
    }
    CHECK(unsound == std::vector<std::string>{});
}

TEST_CASE("random bytes give a sound place or a named fault", "[position][notation][property]")
{
    SeededRandom random(7);
    for (int i = 0; i < 20'000; ++i) {
        std::string text(random.below(200), '\0');
        random.fill({reinterpret_cast<std::uint8_t*>(text.data()), text.size()});
        const bool sound = isSound(parsePosition(text));
        if (!sound) {
            CAPTURE(text);
            CHECK(sound);
        }
    }
    CHECK(isSound(parsePosition(std::string(1'000'000, '5'))));
    CHECK(isSound(parsePosition(std::string(1'000'000, ' '))));
    CHECK(parsePosition(std::string(1'000'000, ' ') + "SO612094")->cornerEasting == 361200);
}

TEST_CASE("blanks between the two halves never change a lettered reference", "[position][notation][property]")
{
    SeededRandom random(42);
    for (int i = 0; i < 2'000; ++i) {
        const std::size_t half = 1 + random.below(6);
        std::string east;
        std::string north;
        for (std::size_t k = 0; k < half; ++k) {
            east += static_cast<char>('0' + random.below(10));
            north += static_cast<char>('0' + random.below(10));
        }
        const auto tight = parsePosition("SO" + east + north);
        const auto loose = parsePosition("s o\xC2\xA0" + east + " \xE2\x80\x93 " + north + ".");
        REQUIRE(tight);
        REQUIRE(loose);
        CHECK(tight->cornerEasting == loose->cornerEasting);
        CHECK(tight->cornerNorthing == loose->cornerNorthing);
        CHECK(tight->cornerEasting >= 300'000);
        CHECK(tight->cornerEasting + tight->squareMetres <= 400'000.0001);
    }
}
