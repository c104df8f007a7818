#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/record/names.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

constexpr const char* nounsHelp =
    "visits, trees, sites, people, photos, samples, leaves, regimes or decisions";

Result<Noun> readNoun(const std::string& word)
{
    const auto noun = nounNamed(word);
    if (!noun)
        return fail("noun.unknown", FaultKind::usage, {{"noun", word}});
    return *noun;
}

/// The content, with what the store has computed about it.
Result<Json> entryJson(Session& session, Noun noun, const NamedNoun& entry)
{
    Json json{{"id", entry.id.text()}, {"name", entry.name}};
    json[std::string(nounName(noun))] = contentJson(entry.content);
    if (noun == Noun::visit) {
        const auto page = visitPage(session, entry.id);
        if (!page)
            return fail(page.error());
        json["state"] = name(page->state);
        json["one_of_two"] = page->oneOfTwo;
        json["correction_waits"] = page->correctionWaits;
        json["host"] = hostName(page->host.answer);
        json["positive"] = page->positive.positive;
        json["nothing_seen"] = page->nothing;
        json["worth"] = std::string(1, page->worth.letter);
    }
    return json;
}

/// The name, and of a sample how far it has come.
Result<std::string> entryLine(const Run& run, Session& session, Noun noun, const NamedNoun& entry)
{
    if (noun != Noun::sample)
        return entry.name;
    const auto page = samplePage(session, entry.id);
    if (!page)
        return fail(page.error());
    return run.words().text("{number}, from {tree} on {date}: {state}",
                            {{"number", entry.name},
                             {"tree", page->treeLabel},
                             {"date", run.words().date(page->visitDate)},
                             {"state", run.words().state(page->status.state)}});
}

class List final : public StoreVerb {
public:
    const char* name() const override { return "list"; }
    const char* summary() const override { return "List visits, trees, people and everything else"; }
    const char* usage() const override { return "NOUN STORE [--day DATE] [--state STATE]"; }
    const char* prose() const override
    {
        return "Lists what a store holds: visits, trees, sites, people, photos, samples, leaves, regimes or "
               "decisions. The names it "
               "gives are the names that other verbs take.";
    }
    const char* examples() const override
    {
        return "cupule list trees vale.cupule\ncupule list visits vale.cupule --state returned";
    }
    void declare(CLI::App& options) override
    {
        options.add_option("NOUN", m_noun, nounsHelp)->required();
        declareStore(options);
        options.add_option("--day", m_day, "visits and decisions of that day");
        options
            .add_option("--state", m_state,
                        "visits that are draft, submitted, accepted, rejected or returned")
            ->check(CLI::IsMember({"draft", "submitted", "accepted", "rejected", "returned"}));
        options.add_option("--from", m_filter.from, "leave out so many first");
        options.add_option("--count", m_filter.count, "at most so many; else 1000");
    }
    Result<int> run(Run& run) override
    {
        const auto noun = readNoun(m_noun);
        if (!noun)
            return fail(noun.error());
        if (!m_day.empty()) {
            const auto day = readDay(m_day, "--day");
            if (!day)
                return fail(day.error());
            m_filter.day = *day;
        }
        m_filter.state = fromName<RecordState>(m_state);
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const auto entries = listNouns(**session, *noun, m_filter);
        if (!entries)
            return fail(entries.error());
        Json items = Json::array();
        for (const auto& entry : *entries) {
            if (!run.json()) {
                const auto line = entryLine(run, **session, *noun, entry);
                if (!line)
                    return fail(line.error());
                run.line(*line);
                continue;
            }
            auto json = entryJson(**session, *noun, entry);
            if (!json)
                return fail(json.error());
            items.push_back(std::move(*json));
        }
        if (entries->empty())
            run.say("There are none.");
        run.give({{"noun", nounName(*noun)}, {"count", entries->size()}, {"items", items}});
        return done;
    }

private:
    std::string m_noun, m_day, m_state;
    NounFilter m_filter;
};

} // namespace

std::unique_ptr<Verb> makeList()
{
    return std::make_unique<List>();
}

} // namespace cupule::app
