// A season of five laptops that ends in the same regional store, in whatever order their files arrive: one is right, one has a wrong
// clock, one was copied with its profile and its store and both copies went on, and one belongs to somebody who says to be another.

#include <algorithm>
#include <filesystem>

#include "core/base/random.h"
#include "core/store/bundles.h"
#include "core/store/decisions.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/store/revisions.h"
#include "core/store/visits.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/devices.h"

using namespace cupule;
using namespace cupule::test;

namespace {

constexpr std::int64_t dayLong = 86'400'000;
constexpr int orders = 8;

Visit nothingAt(Session& session, const std::string& label, const std::string& place)
{
    return handedIn(session, treeAt(session, label, place), [](Session& s, const Visit& v) { return withNothing(s, v); });
}

Visit gallAt(Session& session, const std::string& label, const std::string& place)
{
    const Visit visit = handedIn(session, treeAt(session, label, place), [](Session& s, const Visit& v) { return withGall(s, v); });
    const auto photos = session.store().photos().ofVisit(visit.id).value();
    for (const PhotoNote& photo : photos)
        REQUIRE(session.store().media().keep(photo.id.text()));   // the bytes that photoOf names
    return visit;
}

void note(Session& session, const Visit& visit, const std::string& words)
{
    Visit corrected = visit;
    corrected.note = words;
    done(changeVisit(session, visit, corrected, "corrected"));
}

/// What a laptop became that was copied whole: the same device, the same key.
class Copy {
public:
    Copy(const std::string& from, const std::string& folder) : m_clock(at(14)), m_folder(folder)
    {
        std::filesystem::copy(from, folder, std::filesystem::copy_options::recursive);
        m_session = Session::open(folder + "/store.cupule", loadProfile(folder).value(), m_clock, m_random).value();
        m_session->setToday(day(2026, 6, 11));
    }
    Session& session() { return *m_session; }
    std::string handOut()
    {
        HandOut wanted;
        wanted.out = m_folder + "/copy.zip";
        REQUIRE(cupule::handOut(*m_session, wanted));
        return wanted.out;
    }

private:
    FixedClock m_clock;
    SeededRandom m_random{99};
    std::string m_folder;
    std::unique_ptr<Session> m_session;
};

class Season {
public:
    Season()
        : mary(m_folder + "/mary", personOf("MH", "Mary Hill", 1), {Role::volunteer}, 11),
          john(m_folder + "/john", personOf("JB", "John Brook", 2), {Role::volunteer}, 12, -400 * dayLong),
          lena(m_folder + "/lena", personOf("LP", "Lena Poll", 3), {Role::volunteer}, 13),
          liar(m_folder + "/liar", personOf("MH", "Mary Hill", 1), {Role::volunteer}, 14),
          verifier(m_folder + "/verifier", personOf("VE", "Vera East", 4), {Role::verifier}, 15)
    {
        gallAt(mary.session(), "M1", "SO 612 094");
        returned = nothingAt(mary.session(), "M2", "SO 613 094");
        files.push_back(mary.handOut(GoingKind::day));
        nothingAt(john.session(), "J1", "SO 614 094");
        files.push_back(john.handOut(GoingKind::day));
        twice = nothingAt(lena.session(), "L1", "SO 615 094");
        files.push_back(lena.handOut(GoingKind::day));
        copyGoesOn();
        decideOne();
        nothingAt(mary.session(), "M3", "SO 616 094");
        files.push_back(mary.handOut(GoingKind::day));
        gallAt(liar.session(), "X1", "SO 617 094");
        lie = liar.handOut(GoingKind::day);
    }

    /// Another office that knows whose keys hold.
    std::unique_ptr<Device> office(int which)
    {
        auto office = std::make_unique<Device>(m_folder + "/office" + std::to_string(which), personOf("OF", "Olwen Fry", 5),
                                               std::vector{Role::office, Role::verifier}, 100 + static_cast<std::uint64_t>(which));
        for (Device* each : {&mary, &john, &lena, &verifier})
            office->trust(*each);
        return office;
    }

private:
    std::string m_folder = temporaryFolder();

public:
    Device mary, john, lena, liar, verifier;
    std::vector<std::string> files;
    std::string lie, left, right, decisions;
    Visit returned, twice;

private:
    void copyGoesOn()
    {
        lena.reopen();                     // what stands in the log is in the file
        Copy copy(m_folder + "/lena", m_folder + "/lena-copied");
        note(lena.session(), twice, "seen from the path");
        nothingAt(lena.session(), "L2", "SO 615 095");
        note(copy.session(), twice, "seen from the gate");
        nothingAt(copy.session(), "L3", "SO 615 096");
        left = lena.handOut(GoingKind::day);
        right = copy.handOut();
        files.insert(files.end(), {left, right});
    }
    void decideOne()
    {
        verifier.trust(mary);
        REQUIRE(verifier.takeIn(files.front()));
        REQUIRE(decide(verifier.session(), decision(verifier.session(), returned.id, Outcome::giveBack, {"tree-not-shown"})));
        decisions = verifier.handOut(GoingKind::decision);
        files.push_back(decisions);
    }
};

void checkWhole(Season& season, Device& office)
{
    Store& store = office.session().store();
    CHECK(store.visits().count().value() == 7);
    CHECK(store.revisions().openConflicts(season.twice.id).value() == 1);
    CHECK(store.visits().row(season.returned.id).value()->standing.state == RecordState::returned);
    CHECK(store.journal().prove()->whole);
}

} // namespace

TEST_CASE("a season of five laptops comes to the same regional store in whatever order its files arrive", "[task][season]")
{
    Season season;
    SeededRandom chance(4);
    std::vector<std::string> first;
    for (int order = 0; order < orders; ++order) {
        CAPTURE(order);
        const auto office = season.office(order);
        auto files = season.files;
        for (std::size_t left = files.size(); order > 0 && left > 1; --left)
            std::swap(files[left - 1], files[chance.below(left)]);
        int parted = 0;
        for (const std::string& file : files) {
            CAPTURE(file);
            const auto arrival = lookAtArrival(office->session(), file);
            REQUIRE(arrival);
            parted += arrival->parted.empty() ? 0 : 1;
            CHECK(faultOf(office->takeIn(file)) == "");
        }
        CHECK(parted == 1);                // the second of the two copies tells that there are two
        checkWhole(season, *office);
        const auto state = stateOf(office->session());
        if (first.empty())
            first = state;
        CHECK(state == first);
        for (const std::string& file : files)
            REQUIRE(office->takeIn(file));
        CHECK(stateOf(office->session()) == first);
    }
}

TEST_CASE("who says to be another is refused, and nothing of it is kept", "[task][season]")
{
    Season season;
    const auto office = season.office(0);
    REQUIRE(office->takeIn(season.files.front()));
    const auto before = stateOf(office->session());
    CHECK(faultOf(office->takeIn(season.lie)) == "key.changed");
    CHECK(stateOf(office->session()) == before);
    CHECK(office->session().store().visits().count().value() == 2);
}

TEST_CASE("what was decided comes back to the laptop with its reason", "[task][season]")
{
    Season season;
    season.mary.trust(season.verifier);
    REQUIRE(season.mary.takeIn(season.decisions));
    const auto row = season.mary.session().store().visits().row(season.returned.id).value();
    CHECK(row->standing.state == RecordState::returned);
    const auto decisions = season.mary.session().store().decisions().ofVisit(season.returned.id).value();
    REQUIRE(decisions.size() == 1);
    CHECK(decisions.front().reasons == std::vector<std::string>{"tree-not-shown"});
}
