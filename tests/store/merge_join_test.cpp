#include "core/store/merge_join.h"

#include <algorithm>
#include <map>
#include <set>

#include <nlohmann/json.hpp>

#include "core/base/random.h"
#include "core/record/json.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using Json = nlohmann::json;

Uid id(int number)
{
    Uid uid;
    uid.bytes[6] = 0x70;
    uid.bytes[14] = static_cast<std::uint8_t>(number >> 8);
    uid.bytes[15] = static_cast<std::uint8_t>(number & 255);
    return uid;
}

GraphRevision revision(int number, std::vector<int> parents, const Json& content)
{
    GraphRevision made{id(number), {}, content.dump()};
    for (const int parent : parents)
        made.parents.push_back(id(parent));
    return made;
}

JoinedNoun joined(const std::vector<GraphRevision>& revisions)
{
    auto result = joinRevisions(revisions);
    REQUIRE(result);
    return *result;
}

const Json start{{"note", "gate"}, {"label", "T-1"}, {"effort", {{"minutes", 5}, {"trees", 1}}}};

Json with(Json content, const Json& change)
{
    content.merge_patch(change);
    return content;
}

} // namespace

TEST_CASE("one head is taken as it is", "[store][merge]")
{
    const auto one = joined({revision(1, {}, start), revision(2, {1}, with(start, {{"note", "weir"}}))});
    CHECK(one.content == with(start, {{"note", "weir"}}).dump());
    CHECK(one.heads == std::vector{id(2)});
    CHECK(one.conflicts.empty());
}

TEST_CASE("changes to different fields are joined", "[store][merge]")
{
    const auto both = joined({revision(1, {}, start), revision(2, {1}, with(start, {{"note", "weir"}})),
                              revision(3, {1}, with(start, {{"effort", {{"minutes", 9}}}})),
                              revision(4, {1}, with(start, {{"label", nullptr}, {"fate", "felled"}}))});
    CHECK(Json::parse(both.content) == Json{{"note", "weir"}, {"effort", {{"minutes", 9}, {"trees", 1}}}, {"fate", "felled"}});
    CHECK(both.heads == std::vector{id(2), id(3), id(4)});
    CHECK(both.conflicts.empty());
}

TEST_CASE("two who changed one field differently are a conflict in which both sides are kept", "[store][merge]")
{
    const auto both = joined({revision(1, {}, start), revision(2, {1}, with(start, {{"note", "weir"}})),
                              revision(3, {1}, with(start, {{"note", nullptr}}))});
    REQUIRE(both.conflicts.size() == 1);
    CHECK(both.conflicts[0] == FieldConflict{"note", {{id(2), "\"weir\""}, {id(3), ""}}});
    CHECK_FALSE(Json::parse(both.content).contains("note"));   // that of the greatest id
    const auto same = joined({revision(1, {}, start), revision(2, {1}, with(start, {{"note", "weir"}})),
                              revision(3, {1}, with(start, {{"note", "weir"}, {"label", "T-2"}}))});
    CHECK(same.conflicts.empty());
}

TEST_CASE("a conflict is settled by a revision with all its sides as parents, whichever value it takes", "[store][merge]")
{
    const std::string note = GENERATE("weir", "ford", "mill");
    const std::vector<GraphRevision> revisions{revision(1, {}, start), revision(2, {1}, with(start, {{"note", "weir"}})),
                                               revision(3, {1}, with(start, {{"note", "ford"}})),
                                               revision(4, {2, 3}, with(start, {{"note", note}})),
                                               revision(5, {1}, with(start, {{"label", "T-9"}}))};
    const auto settled = joined(revisions);
    CHECK(settled.conflicts.empty());
    CHECK(Json::parse(settled.content)["note"] == note);
    CHECK(Json::parse(settled.content)["label"] == "T-9");
}

TEST_CASE("entries of a list are fields of their own, a position is one", "[store][merge]")
{
    const Json visit{{"observations", {{{"sign", "S01"}, {"answer", "seen"}}, {{"sign", "S02"}, {"answer", "not-seen"}}}},
                     {"position", {{"latitude", 52}, {"longitude", -2}}}};
    Json one = visit, other = visit;
    one["observations"][0]["count"] = 3;
    one["position"]["latitude"] = 53;
    other["observations"].erase(1);
    other["observations"].push_back({{"sign", "S05"}, {"answer", "seen"}});
    other["position"]["longitude"] = -3;
    const auto both = joined({revision(1, {}, visit), revision(2, {1}, one), revision(3, {1}, other)});
    const Json content = Json::parse(both.content);
    REQUIRE(content["observations"].size() == 2);
    CHECK(content["observations"][0] == one["observations"][0]);
    CHECK(content["observations"][1]["sign"] == "S05");
    REQUIRE(both.conflicts.size() == 1);
    CHECK(both.conflicts[0].path == "position");
    CHECK(content["position"] == other["position"]);
}

TEST_CASE("a list whose entries cannot be told apart is one field", "[store][merge]")
{
    const Json once{{"observations", {{{"sign", "S01"}}}}};
    const Json twice{{"observations", {{{"sign", "S01"}}, {{"sign", "S01"}, {"answer", "seen"}}}}};
    const Json other{{"observations", {{{"sign", "S01"}}, {{"sign", "S02"}}}}};
    const auto both = joined({revision(1, {}, once), revision(2, {1}, twice), revision(3, {1}, other)});
    REQUIRE(both.conflicts.size() == 1);
    CHECK(both.conflicts[0].path == "observations");
    CHECK(Json::parse(both.content) == other);
}

TEST_CASE("the clock has no say: a child is later than its parent whatever its id", "[store][merge]")
{
    const auto late = joined({revision(9, {}, start), revision(2, {9}, with(start, {{"note", "weir"}})),
                              revision(5, {9}, with(start, {{"label", "T-3"}}))});
    CHECK(Json::parse(late.content)["note"] == "weir");
    CHECK(late.conflicts.empty());
}

TEST_CASE("an unknown parent leaves a field open until it arrives", "[store][merge]")
{
    const auto first = revision(1, {}, start), second = revision(2, {1}, with(start, {{"note", "weir"}})),
               third = revision(3, {1}, with(start, {{"label", "T-2"}}));
    const auto without = joined({second, third});
    CHECK(without.conflicts.size() == 2);
    CHECK(joined({third, second, first}).conflicts.empty());
}

TEST_CASE("parents in a circle and contents that are no nouns are refused", "[store][merge]")
{
    CHECK(joinRevisions({revision(1, {2}, start), revision(2, {1}, start)}).error().code == "store.cycle");
    CHECK(joinRevisions({revision(1, {}, Json::array())}).error().code == "record.json");
}

namespace {

/// Some devices that edit one noun and now and then take in what another has.
struct World {
    explicit World(std::uint64_t seed) : random(seed), devices(2 + random.below(4)) {}

    void edit(std::size_t device)
    {
        auto& known = devices[device];
        GraphRevision made;
        do
            random.fill(made.id.bytes);    // ids in no order at all: clocks are wrong
        while (all.contains(made.id));
        Json content = start;
        if (!known.empty()) {
            const auto now = joined(listOf(known));
            content = Json::parse(now.content);
            made.parents = now.heads;
        }
        for (std::uint64_t changes = 1 + random.below(3); changes > 0; --changes)
            change(content);
        made.content = content.dump();
        all[made.id] = made;
        known.insert(made.id);
    }

    void change(Json& content)
    {
        const int value = static_cast<int>(random.below(4));
        switch (random.below(5)) {
        case 0: content["note"] = std::to_string(value); break;
        case 1: content["effort"]["minutes"] = value; break;
        case 2: content["effort"]["trees"] = value; break;
        case 3: content.erase("label"); break;
        default: {
            const std::string sign = "S0" + std::to_string(random.below(3));
            auto& list = content["observations"];
            if (!list.is_array())
                list = Json::array();
            const auto at = std::find_if(list.begin(), list.end(), [&](const Json& entry) { return entry["sign"] == sign; });
            if (at == list.end())
                list.push_back({{"sign", sign}, {"count", value}});
            else if (value == 0)
                list.erase(at);
            else
                (*at)["count"] = value;
            if (list.empty())
                content.erase("observations");
        }
        }
    }

    std::vector<GraphRevision> listOf(const std::set<Uid>& ids) const
    {
        std::vector<GraphRevision> list;
        for (const Uid& one : ids)
            list.push_back(all.at(one));
        return list;
    }

    void run()
    {
        edit(0);
        for (auto& device : devices)
            device.insert(devices[0].begin(), devices[0].end());
        for (std::uint64_t steps = 3 + random.below(20); steps > 0; --steps) {
            const auto device = static_cast<std::size_t>(random.below(devices.size()));
            if (random.below(3) > 0) {
                edit(device);
                continue;
            }
            const auto& other = devices[static_cast<std::size_t>(random.below(devices.size()))];
            devices[device].insert(other.begin(), other.end());
        }
    }

    std::set<Uid> everything() const
    {
        std::set<Uid> ids;
        for (const auto& [one, made] : all)
            ids.insert(one);
        return ids;
    }

    SeededRandom random;
    std::map<Uid, GraphRevision> all;
    std::vector<std::set<Uid>> devices;
};

/// Whether `older` is reached from `newer` by parents.
bool isBefore(const World& world, const Uid& older, const Uid& newer)
{
    const auto& parents = world.all.at(newer).parents;
    return std::any_of(parents.begin(), parents.end(), [&](const Uid& parent) { return parent == older || isBefore(world, older, parent); });
}

} // namespace

TEST_CASE("devices that know the same revisions see the same, in whatever order these came", "[store][merge][property]")
{
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        CAPTURE(seed);
        World world(seed);
        world.run();
        const std::set<Uid> everything = world.everything();
        const auto expected = joined(world.listOf(everything));
        for (int turn = 0; turn < 5; ++turn) {
            auto list = world.listOf(everything);
            for (std::size_t i = list.size(); i > 1; --i)
                std::swap(list[i - 1], list[static_cast<std::size_t>(world.random.below(i))]);
            list.push_back(list[static_cast<std::size_t>(world.random.below(list.size()))]);   // one of them twice
            REQUIRE(joined(list) == expected);
        }
    }
}

TEST_CASE("nothing anybody said last is dropped, and what only one side changed holds", "[store][merge][property]")
{
    int conflicts = 0, joins = 0;
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        CAPTURE(seed);
        World world(seed);
        world.run();
        const std::set<Uid> everything = world.everything();
        const auto result = joined(world.listOf(everything));
        joins += result.heads.size() > 1 ? 1 : 0;
        // "note" worked out by hand: who differs from a parent and is before nobody else who does
        std::vector<Uid> speak;
        const auto note = [&](const Uid& one) { return Json::parse(world.all.at(one).content).value("note", ""); };
        for (const Uid& one : everything) {
            const auto& parents = world.all.at(one).parents;
            if (parents.empty() || std::any_of(parents.begin(), parents.end(), [&](const Uid& parent) { return note(parent) != note(one); }))
                speak.push_back(one);
        }
        std::set<std::string> left;
        for (const Uid& one : speak)
            if (std::none_of(speak.begin(), speak.end(), [&](const Uid& other) { return isBefore(world, one, other); }))
                left.insert(note(one));
        const auto conflict = std::find_if(result.conflicts.begin(), result.conflicts.end(), [](const FieldConflict& each) { return each.path == "note"; });
        if (left.size() == 1) {
            REQUIRE(conflict == result.conflicts.end());
            REQUIRE(Json::parse(result.content).value("note", "") == *left.begin());
            continue;
        }
        ++conflicts;
        REQUIRE(conflict != result.conflicts.end());
        std::set<std::string> sides;
        for (const auto& side : conflict->sides)
            sides.insert(side.value.empty() ? "" : Json::parse(side.value).get<std::string>());
        REQUIRE(sides == left);
    }
    CHECK(conflicts > 10);
    CHECK(joins > 10);
}

TEST_CASE("whoever settles a conflict ends it for everybody", "[store][merge][property]")
{
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        CAPTURE(seed);
        World world(seed);
        world.run();
        const std::set<Uid> everything = world.everything();
        world.devices[0] = everything;
        world.edit(0);
        std::vector<GraphRevision> list;
        for (const auto& [one, made] : world.all)
            list.push_back(made);
        const auto settled = joined(list);
        REQUIRE(settled.heads.size() == 1);
        REQUIRE(settled.conflicts.empty());
    }
}

} // namespace cupule
