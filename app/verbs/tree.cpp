#include "app/json.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/task/nouns.h"
#include "core/task/trees_merge.h"
#include "ui/bridge/words_trees.h"

namespace cupule::app {

namespace {

Json listOf(const QStringList& lines)
{
    Json list = Json::array();
    for (const QString& line : lines)
        list.push_back(plain(line));
    return list;
}

class TreeMark final : public StoreVerb {
public:
    const char* name() const override { return "tree mark"; }
    const char* summary() const override { return "Say that a tree was felled or not found"; }
    const char* usage() const override { return "STORE TREE felled|not-found|stands [--on DATE]"; }
    const char* prose() const override
    {
        return "Says what became of a tree, on which day that was seen (today without --on) and that you say so. The tree keeps its "
               "past and can still be found; \"stands\" takes it back, and \"cupule undo\" undoes it.";
    }
    const char* examples() const override { return "cupule tree mark vale.cupule W03 felled --on 2026-10-04"; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("TREE", m_tree, "label of the tree, or SITE/LABEL")->required();
        options.add_option("FATE", m_fate, "felled, not-found or stands")->required()->check(CLI::IsMember({"felled", "not-found", "stands"}));
        options.add_option("--on", m_day, "the day on which that was seen");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto tree = findNoun(**session, Noun::tree, m_tree);
        if (!tree)
            return fail(tree.error());
        CivilDate day = (*session)->today();
        if (!m_day.empty()) {
            const auto typed = readDay(m_day, "--on");
            if (!typed)
                return fail(typed.error());
            day = *typed;
        }
        const std::string fate = m_fate == "stands" ? "" : m_fate == "felled" ? m_fate : "not found";
        if (auto marked = markTree(**session, *tree, fate, day, "tree mark"); !marked)
            return fail(marked.error());
        const auto page = treePage(**session, *tree);
        if (!page)
            return fail(page.error());
        run.say("{tree}: {fate}.", {{"tree", page->tree.label},
                                    {"fate", plain(fate.empty() ? ui::fateWord(fate) : ui::fateText(fate, day, page->fateBy))}});
        run.give({{"id", page->tree.id.text()}, {"fate", fate}, {"date", fate.empty() ? "" : day.text()}});
        return done;
    }

private:
    std::string m_tree, m_fate, m_day;
};

class TreeMerge final : public StoreVerb {
public:
    const char* name() const override { return "tree merge"; }
    const char* summary() const override { return "Two entries are one tree: say so, or ask what it means"; }
    const char* usage() const override { return "STORE KEPT OTHER [--dry-run]"; }
    const char* prose() const override
    {
        return "Says that two entries are the same tree, and what that means. The tree is kept under the first; its visits, photos and "
               "samples and those of the other stand together. No record is rewritten and no decision touched. \"cupule undo\" undoes it, "
               "\"cupule tree split\" takes it back at any time, and the journal tells of both. With --dry-run it only says what it would mean.";
    }
    const char* examples() const override { return "cupule tree merge vale.cupule W03 W03a --dry-run"; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("KEPT", m_kept, "label of the entry to keep, or SITE/LABEL")->required();
        options.add_option("OTHER", m_other, "label of the other entry")->required();
        options.add_flag("--dry-run", m_dry, "only say what it would mean");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto kept = findNoun(**session, Noun::tree, m_kept);
        if (!kept)
            return fail(kept.error());
        const auto other = findNoun(**session, Noun::tree, m_other);
        if (!other)
            return fail(other.error());
        const auto meaning = mergeMeaning(**session, *kept, *other);
        if (!meaning)
            return fail(meaning.error());
        if (!m_dry)
            if (auto merged = mergeTrees(**session, *kept, *other, "tree merge"); !merged)
                return fail(merged.error());
        const ui::MergeWords words = ui::mergeWords(*meaning, (*session)->pack());
        for (const QString& line : words.asks)
            run.line("? " + plain(line));
        for (const QString& line : words.does)
            run.line(plain(line));
        run.say(m_dry ? "Nothing was changed." : "Merged.");
        run.give({{"kept", meaning->kept.id.text()},
                  {"other", meaning->other.id.text()},
                  {"merged", !m_dry},
                  {"visits", meaning->moving.size()},
                  {"asks", listOf(words.asks)},
                  {"does", listOf(words.does)}});
        return done;
    }

private:
    std::string m_kept, m_other;
    bool m_dry = false;
};

class TreeSplit final : public StoreVerb {
public:
    const char* name() const override { return "tree split"; }
    const char* summary() const override { return "A merged entry, or some visits, are another tree"; }
    const char* usage() const override { return "STORE TREE [--visit VISIT... --label LABEL]"; }
    const char* prose() const override
    {
        return "Takes a merge back: the entry stands for a tree of its own again, with its visits, photos and samples. With --visit and "
               "--label it moves visits of yours, which were to another tree, to a new entry: a draft at once, what was handed in by a "
               "correction, which is decided anew. Both can be undone.";
    }
    const char* examples() const override
    {
        return "cupule tree split vale.cupule W03a\ncupule tree split vale.cupule W03 --visit W03@2026-06-11 --label W03b";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("TREE", m_tree, "label of the merged entry, or of the tree whose visits are moved")->required();
        options.add_option("--visit", m_visits, "a visit that was to the other tree, as W03@2026-06-11");
        options.add_option("--label", m_label, "label of the other tree");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        return m_visits.empty() && m_label.empty() ? splitEntry(run, **session) : move(run, **session);
    }

private:
    Result<int> splitEntry(Run& run, Session& session)
    {
        const auto entry = findNoun(session, Noun::tree, m_tree);
        if (!entry)
            return fail(entry.error());
        if (auto split = splitTree(session, *entry, "tree split"); !split)
            return fail(split.error());
        run.say("{tree} is a tree of its own again.", {{"tree", m_tree}});
        run.give({{"id", entry->text()}, {"split", true}});
        return done;
    }

    Result<int> move(Run& run, Session& session)
    {
        const auto tree = findNoun(session, Noun::tree, m_tree);
        if (!tree)
            return fail(tree.error());
        std::vector<Uid> visits;
        for (const std::string& named : m_visits) {
            const auto visit = findNoun(session, Noun::visit, named);
            if (!visit)
                return fail(visit.error());
            visits.push_back(*visit);
        }
        const auto made = splitVisits(session, *tree, visits, m_label, "tree split");
        if (!made)
            return fail(made.error());
        run.say("{count} moved to {tree}.", {{"count", std::to_string(visits.size())}, {"tree", made->label}});
        run.give({{"id", made->id.text()}, {"moved", visits.size()}});
        return done;
    }

    std::string m_tree, m_label;
    std::vector<std::string> m_visits;
};

} // namespace

std::unique_ptr<Verb> makeTreeMark()
{
    return std::make_unique<TreeMark>();
}
std::unique_ptr<Verb> makeTreeMerge()
{
    return std::make_unique<TreeMerge>();
}
std::unique_ptr<Verb> makeTreeSplit()
{
    return std::make_unique<TreeSplit>();
}

} // namespace cupule::app
