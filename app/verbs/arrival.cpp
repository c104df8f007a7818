#include "app/json.h"
#include "app/verbs/verbs.h"
#include "core/store/people.h"
#include "core/task/arrival.h"

namespace cupule::app {

namespace {

std::string_view standingName(KeyStanding standing)
{
    switch (standing) {
    case KeyStanding::vouched: return "vouched";
    case KeyStanding::unknown: return "unknown";
    case KeyStanding::changed: return "changed";
    case KeyStanding::otherPerson: return "other-person";
    case KeyStanding::withdrawn: return "withdrawn";
    case KeyStanding::follows: return "follows";
    }
    return {};
}

Json manifestJson(const Manifest& manifest)
{
    return {{"bundle", manifest.bundle.text()},
            {"kind", manifest.kind},
            {"number", manifest.number},
            {"made", instantText(manifest.made)},
            {"author", manifest.authorCode},
            {"person", manifest.authorPerson.text()},
            {"store", manifest.store.name},
            {"key", manifest.key},
            {"left_out", manifest.leftOut},
            {"visits", manifest.counts.visits},
            {"records", manifest.counts.records},
            {"photos", manifest.counts.media}};
}

Json conflictsJson(const MergePlan& plan)
{
    Json conflicts = Json::array();
    for (const PlannedNoun& planned : plan.nouns)
        for (const FieldConflict& conflict : planned.joined.conflicts) {
            Json sides = Json::array();
            for (const ConflictSide& side : conflict.sides)
                sides.push_back({{"revision", side.revision.text()}, {"value", side.value.empty() ? Json() : Json::parse(side.value)}});
            conflicts.push_back({{"noun", planned.noun}, {"id", planned.entity.text()}, {"field", conflict.path}, {"sides", sides}});
        }
    return conflicts;
}

Json clashesJson(const MergePlan& plan)
{
    Json clashes = Json::array();
    for (const PlannedClash& clash : plan.clashes)
        clashes.push_back({{"noun", clash.noun}, {"value", clash.value}, {"here", clash.here.text()}, {"there", clash.there.text()}});
    return clashes;
}

class ArrivalVerb final : public StoreVerb {
public:
    const char* name() const override { return "arrival"; }
    const char* summary() const override { return "Look at a signed file that arrived, without taking it in"; }
    const char* usage() const override { return "STORE FILE"; }
    const char* prose() const override
    {
        return "Checks the file as if an enemy had made it: names and sizes, signature, every line and every picture. Says who "
               "signed it and whether their key is trusted here, what of it is new, where it differs from what stands here in "
               "the same field, and whether the sender's laptop has been copied. Nothing is changed.\nGives 1 where the file "
               "could not be taken in, with the reason.";
    }
    const char* examples() const override { return "cupule arrival office.cupule 2026-06-11-MH.zip"; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("FILE", m_file, "the file that arrived")->required();
        options.add_option("--most-bytes", m_limits.wholeBytes, "how much it may unpack to, in bytes; 16 GiB where nothing is said");
        options.add_option("--most-parts", m_limits.parts, "how many parts it may have; 200000 where nothing is said");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const auto arrival = lookAtArrival(**session, m_file, m_limits);
        if (!arrival)
            return fail(arrival.error());
        const Manifest& manifest = arrival->file.manifest();
        Json json = manifestJson(manifest);
        json["fingerprint"] = arrival->fingerprint;
        json["key_standing"] = standingName(arrival->standing);
        json["known_already"] = arrival->knownAlready;
        run.say("From {who}, {store}, file {number}: visits {visits}, records {records}, photos {photos}.",
                {{"who", manifest.authorCode},
                 {"store", manifest.store.name},
                 {"number", std::to_string(manifest.number)},
                 {"visits", std::to_string(manifest.counts.visits)},
                 {"records", std::to_string(manifest.counts.records)},
                 {"photos", std::to_string(manifest.counts.media)}});
        run.say("Signed by the key with the fingerprint {digits}.", {{"digits", arrival->fingerprint}});
        if (auto told = tellParted(run, **session, *arrival, json); !told)
            return fail(told.error());
        if (const auto may = mayTakeIn(**session, *arrival); !may) {
            json["refused"] = {{"reason", may.error().code}, {"sentence", run.words().fault(may.error())}};
            run.line(run.words().fault(may.error()));
            run.give(std::move(json));
            return refused;
        }
        return tellPlan(run, **session, *arrival, std::move(json));
    }

private:
    static Status tellParted(Run& run, Session& session, const Arrival& arrival, Json& json)
    {
        json["copied_laptop"] = Json::array();
        for (const PartedChain& parted : arrival.parted) {
            json["copied_laptop"].push_back({{"incarnation", parted.incarnation.text()},
                                             {"line", parted.number},
                                             {"here", parted.here.text()},
                                             {"there", parted.there.text()}});
            const auto here = session.store().people().find(parted.here);
            if (!here)
                return fail(here.error());
            run.say("Take care: line {line} of the sender's journal is another one here, written by {who}. A laptop was copied with "
                    "its profile; each copy needs a profile of its own.",
                    {{"line", std::to_string(parted.number)}, {"who", *here ? (*here)->code : parted.here.text()}});
        }
        return {};
    }

    static Result<int> tellPlan(Run& run, Session& session, const Arrival& arrival, Json json)
    {
        const auto plan = planArrival(session, arrival);
        if (!plan)
            return fail(plan.error());
        json["new"] = plan->fresh;
        json["known"] = plan->known;
        json["conflicts"] = conflictsJson(*plan);
        json["clashes"] = clashesJson(*plan);
        run.say("New: {fresh}. Known already: {known}. Fields that both sides changed differently: {conflicts}.",
                {{"fresh", std::to_string(plan->fresh)},
                 {"known", std::to_string(plan->known)},
                 {"conflicts", std::to_string(plan->conflicts())}});
        for (const PlannedClash& clash : plan->clashes)
            run.say("{value} is already another one here.", {{"value", clash.value}});
        run.give(std::move(json));
        return done;
    }

    std::string m_file;
    BundleLimits m_limits;
};

} // namespace

std::unique_ptr<Verb> makeArrival()
{
    return std::make_unique<ArrivalVerb>();
}

} // namespace cupule::app
