#include "core/store/field_path.h"

#include <algorithm>
#include <array>

#include <nlohmann/json.hpp>

namespace cupule {

namespace {

using Json = nlohmann::json;

constexpr std::array<const char*, 4> idMembers{"character", "sign", "id", "heading"}; // as joinRevisions has them

bool isNamed(const Json& entry, const std::string& id)
{
    return entry.is_object() && std::any_of(idMembers.begin(), idMembers.end(), [&](const char* member) {
        const auto found = entry.find(member);
        return found != entry.end() && *found == id;
    });
}

/// The id of an entry, or nothing where it has none.
std::string nameOf(const Json& entry)
{
    for (const char* member : idMembers)
        if (const auto found = entry.find(member); found != entry.end() && found->is_string())
            return found->get<std::string>();
    return {};
}

void setEntry(Json& list, const std::string& id, const Json& value)
{
    const auto at = std::find_if(list.begin(), list.end(), [&](const Json& entry) { return isNamed(entry, id); });
    if (at == list.end()) {
        if (!value.is_null())
            list.push_back(value);
    } else if (value.is_null()) {
        list.erase(at);
    } else {
        *at = value;
    }
}

void setMember(Json& object, const std::string& name, const Json& value)
{
    if (value.is_null())
        object.erase(name);
    else
        object[name] = value;
}

} // namespace

Result<std::string> withField(const std::string& content, std::string_view path, const std::string& value)
{
    Json json = Json::parse(content, nullptr, false);
    const Json wanted = value.empty() ? Json(nullptr) : Json::parse(value, nullptr, false);
    const auto slash = path.find('/');
    const std::string name(path.substr(0, slash));
    const auto wrong = [&] { return fail("record.json", FaultKind::data, {{"path", std::string(path)}, {"why", "type"}}); };
    if (!json.is_object() || wanted.is_discarded() || name.empty())
        return wrong();
    if (slash == std::string_view::npos) {
        setMember(json, name, wanted);
        return json.dump();
    }
    const std::string inner(path.substr(slash + 1));
    const bool isObject = wanted.is_object() && isNamed(wanted, inner);
    if (!json.contains(name))
        json[name] = isObject ? Json::array() : Json::object();
    if (json[name].is_array())
        setEntry(json[name], inner, wanted);
    else if (json[name].is_object())
        setMember(json[name], inner, wanted);
    else
        return wrong();
    if (json[name].empty())
        json.erase(name);
    return json.dump();
}

std::string fieldOf(const std::string& content, std::string_view path)
{
    const Json json = Json::parse(content, nullptr, false);
    const auto slash = path.find('/');
    const auto member = json.is_object() ? json.find(std::string(path.substr(0, slash))) : json.end();
    if (member == json.end())
        return {};
    if (slash == std::string_view::npos)
        return member->dump();
    const std::string inner(path.substr(slash + 1));
    if (member->is_object())
        return member->contains(inner) ? (*member)[inner].dump() : std::string();
    const auto entry = std::find_if(member->begin(), member->end(), [&](const Json& one) { return isNamed(one, inner); });
    return entry == member->end() ? std::string() : entry->dump();
}

std::vector<std::string> fieldPaths(const std::string& content)
{
    const Json json = Json::parse(content, nullptr, false);
    std::vector<std::string> paths;
    if (!json.is_object())
        return paths;
    for (const auto& [name, value] : json.items()) {
        if (value.is_object() && (name == "effort" || name == "hygiene"))
            for (const auto& [inner, one] : value.items())
                paths.push_back(name + "/" + inner);
        else if (value.is_array() && std::all_of(value.begin(), value.end(), [](const Json& entry) { return entry.is_object(); }))
            for (const Json& entry : value)
                paths.push_back(name + "/" + nameOf(entry));
        else
            paths.push_back(name);
    }
    return paths;
}

} // namespace cupule
