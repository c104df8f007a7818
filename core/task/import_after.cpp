#include "core/task/import_after.h"

#include <functional>
#include <set>

#include "core/store/places.h"
#include "core/store/visits.h"
#include "core/task/edit.h"

namespace cupule {

namespace {

constexpr std::size_t mostRefreshed = 20'000;

std::uint32_t hashOf(const std::vector<CharacterSeen>& characters)
{
    std::size_t hash = characters.size();
    for (const auto& seen : characters) {
        const std::size_t one = std::hash<std::string>{}(seen.character) * 3 + std::hash<std::string>{}(seen.state) * 5
                                + std::hash<double>{}(seen.value.value_or(-1)) * 7 + (seen.notJudged ? 11 : 0);
        hash = hash * 1099511628211ULL + one;
    }
    return static_cast<std::uint32_t>(hash ^ (hash >> 32));
}

} // namespace

void TouchedTrees::add(const TableRow& row, const ResolvedRow& resolved, const VisitShown& shown)
{
    const std::uint32_t characters = hashOf(row.visit.characters);
    const auto place = static_cast<std::size_t>(resolved.tree.handle);
    if (place >= m_trees.size())
        m_trees.resize(place + 1);
    Touched& tree = m_trees[place];
    if (!tree.used) {
        tree.used = true;
        tree.id = resolved.tree.id;
        tree.characters = characters;
        tree.isNew = resolved.newTree;
        tree.host = shown.host;
    }
    tree.mixed = tree.mixed || tree.characters != characters || tree.host != shown.host;
    tree.positive = tree.positive || shown.positive;
    tree.nothing = tree.nothing || shown.nothing;
}

Result<std::int64_t> TouchedTrees::refresh(Session& session, Change& change, BulkImport& bulk, const Progress& progress)
{
    std::set<Uid> wanted;
    for (const auto& tree : m_trees)
        if (tree.used && !tree.alone())
            wanted.insert(tree.id);
    const auto twice = bulk.sameTreeDayObserver();
    if (!twice)
        return fail(twice.error());
    for (const auto& visit : *twice) {
        const auto row = session.store().visits().row(visit);
        if (!row)
            return fail(row.error());
        if (*row)
            wanted.insert((*row)->tree);
    }
    if (wanted.size() > mostRefreshed)
        return static_cast<std::int64_t>(wanted.size());
    for (const auto& tree : wanted) {
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        if (auto done = refreshTree(session, change, tree); !done)
            return fail(done.error());
    }
    return 0;
}

} // namespace cupule
