#include "core/position/notation.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/position/notation_detail.h"

namespace cupule {

namespace notation {

tl::unexpected<Fault> refuse(std::string_view kind, std::string suggestion, std::string reading)
{
    Arguments arguments;
    if (!suggestion.empty())
        arguments.push_back({"suggestion", std::move(suggestion)});
    if (!reading.empty())
        arguments.push_back({"reading", std::move(reading)});
    return fail("position." + std::string(kind), FaultKind::data, std::move(arguments));
}

namespace {

/// A word in front that names how the rest is meant. Longer ones first where one begins another.
struct Prefix {
    std::string_view word;
    std::string_view system; ///< for bare numbers behind it; empty: letters must follow
};
constexpr Prefix prefixes[] = {{"OSGB", "OSGB"}, {"OSGR", "OSGB"}, {"NGR", "OSGB"}, {"GB", ""},
                               {"MGRS", "MGRS"}, {"UTM", "MGRS"},  {"ITM", "ITM"}};

bool hasDigit(std::string_view text)
{
    return std::ranges::any_of(text, isDigit);
}

/// A point between digits, a degree sign or a prime: no lettered reference has these.
bool hasAngleMarks(std::string_view text)
{
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        const bool point =
            c == '.' && at > 0 && at + 1 < text.size() && isDigit(text[at - 1]) && isDigit(text[at + 1]);
        if (point || c == degree || c == prime || c == doublePrime)
            return true;
    }
    return false;
}

/// "N 52 W 2": a hemisphere letter in front, another one behind numbers and before numbers.
bool hasSecondLetter(std::string_view text)
{
    bool digits = false;
    for (std::size_t at = 1; at < text.size(); ++at) {
        digits = digits || isDigit(text[at]);
        if (digits && isHemisphere(text[at]) && hasDigit(text.substr(at)))
            return true;
    }
    return false;
}

/// Whether text that begins with a letter is about angles or labelled numbers, not square letters.
bool isLabelled(std::string_view text)
{
    std::size_t letters = 0;
    while (letters < text.size() && isLetter(text[letters]))
        ++letters;
    const std::string_view word = text.substr(0, letters);
    if (letters > 2)
        return hasDigit(text);
    if (letters != 1 || !isHemisphere(word[0]))
        return false;
    const std::size_t next = std::min(text.find_first_not_of(' ', 1), text.size());
    const bool numberNext = next < text.size() && !isLetter(text[next]);
    return numberNext && (hasAngleMarks(text) || hasSecondLetter(text));
}

Result<ParsedPosition> readText(std::string_view text, const Reading& reading);

/// "UTM30N 530181 5736693": a zone and half of the world as systems are named here.
std::optional<Result<ParsedPosition>> readUtmNamed(std::string_view text, const Reading& reading)
{
    const std::size_t end = std::min(text.find(' '), text.size());
    const auto named = parseSystem(text.substr(0, end));
    if (!text.starts_with("UTM") || !named || isDigit(text[end - 1]) || end == text.size())
        return std::nullopt;
    return readNumbers(text.substr(end + 1), {*named, true, reading.decimal});
}

/// Text behind a naming word, or nothing where there is no such word.
std::optional<Result<ParsedPosition>> readPrefixed(std::string_view text, const Reading& reading)
{
    if (auto utm = readUtmNamed(text, reading))
        return utm;
    for (const auto& prefix : prefixes) {
        if (!text.starts_with(prefix.word))
            continue;
        std::string_view rest = text.substr(prefix.word.size());
        const bool apart = !rest.empty() && (rest[0] == ' ' || rest[0] == ':');
        while (!rest.empty() && (rest[0] == ' ' || rest[0] == ':'))
            rest.remove_prefix(1);
        const bool letters = rest.size() > 2 && isLetter(rest[0]) && isLetter(rest[1]);
        if (rest.empty() || (!apart && !letters && prefix.word != "UTM") || !hasDigit(rest))
            return std::nullopt;
        if (prefix.system.empty())
            return isLetter(rest[0]) ? std::optional(readText(rest, reading)) : std::nullopt;
        Reading inner = reading;
        inner.named = *parseSystem(prefix.system);
        inner.hasSystem = true;
        return readText(rest, inner);
    }
    return std::nullopt;
}

Result<ParsedPosition> readText(std::string_view text, const Reading& reading)
{
    if (text.empty())
        return refuse("empty");
    if (text.starts_with("GEO:"))
        return readGeoUri(text.substr(4));
    if (auto iso = readIso6709(text))
        return *iso;
    if (isMangled(text))
        return refuse("spreadsheet-mangled");
    if (isLetter(text[0])) {
        if (auto prefixed = readPrefixed(text, reading))
            return *prefixed;
        return isLabelled(text) ? readNumbers(text, reading) : readLettered(text, reading);
    }
    if (isDigit(text[0]))
        if (auto zoned = readZoned(text))
            return *zoned;
    return readNumbers(text, reading);
}

} // namespace

} // namespace notation

std::string_view warningKind(PositionWarning warning)
{
    constexpr std::string_view kinds[] = {"", "null-island", "sea-square", "outside-area", "very-coarse"};
    return kinds[static_cast<std::size_t>(warning)];
}

Result<PositionReader> PositionReader::create(PositionOptions options)
{
    PositionReader reader;
    if (!options.system.empty()) {
        const auto named = parseSystem(options.system);
        if (!named)
            return fail(named.error());
        reader.m_named = *named;
        reader.m_hasSystem = true;
    }
    reader.m_options = std::move(options);
    return reader;
}

Result<ParsedPosition> PositionReader::parse(std::string_view text) const
{
    constexpr std::size_t keptAtMost = 200;
    if (const auto plain = notation::plainBritish(text))
        return *plain;
    const notation::Clean clean(text);
    const notation::Reading reading{m_named, m_hasSystem, m_options.decimal};
    auto parsed = clean.isTooLong() ? notation::refuse("not-a-grid-reference")
                                    : notation::readText(clean.text(), reading);
    if (!parsed) {
        auto& arguments = parsed.error().arguments;
        arguments.insert(arguments.begin(), {"value", madeUtf8(text.substr(0, keptAtMost))});
    }
    return parsed;
}

Result<ParsedPosition> parsePosition(std::string_view text, const PositionOptions& options)
{
    const auto reader = PositionReader::create(options);
    if (!reader)
        return fail(reader.error());
    return reader->parse(text);
}

std::string positionErrorKind(const Fault& fault)
{
    constexpr std::string_view room = "position.";
    return fault.code.starts_with(room) ? fault.code.substr(room.size()) : std::string{};
}

} // namespace cupule
