// The auditor's round: the next record, an answer, and taking the last one back.

#include "app/text.h"
#include "app/verbs/audit_words.h"
#include "app/words.h"
#include "core/record/names.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

/// Nothing in it differs between records that are decided and those that are not, so neither id nor state stands here.
Json blindJson(const BlindRecord& record, const Pack& pack, const Words& words)
{
    const VisitPage& page = record.page;
    const Visit& visit = page.visit;
    Json signs = Json::array();
    for (const auto& line : page.checklist)
        if (line.observation.answer != Answer::open)
            signs.push_back({{"sign", line.sign->id}, {"answer", name(line.observation.answer)}});
    Json characters = Json::array();
    for (const auto& seen : visit.characters)
        characters.push_back({{"character", seen.character}, {"state", seen.state}});
    Json history = Json::array();
    for (const auto& line : page.history)
        history.push_back({{"date", line.line.date.text()}, {"summary", line.line.summary}});
    Json json{{"place", record.place},
              {"of", record.of},
              {"tree", page.tree ? page.tree->label : std::string()},
              {"date", visit.date.text()},
              {"observer", page.observer.code},
              {"host", hostJson(page.host, pack)},
              {"worth", std::string(1, page.worth.letter)},
              {"signs", signs},
              {"characters", characters},
              {"photos", page.photos.size()},
              {"findings", findingsJson(page.findings, pack, words)},
              {"note", visit.note},
              {"history", history}};
    if (visit.effort.minutes)
        json["minutes"] = *visit.effort.minutes;
    if (visit.effort.crownPercent)
        json["crown_percent"] = *visit.effort.crownPercent;
    return json;
}

void sayBlind(Run& run, const BlindRecord& record, const Pack& pack)
{
    const VisitPage& page = record.page;
    run.say("{place} of {of}: {tree}, {date}, seen by {who}. Nothing seen.",
            {{"place", std::to_string(record.place)},
             {"of", std::to_string(record.of)},
             {"tree", page.tree ? page.tree->label : std::string("?")},
             {"date", run.words().date(page.visit.date)},
             {"who", page.observer.code}});
    sayHost(run, page.host, pack);
    run.line(plain(ui::worthText(page.worth, pack)));
    sayFindings(run, page.findings, pack);
}

/// The round as it stands now: its next record, or that it is complete.
Result<int> giveNext(Run& run, Session& session, const Uid& audit)
{
    const auto next = nextToAudit(session, audit);
    if (!next)
        return fail(next.error());
    if (*next) {
        sayBlind(run, **next, session.pack());
        run.give({{"finished", false}, {"record", blindJson(**next, session.pack(), run.words())}});
    } else {
        run.say("Everything of this round is answered. Who made the batch closes it.");
        run.give({{"finished", true}});
    }
    return done;
}

class AuditNext final : public BatchVerb {
public:
    const char* name() const override { return "audit next"; }
    const char* summary() const override { return "The next record that an auditor is to look at"; }
    const char* usage() const override { return "STORE BATCH"; }
    const char* prose() const override
    {
        return "Shows the next record of your round. Some were drawn from the batch, others were decided before; you are not told which. "
               "Do not look them up elsewhere while the round is open.";
    }
    void declare(CLI::App& options) override { declareBatch(options); }
    Result<int> run(Run& run) override
    {
        const auto session = openBatch(run, true);
        if (!session)
            return fail(session.error());
        return giveNext(run, **session, m_id);
    }
};

class AuditAnswerVerb final : public BatchVerb {
public:
    const char* name() const override { return "audit answer"; }
    const char* summary() const override { return "Say what you would decide on the record of a round"; }
    const char* usage() const override { return "STORE BATCH PLACE accept|reject|return [--reason ID]..."; }
    const char* prose() const override
    {
        return "Keeps what you would decide on the record at this place of your round, which \"cupule audit next\" shows, and shows the "
               "next one. Rejecting and sending back need a reason, as deciding does.";
    }
    const char* examples() const override
    {
        return "cupule audit answer vale.cupule 1 1 accept\ncupule audit answer vale.cupule 1 2 reject --reason other-kind-of-tree";
    }
    void declare(CLI::App& options) override
    {
        declareBatch(options);
        options.add_option("PLACE", m_place, "which record of the round, as shown")->required();
        options.add_option("OUTCOME", m_outcome, "accept, reject or return")
            ->required()
            ->check(CLI::IsMember({"accept", "reject", "return"}));
        options.add_option("--reason", m_answer.reasons, "id of a reason in the pack")
            ->expected(1)
            ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
        options.add_option("--remark", m_answer.remark, "a sentence about it");
    }
    Result<int> run(Run& run) override
    {
        const auto session = openBatch(run);
        if (!session)
            return fail(session.error());
        const auto next = nextToAudit(**session, m_id);
        if (!next)
            return fail(next.error());
        if (!*next || (*next)->place != m_place)
            return fail("audit.other-record", FaultKind::refused);
        m_answer.visit = (*next)->page.visit.id;
        m_answer.outcome = *fromName<Outcome>(m_outcome);
        if (auto kept = answerAudit(**session, m_id, m_answer); !kept)
            return fail(kept.error());
        return giveNext(run, **session, m_id);
    }

private:
    int m_place = 0;
    std::string m_outcome;
    AuditAnswer m_answer;
};

class AuditTakeBack final : public BatchVerb {
public:
    const char* name() const override { return "audit take-back"; }
    const char* summary() const override { return "Open your last answer of a round again"; }
    const char* usage() const override { return "STORE BATCH"; }
    const char* prose() const override
    {
        return "Takes back the answer that you gave last, and shows that record again. Both stay on record.";
    }
    void declare(CLI::App& options) override { declareBatch(options); }
    Result<int> run(Run& run) override
    {
        const auto session = openBatch(run);
        if (!session)
            return fail(session.error());
        if (auto back = takeAnswerBack(**session, m_id); !back)
            return fail(back.error());
        return giveNext(run, **session, m_id);
    }
};

} // namespace

std::unique_ptr<Verb> makeAuditNext()
{
    return std::make_unique<AuditNext>();
}
std::unique_ptr<Verb> makeAuditAnswer()
{
    return std::make_unique<AuditAnswerVerb>();
}
std::unique_ptr<Verb> makeAuditTakeBack()
{
    return std::make_unique<AuditTakeBack>();
}

} // namespace cupule::app
