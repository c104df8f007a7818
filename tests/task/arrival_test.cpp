#include "core/task/arrival.h"

#include <filesystem>

#include "core/base/file.h"
#include "core/store/bundles.h"
#include "core/task/hand_out.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// A volunteer's own laptop with one visit handed in, and the office's store elsewhere.
struct TwoStores {
    explicit TwoStores(bool demonstration = false, bool officeDemonstration = false)
        : office(officeDemonstration), profile(office.profile("LP", "Lena Poll", {Role::volunteer}))
    {
        NewStore description;
        description.name = "Lena's laptop";
        description.demonstration = demonstration;
        laptop = Session::create(office.folder() + "/laptop.cupule", description, profile, office.clock, office.random).value();
        handedIn(*laptop, treeAt(*laptop, "L1", "SO 612 094"), [](Session& s, const Visit& v) { return withNothing(s, v); });
        desk = office.as("OF");
    }
    std::string handOutDay()
    {
        HandOut wanted;
        wanted.out = temporaryFolder() + "/day.zip";
        handOut(*laptop, wanted).value();
        return wanted.out;
    }
    void vouchFor(const std::string& key, bool instead = false)
    {
        Vouching vouching{key, laptop->me(), {Role::volunteer}, fingerprint(publicKeyFrom(key).value()), instead, {}};
        done(vouch(*desk, vouching));
    }
    [[nodiscard]] std::string ownKeyText() const { return ownKey(profile.folder)->key; }

    Vale office;
    Profile profile;
    std::unique_ptr<Session> laptop, desk;
};

std::string takeIn(Session& desk, const std::string& path)
{
    const auto arrival = lookAtArrival(desk, path);
    return arrival ? faultOf(mayTakeIn(desk, *arrival)) : arrival.error().code;
}

} // namespace

TEST_CASE("nothing of an unknown key is taken in until somebody vouches for it", "[task][arrival]")
{
    TwoStores stores;
    const std::string path = stores.handOutDay();
    const auto arrival = lookAtArrival(*stores.desk, path).value();
    CHECK(arrival.standing == KeyStanding::unknown);
    CHECK_FALSE(arrival.knownAlready);
    const auto refused = mayTakeIn(*stores.desk, arrival);
    REQUIRE(faultOf(refused) == "key.unknown");
    CHECK(refused.error().argument("fingerprint") == ownKey(stores.profile.folder)->fingerprint);
    stores.vouchFor(stores.ownKeyText());
    CHECK(takeIn(*stores.desk, path).empty());
}

TEST_CASE("a renewed key is taken where the old one speaks for it, another one is not", "[task][arrival]")
{
    TwoStores stores;
    stores.vouchFor(stores.ownKeyText());
    SECTION("spoken for")
    {
        REQUIRE(renewKey(stores.profile.folder, stores.office.random, {}));
        REQUIRE(renewKey(stores.profile.folder, stores.office.random, {}));
        const std::string path = stores.handOutDay();
        CHECK(lookAtArrival(*stores.desk, path)->standing == KeyStanding::follows);
        CHECK(takeIn(*stores.desk, path).empty());
    }
    SECTION("made anew after the old one was lost")
    {
        std::filesystem::remove(stores.profile.folder + "/key.json");
        REQUIRE(makeKey(stores.profile.folder, stores.office.random));
        const std::string path = stores.handOutDay();
        CHECK(takeIn(*stores.desk, path) == "key.changed");
        stores.vouchFor(stores.ownKeyText(), true);
        CHECK(takeIn(*stores.desk, path).empty());
    }
    SECTION("spoken for by a key that was struck out")
    {
        done(withdrawKey(*stores.desk, stores.ownKeyText(), "lost"));
        REQUIRE(renewKey(stores.profile.folder, stores.office.random, {}));
        CHECK(takeIn(*stores.desk, stores.handOutDay()) == "key.changed");
    }
}

TEST_CASE("what a withdrawn key signed before stays valid up to the last bundle that came in", "[task][arrival]")
{
    TwoStores stores;
    const std::string first = stores.handOutDay();
    stores.vouchFor(stores.ownKeyText());
    const auto arrival = lookAtArrival(*stores.desk, first).value();
    BundleNote note{arrival.file.manifest().bundle, true, "day", stores.ownKeyText(), 1, arrival.file.manifestDigest(), {}, {}, 1, {}, {}};
    auto change = stores.desk->begin().value();
    done(stores.desk->store().bundles().add(change, note, {}));
    done(stores.desk->commit(change));
    CHECK(lookAtArrival(*stores.desk, first)->knownAlready);
    done(withdrawKey(*stores.desk, stores.ownKeyText(), "given away"));
    CHECK(takeIn(*stores.desk, first).empty());
    handedIn(*stores.laptop, treeAt(*stores.laptop, "L2", "SO 613 094"), [](Session& s, const Visit& v) { return withNothing(s, v); });
    CHECK(takeIn(*stores.desk, stores.handOutDay()) == "key.withdrawn");
}

TEST_CASE("a bundle that is known by its id with another manifest is loud", "[task][arrival]")
{
    TwoStores stores;
    const std::string path = stores.handOutDay();
    stores.vouchFor(stores.ownKeyText());
    const auto arrival = lookAtArrival(*stores.desk, path).value();
    BundleNote note{arrival.file.manifest().bundle, true, "day", stores.ownKeyText(), 1, std::string(64, '0'), {}, {}, 1, {}, {}};
    auto change = stores.desk->begin().value();
    done(stores.desk->store().bundles().add(change, note, {}));
    done(stores.desk->commit(change));
    CHECK(takeIn(*stores.desk, path) == "bundle.altered");
}

TEST_CASE("a laptop that was copied with its profile is found by the first line that differs, and both people are named", "[task][arrival]")
{
    // The kind of failure of reference/cases C19: one device id, one number, two contents.
    namespace fs = std::filesystem;
    TwoStores stores;
    const std::string store = stores.laptop->info().path;
    stores.laptop.reset();
    Profile copied = stores.profile;
    copied.folder = stores.office.folder() + "/copied-profile";
    fs::copy(stores.profile.folder, copied.folder, fs::copy_options::recursive);
    copied.person.id = UidMaker(stores.office.clock, stores.office.random).make();
    copied.person.code = "BN";
    copied.person.name = "Bruno Neri";
    done(saveProfile(copied));
    fs::copy(store, store + "-copy.cupule");

    auto& clock = stores.office.clock;
    auto& random = stores.office.random;
    auto first = Session::open(store, stores.profile, clock, random).value();
    auto second = Session::open(store + "-copy.cupule", copied, clock, random).value();
    const auto nothing = [](Session& s, const Visit& v) { return withNothing(s, v); };
    handedIn(*first, treeAt(*first, "A1", "SO 614 094"), nothing);
    handedIn(*second, treeAt(*second, "B1", "SO 615 094"), nothing);
    HandOut wanted;
    wanted.out = temporaryFolder() + "/day.zip";
    handOut(*second, wanted).value();
    const auto arrival = lookAtArrival(*first, wanted.out).value();
    REQUIRE(arrival.parted.size() == 1);
    CHECK(arrival.parted[0].here == first->me());
    CHECK(arrival.parted[0].there == second->me());
    CHECK(arrival.standing == KeyStanding::otherPerson);   // the copied key, too, says that it is somebody else's
    const auto seen = first->store().seen();
    CHECK(arrival.parted[0].incarnation == seen->incarnation);

    handOut(*first, wanted).value();
    CHECK(lookAtArrival(*first, wanted.out)->parted.empty());
}

TEST_CASE("invented and real never mix", "[task][arrival]")
{
    TwoStores real(true, false), shown(false, true);
    CHECK(takeIn(*real.desk, real.handOutDay()) == "bundle.demonstration");
    CHECK(takeIn(*shown.desk, shown.handOutDay()) == "bundle.real");
    TwoStores both(true, true);
    both.vouchFor(both.ownKeyText());
    CHECK(takeIn(*both.desk, both.handOutDay()).empty());
}
