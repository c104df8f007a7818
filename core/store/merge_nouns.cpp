#include "core/store/merge_nouns.h"

#include <algorithm>
#include <array>

#include "core/record/decision.h"
#include "core/record/key.h"
#include "core/store/noun_rows.h"
#include "core/store/personal.h"
#include "core/store/sample_key.h"
#include "core/store/visits.h"

namespace cupule {

namespace {

constexpr std::array<std::string_view, 8> nouns{"person", "site", "tree", "visit", "leave", "regime", "photo", "sample"};

bool known(const Uid& id, std::int64_t row)
{
    return id.isNull() || row != 0;
}

/// Personal data that are here and belong to this noun; a row must not name others.
std::optional<Digest> heldHere(StoreCore& core, const Uid& entity, const std::optional<Digest>& commitment)
{
    if (!commitment)
        return std::nullopt;
    Query q(core.db, "SELECT 1 FROM personal WHERE commitment = :commitment AND entity = :entity");
    return q.bind(":commitment", *commitment).bind(":entity", entity).step() ? commitment : std::nullopt;
}

} // namespace

int rankOf(std::string_view noun)
{
    const auto found = std::find(nouns.begin(), nouns.end(), noun);
    if (found == nouns.end())
        throwFault("record.json", FaultKind::data, {{"path", "/noun"}, {"why", "value"}});
    return static_cast<int>(found - nouns.begin());
}

std::string nounOfRank(int rank)
{
    return std::string(nouns[static_cast<std::size_t>(rank)]);
}

bool namesMissing(StoreCore& core, const std::string& noun, const std::string& content)
{
    if (noun == "tree") {
        const Uid site = nounFrom<Tree>(content).site;
        return !known(site, core.siteRow(site));
    }
    if (noun == "visit") {
        const auto visit = nounFrom<Visit>(content);
        return !known(visit.tree, core.treeRow(visit.tree)) || !known(visit.observer, core.personRow(visit.observer));
    }
    if (noun == "leave" || noun == "regime") {
        const Uid site = noun == "leave" ? nounFrom<Leave>(content).site : nounFrom<Regime>(content).site;
        return !known(site, core.siteRow(site));
    }
    if (noun == "photo" || noun == "sample") {
        const Uid visit = noun == "photo" ? nounFrom<PhotoNote>(content).visit : nounFrom<Sample>(content).visit;
        return !known(visit, core.visitRow(visit));
    }
    return false;
}

RowBefore rowBefore(StoreCore& core, const std::string& noun, const Uid& entity)
{
    if (noun == "visit") {
        Query q(core.db, "SELECT head IS NULL, content FROM visit WHERE uid = :uid");
        if (!q.bind(":uid", entity).step())
            return {};
        return {true, q.flag(0), q.text(1)};
    }
    Query q(core.db, "SELECT content FROM " + noun + " WHERE uid = :uid");
    if (!q.bind(":uid", entity).step())
        return {};
    return {true, false, q.text(0)};
}

Uid keepDraft(Change& change, const std::string& content)
{
    auto draft = nounFrom<Visit>(content);
    draft.id = change.core().ids.make();
    taken(Visits(change.core()).saveDraft(change, draft, {}));
    return draft.id;
}

std::int64_t treeOfVisit(StoreCore& core, const Uid& visit)
{
    Query q(core.db, "SELECT tree FROM visit WHERE uid = :uid");
    return q.bind(":uid", visit).step() && !q.isNull(0) ? q.integer(0) : 0;
}

void putNoun(StoreCore& core, const std::string& noun, const Uid& entity, const NounStands& stands)
{
    const Written at{stands.head, stands.line};
    const std::string& content = stands.content;
    const auto held = heldHere(core, entity, stands.commitment);
    if (noun == "person") {
        auto person = nounFrom<Person>(content);
        addPersonal(person, personalPayload(core, held));
        putPerson(core, person, content, held, at);
    } else if (noun == "site") {
        putSite(core, nounFrom<Site>(content), content, at);
    } else if (noun == "tree") {
        putTree(core, nounFrom<Tree>(content), content, at);
    } else if (noun == "visit") {
        putVisit(core, nounFrom<Visit>(content), content, at);
    } else if (noun == "leave") {
        putLeave(core, nounFrom<Leave>(content), content, held, at);
    } else if (noun == "regime") {
        putRegime(core, nounFrom<Regime>(content), content, at);
    } else if (noun == "photo") {
        putPhoto(core, nounFrom<PhotoNote>(content), content, at);
    } else {
        putSample(core, nounFrom<Sample>(content), content, at);
    }
}

void findClash(StoreCore& core, const std::string& noun, const std::string& content, const Uid& entity, std::vector<MergeClash>& clashes)
{
    std::string value;
    Uid other;
    if (noun == "person") {
        value = nounFrom<Person>(content).code;
        Query q(core.db, "SELECT uid FROM person WHERE code = :value AND code <> '' AND uid <> :uid");
        other = q.bind(":value", value).bind(":uid", entity).step() ? q.uid(0) : Uid{};
    } else if (noun == "sample") {
        value = nounFrom<Sample>(content).number;
        Query q(core.db, "SELECT uid FROM sample WHERE number_key = :value AND uid <> :uid");
        other = q.bind(":value", sampleKey(value)).bind(":uid", entity).step() ? q.uid(0) : Uid{};
    }
    if (!other.isNull())
        clashes.push_back({noun, value, other, entity});
}

// ---------------------------------------------------------------- records that are no revisions

namespace {

bool putAtVisit(StoreCore& core, const OtherRecord& other)
{
    const std::int64_t visit = core.visitRow(other.entity);
    if (visit == 0)
        return false;
    Query event(core.db, "INSERT INTO event (visit, content, line_chain, line_number, merged) VALUES (:visit, :content, :chain, :number, 1)");
    Query told(core.db, "INSERT INTO told (visit, content, line_chain, line_number) VALUES (:visit, :content, :chain, :number)");
    Query& q = other.type == "event" ? event : told;
    q.bind(":visit", visit).bind(":content", other.content).bind(":chain", other.line.chain).bind(":number", other.line.number).run();
    return true;
}

bool putDecision(StoreCore& core, const OtherRecord& other)
{
    const auto decision = nounFrom<Decision>(other.content);
    const std::int64_t visit = core.visitRow(decision.visit);
    Query revision(core.db, "SELECT 1 FROM revision WHERE uid = :uid AND entity = :entity");
    const bool there = decision.revision.isNull() || revision.bind(":uid", decision.revision).bind(":entity", decision.visit).step();
    if (visit == 0 || !there)
        return false;
    Query q(core.db, "INSERT INTO decision (uid, visit, revision, content, line_chain, line_number) "
                     "VALUES (:uid, :visit, :revision, :content, :chain, :number)");
    q.bind(":uid", decision.id).bind(":visit", visit).bind(":revision", decision.revision).bind(":content", other.content);
    q.bind(":chain", other.line.chain).bind(":number", other.line.number).run();
    return true;
}

/// The column counts lines as they came; the number that the line itself has may come twice.
bool putCustody(StoreCore& core, const OtherRecord& other)
{
    const auto line = nounFrom<CustodyLine>(other.content);
    const std::int64_t sample = core.sampleRow(line.sample);
    if (sample == 0)
        return false;
    Query last(core.db, "SELECT coalesce(max(number), 0) FROM custody WHERE sample = :sample");
    last.bind(":sample", sample).step();
    Query q(core.db, "INSERT INTO custody (uid, sample, number, bag, seal, content, line_chain, line_number) "
                     "VALUES (:uid, :sample, :number, :bag, :seal, :content, :chain, :line)");
    q.bind(":uid", line.id).bind(":sample", sample).bind(":number", last.whole(0) + 1).bind(":bag", line.bag).bind(":seal", line.seal);
    q.bind(":content", other.content).bind(":chain", other.line.chain).bind(":line", other.line.number).run();
    return true;
}

void putKeyNote(StoreCore& core, const OtherRecord& other)
{
    const auto note = nounFrom<KeyNote>(other.content);
    Query q(core.db, "INSERT INTO key_note (uid, key, person, content, line_chain, line_number) "
                     "VALUES (:uid, :key, :person, :content, :chain, :number)");
    q.bind(":uid", note.id).bind(":key", note.key).bind(":person", note.person).bind(":content", other.content);
    q.bind(":chain", other.line.chain).bind(":number", other.line.number).run();
}

} // namespace

std::optional<std::string> otherHere(StoreCore& core, const GoingRecord& record, const LineMark& line)
{
    const bool named = record.type == "decision" || record.type == "custody" || record.type == "key-note" || record.type == "skill";
    const std::string table = record.type == "key-note" ? "key_note" : record.type;
    if (named) {
        Query q(core.db, "SELECT content FROM " + table + " WHERE uid = :uid");
        if (q.bind(":uid", record.entity).step())
            return q.text(0);
    }
    for (const std::string& at : {table, std::string("waiting_record")}) {
        Query q(core.db, "SELECT content FROM " + at + " WHERE line_chain = :chain AND line_number = :number");
        if (q.bind(":chain", line.chain).bind(":number", line.number).step())
            return q.text(0);
    }
    return std::nullopt;
}

bool putOther(StoreCore& core, const OtherRecord& other)
{
    if (other.type == "event" || other.type == "told")
        return putAtVisit(core, other);
    if (other.type == "decision")
        return putDecision(core, other);
    if (other.type == "custody")
        return putCustody(core, other);
    if (other.type == "key-note")
        putKeyNote(core, other);
    else if (other.type == "skill")
        putSkill(core, other.entity, other.content, other.line);
    else
        putErasure(core, other.entity, other.content, other.line);
    return true;
}

void keepWaiting(StoreCore& core, const OtherRecord& other)
{
    Query q(core.db, "INSERT INTO waiting_record (line_chain, line_number, type, entity, content) "
                     "VALUES (:chain, :number, :type, :entity, :content)");
    q.bind(":chain", other.line.chain).bind(":number", other.line.number).bind(":type", other.type);
    q.bind(":entity", other.entity).bind(":content", other.content).run();
}

} // namespace cupule
