#include "core/task/hand_out.h"

#include <filesystem>
#include <iterator>
#include <stop_token>

#include "core/base/file.h"
#include "core/exchange/bundle/bundle_file.h"
#include "core/store/journal.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/task/keep.h"
#include "core/task/keys.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;
namespace fs = std::filesystem;

namespace {

std::string outFile()
{
    return temporaryFolder() + "/day.zip";
}

HandOut dayInto(const std::string& out)
{
    HandOut wanted;
    wanted.out = out;
    return wanted;
}

/// A volunteer's store with one gall and one nothing handed in.
struct Day {
    explicit Day(bool demonstration = false) : vale(demonstration), session(vale.as("MH"))
    {
        gall = handedIn(*session, treeAt(*session, "W03", "SO 612 094", "Weir Wood"), [](Session& s, const Visit& v) { return withGall(s, v); });
        const auto photos = session->store().photos().ofVisit(gall.id).value();
        for (const auto& photo : photos)
            REQUIRE(session->store().media().keep(photo.id.text()).value() == photo.sha256);   // as photoOf names it
        nothing = handedIn(*session, treeAt(*session, "W04", "SO 613 094", "Weir Wood"), [](Session& s, const Visit& v) { return withNothing(s, v); });
    }
    Vale vale;
    std::unique_ptr<Session> session;
    Visit gall, nothing;
};

} // namespace

TEST_CASE("a day's bundle is signed, kept, and verifies without the store", "[task][bundles]")
{
    Day day;
    const std::string out = outFile();
    const HandedOut handed = handOut(*day.session, dayInto(out)).value();
    CHECK(handed.note.kind == "day");
    CHECK(handed.note.number == 1);
    CHECK(handed.counts.visits == 2);
    CHECK(handed.counts.media >= 1);
    CHECK(handed.bytes == static_cast<std::int64_t>(fs::file_size(out)));
    CHECK_FALSE(handed.madeAgain);
    const auto bundle = BundleFile::open(out);
    REQUIRE(bundle);
    const Manifest& manifest = bundle->manifest();
    CHECK(manifest.key == ownKey(day.session->profile().folder)->key);
    CHECK(manifest.authorCode == "MH");
    CHECK(manifest.store.id == day.session->info().id);
    CHECK(manifest.leftOut.empty());
    CHECK_FALSE(manifest.demonstration);
    CHECK(bundle->manifestDigest() == handed.note.manifest);
    CHECK(readFile(day.session->store().bundles().keptAt(handed.note.id)).value() == readFile(out).value());
    CHECK(day.session->store().journal().prove()->whole);
}

TEST_CASE("made again means the same file, until something is new", "[task][bundles]")
{
    Day day;
    const std::string first = outFile(), second = outFile(), third = outFile();
    const auto one = handOut(*day.session, dayInto(first)).value();
    const auto two = handOut(*day.session, dayInto(second)).value();
    CHECK(two.madeAgain);
    CHECK(two.note == one.note);
    CHECK(readFile(first).value() == readFile(second).value());
    handedIn(*day.session, treeAt(*day.session, "W05", "SO 614 094"), [](Session& s, const Visit& v) { return withNothing(s, v); });
    const auto three = handOut(*day.session, dayInto(third)).value();
    CHECK_FALSE(three.madeAgain);
    CHECK(three.note.number == 2);
    CHECK(three.counts.visits == 3);   // nobody has taken the first one in yet
    CHECK(readFile(day.session->store().bundles().keptAt(one.note.id)).value() == readFile(first).value());
}

TEST_CASE("handing out stops where it is told to, and leaves nothing behind", "[task][bundles]")
{
    Day day;
    const std::string out = outFile(), folder = day.session->store().bundles().folder();
    int told = 0, stops = 0;
    std::int64_t most = 0, whole = 0;
    for (bool done = false; !done; ++stops) {
        std::stop_source stop;
        told = 0;
        const Progress progress{[&](std::int64_t now, std::int64_t all) {
                                    most = now;
                                    whole = all;
                                    if (++told > stops)
                                        stop.request_stop();
                                },
                                stop.get_token()};
        const auto handed = handOut(*day.session, dayInto(out), progress);
        done = handed.has_value();
        CAPTURE(stops);
        CHECK((done || handed.error().code == "job.cancelled"));
        CHECK(fs::exists(out) == done);
        CHECK(std::distance(fs::directory_iterator(folder), {}) == (done ? 1 : 0));
        CHECK(day.session->store().bundles().all()->size() == (done ? 1 : 0));
    }
    CHECK(stops > 10);                     // lines first, then bytes
    CHECK(whole > 1000);
    CHECK(most > whole / 2);               // and the manifest
    CHECK(day.session->store().journal().prove()->whole);
}

TEST_CASE("what was acknowledged stays at home, a correction is one", "[task][bundles]")
{
    Day day;
    const auto one = handOut(*day.session, dayInto(outFile())).value();
    auto change = day.session->begin().value();
    done(day.session->store().bundles().acknowledge(change, one.note.id));
    done(day.session->commit(change));
    CHECK(faultOf(handOut(*day.session, dayInto(outFile()))) == "bundle.nothing");
    Visit corrected = day.nothing;
    corrected.note = "looked again";
    done(changeVisit(*day.session, day.nothing, corrected, "corrected"));
    const std::string out = outFile();
    const auto two = handOut(*day.session, dayInto(out)).value();
    CHECK(two.note.kind == "correction");
    CHECK(two.counts.visits == 1);
    CHECK(two.counts.media == 0);
    CHECK(BundleFile::open(out));
}

TEST_CASE("photos and personal data can be left out, and the manifest says so", "[task][bundles]")
{
    Day day;
    HandOut wanted = dayInto(outFile());
    wanted.photos = false;
    wanted.personal = false;
    const auto handed = handOut(*day.session, wanted).value();
    CHECK(handed.note.leftOut == std::vector<std::string>{"personal", "photos"});
    CHECK(handed.counts.media == 0);
    const auto bundle = BundleFile::open(wanted.out).value();
    CHECK(bundle.manifest().leftOut == handed.note.leftOut);
    CHECK_FALSE(bundle.manifest().personal.empty());
    CHECK(handed.counts.personal == 0);
    CHECK(handOut(*day.session, dayInto(outFile()))->note.number == 2);   // the whole one is another file
}

TEST_CASE("a name erased on request is gone from the kept bundles too, and they still verify", "[task][bundles]")
{
    Day day;
    const auto handed = handOut(*day.session, dayInto(outFile())).value();
    const std::string kept = day.session->store().bundles().keptAt(handed.note.id);
    const Uid person = day.session->me();
    const auto namesIn = [&] {
        int names = 0;
        const auto bundle = BundleFile::open(kept).value();
        REQUIRE(bundle.eachPersonal([&](const BundlePersonal& part) -> Status {
            names += part.entity == person ? 1 : 0;
            return {};
        }));
        return names;
    };
    CHECK(namesIn() == 1);
    const std::string digest = BundleFile::open(kept)->manifestDigest();
    const auto office = day.vale.as("OF");
    done(erasePerson(*office, person, "letter 1"));
    CHECK(namesIn() == 0);
    CHECK(BundleFile::open(kept)->manifestDigest() == digest);
    CHECK_FALSE(fs::exists(kept + ".writing"));
}

TEST_CASE("a damaged bundle among the kept ones is told of, and the others are cleaned all the same", "[task][bundles]")
{
    Day day;
    const auto first = handOut(*day.session, dayInto(outFile())).value();
    handedIn(*day.session, treeAt(*day.session, "W05", "SO 614 094"), [](Session& s, const Visit& v) { return withNothing(s, v); });
    const auto second = handOut(*day.session, dayInto(outFile())).value();
    REQUIRE(writeFile(day.session->store().bundles().keptAt(first.note.id), "PK"));
    const auto office = day.vale.as("OF");
    CHECK_FALSE(erasePerson(*office, day.session->me(), "letter 1"));
    int names = 0;
    const auto bundle = BundleFile::open(day.session->store().bundles().keptAt(second.note.id)).value();
    REQUIRE(bundle.eachPersonal([&](const BundlePersonal& part) -> Status {
        names += part.entity == day.session->me() ? 1 : 0;
        return {};
    }));
    CHECK(names == 0);
}

TEST_CASE("a demonstration's bundle says that it is one", "[task][bundles]")
{
    Day day(true);
    const std::string out = outFile();
    REQUIRE(handOut(*day.session, dayInto(out)));
    CHECK(BundleFile::open(out)->manifest().demonstration);
}

TEST_CASE("only those may hand out whose work it is, and not without their key", "[task][bundles]")
{
    Day day;
    HandOut wanted = dayInto(outFile());
    wanted.kind = GoingKind::decision;
    CHECK(faultOf(handOut(*day.session, wanted)) == "role.needed");
    wanted.kind = GoingKind::reference;
    CHECK(faultOf(handOut(*day.session, wanted)) == "role.needed");
    const auto office = day.vale.as("OF");
    const auto reference = handOut(*office, wanted).value();
    CHECK(reference.note.kind == "reference");
    CHECK_FALSE(BundleFile::open(wanted.out)->pack()->empty());
    fs::remove(day.session->profile().folder + "/key.json");
    CHECK(faultOf(handOut(*day.session, dayInto(outFile()))) == "key.missing");
}

TEST_CASE("a locked key signs with its passphrase", "[task][bundles]")
{
    Day day;
    REQUIRE(lockKey(day.session->profile().folder, day.vale.random, {}, "brown husk", {1, 8192}));
    HandOut wanted = dayInto(outFile());
    CHECK(faultOf(handOut(*day.session, wanted)) == "key.passphrase-needed");
    wanted.passphrase = "green husk";
    CHECK(faultOf(handOut(*day.session, wanted)) == "key.passphrase");
    CHECK(day.session->store().bundles().all()->empty());
    wanted.passphrase = "brown husk";
    REQUIRE(handOut(*day.session, wanted));
    CHECK(BundleFile::open(wanted.out));
}

TEST_CASE("a decision is undone until it has left in a file", "[task][bundles]")
{
    Day day;
    const auto verifier = day.vale.as("V1");
    const auto accept = [&] { return decide(*verifier, decision(*verifier, day.nothing.id, Outcome::accept)); };
    REQUIRE(accept());
    REQUIRE(undoDecision(*verifier, day.nothing.id));
    REQUIRE(accept());
    HandOut wanted = dayInto(outFile());
    wanted.kind = GoingKind::decision;
    CHECK(handOut(*verifier, wanted)->note.kind == "decision");
    CHECK(BundleFile::open(wanted.out));
    CHECK(faultOf(undoDecision(*verifier, day.nothing.id)) == "decide.undo-handed-out");
}

TEST_CASE("where the file cannot be written, the bundle is kept and can be had again", "[task][bundles]")
{
    Day day;
    CHECK(faultOf(handOut(*day.session, dayInto(temporaryFolder() + "/no/such/folder/day.zip"))) == "file.write");
    const auto again = handOut(*day.session, dayInto(outFile())).value();
    CHECK(again.madeAgain);
    CHECK(again.note.number == 1);
}

TEST_CASE("a missing picture stops the bundle before anything is noted", "[task][bundles]")
{
    Day day;
    const auto pictures = day.session->store().media().all().value();
    for (const auto& picture : pictures)
        fs::remove(day.session->store().media().path(picture).value());
    CHECK(faultOf(handOut(*day.session, dayInto(outFile()))) == "media.missing");
    CHECK(day.session->store().bundles().all()->empty());
    HandOut wanted = dayInto(outFile());
    wanted.photos = false;
    CHECK(handOut(*day.session, wanted));
}
