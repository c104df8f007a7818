#include "app/fields.h"

#include <algorithm>
#include <functional>
#include <map>

#include "core/base/text.h"
#include "core/record/names.h"

namespace cupule::app {

namespace {

using Setter = std::function<bool(Visit&, const std::string&)>; ///< false: the value does not fit

template <class Value> bool setWhole(std::optional<Value>& field, const std::string& text)
{
    if (text.empty()) {
        field.reset();
        return true;
    }
    const auto value = parseWhole(text);
    if (value)
        field = *value;
    return value.has_value();
}

bool setNumber(std::optional<double>& field, const std::string& text)
{
    field = parseNumber(text);
    return field.has_value() || text.empty();
}

bool setYes(std::optional<bool>& field, const std::string& text)
{
    field.reset();
    if (text == "yes" || text == "no")
        field = text == "yes";
    return field.has_value() || text.empty();
}

bool setConfirmed(Confirmed& field, const std::string& text)
{
    const auto value = text.empty() ? Confirmed::open : fromName<Confirmed>(text);
    if (value)
        field = *value;
    return value.has_value();
}

bool setOneOf(std::string& field, const std::string& text, std::initializer_list<std::string_view> known)
{
    field = text;
    return text.empty() || std::find(known.begin(), known.end(), text) != known.end();
}

bool setTime(std::optional<LocalTime>& field, const std::string& text)
{
    const auto time = LocalTime::parse(text);
    field = time ? std::optional<LocalTime>(*time) : std::nullopt;
    return time.has_value() || text.empty();
}

bool setDate(Visit& visit, const std::string& text)
{
    const auto date = CivilDate::parse(text);
    if (date)
        visit.date = *date;
    return date.has_value();
}

const std::map<std::string, Setter>& setters()
{
    static const std::map<std::string, Setter> table{
        {"minutes", [](Visit& v, const std::string& t) { return setWhole(v.effort.minutes, t); }},
        {"trees", [](Visit& v, const std::string& t) { return setWhole(v.effort.trees, t); }},
        {"crown", [](Visit& v, const std::string& t) { return setWhole(v.effort.crownPercent, t); }},
        {"height", [](Visit& v, const std::string& t) { return setNumber(v.effort.heightMetres, t); }},
        {"binoculars", [](Visit& v, const std::string& t) { return setYes(v.effort.binoculars, t); }},
        {"inner-crown", [](Visit& v, const std::string& t) { return setYes(v.effort.innerCrown, t); }},
        {"light",
         [](Visit& v, const std::string& t) {
             return setOneOf(v.effort.light, t, {"good", "fair", "poor"});
         }},
        {"leaves",
         [](Visit& v, const std::string& t) {
             return setOneOf(v.effort.leaves, t, {"none", "opening", "open", "falling"});
         }},
        {"clothes", [](Visit& v, const std::string& t) { return setConfirmed(v.hygiene.clothes, t); }},
        {"boots", [](Visit& v, const std::string& t) { return setConfirmed(v.hygiene.boots, t); }},
        {"vehicle", [](Visit& v, const std::string& t) { return setConfirmed(v.hygiene.vehicle, t); }},
        {"tools", [](Visit& v, const std::string& t) { return setConfirmed(v.hygiene.tools, t); }},
        {"left", [](Visit& v, const std::string& t) { return setTime(v.hygiene.leftSite, t); }},
        {"galls", [](Visit& v, const std::string& t) { return setWhole(v.gallCount, t); }},
        {"gall-size", [](Visit& v, const std::string& t) { return setNumber(v.gallSizeMm, t); }},
        {"date", setDate},
        {"time", [](Visit& v, const std::string& t) { return setTime(v.time, t); }},
        {"leafing-shift", [](Visit& v, const std::string& t) { return setWhole(v.leafingShiftDays, t); }},
        {"leafing-from", [](Visit& v, const std::string& t) { return v.leafingFrom = t, true; }},
        {"note", [](Visit& v, const std::string& t) { return v.note = t, true; }}};
    return table;
}

bool setSign(Visit& visit, const std::string& sign, const std::string& text)
{
    std::erase_if(visit.observations, [&](const Observation& o) { return o.sign == sign; });
    if (text.empty())
        return true;
    const auto parts = split(text, ':');
    Observation observation;
    observation.sign = sign;
    const auto answer = parts[0] == "none" ? Answer::notSeen : fromName<Answer>(parts[0]);
    observation.noneOnTree = parts[0] == "none";
    if (!answer)
        return false;
    observation.answer = *answer;
    if (parts.size() > 1) {
        observation.measure = parseNumber(parts[1]);
        if (!observation.measure)
            return false;
    }
    visit.observations.push_back(observation);
    return true;
}

bool setCharacter(Visit& visit, const Character& character, std::string text)
{
    std::erase_if(visit.characters,
                  [&](const CharacterSeen& seen) { return seen.character == character.id; });
    if (text.empty())
        return true;
    CharacterSeen seen;
    seen.character = character.id;
    if (const auto at = text.find("@ground"); at != std::string::npos) {
        seen.onGround = true;
        if (const std::string near = text.substr(at); near != "@ground")
            seen.otherTreeNear = near == "@ground-other-near";
        text.erase(at);
    }
    for (const auto& part : split(text, ':')) {
        const bool known = std::any_of(character.states.begin(), character.states.end(),
                                       [&](const CharacterState& state) { return state.id == part; });
        if (known)
            seen.state = part;
        else if (part == "not-judged")
            seen.notJudged = true;
        else if (const auto value = parseNumber(part); value && !character.unit.empty())
            seen.value = *value;
        else
            return false;
    }
    visit.characters.push_back(seen);
    return true;
}

Status setPosition(Visit& visit, const std::string& text, Session& session)
{
    if (text.empty()) {
        visit.position.reset();
        return {};
    }
    const auto projector = session.projector();
    if (!projector)
        return fail(projector.error());
    PositionOptions options;
    options.areaWSEN = session.pack().settings.areaWSEN;
    auto position = (*projector)->read(text, options);
    if (!position)
        return fail(position.error());
    position->obtained = "typed";
    visit.position = std::move(*position);
    return {};
}

} // namespace

Status setField(Visit& visit, const std::string& assignment, Session& session)
{
    const auto equals = assignment.find('=');
    const std::string name(trim(assignment.substr(0, equals)));
    const std::string value = equals == std::string::npos ? std::string() : assignment.substr(equals + 1);
    const auto unfit = [&](const char* code) {
        return fail(code, FaultKind::usage, {{"field", name}, {"value", value}});
    };
    if (equals == std::string::npos || name.empty())
        return unfit("field.unknown");
    if (name == "position")
        return setPosition(visit, value, session);
    if (const auto setter = setters().find(name); setter != setters().end())
        return setter->second(visit, value) ? Status() : unfit("field.value");
    if (session.pack().sign(name) != nullptr)
        return setSign(visit, name, value) ? Status() : unfit("field.value");
    if (const Character* character = session.pack().character(name))
        return setCharacter(visit, *character, value) ? Status() : unfit("field.value");
    return unfit("field.unknown");
}

Result<std::vector<Role>> readRoles(const std::string& typed)
{
    std::vector<Role> roles;
    for (const auto& word : split(typed, ',')) {
        const auto role = fromName<Role>(trim(word));
        if (!role)
            return fail("profile.role-unknown", FaultKind::usage, {{"role", word}});
        roles.push_back(*role);
    }
    return roles;
}

} // namespace cupule::app
