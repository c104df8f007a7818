#include "core/store/merge_join.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <map>
#include <optional>
#include <set>

#include <nlohmann/json.hpp>

namespace cupule {

namespace {

using Json = nlohmann::json;

/// Fields by path, each as JSON text.
using Fields = std::map<std::string, std::string>;

constexpr std::array<const char*, 4> idMembers{"character", "sign", "id", "heading"};

/// The member that names each entry of a list differently, or null.
const char* idMemberOf(const Json& list)
{
    for (const char* member : idMembers) {
        std::set<std::string> seen;
        const bool all = !list.empty() && std::all_of(list.begin(), list.end(), [&](const Json& entry) {
            return entry.is_object() && entry.contains(member) && entry[member].is_string()
                   && seen.insert(entry[member].get<std::string>()).second;
        });
        if (all)
            return member;
    }
    return nullptr;
}

/// `whole` names lists that are one field, because in some revision their entries cannot be told apart.
Fields fieldsOf(const Json& content, const std::set<std::string>& whole)
{
    Fields fields;
    for (const auto& [name, value] : content.items()) {
        const char* id = value.is_array() && !whole.contains(name) ? idMemberOf(value) : nullptr;
        if (id != nullptr)
            for (const Json& entry : value)
                fields[name + "/" + entry[id].get<std::string>()] = entry.dump();
        else if (value.is_object() && (name == "effort" || name == "hygiene"))
            for (const auto& [inner, one] : value.items())
                fields[name + "/" + inner] = one.dump();
        else
            fields[name] = value.dump();
    }
    return fields;
}

std::string valueIn(const Fields& fields, const std::string& path)
{
    const auto found = fields.find(path);
    return found == fields.end() ? std::string() : found->second;
}

struct Node {
    const GraphRevision* revision = nullptr;
    Json content;
    Fields fields;
    std::vector<std::size_t> parents;      ///< known ones
    std::set<std::size_t> ancestors;       ///< known ones, all the way
};

class Graph {
public:
    Status build(const std::vector<GraphRevision>& revisions)
    {
        for (const GraphRevision& revision : revisions) {
            if (!m_places.emplace(revision.id, m_nodes.size()).second)
                continue;
            Node node{&revision, Json::parse(revision.content, nullptr, false), {}, {}, {}};
            if (!node.content.is_object())
                return fail("record.json", FaultKind::data, {{"path", ""}, {"why", "type"}});
            for (const auto& [name, value] : node.content.items())
                if (value.is_array() && !value.empty() && idMemberOf(value) == nullptr)
                    m_whole.insert(name);
            m_nodes.push_back(std::move(node));
        }
        for (Node& node : m_nodes) {
            node.fields = fieldsOf(node.content, m_whole);
            for (const Uid& parent : node.revision->parents)
                if (const auto at = m_places.find(parent); at != m_places.end())
                    node.parents.push_back(at->second);
        }
        return findAncestors();
    }

    /// Those who are nobody's parent, by id.
    [[nodiscard]] std::vector<std::size_t> heads() const
    {
        std::set<std::size_t> parents;
        for (const Node& node : m_nodes)
            parents.insert(node.parents.begin(), node.parents.end());
        std::vector<std::size_t> heads;
        for (const auto& [id, at] : m_places)
            if (!parents.contains(at))
                heads.push_back(at);
        return heads;
    }

    [[nodiscard]] std::set<std::string> paths() const
    {
        std::set<std::string> paths;
        for (const Node& node : m_nodes)
            for (const auto& [path, value] : node.fields)
                paths.insert(path);
        return paths;
    }

    /// Who speaks about a field and is not spoken over, by id.
    [[nodiscard]] std::vector<std::size_t> last(const std::string& path) const
    {
        std::set<std::size_t> speak, over;
        for (std::size_t at = 0; at < m_nodes.size(); ++at)
            if (speaks(m_nodes[at], path)) {
                speak.insert(at);
                over.insert(m_nodes[at].ancestors.begin(), m_nodes[at].ancestors.end());
            }
        std::vector<std::size_t> left;
        for (const auto& [id, at] : m_places)
            if (speak.contains(at) && !over.contains(at))
                left.push_back(at);
        return left;
    }

    [[nodiscard]] const Node& node(std::size_t at) const { return m_nodes[at]; }

private:
    bool speaks(const Node& node, const std::string& path) const
    {
        const std::string mine = valueIn(node.fields, path);
        if (node.parents.empty())
            return !mine.empty();
        return std::any_of(node.parents.begin(), node.parents.end(),
                           [&](std::size_t parent) { return valueIn(m_nodes[parent].fields, path) != mine; });
    }

    /// From those without parents on; who is never reached stands in a circle.
    Status findAncestors()
    {
        std::vector<std::size_t> waiting(m_nodes.size());
        std::vector<std::vector<std::size_t>> children(m_nodes.size());
        std::vector<std::size_t> ready;
        for (std::size_t at = 0; at < m_nodes.size(); ++at) {
            waiting[at] = m_nodes[at].parents.size();
            for (const std::size_t parent : m_nodes[at].parents)
                children[parent].push_back(at);
            if (waiting[at] == 0)
                ready.push_back(at);
        }
        std::size_t done = 0;
        for (; done < ready.size(); ++done) {
            const std::size_t at = ready[done];
            for (const std::size_t child : children[at]) {
                m_nodes[child].ancestors.insert(at);
                m_nodes[child].ancestors.insert(m_nodes[at].ancestors.begin(), m_nodes[at].ancestors.end());
                if (--waiting[child] == 0)
                    ready.push_back(child);
            }
        }
        return done == m_nodes.size() ? Status() : Status(fail("store.cycle", FaultKind::data));
    }

    std::vector<Node> m_nodes;
    std::map<Uid, std::size_t> m_places;
    std::set<std::string> m_whole;
};

/// Puts fields together again. Lists keep the order of the heads, one after the other; what no head has comes last, by path.
class Assembler {
public:
    Assembler(const Graph& graph, std::vector<std::size_t> heads) : m_graph(graph), m_heads(std::move(heads)) {}

    std::string assemble(const Fields& fields) const
    {
        Json content = Json::object();
        for (const auto& [path, value] : fields) {
            const auto slash = path.find('/');
            if (slash == std::string::npos)
                content[path] = Json::parse(value);
            else if (path.starts_with("effort/") || path.starts_with("hygiene/"))
                content[path.substr(0, slash)][path.substr(slash + 1)] = Json::parse(value);
            else if (!content.contains(path.substr(0, slash)))
                content[path.substr(0, slash)] = list(path.substr(0, slash), fields);
        }
        return content.dump();
    }

private:
    Json list(const std::string& name, const Fields& fields) const
    {
        Json out = Json::array();
        std::set<std::string> placed;
        const auto place = [&](const std::string& path) {
            const auto found = fields.find(path);
            if (found != fields.end() && placed.insert(path).second)
                out.push_back(Json::parse(found->second));
        };
        for (const std::size_t head : m_heads) {
            const Json& content = m_graph.node(head).content;
            const auto there = content.find(name);
            const char* id = there != content.end() && there->is_array() ? idMemberOf(*there) : nullptr;
            if (id != nullptr)
                for (const Json& entry : *there)
                    place(name + "/" + entry[id].get<std::string>());
        }
        for (auto at = fields.lower_bound(name + "/"); at != fields.end() && at->first.starts_with(name + "/"); ++at)
            place(at->first);
        return out;
    }

    const Graph& m_graph;
    std::vector<std::size_t> m_heads;
};

} // namespace

Result<std::string> changedAlike(const std::string& base, const std::string& before, const std::string& after)
{
    std::vector<GraphRevision> three{{{}, {}, base}, {{}, {}, before}, {{}, {}, after}};
    for (std::size_t at = 0; at < three.size(); ++at)
        three[at].id.bytes.back() = static_cast<std::uint8_t>(at + 1);
    Graph graph;
    if (auto built = graph.build(three); !built)
        return fail(built.error());
    Fields fields = graph.node(0).fields;
    for (const std::string& path : graph.paths()) {
        const std::string wanted = valueIn(graph.node(2).fields, path);
        if (wanted == valueIn(graph.node(1).fields, path))
            continue;
        if (wanted.empty())
            fields.erase(path);
        else
            fields[path] = wanted;
    }
    return Assembler(graph, {2, 0}).assemble(fields);
}

Result<JoinedNoun> joinRevisions(const std::vector<GraphRevision>& revisions)
{
    assert(!revisions.empty());
    Graph graph;
    if (auto built = graph.build(revisions); !built)
        return fail(built.error());
    const auto heads = graph.heads();
    JoinedNoun joined;
    for (const std::size_t head : heads)
        joined.heads.push_back(graph.node(head).revision->id);
    if (heads.size() == 1) {
        joined.content = graph.node(heads.front()).revision->content;
        return joined;
    }
    Fields fields;
    for (const std::string& path : graph.paths()) {
        const auto last = graph.last(path);
        FieldConflict conflict{path, {}};
        std::set<std::string> values;
        for (const std::size_t at : last) {
            conflict.sides.push_back({graph.node(at).revision->id, valueIn(graph.node(at).fields, path)});
            values.insert(conflict.sides.back().value);
        }
        if (!conflict.sides.empty() && !conflict.sides.back().value.empty())
            fields[path] = conflict.sides.back().value;
        if (values.size() > 1)
            joined.conflicts.push_back(std::move(conflict));
    }
    joined.content = Assembler(graph, heads).assemble(fields);
    return joined;
}

} // namespace cupule
