#include "core/report/account.h"

#include "core/base/text.h"
#include "core/report/html.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::report;

namespace {

Pack smallPack()
{
    Pack pack;
    pack.name = "A pack";
    pack.version = "1";
    pack.language = "en";
    Sign sign;
    sign.id = "S02";
    sign.name = "green gall on a leaf";
    sign.shortName = "leaf gall";
    pack.signs = {sign};
    pack.standingNotice = {"Leave it on the tree."};
    pack.exportNote = "Volunteer observation. Not an official finding.";
    return pack;
}

AccountFind find(RecordState state)
{
    AccountFind out;
    out.tree = "W03";
    out.square = "SO60";
    out.date = *CivilDate::make(2026, 6, 11);
    out.signs = {"S02"};
    out.state = state;
    out.verifiers = state == RecordState::accepted ? 2 : 0;
    return out;
}

AccountData season()
{
    AccountData data;
    data.storeName = "Tharn Vale";
    data.year = 2026;
    data.made = *CivilDate::make(2026, 9, 1);
    data.visits = 3;
    data.trees = 2;
    data.sites = 1;
    data.people = 2;
    data.first = *CivilDate::make(2026, 6, 1);
    data.last = *CivilDate::make(2026, 6, 11);
    data.byState = {{RecordState::accepted, 2}, {RecordState::submitted, 1}};
    data.nothingByState = {{RecordState::accepted, 1}};
    data.nothingWorth = {{'B', 1}};
    data.treesNothing = 1;
    data.halfMonths[10] = 3;
    data.finds = {find(RecordState::accepted), find(RecordState::submitted)};
    data.finds[1].oneOfTwo = true;
    data.oneOfTwo = 1;
    data.samples = {{SampleState::sealed, 1}};
    data.journalLines = 12;
    return data;
}

std::string page(const AccountData& data)
{
    return toHtml(account(data, smallPack(), Words()));
}

} // namespace

TEST_CASE("an account says how sure each find is", "[report][account]")
{
    const std::string html = page(season());
    CHECK(html.find("accepted by 2 verifiers") != std::string::npos);
    CHECK(html.find("one of two verifiers has decided; the second has not") != std::string::npos);
    CHECK(html.find("leaf gall") != std::string::npos);
    AccountData data = season();
    data.finds[0].laboratory = true;
    data.finds[0].earlierGenerationOnly = true;
    CHECK(page(data).find("accepted on a laboratory report; old galls only, of an earlier year") !=
          std::string::npos);
}

TEST_CASE("an account counts what nobody told the authority", "[report][account]")
{
    AccountData data = season();
    CHECK(page(data).find("2 of these have no note") != std::string::npos);
    data.finds[0].told = data.finds[1].told = true;
    CHECK(page(data).find("have no note") == std::string::npos);
}

TEST_CASE("an account says what a look was taken to find, and of how many that is measured", "[report][account]")
{
    AccountData data = season();
    data.detection = {false, 0.7, 0.5, 0.3, 5, 1, 4, 0.61, 3, 3, 0, 0};
    const std::string stated = page(data);
    CHECK(stated.find("as the protocol states. A look of worth A finds a gall that is there 70 times in 100, B 50, C 30. Assumed") != std::string::npos);
    CHECK(stated.find("Had all 4 of these trees carried galls, about 61 in 100") != std::string::npos);
    CHECK(stated.find("is not written down: 1 looks") != std::string::npos);
    CHECK(stated.find("observers") == std::string::npos);
    data.detection = {true, 0.7, 0.5, 0.3, 5, 0, 4, 0.66, 4, 1, 0.64, 0.84};
    const std::string measured = page(data);
    CHECK(measured.find("as measured of each observer in practice, the lower end") != std::string::npos);
    CHECK(measured.find("Measured: 3 of 4 observers, 64 to 84 in 100") != std::string::npos);
    CHECK(measured.find("Not measured: 1 of 4 observers; for them the protocol") != std::string::npos);
    CHECK(measured.find("is not written down") == std::string::npos);
    data.detection.notMeasured = 2;                    // of two people the range would say whose it is
    CHECK(page(data).find("Measured: 2 of 4 observers. So few") != std::string::npos);
    CHECK(page(data).find("84 in 100") == std::string::npos);
    data.detection.trees = 0;
    CHECK(page(data).find("No accepted look at a tree is worth enough") != std::string::npos);
}

TEST_CASE("an account never uses the authority's words", "[report][account]")
{
    // the words that trade practice keeps for the authority; common practice, no source
    AccountData data = season();
    data.demonstration = true;
    for (const AccountData& each : {data, AccountData{}}) {
        const std::string html = lowerAscii(page(each));
        for (const char* word :
             {"infest", "disease-free", "pest-free", "certified", "quarantine", "eradicated", "absent"}) {
            CAPTURE(word);
            CHECK(html.find(word) == std::string::npos);
        }
    }
}

TEST_CASE("an account carries the note for everything that leaves, and the standing notice",
          "[report][account]")
{
    const std::string html = page(season());
    CHECK(html.find("Not an official finding.") != std::string::npos);
    CHECK(html.find("Leave it on the tree.") != std::string::npos);
}

TEST_CASE("an account of a demonstration says that all is invented", "[report][account]")
{
    AccountData data = season();
    CHECK(page(data).find("invented") == std::string::npos);
    data.demonstration = true;
    CHECK(page(data).find("every person, place and find on this page is invented") != std::string::npos);
}

TEST_CASE("an account of an empty store says so and stands", "[report][account]")
{
    AccountData data;
    data.storeName = "Empty";
    const std::string html = page(data);
    CHECK(html.find("No visit is in this store") != std::string::npos);
    CHECK(html.find("No find has been accepted.") != std::string::npos);
    CHECK(html.find("No sample was taken.") != std::string::npos);
    CHECK(html.find("Nothing waits.") != std::string::npos);
}

TEST_CASE("a journal that does not hold is said in the account", "[report][account]")
{
    AccountData data = season();
    data.journalWhole = false;
    CHECK(page(data).find("does not hold") != std::string::npos);
}
