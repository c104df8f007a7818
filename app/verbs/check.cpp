#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/record/names.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

/// As many as a store can have.
constexpr int all = 1'000'000'000;

class Check final : public StoreVerb {
public:
    const char* name() const override { return "check"; }
    const char* summary() const override { return "What the checks find in a visit, a day or all drafts"; }
    const char* usage() const override { return "STORE [VISIT] [--day DATE]"; }
    const char* prose() const override
    {
        return "Runs every check on one visit, on the visits of a day, or on all drafts. A \"stop\" must be "
               "settled before the "
               "visit can be handed in; an \"ask\" is a question that the verifier will see was asked; a "
               "\"note\" is worth "
               "knowing. The exit code is 1 where something stops or is asked.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("VISIT", m_visit, "which visit, as W03@2026-06-11");
        options.add_option("--day", m_day, "all visits of that day");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto visits = chosen(**session);
        if (!visits)
            return fail(visits.error());
        Json list = Json::array();
        int found = 0;
        for (const auto& visit : *visits) {
            const auto page = visitPage(**session, visit.id);
            if (!page)
                return fail(page.error());
            const auto& findings = page->findings;
            found += !findings.empty() && findings.front().severity != Severity::note ? 1 : 0;
            list.push_back({{"id", visit.id.text()},
                            {"name", visit.name},
                            {"state", cupule::name(page->state)},
                            {"findings", findingsJson(findings, (*session)->pack(), run.words())}});
            if (!findings.empty())
                run.line(visit.name);
            sayFindings(run, findings, (*session)->pack());
        }
        run.say("Visits checked: {n}. With something that stops or is asked: {found}.",
                {{"n", run.words().number(static_cast<double>(visits->size()))},
                 {"found", run.words().number(found)}});
        run.give({{"checked", visits->size()}, {"with_findings", found}, {"visits", list}});
        return found > 0 ? refused : done;
    }

private:
    Result<std::vector<NamedNoun>> chosen(Session& session) const
    {
        if (!m_visit.empty()) {
            const auto id = findNoun(session, Noun::visit, m_visit);
            if (!id)
                return fail(id.error());
            auto one = oneNoun(session, Noun::visit, *id);
            if (!one)
                return fail(one.error());
            return std::vector<NamedNoun>{std::move(*one)};
        }
        NounFilter filter;
        filter.count = all;
        if (m_day.empty()) {
            filter.state = RecordState::draft;
        } else {
            const auto day = readDay(m_day, "--day");
            if (!day)
                return fail(day.error());
            filter.day = *day;
        }
        return listNouns(session, Noun::visit, filter);
    }

    std::string m_visit, m_day;
};

} // namespace

std::unique_ptr<Verb> makeCheck()
{
    return std::make_unique<Check>();
}

} // namespace cupule::app
