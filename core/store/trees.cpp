#include <algorithm>

#include "core/store/cells.h"
#include "core/store/host_names.h"
#include "core/store/heads.h"
#include "core/store/label_key.h"
#include "core/store/noun_rows.h"
#include "core/store/places.h"
#include "core/store/store_core.h"
#include "core/store/tree_entries.h"
#include "core/store/tree_rows.h"

namespace cupule {

namespace {

void writeRow(StoreCore& core, const Tree& tree, const std::string& content, const Written& written)
{
    Query q(core.db, "INSERT INTO tree (uid, site, label, label_key, latitude, longitude, cell, uncertainty, note, content, head, line_chain, "
                     "line_number) VALUES (:uid, :site, :label, :key, :latitude, :longitude, :cell, :uncertainty, :note, :content, :head, :chain, "
                     ":number) ON CONFLICT (uid) DO UPDATE SET site = excluded.site, label = excluded.label, "
                     "label_key = excluded.label_key, latitude = excluded.latitude, longitude = excluded.longitude, cell = excluded.cell, "
                     "uncertainty = excluded.uncertainty, note = excluded.note, content = excluded.content, head = excluded.head, "
                     "line_chain = excluded.line_chain, line_number = excluded.line_number");
    q.bind(":uid", tree.id).bind(":site", referenced(core.siteRow(tree.site), tree.site, "site"));
    q.bind(":label", tree.label).bind(":key", tree.mergedInto.isNull() ? labelKey(tree.label) : mergedKey(tree.label)).bind(":content", content);
    q.bindUnlessEmpty(":note", tree.note);
    if (tree.position) {
        q.bind(":latitude", tree.position->latitude).bind(":longitude", tree.position->longitude);
        q.bind(":cell", cellOf(tree.position->latitude, tree.position->longitude));
        q.bind(":uncertainty", tree.position->uncertaintyMetres);
    }
    q.bind(":head", written.revision).bind(":chain", written.line.chain).bind(":number", written.line.number).run();
}

std::vector<Tree> readAll(Query& q)
{
    std::vector<Tree> trees;
    while (q.step())
        trees.push_back(nounFrom<Tree>(q.view(0)));
    return trees;
}

void placedInBox(StoreCore& core, const Box& box, std::vector<Placed>& out)
{
    for (const CellRange& range : cellsOf(box)) {
        Query q(core.db, "SELECT id, latitude, longitude FROM tree WHERE cell BETWEEN :first AND :last "
                         "AND latitude BETWEEN :south AND :north AND longitude BETWEEN :west AND :east");
        q.bind(":first", range.first).bind(":last", range.last).bind(":south", box.south).bind(":north", box.north);
        q.bind(":west", box.west).bind(":east", box.east);
        while (q.step())
            out.push_back({q.integer(0), q.real(1), q.real(2), 0});
    }
}

std::vector<TreeNear> withIds(StoreCore& core, const std::vector<Placed>& places)
{
    std::vector<TreeNear> trees;
    for (const Placed& place : places) {
        Query q(core.db, "SELECT uid FROM tree WHERE id = :id");
        if (!q.bind(":id", keptRow(core, place.row)).step())
            continue;
        const Uid id = q.uid(0);
        if (std::none_of(trees.begin(), trees.end(), [&](const TreeNear& tree) { return tree.id == id; }))
            trees.push_back({id, place.latitude, place.longitude, place.metres});
    }
    return trees;
}

/// What the journal calls a change of an entry.
const char* changeOf(const Uid& before, const Uid& after)
{
    if (before == after)
        return "changed";
    return after.isNull() ? "split" : "merged";
}

} // namespace

Status Trees::save(Change& change, const Tree& tree)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(tree);
        Query before(core.db, "SELECT content, head FROM tree WHERE uid = :uid");
        const bool known = before.bind(":uid", tree.id).step();
        if (known && before.view(0) == content && !core.settles(tree.id))
            return;
        const Uid link = known ? nounFrom<Tree>(before.view(0)).mergedInto : Uid{};
        const NounEdited done = writeEdit(core, {"tree", known ? changeOf(link, tree.mergedInto) : "made", tree.id,
                                                 known ? before.uid(1) : Uid{}, known ? before.text(0) : std::string(), content});
        putTree(core, nounFrom<Tree>(done.content), done.content, done.written);
    });
}

void putTree(StoreCore& core, const Tree& tree, const std::string& content, const Written& at)
{
    Query before(core.db, "SELECT content, label, note FROM tree WHERE uid = :uid");
    const bool known = before.bind(":uid", tree.id).step();
    const bool linked = !known || nounFrom<Tree>(before.view(0)).mergedInto != tree.mergedInto;
    const auto around = linked ? rowsAround(core, tree.id) : std::vector<std::int64_t>{};
    const bool sameWords = known && before.view(1) == tree.label && before.view(2) == tree.note;
    if (known && !sameWords)
        Query(core.db, "INSERT INTO tree_words (tree_words, rowid, label, note) SELECT 'delete', id, label, note FROM tree WHERE uid = :uid")
            .bind(":uid", tree.id).run();
    writeRow(core, tree, content, at);
    if (!sameWords)
        Query(core.db, "INSERT INTO tree_words (rowid, label, note) SELECT id, label, note FROM tree WHERE uid = :uid")
            .bind(":uid", tree.id).run();
    if (linked)
        placeVisits(core, around);
}

Status Trees::setHost(Change& change, const Uid& tree, HostAnswer host)
{
    return writtenIn(change, [&](StoreCore& core) {
        Query q(core.db, "UPDATE tree SET host = :host WHERE id = :id AND host <> :host");
        q.bind(":host", hostName(host)).bind(":id", core.treeRow(tree)).run();
    });
}

Result<std::optional<Tree>> Trees::find(const Uid& id)
{
    return guarded([&]() -> std::optional<Tree> {
        Query q(m_core.db, "SELECT content FROM tree WHERE uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return nounFrom<Tree>(q.view(0));
    });
}

Result<Uid> Trees::kept(const Uid& id)
{
    return guarded([&] { return keptEntry(m_core, id); });
}

Result<std::vector<Tree>> Trees::entries(const Uid& id)
{
    return guarded([&] {
        std::vector<Uid> found{keptEntry(m_core, id)};
        for (std::size_t i = 0; i < found.size(); ++i)
            for (const Uid& merged : mergedDirectly(m_core, found[i]))
                if (std::find(found.begin(), found.end(), merged) == found.end())
                    found.push_back(merged);
        std::sort(found.begin() + 1, found.end());
        std::vector<Tree> trees;
        for (const Uid& entry : found)
            if (auto tree = taken(find(entry)))
                trees.push_back(std::move(*tree));
        return trees;
    });
}

Result<std::optional<TreeRow>> Trees::row(const Uid& id)
{
    return guarded([&]() -> std::optional<TreeRow> {
        const std::int64_t row = m_core.treeRow(id);
        if (row == 0)
            return std::nullopt;
        return treeRow(m_core, row);
    });
}

Result<std::vector<Tree>> Trees::labelled(const Uid& site, const std::string& label)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM tree WHERE site IS :site AND label_key IN (:key, :merged) AND label = :label ORDER BY id");
        q.bind(":site", referenced(m_core.siteRow(site), site, "site")).bind(":key", labelKey(label)).bind(":merged", mergedKey(label));
        q.bind(":label", label);
        return readAll(q);
    });
}

Result<std::vector<Tree>> Trees::labelledAnywhere(const std::string& label)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM tree WHERE label_key IN (:key, :merged) AND label = :label ORDER BY id");
        q.bind(":key", labelKey(label)).bind(":merged", mergedKey(label)).bind(":label", label);
        return readAll(q);
    });
}

Result<std::vector<TreeNear>> Trees::near(double latitude, double longitude, double metres, int most)
{
    return guarded([&] {
        return withIds(m_core, nearestOf(latitude, longitude, metres, static_cast<std::size_t>(most),
                                         [&](const Box& box, std::vector<Placed>& out) { placedInBox(m_core, box, out); }));
    });
}

Result<std::vector<TreeNear>> Trees::inBox(double west, double south, double east, double north, int most)
{
    return guarded([&] {
        std::vector<Placed> places;
        placedInBox(m_core, {west, south, east, north}, places);
        if (places.size() > static_cast<std::size_t>(most))
            places.resize(static_cast<std::size_t>(most));
        return withIds(m_core, places);
    });
}

} // namespace cupule
