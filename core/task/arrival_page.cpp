#include "core/task/arrival_page.h"

#include <algorithm>
#include <set>

#include "core/store/field_path.h"
#include "core/store/people.h"
#include "core/store/visits.h"
#include "core/task/noun_names.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

std::vector<CameInField> changedFields(const std::string& before, const std::string& after)
{
    std::set<std::string> paths;
    for (const std::string* content : {&before, &after})
        for (std::string& path : fieldPaths(*content))
            paths.insert(std::move(path));
    std::vector<CameInField> fields;
    for (const std::string& path : paths) {
        CameInField field{path, fieldOf(before, path), fieldOf(after, path)};
        if (field.before != field.after)
            fields.push_back(std::move(field));
    }
    return fields;
}

class Page {
public:
    Page(Session& session, const TakenIn& taken) : m_session(session), m_names(session), m_taken(taken) {}

    Result<CameInPage> made()
    {
        count();
        for (const bool fresh : {false, true})
            for (const MergedNoun& noun : m_taken.merged.nouns)
                if (noun.made == fresh && noun.conflicts.empty())
                    addNoun(noun);
        for (const Uid& visit : m_decided)
            if (auto added = addDecided(visit); !added)
                return fail(added.error());
        std::stable_sort(m_page.lines.begin(), m_page.lines.end(), [](const CameIn& a, const CameIn& b) { return !a.made && b.made; });
        if (m_page.lines.size() > mostCameIn)
            m_page.lines.resize(mostCameIn);
        return std::move(m_page);
    }

    Status conflicts()
    {
        for (const MergedNoun& noun : m_taken.merged.nouns) {
            if (noun.conflicts.empty() || m_page.open.size() >= mostConflictPages)
                continue;
            auto page = conflictPage(m_session, noun.entity);
            if (!page)
                return fail(page.error());
            m_page.open.push_back(std::move(*page));
        }
        return {};
    }

private:
    void count()
    {
        m_decided.insert(m_taken.merged.decided.begin(), m_taken.merged.decided.end());
        m_page.decided = static_cast<int>(m_decided.size());
        for (const MergedNoun& noun : m_taken.merged.nouns) {
            ++(noun.made ? m_page.made : m_page.changed)[noun.noun];
            m_page.conflicts += static_cast<int>(noun.conflicts.size());
        }
    }

    /// Nobody reads more; what is changed is asked for before what is new.
    [[nodiscard]] bool full() const { return m_page.lines.size() >= mostCameIn; }

    CameIn lineFor(const std::string& noun, const Uid& entity)
    {
        NamedInLists named = m_names.inLists(noun, entity);
        return {noun, entity, std::move(named.name), named.date, false, {}, std::nullopt};
    }

    void addNoun(const MergedNoun& noun)
    {
        if (full())
            return;
        CameIn line = lineFor(noun.noun, noun.entity);
        line.made = noun.made;
        if (ownSight(m_session).whole() && !noun.before.empty())
            line.fields = changedFields(noun.before, noun.after);
        for (const CameInField& field : line.fields)
            for (const std::string* value : {&field.before, &field.after})
                m_names.addFrom(*value, m_page.names);
        m_page.lines.push_back(std::move(line));
    }

    Status addDecided(const Uid& visit)
    {
        const auto known = std::find_if(m_page.lines.begin(), m_page.lines.end(), [&](const CameIn& line) { return line.entity == visit; });
        if (known == m_page.lines.end() && full())
            return {};
        const auto row = m_session.store().visits().row(visit);
        if (!row)
            return fail(row.error());
        if (!*row)
            return {};                     // the visit is still to come, in another file
        CameIn& line = known == m_page.lines.end() ? m_page.lines.emplace_back(lineFor("visit", visit)) : *known;
        line.decided = (*row)->standing.state;
        return {};
    }

    Session& m_session;
    NounNames m_names;
    const TakenIn& m_taken;
    std::set<Uid> m_decided;
    CameInPage m_page;
};

Result<std::vector<std::string>> trustedOf(Session& session, const Manifest& manifest)
{
    auto keys = session.store().keys().ofPerson(manifest.authorPerson);
    if (!keys)
        return fail(keys.error());
    const auto alike = keysOfSameCode(session, manifest.authorCode, manifest.authorPerson);
    if (!alike)
        return fail(alike.error());
    keys->insert(keys->end(), alike->begin(), alike->end());
    std::vector<std::string> trusted;
    for (const KnownKey& key : *keys)
        if (key.holds() && key.key != manifest.key)
            trusted.push_back(fingerprint(publicKeyFrom(key.key).value()));
    return trusted;
}

Result<std::vector<CopiedLaptop>> copiedLaptops(Session& session, const Arrival& arrival)
{
    std::vector<CopiedLaptop> copied;
    for (const PartedChain& parted : arrival.parted) {
        const auto here = session.store().people().find(parted.here);
        if (!here)
            return fail(here.error());
        copied.push_back({parted.number, *here ? (*here)->code : std::string()});
    }
    return copied;
}

} // namespace

Result<ArrivalPage> arrivalPage(Session& session, const Arrival& arrival)
{
    const Manifest& manifest = arrival.file.manifest();
    ArrivalPage page;
    const auto author = session.store().people().find(manifest.authorPerson);
    if (!author)
        return fail(author.error());
    if (*author && ownSight(session).people)
        page.name = (*author)->name;
    const auto same = session.store().people().byCode(manifest.authorCode);
    if (!same)
        return fail(same.error());
    page.codeIsAnothers = *same && (*same)->id != manifest.authorPerson;
    auto trusted = trustedOf(session, manifest);
    if (!trusted)
        return fail(trusted.error());
    page.trusted = std::move(*trusted);
    auto copied = copiedLaptops(session, arrival);
    if (!copied)
        return fail(copied.error());
    page.copied = std::move(*copied);
    if (const auto may = mayTakeIn(session, arrival); !may)
        page.refused = may.error();
    if (const auto may = mayVouch(session); !may)
        page.noVouching = may.error();
    return page;
}

Result<CameInPage> cameInPage(Session& session, const TakenIn& taken)
{
    Page page(session, taken);
    if (auto found = page.conflicts(); !found)
        return fail(found.error());
    return page.made();
}

} // namespace cupule
