#include "app/fields.h"
#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

constexpr const char* answersHelp = "answers, as S02=seen K01=alternate minutes=12 note=\"...\"";

Status setFields(Visit& visit, const std::vector<std::string>& answers, Session& session)
{
    for (const auto& answer : answers)
        if (auto set = setField(visit, answer, session); !set)
            return set;
    return {};
}

/// Changes a visit, leaves it, and shows what the checks say now.
Result<int> changeAndShow(Run& run, Session& session, const Visit& before,
                          const std::vector<std::string>& answers, const char* what)
{
    Visit changed = before;
    if (auto set = setFields(changed, answers, session); !set)
        return fail(set.error());
    if (auto saved = changeVisit(session, before, changed, what); !saved)
        return fail(saved.error());
    if (auto left = leaveVisit(session, before.id); !left)
        return fail(left.error());
    const auto page = visitPage(session, before.id);
    if (!page)
        return fail(page.error());
    run.give(visitPageJson(*page, session.pack(), run.words()));
    run.say("{tree}, {date}: {state}.", {{"tree", page->tree ? page->tree->label : std::string("?")},
                                         {"date", run.words().date(page->visit.date)},
                                         {"state", run.words().state(page->state)}});
    sayHost(run, page->host, session.pack());
    sayFindings(run, page->findings, session.pack());
    if (page->positive.positive)
        sayNotice(run, session);
    return done;
}

class Enter final : public StoreVerb {
public:
    const char* name() const override { return "enter"; }
    const char* summary() const override { return "Begin a visit to a tree, with answers"; }
    const char* usage() const override { return "STORE TREE [NAME=VALUE...]"; }
    const char* prose() const override
    {
        return "Begins a draft for today (or --date) at a tree and takes the answers that follow: signs by "
               "their number "
               "(S02=seen, S02=not-seen, S04=none), characters of the tree (K01=alternate), how you looked "
               "(minutes=12 crown=60 "
               "height=4 binoculars=yes light=good leaves=open) and how you left (boots=done "
               "vehicle=none-used). A tree that is "
               "not there yet is made where --at gives its position.";
    }
    const char* examples() const override
    {
        return "cupule enter vale.cupule W03 K01=alternate minutes=12 S02=not-seen boots=done";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("TREE", m_tree, "label of the tree, or SITE/LABEL")->required();
        options.add_option("ANSWERS", m_answers, answersHelp);
        options.add_option("--site", m_site, "site of a new tree");
        options.add_option("--at", m_at, "position of a new tree, in any notation");
        options.add_option("--date", m_date, "day of the visit, if not today");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        if (!m_date.empty())
            m_answers.insert(m_answers.begin(), "date=" + m_date);
        // an answer that does not fit must not leave a tree or an empty visit behind
        Visit trial;
        if (auto set = setFields(trial, m_answers, **session); !set)
            return fail(set.error());
        const auto tree = findOrMake(**session);
        if (!tree)
            return fail(tree.error());
        const auto visit = newVisit(**session, Uid{}, *tree);
        if (!visit)
            return fail(visit.error());
        return changeAndShow(run, **session, *visit, m_answers, "enter");
    }

private:
    Result<Uid> findOrMake(Session& session) const
    {
        auto found = findNoun(session, Noun::tree, m_tree);
        if (found || found.error().code != "name.unknown" || m_at.empty())
            return found;
        Visit place;
        if (auto set = setField(place, "position=" + m_at, session); !set)
            return fail(set.error());
        Uid site;
        if (!m_site.empty()) {
            const auto known = findNoun(session, Noun::site, m_site);
            if (known)
                site = *known;
            else if (const auto made = newSite(session,
                                               [&] {
                                                   Site wanted;
                                                   wanted.name = m_site;
                                                   return wanted;
                                               }());
                     made)
                site = made->id;
            else
                return fail(made.error());
        }
        const auto tree = newTree(session, m_tree, site, place.position);
        return tree ? Result<Uid>(tree->id) : fail(tree.error());
    }

    std::string m_tree, m_site, m_at, m_date;
    std::vector<std::string> m_answers;
};

class Correct final : public StoreVerb {
public:
    const char* name() const override { return "correct"; }
    const char* summary() const override { return "Change answers of a visit of yours"; }
    const char* usage() const override { return "STORE VISIT NAME=VALUE..."; }
    const char* prose() const override
    {
        return "Changes answers of a visit. A draft is changed in place. What has been handed in is never "
               "overwritten: a new "
               "version is handed in beside it, and where the old one was accepted it goes on counting until "
               "the new one is "
               "decided. An empty value clears an answer (S02=).";
    }
    const char* examples() const override
    {
        return "cupule correct vale.cupule W03@2026-06-11 S02=not-seen minutes=15";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("VISIT", m_visit, "which visit, as W03@2026-06-11")->required();
        options.add_option("ANSWERS", m_answers, answersHelp)->required();
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, Noun::visit, m_visit);
        if (!id)
            return fail(id.error());
        const auto page = visitPage(**session, *id);
        if (!page)
            return fail(page.error());
        return changeAndShow(run, **session, page->visit, m_answers, "correct");
    }

private:
    std::string m_visit;
    std::vector<std::string> m_answers;
};

class Strike final : public StoreVerb {
public:
    const char* name() const override { return "strike"; }
    const char* summary() const override { return "Strike out a draft, or withdraw a visit of yours"; }
    const char* usage() const override { return "STORE VISIT [--reason TEXT]"; }
    const char* prose() const override
    {
        return "Strikes out a draft, or withdraws a visit that you handed in and nobody has decided. Nothing "
               "is deleted: it stays "
               "known, so that importing it again does not bring it back, and counts nowhere.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("VISIT", m_visit, "which visit, as W03@2026-06-11")->required();
        options.add_option("--reason", m_reason, "why, in a few words");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, Noun::visit, m_visit);
        if (!id)
            return fail(id.error());
        if (auto struck = strikeOut(**session, *id, m_reason); !struck)
            return fail(struck.error());
        run.say("Struck out.");
        run.give({{"id", id->text()}, {"struck", true}});
        return done;
    }

private:
    std::string m_visit, m_reason;
};

} // namespace

std::unique_ptr<Verb> makeEnter()
{
    return std::make_unique<Enter>();
}
std::unique_ptr<Verb> makeCorrect()
{
    return std::make_unique<Correct>();
}
std::unique_ptr<Verb> makeStrike()
{
    return std::make_unique<Strike>();
}

} // namespace cupule::app
