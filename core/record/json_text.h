// A struct with a description (see json_fields.h) as canonical JSON and back, for rooms whose structs travel in the same form.
// json::nounOf throws Bad; readJson() gives a Fault instead.

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

template <class T>
T nounOf(std::string_view text)
{
    const auto parsed = Document::parse(text);
    if (!parsed)
        throw Bad{"", "syntax"};
    T noun;
    Reader reader;
    reader.object(parsed->root(), noun);
    if (reader.members() != parsed->members())
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
    }
}

} // namespace cupule::json
