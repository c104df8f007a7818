// Stores for the place Review: a find of which there are two versions, and an evening's worth of records.

#pragma once

#include "tests/gui/at_desk.h"

#include "core/record/json.h"
#include "core/store/revisions.h"
#include "core/store/store_core.h"

namespace cupule::test {

/// Maud corrects the find's note and minutes; somebody else, who does not know of it, the note and the crown.
inline void moveApart(const FindStore& store)
{
    SystemClock clock;
    SystemRandom random;
    const auto maud = loadProfile(store.folder.filePath(QStringLiteral("maud")).toStdString()).value();
    const auto session = Session::open(store.path.toStdString(), maud, clock, random).value();
    session->setToday(*CivilDate::make(2026, 6, 12));
    const Visit visit = visitPage(*session, store.visit).value().visit;
    const Uid common = visitPage(*session, store.visit).value().headRevision;
    Visit hers = visit;
    hers.note = "two big galls low on the north side";
    hers.effort.minutes = 20;
    hers.observations[0].measure = 14.5;
    REQUIRE(changeVisit(*session, visit, hers, "hers"));
    const auto other = makeProfile(store.folder.filePath(QStringLiteral("tobias")).toStdString(), person("TW", "Tobias Wren"), {Role::volunteer},
                                   clock, random)
                           .value();
    const auto his = Session::open(store.path.toStdString(), other, clock, random).value();
    Visit changed = visit;
    changed.note = "two big galls low on the south side, gate was open";
    changed.effort.crownPercent = 40;
    changed.observations[0].measure = 15;
    auto change = his->begin().value();
    (void)change.core().addRevision({"revised", "visit", visit.id, toJson(changed), {common}});
    REQUIRE(his->commit(change));
}

/// Maud's visits to so many trees, nothing seen, handed in on one day.
struct EveningStore {
    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("evening.cupule"));
    SystemClock clock;
    SystemRandom random;

    explicit EveningStore(int records)
    {
        const auto profile = makeProfile(folder.filePath(QStringLiteral("maud")).toStdString(), person("MH", "Maud Harrow"),
                                         {Role::volunteer, Role::office}, clock, random)
                                 .value();
        const auto session = Session::create(path.toStdString(), tharnVale(), profile, clock, random).value();
        session->setToday(*CivilDate::make(2026, 6, 11));
        for (int i = 0; i < records; ++i)
            enter(*session, i);
        REQUIRE(handIn(*session, session->today(), {}).value().goes.size() == static_cast<std::size_t>(records));
    }

private:
    static void enter(Session& session, int number)
    {
        const std::string reference = "SO " + std::to_string(5400 + number % 20 * 5) + " " + std::to_string(4300 + number / 20 * 5);
        const Position place = session.projector().value()->read(reference, {}).value();
        const std::string label = "T-" + std::to_string(1000 + number).substr(1);
        const Visit before = newVisit(session, {}, newTree(session, label, {}, place).value().id).value();
        Visit visit = before;
        visit.characters.resize(3);
        visit.characters[0].character = "K01";
        visit.characters[0].state = "alternate";
        visit.characters[1].character = "K02";
        visit.characters[1].state = "simple";
        visit.characters[2].character = "K13";
        visit.characters[2].state = "long-slender-catkins";
        visit.effort = {12, 1, 70, 5.0, true, true, "good", "open"};
        visit.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::noneUsed, {}};
        if (number % 7 == 0)
            visit.note = "by the old kiln";
        visit = answerNothingSeen(visit, session.seasonToday(), session.pack()).value();
        REQUIRE(changeVisit(session, before, visit, "test"));
    }
};

} // namespace cupule::test
