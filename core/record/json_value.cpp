#include "core/record/json_value.h"

#include <utility>

#include <rapidjson/memorystream.h>
#include <rapidjson/reader.h>

#include "core/base/text.h"

namespace cupule::json {

namespace {

constexpr std::size_t deepest = 64;
constexpr std::int64_t largestWhole = std::int64_t{1} << 62;
constexpr std::size_t usualValues = 48;

} // namespace

/// Takes what the reader of the library finds, and stops it where something goes too deep or no text comes of an escape.
class Builder {
public:
    Builder(std::string_view text, Document& document) : m_document(document), m_mayBreak(text.find("\\u") != std::string_view::npos)
    {
        document.m_values.reserve(usualValues);
        document.m_texts.reserve(text.size());      // no text grows by resolving its escapes
    }

    bool Null() { return add(Value::Kind::null, 0); }
    bool Bool(bool value) { return add(Value::Kind::boolean, value ? 1 : 0); }
    bool Int(int value) { return add(Value::Kind::whole, value); }
    bool Uint(unsigned value) { return add(Value::Kind::whole, value); }
    bool Int64(std::int64_t value) { return value < -largestWhole ? Double(static_cast<double>(value)) : add(Value::Kind::whole, value); }
    bool Uint64(std::uint64_t value)
    {
        return value > largestWhole ? Double(static_cast<double>(value)) : add(Value::Kind::whole, static_cast<std::int64_t>(value));
    }
    bool Double(double value)
    {
        next(Value::Kind::real).real = value;
        return true;
    }
    bool RawNumber(const char*, rapidjson::SizeType, bool) { return false; }   // only asked where numbers are wanted as text
    bool String(const char* text, rapidjson::SizeType length, bool)
    {
        Value& made = next(Value::Kind::string);
        made.text = kept(text, length);
        return isText(made.text);
    }
    bool Key(const char* text, rapidjson::SizeType length, bool)
    {
        ++m_document.m_members;
        m_key = kept(text, length);
        return isText(m_key);
    }
    bool StartObject() { return open(Value::Kind::object); }
    bool StartArray() { return open(Value::Kind::array); }
    bool EndObject(rapidjson::SizeType) { return close(); }
    bool EndArray(rapidjson::SizeType) { return close(); }

private:
    Value& next(Value::Kind kind)
    {
        if (!m_open.empty())
            ++m_document.m_values[m_open.back()].count;
        Value& made = m_document.m_values.emplace_back();
        made.key = std::exchange(m_key, {});
        made.kind = kind;
        return made;
    }
    bool add(Value::Kind kind, std::int64_t whole)
    {
        next(kind).whole = whole;
        return true;
    }
    bool open(Value::Kind kind)
    {
        next(kind);
        m_open.push_back(m_document.m_values.size() - 1);
        return m_open.size() <= deepest;
    }
    bool close()
    {
        m_document.m_values[m_open.back()].span = static_cast<std::uint32_t>(m_document.m_values.size() - m_open.back());
        m_open.pop_back();
        return true;
    }
    std::string_view kept(const char* text, std::size_t length)
    {
        auto& room = m_document.m_texts;
        const std::size_t from = room.size();
        room.insert(room.end(), text, text + length);
        return {room.data() + from, length};
    }
    /// Half a pair of units comes through the library as it stands.
    [[nodiscard]] bool isText(std::string_view text) const { return !m_mayBreak || isUtf8(text); }

    Document& m_document;
    const bool m_mayBreak;
    std::string_view m_key;
    std::vector<std::size_t> m_open;
};

std::optional<Document> Document::parse(std::string_view text)
{
    std::optional<Document> document(std::in_place);
    Builder builder(text, *document);
    rapidjson::MemoryStream stream(text.data(), text.size());
    rapidjson::Reader reader;
    const bool read = !reader.Parse<rapidjson::kParseFullPrecisionFlag>(stream, builder).IsError();
    if (!read || stream.Tell() != text.size() || !isUtf8(text))    // a zero byte ends the text for the library
        document.reset();
    return document;
}

} // namespace cupule::json
