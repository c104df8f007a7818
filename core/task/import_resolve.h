// Which tree, site and people a row means: known ones are found, new ones are made. On the thread that owns the session.
//
//  - A row that the store took in before, as first read, is known and makes nothing.
//  - Tree: the same label in the same site; without a site, the same label within the pack's distance or the summed
//    uncertainties, whichever is larger. The same label farther off is another tree, with a question.
//  - Site: by exact name; a named site that is not there is made. Rows without one stand under no site.
//  - Person: by code, else by name; else a new person is made. A name that several people have decides nothing.

#pragma once

#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/rules/season.h"
#include "core/store/bulk_import.h"
#include "core/task/import_known.h"
#include "core/task/import_table.h"
#include "core/task/import_told.h"
#include "core/task/session.h"

namespace cupule {

struct ResolvedRow {
    bool known = false;                    ///< taken in before; nothing else holds then
    bool newTree = false;
    bool placeGiven = false;               ///< the tree stood without a place and gets the row's
    KnownTree tree;
    const Site* site = nullptr;            ///< lives as long as the resolver
    SeasonContext season;
};

class RowResolver {
public:
    RowResolver(Session& session, Change& change, BulkImport& bulk, ManyIds& ids, std::string file);

    /// Fills what the row's visit needs; `questions` gets what a person should look at (the row is kept).
    Status resolve(TableRow& row, ResolvedRow& out, std::vector<ImportProblem>& questions);
    /// A row of a list of trees: finds or makes the tree. `known` where it was there already.
    Status resolveTree(TableRow& row, ResolvedRow& out, std::vector<ImportProblem>& questions);
    /// Trees that were given a place, or of which more was said. After BulkImport::finish().
    Status saveTrees();

    [[nodiscard]] std::int64_t newPeople() const { return m_newPeople; }
    [[nodiscard]] std::int64_t newSites() const { return m_newSites; }
    /// Known trees to which the words or the girth of a row were added.
    [[nodiscard]] std::int64_t treesTold() const { return static_cast<std::int64_t>(m_told.changed().size()); }

private:
    struct Match {
        const KnownTree* tree = nullptr;
        double metres = 0;                 ///< to the nearest one of that label, where none is near enough
        bool elsewhere = false;
        bool gets = false;                 ///< it stood without a place and gets the row's
    };
    Result<const Site*> site(const std::string& name);
    Result<std::optional<Uid>> person(const std::string& text);
    Result<Uid> makePerson(const std::string& text);
    Status people(TableRow& row, std::vector<ImportProblem>& questions);
    Match match(const std::vector<KnownTree>& trees, const TableRow& row, bool inSite);
    Status tree(TableRow& row, const std::string& note, ResolvedRow& out, std::vector<ImportProblem>& questions);
    SeasonContext season(const Visit& visit, const Site* site);
    void ask(const TableRow& row, const char* kind, const std::string& value, const std::string& suggestion,
             std::vector<ImportProblem>& questions) const;

    Session& m_session;
    Change& m_change;
    BulkImport& m_bulk;
    ManyIds& m_ids;
    std::string m_file;
    KnownRows m_known;
    std::map<std::string, Site, std::less<>> m_sites;
    std::unordered_map<std::string, std::optional<Uid>> m_people;
    std::map<std::pair<const Site*, int>, SeasonContext> m_seasons;
    std::unordered_map<std::int64_t, std::pair<Uid, Position>> m_places;   // by tree handle
    ToldOfTrees m_told;
    std::int64_t m_newPeople = 0, m_newSites = 0;
};

} // namespace cupule
