#include "core/base/read_ahead.h"

#include <stdexcept>
#include <vector>

#include "tests/support/catch.h"

namespace cupule {

namespace {

struct Number {
    int given = 0, squared = 0;
};

/// Numbers from 1 on, three at a time.
struct Numbers {
    int last = 0, most = 0;
    std::vector<Number> next()
    {
        std::vector<Number> pile;
        while (last < most && pile.size() < 3)
            pile.push_back({++last, 0});
        return pile;
    }
};

void square(Number& number)
{
    number.squared = number.given * number.given;
}

} // namespace

TEST_CASE("what is read ahead is used in its order, each once", "[base]")
{
    for (const int most : {0, 1, 3, 100}) {
        Numbers numbers{0, most};
        int used = 0;
        const auto done = useReadAhead([&] { return numbers.next(); }, square, [&](const Number& number) -> Status {
            ++used;
            return number.given == used && number.squared == used * used ? Status() : Status(fail("test.order", FaultKind::data));
        });
        CHECK(done.has_value());
        CHECK(used == most);
    }
}

TEST_CASE("a fault of the use ends the reading, and what the reading throws is thrown to whoever asked", "[base]")
{
    Numbers numbers{0, 100};
    const auto done = useReadAhead([&] { return numbers.next(); }, square,
                                   [](const Number& number) { return number.given == 5 ? Status(fail("test.five", FaultKind::data)) : Status(); });
    REQUIRE_FALSE(done);
    CHECK(done.error().code == "test.five");
    CHECK(numbers.last <= 9);              // the pile of the fifth and the one ahead of it
    Numbers others{0, 100};
    int used = 0;
    const auto read = [](Number& number) {
        if (number.given == 7)
            throw std::runtime_error("seven");
    };
    CHECK_THROWS_WITH(useReadAhead([&] { return others.next(); }, read,
                                   [&](const Number&) {
                                       ++used;
                                       return Status();
                                   }),
                      "seven");
    CHECK(used == 6);
}

} // namespace cupule
