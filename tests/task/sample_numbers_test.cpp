// Numbers of samples: blocks belong to one incarnation, and nothing is issued twice. 'common practice, no source' but for the
// check character (ISO 7064:2003, MOD 37-2; see tests/rules/sample_number_test.cpp).

#include "core/task/sample_numbers.h"

#include <algorithm>
#include <filesystem>
#include <set>

#include "core/base/file.h"
#include "core/rules/sample_number.h"
#include "core/task/keep.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

namespace fs = std::filesystem;

/// A store with a find on which samples can be opened, with the break of a missing leave.
struct Found {
    Vale vale;
    std::unique_ptr<Session> mary = vale.as("MH");
    Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);

    Result<SampleOpening> open(const std::string& number = {}) { return open(*mary, number); }
    Result<SampleOpening> open(Session& session, const std::string& number = {})
    {
        Sample wanted;
        wanted.visit = visit.id;
        wanted.plantPart = "leaf with galls";
        wanted.number = number;
        return openSample(session, wanted, true);
    }
    std::string opened(const std::string& number = {}) { return open(number).value().sample.value().number; }
};

int runningOf(const std::string& number)
{
    return readSampleNumber(number).value().running;
}

} // namespace

TEST_CASE("numbers are reserved for labels before going out, and used when the sample is opened", "[task][sample-numbers]")
{
    Found found;
    const auto numbers = reserveNumbers(*found.mary, 5).value();
    REQUIRE(numbers.size() == 5);
    for (const std::string& number : numbers) {
        CHECK(readSampleNumber(number).has_value());
        CHECK(number.substr(0, 6) == "26-TV-");
    }
    CHECK(reservedNumbers(*found.mary).value() == numbers);
    std::string typed = numbers[2];
    std::erase(typed, '-');
    std::transform(typed.begin(), typed.end(), typed.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? char(c + 32) : c; });
    CHECK(found.opened(typed) == numbers[2]);
    const auto left = reservedNumbers(*found.mary).value();
    CHECK(left.size() == 4);
    CHECK(std::find(left.begin(), left.end(), numbers[2]) == left.end());
}

TEST_CASE("no number is issued twice, in whatever order samples and labels come", "[task][sample-numbers]")
{
    Found found;
    std::set<std::string> seen;
    const auto take = [&](const std::string& number) {
        CAPTURE(number);
        CHECK(seen.insert(number).second);
    };
    take(found.opened());
    const auto many = reserveNumbers(*found.mary, 40).value();
    std::for_each(many.begin(), many.end(), take);
    take(found.opened());
    take(found.opened());
    const auto few = reserveNumbers(*found.mary, 3).value();
    std::for_each(few.begin(), few.end(), take);
    take(found.opened());
    CHECK(seen.size() == 47);
}

TEST_CASE("a number that was not reserved, is used already or is misread opens no sample", "[task][sample-numbers]")
{
    Found found;
    const auto numbers = reserveNumbers(*found.mary, 2).value();
    const std::string beyond = [&] {
        for (int running = runningOf(numbers.back()) + 1;; ++running)
            if (const auto number = makeSampleNumber(26, "TV", running))
                return number->text();
    }();
    CHECK(faultOf(found.open(beyond)) == "sample.number-not-reserved");
    CHECK(found.opened(numbers[0]) == numbers[0]);
    CHECK(faultOf(found.open(numbers[0])) == "sample.number-used");
    std::string wrong = numbers[1];
    wrong.back() = wrong.back() == 'A' ? 'B' : 'A';
    CHECK(faultOf(found.open(wrong)) == "sample-number.check");
    CHECK(faultOf(found.open("7")) == "sample-number.form");
    CHECK(sampleLines(*found.mary).value().size() == 1);
}

TEST_CASE("too many numbers, or none, are not reserved", "[task][sample-numbers]")
{
    Found found;
    for (const int count : {0, -3, mostReservedAtOnce + 1})
        CHECK(faultOf(reserveNumbers(*found.mary, count)) == "sample.reserve-count");
    CHECK(reserveNumbers(*found.mary, mostReservedAtOnce).value().size() == 100);
    CHECK(faultOf(reserveNumbers(*found.vale.as("OF"), 1)) == "role.needed");
}

TEST_CASE("a block belongs to one device: another one with the same block is refused", "[task][sample-numbers]")
{
    Found found;
    found.opened();
    const auto john = found.vale.as("JB"); // whose profile names the same block
    CHECK(faultOf(found.open(*john)) == "sample.block-elsewhere");
    CHECK(faultOf(reserveNumbers(*john, 1)) == "sample.block-elsewhere");
    CHECK(reservedNumbers(*john).value().empty());
    Profile own = found.vale.profile("JB", "John Brook", {Role::volunteer});
    own.sampleBlock = "T2";
    CHECK(found.open(*found.vale.open(own)).value().sample.value().number.substr(0, 5) == "26-T2");
}

TEST_CASE("a label printed by another device of the store can be used by whoever has the bag", "[task][sample-numbers]")
{
    Found found;
    const auto numbers = reserveNumbers(*found.mary, 1).value();
    CHECK(found.open(*found.vale.as("JB"), numbers[0]).value().sample.value().number == numbers[0]);
}

TEST_CASE("a restored store issues no number again, and the labels printed before still count", "[task][sample-numbers]")
{
    Found found;
    const std::string first = found.opened();
    const std::string copy = backUp(*found.mary, found.vale.folder() + "/kept").value();
    const auto numbers = reserveNumbers(*found.mary, 4).value();
    const std::string later = found.opened();
    found.mary.reset();
    fs::copy_file(copy, found.vale.store(), fs::copy_options::overwrite_existing);
    const auto restored = found.vale.as("MH");
    REQUIRE(restored->shorter().has_value());
    // a new incarnation: the block belongs to the one before
    CHECK(faultOf(found.open(*restored)) == "sample.block-elsewhere");
    CHECK(faultOf(reserveNumbers(*restored, 2)) == "sample.block-elsewhere");
    // the bag with the printed label is there, and so is the one of the sample that was lost
    CHECK(found.open(*restored, numbers[1]).value().sample.value().number == numbers[1]);
    CHECK(found.open(*restored, later).value().sample.value().number == later);
    CHECK(faultOf(found.open(*restored, first)) == "sample.number-used");
    Profile fresh = loadProfile(found.vale.folder() + "/MH").value();
    fresh.sampleBlock = "TX";
    CHECK(found.open(*found.vale.open(fresh)).value().sample.value().number.substr(0, 5) == "26-TX");
}

TEST_CASE("a demonstration leaves no trace in what the device remembers of its blocks", "[task][sample-numbers]")
{
    Vale demonstration(true);
    const auto mary = demonstration.as("MH");
    CHECK(reserveNumbers(*mary, 2).value().size() == 2);
    CHECK_FALSE(fs::exists(demonstration.folder() + "/MH/numbers.json"));
    Found real;
    real.opened();
    CHECK(fs::exists(real.vale.folder() + "/MH/numbers.json"));
}

TEST_CASE("a damaged memory of the device stops nobody", "[task][sample-numbers]")
{
    for (const char* damaged : {"", "[]", "{\"TV\": 7}", "{\"TV\": {\"26\": \"x\", \"incarnation\": 5}}", "\xFF\x00{"}) {
        Found found;
        REQUIRE(writeFile(found.vale.folder() + "/MH/numbers.json", damaged));
        CHECK(runningOf(found.opened()) == 1);
        CHECK(runningOf(reserveNumbers(*found.mary, 1).value().front()) == 2);
    }
}
