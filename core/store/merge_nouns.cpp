#include "core/store/merge_nouns.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "core/record/decision.h"
#include "core/record/key.h"
#include "core/store/noun_rows.h"
#include "core/store/personal.h"
#include "core/store/sample_key.h"
#include "core/store/visits.h"

namespace cupule {

namespace {

constexpr std::array<std::string_view, 8> nouns{"person", "site", "tree", "visit", "leave", "regime", "photo", "sample"};

/// The rows of what a noun names; nothing where one of them is not here.
struct Naming {
    using Names = std::optional<VisitNames>;
    [[nodiscard]] static Names ifKnown(const Uid& id, std::int64_t row) { return id.isNull() || row != 0 ? Names(VisitNames{}) : std::nullopt; }
    [[nodiscard]] Names site(const Uid& id) const { return ifKnown(id, id.isNull() ? 0 : core.siteRow(id)); }
    [[nodiscard]] Names visit(const Uid& id) const { return ifKnown(id, id.isNull() ? 0 : core.visitRow(id)); }

    [[nodiscard]] Names all(const Person&) const { return VisitNames{}; }
    [[nodiscard]] Names all(const Site&) const { return VisitNames{}; }
    [[nodiscard]] Names all(const Tree& tree) const { return site(tree.site); }
    [[nodiscard]] Names all(const Visit& visit) const
    {
        VisitNames names;
        for (const auto& [id, into, row] : {std::tuple{&visit.tree, &names.tree, &StoreCore::treeRow},
                                            std::tuple{&visit.observer, &names.observer, &StoreCore::personRow}}) {
            if (id->isNull())
                continue;
            *into = (core.*row)(*id);
            if (*into == 0)
                return std::nullopt;
        }
        return names;
    }
    [[nodiscard]] Names all(const Leave& leave) const { return site(leave.site); }
    [[nodiscard]] Names all(const Regime& regime) const { return site(regime.site); }
    [[nodiscard]] Names all(const PhotoNote& photo) const { return visit(photo.visit); }
    [[nodiscard]] Names all(const Sample& sample) const { return visit(sample.visit); }

    StoreCore& core;
};

/// Personal data that are here and belong to this noun; a row must not name others.
std::optional<Digest> heldHere(StoreCore& core, const Uid& entity, const std::optional<Digest>& commitment)
{
    if (!commitment)
        return std::nullopt;
    Query q(core.db, "SELECT 1 FROM personal WHERE commitment = :commitment AND entity = :entity");
    return q.bind(":commitment", *commitment).bind(":entity", entity).step() ? commitment : std::nullopt;
}

/// The row of a noun that came in.
struct Writing {
    void put(Person& person) const
    {
        const auto held = heldHere(core, person.id, commitment);
        addPersonal(person, personalPayload(core, held));
        putPerson(core, person, content, held, at);
    }
    void put(const Site& site) const { putSite(core, site, content, at); }
    void put(const Tree& tree) const { putTree(core, tree, content, at); }
    void put(const Visit& visit) const { putVisit(core, visit, named, there, content, at); }
    void put(const Leave& leave) const { putLeave(core, leave, content, heldHere(core, leave.id, commitment), at); }
    void put(const Regime& regime) const { putRegime(core, regime, content, at); }
    void put(const PhotoNote& photo) const { putPhoto(core, photo, content, at); }
    void put(const Sample& sample) const { putSample(core, sample, content, at); }

    StoreCore& core;
    const std::string& content;
    const std::optional<Digest>& commitment;
    Written at;
    const VisitNames& named;
    bool there;
};

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

MergingNoun readNoun(const std::string& noun, const std::string& content)
{
    switch (rankOf(noun)) {
    case 0: return nounFrom<Person>(content);
    case 1: return nounFrom<Site>(content);
    case 2: return nounFrom<Tree>(content);
    case 3: return nounFrom<Visit>(content);
    case 4: return nounFrom<Leave>(content);
    case 5: return nounFrom<Regime>(content);
    case 6: return nounFrom<PhotoNote>(content);
    default: return nounFrom<Sample>(content);
    }
}

std::optional<VisitNames> rowsNamed(StoreCore& core, const MergingNoun& noun)
{
    const Naming naming{core};
    return std::visit([&](const auto& each) { return naming.all(each); }, noun);
}

RowBefore rowBefore(StoreCore& core, const std::string& noun, const Uid& entity)
{
    if (noun == "visit") {
        Query q(core.db, "SELECT head IS NULL, content, tree FROM visit WHERE uid = :uid");
        if (!q.bind(":uid", entity).step())
            return {};
        return {true, q.flag(0), q.integer(2), q.text(1)};
    }
    const std::string sql = "SELECT content FROM " + noun + " WHERE uid = :uid";
    Query q(core.db, FewTexts{sql});
    if (!q.bind(":uid", entity).step())
        return {};
    return {true, false, 0, q.text(0)};
}

Uid keepDraft(Change& change, const std::string& content)
{
    auto draft = nounFrom<Visit>(content);
    draft.id = change.core().ids.make();
    taken(Visits(change.core()).saveDraft(change, draft, {}));
    return draft.id;
}

void putNoun(StoreCore& core, MergingNoun& noun, const NounStands& stands, const VisitNames& named, bool there)
{
    const Writing writing{core, stands.content, stands.commitment, {stands.head, stands.line}, named, there};
    std::visit([&](auto& each) { writing.put(each); }, noun);
}

void findClash(StoreCore& core, const MergingNoun& noun, std::vector<MergeClash>& clashes)
{
    if (const auto* person = std::get_if<Person>(&noun)) {
        Query q(core.db, "SELECT uid FROM person WHERE code = :value AND code <> '' AND uid <> :uid");
        if (q.bind(":value", person->code).bind(":uid", person->id).step())
            clashes.push_back({"person", person->code, q.uid(0), person->id});
    } else if (const auto* sample = std::get_if<Sample>(&noun)) {
        Query q(core.db, "SELECT uid FROM sample WHERE number_key = :value AND uid <> :uid");
        if (q.bind(":value", sampleKey(sample->number)).bind(":uid", sample->id).step())
            clashes.push_back({"sample", sample->number, q.uid(0), sample->id});
    }
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
        const std::string sql = "SELECT content FROM " + table + " WHERE uid = :uid";
        Query q(core.db, FewTexts{sql});
        if (q.bind(":uid", record.entity).step())
            return q.text(0);
    }
    for (const std::string& at : {table, std::string("waiting_record")}) {
        const std::string sql = "SELECT content FROM " + at + " WHERE line_chain = :chain AND line_number = :number";
        Query q(core.db, FewTexts{sql});
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
