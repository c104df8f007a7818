#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/record/json.h"
#include "core/task/nouns.h"
#include "core/task/trees.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_trees.h"

namespace cupule::app {

namespace {

Result<int> showVisit(Run& run, Session& session, const Uid& id)
{
    const auto page = visitPage(session, id);
    if (!page)
        return fail(page.error());
    const Words& words = run.words();
    run.give(visitPageJson(*page, session.pack(), words));
    run.say("{tree}{site}, {date}, {who}: {state}.",
            {{"tree", page->tree ? page->tree->label : std::string("?")},
             {"site", page->site ? words.text(" at {site}", {{"site", page->site->name}}) : std::string()},
             {"date", words.date(page->visit.date)},
             {"who", page->observer.code},
             {"state", words.state(page->state)}});
    if (page->decided)
        run.say(page->decided->answered ? "Decided on an earlier revision: {words}" : "Decided: {words}",
                {{"words", plain(ui::decisionText(page->decided->decision, page->decided->by, session.pack()))}});
    sayHost(run, page->host, session.pack());
    for (const auto& line : page->checklist)
        if (line.observation.answer != Answer::open)
            run.say("  {sign}: {answer} ({season})",
                    {{"sign", line.sign->name},
                     {"answer", plain(ui::answerWord(line.observation.answer))},
                     {"season", plain(ui::seasonWord(line.season.state))}});
    if (page->nothing)
        run.say("Nothing seen, worth {letter}. {why}",
                {{"letter", std::string(1, page->worth.letter)},
                 {"why", plain(ui::worthText(page->worth, session.pack()))}});
    sayFindings(run, page->findings, session.pack());
    for (const auto& line : page->history)
        run.say("At another time: {visit}", {{"visit", visitSentence(line.line, words)}});
    return done;
}

Result<int> showTree(Run& run, Session& session, const Uid& id)
{
    const auto page = treePage(session, id);
    if (!page)
        return fail(page.error());
    Json json{{"id", id.text()},
              {"tree", contentJson(toJson(page->tree))},
              {"host", hostJson(page->host, session.pack())},
              {"visits", historyJson(page->visits)},
              {"samples", Json::array()}};
    json["site"] = page->site ? contentJson(toJson(*page->site)) : Json();
    for (const auto& sample : page->samples)
        json["samples"].push_back(sample.number);
    if (page->tree.position)
        json["position"] = positionText(session, *page->tree.position);
    json["merged"] = Json::array();
    for (const auto& entry : page->merged)
        json["merged"].push_back(entry.label);
    run.give(std::move(json));
    run.say(
        "{tree}{site}. {host}",
        {{"tree", page->tree.label},
         {"site", page->site ? run.words().text(" at {site}", {{"site", page->site->name}}) : std::string()},
         {"host", plain(ui::hostText(page->host, session.pack()))}});
    if (page->tree.position)
        run.say("At {position}.", {{"position", positionText(session, *page->tree.position)}});
    if (!page->tree.fate.empty())
        run.say("It is {fate}.", {{"fate", plain(ui::fateText(page->tree.fate, page->tree.fateDate, page->fateBy))}});
    for (const auto& entry : page->merged)
        run.say("Also entered as {label}, which is the same tree.", {{"label", entry.label}});
    for (const auto& line : page->visits)
        run.say("  {visit}", {{"visit", visitSentence(line.line, run.words())}});
    for (const auto& event : page->events)
        if (event.kind != TreeEvent::Kind::visit)
            run.say("  {date}, {who}: {what}", {{"date", run.words().date(event.day)},
                                              {"who", event.who},
                                              {"what", plain(ui::eventText(event, *page))}});
    return done;
}

class Show final : public StoreVerb {
public:
    const char* name() const override { return "show"; }
    const char* summary() const override { return "Show one thing with everything known about it"; }
    const char* usage() const override { return "NOUN NAME STORE"; }
    const char* prose() const override
    {
        return "Shows one visit with its host verdict, its answers, what the checks find and what was seen "
               "at the tree before; one "
               "tree with its history; one sample with its chain; or any other thing as it is kept.";
    }
    const char* examples() const override
    {
        return "cupule show visit W03@2026-06-11 vale.cupule\ncupule show sample 26-TV-0147-H vale.cupule";
    }
    void declare(CLI::App& options) override
    {
        options
            .add_option("NOUN", m_noun, "visit, tree, site, person, photo, sample, leave, regime or decision")
            ->required();
        options.add_option("NAME", m_name, "its name, its id, or the beginning or end of its id")->required();
        declareStore(options);
    }
    Result<int> run(Run& run) override
    {
        const auto noun = nounNamed(m_noun);
        if (!noun)
            return fail("noun.unknown", FaultKind::usage, {{"noun", m_noun}});
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, *noun, m_name);
        if (!id)
            return fail(id.error());
        if (*noun == Noun::visit)
            return showVisit(run, **session, *id);
        if (*noun == Noun::tree)
            return showTree(run, **session, *id);
        if (*noun == Noun::sample) {
            const auto page = samplePage(**session, *id);
            if (!page)
                return fail(page.error());
            saySample(run, *page, (*session)->pack());
            run.give(samplePageJson(*page, (*session)->pack(), run.words()));
            return done;
        }
        const auto one = oneNoun(**session, *noun, *id);
        if (!one)
            return fail(one.error());
        Json json{{"id", one->id.text()}, {"name", one->name}};
        const Json content = contentJson(one->content);
        json[std::string(nounName(*noun))] = content;
        run.line(one->name);
        for (const auto& [field, value] : content.items())
            run.say(
                "  {field}: {value}",
                {{"field", field}, {"value", value.is_string() ? value.get<std::string>() : value.dump()}});
        run.give(std::move(json));
        return done;
    }

private:
    std::string m_noun, m_name;
};

} // namespace

std::unique_ptr<Verb> makeShow()
{
    return std::make_unique<Show>();
}

} // namespace cupule::app
