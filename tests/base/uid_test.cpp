#include "core/base/uid.h"

#include <set>

#include "tests/support/catch.h"

using namespace cupule;

// Source: RFC 9562, section 5.7 and appendix A.6 (the example's time field, version and variant).
TEST_CASE("an id has the layout of UUID version 7", "[base][uid]")
{
    const FixedClock clock(Instant{0x017F22E279B0, 0});
    SeededRandom random(1);
    UidMaker maker(clock, random);
    const Uid id = maker.make();
    CHECK(id.text().substr(0, 13) == "017f22e2-79b0");
    CHECK((id.bytes[6] >> 4) == 7);
    CHECK((id.bytes[8] >> 6) == 2);
    CHECK(Uid::parse(id.text()).value() == id);
}

TEST_CASE("ids grow while the clock stands still and when it goes back", "[base][uid]")
{
    FixedClock clock(Instant{1'700'000'000'000, 0});
    SeededRandom random(2);
    UidMaker maker(clock, random);
    Uid last = maker.make();
    std::set<Uid> all{last};
    for (int i = 0; i < 10'000; ++i) {
        if (i == 5000)
            clock.advanceMilliseconds(-60'000);
        const Uid next = maker.make();
        REQUIRE(last < next);
        all.insert(next);
        last = next;
    }
    CHECK(all.size() == 10'001);
}

TEST_CASE("an id is read in either case, and anything else is refused", "[base][uid]")
{
    CHECK(Uid::parse("017F22E2-79B0-7CC3-98C4-DC0C0C07398F").value().text() == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    CHECK(Uid::parse("").value().isNull());
    for (const char* bad : {"017f22e279b07cc398c4dc0c0c07398f", "017f22e2-79b0-7cc3-98c4-dc0c0c07398",
                            "017f22e2-79b0-7cc3-98c4-dc0c0c07398g", "017f22e2x79b0-7cc3-98c4-dc0c0c07398f"}) {
        CAPTURE(bad);
        REQUIRE_FALSE(Uid::parse(bad));
        CHECK(Uid::parse(bad).error().code == "base.uid");
    }
}
