// A struct with a description (see json_fields.h) as canonical JSON and back, for rooms whose structs travel in the same form.
// json::nounOf throws Bad, or what nlohmann throws; readJson() gives a Fault instead.

#pragma once

#include <string>
#include <string_view>

#include "core/record/json_reader.h"

namespace cupule::json {

template <class T>
std::string textOf(const T& value)
{
    std::string out;
    Writer(out).object(value);
    return out;
}

/// Members as they stand in a text that can be parsed, doubled ones too. (A callback while parsing could count them as well, but the
/// library then walks a list anew for each object in it.)
std::size_t membersWritten(std::string_view text);

template <class T>
T nounOf(std::string_view text)
{
    const auto parsed = nlohmann::json::parse(text, nullptr, false);
    if (parsed.is_discarded())
        throw Bad{"", "syntax"};
    T noun;
    Reader reader;
    reader.object(parsed, noun);
    if (reader.members() != membersWritten(text))
        throw Bad{"", "doubled"};
    return noun;
}

/// Fault "record.json" as of fromJson in json.h.
template <class T>
Result<T> readJson(std::string_view text)
{
    try {
        return nounOf<T>(text);
    } catch (const Bad& bad) {
        return fail(Fault{"record.json", FaultKind::data, {{"path", bad.path}, {"why", bad.why}}, {{}, 0, 0, -1, bad.path}, {}});
    } catch (const nlohmann::json::exception& error) {
        auto fault = fail("record.json", FaultKind::data, {{"path", ""}, {"why", "syntax"}});
        fault.value().technical = error.what();
        return fault;
    }
}

} // namespace cupule::json
