#include "core/store/merge_plan.h"

#include <algorithm>

#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

Going going(Bench& bench)
{
    return need(bench.store->outgoing().collect(GoingKind::day));
}

MergePlan planOf(Bench& bench, const Going& incoming)
{
    MergePlanner planner(bench.store->core());
    for (const GoingRecord& record : incoming.records)
        need(planner.add(record));
    return need(planner.plan());
}

const PlannedNoun* find(const MergePlan& plan, const Uid& entity)
{
    const auto found = std::find_if(plan.nouns.begin(), plan.nouns.end(), [&](const PlannedNoun& each) { return each.entity == entity; });
    return found == plan.nouns.end() ? nullptr : &*found;
}

/// Another device that has the same store from a copy, and goes on by itself.
struct Copied : Bench {
    Copied(Bench& from, std::uint64_t seed)
    {
        from.store.reset();
        std::filesystem::copy_file(from.path, path);
        from.reopen();
        random = SeededRandom(seed);
        clock.advanceMilliseconds(-86'400'000LL * 400);   // a clock more than a year behind
        device = UidMaker(clock, random).make();
        reopen();
    }
};

void revise(Bench& bench, Visit visit, const std::string& note, std::optional<int> minutes)
{
    if (!note.empty())
        visit.note = note;
    if (minutes)
        visit.effort.minutes = minutes;
    bench.change([&](Change& c) { need(bench.store->visits().revise(c, visit, {}, "revised")); });
}

} // namespace

TEST_CASE("for an empty store everything is new, for the store itself nothing is", "[store][merge]")
{
    Bench laptop, office;
    laptop.create();
    office.create();
    const auto s = makeSeason(laptop);
    const Going day = going(laptop);
    const MergePlan plan = planOf(office, day);
    CHECK(plan.fresh == static_cast<std::int64_t>(day.records.size()));
    CHECK(plan.known == 0);
    REQUIRE(find(plan, s.visits[1].id) != nullptr);
    CHECK(find(plan, s.visits[1].id)->fresh);
    CHECK(find(plan, s.visits[1].id)->joined.content == toJson(s.visits[1]));
    CHECK(find(plan, s.visits[0].id) == nullptr);       // a draft
    CHECK(plan.conflicts() == 0);
    const MergePlan again = planOf(laptop, day);
    CHECK(again.fresh == 0);
    CHECK(again.known == plan.fresh);
    CHECK(again.nouns.empty());
}

TEST_CASE("two devices that changed different fields join, one field changed by both is a conflict", "[store][merge]")
{
    Bench laptop;
    laptop.create();
    const auto s = makeSeason(laptop);
    Copied other(laptop, 7);
    revise(laptop, s.visits[1], "by the ford", {});
    SECTION("different fields")
    {
        revise(other, s.visits[1], {}, 12);
        for (Bench* bench : {&laptop, static_cast<Bench*>(&other)}) {
            const MergePlan plan = planOf(*bench, going(bench == &laptop ? static_cast<Bench&>(other) : laptop));
            const PlannedNoun* visit = find(plan, s.visits[1].id);
            REQUIRE(visit != nullptr);
            CHECK_FALSE(visit->fresh);
            CHECK(visit->revisions == 1);
            const auto joined = need(fromJson<Visit>(visit->joined.content));
            CHECK(joined.note == "by the ford");
            CHECK(joined.effort.minutes == 12);
            CHECK(plan.conflicts() == 0);
        }
    }
    SECTION("the same field")
    {
        revise(other, s.visits[1], "by the mill", {});
        const MergePlan here = planOf(laptop, going(other)), there = planOf(other, going(laptop));
        REQUIRE(here.conflicts() == 1);
        CHECK(find(here, s.visits[1].id)->joined == find(there, s.visits[1].id)->joined);
        CHECK(find(here, s.visits[1].id)->joined.conflicts[0].path == "note");
    }
}

TEST_CASE("a record known by its id with another content is refused", "[store][merge]")
{
    Bench laptop;
    laptop.create();
    makeSeason(laptop);
    for (GoingRecord record : going(laptop).records) {
        CAPTURE(record.type, record.noun);
        MergePlanner planner(laptop.store->core());
        REQUIRE(planner.add(record));
        record.content += " ";
        const auto refused = planner.add(record);
        REQUIRE_FALSE(refused);
        CHECK(refused.error().code == "merge.altered");
    }
}

TEST_CASE("a code or a sample number that is somebody else's here is named", "[store][merge]")
{
    Bench laptop, office;
    laptop.create();
    office.create();
    const auto s = makeSeason(laptop);
    office.random = SeededRandom(99);
    const Person other = office.person("MH", "Moss Hart");
    office.change([&](Change& c) { need(office.store->people().save(c, other)); });
    const MergePlan plan = planOf(office, going(laptop));
    CHECK(plan.clashes == std::vector{PlannedClash{"person", "MH", other.id, s.observer.id}});
}

} // namespace cupule
