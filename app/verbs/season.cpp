#include <algorithm>

#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "app/words.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

class SeasonVerb final : public StoreVerb {
public:
    const char* name() const override { return "season"; }
    const char* summary() const override
    {
        return "What can be seen today, and what a \"nothing seen\" is worth";
    }
    const char* usage() const override { return "STORE [--on DATE] [--leafing DATE]"; }
    const char* prose() const override
    {
        return "Says which signs are expected, possible or out of season on a day in the store's region, and "
               "what finding nothing "
               "would be worth. --leafing notes the day on which chestnut was seen to come into leaf this "
               "year; the windows move "
               "with it, never by more than the tables allow. Out of season is a question, never a refusal: "
               "old galls hang all "
               "year.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--on", m_on, "the day, if not today");
        options.add_option("--leafing", m_leafing, "the day on which chestnut came into leaf");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, m_leafing.empty());
        if (!session)
            return fail(session.error());
        if (!m_leafing.empty()) {
            const auto leafing = readDay(m_leafing, "--leafing");
            if (!leafing)
                return fail(leafing.error());
            if (auto set = (*session)->setLeafing(leafing->year(), *leafing); !set)
                return fail(set.error());
        }
        CivilDate day = (*session)->today();
        if (!m_on.empty()) {
            const auto on = readDay(m_on, "--on");
            if (!on)
                return fail(on.error());
            day = *on;
        }
        give(run, **session, day);
        return done;
    }

private:
    static void give(Run& run, const Session& session, CivilDate day)
    {
        const Pack& pack = session.pack();
        Visit visit;
        visit.date = day;
        const SeasonContext season = session.seasonFor(visit, nullptr);
        const char worth = worthOfDate(day, season, pack);
        run.say("{date}, {shift}. Nothing seen is worth {worth} at most: {meaning}.",
                {{"date", run.words().date(day)},
                 {"shift", plain(ui::shiftText(season.shiftDays))},
                 {"worth", std::string(1, worth)},
                 {"meaning", plain(ui::worthWord(worth))}});
        Json signs = Json::array();
        for (const SeasonState state :
             {SeasonState::expected, SeasonState::possible, SeasonState::outOfSeason}) {
            std::vector<std::pair<std::string, std::string>> byReason; // sentence, lines below it
            for (const auto& sign : pack.signs) {
                const SignSeason at = seasonOf(sign, day, season, pack);
                if (!sign.onChecklist || at.state != state)
                    continue;
                signs.push_back({{"sign", sign.id},
                                 {"name", sign.name},
                                 {"season", seasonName(state)},
                                 {"reason", at.reason}});
                const std::string why = plain(ui::seasonText(at));
                auto under = std::find_if(byReason.begin(), byReason.end(),
                                          [&](const auto& each) { return each.first == why; });
                if (under == byReason.end())
                    under = byReason.insert(byReason.end(), {why, {}});
                under->second += "\n  " + sign.id + " " + sign.name;
            }
            for (const auto& [why, lines] : byReason)
                run.line(why + lines);
        }
        run.give({{"date", day.text()},
                  {"region", season.region},
                  {"shift_days", season.shiftDays},
                  {"worth", std::string(1, worth)},
                  {"signs", signs}});
    }

    std::string m_on, m_leafing;
};

} // namespace

std::unique_ptr<Verb> makeSeason()
{
    return std::make_unique<SeasonVerb>();
}

} // namespace cupule::app
