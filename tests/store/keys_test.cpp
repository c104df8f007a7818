#include "core/store/keys.h"

#include <algorithm>

#include "core/base/hash.h"
#include "core/store/health.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

std::string keyNamed(const char* name)
{
    return hex(sha256(name));
}

KeyNote note(Bench& bench, const std::string& key, KeyStep step, const Uid& person, std::vector<Role> roles = {}, std::int64_t upTo = 0)
{
    KeyNote note;
    note.id = bench.ids.make();
    note.key = key;
    note.step = step;
    note.person = person;
    note.roles = std::move(roles);
    note.upTo = upTo;
    note.at = bench.clock.now();
    return note;
}

} // namespace

TEST_CASE("a key holds once it was vouched for, until it is withdrawn", "[store][keys]")
{
    Bench bench;
    Store& store = bench.create();
    const Uid person = bench.ids.make();
    const std::string key = keyNamed("one");
    CHECK_FALSE(need(store.keys().find(key)));
    bench.change([&](Change& c) { need(store.keys().add(c, note(bench, key, KeyStep::vouched, person, {Role::verifier}))); });
    auto known = need(store.keys().find(key)).value();
    CHECK(known.holds());
    CHECK(known.person == person);
    CHECK(known.roles == std::vector{Role::verifier});
    bench.change([&](Change& c) { need(store.keys().add(c, note(bench, key, KeyStep::withdrawn, person, {}, 7))); });
    bench.change([&](Change& c) { need(store.keys().add(c, note(bench, key, KeyStep::vouched, person, {Role::office}))); });
    known = need(store.keys().find(key)).value();
    CHECK_FALSE(known.holds());
    CHECK(known.upTo == 7);
    CHECK(need(store.keys().notes(key)).size() == 3);
    CHECK(need(store.journal().prove()).whole);
    CHECK(need(examineStore(store)).faults.empty());
}

TEST_CASE("what is known of a key does not depend on the order of what was said", "[store][keys]")
{
    Bench first;
    const Uid person = first.ids.make();
    const std::string key = keyNamed("one");
    std::vector<KeyNote> notes{note(first, key, KeyStep::vouched, person, {Role::volunteer}),
                               note(first, key, KeyStep::vouched, person, {Role::verifier, Role::office}),
                               note(first, key, KeyStep::withdrawn, person, {}, 9),
                               note(first, key, KeyStep::withdrawn, person, {}, 4)};
    std::vector<int> order{0, 1, 2, 3};
    do {
        Bench bench;
        Store& store = bench.create();
        bench.change([&](Change& c) {
            for (const int at : order)
                need(store.keys().add(c, notes[static_cast<std::size_t>(at)]));
        });
        const auto known = need(store.keys().find(key)).value();
        REQUIRE(known.roles == std::vector{Role::volunteer, Role::verifier, Role::office});
        REQUIRE(known.upTo == 4);
        REQUIRE_FALSE(known.holds());
    } while (std::next_permutation(order.begin(), order.end()));
}

TEST_CASE("a key that was vouched for as two people's holds for neither", "[store][keys]")
{
    Bench bench;
    Store& store = bench.create();
    const Uid one = bench.ids.make(), other = bench.ids.make();
    const std::string key = keyNamed("one");
    bench.change([&](Change& c) {
        need(store.keys().add(c, note(bench, key, KeyStep::vouched, one)));
        need(store.keys().add(c, note(bench, key, KeyStep::vouched, other)));
        need(store.keys().add(c, note(bench, keyNamed("two"), KeyStep::vouched, one)));
    });
    CHECK_FALSE(need(store.keys().find(key))->holds());
    CHECK(need(store.keys().ofPerson(one)).size() == 2);
    CHECK(need(store.keys().ofPerson(other)).size() == 1);
    CHECK(need(store.keys().all()).size() == 2);
}

TEST_CASE("notes about keys are only added, and the journal proves them", "[store][keys]")
{
    Bench bench;
    Store& store = bench.create();
    const Uid person = bench.ids.make();
    bench.change([&](Change& c) { need(store.keys().add(c, note(bench, keyNamed("one"), KeyStep::vouched, person))); });
    auto& db = store.core().db;
    CHECK_THROWS_AS(db.run("UPDATE key_note SET person = randomblob(16)"), StoreError);
    CHECK_THROWS_AS(db.run("DELETE FROM key_note"), StoreError);
    db.run("DROP TRIGGER key_note_append_only");
    SECTION("a changed content is found")
    {
        db.run("UPDATE key_note SET content = replace(content, 'vouched', 'withdrawn')");
        CHECK(need(store.journal().prove()).brokenNoun == "key");
    }
    SECTION("a lost note is found")
    {
        db.run("DROP TRIGGER key_note_kept; DELETE FROM key_note");
        const auto proof = need(store.journal().prove());
        CHECK(proof.brokenWhy == "content");
        CHECK(proof.brokenNoun == "key");
    }
    SECTION("columns that differ from the content are found")
    {
        db.run("UPDATE key_note SET key = '" + keyNamed("two") + "'");
        const auto health = need(examineStore(store));
        CHECK(std::count_if(health.faults.begin(), health.faults.end(), [](const StoreFault& fault) {
                  return fault.code == "invariant" && fault.what.starts_with("key-note ");
              }) == 1);
    }
}

} // namespace cupule
