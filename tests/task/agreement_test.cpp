#include "core/task/agreement.h"

#include <regex>

#include "core/store/decisions.h"
#include "core/store/visits.h"
#include "core/task/review.h"
#include "tests/support/catch.h"
#include "tests/support/reference_rows.h"
#include "tests/task/audit_scene.h"

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

/// Two offices that met after they had decided: of each record what V1 (rows) and V2 (columns) said, accepted, returned or rejected.
VerifierAgreement agreementOf(const AnswerTable& table)
{
    AuditScene scene;
    std::vector<std::pair<Outcome, Outcome>> said;
    constexpr Outcome outcomes[] = {Outcome::accept, Outcome::giveBack, Outcome::reject};
    for (std::size_t one = 0; one < table.size(); ++one)
        for (std::size_t other = 0; other < table.size(); ++other)
            said.insert(said.end(), static_cast<std::size_t>(table[one][other]), {outcomes[one], outcomes[other]});
    const auto visits = scene.visits(static_cast<int>(said.size()));
    for (Session* who : {scene.maker.get(), scene.auditor.get()}) {
        auto change = who->begin().value();
        for (std::size_t i = 0; i < visits.size(); ++i) {
            Decision decided;
            decided.id = who->ids().make();
            decided.visit = visits[i];
            decided.revision = who->store().visits().row(visits[i]).value()->standing.head;
            decided.by = who->me();
            decided.outcome = who == scene.maker.get() ? said[i].first : said[i].second;
            decided.at = change.at();
            done(who->store().decisions().add(change, decided));
        }
        done(who->commit(change));
    }
    return verifierAgreement(*scene.maker).value();
}

AnswerTable tableIn(const std::string& text)
{
    const auto numbers = numbersIn(text);
    AnswerTable table(3, std::vector<std::int64_t>(3));
    for (std::size_t i = 0; i < numbers.size(); ++i)
        table[i / 3][i % 3] = static_cast<std::int64_t>(numbers[i]);
    return table;
}

} // namespace

// SAS PROC FREQ as printed in the test suite of statsmodels (table10): kappa 0.4842, with 95 % between 0.2137 and 0.7547.
TEST_CASE("the published table of two raters comes out of decisions", "[task][agreement]")
{
    const AnswerTable table{{0, 4, 1}, {0, 8, 0}, {0, 1, 5}};
    const VerifierAgreement agreement = agreementOf(table);
    CHECK(agreement.records == 19);
    REQUIRE(agreement.pairs.size() == 1);
    CHECK(agreement.pairs[0].table == table);
    CHECK(agreement.pairs[0].agreement.kappa.value() == Approx(0.4842).margin(5e-5));
    CHECK(agreement.pairs[0].agreement.interval.lower == Approx(0.2137).margin(5e-5));
    CHECK(agreement.pairs[0].agreement.interval.upper == Approx(0.7547).margin(5e-5));
}

TEST_CASE("the reference tables of two raters with three answers come out of decisions", "[task][agreement]")
{
    static const std::regex three("table rows=rater A, cols=rater B: (\\[\\[\\d+, \\d+, \\d+\\], \\[\\d+, \\d+, \\d+\\], \\[\\d+, \\d+, \\d+\\]\\])");
    std::map<std::string, VerifierAgreement> known;
    for (const auto& row : referenceRows("reference/stats/04_agreement_and_accuracy_check_values.csv")) {
        std::smatch match;
        const std::string &inputs = row.at("inputs"), &id = row.at("id");
        const bool kappa = row.at("quantity") == "Cohen kappa", interval = id.ends_with("-ci");
        if ((!kappa && !interval) || !std::regex_match(inputs, match, three))
            continue;
        CAPTURE(id);
        if (!known.contains(inputs))
            known.emplace(inputs, agreementOf(tableIn(match[1])));
        REQUIRE(known.at(inputs).pairs.size() == 1);
        const PairAgreement& found = known.at(inputs).pairs[0].agreement;
        const auto expected = numbersIn(row.at("expected"));
        if (kappa) {
            CHECK(found.kappa.value() == Approx(expected.at(0)).margin(1e-9));
        } else {
            CHECK(found.interval.lower == Approx(expected.at(0)).margin(1e-5));
            CHECK(found.interval.upper == Approx(expected.at(1)).margin(1e-5));
        }
    }
}

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
