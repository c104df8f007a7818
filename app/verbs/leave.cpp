#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/base/text.h"
#include "core/record/json.h"
#include "core/record/names.h"
#include "core/task/nouns.h"
#include "core/task/samples.h"

namespace cupule::app {

namespace {

Result<Uid> siteNamed(Session& session, const std::string& name)
{
    return name.empty() ? Result<Uid>(Uid{}) : findNoun(session, Noun::site, name);
}

/// An empty text is no day.
Status readOptionalDay(const std::string& typed, const char* option, std::optional<CivilDate>& day)
{
    if (typed.empty())
        return {};
    const auto read = readDay(typed, option);
    if (!read)
        return fail(read.error());
    day = *read;
    return {};
}

class LeaveAdd final : public StoreVerb {
public:
    const char* name() const override { return "leave add"; }
    const char* summary() const override { return "Note that somebody gave leave"; }
    const char* usage() const override
    {
        return "STORE --giver WHO --scope SCOPES [--site SITE] [--from DATE] [--to DATE]";
    }
    const char* prose() const override
    {
        return "Notes who gave leave for what, where and until when. A sample needs two: the owner or "
               "occupier lets you enter and "
               "sample, the authority lets you take and move. Public paths do not give leave to cut.";
    }
    const char* examples() const override
    {
        return "cupule leave add vale.cupule --giver owner --name \"Ann Field\" --scope "
               "enter,photograph,sample --site \"Weir Wood\" --from 2026-05-01 --to 2026-09-30";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--giver", m_giver, "owner, occupier or authority")
            ->required()
            ->check(CLI::IsMember({"owner", "occupier", "authority"}));
        options.add_option("--name", m_leave.giverName, "name of the giver; kept apart and can be erased");
        options
            .add_option("--scope", m_scopes, "enter, photograph, sample, move, pass-on, with commas between")
            ->required();
        options.add_option("--site", m_site, "where; else everywhere that the giver can speak for");
        options.add_option("--from", m_from, "first day; else today");
        options.add_option("--to", m_to, "last day; else until withdrawn");
        options.add_option("--reference", m_leave.reference, "letter, number or how it was given");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        m_leave.giver = *fromName<LeaveGiver>(m_giver);
        for (const auto& word : split(m_scopes, ',')) {
            const auto scope = fromName<LeaveScope>(trim(word));
            if (!scope)
                return fail("field.value", FaultKind::usage, {{"field", "--scope"}, {"value", word}});
            m_leave.scopes.push_back(*scope);
        }
        const auto site = siteNamed(**session, m_site);
        if (!site)
            return fail(site.error());
        m_leave.site = *site;
        std::optional<CivilDate> from = (*session)->today();
        if (auto read = readOptionalDay(m_from, "--from", from); !read)
            return fail(read.error());
        m_leave.from = *from;
        if (auto read = readOptionalDay(m_to, "--to", m_leave.to); !read)
            return fail(read.error());
        const auto made = addLeave(**session, m_leave);
        if (!made)
            return fail(made.error());
        run.say("Noted from {date} on.", {{"date", run.words().date(made->from)}});
        run.give({{"id", made->id.text()}, {"leave", contentJson(toJson(*made))}});
        return done;
    }

private:
    std::string m_giver, m_scopes, m_site, m_from, m_to;
    Leave m_leave;
};

class LeaveWithdraw final : public StoreVerb {
public:
    const char* name() const override { return "leave withdraw"; }
    const char* summary() const override { return "Note that a leave was withdrawn"; }
    const char* usage() const override { return "STORE LEAVE [--on DATE]"; }
    const char* prose() const override
    {
        return "From the day named on (else today) the leave no longer holds.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("LEAVE", m_name, "its reference, or its id")->required();
        options.add_option("--on", m_on, "first day on which it no longer holds");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, Noun::leave, m_name);
        if (!id)
            return fail(id.error());
        const auto leaves = allLeaves(**session);
        if (!leaves)
            return fail(leaves.error());
        std::optional<CivilDate> on = (*session)->today();
        if (auto read = readOptionalDay(m_on, "--on", on); !read)
            return fail(read.error());
        for (Leave leave : *leaves) {
            if (leave.id != *id)
                continue;
            leave.withdrawn = on;
            const auto made = addLeave(**session, leave);
            if (!made)
                return fail(made.error());
            run.say("Withdrawn from {date} on.", {{"date", run.words().date(*on)}});
            run.give({{"id", id->text()}, {"leave", contentJson(toJson(*made))}});
            return done;
        }
        return fail("name.unknown", FaultKind::usage, {{"noun", "leave"}, {"name", m_name}});
    }

private:
    std::string m_name, m_on;
};

class RegimeAdd final : public StoreVerb {
public:
    const char* name() const override { return "regime add"; }
    const char* summary() const override { return "Note what the authority asks for at a place"; }
    const char* usage() const override
    {
        return "STORE --issuer WHO --dry-galls keep|destroy|ask [--site SITE]";
    }
    const char* prose() const override
    {
        return "Notes what the authority asks for: whether dry galls are kept, destroyed or asked about, and "
               "whom to tell. It is "
               "shown where a sample is disposed of. For the office.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--issuer", m_regime.issuer, "who asks for it")->required();
        options.add_option("--dry-galls", m_regime.dryGalls, "keep, destroy or ask")
            ->required()
            ->check(CLI::IsMember({"keep", "destroy", "ask"}));
        options.add_option("--notify", m_regime.notify, "whom to tell, in the issuer's words");
        options.add_option("--site", m_site, "where; else the whole region");
        options.add_option("--from", m_from, "first day; else today");
        options.add_option("--to", m_to, "last day");
        options.add_option("--reference", m_regime.reference, "letter or number");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto site = siteNamed(**session, m_site);
        if (!site)
            return fail(site.error());
        m_regime.site = *site;
        std::optional<CivilDate> from = (*session)->today();
        if (auto read = readOptionalDay(m_from, "--from", from); !read)
            return fail(read.error());
        m_regime.from = *from;
        if (auto read = readOptionalDay(m_to, "--to", m_regime.to); !read)
            return fail(read.error());
        const auto made = addRegime(**session, m_regime);
        if (!made)
            return fail(made.error());
        run.say("Noted from {date} on.", {{"date", run.words().date(made->from)}});
        run.give({{"id", made->id.text()}, {"regime", contentJson(toJson(*made))}});
        return done;
    }

private:
    std::string m_site, m_from, m_to;
    Regime m_regime;
};

} // namespace

std::unique_ptr<Verb> makeLeaveAdd()
{
    return std::make_unique<LeaveAdd>();
}
std::unique_ptr<Verb> makeLeaveWithdraw()
{
    return std::make_unique<LeaveWithdraw>();
}
std::unique_ptr<Verb> makeRegimeAdd()
{
    return std::make_unique<RegimeAdd>();
}

} // namespace cupule::app
