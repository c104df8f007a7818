// Reads what json_writer.h writes, by the same descriptions. Strict: a missing, unknown or doubled member, a wrong type and
// an unknown name are all refused with the path at which they stand. Stays inside core/record.

#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/base/civil.h"
#include "core/base/uid.h"
#include "core/record/json_writer.h"

namespace cupule::json {

/// Thrown inside core/record only.
struct Bad {
    std::string path;
    std::string why;   ///< "syntax", "missing", "unknown", "doubled", "type", "value"
};

std::optional<Instant> readMoment(const std::string& text);

class Reader {
public:
    using Json = nlohmann::json;

    template <class T>
    void operator()(std::string_view key, T& value, const T& normal)
    {
        value = normal;
        (*this)(key, value);
    }
    template <class T>
    void operator()(std::string_view key, T& value)
    {
        const auto found = m_object->find(key);
        if (found != m_object->end())
            member(key, *found, value);
    }
    template <class T>
    void required(std::string_view key, T& value)
    {
        const auto found = m_object->find(key);
        if (found == m_object->end())
            throw Bad{m_path + '/' + std::string(key), "missing"};
        member(key, *found, value);
    }
    template <class T>
    void object(const Json& from, T& value)
    {
        if (!from.is_object())
            wrong("type");
        const Json* outer = m_object;
        std::vector<std::string_view> outerTaken = std::move(m_taken);
        m_object = &from;
        m_taken.clear();
        describe(*this, value);
        refuseUnknown();
        m_object = outer;
        m_taken = std::move(outerTaken);
    }
    /// Members read so far, in all objects; fewer than were written means that a name stood twice.
    [[nodiscard]] std::size_t members() const { return m_members; }

private:
    template <class T>
    void member(std::string_view key, const Json& from, T& value)
    {
        m_taken.push_back(key);
        ++m_members;
        const std::size_t length = m_path.size();
        m_path += '/';
        m_path += key;
        read(from, value);
        m_path.resize(length);
    }
    void refuseUnknown() const
    {
        if (m_taken.size() == m_object->size())
            return;
        for (const auto& item : m_object->items())
            if (std::find(m_taken.begin(), m_taken.end(), item.key()) == m_taken.end())
                throw Bad{m_path + '/' + item.key(), "unknown"};
    }
    [[noreturn]] void wrong(const char* why) const { throw Bad{m_path, why}; }

    const std::string& string(const Json& from) const
    {
        if (!from.is_string())
            wrong("type");
        return from.get_ref<const std::string&>();
    }
    template <class T>
    T valueOr(std::optional<T> value) const
    {
        if (!value)
            wrong("value");
        return *value;
    }
    template <class T>
    T valueOr(const Result<T>& value) const
    {
        if (!value)
            wrong("value");
        return *value;
    }

    void read(const Json& from, std::string& value) { value = string(from); }
    void read(const Json& from, Uid& value) { value = valueOr(Uid::parse(string(from))); }
    void read(const Json& from, CivilDate& value) { value = valueOr(CivilDate::parse(string(from))); }
    void read(const Json& from, LocalTime& value) { value = valueOr(LocalTime::parse(string(from))); }
    void read(const Json& from, Instant& value) { value = valueOr(readMoment(string(from))); }
    void read(const Json& from, bool& value)
    {
        if (!from.is_boolean())
            wrong("type");
        value = from.get<bool>();
    }
    void read(const Json& from, double& value)
    {
        if (!from.is_number())
            wrong("type");
        value = from.get<double>();
    }
    template <std::integral T>
    void read(const Json& from, T& value)
    {
        if (!from.is_number_integer() || (from.is_number_unsigned() && from.get<std::uint64_t>() > 1ULL << 62))
            wrong("type");
        const auto wide = from.get<std::int64_t>();
        if (wide < std::numeric_limits<T>::min() || wide > std::numeric_limits<T>::max())
            wrong("value");
        value = static_cast<T>(wide);
    }
    template <class T>
        requires std::is_enum_v<T>
    void read(const Json& from, T& value) { value = valueOr(fromName<T>(string(from))); }
    template <class T>
    void read(const Json& from, std::optional<T>& value)
    {
        T inner{};
        read(from, inner);
        value = std::move(inner);
    }
    template <class T>
    void read(const Json& from, std::vector<T>& values)
    {
        if (!from.is_array())
            wrong("type");
        values.clear();
        values.reserve(from.size());
        const std::size_t length = m_path.size();
        for (std::size_t i = 0; i < from.size(); ++i) {
            m_path += '/' + std::to_string(i);
            read(from[i], values.emplace_back());
            m_path.resize(length);
        }
    }
    template <class T>
        requires std::is_class_v<T>
    void read(const Json& from, T& value) { object(from, value); }

    const Json* m_object = nullptr;
    std::string m_path;
    std::vector<std::string_view> m_taken;
    std::size_t m_members = 0;
};

} // namespace cupule::json
