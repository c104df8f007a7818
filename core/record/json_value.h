// JSON as RFC 8259 has it, in one run of values: what is read a million times when a season is merged. RapidJSON reads it. Stays inside
// core/record.

#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cupule::json {

/// One value with those inside it behind it. Keys and texts live as long as the Document.
struct Value {
    enum class Kind : std::uint8_t { null, boolean, whole, real, string, array, object };

    [[nodiscard]] const Value* begin() const { return this + 1; }          ///< the first inside
    [[nodiscard]] const Value* end() const { return this + span; }
    [[nodiscard]] const Value* next() const { return this + span; }        ///< the next beside it
    /// The last member of that name; null where there is none.
    [[nodiscard]] const Value* member(std::string_view name) const
    {
        const Value* found = nullptr;
        for (const Value* each = begin(); each != end(); each = each->next())
            if (each->key == name)
                found = each;
        return found;
    }

    std::string_view key;                  ///< where it is a member
    std::string_view text;                 ///< of a string, escapes resolved
    union {
        std::int64_t whole = 0;            ///< whole numbers up to 2^62 both ways, and booleans; larger ones are real
        double real;
    };
    std::uint32_t span = 1;                ///< values up to the next one beside it, itself counted
    std::uint32_t count = 0;               ///< members or entries
    Kind kind = Kind::null;
};

class Document {
public:
    /// Nothing where the text is no JSON, no UTF-8, holds a number beyond doubles (or 0 times such a power), or goes deeper than 64.
    static std::optional<Document> parse(std::string_view text);
    [[nodiscard]] const Value& root() const { return m_values.front(); }
    /// Members of all objects, doubled ones too.
    [[nodiscard]] std::size_t members() const { return m_members; }

private:
    friend class Builder;
    std::vector<Value> m_values;
    std::vector<char> m_texts;             // of the size that it may need: it never moves once something points into it
    std::size_t m_members = 0;
};

} // namespace cupule::json
