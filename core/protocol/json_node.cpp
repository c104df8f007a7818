#include "core/protocol/json_node.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/protocol/json_tree.h"

namespace cupule {

using nlohmann::json;

Node::Node(const json& value, std::string path, std::vector<PackFault>& faults)
    : m_value(value.is_object() ? &value : nullptr), m_path(std::move(path)), m_faults(faults)
{
    if (m_value == nullptr)
        m_faults.push_back({m_path, "pack.type", "object"});
}

Node::~Node()
{
    if (m_value == nullptr)
        return;
    for (const auto& [name, value] : m_value->items())
        if (std::find(m_known.begin(), m_known.end(), name) == m_known.end())
            m_faults.push_back({pathOf(name), "pack.unknown-member", name});
}

std::string Node::escaped(std::string_view name)
{
    return pathPart(name);
}

std::string Node::pathOf(std::string_view member) const
{
    return m_path + '/' + pathPart(member);
}

void Node::fault(std::string_view member, std::string code, std::string detail)
{
    m_faults.push_back({pathOf(member), std::move(code), std::move(detail)});
}

std::vector<std::string> Node::names() const
{
    std::vector<std::string> all;
    if (m_value != nullptr)
        for (const auto& [name, value] : m_value->items())
            all.push_back(name);
    return all;
}

const json* Node::member(std::string_view name, Need need)
{
    m_known.emplace_back(name);
    if (m_value == nullptr)
        return nullptr;
    const auto found = m_value->find(std::string(name));
    if (found != m_value->end())
        return &*found;
    if (need == Need::required)
        fault(name, "pack.missing");
    return nullptr;
}

const json* Node::find(std::string_view name, Need need, json::value_t type)
{
    const json* value = member(name, need);
    if (value == nullptr || value->type() == type)
        return value;
    fault(name, "pack.type", json(type).type_name());
    return nullptr;
}

const json* Node::findNumber(std::string_view name, Need need)
{
    const json* value = member(name, need);
    if (value == nullptr || value->is_number())
        return value;
    fault(name, "pack.type", "number");
    return nullptr;
}

std::string Node::text(std::string_view name, Need need)
{
    const json* value = find(name, need, json::value_t::string);
    if (value == nullptr)
        return {};
    const auto& met = value->get_ref<const std::string&>();
    if (trim(met).empty())
        fault(name, "pack.empty");
    return met;
}

std::vector<std::string> Node::texts(std::string_view name, Need need)
{
    std::vector<std::string> all;
    const json* list = find(name, need, json::value_t::array);
    if (list == nullptr)
        return all;
    if (need == Need::required && list->empty())
        fault(name, "pack.empty");
    for (std::size_t i = 0; i < list->size(); ++i) {
        const json& entry = (*list)[i];
        const std::string path = pathOf(name) + '/' + std::to_string(i);
        if (!entry.is_string())
            m_faults.push_back({path, "pack.type", "string"});
        else if (trim(entry.get_ref<const std::string&>()).empty())
            m_faults.push_back({path, "pack.empty", {}});
        all.push_back(entry.is_string() ? entry.get<std::string>() : std::string{});
    }
    return all;
}

double Node::number(std::string_view name)
{
    const json* value = findNumber(name, Need::required);
    return value == nullptr ? 0 : value->get<double>();
}

std::optional<double> Node::maybeNumber(std::string_view name)
{
    const json* value = findNumber(name, Need::optional);
    return value == nullptr ? std::nullopt : std::optional(value->get<double>());
}

std::optional<int> Node::wholeIn(const json& value, std::string_view path, int least, int most)
{
    if (!value.is_number()) {
        m_faults.push_back({std::string(path), "pack.type", "whole number"});
        return std::nullopt;
    }
    const double met = value.get<double>();
    if (met < least || met > most) {
        m_faults.push_back(
            {std::string(path), "pack.range", std::to_string(least) + " to " + std::to_string(most)});
        return std::nullopt;
    }
    if (met != static_cast<double>(static_cast<int>(met))) {
        m_faults.push_back({std::string(path), "pack.type", "whole number"});
        return std::nullopt;
    }
    return static_cast<int>(met);
}

int Node::whole(std::string_view name, int least, int most, Need need)
{
    const json* value = member(name, need);
    return value == nullptr ? 0 : wholeIn(*value, pathOf(name), least, most).value_or(0);
}

std::vector<int> Node::wholes(std::string_view name, int least, int most)
{
    std::vector<int> all;
    const json* list = find(name, Need::required, json::value_t::array);
    if (list == nullptr)
        return all;
    if (list->empty())
        fault(name, "pack.empty");
    for (std::size_t i = 0; i < list->size(); ++i) {
        const std::string path = pathOf(name) + '/' + std::to_string(i);
        const auto met = wholeIn((*list)[i], path, least, most);
        if (met && std::find(all.begin(), all.end(), *met) != all.end())
            m_faults.push_back({path, "pack.duplicate", std::to_string(*met)});
        else if (met)
            all.push_back(*met);
    }
    return all;
}

std::vector<double> Node::numbers(std::string_view name)
{
    std::vector<double> all;
    const json* list = find(name, Need::required, json::value_t::array);
    if (list == nullptr)
        return all;
    for (std::size_t i = 0; i < list->size(); ++i) {
        const json& entry = (*list)[i];
        if (!entry.is_number())
            m_faults.push_back({pathOf(name) + '/' + std::to_string(i), "pack.type", "number"});
        all.push_back(entry.is_number() ? entry.get<double>() : 0);
    }
    return all;
}

bool Node::flag(std::string_view name, bool whenMissing)
{
    const json* value = find(name, Need::optional, json::value_t::boolean);
    return value == nullptr ? whenMissing : value->get<bool>();
}

} // namespace cupule
