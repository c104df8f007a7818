#include "app/json.h"
#include "app/limits.h"
#include "app/verbs/verbs.h"
#include "core/store/people.h"
#include "core/task/merge.h"

namespace cupule::app {

namespace {

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

Json conflictsJson(const Merged& merged)
{
    Json conflicts = Json::array();
    for (const MergedNoun& noun : merged.nouns)
        for (const FieldConflict& conflict : noun.conflicts) {
            Json sides = Json::array();
            for (const ConflictSide& side : conflict.sides)
                sides.push_back({{"revision", side.revision.text()}, {"value", side.value.empty() ? Json() : Json::parse(side.value)}});
            conflicts.push_back({{"noun", noun.noun}, {"id", noun.entity.text()}, {"field", conflict.path}, {"sides", sides}});
        }
    return conflicts;
}

Json clashesJson(const Merged& merged)
{
    Json clashes = Json::array();
    for (const MergeClash& clash : merged.clashes)
        clashes.push_back({{"noun", clash.noun}, {"value", clash.value}, {"here", clash.here.text()}, {"there", clash.there.text()}});
    return clashes;
}

Json idsJson(const std::vector<Uid>& ids)
{
    Json out = Json::array();
    for (const Uid& id : ids)
        out.push_back(id.text());
    return out;
}

class MergeVerb final : public StoreVerb {
public:
    const char* name() const override { return "merge"; }
    const char* summary() const override { return "Take in a signed file that arrived from another store"; }
    const char* usage() const override { return "STORE FILE"; }
    const char* prose() const override
    {
        return "Checks the file as if an enemy had made it: names and sizes, signature, every line and every picture. Says who "
               "signed it and whether their key is trusted here, what of it is new, where it differs from what stands here in "
               "the same field, and whether the sender's laptop has been copied. Then all of it is taken in, or nothing. The same "
               "file may be taken in twice, and files in any order.\nGives 1 where it was refused, with the reason.";
    }
    const char* examples() const override { return "cupule merge office.cupule 2026-06-11-MH.zip --dry-run\ncupule merge office.cupule 2026-06-11-MH.zip"; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("FILE", m_file, "the file that arrived")->required();
        options.add_flag("--dry-run", m_how.dryRun, "say what would change, and change nothing");
        m_limits.declare(options);
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto limits = m_limits.of(**session, run.words().text("limits of files that arrive"));
        if (!limits)
            return fail(limits.error());
        const auto arrival = lookAtArrival(**session, m_file, *limits);
        if (!arrival)
            return fail(arrival.error());
        const Manifest& manifest = arrival->file.manifest();
        Json json = manifestJson(manifest);
        json["fingerprint"] = arrival->fingerprint;
        json["key_standing"] = standingName(arrival->standing);
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
        const auto taken = takeIn(**session, *arrival, m_how);
        if (taken)
            return tellTaken(run, *taken, std::move(json));
        if (taken.error().kind != FaultKind::refused)
            return fail(taken.error());
        json["refused"] = {{"reason", taken.error().code}, {"sentence", run.words().fault(taken.error())}};
        run.line(run.words().fault(taken.error()));
        run.give(std::move(json));
        return refused;
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

    Result<int> tellTaken(Run& run, const TakenIn& taken, Json json) const
    {
        const Merged& merged = taken.merged;
        const Json conflicts = conflictsJson(merged);
        json["refused"] = nullptr;
        json["dry_run"] = m_how.dryRun;
        json["new"] = merged.fresh;
        json["known_already"] = merged.known;
        json["conflicts"] = conflicts;
        json["clashes"] = clashesJson(merged);
        json["waiting"] = merged.waiting;
        json["kept_drafts"] = idsJson(merged.keptDrafts);
        json["new_photos"] = taken.photos;
        json["acknowledged"] = idsJson(taken.acknowledged);
        json["settled"] = idsJson(taken.settled);
        if (m_how.dryRun)
            run.say("Only tried out: nothing was changed.");
        run.say("New: {fresh}. Known already: {known}. Fields that both sides changed differently: {conflicts}.",
                {{"fresh", std::to_string(merged.fresh)},
                 {"known", std::to_string(merged.known)},
                 {"conflicts", std::to_string(conflicts.size())}});
        for (const MergeClash& clash : merged.clashes)
            run.say("{value} is already another one here. Both are kept; one of them needs another number or code.", {{"value", clash.value}});
        if (!merged.keptDrafts.empty())
            run.say("Drafts that went on here after their visit was handed in elsewhere, kept as visits of their own: {count}.",
                    {{"count", std::to_string(merged.keptDrafts.size())}});
        if (merged.waiting > 0)
            run.say("Kept until what they name arrives in another file: {count}.", {{"count", std::to_string(merged.waiting)}});
        run.give(std::move(json));
        return done;
    }

    std::string m_file;
    TakeIn m_how;
    LimitOptions m_limits;
};

} // namespace

std::unique_ptr<Verb> makeMerge()
{
    return std::make_unique<MergeVerb>();
}

} // namespace cupule::app
