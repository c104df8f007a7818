#include "core/store/bundles.h"

#include "core/record/json_text.h"
#include "core/store/bundle_content.h"
#include "core/store/store_core.h"

namespace cupule {

namespace json {

template <class V, Like<BundleEnd> T>
void describe(V& v, T& x)
{
    v.required("incarnation", x.incarnation);
    v.required("to", x.to);
}

template <class V, Like<BundleNote> T>
void describe(V& v, T& x)
{
    v("ends", x.ends);
    v.required("id", x.id);
    v.required("key", x.key);
    v.required("kind", x.kind);
    v("leftOut", x.leftOut);
    v.required("made", x.made);
    v.required("manifest", x.manifest);
    v("merged", x.merged);
    v.required("number", x.number);
    v.required("store", x.store);
    v("visits", x.visits);
}

} // namespace json

namespace {

std::int64_t rowOf(StoreCore& core, const Uid& bundle)
{
    Query q(core.db, "SELECT id FROM bundle WHERE uid = :uid");
    return q.bind(":uid", bundle).step() ? q.integer(0) : 0;
}

} // namespace

BundleNote bundleNoteFrom(std::string_view content)
{
    return taken(json::readJson<BundleNote>(content));
}

Status Bundles::add(Change& change, const BundleNote& note, const std::vector<CarriedLine>& carried)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = json::textOf(note);
        const LineMark line = core.addLine({note.merged ? "took-in" : "handed-out", "bundle", note.id, sha256(content)});
        Query q(core.db, "INSERT INTO bundle (uid, way, key, number, content, line_chain, line_number) "
                         "VALUES (:uid, :way, :key, :number, :content, :chain, :line)");
        q.bind(":uid", note.id).bind(":way", note.merged ? "merged" : "written").bind(":key", note.key).bind(":number", note.number);
        q.bind(":content", content).bind(":chain", line.chain).bind(":line", line.number).run();
        const std::int64_t row = core.db.lastRowId();
        for (const CarriedLine& each : carried) {
            Query c(core.db, "INSERT INTO bundle_line (chain, number, bundle) VALUES (:chain, :number, :bundle)");
            c.bind(":chain", each.chain).bind(":number", each.number).bind(":bundle", row).run();
        }
    });
}

Result<std::vector<BundleNote>> Bundles::all()
{
    return guarded([&] {
        std::vector<BundleNote> notes;
        Query q(m_core.db, "SELECT content FROM bundle ORDER BY id");
        while (q.step())
            notes.push_back(bundleNoteFrom(q.view(0)));
        return notes;
    });
}

Result<std::optional<BundleNote>> Bundles::find(const Uid& bundle)
{
    return guarded([&]() -> std::optional<BundleNote> {
        Query q(m_core.db, "SELECT content FROM bundle WHERE uid = :uid");
        if (!q.bind(":uid", bundle).step())
            return std::nullopt;
        return bundleNoteFrom(q.view(0));
    });
}

Result<std::int64_t> Bundles::nextNumber(const std::string& key)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT max(number) FROM bundle WHERE key = :key AND way = 'written'");
        return q.bind(":key", key).step() ? q.integer(0) + 1 : 1;
    });
}

Status Bundles::acknowledge(Change& change, const Uid& bundle)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::int64_t row = rowOf(core, bundle);
        if (row == 0)
            throwFault("store.reference", FaultKind::refused, {{"noun", "bundle"}, {"id", bundle.text()}});
        Query known(core.db, "SELECT 1 FROM acknowledgement WHERE bundle = :bundle");
        if (known.bind(":bundle", row).step())
            return;
        const LineMark line = core.addLine({"acknowledged", "acknowledgement", bundle, sha256(bundle.text())});
        Query q(core.db, "INSERT INTO acknowledgement (bundle, line_chain, line_number) VALUES (:bundle, :chain, :number)");
        q.bind(":bundle", row).bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<bool> Bundles::acknowledged(const Uid& bundle)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT 1 FROM acknowledgement WHERE bundle = :bundle");
        return q.bind(":bundle", rowOf(m_core, bundle)).step();
    });
}

Result<std::vector<CarriedLine>> Bundles::carried(const Uid& bundle)
{
    return guarded([&] {
        std::vector<CarriedLine> lines;
        Query q(m_core.db, "SELECT chain, number FROM bundle_line WHERE bundle = :bundle ORDER BY chain, number");
        q.bind(":bundle", rowOf(m_core, bundle));
        while (q.step())
            lines.push_back({q.integer(0), q.integer(1)});
        return lines;
    });
}

Result<bool> Bundles::carriesDecision(const Uid& decision)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT 1 FROM decision AS d JOIN bundle_line AS l ON l.chain = d.line_chain AND l.number = d.line_number "
                           "WHERE d.uid = :uid LIMIT 1");
        return q.bind(":uid", decision).step();
    });
}

Result<std::optional<BundleNote>> Bundles::broughtRevision(const Uid& revision)
{
    return guarded([&]() -> std::optional<BundleNote> {
        Query q(m_core.db, "SELECT b.content FROM revision AS r JOIN bundle_line AS l ON l.chain = r.line_chain AND l.number = r.line_number "
                           "JOIN bundle AS b ON b.id = l.bundle WHERE r.uid = :uid AND b.way = 'merged' ORDER BY b.id LIMIT 1");
        if (!q.bind(":uid", revision).step())
            return std::nullopt;
        return bundleNoteFrom(q.view(0));
    });
}

std::string Bundles::folder() const
{
    return m_core.info.path + ".bundles";
}

std::string Bundles::keptAt(const Uid& bundle) const
{
    return folder() + "/" + bundle.text() + ".zip";
}

} // namespace cupule
