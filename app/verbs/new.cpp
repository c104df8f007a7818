#include <filesystem>

#include "app/verbs/verbs.h"

namespace cupule::app {

namespace {

class New final : public StoreVerb {
public:
    const char* name() const override { return "new"; }
    const char* summary() const override { return "Make a new, empty store"; }
    const char* usage() const override
    {
        return "STORE [--name NAME] [--region REGION] [--zone ZONE] [--demonstration]";
    }
    const char* prose() const override
    {
        return "Makes a store: one file, with a folder for its pictures beside it. The region decides which "
               "signs are "
               "expected in which weeks; the zone says what a local time means.\nA demonstration store is "
               "one from birth and "
               "can never be turned into a real one. Everything shown, printed or written from it says that "
               "it is invented.";
    }
    const char* examples() const override
    {
        return "cupule new \"Tharn Vale.cupule\" --region MAR --kind office";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--name", m_wanted.name, "what people call it; else the file's name");
        options.add_option("--zone", m_wanted.zone, "time zone, as Europe/London");
        options.add_option(
            "--region", m_wanted.region,
            "region of the season tables: MAR (maritime north-west Europe) or STH (southern Europe)");
        options.add_option("--kind", m_wanted.kind, "laptop, office or training")
            ->check(CLI::IsMember({"laptop", "office", "training"}));
        options.add_option("--notation", m_wanted.notation, "how positions are shown: OSGB, IG or WGS84")
            ->check(CLI::IsMember({"OSGB", "IG", "WGS84"}));
        options.add_flag("--demonstration", m_wanted.demonstration, "invented data only, for ever");
    }
    Result<int> run(Run& run) override
    {
        const auto who = run.profileOrNew();
        if (!who)
            return fail(who.error());
        if (m_wanted.name.empty())
            m_wanted.name = std::filesystem::path(m_store).stem().string();
        if (m_wanted.demonstration)
            if (auto marked = run.markDemonstration(m_wanted.zone); !marked)
                return fail(marked.error());
        const auto session = Session::create(m_store, m_wanted, *who, run.clock(), run.random());
        if (!session)
            return fail(session.error());
        const StoreInfo& info = (*session)->info();
        run.say("Made {name} in {file}.", {{"name", info.name}, {"file", m_store}});
        run.give({{"store", m_store},
                  {"id", info.id.text()},
                  {"name", info.name},
                  {"zone", info.zone},
                  {"region", info.region},
                  {"kind", info.kind},
                  {"notation", info.notation},
                  {"demonstration", info.demonstration}});
        return done;
    }

private:
    NewStore m_wanted;
};

} // namespace

std::unique_ptr<Verb> makeNew()
{
    return std::make_unique<New>();
}

} // namespace cupule::app
