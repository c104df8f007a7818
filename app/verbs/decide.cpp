#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/record/json.h"
#include "core/record/names.h"
#include "core/task/nouns.h"
#include "core/task/review.h"

namespace cupule::app {

namespace {

/// What all three verbs give.
int give(Run& run, const ReviewPage& page)
{
    Json decisions = Json::array();
    for (const auto& decision : page.decisions)
        decisions.push_back(contentJson(toJson(decision)));
    run.give({{"id", page.visit.visit.id.text()},
              {"state", name(page.visit.state)},
              {"one_of_two", page.oneOfTwo},
              {"correction_waits", page.visit.correctionWaits},
              {"new_ground", page.newGround},
              {"told", page.told.has_value()},
              {"decisions", decisions}});
    run.say(page.oneOfTwo
                ? "{tree}, {date}: one of two. It lies in new ground; a second verifier decides too."
            : page.place.code == "conflict" ? "{tree}, {date}: two decisions disagree. A third verifier decides."
                                            : "{tree}, {date}: {state}.",
            {{"tree", page.visit.tree ? page.visit.tree->label : std::string("?")},
             {"date", run.words().date(page.visit.visit.date)},
             {"state", run.words().state(page.visit.state)}});
    if (page.visit.positive.positive && !page.told)
        run.say("There is no note yet that the authority was told (cupule told).");
    return done;
}

class VisitVerb : public StoreVerb {
protected:
    void declareVisit(CLI::App& options)
    {
        declareStore(options);
        options.add_option("VISIT", m_visit, "which visit, as W03@2026-06-11")->required();
    }
    Result<std::unique_ptr<Session>> openVisit(Run& run)
    {
        auto session = run.open(m_store);
        if (!session)
            return session;
        const auto id = findNoun(**session, Noun::visit, m_visit);
        if (!id)
            return fail(id.error());
        m_id = *id;
        return session;
    }
    std::string m_visit;
    Uid m_id;
};

class Decide final : public VisitVerb {
public:
    const char* name() const override { return "decide"; }
    const char* summary() const override { return "Accept a visit, reject it or send it back"; }
    const char* usage() const override
    {
        return "STORE VISIT accept|reject|return [--reason ID]... [--remark TEXT]";
    }
    const char* prose() const override
    {
        return "Decides on the newest version of a visit that was handed in. Rejecting and sending back need "
               "a reason from the "
               "list; --reason may be given several times, the main one first, and without one that is needed the list is "
               "shown. Nobody decides on a visit in "
               "which they, a "
               "companion, a trainer present, the landowner or one of their household took part.\nA find in "
               "new ground needs two "
               "verifiers: after the first it stays handed in, one of two, and the second does not see what "
               "the first one said.";
    }
    const char* examples() const override
    {
        return "cupule decide vale.cupule W03@2026-06-11 accept --reason host-and-gall-shown\ncupule decide "
               "vale.cupule H02@2026-06-14 return --reason tree-not-shown --remark \"A leaf, please.\"";
    }
    void declare(CLI::App& options) override
    {
        declareVisit(options);
        options.add_option("OUTCOME", m_outcome, "accept, reject or return")
            ->required()
            ->check(CLI::IsMember({"accept", "reject", "return"}));
        options.add_option("--reason", m_wanted.reasons, "id of a reason in the pack")
            ->expected(1)
            ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
        options.add_option("--remark", m_wanted.remark, "a sentence to the observer");
        options.add_option("--report", m_wanted.reportNumber,
                           "number of the laboratory's report on which it is accepted");
    }
    Result<int> run(Run& run) override
    {
        const auto session = openVisit(run);
        if (!session)
            return fail(session.error());
        const auto page = reviewPage(**session, m_id);
        if (!page)
            return fail(page.error());
        m_wanted.visit = m_id;
        m_wanted.revision = page->visit.headRevision;
        m_wanted.outcome = *fromName<Outcome>(m_outcome);
        m_wanted.laboratory = !m_wanted.reportNumber.empty();
        const auto decided = decide(**session, m_wanted);
        if (decided)
            return give(run, *decided);
        if (decided.error().code.starts_with("decide.reason-")) {
            const int code = run.fail(decided.error());
            sayReasons(run, (*session)->pack());
            return code;
        }
        return fail(decided.error());
    }

private:
    /// Which reasons there are for this outcome, as somebody needs them who typed none or a wrong one.
    void sayReasons(Run& run, const Pack& pack) const
    {
        for (const auto& reason : pack.reasons)
            if (m_outcome == "accept" ? reason.accept : m_outcome == "reject" ? reason.reject : reason.giveBack)
                run.complain("  " + reason.id + ": " + reason.sentence);
    }

    std::string m_outcome;
    Decision m_wanted;
};

class Undecide final : public VisitVerb {
public:
    const char* name() const override { return "undecide"; }
    const char* summary() const override { return "Take back your own last decision on a visit"; }
    const char* usage() const override { return "STORE VISIT"; }
    const char* prose() const override
    {
        return "Takes back your own decision, as long as nobody else has decided since. The old one stays in "
               "the journal.";
    }
    void declare(CLI::App& options) override { declareVisit(options); }
    Result<int> run(Run& run) override
    {
        const auto session = openVisit(run);
        if (!session)
            return fail(session.error());
        if (auto undone = undoDecision(**session, m_id); !undone)
            return fail(undone.error());
        const auto page = reviewPage(**session, m_id);
        if (!page)
            return fail(page.error());
        return give(run, *page);
    }
};

class Reopen final : public VisitVerb {
public:
    const char* name() const override { return "reopen"; }
    const char* summary() const override { return "Open a decided visit again, for another verifier"; }
    const char* usage() const override { return "STORE VISIT [--remark TEXT]"; }
    const char* prose() const override
    {
        return "Opens a decided visit again, because something new is known. The old decision is kept; a "
               "verifier who has neither "
               "accepted nor rejected it before decides anew.";
    }
    void declare(CLI::App& options) override
    {
        declareVisit(options);
        options.add_option("--remark", m_remark, "what is new");
    }
    Result<int> run(Run& run) override
    {
        const auto session = openVisit(run);
        if (!session)
            return fail(session.error());
        if (auto opened = reopen(**session, m_id, m_remark); !opened)
            return fail(opened.error());
        const auto page = reviewPage(**session, m_id);
        if (!page)
            return fail(page.error());
        return give(run, *page);
    }

private:
    std::string m_remark;
};

class ToldVerb final : public VisitVerb {
public:
    const char* name() const override { return "told"; }
    const char* summary() const override { return "Note that the plant-health authority was told of a find"; }
    const char* usage() const override { return "STORE VISIT --to WHOM [--reference TEXT] [--at MOMENT]"; }
    const char* prose() const override
    {
        return "Notes whom you told of a find, when, and under which reference. Whether and how fast a find "
               "must be told is for "
               "the rules of the place to say; often a suspicion is enough, so do not wait for a decision. "
               "This note tells nobody "
               "anything by itself.";
    }
    void declare(CLI::App& options) override
    {
        declareVisit(options);
        options.add_option("--to", m_to, "whom")->required();
        options.add_option("--reference", m_reference, "their reference");
        options.add_option("--by", m_by, "who told them; else you");
        options.add_option("--at", m_at, "when, as \"2026-06-12 09:30\"; else now");
    }
    Result<int> run(Run& run) override
    {
        const auto session = openVisit(run);
        if (!session)
            return fail(session.error());
        Told told{m_id, {}, m_by, m_to, m_reference};
        if (!m_at.empty()) {
            const auto at = readMoment(m_at, **session);
            if (!at)
                return fail(at.error());
            told.at = *at;
        }
        if (auto recorded = recordTold(**session, told); !recorded)
            return fail(recorded.error());
        run.say("Noted: {to} was told.", {{"to", m_to}});
        run.give({{"id", m_id.text()}, {"told", true}, {"to", m_to}, {"reference", m_reference}});
        return done;
    }

private:
    std::string m_to, m_reference, m_by, m_at;
};

} // namespace

std::unique_ptr<Verb> makeDecide()
{
    return std::make_unique<Decide>();
}
std::unique_ptr<Verb> makeUndecide()
{
    return std::make_unique<Undecide>();
}
std::unique_ptr<Verb> makeReopen()
{
    return std::make_unique<Reopen>();
}
std::unique_ptr<Verb> makeTold()
{
    return std::make_unique<ToldVerb>();
}

} // namespace cupule::app
