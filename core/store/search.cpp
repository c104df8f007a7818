#include "core/store/search.h"

#include "core/store/sample_key.h"
#include "core/store/label_key.h"
#include "core/store/store_core.h"
#include "core/store/tree_entries.h"
#include "core/store/words.h"

namespace cupule {

namespace {

void take(Query& q, const char* noun, int most, std::vector<SearchHit>& hits)
{
    while (static_cast<int>(hits.size()) < most && q.step())
        hits.push_back({noun, q.uid(0), q.text(1)});
}

/// A merged entry is said as it is labelled, and leads to the tree under which it is kept.
void takeTrees(StoreCore& core, Query& q, int most, std::vector<SearchHit>& hits)
{
    while (static_cast<int>(hits.size()) < most && q.step())
        hits.push_back({"tree", q.flag(2) ? keptEntry(core, q.uid(0)) : q.uid(0), q.text(1)});
}

void takeSamples(Connection& db, const std::string& key, int most, std::vector<SearchHit>& hits)
{
    if (key.empty())
        return;
    Query q(db, "SELECT uid, content ->> '$.number' FROM sample WHERE number_key >= :from AND number_key < :last "
                "ORDER BY number_key LIMIT :most");
    q.bind(":from", key).bind(":last", key + "~").bind(":most", most);
    take(q, "sample", most, hits);
}

} // namespace

Result<std::vector<SearchHit>> Search::find(const std::string& words, int most)
{
    return guarded([&] {
        std::vector<SearchHit> hits;
        const std::string wanted = wordQuery(m_core.db, words);
        if (wanted.empty())
            return hits;
        Query sites(m_core.db, "SELECT uid, name FROM site WHERE id IN (SELECT rowid FROM site_words WHERE site_words MATCH :words) "
                               "ORDER BY name_key, id LIMIT :most");
        take(sites.bind(":words", wanted).bind(":most", most), "site", most, hits);
        Query people(m_core.db, "SELECT uid, code FROM person WHERE id IN (SELECT rowid FROM person_words WHERE person_words MATCH :words) "
                                "ORDER BY code, id LIMIT :most");
        take(people.bind(":words", wanted).bind(":most", most), "person", most, hits);
        takeSamples(m_core.db, sampleKey(words), most, hits);
        Query trees(m_core.db, "SELECT uid, label, label_key >= :merged FROM tree WHERE id IN (SELECT rowid FROM tree_words WHERE tree_words MATCH :words) "
                               "ORDER BY label_key, id LIMIT :most");
        takeTrees(m_core, trees.bind(":merged", mergedMark).bind(":words", wanted).bind(":most", most), most, hits);
        Query visits(m_core.db, "SELECT visit.uid, coalesce(tree.label, '') || ' ' || date(visit.day * 86400, 'unixepoch') "
                                "FROM visit LEFT JOIN tree ON tree.id = visit.tree "
                                "WHERE visit.id IN (SELECT rowid FROM visit_words WHERE visit_words MATCH :words) "
                                "ORDER BY visit.day DESC, visit.id DESC LIMIT :most");
        take(visits.bind(":words", wanted).bind(":most", most), "visit", most, hits);
        return hits;
    });
}

} // namespace cupule
