#include "core/task/import_resolve.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/position/geodesic.h"
#include "core/store/people.h"
#include "core/store/places.h"

namespace cupule {

namespace {

/// What the operation behind a tree's place may be off, where only the square is at hand; see reachMetres().
constexpr double plainOperationMetres = 5;

/// First letters of the words, in capitals: "Anna Fell" gives "AF".
std::string initials(std::string_view name)
{
    std::string out;
    bool begins = true;
    for (std::size_t at = 0; at < name.size() && out.size() < 4;) {
        const char32_t c = nextCodePoint(name, at);
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        if (letter && begins)
            out += static_cast<char>(c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c);
        begins = begins ? !letter && c < 0x80 : c == ' ' || c == '-' || c == '.';
    }
    return out.empty() ? "P" : out;
}

bool looksLikeCode(const std::string& text)
{
    return text.size() <= 6 && std::all_of(text.begin(), text.end(), [](char c) {
               return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
           });
}

} // namespace

RowResolver::RowResolver(Session& session, Change& change, BulkImport& bulk, ManyIds& ids, std::string file)
    : m_session(session), m_change(change), m_bulk(bulk), m_ids(ids), m_file(std::move(file)), m_told(session)
{
}

void RowResolver::ask(const TableRow& row, const char* kind, const std::string& value, const std::string& suggestion,
                      std::vector<ImportProblem>& questions) const
{
    ImportProblem problem;
    problem.file = m_file;
    problem.row = row.row;
    problem.line = row.line;
    problem.kind = kind;
    problem.value = value;
    problem.suggestion = suggestion;
    problem.kept = true;
    questions.push_back(std::move(problem));
}

Result<const Site*> RowResolver::site(const std::string& name)
{
    if (name.empty())
        return nullptr;
    if (const auto met = m_sites.find(name); met != m_sites.end())
        return &met->second;
    auto there = m_session.store().sites().byName(name);
    if (!there)
        return fail(there.error());
    Site site;
    if (!there->empty()) {
        site = std::move(there->front());
    } else {
        site.id = m_ids.make();
        site.name = name;
        if (auto saved = m_session.store().sites().save(m_change, site); !saved)
            return fail(saved.error());
        ++m_newSites;
    }
    return &m_sites.emplace(name, std::move(site)).first->second;
}

/// A code that a row named earlier and a name that a row names now are one person where the initials agree, in
/// whichever order the two come: two entries for one person could decide on each other's records.
Result<Uid> RowResolver::makePerson(const std::string& text)
{
    Person person;
    person.id = m_ids.make();
    person.name = text;
    const bool code = looksLikeCode(text);
    const std::string stem = code ? text : initials(text);
    for (int number = 1;; ++number) {
        person.code = number == 1 ? stem : stem + std::to_string(number);
        auto taken = m_session.store().people().byCode(person.code);
        if (!taken)
            return fail(taken.error());
        if (!*taken)
            break;
        if (!code && number == 1 && isOnlyCode(**taken)) {
            Person named = std::move(**taken);
            named.name = text;
            if (auto saved = m_session.store().people().save(m_change, named); !saved)
                return fail(saved.error());
            return named.id;
        }
    }
    if (auto saved = m_session.store().people().save(m_change, person); !saved)
        return fail(saved.error());
    ++m_newPeople;
    return person.id;
}

/// Nothing where several people have that name.
Result<std::optional<Uid>> RowResolver::person(const std::string& text)
{
    if (const auto met = m_people.find(text); met != m_people.end())
        return met->second;
    std::optional<Uid> id;
    const auto coded = m_session.store().people().byCode(text);
    if (!coded)
        return fail(coded.error());
    if (*coded) {
        id = (*coded)->id;
    } else {
        const auto named = m_session.store().people().byName(text);
        if (!named)
            return fail(named.error());
        if (named->size() == 1)
            id = named->front().id;
        if (named->empty()) {
            const auto made = makePerson(text);
            if (!made)
                return fail(made.error());
            id = *made;
        }
    }
    m_people.emplace(text, id);
    return id;
}

Status RowResolver::people(TableRow& row, std::vector<ImportProblem>& questions)
{
    const auto find = [&](const std::string& text, const char* heading) -> Result<Uid> {
        const auto found = person(text);
        if (!found)
            return fail(found.error());
        if (*found)
            return **found;
        row.visit.remarks.push_back({heading, text});
        ask(row, "name-of-several", text, {}, questions);
        return Uid{};
    };
    if (!row.observer.empty()) {
        const auto observer = find(row.observer, "observer");
        if (!observer)
            return fail(observer.error());
        row.visit.observer = *observer;
    }
    for (const auto& companion : row.companions) {
        const auto found = find(companion, "companion");
        if (!found)
            return fail(found.error());
        if (!found->isNull())
            row.visit.companions.push_back(*found);
    }
    return {};
}

RowResolver::Match RowResolver::match(const std::vector<KnownTree>& trees, const TableRow& row, bool inSite)
{
    if (trees.empty())
        return {};
    if (inSite)
        return {&trees.front(), 0, false, !trees.front().placed && row.place.has_value()};
    Match best;
    double nearest = std::numeric_limits<double>::infinity();
    const KnownTree* unplaced = nullptr;
    const KnownTree* placed = nullptr;
    for (const auto& tree : trees) {
        double latitude = tree.latitude, longitude = tree.longitude, reach = tree.uncertaintyMetres + plainOperationMetres;
        if (!tree.placed) {
            const auto given = m_places.find(tree.handle);
            if (given == m_places.end()) {
                unplaced = &tree;
                continue;
            }
            latitude = given->second.second.latitude;
            longitude = given->second.second.longitude;
            reach = reachMetres(given->second.second);
        }
        placed = placed == nullptr ? &tree : placed;
        if (!row.place)
            continue;
        const Position& here = *row.visit.position;
        const double metres = distanceMetres(latitude, longitude, here.latitude, here.longitude);
        const double limit = std::max(m_session.pack().settings.sameTreeMetres, reach + reachMetres(here));
        if (metres < nearest) {
            nearest = metres;
            best.tree = metres <= limit ? &tree : nullptr;
        }
    }
    if (best.tree != nullptr)
        return best;
    if (unplaced != nullptr && (!row.place || placed == nullptr))
        return {unplaced, 0, false, row.place.has_value()};
    if (!row.place && trees.size() == 1)
        return {placed, 0, false, false};
    best.elsewhere = true;
    best.metres = std::isfinite(nearest) ? nearest : 0;
    return best;
}

Status RowResolver::tree(TableRow& row, const std::string& note, ResolvedRow& out,
                         std::vector<ImportProblem>& questions)
{
    const auto place = site(row.site);
    if (!place)
        return fail(place.error());
    out.site = *place;
    const Uid inSite = out.site == nullptr ? Uid{} : out.site->id;
    const auto labelled = m_bulk.treesLabelled(inSite, row.label);
    if (!labelled)
        return fail(labelled.error());
    const Match found = match(**labelled, row, out.site != nullptr);
    out.newTree = found.tree == nullptr;
    if (found.tree != nullptr) {
        out.tree = *found.tree;
        out.placeGiven = found.gets && m_places.try_emplace(out.tree.handle, out.tree.id, *row.visit.position).second;
        return m_told.add(out.tree, note, row.girth);
    }
    Tree tree;
    tree.id = m_ids.make();
    tree.site = inSite;
    tree.label = row.label;
    tree.position = row.visit.position;
    tree.girthCentimetres = row.girth;
    tree.note = note;
    const auto added = m_bulk.addTree(tree);
    if (!added)
        return fail(added.error());
    out.tree = *added;
    if (!tree.note.empty() || tree.girthCentimetres)
        m_told.made(out.tree.handle, tree);
    if (found.elsewhere)
        ask(row, "same-label-elsewhere", row.label, numberText(std::round(found.metres)), questions);
    return {};
}

SeasonContext RowResolver::season(const Visit& visit, const Site* at)
{
    if (visit.leafingShiftDays)
        return m_session.seasonFor(visit, at);
    const auto key = std::pair{at, visit.date.year()};
    auto known = m_seasons.find(key);
    if (known == m_seasons.end())
        known = m_seasons.emplace(key, m_session.seasonFor(visit, at)).first;
    return known->second;
}

Status RowResolver::resolve(TableRow& row, ResolvedRow& out, std::vector<ImportProblem>& questions)
{
    const auto before = m_bulk.knownBefore(row.fingerprint);
    if (!before)
        return fail(before.error());
    out.known = *before > 0 && m_known.count(row.fingerprint) <= *before;
    if (out.known)
        return {};
    if (auto found = people(row, questions); !found)
        return found;
    if (auto found = tree(row, {}, out, questions); !found)
        return found;
    row.visit.id = m_ids.make();
    row.visit.tree = out.tree.id;
    out.season = season(row.visit, out.site);
    return {};
}

Status RowResolver::resolveTree(TableRow& row, ResolvedRow& out, std::vector<ImportProblem>& questions)
{
    std::string note = row.visit.note;
    for (const auto& remark : row.visit.remarks)
        note += (note.empty() ? "" : "\n") + remark.heading + ": " + remark.text;
    if (auto found = tree(row, note, out, questions); !found)
        return found;
    out.known = !out.newTree && !out.placeGiven;
    return {};
}

Status RowResolver::saveTrees()
{
    auto changed = m_told.changed();
    for (const auto& [handle, given] : m_places)
        changed.emplace(handle, given.first);
    for (const auto& [handle, id] : changed) {
        auto tree = m_session.store().trees().find(id);
        if (!tree)
            return fail(tree.error());
        if (!*tree)
            continue;
        if (const auto given = m_places.find(handle); given != m_places.end())
            (*tree)->position = given->second.second;
        m_told.apply(handle, **tree);
        if (auto saved = m_session.store().trees().save(m_change, **tree); !saved)
            return saved;
    }
    return {};
}

} // namespace cupule
