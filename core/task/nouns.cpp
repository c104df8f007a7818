#include "core/task/nouns.h"

#include <algorithm>
#include <array>
#include <functional>

#include "core/base/text.h"
#include "core/record/json.h"
#include "core/record/names.h"
#include "core/rules/sample_number.h"
#include "core/store/decisions.h"
#include "core/store/leaves.h"
#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/samples.h"
#include "core/store/visits.h"
#include "core/task/facts.h"

namespace cupule {

namespace {

struct NounWords {
    Noun noun;
    std::string_view one, many;
};
constexpr auto nounWords = std::to_array<NounWords>({{Noun::visit, "visit", "visits"},
                                                     {Noun::tree, "tree", "trees"},
                                                     {Noun::site, "site", "sites"},
                                                     {Noun::person, "person", "people"},
                                                     {Noun::photo, "photo", "photos"},
                                                     {Noun::sample, "sample", "samples"},
                                                     {Noun::leave, "leave", "leaves"},
                                                     {Noun::regime, "regime", "regimes"},
                                                     {Noun::decision, "decision", "decisions"}});

/// Shorter beginnings of an id would mean anything.
constexpr std::size_t shortestPart = 4;
constexpr int page = 2000;

using Take = std::function<bool(NamedNoun&&)>; ///< false = enough

std::string visitName(const VisitRow& row)
{
    return (row.treeLabel.empty() ? "?" : row.treeLabel) + "@" + row.date.text() + "@" + row.observerCode;
}

std::string treeName(const TreeRow& row)
{
    return row.siteName.empty() ? row.tree.label : row.siteName + "/" + row.tree.label;
}

std::string leaveName(const Leave& leave)
{
    return leave.reference.empty() ? std::string(name(leave.giver)) + "@" + leave.from.text()
                                   : leave.reference;
}

std::string regimeName(const Regime& regime)
{
    return regime.reference.empty() ? regime.issuer + "@" + regime.from.text() : regime.reference;
}

Status eachRow(Session& session, const NounFilter& filter, const std::function<bool(const VisitRow&)>& take)
{
    if (filter.day) {
        const auto rows = session.store().visits().ofDay(*filter.day, Uid{});
        if (!rows)
            return fail(rows.error());
        for (const auto& row : *rows)
            if (!row.standing.struck && (!filter.state || row.standing.state == *filter.state) && !take(row))
                return {};
        return {};
    }
    for (std::int64_t from = 0;; from += page) {
        const auto rows = session.store().visits().window(filter.state, from, page);
        if (!rows)
            return fail(rows.error());
        for (const auto& row : *rows)
            if (!row.standing.struck && !take(row))
                return {};
        if (static_cast<int>(rows->size()) < page)
            return {};
    }
}

/// Hands over every entry of a list that is held as a whole.
template <class List, class NameOf> Status eachOf(const Result<List>& list, NameOf nameOf, const Take& take)
{
    if (!list)
        return fail(list.error());
    for (const auto& entry : *list)
        if (!take({entry.id, nameOf(entry), toJson(entry)}))
            return {};
    return {};
}

Status eachVisit(Session& session, const NounFilter& filter, const Take& take)
{
    Status broken;
    const auto walked = eachRow(session, filter, [&](const VisitRow& row) {
        const auto visit = session.store().visits().find(row.id);
        if (!visit) {
            broken = fail(visit.error());
            return false;
        }
        return !*visit || take({row.id, visitName(row), toJson(**visit)});
    });
    return broken ? walked : broken;
}

Status eachTree(Session& session, const Take& take)
{
    for (std::int64_t from = 0;; from += page) {
        const auto rows = session.store().trees().window({}, from, page);
        if (!rows)
            return fail(rows.error());
        for (const auto& row : *rows)
            if (!take({row.tree.id, treeName(row), toJson(row.tree)}))
                return {};
        if (static_cast<int>(rows->size()) < page)
            return {};
    }
}

Status eachPhoto(Session& session, const Take& take)
{
    bool enough = false;
    const auto hand = [&](const std::vector<PhotoNote>& photos) {
        for (const auto& photo : photos)
            if (!enough && !take({photo.id, photo.originalName, toJson(photo)}))
                enough = true;
    };
    for (const auto& loose : {session.store().photos().tray(), session.store().photos().copies()}) {
        if (!loose)
            return fail(loose.error());
        hand(*loose);
    }
    Status broken;
    const auto walked = eachRow(session, {}, [&](const VisitRow& row) {
        const auto photos = session.store().photos().ofVisit(row.id);
        if (!photos) {
            broken = fail(photos.error());
            return false;
        }
        hand(*photos);
        return !enough;
    });
    return broken ? walked : broken;
}

Status eachDecision(Session& session, const NounFilter& filter, const Take& take)
{
    Status broken;
    const auto walked = eachRow(session, filter, [&](const VisitRow& row) {
        if (row.standing.head.isNull())
            return true;
        const auto decisions = session.store().decisions().ofVisit(row.id);
        if (!decisions) {
            broken = fail(decisions.error());
            return false;
        }
        for (const auto& decision : *decisions) {
            // what the first of two said is not for the second to see
            const bool veiled = row.standing.oneOfTwo && decision.by != session.me();
            const std::string named = visitName(row) + "/" + std::string(name(decision.outcome));
            if (!veiled && !take({decision.id, named, toJson(decision)}))
                return false;
        }
        return true;
    });
    return broken ? walked : broken;
}

Status eachNoun(Session& session, Noun noun, const NounFilter& filter, const Take& take)
{
    Store& store = session.store();
    switch (noun) {
    case Noun::visit: return eachVisit(session, filter, take);
    case Noun::tree: return eachTree(session, take);
    case Noun::site:
        return eachOf(
            store.sites().all(), [](const Site& site) { return site.name; }, take);
    case Noun::person:
        return eachOf(
            store.people().all(), [](const Person& person) { return person.code; }, take);
    case Noun::photo: return eachPhoto(session, take);
    case Noun::sample:
        return eachOf(
            store.samples().all(), [](const Sample& sample) { return sample.number; }, take);
    case Noun::leave: return eachOf(store.leaves().all(), leaveName, take);
    case Noun::regime: return eachOf(store.leaves().allRegimes(), regimeName, take);
    case Noun::decision: return eachDecision(session, filter, take);
    }
    return {};
}

/// Candidates for a typed name, without walking the store where an index answers.
Result<std::vector<NamedNoun>> byName(Session& session, Noun noun, const std::string& typed)
{
    std::vector<NamedNoun> found;
    if (noun == Noun::visit) {
        const auto parts = split(typed, '@');
        const auto day = parts.size() >= 2 ? CivilDate::parse(parts[1]) : fail("date.form", FaultKind::usage);
        if (!day)
            return found;
        const auto walked = eachRow(session, {*day, std::nullopt, 0, 0}, [&](const VisitRow& row) {
            const bool observer = parts.size() < 3 || lowerAscii(row.observerCode) == lowerAscii(parts[2]);
            const std::string labelled = lowerAscii(row.siteName + "/" + row.treeLabel);
            const bool label =
                lowerAscii(row.treeLabel) == lowerAscii(parts[0]) || labelled == lowerAscii(parts[0]);
            if (label && observer)
                found.push_back({row.id, visitName(row), {}});
            return true;
        });
        return walked ? Result<std::vector<NamedNoun>>(found) : fail(walked.error());
    }
    const std::string wanted = lowerAscii(trim(typed));
    const auto plain = [](std::string_view text) {
        std::string out;
        for (const char c : lowerAscii(text))
            if (c != '-' && c != ' ')
                out += c;
        return out;
    };
    const auto walked = eachNoun(session, noun, {}, [&](NamedNoun&& entry) {
        const std::string lowered = lowerAscii(entry.name);
        const bool label = noun == Noun::tree && lowered.substr(lowered.find('/') + 1) == wanted;
        const bool number = noun == Noun::sample && plain(lowered) == plain(wanted);
        if (lowered == wanted || label || number)
            found.push_back(std::move(entry));
        return true;
    });
    if (!walked)
        return fail(walked.error());
    if (found.empty() && noun == Noun::tree) { // an entry that was merged is in no list, but can be split off by its label
        const auto merged = session.store().trees().labelledAnywhere(std::string(trim(typed.substr(typed.find('/') + 1))));
        if (!merged)
            return fail(merged.error());
        for (const auto& entry : *merged)
            found.push_back({entry.id, entry.label, {}});
    }
    if (found.empty() && noun == Noun::person) {
        const auto people = session.store().people().all();
        if (!people)
            return fail(people.error());
        for (const auto& person : *people)
            if (lowerAscii(trim(person.name)) == wanted)
                found.push_back({person.id, person.code, {}});
    }
    return found;
}

Result<std::vector<NamedNoun>> byPartOfId(Session& session, Noun noun, const std::string& typed)
{
    std::vector<NamedNoun> found;
    const std::string part = lowerAscii(trim(typed));
    const bool isPart =
        part.size() >= shortestPart && part.find_first_not_of("0123456789abcdef-") == std::string::npos;
    if (!isPart)
        return found;
    const auto keep = [&](const Uid& id, const std::string& named) {
        const std::string text = id.text();
        if (text.starts_with(part) || text.ends_with(part))
            found.push_back({id, named, {}});
        return true;
    };
    const auto walked =
        noun == Noun::visit
            ? eachRow(session, {}, [&](const VisitRow& row) { return keep(row.id, visitName(row)); })
            : eachNoun(session, noun, {}, [&](NamedNoun&& entry) { return keep(entry.id, entry.name); });
    if (!walked)
        return fail(walked.error());
    return found;
}

} // namespace

std::optional<Noun> nounNamed(std::string_view word)
{
    for (const auto& entry : nounWords)
        if (entry.one == word || entry.many == word)
            return entry.noun;
    return std::nullopt;
}

std::string_view nounName(Noun noun)
{
    const auto entry =
        std::find_if(nounWords.begin(), nounWords.end(), [&](const auto& e) { return e.noun == noun; });
    return entry->one;
}

Result<std::vector<NamedNoun>> listNouns(Session& session, Noun noun, const NounFilter& filter)
{
    std::vector<NamedNoun> list;
    int at = 0;
    const auto walked = eachNoun(session, noun, filter, [&](NamedNoun&& entry) {
        if (at++ >= filter.from)
            list.push_back(std::move(entry));
        return static_cast<int>(list.size()) < filter.count;
    });
    if (!walked)
        return fail(walked.error());
    return list;
}

Result<NamedNoun> oneNoun(Session& session, Noun noun, const Uid& id)
{
    if (noun == Noun::visit) {
        const auto stored = storedVisit(session, id);
        if (!stored)
            return fail(stored.error());
        return NamedNoun{id, visitName(stored->row), toJson(stored->visit)};
    }
    std::optional<NamedNoun> found;
    const auto walked = eachNoun(session, noun, {}, [&](NamedNoun&& entry) {
        if (entry.id == id)
            found = std::move(entry);
        return !found;
    });
    if (!walked)
        return fail(walked.error());
    if (!found)
        return fail("name.unknown", FaultKind::usage,
                    {{"noun", std::string(nounName(noun))}, {"name", id.text()}});
    return std::move(*found);
}

Result<Uid> findNoun(Session& session, Noun noun, const std::string& typed)
{
    if (const auto whole = Uid::parse(trim(typed)); whole && !whole->isNull())
        return *whole;
    auto found = byName(session, noun, typed);
    if (found && found->empty())
        found = byPartOfId(session, noun, typed);
    if (!found)
        return fail(found.error());
    if (found->size() == 1)
        return found->front().id;
    if (noun == Noun::sample && found->empty())
        if (const auto number = readSampleNumber(typed);
            !number && number.error().code == "sample-number.check")
            return fail(number.error()); // one wrong character is said as such, not as "there is none"
    Arguments arguments{{"noun", std::string(nounName(noun))}, {"name", typed}};
    if (found->empty())
        return fail("name.unknown", FaultKind::usage, std::move(arguments));
    std::string candidates;
    for (std::size_t i = 0; i < found->size() && i < 8; ++i)
        candidates += (i == 0 ? "" : ", ") + (*found)[i].name + " (" + (*found)[i].id.text() + ")";
    arguments.push_back({"candidates", candidates});
    return fail("name.ambiguous", FaultKind::usage, std::move(arguments));
}

} // namespace cupule
