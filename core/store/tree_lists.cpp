// Windows of trees, filtered and sorted. Each first finds the row numbers of its window through an index, then reads these rows.

#include <algorithm>

#include "core/store/host_names.h"
#include "core/store/label_key.h"
#include "core/store/places.h"
#include "core/store/tree_entries.h"
#include "core/store/tree_rows.h"
#include "core/store/words.h"

namespace cupule {

namespace {

using Rows = std::vector<std::int64_t>;

Rows readRows(Query& q)
{
    Rows rows;
    while (q.step())
        rows.push_back(q.integer(0));
    return rows;
}

std::vector<TreeRow> readTrees(StoreCore& core, const Rows& rows)
{
    std::vector<TreeRow> trees;
    trees.reserve(rows.size());
    for (const std::int64_t row : rows)
        trees.push_back(treeRow(core, row));
    return trees;
}

std::string wordName(std::size_t i)
{
    return ":word" + std::to_string(i);
}

/// Trees that have the word under an entry merged into them, as a list for SQL.
std::string keptWith(StoreCore& core, const std::string& word)
{
    std::string rows;
    Query q(core.db, "SELECT id FROM tree WHERE label_key >= :merged "
                     "AND EXISTS (SELECT 1 FROM tree_words WHERE tree_words MATCH :word AND rowid = tree.id)");
    q.bind(":merged", mergedMark).bind(":word", word);
    while (q.step())
        rows += (rows.empty() ? "" : ", ") + std::to_string(keptRow(core, q.integer(0)));
    return rows;
}

/// The word must stand in the tree's own words, in those of an entry merged into it, or in those of its site.
std::string wordCondition(StoreCore& core, const std::string& word, const std::string& name)
{
    return "(tree.id IN (SELECT rowid FROM tree_words WHERE tree_words MATCH " + name + ") OR tree.id IN (" + keptWith(core, word)
           + ") OR tree.site IN (SELECT rowid FROM site_words WHERE site_words MATCH " + name + "))";
}

/// No index knows these; canonical JSON has a fate that is set as its first member, so that comparing the first bytes is enough.
std::string showCondition(TreeShow show)
{
    static const std::string gone = "tree.content >= '{\"fate\":' AND tree.content < '{\"fate;'";
    switch (show) {
    case TreeShow::all: break;
    case TreeShow::stands: return "NOT (" + gone + ")";
    case TreeShow::gone: return gone;
    case TreeShow::findWaits: return "tree.positive_waiting > 0";
    case TreeShow::findAccepted: return "tree.positive_accepted > 0";
    case TreeShow::neverSeen: return "tree.visits = 0";
    }
    return {};
}

/// Leaves merged entries out. Labels come along an index on which these stand last; days do not.
std::string keptCondition(TreeSort sort)
{
    return sort == TreeSort::lastVisit ? "tree.id NOT IN (SELECT id FROM tree WHERE label_key >= :merged)" : "tree.label_key < :merged";
}

std::string orderOf(const TreeFilter& filter)
{
    const std::string way = filter.descending ? " DESC" : "";
    switch (filter.sort) {
    case TreeSort::site: return "site.name_key IS NULL, site.name_key" + way + ", tree.label_key" + way + ", tree.id";
    case TreeSort::lastVisit: return "tree.last_day" + way + ", tree.id" + way;
    case TreeSort::label: break;
    }
    return "tree.label_key" + way + ", tree.id" + way;
}

struct Filter {
    std::string from;                      // FROM and WHERE
    std::vector<std::string> words;
    std::optional<std::int64_t> site;

    void bind(Query& q) const
    {
        q.bind(":merged", mergedMark);
        for (std::size_t i = 0; i < words.size(); ++i)
            q.bind(wordName(i).c_str(), words[i]);
        if (site)
            q.bind(":site", *site);
    }
};

Filter filterOf(StoreCore& core, const TreeFilter& wanted)
{
    Filter filter;
    filter.words = wordQueries(core.db, wanted.words);
    filter.site = referenced(core.siteRow(wanted.site), wanted.site, "site");
    const bool bySite = wanted.sort == TreeSort::site;
    filter.from = bySite ? " FROM tree LEFT JOIN site ON site.id = tree.site" : " FROM tree";
    filter.from += " WHERE " + keptCondition(wanted.sort);
    if (filter.site)
        filter.from += " AND tree.site = :site";
    if (const std::string show = showCondition(wanted.show); !show.empty())
        filter.from += " AND " + show;
    for (std::size_t i = 0; i < filter.words.size(); ++i)
        filter.from += " AND " + wordCondition(core, filter.words[i], wordName(i));
    return filter;
}

bool isPlain(const TreeFilter& filter)
{
    return filter.site.isNull() && filter.show == TreeShow::all && filter.words.find_first_not_of(' ') == std::string::npos;
}

std::int64_t sitedTrees(StoreCore& core)
{
    Query q(core.db, "SELECT count(*) FROM tree WHERE site IS NOT NULL AND label_key < :merged");
    return q.bind(":merged", mergedMark).step() ? q.integer(0) : 0;
}

/// Sites in order, in each its trees, and last the trees without a site: both parts run along an index.
Rows windowBySite(StoreCore& core, bool descending, std::int64_t from, std::int64_t count)
{
    const std::string way = descending ? " DESC" : "";
    Query sited(core.db, "SELECT tree.id FROM site CROSS JOIN tree ON tree.site = site.id AND tree.label_key < :merged ORDER BY site.name_key" + way + ", site.id"
                             + way + ", tree.label_key" + way + ", tree.id" + way + " LIMIT :count OFFSET :from");
    Rows rows = readRows(sited.bind(":merged", mergedMark).bind(":count", count).bind(":from", from));
    const std::int64_t missing = count - static_cast<std::int64_t>(rows.size());
    if (missing == 0)
        return rows;
    const std::int64_t skipped = rows.empty() ? from - sitedTrees(core) : 0;
    Query bare(core.db, "SELECT id FROM tree WHERE site IS NULL AND label_key < :merged ORDER BY label_key" + way + ", id" + way + " LIMIT :count OFFSET :from");
    for (const std::int64_t row : readRows(bare.bind(":merged", mergedMark).bind(":count", missing).bind(":from", skipped)))
        rows.push_back(row);
    return rows;
}

Rows windowRows(StoreCore& core, const TreeFilter& wanted, std::int64_t from, std::int64_t count)
{
    if (isPlain(wanted) && wanted.sort == TreeSort::site)
        return windowBySite(core, wanted.descending, from, count);
    const Filter filter = filterOf(core, wanted);
    Query q(core.db, "SELECT tree.id" + filter.from + " ORDER BY " + orderOf(wanted) + " LIMIT :count OFFSET :from");
    filter.bind(q);
    return readRows(q.bind(":count", count).bind(":from", from));
}

} // namespace

TreeRow treeRow(StoreCore& core, std::int64_t row)
{
    Query q(core.db, "SELECT tree.content, site.name, tree.host, tree.visits, tree.last_day, tree.positive_accepted, "
                     "tree.positive_waiting FROM tree LEFT JOIN site ON site.id = tree.site WHERE tree.id = :id");
    TreeRow tree;
    if (!q.bind(":id", row).step())
        return tree;
    tree.tree = nounFrom<Tree>(q.view(0));
    tree.siteName = q.text(1);
    tree.host = hostFromName(q.view(2));
    tree.visits = q.whole(3);
    tree.lastVisit = q.maybe<CivilDate>(4);
    tree.positiveAccepted = q.flag(5);
    tree.positiveWaiting = q.flag(6);
    return tree;
}

#define COUNTS_OF_TREE \
    "UPDATE tree SET (visits, last_day, positive_accepted, positive_waiting) = (SELECT count(*), max(day), " \
    "count(*) FILTER (WHERE positive = 1 AND state = 'accepted'), " \
    "count(*) FILTER (WHERE positive = 1 AND state IN ('draft', 'submitted', 'returned')) " \
    "FROM visit WHERE visit.tree = tree.id AND struck = 0)"

void recountTree(StoreCore& core, std::int64_t row)
{
    if (row != 0)
        Query(core.db, COUNTS_OF_TREE " WHERE id = :id").bind(":id", row).run();
}

void recountAllTrees(StoreCore& core)
{
    core.db.run(COUNTS_OF_TREE);
}

Result<std::int64_t> Trees::count(const TreeFilter& wanted)
{
    return guarded([&] {
        const Filter filter = filterOf(m_core, wanted);
        Query q(m_core.db, "SELECT count(*)" + filter.from);
        filter.bind(q);
        return q.step() ? q.integer(0) : std::int64_t{0};
    });
}

Result<std::vector<TreeRow>> Trees::window(const TreeFilter& filter, std::int64_t from, int count)
{
    return guarded([&] { return readTrees(m_core, windowRows(m_core, filter, from, count)); });
}

Result<std::vector<TreeRow>> Trees::labelBegins(const std::string& typed, const Uid& site, int most)
{
    return guarded([&] {
        Rows rows;
        const auto siteRow = referenced(m_core.siteRow(site), site, "site");
        auto ranges = labelKeysFrom(typed);
        const std::size_t kept = ranges.size();
        for (std::size_t i = 0; i < kept; ++i)
            ranges.emplace_back(std::string(mergedMark) + ranges[i].first, std::string(mergedMark) + ranges[i].second);
        for (const auto& [first, last] : ranges) {
            const int missing = most - static_cast<int>(rows.size());
            if (missing <= 0)
                break;
            Query q(m_core.db, siteRow ? "SELECT id FROM tree WHERE site = :site AND label_key >= :first AND label_key < :last "
                                         "ORDER BY label_key, id LIMIT :count"
                                       : "SELECT id FROM tree WHERE label_key >= :first AND label_key < :last "
                                         "ORDER BY label_key, id LIMIT :count");
            if (siteRow)
                q.bind(":site", *siteRow);
            q.bind(":first", first).bind(":last", last).bind(":count", missing);
            for (const std::int64_t found : readRows(q))
                if (const std::int64_t row = keptRow(m_core, found); std::find(rows.begin(), rows.end(), row) == rows.end())
                    rows.push_back(row);
        }
        return readTrees(m_core, rows);
    });
}

} // namespace cupule
