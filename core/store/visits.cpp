// Writing visits: drafts in place, revisions from handing in on, state and flags.

#include "core/store/visits.h"

#include <set>

#include "core/store/heads.h"
#include "core/store/noun_rows.h"
#include "core/store/tree_rows.h"
#include "core/store/visit_rows.h"

namespace cupule {

namespace {

struct Stored {
    std::int64_t row = 0;
    std::int64_t tree = 0;
    std::int64_t observer = 0;
    std::string content;
    VisitStanding standing;
    bool dirty = false;
    std::string note;
    CivilDate day;
    bool positive = false;
};

Stored stored(StoreCore& core, const Uid& id)
{
    Query q(core.db, "SELECT id, tree, observer, content, state, struck, head, decided, dirty, note, day, positive FROM visit WHERE uid = :uid");
    if (!q.bind(":uid", id).step())
        return {};
    Stored found{q.integer(0), q.integer(1), q.integer(2), q.text(3), {}, q.flag(8), q.text(9), q.date(10), q.flag(11)};
    found.standing.state = fromName<RecordState>(q.view(4)).value_or(RecordState::draft);
    found.standing.struck = q.flag(5);
    found.standing.head = q.uid(6);
    found.standing.decided = q.uid(7);
    return found;
}

Stored existing(StoreCore& core, const Uid& id)
{
    Stored found = stored(core, id);
    if (found.row == 0)
        throwFault("store.reference", FaultKind::refused, {{"noun", "visit"}, {"id", id.text()}});
    return found;
}

void forgetWords(StoreCore& core, std::int64_t row)
{
    Query(core.db, "INSERT INTO visit_words (visit_words, rowid, note) SELECT 'delete', id, note FROM visit "
                   "WHERE id = :id AND note IS NOT NULL")
        .bind(":id", row).run();
}

void learnWords(StoreCore& core, std::int64_t row)
{
    Query(core.db, "INSERT INTO visit_words (rowid, note) SELECT id, note FROM visit WHERE id = :id AND note IS NOT NULL")
        .bind(":id", row).run();
}

constexpr char insertVisit[] =
    "INSERT INTO visit (uid, tree, observer, day, second, note, content, state, queued, head, line_chain, line_number, host, positive, "
    "earlier, none_seen, worth, summary, signs, stops, asks, queue_rank, queue_code) VALUES (:uid, :tree, :observer, :day, :second, :note, "
    ":content, iif(:head IS NULL, 'draft', 'submitted'), :queued, :head, :chain, :number, :host, :positive, :earlier, :nothing, "
    ":worth, :summary, :signs, :stops, :asks, :rank, :code)";
/// By row, and without the columns that indices hold: every save would write these anew, and an upsert would keep what it
/// replaces in a table of its own.
constexpr char updateVisit[] =
    "UPDATE visit SET second = :second, note = :note, content = :content, host = :host, positive = :positive, earlier = :earlier, "
    "none_seen = :nothing, worth = :worth, summary = :summary, signs = :signs, stops = :stops, asks = :asks, queue_rank = :rank, "
    "queue_code = :code WHERE id = :id";

VisitNames namedBy(StoreCore& core, const Visit& visit)
{
    return {referenced(core.treeRow(visit.tree), visit.tree, "tree"), referenced(core.personRow(visit.observer), visit.observer, "person")};
}

void bindContent(Query& q, const Visit& visit, const std::string& content, const VisitShown& shown)
{
    q.bind(":second", visit.time).bind(":content", content);
    q.bindUnlessEmpty(":note", visit.note);
    bindShown(q, shown);
    q.run();
}

/// A new row: a draft, or submitted with its first revision. What is still to be judged is `queued` afterwards (setShown).
void insertRow(StoreCore& core, const Visit& visit, const VisitNames& named, const std::string& content, const VisitShown& shown,
               const std::optional<Written>& at, bool queued)
{
    Query q(core.db, insertVisit);
    q.bind(":uid", visit.id).bind(":tree", named.tree).bind(":observer", named.observer).bind(":day", visit.date);
    q.bind(":queued", queued);
    if (at)
        q.bind(":head", at->revision).bind(":chain", at->line.chain).bind(":number", at->line.number);
    bindContent(q, visit, content, shown);
    if (!visit.note.empty())
        learnWords(core, core.db.lastRowId());
}

/// The columns that come from the content, and what the rules say about it.
void updateRow(StoreCore& core, const Stored& before, const Visit& visit, const VisitNames& named, const std::string& content,
               const VisitShown& shown)
{
    const bool otherNote = before.note != visit.note;
    if (otherNote)
        forgetWords(core, before.row);
    if (named.tree.value_or(0) != before.tree || named.observer.value_or(0) != before.observer || visit.date != before.day)
        Query(core.db, "UPDATE visit SET tree = :tree, observer = :observer, day = :day WHERE id = :id")
            .bind(":tree", named.tree).bind(":observer", named.observer).bind(":day", visit.date).bind(":id", before.row).run();
    Query q(core.db, updateVisit);
    bindContent(q.bind(":id", before.row), visit, content, shown);
    if (otherNote)
        learnWords(core, before.row);
}

void recountTrees(StoreCore& core, const Stored& before, const Visit& visit, bool positive)
{
    const std::int64_t row = core.treeRow(visit.tree);
    if (row == before.tree && before.row != 0 && before.day == visit.date && before.positive == positive)
        return;
    recountTree(core, before.tree);
    if (row != before.tree)
        recountTree(core, row);
}

void markRevision(StoreCore& core, std::int64_t row, const Stored& before, const Written& written)
{
    const bool decided = !before.standing.decided.isNull();
    Query q(core.db, "UPDATE visit SET head = :head, state = CASE WHEN :decided THEN state ELSE 'submitted' END, "
                     "correction_waits = :decided, queued = 1, one_of_two = 0, conflict = 0, struck = 0, dirty = 0, event = NULL, line_chain = :chain, "
                     "line_number = :number WHERE id = :id");
    q.bind(":head", written.revision).bind(":decided", decided).bind(":chain", written.line.chain);
    q.bind(":number", written.line.number).bind(":id", row).run();
}

void writeRevision(StoreCore& core, const Stored& before, const Visit& visit, const VisitNames& named, const std::string& content,
                   const VisitShown& shown, const Written& written)
{
    if (before.row == 0) {
        insertRow(core, visit, named, content, shown, written, true);
        return;
    }
    updateRow(core, before, visit, named, content, shown);
    markRevision(core, before.row, before, written);
}

} // namespace

Status Visits::saveDraft(Change& change, const Visit& visit, const VisitShown& shown)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(visit);
        const Stored before = stored(core, visit.id);
        if (!before.standing.head.isNull())
            throwFault("visit.not-draft", FaultKind::refused, {{"id", visit.id.text()}});
        if (before.row == 0)
            insertRow(core, visit, namedBy(core, visit), content, shown, std::nullopt, false);
        else
            updateRow(core, before, visit, namedBy(core, visit), content, shown);
        if (before.content != content)
            Query(core.db, "UPDATE visit SET dirty = 1 WHERE uid = :uid").bind(":uid", visit.id).run();
        recountTrees(core, before, visit, shown.positive);
    });
}

Result<bool> Visits::leave(Change& change, const Uid& visit)
{
    return writtenIn(change, [&](StoreCore& core) {
        const Stored found = existing(core, visit);
        if (!found.dirty)
            return false;
        const Digest digest = sha256(found.content);
        Query last(core.db, "SELECT journal.digest FROM visit JOIN journal ON chain = line_chain AND number = line_number WHERE visit.id = :id");
        const bool same = last.bind(":id", found.row).step() && last.digest(0) == digest;
        if (same) {
            Query(core.db, "UPDATE visit SET dirty = 0 WHERE id = :id").bind(":id", found.row).run();
            return false;
        }
        const LineMark line = core.addLine({"left", "visit", visit, digest});
        Query q(core.db, "UPDATE visit SET dirty = 0, line_chain = :chain, line_number = :number WHERE id = :id");
        q.bind(":chain", line.chain).bind(":number", line.number).bind(":id", found.row).run();
        return true;
    });
}

Result<Uid> Visits::revise(Change& change, const Visit& visit, const VisitShown& shown, const std::string& kind)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(visit);
        const Stored before = stored(core, visit.id);
        if (!before.standing.head.isNull() && before.content == content && !core.settles(visit.id))
            return before.standing.head;
        const NounEdited done = writeEdit(core, {"visit", kind.c_str(), visit.id, before.standing.head, before.content, content});
        const Visit now = done.content == content ? visit : nounFrom<Visit>(done.content);
        writeRevision(core, before, now, namedBy(core, now), done.content, shown, done.written);
        recountTree(core, before.tree);
        if (core.treeRow(now.tree) != before.tree)
            recountTree(core, core.treeRow(now.tree));
        return done.written.revision;
    });
}

void putVisit(StoreCore& core, const Visit& visit, const VisitNames& named, bool there, const std::string& content, const Written& at)
{
    if (!there) {
        insertRow(core, visit, named, content, {}, at, false);
        return;
    }
    const Stored before = stored(core, visit.id);
    VisitShown shown;
    Query q(core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.id = :id");
    if (q.bind(":id", before.row).step())
        shown = readVisitRow(q).shown;
    writeRevision(core, before, visit, named, content, shown, at);
}

Status Visits::setStanding(Change& change, const Uid& visit, const VisitStanding& standing, const std::string& kind,
                           const std::string& reason)
{
    return writtenIn(change, [&](StoreCore& core) {
        const Stored found = existing(core, visit);
        const std::string content = eventContent(visit, standing, kind, reason);
        const LineMark line = core.addLine({kind.empty() ? "standing" : kind, "event", visit, sha256(content)});
        Query add(core.db, "INSERT INTO event (visit, content, line_chain, line_number) VALUES (:visit, :content, :chain, :number)");
        add.bind(":visit", found.row).bind(":content", content).bind(":chain", line.chain).bind(":number", line.number).run();
        Query q(core.db, "UPDATE visit SET state = :state, correction_waits = :waits, one_of_two = :one, conflict = :conflict, "
                         "struck = :struck, queued = :queued, decided = :decided, event = :event WHERE id = :id");
        q.bind(":queued", !standing.struck && (standing.state == RecordState::submitted || standing.correctionWaits));
        q.bind(":state", name(standing.state)).bind(":waits", standing.correctionWaits).bind(":one", standing.oneOfTwo);
        q.bind(":conflict", standing.conflict).bind(":struck", standing.struck).bind(":decided", standing.decided);
        q.bind(":event", core.db.lastRowId()).bind(":id", found.row).run();
        recountTree(core, found.tree);
    });
}

Status Visits::setShown(Change& change, std::span<const VisitJudged> judged)
{
    return writtenIn(change, [&](StoreCore& core) {
        std::set<std::int64_t> trees;
        for (const VisitJudged& each : judged) {
            Query found(core.db, "SELECT id, tree FROM visit WHERE uid = :uid");
            if (!found.bind(":uid", each.visit).step())
                throwFault("store.reference", FaultKind::refused, {{"noun", "visit"}, {"id", each.visit.text()}});
            Query q(core.db, "UPDATE visit SET host = :host, positive = :positive, earlier = :earlier, none_seen = :nothing, worth = :worth, "
                             "summary = :summary, signs = :signs, stops = :stops, asks = :asks, queue_rank = :rank, queue_code = :code, "
                             "queued = struck = 0 AND (state = 'submitted' OR correction_waits = 1) WHERE id = :id");
            bindShown(q.bind(":id", found.integer(0)), each.shown);
            q.run();
            trees.insert(found.integer(1));
        }
        for (const std::int64_t tree : trees)
            recountTree(core, tree);
    });
}

} // namespace cupule
