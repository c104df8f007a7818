#include "core/task/change_settings.h"

#include <nlohmann/json.hpp>

#include "core/store/settings.h"

namespace cupule {

namespace {

using Json = nlohmann::json;

Result<std::string> storedValue(Session& session, const std::string& key)
{
    auto stored = session.store().settings().get(key);
    if (!stored)
        return fail(stored.error());
    return stored->value_or("");
}

/// What is no UTF-8 must not throw; it cannot be undone then.
std::string written(const Json& json)
{
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

} // namespace

Status changeSettings(Session& session, const std::map<std::string, std::string>& values, const std::string& what)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    Json before = Json::object(), after = Json::object();
    for (const auto& [key, value] : values) {
        const auto stored = storedValue(session, key);
        if (!stored)
            return fail(stored.error());
        if (*stored == value)
            continue;
        before[key] = *stored;
        after[key] = value;
        if (auto set = session.store().settings().set(*change, key, value); !set)
            return set;
    }
    if (after.empty())
        return {};
    // the settings are the store's, so its id stands for them
    const UndoPart part{"setting", session.info().id, written(before), written(after)};
    if (auto kept = session.store().undoLog().push(*change, what, {part}); !kept)
        return kept;
    return session.commit(*change);
}

Status applySettings(Session& session, Change& change, const UndoPart& part, const std::string& from, const std::string& to)
{
    const Json was = Json::parse(from, nullptr, false), wanted = Json::parse(to, nullptr, false);
    for (const auto& [key, value] : was.items()) {
        const auto stored = storedValue(session, key);
        if (!stored)
            return fail(stored.error());
        if (!value.is_string() || *stored != value.get<std::string>() || !wanted.contains(key) || !wanted[key].is_string())
            return fail("undo.changed-meanwhile", FaultKind::refused, {{"noun", part.noun}, {"id", part.entity.text()}});
        if (auto set = session.store().settings().set(change, key, wanted[key].get<std::string>()); !set)
            return set;
    }
    return {};
}

} // namespace cupule
