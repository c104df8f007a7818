// Random histories on two to five laptops, wrong clocks included: whatever the order in which files are exchanged, every store that
// knows the same comes to the same. The claim is that of a state-based replicated data type: Shapiro, Preguiça, Baquero & Zawirski,
// "Conflict-free Replicated Data Types", SSS 2011, definition 2.3 and proposition 2.1 (merging is commutative, associative, idempotent).

#include "core/base/random.h"
#include "core/store/journal.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "core/task/nouns.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/devices.h"

using namespace cupule;
using namespace cupule::test;

namespace {

constexpr std::int64_t year = 365LL * 86'400'000;

class Company {
public:
    Company(std::uint64_t seed, std::size_t count) : m_random(seed), m_folder(temporaryFolder())
    {
        const std::vector<Person> people{personOf("AN", "Ada North", 1), personOf("BE", "Ben East", 2), personOf("CW", "Cleo West", 3)};
        for (std::size_t n = 0; n < count; ++n) {
            const std::int64_t wrong = n == 1 ? -2 * year : n == 2 ? year : static_cast<std::int64_t>(n) * 1000;
            m_devices.push_back(std::make_unique<Device>(m_folder + "/d" + std::to_string(n), people[n % people.size()],
                                                         std::vector{Role::volunteer, Role::verifier, Role::office}, seed * 10 + n, wrong));
        }
        for (auto& a : m_devices)
            for (auto& b : m_devices)
                if (a != b)
                    a->trust(*b);
    }

    void step()
    {
        Device& device = any();
        device.clock.advanceMilliseconds(1000 + static_cast<std::int64_t>(m_random.below(100'000)));
        switch (m_random.below(8)) {
        case 0:
        case 1: enter(device); break;
        case 2:
        case 3: correct(device); break;
        case 4: decideOne(device); break;
        case 5: change(device); break;
        case 6: takeBack(device); break;
        default: exchange(device, any()); break;
        }
    }

    /// Everybody gets everything, in an order of chance, twice over.
    void exchangeAll()
    {
        for (int round = 0; round < 3; ++round)
            for (std::size_t n = 0; n < m_devices.size() * m_devices.size(); ++n)
                exchange(any(), any());
        for (auto& from : m_devices)
            for (auto& to : m_devices)
                exchange(*from, *to, true);
        for (auto& from : m_devices)
            for (auto& to : m_devices)
                exchange(*from, *to, true);
    }

    std::vector<std::unique_ptr<Device>>& devices() { return m_devices; }
    std::size_t merged = 0;

private:
    Device& any() { return *m_devices[m_random.below(m_devices.size())]; }

    std::optional<VisitRow> anyVisit(Device& device)
    {
        const auto rows = device.session().store().visits().window(std::nullopt, 0, 1000).value();
        if (rows.empty())
            return std::nullopt;
        return rows[m_random.below(rows.size())];
    }

    void enter(Device& device)
    {
        Session& session = device.session();
        const std::string label = "T" + std::to_string(m_random.below(1000));
        const std::string place = "SO " + std::to_string(600 + m_random.below(90)) + " " + std::to_string(100 + m_random.below(90));
        const Tree tree = treeAt(session, label, place);
        const bool gall = m_random.below(2) == 0;
        handedIn(session, tree, [&](Session& s, const Visit& v) { return gall ? withGall(s, v) : withNothing(s, v); });
    }

    /// Refusals are part of life: not everybody may change everything.
    void correct(Device& device)
    {
        const auto row = anyVisit(device);
        if (!row || row->standing.head.isNull())
            return;
        const Visit before = device.session().store().visits().find(row->id).value().value();
        Visit after = before;
        switch (m_random.below(3)) {
        case 0: after.note = "n" + std::to_string(m_random.below(5)); break;
        case 1: after.effort.minutes = 5 + static_cast<int>(m_random.below(5)); break;
        default: after.effort.heightMetres = 2 + static_cast<int>(m_random.below(3)); break;
        }
        (void)changeVisit(device.session(), before, after, "corrected");
    }

    void decideOne(Device& device)
    {
        const auto row = anyVisit(device);
        if (!row || row->standing.head.isNull())
            return;
        if (m_random.below(5) == 0) {
            (void)(m_random.below(2) == 0 ? reopen(device.session(), row->id, "look again") : undoDecision(device.session(), row->id));
            return;
        }
        const bool yes = m_random.below(3) > 0;
        (void)decide(device.session(), decision(device.session(), row->id, yes ? Outcome::accept : Outcome::giveBack,
                                                yes ? std::vector<std::string>{} : std::vector<std::string>{device.session().pack().reasons.back().id}));
    }

    void change(Device& device)
    {
        const auto row = anyVisit(device);
        if (!row || row->tree.isNull())
            return;
        Tree tree = device.session().store().trees().find(row->tree).value().value();
        (m_random.below(2) == 0 ? tree.note : tree.label) = "t" + std::to_string(m_random.below(4));
        auto change = device.session().begin().value();
        done(device.session().store().trees().save(change, tree));
        done(device.session().commit(change));
    }

    void takeBack(Device& device)
    {
        if (const auto row = anyVisit(device); row && !row->standing.head.isNull() && m_random.below(3) == 0)
            (void)strikeOut(device.session(), row->id, "wrong tree");
    }

    void exchange(Device& from, Device& to, bool whole = false)
    {
        if (&from == &to)
            return;
        for (const GoingKind kind : {GoingKind::day, GoingKind::decision}) {
            const std::string file = from.handOut(kind, whole);
            if (file.empty())
                continue;
            const auto taken = to.takeIn(file);
            if (!taken)
                throw std::runtime_error(taken.error().code + " " + taken.error().technical);
            merged += static_cast<std::size_t>(taken->merged.fresh);
        }
    }

    SeededRandom m_random;
    std::string m_folder;
    std::vector<std::unique_ptr<Device>> m_devices;
};

} // namespace

TEST_CASE("any order and any grouping of files ends in the same state on every laptop", "[task][merge]")
{
    const std::uint64_t seed = GENERATE(range(1, 9));
    CAPTURE(seed);
    Company company(seed, 2 + seed % 4);
    for (int n = 0; n < 60; ++n)
        company.step();
    company.exchangeAll();
    CHECK(company.merged > 20);
    const auto expected = stateOf(company.devices().front()->session());
    CHECK(expected.size() > 20);
    for (const auto& device : company.devices()) {
        CHECK(differences(expected, stateOf(device->session())) == std::vector<std::string>{});
        const JournalProof proof = device->session().store().journal().prove().value();
        CAPTURE(proof.brokenWhy, proof.brokenNoun, proof.brokenNumber);
        CHECK(proof.whole);
        device->reopen();
        CHECK(differences(expected, stateOf(device->session())) == std::vector<std::string>{});
    }
}
