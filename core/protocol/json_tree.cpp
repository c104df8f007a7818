#include "core/protocol/json_tree.h"

#include <algorithm>
#include <string>
#include <utility>

namespace cupule {

namespace {

using nlohmann::json;

constexpr std::size_t deepest = 24;

/// An object or array that is still open. `name` is the member that is being read, or the one to drop.
struct Open {
    json value;
    std::string name;
    bool repeated = false;
};

class TreeBuilder final : public nlohmann::json_sax<json> {
public:
    TreeBuilder(std::string_view text, std::vector<PackFault>& faults) : m_text(text), m_faults(faults) {}

    bool null() override { return put(nullptr); }
    bool boolean(bool value) override { return put(value); }
    bool number_integer(number_integer_t value) override { return put(value); }
    bool number_unsigned(number_unsigned_t value) override { return put(value); }
    bool number_float(number_float_t value, const string_t&) override { return put(value); }
    bool string(string_t& value) override { return put(std::move(value)); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(json::object()); }
    bool start_array(std::size_t) override { return open(json::array()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override
    {
        Open& top = m_open.back();
        top.name = name;
        top.repeated = top.value.contains(name);
        if (top.repeated)
            m_faults.push_back({path(), "pack.duplicate-member", name});
        return true;
    }

    bool parse_error(std::size_t position, const std::string&,
                     const nlohmann::detail::exception& error) override
    {
        const std::string_view before = m_text.substr(0, position);
        const auto line = 1 + std::count(before.begin(), before.end(), '\n');
        m_faults.push_back(
            {"", "pack.syntax",
             "line " + std::to_string(line) + ", byte " + std::to_string(position) + ": " + error.what()});
        return false;
    }

    std::optional<json> takeRoot() { return std::move(m_root); }

private:
    [[nodiscard]] std::string path() const
    {
        std::string text;
        for (const Open& open : m_open)
            text += '/' + (open.value.is_array() ? std::to_string(open.value.size()) : pathPart(open.name));
        return text;
    }

    bool open(json value)
    {
        if (m_open.size() == deepest) {
            m_faults.push_back({path(), "pack.too-deep", std::to_string(deepest)});
            return false;
        }
        m_open.push_back({std::move(value), {}, false});
        return true;
    }

    bool close()
    {
        json value = std::move(m_open.back().value);
        m_open.pop_back();
        return put(std::move(value));
    }

    bool put(json value)
    {
        if (m_open.empty()) {
            m_root = std::move(value);
            return true;
        }
        Open& top = m_open.back();
        if (top.value.is_array())
            top.value.push_back(std::move(value));
        else if (!top.repeated)
            top.value[top.name] = std::move(value);
        return true;
    }

    std::string_view m_text;
    std::vector<PackFault>& m_faults;
    std::vector<Open> m_open;
    std::optional<json> m_root;
};

} // namespace

std::optional<json> readTree(std::string_view text, std::vector<PackFault>& faults)
{
    TreeBuilder builder(text, faults);
    if (!json::sax_parse(text.begin(), text.end(), &builder))
        return std::nullopt;
    return builder.takeRoot();
}

std::string pathPart(std::string_view name)
{
    std::string part;
    for (const char c : name) {
        if (c == '~')
            part += "~0";
        else if (c == '/')
            part += "~1";
        else
            part += c;
    }
    return part;
}

} // namespace cupule
