#include "core/task/join.h"

#include <cassert>
#include <optional>
#include <set>

#include <nlohmann/json.hpp>

namespace cupule {

namespace {

using Json = nlohmann::json;

/// The member that names the entries of a list, or null where they have none.
const char* keyOf(const Json& list)
{
    for (const char* key : {"character", "sign", "id", "heading"}) {
        bool all = !list.empty();
        std::set<std::string> seen;
        for (const auto& entry : list)
            all = all && entry.is_object() && entry.contains(key) && entry[key].is_string() &&
                  seen.insert(entry[key].get<std::string>()).second;
        if (all)
            return key;
    }
    return nullptr;
}

/// A list as an object of its entries by key; empty lists are empty objects.
Json byKey(const Json& list, const char* key)
{
    Json object = Json::object();
    for (const auto& entry : list)
        object[entry[key].get<std::string>()] = entry;
    return object;
}

bool same(const Json* a, const Json* b)
{
    return a == nullptr || b == nullptr ? a == b : *a == *b;
}

std::optional<Json> copyOf(const Json* value)
{
    return value == nullptr ? std::nullopt : std::optional<Json>(*value);
}

struct Joiner {
    std::vector<std::string> conflicts;

    /// Null stands for "is not there".
    std::optional<Json> join(const Json* base, const Json* ours, const Json* theirs, const std::string& path)
    {
        if (same(ours, theirs) || same(base, ours))
            return copyOf(theirs);
        if (same(base, theirs))
            return copyOf(ours);
        if (ours != nullptr && theirs != nullptr && ours->is_object() && theirs->is_object())
            return joinObjects(base != nullptr && base->is_object() ? *base : Json::object(), *ours, *theirs,
                               path);
        if (ours != nullptr && theirs != nullptr && ours->is_array() && theirs->is_array() &&
            (base == nullptr || base->is_array()))
            return joinLists(base == nullptr ? Json::array() : *base, *ours, *theirs, path);
        conflicts.push_back(path);
        return copyOf(theirs);
    }

    Json joinObjects(const Json& base, const Json& ours, const Json& theirs, const std::string& path)
    {
        std::set<std::string> names;
        for (const Json* each : {&base, &ours, &theirs})
            for (const auto& [name, value] : each->items())
                names.insert(name);
        const auto member = [](const Json& object, const std::string& name) {
            const auto found = object.find(name);
            return found == object.end() ? nullptr : &*found;
        };
        Json out = Json::object();
        for (const auto& name : names) {
            auto value = join(member(base, name), member(ours, name), member(theirs, name),
                              path.empty() ? name : path + "/" + name);
            if (value)
                out[name] = std::move(*value);
        }
        return out;
    }

    Json joinLists(const Json& base, const Json& ours, const Json& theirs, const std::string& path)
    {
        const char* key = nullptr;
        for (const Json* list : {&base, &ours, &theirs}) {
            if (list->empty())
                continue;
            const char* here = keyOf(*list);
            if (here == nullptr || (key != nullptr && std::string(key) != here)) {
                conflicts.push_back(path);
                return theirs;
            }
            key = here;
        }
        if (key == nullptr)
            return theirs;
        const Json merged = joinObjects(byKey(base, key), byKey(ours, key), byKey(theirs, key), path);
        Json out = Json::array();
        std::set<std::string> placed;
        for (const Json* list : {&theirs, &ours}) // theirs keep their order, what only we have comes after
            for (const auto& entry : *list) {
                const auto id = entry[key].get<std::string>();
                if (merged.contains(id) && placed.insert(id).second)
                    out.push_back(merged[id]);
            }
        return out;
    }
};

} // namespace

Joined joinContents(const std::string& base, const std::string& ours, const std::string& theirs)
{
    const auto parse = [](const std::string& text) {
        Json json = Json::parse(text, nullptr, false);
        assert(json.is_object());
        return json;
    };
    Joiner joiner;
    const Json content = joiner.joinObjects(parse(base), parse(ours), parse(theirs), "");
    return {content.dump(), std::move(joiner.conflicts)};
}

} // namespace cupule
