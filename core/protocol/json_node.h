// A place in a JSON tree that reads its members with a fault for each one that is not as it should be.
// Reading never stops: what is wrong gives a fault with its path and an empty value, so that all faults come
// at once.

#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/protocol/pack_reader.h"

namespace cupule {

enum class Need { required, optional };

/// One object of the tree. Whatever was not asked for when it goes out of scope is fault
/// "pack.unknown-member".
class Node {
public:
    Node(const nlohmann::json& value, std::string path, std::vector<PackFault>& faults);
    ~Node();
    Node(const Node&) = delete;
    Node& operator=(const Node&) = delete;

    /// Text that is not empty. Faults "pack.missing", "pack.type", "pack.empty".
    std::string text(std::string_view name, Need need = Need::required);
    /// A list of texts, none of them empty; a required list holds at least one.
    std::vector<std::string> texts(std::string_view name, Need need = Need::required);
    /// Faults "pack.missing", "pack.type".
    double number(std::string_view name);
    std::optional<double> maybeNumber(std::string_view name);
    /// A whole number of [least, most]. Faults "pack.missing", "pack.type", "pack.range".
    int whole(std::string_view name, int least, int most, Need need = Need::required);
    /// A list of whole numbers of [least, most], each at most once.
    std::vector<int> wholes(std::string_view name, int least, int most);
    std::vector<double> numbers(std::string_view name);
    bool flag(std::string_view name, bool whenMissing = false);

    /// One of the names of a table. Fault "pack.unknown-value" with the text met.
    template <class Value>
    Value choice(std::string_view name, std::span<const std::pair<std::string_view, Value>> table)
    {
        const std::string met = text(name);
        for (const auto& [word, value] : table)
            if (word == met)
                return value;
        if (!met.empty())
            fault(name, "pack.unknown-value", met);
        return table.front().second;
    }

    /// Calls read(Node&, index) for every object of a list; a required list holds at least one.
    template <class Read> void each(std::string_view name, Need need, Read read)
    {
        const nlohmann::json* list = find(name, need, nlohmann::json::value_t::array);
        if (list == nullptr)
            return;
        if (need == Need::required && list->empty())
            fault(name, "pack.empty");
        for (std::size_t i = 0; i < list->size(); ++i) {
            Node node((*list)[i], pathOf(name) + '/' + std::to_string(i), m_faults);
            read(node);
        }
    }

    /// Calls read(member name, Node&) for every member of an object whose members are objects.
    template <class Read> void members(std::string_view name, Need need, Read read)
    {
        const nlohmann::json* object = find(name, need, nlohmann::json::value_t::object);
        if (object == nullptr)
            return;
        for (const auto& [member, value] : object->items()) {
            Node node(value, pathOf(name) + '/' + escaped(member), m_faults);
            read(member, node);
        }
    }

    /// Calls read(Node&) for a member that is an object; false where it is not there.
    template <class Read> bool object(std::string_view name, Need need, Read read)
    {
        const nlohmann::json* value = find(name, need, nlohmann::json::value_t::object);
        if (value == nullptr)
            return false;
        Node node(*value, pathOf(name), m_faults);
        read(node);
        return true;
    }

    /// The names of all members, in order of name.
    [[nodiscard]] std::vector<std::string> names() const;
    void fault(std::string_view member, std::string code, std::string detail = {});
    [[nodiscard]] std::string pathOf(std::string_view member) const;
    [[nodiscard]] std::vector<PackFault>& faults() { return m_faults; }

private:
    static std::string escaped(std::string_view name);
    /// The member if it is there and of that type; marks it as known.
    const nlohmann::json* find(std::string_view name, Need need, nlohmann::json::value_t type);
    const nlohmann::json* findNumber(std::string_view name, Need need);
    const nlohmann::json* member(std::string_view name, Need need);
    std::optional<int> wholeIn(const nlohmann::json& value, std::string_view path, int least, int most);

    const nlohmann::json* m_value; ///< null where it is no object
    std::string m_path;
    std::vector<PackFault>& m_faults;
    std::vector<std::string> m_known;
};

} // namespace cupule
