// Writes canonical JSON (RFC 8785): members in the order in which they are given (which the descriptions keep sorted),
// no blanks, numbers as ECMAScript writes them, only what must be escaped is escaped. Members at their default are left out.
// Stays inside core/record; core/store uses toJson and appendJson.

#pragma once

#include <charconv>
#include <cmath>
#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "core/base/civil.h"
#include "core/base/text.h"
#include "core/base/uid.h"
#include "core/record/names.h"

namespace cupule::json {

template <class T, class U>
concept Like = std::same_as<std::remove_const_t<T>, U>;

/// Text of a moment that keeps "offset unknown" apart from "offset 0": RFC 3339, section 4.3, "-00:00".
std::string momentText(const Instant& at);
/// ECMAScript's Number::toString; the value must be finite.
void appendNumber(std::string& out, double value);
/// False where the text is no UTF-8 (it is then written as it is).
bool appendQuoted(std::string& out, std::string_view text);
void appendUid(std::string& out, const Uid& id);

class Writer {
public:
    explicit Writer(std::string& out) : m_out(out) {}
    /// False once something was met that JSON cannot hold: a number that is not finite, text that is no UTF-8.
    [[nodiscard]] bool faithful() const { return m_faithful; }

    template <class T>
    void operator()(std::string_view key, const T& value, const T& normal)
    {
        if (value != normal)
            required(key, value);
    }
    template <class T>
    void operator()(std::string_view key, const T& value)
    {
        if (!plain(value))
            required(key, value);
    }
    template <class T>
    void required(std::string_view key, const T& value)
    {
        if (!m_first)
            m_out += ',';
        m_first = false;
        m_out += '"';
        m_out += key;
        m_out += "\":";
        write(value);
    }
    template <class T>
    void object(const T& value)
    {
        const bool outer = m_first;
        m_first = true;
        m_out += '{';
        describe(*this, value);
        m_out += '}';
        m_first = outer;
    }

private:
    static bool plain(const std::string& value) { return value.empty(); }
    static bool plain(const Uid& value) { return value.isNull(); }
    template <class T>
    static bool plain(const std::vector<T>& value) { return value.empty(); }
    template <class T>
    static bool plain(const std::optional<T>& value) { return !value; }
    template <class T>
    static bool plain(const T& value) { return value == T{}; }

    void write(const std::string& value) { m_faithful &= appendQuoted(m_out, value); }
    void write(const Uid& value)
    {
        m_out += '"';
        appendUid(m_out, value);
        m_out += '"';
    }
    void write(bool value) { m_out += value ? "true" : "false"; }
    void write(const CivilDate& value) { quoted(value.text()); }
    void write(const LocalTime& value) { quoted(value.text()); }
    void write(const Instant& value) { quoted(momentText(value)); }
    template <std::integral T>
    void write(T value)
    {
        char buffer[24];
        m_out.append(buffer, std::to_chars(buffer, buffer + sizeof buffer, value).ptr);
    }
    void write(double value)
    {
        if (std::isfinite(value)) {
            appendNumber(m_out, value);
        } else {
            m_out += "null";
            m_faithful = false;
        }
    }
    template <class T>
        requires std::is_enum_v<T>
    void write(T value) { quoted(name(value)); }
    template <class T>
    void write(const std::optional<T>& value) { write(*value); }
    template <class T>
    void write(const std::vector<T>& values)
    {
        m_out += '[';
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (i > 0)
                m_out += ',';
            write(values[i]);
        }
        m_out += ']';
    }
    template <class T>
        requires std::is_class_v<T>
    void write(const T& value) { object(value); }

    void quoted(std::string_view text)
    {
        m_out += '"';
        m_out += text;
        m_out += '"';
    }

    std::string& m_out;
    bool m_first = true;
    bool m_faithful = true;
};

} // namespace cupule::json
