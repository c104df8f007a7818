#include "core/task/noun_names.h"

#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/samples.h"
#include "core/store/visits.h"
#include "core/task/sight.h"

namespace cupule {

std::string NounNames::of(const Uid& id)
{
    if (id.isNull())
        return {};
    if (const auto person = m_session.store().people().find(id); person && *person)
        return (*person)->code;
    if (const auto tree = m_session.store().trees().find(id); tree && *tree)
        return (*tree)->label;
    if (const auto site = m_session.store().sites().find(id); site && *site)
        return ownSight(m_session).places ? (*site)->name : std::string();
    if (const auto photo = m_session.store().photos().find(id); photo && *photo)
        return ownSight(m_session).whole() ? (*photo)->originalName : std::string();
    if (const auto sample = m_session.store().samples().find(id); sample && *sample)
        return (*sample)->number;
    return {};
}

NamedInLists NounNames::inLists(const std::string& noun, const Uid& id)
{
    if (noun != "visit")
        return {of(id), std::nullopt};
    const auto row = m_session.store().visits().row(id);
    return row && *row ? NamedInLists{(*row)->treeLabel, (*row)->date} : NamedInLists{};
}

void NounNames::addFrom(const std::string& json, std::map<std::string, std::string>& known)
{
    constexpr std::size_t length = 36;
    for (std::size_t at = json.find('"'); at != std::string::npos; at = json.find('"', at + 1)) {
        const std::string text = json.substr(at + 1, length);
        const bool closed = json.size() > at + 1 + length && json[at + 1 + length] == '"';
        if (!closed || known.contains(text))
            continue;
        if (const auto id = Uid::parse(text))
            known[text] = of(*id);
    }
}

} // namespace cupule
