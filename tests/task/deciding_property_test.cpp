// Random histories of decisions against a plain reading of the rules: who may decide, who has to agree, what counts meanwhile.
// The rules are those of the programme (common practice, no source): nobody decides on a record of their own or their household's; a
// find in new ground needs two; a reopened record goes to somebody new; an accepted record counts until its correction is decided.

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "core/store/decisions.h"
#include "core/store/health.h"
#include "core/store/journal.h"
#include "core/store/visits.h"
#include "core/task/review.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

const std::array<std::string, 4> verifiers{"V1", "V2", "V3", "V4"};

constexpr std::size_t none = static_cast<std::size_t>(-1); // no version

enum class Settled { no, oneOfTwo, conflict, accepted, rejected, returned };

struct Vote {
    std::string who;
    Outcome outcome;
};

struct Version {
    bool gall = false;                      ///< all ground of these tests is new
    bool closed = false;                    ///< the record was reopened since
    std::vector<Vote> votes;

    [[nodiscard]] int count(Outcome outcome) const
    {
        return static_cast<int>(std::count_if(votes.begin(), votes.end(), [&](const Vote& v) { return v.outcome == outcome; }));
    }
    [[nodiscard]] Settled settled() const
    {
        const int yes = count(Outcome::accept), no = count(Outcome::reject), back = count(Outcome::giveBack);
        const int all = yes + no + back;
        if (all == 0 || closed)
            return Settled::no;
        if (gall && all == 1 && back == 0)
            return Settled::oneOfTwo;
        const int most = std::max({yes, no, back});
        const int leaders = (yes == most) + (no == most) + (back == most);
        if (leaders > 1 && all != 3)
            return Settled::conflict;
        const Outcome winner = leaders > 1 ? votes.back().outcome : yes == most ? Outcome::accept : no == most ? Outcome::reject : Outcome::giveBack;
        if (winner == Outcome::accept)
            return gall && yes < 2 ? Settled::conflict : Settled::accepted;
        return winner == Outcome::reject ? Settled::rejected : Settled::returned;
    }
    [[nodiscard]] bool done() const { return settled() >= Settled::accepted; }
};

/// What the rules come to, kept beside the store.
struct Shadow {
    Visit visit;
    std::string observer, household;        ///< code of who may not decide for the observer
    std::vector<Version> versions;
    std::set<std::string> barred;           ///< decided before it was reopened
    std::vector<Vote> entries;              ///< that stand, judgements and reopenings, in order, of all versions
    std::size_t versionOfLast = 0;

    [[nodiscard]] const Version& head() const { return versions.back(); }
    /// The version that counts: its number, or none.
    [[nodiscard]] std::optional<std::size_t> counted() const
    {
        for (std::size_t i = versions.size(); i > 0; --i)
            if (versions[i - 1].done())
                return i - 1;
        return std::nullopt;
    }
    [[nodiscard]] bool mayDecide(const std::string& who) const
    {
        const auto& votes = head().votes;
        const bool voted = !head().closed && std::any_of(votes.begin(), votes.end(), [&](const Vote& v) { return v.who == who; });
        return !head().done() && who != household && !voted && !barred.contains(who);
    }
    [[nodiscard]] bool mayUndo(const std::string& who) const
    {
        return !entries.empty() && entries.back().outcome != Outcome::reopen && entries.back().who == who &&
               versionOfLast == versions.size() - 1;
    }
};

class Histories {
public:
    explicit Histories(std::uint64_t seed) : m_chance(seed)
    {
        for (const auto& code : verifiers)
            m_sessions[code] = present(code);
        m_sessions["MH"] = present("MH");
        m_sessions["JB"] = present("JB");
        link("V4", "MH");
        link("JB", "V2"); // said at the other end
        begin("MH", "V4", "SO 612 094", true);
        begin("JB", "V2", "SO 212 594", false);
    }

    void run(int steps)
    {
        for (int i = 0; i < steps; ++i) {
            Shadow& shadow = m_records[m_chance.below(m_records.size())];
            const std::string& who = verifiers[m_chance.below(verifiers.size())];
            INFO("step " << i << ", " << shadow.observer << "'s record, " << who);
            switch (m_chance.below(8)) {
            case 0: correct(shadow); break;
            case 1: reopenIt(shadow, who); break;
            case 2:
            case 3: undo(shadow, who); break;
            default: judge(shadow, who); break;
            }
            check(shadow);
        }
        CHECK(m_sessions["V1"]->store().journal().prove().value().whole);
        const auto health = examineStore(m_sessions["V1"]->store()).value();
        for (const auto& fault : health.faults)
            UNSCOPED_INFO(fault.code << " " << fault.what);
        CHECK(health.faults.empty());
    }
    int decided = 0, refused = 0, undone = 0, reopened = 0, waited = 0, veiled = 0;

private:
    std::unique_ptr<Session> present(const std::string& code)
    {
        auto session = m_vale.as(code);
        auto change = session->begin().value();
        done(session->commit(change));
        return session;
    }
    void link(const std::string& who, const std::string& notFor)
    {
        const auto office = m_vale.as("OF");
        auto people = allPeople(*office).value();
        const auto person = std::find_if(people.begin(), people.end(), [&](const Person& p) { return p.code == who; });
        person->notFor = {m_sessions.at(notFor)->me()};
        done(changePerson(*office, *person));
    }
    void begin(const std::string& observer, const std::string& household, const char* place, bool gall)
    {
        Session& session = *m_sessions.at(observer);
        Shadow shadow;
        const Tree tree = treeAt(session, observer + "1", place);
        shadow.visit = gall ? handedIn(session, tree, withGall) : handedIn(session, tree, withNothing);
        shadow.observer = observer;
        shadow.household = household;
        shadow.versions.push_back({gall, false, {}});
        m_records.push_back(std::move(shadow));
    }

    void judge(Shadow& shadow, const std::string& who)
    {
        const Outcome outcome = std::array{Outcome::accept, Outcome::accept, Outcome::reject, Outcome::giveBack}[m_chance.below(4)];
        Session& session = *m_sessions.at(who);
        Decision wanted = decision(session, shadow.visit.id, outcome);
        if (outcome != Outcome::accept)
            wanted.reasons = {outcome == Outcome::reject ? "other-kind-of-tree" : "tree-not-shown"};
        const bool may = shadow.mayDecide(who);
        const std::string fault = faultOf(decide(session, wanted));
        CHECK(fault.empty() == may);
        if (!fault.empty()) {
            ++refused;
            return;
        }
        ++decided;
        shadow.versions.back().votes.push_back({who, outcome});
        shadow.entries.push_back({who, outcome});
        shadow.versionOfLast = shadow.versions.size() - 1;
    }
    void undo(Shadow& shadow, const std::string& who)
    {
        const bool may = shadow.mayUndo(who);
        CHECK(undoDecision(*m_sessions.at(who), shadow.visit.id).has_value() == may);
        if (!may)
            return;
        ++undone;
        shadow.versions.back().votes.pop_back();
        shadow.entries.pop_back();
        // what lies below on the same version can be undone in its turn; where that was the last, nothing of this version is left
        shadow.versionOfLast = shadow.versions.back().votes.empty() ? none : shadow.versions.size() - 1;
    }
    void reopenIt(Shadow& shadow, const std::string& who)
    {
        const bool may = shadow.head().done();
        CHECK(reopen(*m_sessions.at(who), shadow.visit.id, "new").has_value() == may);
        if (!may)
            return;
        ++reopened;
        for (const Vote& entry : shadow.entries)
            if (entry.outcome == Outcome::accept || entry.outcome == Outcome::reject)
                shadow.barred.insert(entry.who);
        for (Version& version : shadow.versions)
            version.closed = true;
        shadow.versions.push_back({shadow.head().gall, false, {}}); // the same content, judged anew
        shadow.entries.push_back({who, Outcome::reopen});
        shadow.versionOfLast = shadow.versions.size() - 1;
    }
    void correct(Shadow& shadow)
    {
        Session& session = *m_sessions.at(shadow.observer);
        Visit now = session.store().visits().find(shadow.visit.id).value().value();
        const Visit before = now;
        const bool gall = !shadow.head().gall;
        now.observations.clear();
        if (gall) {
            Observation seen;
            seen.sign = "S02";
            seen.answer = Answer::seen;
            seen.measure = 14;
            now.observations.push_back(seen);
        } else {
            now = answerNothingSeen(now, session.seasonToday(), session.pack()).value();
        }
        done(changeVisit(session, before, now, "correction"));
        shadow.versions.push_back({gall, false, {}});
    }

    void check(const Shadow& shadow)
    {
        Session& session = *m_sessions.at("V1");
        const VisitRow row = session.store().visits().row(shadow.visit.id).value().value();
        const Settled head = shadow.head().settled();
        const auto counted = shadow.counted();
        CHECK(row.standing.oneOfTwo == (head == Settled::oneOfTwo));
        CHECK(row.standing.conflict == (head == Settled::conflict));
        CHECK(row.standing.correctionWaits == (counted.has_value() && *counted + 1 < shadow.versions.size()));
        const Settled state = counted ? shadow.versions[*counted].settled() : Settled::no;
        CHECK(row.standing.state == (state == Settled::accepted   ? RecordState::accepted
                                     : state == Settled::rejected ? RecordState::rejected
                                     : state == Settled::returned ? RecordState::returned
                                                                  : RecordState::submitted));
        CHECK(row.standing.decided.isNull() == !counted.has_value());
        waited += row.standing.correctionWaits ? 1 : 0;
        const bool find = state == Settled::accepted && shadow.versions[*counted].gall;
        CHECK(session.store().decisions().findOf(shadow.visit.id).value().has_value() == find);
        if (head == Settled::oneOfTwo)
            checkVeil(shadow, row);
    }
    /// Nobody but the first of two sees what the first has said.
    void checkVeil(const Shadow& shadow, const VisitRow& row)
    {
        ++veiled;
        for (const auto& code : verifiers) {
            const ReviewPage page = reviewPage(*m_sessions.at(code), shadow.visit.id).value();
            for (const Decision& seen : page.decisions)
                CHECK((seen.revision != row.standing.head || seen.by == m_sessions.at(code)->me()));
        }
    }

    Vale m_vale;
    SeededRandom m_chance;
    std::map<std::string, std::unique_ptr<Session>> m_sessions;
    std::vector<Shadow> m_records;
};

} // namespace

TEST_CASE("random histories of deciding, undoing, reopening and correcting come to what the rules say", "[task][review][property]")
{
    int decided = 0, refused = 0, undone = 0, reopened = 0, waited = 0, veiled = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        INFO("seed " << seed);
        Histories histories(seed);
        histories.run(60);
        decided += histories.decided;
        refused += histories.refused;
        undone += histories.undone;
        reopened += histories.reopened;
        waited += histories.waited;
        veiled += histories.veiled;
    }
    // the histories reach what they are for
    CHECK(decided > 100);
    CHECK(refused > 50);
    CHECK(undone > 10);
    CHECK(reopened > 10);
    CHECK(waited > 20);
    CHECK(veiled > 10);
}

TEST_CASE("an accepted record counts while its correction, a find in new ground, is one of two", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withNothing);
    const auto v1 = vale.as("V1"), v2 = vale.as("V2");
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    const Uid first = visitPage(*v1, visit.id).value().headRevision;
    Visit found = visit;
    found.observations = withGall(*mary, newVisit(*mary, {}, visit.tree).value()).observations;
    photoOf(*mary, visit, {"S02", "K03"});
    done(changeVisit(*mary, visit, found, "a gall after all"));
    decide(*v2, decision(*v2, visit.id, Outcome::accept)).value();
    const auto standing = v1->store().visits().row(visit.id).value()->standing;
    CHECK(standing.oneOfTwo);
    CHECK(standing.correctionWaits);
    CHECK(standing.state == RecordState::accepted);
    CHECK(standing.decided == first);
    CHECK_FALSE(v1->store().decisions().findOf(visit.id).value());
    // the second accepts it, and takes that back: the find is gone, what was accepted first counts again
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    CHECK(v1->store().decisions().findOf(visit.id).value());
    REQUIRE(undoDecision(*v1, visit.id));
    CHECK_FALSE(v1->store().decisions().findOf(visit.id).value());
    CHECK(v1->store().visits().row(visit.id).value()->standing.decided == first);
}

TEST_CASE("what one of two said of an earlier revision never settles the record by itself", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withGall);
    const auto v1 = vale.as("V1"), v2 = vale.as("V2"), v3 = vale.as("V3");
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value(); // one of two
    Visit nothing = visit;
    nothing.observations.clear();
    nothing = answerNothingSeen(nothing, mary->seasonToday(), mary->pack()).value();
    done(changeVisit(*mary, visit, nothing, "no gall"));
    decide(*v2, decision(*v2, visit.id, Outcome::accept)).value();
    REQUIRE(undoDecision(*v2, visit.id));
    const auto standing = v3->store().visits().row(visit.id).value()->standing;
    CHECK(standing.state == RecordState::submitted);
    CHECK(standing.decided.isNull());
    CHECK_FALSE(standing.correctionWaits);
}
