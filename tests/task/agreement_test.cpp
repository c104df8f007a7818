#include "core/task/agreement.h"

#include "core/task/review.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// Finds in new ground, each two verifiers' to decide, 30 km apart.
struct Finds {
    Vale vale;
    std::unique_ptr<Session> mary = vale.as("MH");
    int made = 0;

    Visit next()
    {
        const std::string place = "SO " + std::to_string(100 + made % 4 * 250) + " " + std::to_string(100 + made / 4 * 150);
        return handedIn(*mary, treeAt(*mary, "F" + std::to_string(made++), place), withGall);
    }
    void say(const char* who, const Visit& visit, bool yes)
    {
        const auto session = vale.as(who);
        decide(*session, decision(*session, visit.id, yes ? Outcome::accept : Outcome::reject,
                                  yes ? std::vector<std::string>{} : std::vector<std::string>{"sign-not-shown"}))
            .value();
    }
};

} // namespace

// kappa = (p_o - p_e) / (1 - p_e) after Cohen 1960: of ten, four accepted by both, three rejected by both, three differ (2 and 1):
// p_o 0.7, p_e 0.5*0.6 + 0.5*0.4 = 0.5, kappa 0.4.
TEST_CASE("two verifiers agree as far as Cohen's kappa says of the records that both decided", "[task][agreement]")
{
    Finds finds;
    CHECK(verifierAgreement(*finds.mary).value().records == 0);
    const std::pair<bool, bool> said[] = {{true, true},   {true, true},   {true, true},  {true, true},  {false, false},
                                          {false, false}, {false, false}, {true, false}, {false, true}, {false, true}};
    for (const auto& [one, other] : said) {
        const Visit visit = finds.next();
        finds.say("V1", visit, one);
        finds.say("V2", visit, other);
        if (one != other)
            finds.say("V3", visit, true);   // has seen both, and is not counted
    }
    const VerifierAgreement agreement = verifierAgreement(*finds.mary).value();
    CHECK(agreement.records == 10);
    CHECK(agreement.verifiers == 2);
    CHECK_FALSE(agreement.all);
    CHECK(agreement.first == day(2026, 6, 11));
    REQUIRE(agreement.pairs.size() == 1);
    const VerifierPair& pair = agreement.pairs[0];
    CHECK(pair.one == "V1");
    CHECK(pair.other == "V2");
    CHECK(pair.table == AnswerTable{{4, 0, 1}, {0, 0, 0}, {2, 0, 3}});
    CHECK(pair.agreement.observed == Approx(0.7).margin(1e-12));
    REQUIRE(pair.agreement.kappa);
    CHECK(*pair.agreement.kappa == Approx(0.4).margin(1e-12));
    CHECK(pair.agreement.interval.lower < 0.4);
    CHECK(pair.agreement.interval.upper > 0.4);
}

TEST_CASE("more than two verifiers are one group, and an undone decision counts for nothing", "[task][agreement]")
{
    Finds finds;
    const char* pairs[][2] = {{"V1", "V2"}, {"V2", "V3"}, {"V1", "V3"}, {"V3", "V1"}};
    int at = 0;
    for (const auto& pair : pairs) {
        const Visit visit = finds.next();
        finds.say(pair[0], visit, at % 2 == 0);
        finds.say(pair[1], visit, at % 2 == 0);
        ++at;
    }
    const Visit undone = finds.next();
    finds.say("V1", undone, true);
    REQUIRE(undoDecision(*finds.vale.as("V1"), undone.id));
    finds.say("V2", undone, false);
    const VerifierAgreement agreement = verifierAgreement(*finds.mary).value();
    CHECK(agreement.records == 4);
    CHECK(agreement.verifiers == 3);
    REQUIRE(agreement.pairs.size() == 3);
    CHECK(agreement.pairs[0].agreement.things == 2);
    REQUIRE(agreement.all);
    CHECK(agreement.all->kappa == 1.0);   // all four agreed
}
