#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/task/review.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

class Queue final : public StoreVerb {
public:
    const char* name() const override { return "queue"; }
    const char* summary() const override { return "What waits for a decision, the most urgent first"; }
    const char* usage() const override { return "STORE [--count N]"; }
    const char* prose() const override
    {
        return "Lists what waits for a verifier, in the order in which it should be looked at, and why it "
               "stands where it stands: "
               "first what was found in new ground, last what is routine.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--from", m_from, "leave out so many first");
        options.add_option("--count", m_count, "at most so many; else 50");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        if (auto may = (*session)->need(Role::verifier); !may)
            return fail(may.error());
        const auto waiting = countQueue(**session);
        if (!waiting)
            return fail(waiting.error());
        const auto lines = queueLines(**session, m_from, m_count);
        if (!lines)
            return fail(lines.error());
        Json queue = Json::array();
        for (const auto& line : *lines) {
            Json json = visitLineJson(line.line);
            json["rank"] = line.place.rank;
            json["place"] = line.place.code;
            if (line.nearestFindMetres)
                json["nearest_find_m"] = *line.nearestFindMetres;
            queue.push_back(std::move(json));
            run.line(visitSentence(line.line, run.words()) + ". " + plain(ui::queueText(line.place.code)) +
                     (line.nearestFindMetres
                          ? run.words().text(" Nearest accepted find: {far}.",
                                             {{"far", plain(ui::distanceText(*line.nearestFindMetres))}})
                          : std::string()));
        }
        run.say("Waiting: {n}.", {{"n", run.words().number(*waiting)}});
        run.give({{"waiting", *waiting}, {"queue", queue}});
        return done;
    }

private:
    int m_from = 0, m_count = 50;
};

} // namespace

std::unique_ptr<Verb> makeQueue()
{
    return std::make_unique<Queue>();
}

} // namespace cupule::app
