// One tree's page: what happened to it, what was seen on it and by whom, where it was said to stand.

#include <algorithm>
#include <map>

#include "core/record/json.h"
#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/samples.h"
#include "core/store/visits.h"
#include "core/task/edit.h"
#include "core/task/lines.h"
#include "core/task/sight.h"
#include "core/task/trees.h"

namespace cupule {

namespace {

class PageMaker {
public:
    PageMaker(Session& session, TreePage& page) : m_session(session), m_page(page) {}

    Status make(const Uid& kept)
    {
        for (const auto part : {&PageMaker::entries, &PageMaker::visits, &PageMaker::past, &PageMaker::seen})
            if (auto done = (this->*part)(kept); !done)
                return done;
        sort();
        return {};
    }

private:
    Status entries(const Uid& kept)
    {
        auto all = m_session.store().trees().entries(kept);
        if (!all)
            return fail(all.error());
        if (all->empty())
            return fail("tree.unknown", FaultKind::usage, {{"id", kept.text()}});
        m_page.tree = std::move(all->front());
        m_page.merged.assign(std::make_move_iterator(all->begin() + 1), std::make_move_iterator(all->end()));
        if (m_page.tree.site.isNull())
            return {};
        auto site = m_session.store().sites().find(m_page.tree.site);
        if (!site)
            return fail(site.error());
        m_page.site = std::move(*site);
        return {};
    }

    Status visits(const Uid& kept)
    {
        auto host = verdictOfTree(m_session, kept);
        if (!host)
            return fail(host.error());
        m_page.host = std::move(*host);
        auto history = historyOf(m_session, kept, Uid{});
        if (!history)
            return fail(history.error());
        m_page.visits = std::move(*history);
        auto photos = m_session.store().photos().ofTree(kept);
        if (!photos)
            return fail(photos.error());
        m_page.photos = std::move(*photos);
        auto samples = m_session.store().samples().ofTree(kept);
        if (!samples)
            return fail(samples.error());
        m_page.samples = std::move(*samples);
        return {};
    }

    /// The code by which people call somebody.
    Result<std::string> codeOf(const Uid& person)
    {
        if (const auto met = m_codes.find(person); met != m_codes.end())
            return met->second;
        const auto found = m_session.store().people().find(person);
        if (!found)
            return fail(found.error());
        return m_codes[person] = *found ? (*found)->code : std::string();
    }

    Status past(const Uid&)
    {
        const auto fateBy = codeOf(m_page.tree.fateBy);
        if (!fateBy)
            return fail(fateBy.error());
        m_page.fateBy = *fateBy;
        if (auto done = pastOf(m_page.tree.id); !done)
            return done;
        for (const Tree& entry : m_page.merged)
            if (auto done = pastOf(entry.id); !done)
                return done;
        return {};
    }

    Status pastOf(const Uid& entry)
    {
        const auto revisions = m_session.store().revisions().ofEntity(entry);
        if (!revisions)
            return fail(revisions.error());
        Tree before;
        bool first = true;
        for (const Revision& revision : *revisions) {
            const auto tree = fromJson<Tree>(revision.content);
            if (!tree)
                return fail(tree.error());
            const auto who = codeOf(revision.author);
            if (!who)
                return fail(who.error());
            TreeEvent event{TreeEvent::Kind::entered, CivilDate::of(revision.at), -1, entry, tree->label, tree->fate, *who};
            compare(before, *tree, first, event);
            before = *tree;
            first = false;
        }
        return {};
    }

    void compare(const Tree& before, const Tree& now, bool first, TreeEvent event)
    {
        using Kind = TreeEvent::Kind;
        const auto add = [&](Kind kind, CivilDate day) {
            event.kind = kind;
            event.day = day;
            m_page.events.push_back(event);
        };
        const CivilDate written = event.day;
        if (first)
            add(Kind::entered, written);
        if (now.position && now.position != before.position) {
            if (!first)
                add(Kind::moved, written);
            addPlace({*now.position, written, now.label, -1, false});
        }
        if (now.fate != before.fate || now.fateDate != before.fateDate)
            add(Kind::fate, now.fateDate.value_or(written));
        if (now.mergedInto != before.mergedInto)
            add(now.mergedInto.isNull() ? Kind::split : Kind::merged, written);
    }

    void addPlace(TreePlace place)
    {
        const auto same = std::find_if(m_page.places.begin(), m_page.places.end(), [&](const TreePlace& known) {
            return known.position.latitude == place.position.latitude && known.position.longitude == place.position.longitude;
        });
        if (same == m_page.places.end())
            m_page.places.push_back(std::move(place));
    }

    /// What the visits say of the tree's kind, and where their observers stood.
    Status seen(const Uid& kept)
    {
        const auto contents = m_session.store().visits().contentsOfTree(kept);
        if (!contents)
            return fail(contents.error());
        for (const Visit& visit : *contents) {
            const auto line = std::find_if(m_page.visits.begin(), m_page.visits.end(),
                                           [&](const HistoryLine& known) { return known.line.id == visit.id; });
            if (line == m_page.visits.end())
                continue;
            const int index = static_cast<int>(line - m_page.visits.begin());
            m_page.events.push_back({TreeEvent::Kind::visit, visit.date, index, visit.tree, line->line.treeLabel, {}, line->line.observerCode});
            if (visit.position)
                addPlace({*visit.position, visit.date, {}, index, false});
            if (line->line.state != RecordState::rejected)
                for (const CharacterSeen& character : visit.characters)
                    m_page.evidence.push_back({character, index, saysOf(character)});
        }
        return {};
    }

    std::optional<HostEvidence> saysOf(const CharacterSeen& seen) const
    {
        for (const HostEvidence& evidence : m_page.host.evidence)
            if (evidence.character == seen.character && evidence.state == seen.state && evidence.value == seen.value)
                return evidence;
        return std::nullopt;
    }

    int rankOf(const CharacterFrom& from) const
    {
        const auto among = [&](const std::vector<std::string>& list) {
            return std::find(list.begin(), list.end(), from.seen.character) != list.end();
        };
        if (among(m_page.host.contradictions) || among(m_page.host.decidedBy))
            return 0;
        return from.says ? 1 : 2;
    }

    void sort()
    {
        // of one day, what was written last stands first
        std::reverse(m_page.events.begin(), m_page.events.end());
        std::stable_sort(m_page.events.begin(), m_page.events.end(),
                         [](const TreeEvent& a, const TreeEvent& b) { return a.day > b.day; });
        std::stable_sort(m_page.evidence.begin(), m_page.evidence.end(), [&](const CharacterFrom& a, const CharacterFrom& b) {
            const auto key = [&](const CharacterFrom& from) {
                return std::make_tuple(rankOf(from), from.seen.character, from.seen.state, from.seen.value, from.visit);
            };
            return key(a) < key(b);
        });
        for (TreePlace& place : m_page.places)
            place.inForce = m_page.tree.position && m_page.tree.position->latitude == place.position.latitude
                            && m_page.tree.position->longitude == place.position.longitude;
        std::stable_sort(m_page.places.begin(), m_page.places.end(),
                         [](const TreePlace& a, const TreePlace& b) { return a.day < b.day; });
    }

    Session& m_session;
    TreePage& m_page;
    std::map<Uid, std::string> m_codes{{Uid{}, {}}};
};

} // namespace

Result<TreePage> treePage(Session& session, const Uid& entry)
{
    const auto kept = session.store().trees().kept(entry);
    if (!kept)
        return fail(kept.error());
    TreePage page;
    if (auto made = PageMaker(session, page).make(*kept); !made)
        return fail(made.error());
    hide(session, ownSight(session), page);
    return page;
}

Status markTree(Session& session, const Uid& tree, const std::string& fate, std::optional<CivilDate> day, const std::string& what)
{
    if (!fate.empty() && fate != "felled" && fate != "not found")
        return fail("tree.fate", FaultKind::usage, {{"value", fate}});
    if (!fate.empty() && (!day || *day > session.today()))
        return fail("tree.fate-date", FaultKind::usage, {{"value", day ? day->text() : std::string()}});
    const auto stored = keptTree(session, tree);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("tree.unknown", FaultKind::usage, {{"id", tree.text()}});
    Tree changed = **stored;
    changed.fate = fate;
    changed.fateDate = fate.empty() ? std::nullopt : day;
    changed.fateBy = fate.empty() ? Uid{} : session.me();
    return changeTree(session, changed, what);
}

} // namespace cupule
