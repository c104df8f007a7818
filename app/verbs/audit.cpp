// Batches of routine "nothing seen" records: making one, and closing it.

#include "app/text.h"
#include "app/verbs/audit_words.h"
#include "app/words.h"
#include "core/task/nouns.h"
#include "ui/bridge/words_audit.h"

namespace cupule::app {

namespace {

class AuditMake final : public StoreVerb {
public:
    const char* name() const override { return "audit make"; }
    const char* summary() const override { return "Put routine \"nothing seen\" records into a batch for a blind audit"; }
    const char* usage() const override { return "STORE --auditor CODE [--confidence 95] [--tolerable 5] [--dry-run]"; }
    const char* prose() const override
    {
        return "Takes the records that are complete, ask nothing and wait undecided, and draws by chance as many as another verifier "
               "must look at: enough to meet a wrong one with the confidence wanted, where as many are wrong as must not go unnoticed. "
               "Records on which you or the auditor may not decide stay out.\nThe auditor sees the drawn ones mixed with records "
               "decided before, and is not told which is which. Then close the batch with \"cupule audit finish\".";
    }
    const char* examples() const override
    {
        return "cupule audit make vale.cupule --auditor JK --dry-run\ncupule audit make vale.cupule --auditor JK --confidence 99 "
               "--tolerable 2";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--auditor", m_auditor, "who is to look: the code of another verifier")->required();
        options.add_option("--confidence", m_confidence, "in percent; else 95");
        options.add_option("--tolerable", m_tolerable, "share of wrong records that must not go unnoticed, in percent; else 5");
        options.add_option("--from", m_from, "first day of the visits");
        options.add_option("--to", m_to, "last day of the visits");
        options.add_option("--most", m_wanted.most, "at most so many records");
        options.add_flag("--dry-run", m_dry, "only say how many must be looked at");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, m_dry);
        if (!session)
            return fail(session.error());
        if (auto read = readWanted(**session); !read)
            return fail(read.error());
        const auto offer = auditOffer(**session, m_wanted);
        if (!offer)
            return fail(offer.error());
        Uid made;
        if (!m_dry) {
            const auto id = makeAudit(**session, m_wanted);
            if (!id)
                return fail(id.error());
            made = *id;
        }
        return give(run, **session, *offer, made);
    }

private:
    Status readWanted(Session& session)
    {
        const auto auditor = findNoun(session, Noun::person, m_auditor);
        const auto confidence = readShare(m_confidence), tolerable = readShare(m_tolerable);
        if (!auditor || !confidence || !tolerable)
            return fail(!auditor ? auditor.error() : !confidence ? confidence.error() : tolerable.error());
        m_wanted.auditor = *auditor;
        m_wanted.confidence = *confidence;
        m_wanted.tolerable = *tolerable;
        for (const auto& [typed, option, into] : {std::tuple{&m_from, "--from", &m_wanted.from}, std::tuple{&m_to, "--to", &m_wanted.to}}) {
            if (typed->empty())
                continue;
            const auto day = readDay(*typed, option);
            if (!day)
                return fail(day.error());
            *into = *day;
        }
        return {};
    }
    int give(Run& run, Session& session, const AuditOffer& offer, const Uid& made)
    {
        Json json{{"records", offer.records},     {"not_yours", offer.notYours}, {"not_theirs", offer.notTheirs},
                  {"too_many", offer.tooMany},    {"made", !made.isNull()}};
        if (offer.size) {
            run.line(plain(ui::auditSizeText(*offer.size)));
            json["size"] = auditSizeJson(*offer.size);
        } else {
            run.say("No record can go into a batch now.");
        }
        for (const auto& line : ui::auditLeftOutText(offer))
            run.line(plain(line));
        if (!made.isNull()) {
            const auto page = auditPage(session, made);
            if (page) {
                json["batch"] = auditLineJson(page->line);
                run.say("Batch {number} is drawn: {count} records to look at, known ones among them.",
                        {{"number", std::to_string(page->line.number)}, {"count", std::to_string(page->line.toAnswer)}});
            }
        }
        run.give(json);
        return done;
    }

    std::string m_auditor, m_confidence = "95", m_tolerable = "5", m_from, m_to;
    bool m_dry = false;
    AuditWanted m_wanted;
};

class AuditList final : public StoreVerb {
public:
    const char* name() const override { return "audit list"; }
    const char* summary() const override { return "All batches, the newest first"; }
    const char* usage() const override { return "STORE"; }
    const char* prose() const override
    {
        return "Lists the batches with who made them, who is to look at the drawn records, and how far that is. What was answered is "
               "not said before a batch is closed.";
    }
    void declare(CLI::App& options) override { declareStore(options); }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const auto lines = auditLines(**session);
        if (!lines)
            return fail(lines.error());
        Json json = Json::array();
        for (const auto& line : *lines) {
            json.push_back(auditLineJson(line));
            run.say("{number}: {records} records, by {maker}, audited by {auditor}: {state}",
                    {{"number", std::to_string(line.number)},
                     {"records", std::to_string(line.records)},
                     {"maker", line.maker.code},
                     {"auditor", line.auditor.code},
                     {"state", plain(ui::auditStateWord(line.state))}});
        }
        run.give({{"count", lines->size()}, {"batches", json}});
        return done;
    }
};

/// Showing, closing, giving up and undoing give the same page.
class AuditPageVerb final : public BatchVerb {
public:
    struct Kind {
        const char *name, *summary, *prose;
        bool reads;
        Result<AuditPage> (*act)(Session&, const Uid&);
    };
    explicit AuditPageVerb(const Kind& kind) : m_kind(kind) {}
    const char* name() const override { return m_kind.name; }
    const char* summary() const override { return m_kind.summary; }
    const char* usage() const override { return "STORE BATCH"; }
    const char* prose() const override { return m_kind.prose; }
    void declare(CLI::App& options) override { declareBatch(options); }
    Result<int> run(Run& run) override
    {
        const auto session = openBatch(run, m_kind.reads);
        if (!session)
            return fail(session.error());
        const auto page = m_kind.act(**session, m_id);
        if (!page)
            return fail(page.error());
        sayBatch(run, *page, (*session)->pack());
        run.give(auditPageJson(*page));
        return page->line.state == AuditState::failed ? refused : done;
    }

private:
    const Kind& m_kind;
};

constexpr AuditPageVerb::Kind showKind{
    "audit show", "What a batch came to",
    "Says how far the round of a batch is; once it is closed, with which confidence at most which share of its records is wrong, what "
    "that rests on, and which records left it.",
    true, [](Session& session, const Uid& id) { return auditPage(session, id); }};
constexpr AuditPageVerb::Kind finishKind{
    "audit finish", "Close a batch: accept all of it, or send it back",
    "By who made the batch, once the auditor has looked at everything. Where the auditor would accept every drawn record, all of the "
    "batch are accepted in one step, each by a decision that names the batch. Where they differed on one, all go back to the queue and "
    "are decided one by one. Records that changed meanwhile are left out and named.",
    false, [](Session& session, const Uid& id) { return finishAudit(session, id); }};
constexpr AuditPageVerb::Kind giveUpKind{
    "audit give-up", "Let a batch go; its records wait as before",
    "By who made the batch. Nothing is decided. The batch and the answers given so far stay on record.", false,
    [](Session& session, const Uid& id) -> Result<AuditPage> {
        if (auto given = giveUpAudit(session, id); !given)
            return fail(given.error());
        return auditPage(session, id);
    }};
constexpr AuditPageVerb::Kind undoKind{
    "audit undo", "Take back that a batch was accepted",
    "By who made the batch, until one of its decisions has left in a file. Every acceptance is taken back, and the batch is open again. "
    "Where somebody has decided on a record since, that stands.",
    false, [](Session& session, const Uid& id) { return undoAudit(session, id); }};

} // namespace

std::unique_ptr<Verb> makeAuditMake()
{
    return std::make_unique<AuditMake>();
}
std::unique_ptr<Verb> makeAuditList()
{
    return std::make_unique<AuditList>();
}
std::unique_ptr<Verb> makeAuditShow()
{
    return std::make_unique<AuditPageVerb>(showKind);
}
std::unique_ptr<Verb> makeAuditFinish()
{
    return std::make_unique<AuditPageVerb>(finishKind);
}
std::unique_ptr<Verb> makeAuditGiveUp()
{
    return std::make_unique<AuditPageVerb>(giveUpKind);
}
std::unique_ptr<Verb> makeAuditUndo()
{
    return std::make_unique<AuditPageVerb>(undoKind);
}

} // namespace cupule::app
