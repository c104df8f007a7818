#include "core/task/keys.h"

#include <filesystem>

#include "core/base/file.h"
#include "core/base/hash.h"
#include "core/store/journal.h"
#include "core/store/people.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;
namespace fs = std::filesystem;

namespace {

constexpr LockCost cheap{1, 8192};

std::string newKey(std::uint64_t seed)
{
    SeededRandom random(seed);
    return hex(SigningKey::make(random).publicKey());
}

std::string digitsOf(const std::string& key)
{
    return fingerprint(publicKeyFrom(key).value());
}

/// Somebody the office's store knows.
Uid personIn(Session& session, const std::string& code)
{
    Person person;
    person.id = session.ids().make();
    person.code = code;
    auto change = session.begin().value();
    done(session.store().people().save(change, person));
    done(session.commit(change));
    return person.id;
}

} // namespace

TEST_CASE("a key is made with the profile, for its owner's eyes alone", "[task][keys]")
{
    const std::string folder = temporaryFolder() + "/who";
    const FixedClock clock(at(9));
    SeededRandom random(1);
    Person person;
    person.code = "MH";
    REQUIRE(makeProfile(folder, person, {Role::volunteer}, clock, random));
    CHECK((fs::status(folder + "/key.json").permissions() & fs::perms::all) == (fs::perms::owner_read | fs::perms::owner_write));
    const OwnKey own = ownKey(folder).value();
    CHECK(own.key.size() == 64);
    CHECK(own.fingerprint == digitsOf(own.key));
    CHECK_FALSE(own.locked);
    CHECK(hex(signingKey(folder, {})->publicKey()) == own.key);
    CHECK(faultOf(makeKey(folder, random)) == "key.exists");
    CHECK(faultOf(ownKey(temporaryFolder())) == "key.missing");
}

TEST_CASE("a locked key signs with its passphrase alone", "[task][keys]")
{
    const std::string folder = temporaryFolder();
    SeededRandom random(2);
    const OwnKey made = makeKey(folder, random, "three dry galls", cheap).value();
    CHECK(made.locked);
    CHECK(readFile(folder + "/key.json")->find("seed") == std::string::npos);
    CHECK(faultOf(signingKey(folder, {})) == "key.passphrase-needed");
    CHECK(faultOf(signingKey(folder, "three dry gall")) == "key.passphrase");
    CHECK(hex(signingKey(folder, "three dry galls")->publicKey()) == made.key);
    CHECK(faultOf(lockKey(folder, random, "wrong", "new", cheap)) == "key.passphrase");
    CHECK(lockKey(folder, random, "three dry galls", "four", cheap)->key == made.key);
    CHECK(faultOf(signingKey(folder, "three dry galls")) == "key.passphrase");
    CHECK_FALSE(lockKey(folder, random, "four", "", cheap)->locked);
    CHECK(hex(signingKey(folder, {})->publicKey()) == made.key);
}

TEST_CASE("a renewed key is spoken for by the one before", "[task][keys]")
{
    const std::string folder = temporaryFolder();
    SeededRandom random(3);
    const OwnKey first = makeKey(folder, random, "husk", cheap).value();
    CHECK(faultOf(renewKey(folder, random, "shell")) == "key.passphrase");
    const OwnKey second = renewKey(folder, random, "husk").value();
    CHECK(second.key != first.key);
    CHECK(second.locked);
    REQUIRE(second.follows.size() == 1);
    const KeyFollows& follows = second.follows.front();
    CHECK(follows.older == first.key);
    CHECK(follows.newer == second.key);
    Signature signature{};
    REQUIRE(bytesFromHex(follows.signature, signature));
    CHECK(verifies(publicKeyFrom(first.key).value(), followText(first.key, second.key), signature));
    CHECK_FALSE(verifies(publicKeyFrom(first.key).value(), followText(first.key, newKey(9)), signature));
    CHECK(renewKey(folder, random, "husk")->follows.size() == 2);
}

TEST_CASE("a damaged key file is refused, whatever is wrong in it", "[task][keys]")
{
    const std::string folder = temporaryFolder();
    SeededRandom random(4);
    makeKey(folder, random).value();
    const std::string good = readFile(folder + "/key.json").value();
    int refused = 0;
    for (std::size_t i = 0; i < good.size(); ++i) {
        std::string bad = good;
        bad[i] = static_cast<char>(bad[i] ^ 1);
        REQUIRE(writeFile(folder + "/key.json", bad));
        const auto key = signingKey(folder, {});
        if (key)
            REQUIRE(hex(key->publicKey()) == ownKey(folder)->key);
        refused += key ? 0 : 1;
    }
    CHECK(refused > 128);
}

TEST_CASE("a store trusts its maker's key from the first line on", "[task][keys]")
{
    Vale vale;
    const auto office = vale.as("OF");
    const auto keys = office->store().keys().all().value();
    REQUIRE(keys.size() == 1);
    CHECK(keys[0].key == ownKey(office->profile().folder)->key);
    CHECK(keys[0].person == office->me());
    CHECK(keys[0].holds());
    CHECK(office->store().journal().prove()->whole);
}

TEST_CASE("the office vouches once the fingerprint was compared", "[task][keys]")
{
    Vale vale;
    const auto office = vale.as("OF");
    const Uid person = personIn(*office, "XY");
    Vouching vouching{newKey(5), person, {Role::volunteer}, {}, false, "rang"};
    CHECK(keyStanding(*office, vouching.key, person).value() == KeyStanding::unknown);
    const auto shown = vouch(*office, vouching);
    REQUIRE(faultOf(shown) == "key.not-compared");
    CHECK(shown.error().argument("fingerprint") == digitsOf(vouching.key));
    vouching.typedFingerprint = digitsOf(newKey(6));
    CHECK(faultOf(vouch(*office, vouching)) == "key.fingerprint");
    vouching.typedFingerprint = digitsOf(vouching.key);
    done(vouch(*office, vouching));
    CHECK(keyStanding(*office, vouching.key, person).value() == KeyStanding::vouched);
    CHECK(keyStanding(*office, vouching.key, office->me()).value() == KeyStanding::otherPerson);
    CHECK(faultOf(vouch(*office, vouching)) == "key.vouched");
    CHECK(findKey(*office, digitsOf(vouching.key))->key == vouching.key);
    CHECK(findKey(*office, "XY")->key == vouching.key);
    CHECK(faultOf(findKey(*office, "12345")) == "key.unknown");
}

TEST_CASE("vouching in an office's store is the office's, and never for one's own key", "[task][keys]")
{
    Vale vale;
    const auto volunteer = vale.as("MH");
    const Uid person = personIn(*volunteer, "XY");
    const std::string key = newKey(7);
    CHECK(faultOf(vouch(*volunteer, {key, person, {}, digitsOf(key), false, {}})) == "role.needed");
    CHECK(faultOf(withdrawKey(*volunteer, key, {})) == "role.needed");
    const auto office = vale.as("OF");
    CHECK(faultOf(vouch(*office, {key, office->me(), {}, digitsOf(key), false, {}})) == "key.own");
    CHECK(faultOf(vouch(*office, {"abc", person, {}, {}, false, {}})) == "key.form");
}

TEST_CASE("a changed key of a known person is loud, and takes the old one's place only when that is said", "[task][keys]")
{
    Vale vale;
    const auto office = vale.as("OF");
    const Uid person = personIn(*office, "XY");
    const std::string old = newKey(8), fresh = newKey(9);
    done(vouch(*office, {old, person, {Role::volunteer}, digitsOf(old), false, {}}));
    CHECK(keyStanding(*office, fresh, person).value() == KeyStanding::changed);
    CHECK(faultOf(vouch(*office, {fresh, person, {}, digitsOf(fresh), false, {}})) == "key.changed");
    done(vouch(*office, {fresh, person, {}, digitsOf(fresh), true, "lost laptop"}));
    CHECK(keyStanding(*office, old, person).value() == KeyStanding::withdrawn);
    CHECK(keyStanding(*office, fresh, person).value() == KeyStanding::vouched);
    CHECK(faultOf(vouch(*office, {old, person, {}, digitsOf(old), true, {}})) == "key.withdrawn");
    done(withdrawKey(*office, fresh, "given away"));
    CHECK(faultOf(withdrawKey(*office, fresh, {})) == "key.withdrawn");
    CHECK(faultOf(withdrawKey(*office, newKey(10), {})) == "key.unknown");
}

TEST_CASE("somebody else who comes under a known code is loud, whoever it is", "[task][keys]")
{
    Vale vale;
    const auto office = vale.as("OF");
    const Uid known = personIn(*office, "XY");
    const std::string old = newKey(8), fresh = newKey(9);
    done(vouch(*office, {old, known, {Role::volunteer}, digitsOf(old), false, {}}));
    const Uid stranger = office->ids().make();
    CHECK(keyStanding(*office, fresh, stranger, "XY").value() == KeyStanding::sameCode);
    CHECK(keyStanding(*office, fresh, stranger, "XZ").value() == KeyStanding::unknown);
    Vouching vouching{fresh, stranger, {Role::volunteer}, digitsOf(fresh), false, {}, "XY"};
    CHECK(faultOf(vouch(*office, vouching)) == "key.same-code");
    SECTION("two people with one code")
    {
        vouching.anotherPerson = true;
        done(vouch(*office, vouching));
        CHECK(keyStanding(*office, old, known).value() == KeyStanding::vouched);
    }
    SECTION("the same person in a new profile")
    {
        vouching.instead = true;
        done(vouch(*office, vouching));
        CHECK(keyStanding(*office, old, known).value() == KeyStanding::withdrawn);
    }
    CHECK(keyStanding(*office, fresh, stranger, "XY").value() == KeyStanding::vouched);
    CHECK(office->store().journal().prove()->whole);
}
