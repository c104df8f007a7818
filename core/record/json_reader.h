// Reads what json_writer.h writes, by the same descriptions. Strict: a missing, unknown or doubled member, a wrong type and
// an unknown name are all refused with the path at which they stand. Stays inside core/record.

#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/civil.h"
#include "core/base/uid.h"
#include "core/record/json_value.h"
#include "core/record/json_writer.h"

namespace cupule::json {

/// Thrown inside core/record only.
struct Bad {
    std::string path;
    std::string why;   ///< "syntax", "missing", "unknown", "doubled", "type", "value"
};

std::optional<Instant> readMoment(std::string_view text);

class Reader {
public:
    template <class T>
    void operator()(std::string_view key, T& value, const T& normal)
    {
        value = normal;
        (*this)(key, value);
    }
    template <class T>
    void operator()(std::string_view key, T& value)
    {
        if (const Value* found = m_object->member(key))
            member(key, *found, value);
    }
    template <class T>
    void required(std::string_view key, T& value)
    {
        const Value* found = m_object->member(key);
        if (found == nullptr)
            throw Bad{m_path + '/' + std::string(key), "missing"};
        member(key, *found, value);
    }
    template <class T>
    void object(const Value& from, T& value)
    {
        if (from.kind != Value::Kind::object)
            wrong("type");
        const Value* outer = m_object;
        const std::size_t outerFirst = std::exchange(m_first, m_taken.size());
        m_object = &from;
        describe(*this, value);
        refuseUnknown();
        m_object = outer;
        m_taken.resize(std::exchange(m_first, outerFirst));
    }
    /// Members read so far, in all objects; fewer than were written means that a name stood twice.
    [[nodiscard]] std::size_t members() const { return m_members; }

private:
    template <class T>
    void member(std::string_view key, const Value& from, T& value)
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
        if (m_taken.size() - m_first == m_object->count)
            return;
        const auto mine = m_taken.begin() + static_cast<std::ptrdiff_t>(m_first);
        for (const Value* each = m_object->begin(); each != m_object->end(); each = each->next())
            if (std::find(mine, m_taken.end(), each->key) == m_taken.end())
                throw Bad{m_path + '/' + std::string(each->key), "unknown"};
    }
    [[noreturn]] void wrong(const char* why) const { throw Bad{m_path, why}; }

    std::string_view string(const Value& from) const
    {
        if (from.kind != Value::Kind::string)
            wrong("type");
        return from.text;
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

    void read(const Value& from, std::string& value) { value = string(from); }
    void read(const Value& from, Uid& value) { value = valueOr(Uid::parse(string(from))); }
    void read(const Value& from, CivilDate& value) { value = valueOr(CivilDate::parse(string(from))); }
    void read(const Value& from, LocalTime& value) { value = valueOr(LocalTime::parse(string(from))); }
    void read(const Value& from, Instant& value) { value = valueOr(readMoment(string(from))); }
    void read(const Value& from, bool& value)
    {
        if (from.kind != Value::Kind::boolean)
            wrong("type");
        value = from.whole != 0;
    }
    void read(const Value& from, double& value)
    {
        if (from.kind != Value::Kind::real && from.kind != Value::Kind::whole)
            wrong("type");
        value = from.kind == Value::Kind::real ? from.real : static_cast<double>(from.whole);
    }
    template <std::integral T>
    void read(const Value& from, T& value)
    {
        if (from.kind != Value::Kind::whole)
            wrong("type");
        const std::int64_t wide = from.whole;
        if (wide < std::numeric_limits<T>::min() || wide > std::numeric_limits<T>::max())
            wrong("value");
        value = static_cast<T>(wide);
    }
    template <class T>
        requires std::is_enum_v<T>
    void read(const Value& from, T& value) { value = valueOr(fromName<T>(string(from))); }
    template <class T>
    void read(const Value& from, std::optional<T>& value)
    {
        T inner{};
        read(from, inner);
        value = std::move(inner);
    }
    template <class T>
    void read(const Value& from, std::vector<T>& values)
    {
        if (from.kind != Value::Kind::array)
            wrong("type");
        values.clear();
        values.reserve(from.count);
        const std::size_t length = m_path.size();
        for (const Value* each = from.begin(); each != from.end(); each = each->next()) {
            m_path += '/' + std::to_string(values.size());
            read(*each, values.emplace_back());
            m_path.resize(length);
        }
    }
    template <class T>
        requires std::is_class_v<T>
    void read(const Value& from, T& value) { object(from, value); }

    const Value* m_object = nullptr;
    std::string m_path;
    std::vector<std::string_view> m_taken; // of this object and those around it
    std::size_t m_first = 0;               // where those of this object begin
    std::size_t m_members = 0;
};

} // namespace cupule::json
