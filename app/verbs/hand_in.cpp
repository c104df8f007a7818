#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

class HandIn final : public StoreVerb {
public:
    const char* name() const override { return "hand-in"; }
    const char* summary() const override { return "Hand in the visits of a day"; }
    const char* usage() const override { return "STORE --day DATE [--observer WHO] [--dry-run]"; }
    const char* prose() const override
    {
        return "Hands in every draft of a day that nothing stops; those that something stops stay, with what "
               "stops them. From "
               "then on a change is a new version and the verifier decides. Handing in twice does no harm. "
               "You hand in your own "
               "visits and those you were on; a trainer and the office also hand in what they took in for "
               "others.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--day", m_day, "which day, as 2026-06-11; else all days with drafts");
        options.add_option("--observer", m_observer, "only this person's visits, by code");
        options.add_flag("--dry-run", m_dryRun, "show what goes and what stays");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        Uid observer;
        if (!m_observer.empty()) {
            const auto person = findNoun(**session, Noun::person, m_observer);
            if (!person)
                return fail(person.error());
            observer = *person;
        }
        auto days = daysWithVisits(**session, observer);
        if (!days)
            return fail(days.error());
        if (!m_day.empty()) {
            const auto day = readDay(m_day, "--day");
            if (!day)
                return fail(day.error());
            *days = {*day};
        }
        Json goes = Json::array(), stays = Json::array();
        for (auto day = days->rbegin(); day != days->rend(); ++day) {
            const auto page =
                m_dryRun ? handInPage(**session, *day, observer) : handIn(**session, *day, observer);
            if (!page)
                return fail(page.error());
            say(run, *page, **session, goes, stays);
        }
        run.say(m_dryRun ? "Would go: {goes}. Would stay: {stays}." : "Handed in: {goes}. Staying: {stays}.",
                {{"goes", run.words().number(static_cast<double>(goes.size()))},
                 {"stays", run.words().number(static_cast<double>(stays.size()))}});
        const bool some = !stays.empty();
        run.give({{"handed_in", goes}, {"stays", stays}, {"dry_run", m_dryRun}});
        return some ? refused : done;
    }

private:
    static void say(Run& run, const HandInPage& page, const Session& session, Json& goes, Json& stays)
    {
        for (const auto& line : page.goes) {
            goes.push_back(visitLineJson(line));
            run.line(visitSentence(line, run.words()));
        }
        for (const auto& [line, findings] : page.stays) {
            Json json = visitLineJson(line);
            json["findings"] = findingsJson(findings, session.pack(), run.words());
            stays.push_back(std::move(json));
            run.say("Stays: {visit}", {{"visit", visitSentence(line, run.words())}});
            sayFindings(run, findings, session.pack());
        }
    }

    std::string m_day, m_observer;
    bool m_dryRun = false;
};

} // namespace

std::unique_ptr<Verb> makeHandIn()
{
    return std::make_unique<HandIn>();
}

} // namespace cupule::app
