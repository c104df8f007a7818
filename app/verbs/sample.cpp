#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/record/names.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

class SampleVerb : public StoreVerb {
protected:
    void declareSample(CLI::App& options)
    {
        declareStore(options);
        options.add_option("NUMBER", m_number, "number of the sample")->required();
    }
    Result<std::unique_ptr<Session>> openSampleOf(Run& run, bool readOnly = false)
    {
        auto session = run.open(m_store, readOnly);
        if (!session)
            return session;
        const auto id = findNoun(**session, Noun::sample, m_number);
        if (!id)
            return fail(id.error());
        m_id = *id;
        return session;
    }
    std::string m_number;
    Uid m_id;
};

class SampleOpen final : public StoreVerb {
public:
    const char* name() const override { return "sample open"; }
    const char* summary() const override { return "Open a sample on a visit"; }
    const char* usage() const override { return "STORE VISIT --part PART [--pieces N]"; }
    const char* prose() const override
    {
        return "The rule is: photograph it, leave it on the tree, report it. A sample is only opened where "
               "the owner or occupier "
               "has given leave to enter and sample and the authority has given leave to take and move, both "
               "in force that day, and "
               "the tree is not ruled out. It gets the next number of your device's block.\nMaterial that "
               "lies there already "
               "without leave is recorded with --already-taken, with the break; tell the authority.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("VISIT", m_visit, "which visit, as W03@2026-06-11")->required();
        options
            .add_option("--part", m_wanted.plantPart,
                        "what was taken, as \"leaf with galls\" or \"dry gall\"")
            ->required();
        options.add_option("--pieces", m_pieces, "how many pieces");
        options.add_option("--condition", m_wanted.condition, "fresh, dry or holes")
            ->check(CLI::IsMember({"fresh", "dry", "holes"}));
        options.add_option("--host", m_wanted.hostAsBelieved, "the tree as you believe it to be");
        options.add_option("--reason", m_wanted.reason, "why it is taken");
        options.add_option("--note", m_wanted.note, "anything else");
        options.add_option("--number", m_wanted.number, "the number on a label printed before (labels --blank); else the next one");
        options.add_flag("--already-taken", m_alreadyTaken,
                         "the material was taken without leave; record it with the break");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto visit = findNoun(**session, Noun::visit, m_visit);
        if (!visit)
            return fail(visit.error());
        m_wanted.visit = *visit;
        if (m_pieces >= 0)
            m_wanted.pieces = m_pieces;
        const auto opening = openSample(**session, m_wanted, m_alreadyTaken);
        if (!opening)
            return fail(opening.error());
        const Pack& pack = (*session)->pack();
        Json json{{"opened", opening->sample.has_value()},
                  {"why", findingsJson(opening->why, pack, run.words())}};
        if (opening->sample) {
            json["number"] = opening->sample->number;
            json["id"] = opening->sample->id.text();
            run.say("Opened sample {number}.", {{"number", opening->sample->number}});
            run.line(pack.hazardLine);
        } else {
            run.say("No sample can be opened here:");
        }
        sayFindings(run, opening->why, pack);
        const bool opened = opening->sample.has_value();
        run.give(std::move(json));
        return opened ? done : refused;
    }

private:
    std::string m_visit;
    int m_pieces = -1;
    bool m_alreadyTaken = false;
    Sample m_wanted;
};

class SampleLineVerb final : public SampleVerb {
public:
    const char* name() const override { return "sample line"; }
    const char* summary() const override { return "Add a line to a sample's custody record"; }
    const char* usage() const override { return "STORE NUMBER KIND [what the kind needs]"; }
    const char* prose() const override
    {
        return "Adds one line: cut, inner-bag, outer-bag, on-site (both bags closed before leaving the tree, "
               "and what was cleaned), "
               "hand-over, receipt, result, disposal or void. Lines are never changed; a wrong one is "
               "followed by one that says "
               "--corrects and its number. A seal number is read off the bag and typed, never copied from "
               "the record.\nTimes are "
               "typed as \"2026-06-11 11:20\" where the store's zone holds, or in full with their offset.";
    }
    const char* examples() const override
    {
        return "cupule sample line vale.cupule 26-TV-0147-H inner-bag --bag A12 --at \"2026-06-11 "
               "11:20\"\ncupule sample line vale.cupule 26-TV-0147-H hand-over --from MH --to JB --out "
               "\"2026-06-11 15:00\" --in \"2026-06-11 15:05\" --seal S881 --seal-whole yes";
    }
    void declare(CLI::App& options) override
    {
        declareSample(options);
        options.add_option("KIND", m_kind, "kind of line")
            ->required()
            ->check(CLI::IsMember({"cut", "inner-bag", "outer-bag", "on-site", "hand-over", "receipt",
                                   "result", "disposal", "void"}));
        options.add_option("--at,--out", m_out, "when it happened, or when it left the giver");
        options.add_option("--in", m_in, "when the taker had it");
        options.add_option("--from", m_line.from, "who gave it (code or name)");
        options.add_option("--to", m_line.to, "who took it (code, name, laboratory, courier)");
        options.add_option("--place", m_line.place, "where");
        options.add_option("--bag", m_line.bag, "number on the bag");
        options.add_option("--seal", m_line.seal, "seal put on, or read off the bag");
        options.add_option("--seal-whole", m_sealWhole, "yes or no")->check(CLI::IsMember({"yes", "no"}));
        options.add_option("--pieces", m_pieces, "pieces as counted here");
        options.add_option("--condition", m_line.condition, "in which condition");
        options.add_option("--travel", m_line.travel, "way of travel, or the courier's consignment number");
        options.add_option("--celsius", m_celsius, "temperature in degrees Celsius");
        options
            .add_option("--confirmed", m_confirmed,
                        "on-site: double-bagged before leaving the tree, yes or no")
            ->check(CLI::IsMember({"yes", "no"}));
        for (const auto& [option, item] : cleaned())
            options.add_option(option, *item, "on-site: done, or none-used for vehicle and tools");
        options.add_option("--report", m_line.reportNumber, "result: number of the report");
        options.add_option("--finding", m_line.finding, "result: found, \"not found\" or \"not examined\"")
            ->check(CLI::IsMember({"found", "not found", "not examined"}));
        options.add_option("--method", m_line.method, "result, disposal: how");
        options.add_option("--limits", m_line.limits, "result: what it does not say");
        options.add_option("--host", m_line.host, "result: the tree as the laboratory sees it");
        options.add_option("--signed", m_line.signedBy, "result: who signed; disposal: witness");
        options.add_option("--disposal", m_line.disposal, "destroyed, voucher or returned")
            ->check(CLI::IsMember({"destroyed", "voucher", "returned"}));
        options.add_option("--order", m_line.order, "disposal: number of the written instruction");
        options.add_option("--reason", m_line.reason, "void, correction: why");
        options.add_option("--corrects", m_corrects, "number of the line that this one replaces");
        options.add_option("--remark", m_line.remark, "anything else");
    }
    Result<int> run(Run& run) override
    {
        const auto session = openSampleOf(run);
        if (!session)
            return fail(session.error());
        if (auto filled = fill(**session); !filled)
            return fail(filled.error());
        const auto page = addCustodyLine(**session, m_line);
        if (!page)
            return fail(page.error());
        saySample(run, *page, (*session)->pack());
        run.give(samplePageJson(*page, (*session)->pack(), run.words()));
        return done;
    }

private:
    std::vector<std::pair<const char*, std::string*>> cleaned()
    {
        return {{"--clothes", &m_clothes},
                {"--boots", &m_boots},
                {"--vehicle", &m_vehicle},
                {"--tools", &m_tools}};
    }
    Status fill(const Session& session)
    {
        m_line.sample = m_id;
        m_line.kind = *fromName<CustodyKind>(m_kind);
        m_line.pieces = m_pieces;
        m_line.celsius = m_celsius;
        m_line.corrects = m_corrects;
        for (const auto& [typed, moment] : {std::pair{&m_out, &m_line.out}, std::pair{&m_in, &m_line.in}}) {
            if (typed->empty())
                continue;
            const auto at = readMoment(*typed, session);
            if (!at)
                return fail(at.error());
            *moment = *at;
        }
        const auto yes = [](const std::string& typed) {
            return typed.empty() ? std::nullopt : std::optional(typed == "yes");
        };
        m_line.sealWhole = yes(m_sealWhole);
        m_line.confirmed = yes(m_confirmed);
        Confirmed* const items[] = {&m_line.hygiene.clothes, &m_line.hygiene.boots, &m_line.hygiene.vehicle,
                                    &m_line.hygiene.tools};
        const auto typedItems = cleaned();
        for (std::size_t i = 0; i < std::size(items); ++i) {
            const auto& [option, typed] = typedItems[i];
            const auto value = typed->empty() ? Confirmed::open : fromName<Confirmed>(*typed);
            if (!value)
                return fail("field.value", FaultKind::usage, {{"field", option}, {"value", *typed}});
            *items[i] = *value;
        }
        return {};
    }

    std::string m_kind, m_out, m_in, m_sealWhole, m_confirmed, m_clothes, m_boots, m_vehicle, m_tools;
    std::optional<int> m_pieces, m_corrects;
    std::optional<double> m_celsius;
    CustodyLine m_line;
};

class SampleClose final : public SampleVerb {
public:
    const char* name() const override { return "sample close"; }
    const char* summary() const override { return "Close a sample, or say everything that is missing"; }
    const char* usage() const override { return "STORE NUMBER [--with-break --reason TEXT --second WHO]"; }
    const char* prose() const override
    {
        return "Closes a sample when nothing is missing and nothing is broken. Otherwise it stays open, and "
               "everything that is "
               "missing is said at once. Where something is broken for good it can close with a break: that "
               "needs a reason and a "
               "second person, and its result is never sole proof. Without confirmed double-bagging it never "
               "closes.";
    }
    void declare(CLI::App& options) override
    {
        declareSample(options);
        options.add_flag("--with-break", m_withBreak, "close although something is broken for good");
        options.add_option("--reason", m_reason, "with a break: why it may close");
        options.add_option("--second", m_second, "with a break: the second person who stands for it");
    }
    Result<int> run(Run& run) override
    {
        const auto session = openSampleOf(run);
        if (!session)
            return fail(session.error());
        const auto closing = closeSample(**session, m_id, m_withBreak, m_reason, m_second);
        if (!closing)
            return fail(closing.error());
        if (!closing->closed)
            run.say(closing->page.status.mustBeVoid || closing->page.status.state == SampleState::voided
                        ? "It can never close."
                        : "It cannot close yet.");
        saySample(run, closing->page, (*session)->pack());
        Json json = samplePageJson(closing->page, (*session)->pack(), run.words());
        json["closed"] = closing->closed;
        run.give(std::move(json));
        return closing->closed ? done : refused;
    }

private:
    bool m_withBreak = false;
    std::string m_reason, m_second;
};

class SampleShow final : public SampleVerb {
public:
    const char* name() const override { return "sample show"; }
    const char* summary() const override { return "Show a sample and its chain"; }
    const char* usage() const override { return "STORE NUMBER"; }
    const char* prose() const override
    {
        return "Shows who held a sample from the tree to its disposal, what is missing before it can close, "
               "and what is broken.";
    }
    void declare(CLI::App& options) override { declareSample(options); }
    Result<int> run(Run& run) override
    {
        const auto session = openSampleOf(run, true);
        if (!session)
            return fail(session.error());
        const auto page = samplePage(**session, m_id);
        if (!page)
            return fail(page.error());
        saySample(run, *page, (*session)->pack());
        run.give(samplePageJson(*page, (*session)->pack(), run.words()));
        return done;
    }
};

} // namespace

std::unique_ptr<Verb> makeSampleOpen()
{
    return std::make_unique<SampleOpen>();
}
std::unique_ptr<Verb> makeSampleLine()
{
    return std::make_unique<SampleLineVerb>();
}
std::unique_ptr<Verb> makeSampleClose()
{
    return std::make_unique<SampleClose>();
}
std::unique_ptr<Verb> makeSampleShow()
{
    return std::make_unique<SampleShow>();
}

} // namespace cupule::app
