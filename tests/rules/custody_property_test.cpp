// What holds for every chain, however it came about: random walks away from a complete one, and pure chance.

#include <algorithm>
#include <limits>

#include "core/base/random.h"
#include "core/rules/custody.h"
#include "tests/rules/custody_chain.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::Case;
using cupule::test::codesOf;
using cupule::test::uidOf;

namespace {

template <class T>
const T& oneOf(Random& random, const std::vector<T>& items)
{
    return items[random.below(items.size())];
}

std::string anyText(Random& random)
{
    static const std::vector<std::string> texts{"", " ", "MH", "RB", "Vale Laboratory", "B-1041", "B-1042", "S-77310",
                                                "destroyed", "voucher", "found", "not found", "\xFF\xC0", "\u2013",
                                                std::string(3000, 'x')};
    return oneOf(random, texts);
}

std::optional<Instant> anyTime(Random& random)
{
    if (random.below(5) == 0)
        return std::nullopt;
    const std::int64_t base = test::at("2026-06-11T09:00:00Z").utcMilliseconds;
    if (random.below(20) == 0)
        return Instant{random.below(2) == 0 ? 4'000'000'000'000'000 : -4'000'000'000'000'000, std::nullopt};
    Instant result{base + static_cast<std::int64_t>(random.below(600'000'000)), 60};
    if (random.below(4) == 0)
        result.offsetMinutes.reset();
    return result;
}

/// Changes one thing about one line.
void spoil(Random& random, CustodyLine& line)
{
    switch (random.below(14)) {
    case 0: line.kind = static_cast<CustodyKind>(random.below(10)); break;
    case 1: line.out = anyTime(random); break;
    case 2: line.in = anyTime(random); break;
    case 3: line.from = anyText(random); break;
    case 4: line.to = anyText(random); break;
    case 5: line.bag = anyText(random); break;
    case 6: line.seal = anyText(random); break;
    case 7: line.sealWhole = random.below(2) == 0; break;
    case 8: line.confirmed = random.below(2) == 0; break;
    case 9: line.pieces = static_cast<int>(random.below(5)) - 1; break;
    case 10: line.number = static_cast<int>(random.below(12)) - 1; break;
    case 11: line.corrects = static_cast<int>(random.below(12)) - 1; break;
    case 12: line.hygiene.boots = static_cast<Confirmed>(random.below(3)); break;
    default: line.celsius = std::numeric_limits<double>::quiet_NaN(); break;
    }
}

/// A step away from where the chain stands.
void step(Random& random, Case& walked)
{
    switch (random.below(6)) {
    case 0:
        if (!walked.lines.empty())
            walked.lines.erase(walked.lines.begin() + static_cast<std::ptrdiff_t>(random.below(walked.lines.size())));
        break;
    case 1: {
        CustodyLine& close = walked.append(CustodyKind::close, "2026-06-18T09:00:00Z");
        close.withBreak = random.below(2) == 0;
        close.reason = anyText(random);
        close.secondPerson = anyText(random);
        break;
    }
    case 2:
        if (!walked.lines.empty()) {
            CustodyLine copy = oneOf(random, walked.lines);
            copy.corrects = copy.number;
            copy.number = static_cast<int>(random.below(20));
            spoil(random, copy);
            walked.lines.push_back(copy);
        }
        break;
    default:
        if (!walked.lines.empty())
            spoil(random, walked.lines[random.below(walked.lines.size())]);
        break;
    }
}

const CustodyLine* firstOf(const std::vector<CustodyLine>& lines, CustodyKind kind)
{
    const auto found = std::find_if(lines.begin(), lines.end(), [&](const CustodyLine& l) { return l.kind == kind; });
    return found == lines.end() ? nullptr : &*found;
}

/// Two bags with different numbers, confirmed on site and never denied: read from the lines, not from the rules.
bool doubleBagged(const Case& walked)
{
    const auto lines = linesInForce(walked.lines);
    const CustodyLine* inner = firstOf(lines, CustodyKind::innerBag);
    const CustodyLine* outer = firstOf(lines, CustodyKind::outerBag);
    const CustodyLine* onSite = firstOf(lines, CustodyKind::onSite);
    const bool denied = std::any_of(lines.begin(), lines.end(), [](const CustodyLine& l) {
        return l.kind == CustodyKind::onSite && l.confirmed == false;
    });
    return inner && outer && onSite && !denied && onSite->confirmed == true && !inner->bag.empty() && !outer->bag.empty()
           && inner->bag != outer->bag;
}

void holdsAlways(const Case& walked)
{
    const SampleStatus status = walked.status();
    const bool closed = status.state == SampleState::closed || status.state == SampleState::closedWithBreak;
    REQUIRE((!closed || doubleBagged(walked)));
    REQUIRE((!status.canCloseWhole || doubleBagged(walked)));
    REQUIRE((!status.canCloseWithBreak || doubleBagged(walked)));
    REQUIRE((!closed || status.missing.empty()));
    REQUIRE((status.state != SampleState::closed || status.breaks.empty()));
    REQUIRE_FALSE((status.canCloseWhole && status.canCloseWithBreak));
    REQUIRE_FALSE((status.mustBeVoid && closed));
    REQUIRE(status.chain.size() >= 7);
    for (const auto* findings : {&status.missing, &status.breaks, &status.remarks})
        for (const Finding& finding : *findings)
            REQUIRE(std::find(custodyCodes().begin(), custodyCodes().end(), finding.code) != custodyCodes().end());
    for (const ChainLink& link : status.chain)
        REQUIRE((link.lacking.empty() || link.state != LinkState::whole));
}

} // namespace

TEST_CASE("no walk away from a complete chain closes without double-bagging", "[rules][custody]")
{
    SeededRandom random(11);
    int closings = 0, voids = 0;
    for (int walk = 0; walk < 4000; ++walk) {
        Case walked;
        for (std::size_t steps = 1 + random.below(6); steps > 0; --steps)
            step(random, walked);
        holdsAlways(walked);
        const SampleStatus status = walked.status();
        closings += status.state == SampleState::closed || status.state == SampleState::closedWithBreak ? 1 : 0;
        voids += status.mustBeVoid ? 1 : 0;
    }
    CHECK(closings > 50);   // the walks do reach the gate
    CHECK(voids > 20);
}

TEST_CASE("no chain of chance lines is beyond judging", "[rules][custody]")
{
    SeededRandom random(12);
    for (int round = 0; round < 3000; ++round) {
        Case chance;
        chance.lines.clear();
        for (std::size_t count = random.below(16); count > 0; --count) {
            CustodyLine& line = chance.append(static_cast<CustodyKind>(random.below(10)), "2026-06-11T10:00:00Z");
            for (std::size_t changes = random.below(10); changes > 0; --changes)
                spoil(random, line);
        }
        chance.sample.number = anyText(random);
        holdsAlways(chance);
    }
}

TEST_CASE("the order in which lines are handed in does not matter", "[rules][custody]")
{
    SeededRandom random(13);
    for (int round = 0; round < 300; ++round) {
        Case walked;
        for (int i = 0; i < 3; ++i)
            step(random, walked);
        for (std::size_t i = 0; i < walked.lines.size(); ++i)
            walked.lines[i].id = uidOf(static_cast<int>(500 + i));
        Case shuffled = walked;
        for (std::size_t i = shuffled.lines.size(); i > 1; --i)
            std::swap(shuffled.lines[i - 1], shuffled.lines[random.below(i)]);
        const SampleStatus a = walked.status(), b = shuffled.status();
        REQUIRE(a.missing == b.missing);
        REQUIRE(a.breaks == b.breaks);
        REQUIRE(codesOf(a.remarks) == codesOf(b.remarks));
        REQUIRE(a.state == b.state);
    }
}
