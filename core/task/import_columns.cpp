#include "core/task/import_columns.h"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <utility>

#include <nlohmann/json.hpp>

#include "core/base/file.h"
#include "core/base/text.h"

namespace cupule {

namespace {

struct FieldWords {
    ImportField field;
    std::string_view name;                 // stable
    std::string_view headings;             // compared form, parted by "|"
};

// The name itself is a heading too. Printed in resources/docs/import_columns.md.
constexpr std::array fieldWords{
    FieldWords{ImportField::ignored, "ignored", "problem column|problem kind|problem cause|problem suggestion"},
    FieldWords{ImportField::tree, "tree",
               "tree label|label|tree id|tree no|tree number|tree code|tree name|tree ref|tree reference"},
    FieldWords{ImportField::site, "site", "site name|wood|locality"},
    FieldWords{ImportField::note, "note", "notes|comment|comments|remarks"},
    FieldWords{ImportField::code, "code", "sample|sample code|sample number|sample no|sample id|bag|bag number"},
    FieldWords{ImportField::position, "position",
               "grid ref|gridref|grid reference|grid|map ref|map reference|os grid ref|os grid reference|national grid|"
               "coordinates|coordinate|mgrs|lat lon|latlon|lat long|ngr"},
    FieldWords{ImportField::latitude, "latitude", "lat|decimal latitude|decimallatitude|gps lat|gps latitude"},
    FieldWords{ImportField::longitude, "longitude",
               "lon|long|lng|decimal longitude|decimallongitude|gps lon|gps long|gps longitude"},
    FieldWords{ImportField::easting, "easting", "eastings|east|x"},
    FieldWords{ImportField::northing, "northing", "northings|north|y"},
    FieldWords{ImportField::first, "first", "first coordinate"},
    FieldWords{ImportField::second, "second", "second coordinate"},
    FieldWords{ImportField::system, "system", "crs|epsg|datum|coordinate system|grid system|projection|srs"},
    FieldWords{ImportField::date, "date",
               "visit date|date of visit|survey date|day|local time|local date|date time|datetime|when|timestamp|"
               "event date|eventdate|observed|observed on|date observed"},
    FieldWords{ImportField::time, "time", "visit time|time of day|start time"},
    FieldWords{ImportField::zone, "zone", "time zone|timezone|tz"},
    FieldWords{ImportField::observer, "observer",
               "recorder|surveyor|volunteer|recorded by|observed by|observer name|recorder name|observer code"},
    FieldWords{ImportField::companions, "companions", "companion|with|other observers|other people"},
    FieldWords{ImportField::minutes, "minutes", "minutes per tree|search minutes|min|mins|search time"},
    FieldWords{ImportField::trees, "trees", "trees looked at|trees searched|number of trees"},
    FieldWords{ImportField::crown, "crown", "crown percent|crown visible|crown seen|percent of crown|crown %"},
    FieldWords{ImportField::height, "height", "height m|height metres|highest part|looked up to|search height"},
    FieldWords{ImportField::binoculars, "binoculars", "binocular|optics"},
    FieldWords{ImportField::innerCrown, "inner-crown", "inner crown|lower crown|lower and inner crown"},
    FieldWords{ImportField::light, "light", "light conditions|visibility"},
    FieldWords{ImportField::leaves, "leaves", "leaf state|state of leaves|foliage"},
    FieldWords{ImportField::clothes, "clothes", "clothes clean|clothes cleaned|clothing"},
    FieldWords{ImportField::boots, "boots", "boots clean|boots cleaned|footwear|shoes"},
    FieldWords{ImportField::vehicle, "vehicle", "vehicle clean|vehicle cleaned|car"},
    FieldWords{ImportField::tools, "tools", "tools clean|tools cleaned|equipment"},
    FieldWords{ImportField::leftSite, "left-site", "left site|left at|end time"},
    FieldWords{ImportField::gallCount, "gall-count", "gall count|galls|number of galls|gall number|no of galls"},
    FieldWords{ImportField::gallSize, "gall-size", "gall size|gall size mm|gall diameter|gall diameter mm|largest gall"},
    FieldWords{ImportField::symptoms, "symptoms", "symptom|signs|sign|signs seen|seen|observations"},
    FieldWords{ImportField::leafingShift, "leafing-shift", "leafing shift|leafing shift days"},
    FieldWords{ImportField::girth, "girth", "girth cm|girth centimetres"},
};

/// Several columns may hold these; of the rest the first one counts.
bool mayRepeat(ImportField field)
{
    return field == ImportField::remark || field == ImportField::ignored || field == ImportField::code
           || field == ImportField::symptoms;
}

std::string withoutUnit(std::string_view heading)
{
    const auto open = heading.find_last_of("([");
    if (open == std::string_view::npos || open == 0)
        return comparedWords(heading);
    const std::string_view inside = trim(heading.substr(open));
    return inside.ends_with(')') || inside.ends_with(']') ? comparedWords(heading.substr(0, open))
                                                          : comparedWords(heading);
}

const FieldWords* fieldOf(const std::string& words)
{
    for (const auto& field : fieldWords) {
        if (comparedWords(field.name) == words)
            return &field;
        for (const auto& heading : split(field.headings, '|'))
            if (heading == words)
                return &field;
    }
    return nullptr;
}

/// "s02 size": the part before one of the endings, where there is one.
std::optional<std::string> before(const std::string& words, std::initializer_list<std::string_view> endings)
{
    for (const auto ending : endings)
        if (words.size() > ending.size() + 1 && words.ends_with(ending) && words[words.size() - ending.size() - 1] == ' ')
            return words.substr(0, words.size() - ending.size() - 1);
    return std::nullopt;
}

const Character* characterOf(const std::string& words, const Pack& pack)
{
    for (const auto& character : pack.characters)
        if (comparedWords(character.id) == words || comparedWords(character.name) == words)
            return &character;
    return nullptr;
}

const Sign* signOf(const std::string& words, const Pack& pack)
{
    for (const auto& sign : pack.signs)
        if (comparedWords(sign.id) == words || comparedWords(sign.name) == words
            || comparedWords(sign.shortName) == words)
            return &sign;
    return nullptr;
}

bool matchCharacter(ImportColumn& column, const std::string& words, const Pack& pack)
{
    column.field = ImportField::character;
    column.character = characterOf(words, pack);
    if (column.character != nullptr)
        return true;
    column.field = ImportField::characterValue;
    if (const auto stem = before(words, {"value", "count", "cm", "mm", "length"}))
        column.character = characterOf(*stem, pack);
    for (const auto& character : pack.characters)
        if (column.character == nullptr && !character.valueWords.empty() && comparedWords(character.valueWords) == words)
            column.character = &character;
    return column.character != nullptr;
}

bool matchSign(ImportColumn& column, const std::string& words, const Pack& pack)
{
    column.field = ImportField::sign;
    column.sign = signOf(words, pack);
    if (column.sign != nullptr)
        return true;
    column.field = ImportField::signMeasure;
    if (const auto stem = before(words, {"size", "mm", "cm", "percent", "measure", "diameter"}))
        column.sign = signOf(*stem, pack);
    if (column.sign != nullptr)
        return true;
    column.field = ImportField::signCount;
    if (const auto stem = before(words, {"count", "number"}))
        column.sign = signOf(*stem, pack);
    return column.sign != nullptr;
}

/// True where the words name a field; `column` keeps field remark otherwise.
bool matchWords(ImportColumn& column, const std::string& words, const Pack& pack)
{
    if (words.empty())
        return false;
    if (const FieldWords* field = fieldOf(words)) {
        column.field = field->field;
        return true;
    }
    if (matchCharacter(column, words, pack) || matchSign(column, words, pack))
        return true;
    column.field = ImportField::remark;
    return false;
}

const std::string* mapped(const ColumnMapping& mapping, const std::string& heading)
{
    if (const auto exact = mapping.columns.find(heading); exact != mapping.columns.end())
        return &exact->second;
    for (const auto& [from, to] : mapping.columns)
        if (comparedWords(from) == comparedWords(heading))
            return &to;
    return nullptr;
}


} // namespace

std::string comparedWords(std::string_view text)
{
    std::string out;
    bool gap = false;
    for (const char c : lowerAscii(trim(text))) {
        if (c == ' ' || c == '_' || c == '-' || c == '.' || c == '/' || c == '\t' || c == '\n' || c == '\r' || c == ':') {
            gap = !out.empty();
            continue;
        }
        if (gap)
            out += ' ';
        gap = false;
        out += c;
    }
    return out;
}

std::string fieldName(const ImportColumn& column)
{
    switch (column.field) {
    case ImportField::remark: return "remark";
    case ImportField::character: return column.character->id;
    case ImportField::characterValue: return column.character->id + " value";
    case ImportField::sign: return column.sign->id;
    case ImportField::signMeasure: return column.sign->id + " size";
    case ImportField::signCount: return column.sign->id + " count";
    default: break;
    }
    const auto found = std::find_if(fieldWords.begin(), fieldWords.end(),
                                    [&](const FieldWords& words) { return words.field == column.field; });
    return std::string(found->name);
}

const ImportColumn* ImportColumns::find(ImportField field) const
{
    const auto found = std::find_if(all.begin(), all.end(), [&](const auto& column) { return column.field == field; });
    return found == all.end() ? nullptr : &*found;
}

bool ImportColumns::holdsAnswers() const
{
    return std::any_of(all.begin(), all.end(), [](const ImportColumn& column) {
        return column.field >= ImportField::minutes && column.field != ImportField::girth;
    });
}

Result<ImportColumns> matchColumns(const std::vector<std::string>& headings, const ColumnMapping& mapping,
                                   const Pack& pack)
{
    ImportColumns out;
    std::set<std::string> taken;
    for (std::size_t i = 0; i < headings.size(); ++i) {
        ImportColumn column{i, headings[i], ImportField::remark, nullptr, nullptr};
        if (const std::string* told = mapped(mapping, headings[i])) {
            if (!matchWords(column, comparedWords(*told), pack) && comparedWords(*told) != "remark")
                return fail("columns.field", FaultKind::usage, {{"heading", headings[i]}, {"field", *told}});
        } else if (!matchWords(column, comparedWords(headings[i]), pack)) {
            static_cast<void>(matchWords(column, withoutUnit(headings[i]), pack));
        }
        if (!mayRepeat(column.field) && !taken.insert(fieldName(column)).second) {
            out.twice.push_back(headings[i]);
            column.field = ImportField::remark;
        }
        out.all.push_back(std::move(column));
    }
    return out;
}

Result<ColumnMapping> columnMappingFromJson(std::string_view json)
{
    const auto read = nlohmann::json::parse(json, nullptr, false);
    if (read.is_discarded() || !read.is_object())
        return fail("columns.json", FaultKind::data);
    ColumnMapping out;
    const std::map<std::string, std::string*> texts{{"delimiter", &out.delimiter}, {"decimal", &out.decimal},
                                                    {"encoding", &out.encoding},   {"date-order", &out.dateOrder},
                                                    {"zone", &out.zone},           {"system", &out.system}};
    for (const auto& [member, value] : read.items()) {
        if (const auto text = texts.find(member); text != texts.end() && value.is_string()) {
            *text->second = value.get<std::string>();
            continue;
        }
        if (member != "columns" || !value.is_object())
            return fail("columns.member", FaultKind::data, {{"member", member}});
        for (const auto& [heading, field] : value.items()) {
            if (!field.is_string())
                return fail("columns.member", FaultKind::data, {{"member", "columns/" + heading}});
            out.columns[heading] = field.get<std::string>();
        }
    }
    return out;
}

Result<ColumnMapping> readColumnMapping(const std::string& path)
{
    const auto text = readFile(path, 1 << 20);
    if (!text)
        return fail(text.error());
    auto mapping = columnMappingFromJson(*text);
    if (!mapping)
        mapping.error().place.file = path;
    return mapping;
}

std::string toJson(const ColumnMapping& mapping)
{
    nlohmann::json out{{"columns", mapping.columns}};
    const auto add = [&](const char* member, const std::string& value) {
        if (!value.empty())
            out[member] = value;
    };
    add("delimiter", mapping.delimiter);
    add("decimal", mapping.decimal);
    add("encoding", mapping.encoding);
    add("date-order", mapping.dateOrder);
    add("zone", mapping.zone);
    add("system", mapping.system);
    return out.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

} // namespace cupule
