#include "core/record/json.h"

#include <cstdlib>

#include "core/record/json_fields.h"
#include "core/record/json_text.h"

namespace cupule {

namespace json {

std::string momentText(const Instant& at)
{
    std::string text = instantText(at);
    if (!at.offsetMinutes)
        text.replace(text.size() - 1, 1, "-00:00");
    return text;
}

std::optional<Instant> readMoment(std::string_view text)
{
    auto moment = parseInstant(text);
    if (!moment)
        return std::nullopt;
    if (text.ends_with("-00:00"))
        moment->offsetMinutes.reset();
    return *moment;
}

namespace {

/// Digits and exponent as ECMAScript's Number::toString puts them together (ECMA-262, 6.1.6.1.20).
std::string ecmaNumber(double value)
{
    char buffer[40];
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, std::abs(value), std::chars_format::scientific).ptr;
    const std::string_view scientific(buffer, static_cast<std::size_t>(end - buffer));
    const auto e = scientific.find('e');
    std::string digits(1, scientific[0]);
    if (e > 2)
        digits += scientific.substr(2, e - 2);
    const int point = std::atoi(std::string(scientific.substr(e + 1)).c_str()) + 1;
    const int count = static_cast<int>(digits.size());
    std::string out = value < 0 ? "-" : "";
    if (point > 21 || point < -5) {
        out += digits[0];
        if (count > 1)
            out += '.' + digits.substr(1);
        out += point > 0 ? "e+" : "e-";
        return out + std::to_string(std::abs(point - 1));
    }
    if (point <= 0)
        return out + "0." + std::string(static_cast<std::size_t>(-point), '0') + digits;
    if (point >= count)
        return out + digits + std::string(static_cast<std::size_t>(point - count), '0');
    return out + digits.substr(0, static_cast<std::size_t>(point)) + '.' + digits.substr(static_cast<std::size_t>(point));
}

void appendEscape(std::string& out, char c)
{
    static constexpr char digits[] = "0123456789abcdef";
    switch (c) {
    case '"': out += "\\\""; break;
    case '\\': out += "\\\\"; break;
    case '\b': out += "\\b"; break;
    case '\f': out += "\\f"; break;
    case '\n': out += "\\n"; break;
    case '\r': out += "\\r"; break;
    case '\t': out += "\\t"; break;
    default:
        out += "\\u00";
        out += digits[static_cast<unsigned char>(c) >> 4];
        out += digits[c & 15];
    }
}

} // namespace

void appendNumber(std::string& out, double value)
{
    if (value == 0) {
        out += '0';
        return;
    }
    const double size = std::abs(value);
    if (size < 1e-5 || size >= 1e15) {
        out += ecmaNumber(value);
        return;
    }
    char buffer[40];
    out.append(buffer, std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed).ptr);
}

bool appendQuoted(std::string& out, std::string_view text)
{
    out += '"';
    bool ascii = true;
    std::size_t from = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto c = static_cast<unsigned char>(text[i]);
        ascii = ascii && c < 0x80;
        if (c >= 0x20 && c != '"' && c != '\\')
            continue;
        out.append(text, from, i - from);
        appendEscape(out, text[i]);
        from = i + 1;
    }
    out.append(text, from);
    out += '"';
    return ascii || isUtf8(text);
}

void appendUid(std::string& out, const Uid& id)
{
    static constexpr char digits[] = "0123456789abcdef";
    if (id.isNull())
        return;
    char text[36];
    std::size_t at = 0;
    for (const std::uint8_t byte : id.bytes) {
        if (at == 8 || at == 13 || at == 18 || at == 23)
            text[at++] = '-';
        text[at++] = digits[byte >> 4];
        text[at++] = digits[byte & 15];
    }
    out.append(text, sizeof text);
}

} // namespace json

std::string toJson(const Person& value) { return json::textOf(value); }
std::string toJson(const Site& value) { return json::textOf(value); }
std::string toJson(const Tree& value) { return json::textOf(value); }
std::string toJson(const Visit& value) { return json::textOf(value); }
std::string toJson(const PhotoNote& value) { return json::textOf(value); }
std::string toJson(const Sample& value) { return json::textOf(value); }
std::string toJson(const CustodyLine& value) { return json::textOf(value); }
std::string toJson(const Leave& value) { return json::textOf(value); }
std::string toJson(const Regime& value) { return json::textOf(value); }
std::string toJson(const Decision& value) { return json::textOf(value); }
std::string toJson(const Told& value) { return json::textOf(value); }
std::string toJson(const KeyNote& value) { return json::textOf(value); }
std::string toJson(const AuditBatch& value) { return json::textOf(value); }
std::string toJson(const AuditStep& value) { return json::textOf(value); }

namespace {

template <class Noun>
bool appended(std::string& out, const Noun& value)
{
    json::Writer writer(out);
    writer.object(value);
    return writer.faithful();
}

} // namespace

bool appendJson(std::string& out, const Visit& value) { return appended(out, value); }
bool appendJson(std::string& out, const Tree& value) { return appended(out, value); }

template <class Noun>
Result<Noun> fromJson(std::string_view text)
{
    return json::readJson<Noun>(text);
}

template Result<Person> fromJson(std::string_view);
template Result<Site> fromJson(std::string_view);
template Result<Tree> fromJson(std::string_view);
template Result<Visit> fromJson(std::string_view);
template Result<PhotoNote> fromJson(std::string_view);
template Result<Sample> fromJson(std::string_view);
template Result<CustodyLine> fromJson(std::string_view);
template Result<Leave> fromJson(std::string_view);
template Result<Regime> fromJson(std::string_view);
template Result<Decision> fromJson(std::string_view);
template Result<Told> fromJson(std::string_view);
template Result<KeyNote> fromJson(std::string_view);
template Result<AuditBatch> fromJson(std::string_view);
template Result<AuditStep> fromJson(std::string_view);

} // namespace cupule
