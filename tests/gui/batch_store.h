// A store with routine "nothing seen" records, and three verifiers whom it knows: Ruth makes batches, Jonah looks, Vera has decided on
// some before. Everyone has a profile folder.

#pragma once

#include "tests/gui/at_desk.h"

#include "core/task/audit.h"

namespace cupule::test {

struct BatchStore {
    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("vale.cupule"));
    std::vector<Uid> records;               ///< that can go into a batch
    Uid accepted, rejected;                 ///< by Vera
    SystemClock clock;
    SystemRandom random;

    explicit BatchStore(int count = 12)
    {
        const auto maud = Session::create(path.toStdString(), tharnVale(), profileOf("MH", {Role::volunteer, Role::office}), clock, random).value();
        maud->setToday(*CivilDate::make(2026, 6, 11));
        for (int i = 0; i < count + 2; ++i)
            records.push_back(enter(*maud, i));
        REQUIRE(handIn(*maud, maud->today(), {}).value().goes.size() == records.size());
        for (const char* code : {"RA", "JK"}) {
            const auto session = as(code);
            auto change = session->begin().value();
            REQUIRE(session->commit(change));
        }
        const auto vera = as("VT");
        accepted = decideLast(*vera, Outcome::accept);
        rejected = decideLast(*vera, Outcome::reject);
    }
    [[nodiscard]] QString profile(const char* code) const { return folder.filePath(QString::fromLatin1(code)); }
    std::unique_ptr<Session> as(const char* code)
    {
        auto session = Session::open(path.toStdString(), profileOf(code, {Role::verifier}), clock, random).value();
        session->setToday(*CivilDate::make(2026, 6, 20));
        return session;
    }
    /// A batch of Ruth's for Jonah.
    Uid batch()
    {
        const auto ruth = as("RA");
        AuditWanted wanted;
        wanted.tolerable = 0.2;
        wanted.auditor = as("JK")->me();
        return makeAudit(*ruth, wanted).value();
    }
    /// Jonah accepts everything but what Vera rejected.
    void answer(const Uid& audit)
    {
        const auto jonah = as("JK");
        for (auto next = nextToAudit(*jonah, audit).value(); next; next = nextToAudit(*jonah, audit).value()) {
            AuditAnswer said;
            said.visit = next->page.visit.id;
            if (said.visit == rejected) {
                said.outcome = Outcome::reject;
                said.reasons = {"other-kind-of-tree"};
            }
            REQUIRE(answerAudit(*jonah, audit, said));
        }
    }

private:
    Profile profileOf(const char* code, const std::vector<Role>& roles)
    {
        const std::string at = profile(code).toStdString();
        if (const auto known = loadProfile(at))
            return *known;
        const char* name = code[0] == 'R' ? "Ruth Abara" : code[0] == 'J' ? "Jonah Kerr" : code[0] == 'V' ? "Vera Thorn" : "Maud Harrow";
        return makeProfile(at, person(code, name), roles, clock, random).value();
    }
    Uid decideLast(Session& session, Outcome outcome)
    {
        Decision wanted;
        wanted.visit = records.back();
        wanted.revision = reviewPage(session, wanted.visit).value().visit.headRevision;
        wanted.outcome = outcome;
        if (outcome == Outcome::reject)
            wanted.reasons = {"other-kind-of-tree"};
        REQUIRE(decide(session, wanted));
        records.pop_back();
        return wanted.visit;
    }
    static Uid enter(Session& session, int number)
    {
        const Visit before = newVisit(session, {}, {}).value();
        Visit seen = before;
        const Position position = session.projector().value()->read("SO 5487 4391", {}).value();
        seen.tree = newTree(session, "T-" + std::to_string(number + 10), {}, position).value().id;
        seen.position = position;
        for (const auto& [character, state] : {std::pair{"K01", "alternate"}, std::pair{"K02", "simple"}, std::pair{"K03", "teeth-with-points"},
                                               std::pair{"K13", "long-slender-catkins"}}) {
            CharacterSeen one;
            one.character = character;
            one.state = state;
            if (one.character == "K03")
                one.value = 18;
            seen.characters.push_back(one);
        }
        seen.effort.minutes = 12;
        seen.effort.trees = 1;
        seen.effort.crownPercent = 70;
        seen.effort.heightMetres = 5;
        seen.effort.binoculars = seen.effort.innerCrown = true;
        seen.effort.light = "good";
        seen.effort.leaves = "open";
        seen.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::noneUsed, {}};
        seen = answerNothingSeen(seen, session.seasonToday(), session.pack()).value();
        REQUIRE(changeVisit(session, before, seen, "test"));
        return seen.id;
    }
};

} // namespace cupule::test
