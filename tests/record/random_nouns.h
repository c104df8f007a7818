// Nouns full of chance, made by the same descriptions as the JSON: every described member is set about every second time.

#pragma once

#include <cmath>
#include <string>

#include "core/base/random.h"
#include "core/record/json_fields.h"

namespace cupule::test {

class Filler {
public:
    explicit Filler(std::uint64_t seed) : m_random(seed) {}

    template <class T>
    void operator()(std::string_view, T& value, const T&)
    {
        (*this)({}, value);
    }
    template <class T>
    void operator()(std::string_view, T& value)
    {
        if (m_random.below(2) == 0)
            fill(value);
    }
    template <class T>
    void required(std::string_view, T& value) { fill(value); }

    void fill(std::string& value)
    {
        static const char* const pieces[] = {"gall", "\"", "\\", "\n", "\x01", "é", "木", "𝔤", "/", "<b>", " ", "\x7f", "T-01", "'"};
        value.clear();
        for (std::uint64_t i = 0, n = 1 + m_random.below(6); i < n; ++i)
            value += pieces[m_random.below(std::size(pieces))];
    }
    void fill(Uid& value)
    {
        m_random.fill(value.bytes);
        value.bytes[6] = static_cast<std::uint8_t>((value.bytes[6] & 0x0F) | 0x70);
    }
    void fill(bool& value) { value = true; }
    void fill(double& value)
    {
        value = (static_cast<double>(m_random.below(2'000'001)) - 1'000'000) * std::pow(10, static_cast<int>(m_random.below(40)) - 25);
    }
    template <std::integral T>
    void fill(T& value) { value = static_cast<T>(static_cast<int>(m_random.below(100'000)) - 50'000); }
    void fill(CivilDate& value) { value.days = static_cast<std::int32_t>(m_random.below(60'000)) - 20'000; }
    void fill(LocalTime& value) { value.secondOfDay = static_cast<std::int32_t>(m_random.below(86'400)); }
    void fill(Instant& value)
    {
        value.utcMilliseconds = static_cast<std::int64_t>(m_random.below(4'000'000'000'000ULL)) - 1'000'000'000'000;
        value.offsetMinutes.reset();
        if (m_random.below(3) > 0)
            value.offsetMinutes = static_cast<int>(m_random.below(1681)) - 840;
    }
    template <class T>
        requires std::is_enum_v<T>
    void fill(T& value)
    {
        int count = 0;
        while (count < 64 && known(static_cast<T>(count)))
            ++count;
        value = static_cast<T>(m_random.below(static_cast<std::uint64_t>(count)));
    }
    template <class T>
    void fill(std::optional<T>& value) { fill(value.emplace()); }
    template <class T>
    void fill(std::vector<T>& values)
    {
        values.resize(1 + m_random.below(3));
        for (T& value : values)
            fill(value);
    }
    template <class T>
        requires std::is_class_v<T>
    void fill(T& value) { json::describe(*this, value); }

private:
    static bool known(AuditEvent v) { return static_cast<int>(v) < 6; }
    static bool known(Role v) { return static_cast<int>(v) < 5; }
    static bool known(Answer v) { return static_cast<int>(v) < 4; }
    static bool known(Confirmed v) { return static_cast<int>(v) < 3; }
    static bool known(CustodyKind v) { return static_cast<int>(v) < 10; }
    static bool known(LeaveGiver v) { return static_cast<int>(v) < 3; }
    static bool known(LeaveScope v) { return static_cast<int>(v) < 5; }
    static bool known(Outcome v) { return static_cast<int>(v) < 5; }
    static bool known(KeyStep v) { return static_cast<int>(v) < 2; }

    SeededRandom m_random;
};

template <class Noun>
Noun randomNoun(std::uint64_t seed)
{
    Noun noun;
    Filler(seed).fill(noun);
    return noun;
}

} // namespace cupule::test
