// Reading beside using: order, faults and ends.

#include "core/exchange/bundle/lines_ahead.h"

#include <stdexcept>
#include <string>

#include "tests/support/catch.h"

namespace cupule {

namespace {

using Ahead = LinesAhead<std::string>;

constexpr int many = 20'000;                                         // some megabytes: more piles than may wait

std::string lineOf(int number)
{
    return std::to_string(number) + std::string(static_cast<std::size_t>(number % 300), '.');
}

Status giveMany(const Ahead::Add& add)
{
    for (int i = 1; i <= many; ++i)
        if (auto added = add(lineOf(i)); !added)
            return added;
    return {};
}

std::string same(std::string_view text)
{
    return std::string(text);
}

} // namespace

TEST_CASE("lines are used in their order, each once", "[exchange][bundle]")
{
    int used = 0;
    const auto done = Ahead::run(giveMany, same, [&](const std::string& line, std::int64_t number) -> Status {
        if (number != used + 1 || line != lineOf(used + 1))
            return fail("test.order", FaultKind::data);
        ++used;
        return {};
    });
    CHECK(done.has_value());
    CHECK(used == many);
    CHECK(Ahead::run([](const Ahead::Add&) { return Status(); }, same, [](std::string&, std::int64_t) { return Status(); }).has_value());
}

TEST_CASE("a fault of a line ends all, whatever is still to be read", "[exchange][bundle]")
{
    for (const std::int64_t at : {1, 9'000, many}) {
        CAPTURE(at);
        std::int64_t last = 0;
        const auto done = Ahead::run(giveMany, same, [&](std::string&, std::int64_t number) -> Status {
            last = number;
            return number == at ? Status(fail("test.line", FaultKind::data)) : Status();
        });
        REQUIRE_FALSE(done);
        CHECK(done.error().code == "test.line");
        CHECK(last == at);
    }
}

TEST_CASE("a fault of giving comes after all lines that were given before it", "[exchange][bundle]")
{
    std::int64_t last = 0;
    const auto give = [](const Ahead::Add& add) -> Status {
        if (auto given = giveMany(add); !given)
            return given;
        return fail("test.give", FaultKind::io);
    };
    const auto done = Ahead::run(give, same, [&](std::string&, std::int64_t number) {
        last = number;
        return Status();
    });
    REQUIRE_FALSE(done);
    CHECK(done.error().code == "test.give");
    CHECK(last == many);
    const auto both = Ahead::run(give, same, [](std::string&, std::int64_t number) { return number == many ? Status(fail("test.line", FaultKind::data)) : Status(); });
    REQUIRE_FALSE(both);
    CHECK(both.error().code == "test.line");
}

TEST_CASE("what is thrown beside is thrown to whoever asked", "[exchange][bundle]")
{
    const auto use = [](std::string&, std::int64_t) { return Status(); };
    const auto read = [](std::string_view text) {
        if (text == lineOf(7'000))
            throw std::runtime_error("read");
        return std::string(text);
    };
    CHECK_THROWS_WITH(Ahead::run(giveMany, read, use), "read");
    const auto give = [](const Ahead::Add& add) -> Status {
        if (auto added = add("one"); !added)
            return added;
        throw std::runtime_error("give");
    };
    CHECK_THROWS_WITH(Ahead::run(give, same, use), "give");
    CHECK_THROWS_WITH(Ahead::run(giveMany, same, [](std::string&, std::int64_t) -> Status { throw std::runtime_error("use"); }), "use");
}

} // namespace cupule
