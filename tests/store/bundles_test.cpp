#include "core/store/outgoing.h"

#include <algorithm>
#include <set>

#include "core/record/json.h"
#include "core/store/health.h"
#include "core/store/keys.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

Going collect(Bench& bench, GoingKind kind = GoingKind::day)
{
    return need(bench.store->outgoing().collect(kind));
}

std::multiset<std::string> kindsOf(const Going& going)
{
    std::multiset<std::string> kinds;
    for (const auto& record : going.records)
        kinds.insert(record.type == "revision" ? record.noun : record.type);
    return kinds;
}

/// Notes what goes as a written bundle; its id.
Uid written(Bench& bench, const Going& going, std::int64_t number)
{
    BundleNote note;
    note.id = bench.ids.make();
    note.kind = "day";
    note.key = hex(sha256("key"));
    note.number = number;
    note.manifest = hex(sha256("manifest"));
    note.store = bench.store->info().id;
    note.made = bench.clock.now();
    for (const auto& chain : going.chains)
        note.ends.push_back({chain.incarnation.id, chain.incarnation.lines});
    bench.change([&](Change& c) { need(bench.store->bundles().add(c, note, going.carried)); });
    CHECK(need(bench.store->bundles().find(note.id)) == note);
    return note.id;
}

} // namespace

TEST_CASE("only what is handed in leaves, with everything that it names", "[store][bundles]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    const Going going = collect(bench);
    // one visit of four is handed in; its tree, site, observer, photo, sample with a line; the leave is not named by the sample
    CHECK(kindsOf(going) == std::multiset<std::string>{"custody", "event", "person", "photo", "sample", "site", "tree", "visit"});
    CHECK(going.visits == 1);
    CHECK_FALSE(going.corrections);
    CHECK(going.pictures == std::vector{s.photo.sha256});
    REQUIRE(going.personal.size() == 1);
    CHECK(going.personal[0].entity == s.observer.id);
    CHECK(going.personal[0].salt.has_value());
    for (const auto& record : going.records)
        CHECK(record.content.find("Hollin") == std::string::npos);
    // the whole chain goes, drafts' lines too
    REQUIRE(going.chains.size() == 1);
    CHECK(going.chains[0].going == going.chains[0].incarnation.lines);
    CHECK(std::none_of(going.lines.begin(), going.lines.end(), [](const GoingLine& line) { return line.before.has_value(); }));
}

TEST_CASE("a sample takes along the leaves that it names", "[store][bundles]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    s.sample.leaveOwner = s.leave.id;
    bench.change([&](Change& c) { need(bench.store->samples().save(c, s.sample)); });
    const Going going = collect(bench);
    CHECK(kindsOf(going).count("leave") == 1);
    CHECK(kindsOf(going).count("sample") == 2);
    CHECK(going.personal.size() == 2);
}

TEST_CASE("what was taken in elsewhere does not go again, what is new does, custody lines too", "[store][bundles]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    const Going first = collect(bench);
    const Uid bundle = written(bench, first, 1);
    CHECK(kindsOf(collect(bench)) == kindsOf(first));   // not taken in yet: all of it again
    CHECK(collect(bench).corrections);
    bench.change([&](Change& c) { need(bench.store->bundles().acknowledge(c, bundle)); });
    bench.change([&](Change& c) { need(bench.store->bundles().acknowledge(c, bundle)); });
    CHECK(need(bench.store->bundles().acknowledged(bundle)));
    const Going none = collect(bench);
    CHECK(none.records.empty());
    CHECK(none.lines.front().line.kind == "handed-out");
    CHECK(none.lines.front().before.has_value());
    bench.change([&](Change& c) {
        CustodyLine line;
        line.id = bench.ids.make();
        line.sample = s.sample.id;
        line.written = c.at();
        need(bench.store->samples().addLine(c, line));
    });
    CHECK(kindsOf(collect(bench)) == std::multiset<std::string>{"custody"});
    s.visits[1].note = "corrected";
    bench.change([&](Change& c) { need(bench.store->visits().revise(c, s.visits[1], {}, "revised")); });
    const Going correction = collect(bench);
    CHECK(kindsOf(correction) == std::multiset<std::string>{"custody", "visit"});
    CHECK(correction.corrections);
    CHECK(correction.records.front().parents == std::vector{s.revision});
    bench.change([&](Change& c) { need(bench.store->visits().revise(c, s.visits[2], {}, "submitted")); });
    const Going both = collect(bench);
    CHECK(kindsOf(both).count("tree") == 1);            // the other visit's tree was not needed before
    CHECK_FALSE(both.corrections);
    CHECK(need(bench.store->journal().prove()).whole);
    CHECK(need(examineStore(*bench.store)).faults.size() == 1);   // the picture, which makeSeason never put into the media folder
}

TEST_CASE("decisions go with those who decided, and name the bundles that came in", "[store][bundles]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    BundleNote in;
    in.id = bench.ids.make();
    in.merged = true;
    in.kind = "day";
    in.key = hex(sha256("other"));
    in.number = 4;
    bench.change([&](Change& c) { need(bench.store->bundles().add(c, in, {})); });
    const Going going = collect(bench, GoingKind::decision);
    CHECK(kindsOf(going) == std::multiset<std::string>{"decision", "event", "person", "told"});
    CHECK(going.acknowledges == std::vector{in.id});
    CHECK(need(bench.store->keys().lastBundle(in.key)) == 4);
    // lines alone, each saying what was before it unless that goes too
    CHECK(going.lines.size() == going.records.size());
    CHECK(std::any_of(going.lines.begin(), going.lines.end(), [](const GoingLine& line) { return line.before.has_value(); }));
}

TEST_CASE("reference holds sites, regimes, people, and accepted finds with their trees", "[store][bundles]")
{
    Bench bench;
    bench.create();
    makeSeason(bench);
    const auto kinds = kindsOf(collect(bench, GoingKind::reference));
    CHECK(kinds.count("site") == 1);
    CHECK(kinds.count("regime") == 1);
    CHECK(kinds.count("person") == 2);
    CHECK(kinds.count("visit") == 1);
    CHECK(kinds.count("tree") == 1);
    CHECK(kinds.count("decision") == 1);
    CHECK(kinds.count("sample") == 0);
}

TEST_CASE("who may not decide for whom travels in reference alone", "[store][bundles]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    s.verifier.notFor = {s.observer.id};
    s.observer.notFor = {s.verifier.id};
    bench.change([&](Change& c) {
        need(bench.store->people().save(c, s.verifier));
        need(bench.store->people().save(c, s.observer));
    });
    const auto tells = [&](GoingKind kind) {
        const Going going = collect(bench, kind);
        CHECK(kindsOf(going).count("person") >= 1);
        return std::any_of(going.records.begin(), going.records.end(), [](const GoingRecord& record) {
            return record.content.find("notFor") != std::string::npos;
        });
    };
    CHECK_FALSE(tells(GoingKind::day));
    CHECK_FALSE(tells(GoingKind::decision));
    CHECK(tells(GoingKind::reference));
}

TEST_CASE("what was erased goes as erased", "[store][bundles]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    bench.change([&](Change& c) { need(bench.store->people().erase(c, s.observer.id, "letter 1")); });
    // The word that somebody is to be forgotten is the office's, and goes with its decisions.
    CHECK(kindsOf(need(bench.store->outgoing().collect(GoingKind::decision))).count("erasure") == 1);
    const Going going = collect(bench);
    CHECK(kindsOf(going).count("erasure") == 0);
    REQUIRE(going.personal.size() == 1);
    CHECK_FALSE(going.personal[0].salt.has_value());
    CHECK(going.personal[0].payload.empty());
    CHECK(need(bench.store->people().erased(hex(going.personal[0].commitment))));
    CHECK_FALSE(need(bench.store->people().erased(hex(sha256("another")))));
}

TEST_CASE("notes about bundles are only added, and the journal proves them", "[store][bundles]")
{
    Bench bench;
    Store& store = bench.create();
    makeSeason(bench);
    const Uid bundle = written(bench, collect(bench), 1);
    bench.change([&](Change& c) { need(store.bundles().acknowledge(c, bundle)); });
    CHECK(need(store.bundles().nextNumber(hex(sha256("key")))) == 2);
    CHECK(need(store.bundles().nextNumber(hex(sha256("other")))) == 1);
    CHECK(need(store.bundles().carried(bundle)).size() == collect(bench).carried.size() + 8);
    auto& db = store.core().db;
    for (const char* table : {"bundle", "bundle_line", "acknowledgement"})
        CHECK_THROWS_AS(db.run(std::string("DELETE FROM ") + table), StoreError);
    for (const char* change : {"bundle SET number = 9", "bundle_line SET bundle = bundle", "acknowledgement SET bundle = bundle"})
        CHECK_THROWS_AS(db.run(std::string("UPDATE ") + change), StoreError);
    db.run("DROP TRIGGER bundle_append_only; UPDATE bundle SET content = replace(content, '\"day\"', '\"night\"')");
    const auto proof = need(store.journal().prove());
    CHECK(proof.brokenWhy == "content");
    CHECK(proof.brokenNoun == "bundle");
}

} // namespace cupule
