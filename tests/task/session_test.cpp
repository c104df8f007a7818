#include "core/task/session.h"

#include <cstdlib>
#include <filesystem>

#include "core/base/file.h"
#include "core/store/people.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;
namespace fs = std::filesystem;

TEST_CASE("a profile is kept and read again", "[task][profile]")
{
    const std::string folder = temporaryFolder() + "/who";
    const FixedClock clock(at(9));
    SeededRandom random(1);
    Person person;
    person.code = "MH";
    person.name = "Mary Hill";
    Profile made = makeProfile(folder, person, {Role::volunteer, Role::sampleHandler}, clock, random).value();
    made.sampleBlock = "TV";
    made.gridFolder = "/grids";
    REQUIRE(saveProfile(made));
    const Profile read = loadProfile(folder).value();
    CHECK(read.device == made.device);
    CHECK(read.person == made.person);
    CHECK(read.is(Role::sampleHandler));
    CHECK_FALSE(read.is(Role::verifier));
    CHECK(read.sampleBlock == "TV");
    CHECK(read.gridFolder == "/grids");
    CHECK(faultOf(makeProfile(folder, person, {Role::volunteer}, clock, random)) == "profile.exists");
}

TEST_CASE("a profile that makes no sense is refused", "[task][profile]")
{
    const std::string folder = temporaryFolder() + "/who";
    const FixedClock clock(at(9));
    SeededRandom random(1);
    Person person;
    CHECK(faultOf(makeProfile(folder, person, {Role::volunteer}, clock, random)) == "profile.code");
    person.code = "M H";
    CHECK(faultOf(makeProfile(folder, person, {Role::volunteer}, clock, random)) == "profile.code");
    person.code = "MH";
    CHECK(faultOf(makeProfile(folder, person, {}, clock, random)) == "profile.roles");
    CHECK(faultOf(loadProfile(folder)) == "profile.missing");
    Profile profile = makeProfile(folder, person, {Role::volunteer}, clock, random).value();
    profile.sampleBlock = "tv";
    CHECK(faultOf(saveProfile(profile)) == "profile.block");
}

TEST_CASE("a damaged profile names what is wrong in it", "[task][profile]")
{
    struct Row {
        const char* text;
        const char* field;
    };
    const auto row = GENERATE(values<Row>({
        {"not json", ""},
        {"{}", "device"},
        {R"({"device":"nonsense"})", "device"},
        {R"({"device":"01890000-0000-7000-8000-000000000001"})", "person"},
        {R"({"device":"01890000-0000-7000-8000-000000000001","person":{"id":3}})", "person"},
    }));
    CAPTURE(row.text);
    const std::string folder = temporaryFolder();
    REQUIRE(writeFile(folder + "/profile.json", row.text));
    const auto read = loadProfile(folder);
    REQUIRE_FALSE(read);
    CHECK(read.error().code == "profile.json");
    CHECK(read.error().place.field == row.field);
}

TEST_CASE("the folder of the profile is the one named, else that of the environment", "[task][profile]")
{
    setenv("CUPULE_PROFILE", "/from/environment", 1);
    CHECK(profileFolder("/named") == "/named");
    CHECK(profileFolder("") == "/from/environment");
    unsetenv("CUPULE_PROFILE");
    // XDG Base Directory Specification 0.8: $XDG_CONFIG_HOME, else $HOME/.config
    setenv("XDG_CONFIG_HOME", "/config", 1);
    CHECK(profileFolder("") == "/config/cupule");
    unsetenv("XDG_CONFIG_HOME");
    setenv("HOME", "/home/somebody", 1);
    CHECK(profileFolder("") == "/home/somebody/.config/cupule");
}

TEST_CASE("a person is known to a store by code and name, whoever made the entry", "[task][session]")
{
    Vale vale;
    Person entry;
    entry.code = "MH";
    entry.name = "mary hill";
    const Person known = newPerson(*vale.as("JB"), entry).value();
    const auto mary = vale.as("MH");
    CHECK(mary->me() == known.id);
    CHECK(newVisit(*mary, Uid{}, Uid{}).value().observer == known.id);
}

TEST_CASE("a person is known to a store by name where an import made up another code", "[task][session]")
{
    Vale vale;
    const auto office = vale.as("JB");
    const Person other = newPerson(*office, {{}, "MH", "Martin Hood", {}, {}, {}}).value();
    const Person known = newPerson(*office, {{}, "MH2", "mary hill", {}, {}, {}}).value();
    CHECK(vale.as("MH")->me() == known.id);
    // of two people of that name neither is taken for her
    newPerson(*office, {{}, "MH3", "Mary Hill", {}, {}, {}}).value();
    const Uid alone = vale.as("MH")->me();
    CHECK(alone != known.id);
    CHECK(alone != other.id);
}

TEST_CASE("an entry that is only a code gets its name from the profile of that code", "[task][session]")
{
    Vale vale;
    const Person known = newPerson(*vale.as("JB"), {{}, "MH", "MH", {}, {}, {}}).value();
    const auto mary = vale.as("MH");
    CHECK(mary->me() == known.id);
    REQUIRE(newVisit(*mary, Uid{}, Uid{}).has_value());
    CHECK(mary->store().people().find(known.id).value()->name == "Mary Hill");
}

TEST_CASE("a code that belongs to somebody else is refused when it is first used", "[task][session]")
{
    Vale vale;
    Person entry;
    entry.code = "MH";
    entry.name = "Martin Hood";
    newPerson(*vale.as("JB"), entry).value();
    const auto mary = vale.as("MH");
    CHECK(mary->me() != entry.id);
    const auto refused = newVisit(*mary, Uid{}, Uid{});
    CHECK(faultOf(refused) == "profile.code-taken");
}

TEST_CASE("a copy that lacks the last day is noticed", "[task][session]")
{
    Vale vale;
    {
        const auto mary = vale.as("MH");
        newPerson(*mary, {{}, "AB", "Ann Bell", {}, {}, {}}).value();
    }
    fs::copy_file(vale.store(), vale.folder() + "/old-copy");
    {
        const auto mary = vale.as("MH");
        CHECK_FALSE(mary->shorter().has_value());
        newPerson(*mary, {{}, "CD", "Cai Dale", {}, {}, {}}).value();
    }
    fs::copy_file(vale.folder() + "/old-copy", vale.store(), fs::copy_options::overwrite_existing);
    const auto mary = vale.as("MH");
    REQUIRE(mary->shorter().has_value());
    CHECK(mary->shorter()->seenNumber > mary->shorter()->foundNumber);
}

TEST_CASE("today is the civil date where the store's zone holds", "[task][session]")
{
    Vale vale;
    // half past eleven in the evening UTC is already the next day in British summer time (IANA tzdata, Europe/London)
    vale.clock.set(at(23, 30));
    CHECK(vale.as("MH")->today() == day(2026, 6, 12));
    const auto mary = vale.as("MH");
    mary->setToday(day(2026, 2, 1));
    CHECK(mary->today() == day(2026, 2, 1));
}

TEST_CASE("the observed leafing moves the season of that year alone, within the pack's limit", "[task][session]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    CHECK(mary->seasonToday().shiftDays == 0);
    REQUIRE(mary->setLeafing(2026, day(2026, 5, 8)));
    const int shift = leafingShift(day(2026, 5, 8), "MAR", mary->pack()).value();
    CHECK(mary->seasonToday().shiftDays == shift);
    Visit earlier;
    earlier.date = day(2025, 6, 1);
    CHECK(mary->seasonFor(earlier, nullptr).shiftDays == 0);
    REQUIRE(mary->setLeafing(2026, day(2026, 7, 30)));
    CHECK(mary->seasonToday().shiftDays == mary->pack().settings.shiftLimitDays);
    CHECK(faultOf(mary->setLeafing(2026, day(2025, 5, 8))) == "leafing.year");
    REQUIRE(mary->setLeafing(2026, std::nullopt));
    CHECK(mary->seasonToday().shiftDays == 0);
}

TEST_CASE("a role that the profile lacks is named in the refusal", "[task][session]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const auto refused = mary->needOneOf({Role::verifier, Role::office});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == "role.needed");
    CHECK(refused.error().kind == FaultKind::refused);
    CHECK(refused.error().argument("roles") == "verifier,office");
    CHECK(mary->needOneOf({Role::verifier, Role::volunteer}));
}

TEST_CASE("a demonstration store is one from birth", "[task][session]")
{
    Vale invented(true);
    CHECK(invented.as("MH")->info().demonstration);
    Vale real;
    CHECK_FALSE(real.as("MH")->info().demonstration);
}

TEST_CASE("a region or zone that does not exist is refused before a file is made", "[task][session]")
{
    Vale vale;
    const std::string path = vale.folder() + "/other.cupule";
    NewStore wanted;
    wanted.region = "ELSEWHERE";
    const Profile mary = vale.profile("MH", "Mary Hill", {Role::volunteer});
    CHECK(faultOf(Session::create(path, wanted, mary, vale.clock, vale.random)) == "store.region");
    wanted.region = "MAR";
    wanted.zone = "Europe/Nowhere";
    CHECK(faultOf(Session::create(path, wanted, mary, vale.clock, vale.random)) == "zone.unknown");
    CHECK_FALSE(fs::exists(path));
}
