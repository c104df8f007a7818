#include "core/task/import_place.h"

#include <algorithm>
#include <array>
#include <span>

#include "core/base/text.h"
#include "core/exchange/csv/numbers.h"
#include "core/exchange/problem.h"

namespace cupule {

namespace {

bool beginsWithLetters(std::string_view text)
{
    text = trim(text);
    return !text.empty() && ((text[0] >= 'A' && text[0] <= 'Z') || (text[0] >= 'a' && text[0] <= 'z'));
}

std::string_view cellOf(const ImportColumn* column, std::span<const std::string_view> cells)
{
    return column == nullptr ? std::string_view{} : trim(cells[column->index]);
}

/// Digits with a point, so that the number of decimals is kept; the number itself where that cannot be.
std::string plainNumber(std::string_view cell, char decimal, double value)
{
    std::string text(cell);
    if (decimal == ',')
        std::replace(text.begin(), text.end(), ',', '.');
    return text.find_first_not_of("+-0123456789.") == std::string::npos && parseNumber(text) ? text : numberText(value);
}

void positionProblem(CellProblem& problem, const ImportColumn* column, const Fault& fault, std::string_view text)
{
    problem.column = column;
    problem.kind = importKindOfPosition(fault, text);
    problem.cause = positionErrorKind(fault);
    problem.suggestion = fault.argument("suggestion");
}

/// Both numbers of a pair, or a problem.
bool readNumbers(const ImportColumn* first, const ImportColumn* second, std::span<const std::string_view> cells,
                 char decimal, std::array<double, 2>& out, CellProblem& problem)
{
    const ImportColumn* columns[] = {first, second};
    for (std::size_t i = 0; i < 2; ++i) {
        const auto number = readNumber(cellOf(columns[i], cells), decimal);
        if (number) {
            out[i] = *number;
            continue;
        }
        problem.column = columns[i];
        if (number.error() == NumberFault::empty) {
            problem.kind = kind::unreadablePosition;
            problem.cause = "one-number";
        } else {
            problem.kind = numberFaultKind(number.error());
            problem.suggestion = number.error() == NumberFault::ambiguous ? "--decimal" : "";
        }
        return false;
    }
    return true;
}

} // namespace

std::string importKindOfPosition(const Fault& fault, std::string_view text)
{
    const std::string error = positionErrorKind(fault);
    if (error == "odd-digit-count")
        return "odd_digits";
    if (fault.argument("suggestion") == "swapped?")
        return std::string(kind::swappedCoordinates);
    if (error == "illegal-letter-I" || error == "illegal-letter-O"
        || (error == "outside-grid" && beginsWithLetters(text)))
        return "bad_grid_letters";
    if (error == "spreadsheet-mangled")
        return std::string(kind::spreadsheetMangled);
    if (error == "latitude-out-of-range" || error == "longitude-out-of-range" || error == "outside-grid")
        return std::string(kind::outOfRange);
    return std::string(kind::unreadablePosition);
}

Result<PlaceReader> PlaceReader::create(const ImportColumns& columns, const std::string& system, char decimal,
                                        const std::array<double, 4>& areaWSEN, bool swapped)
{
    PlaceReader out;
    out.m_position = columns.find(ImportField::position);
    out.m_system = columns.find(ImportField::system);
    out.m_degrees = {columns.find(ImportField::latitude), columns.find(ImportField::longitude)};
    if (swapped)
        std::swap(out.m_degrees.first, out.m_degrees.second);
    out.m_metres = {columns.find(ImportField::easting), columns.find(ImportField::northing)};
    out.m_axes = {columns.find(ImportField::first), columns.find(ImportField::second)};
    out.m_options = {system, areaWSEN, decimal == ',' ? ',' : '\0'};
    auto reader = PositionReader::create(out.m_options);
    if (!reader)
        return fail(reader.error());
    out.m_reader = std::move(*reader);
    auto degrees = PositionReader::create({"WGS84", areaWSEN, '.'});
    if (!degrees)
        return fail(degrees.error());
    out.m_degreesReader = std::move(*degrees);
    return out;
}

const PositionReader* PlaceReader::readerFor(std::string_view system, bool eastingFirst, CellProblem& problem)
{
    std::string name(system.empty() ? std::string_view(m_options.system) : system);
    if (name.empty() || (system.empty() && !eastingFirst))
        return &*m_reader;
    const std::string key = (eastingFirst ? "+" : "") + name;
    auto found = m_readers.find(key);
    if (found == m_readers.end()) {
        std::optional<PositionReader> made;
        const auto named = parseSystem(name);
        if (named && eastingFirst && named->system.isProjected())
            name = named->system.name();
        if (auto reader = named ? PositionReader::create({name, m_options.areaWSEN, m_options.decimal})
                                : Result<PositionReader>(fail(named.error())))
            made = std::move(*reader);
        found = m_readers.emplace(key, std::move(made)).first;
    }
    if (found->second)
        return &*found->second;
    problem.column = m_system;
    problem.kind = kind::unreadablePosition;
    problem.cause = "unknown-system";
    return nullptr;
}

bool PlaceReader::readText(std::string_view text, RowPlace& place, CellProblem& problem)
{
    const PositionReader* reader = readerFor(m_rowSystem, false, problem);
    if (reader == nullptr)
        return false;
    auto parsed = reader->parse(text);
    if (!parsed) {
        positionProblem(problem, m_position, parsed.error(), text);
        return false;
    }
    place.typed = text;
    place.parsed = *parsed;
    return true;
}

bool PlaceReader::readDegrees(std::span<const std::string_view> cells, RowPlace& place, CellProblem& problem)
{
    std::array<double, 2> degrees{};
    const char decimal = m_options.decimal == ',' ? ',' : '.';
    if (!readNumbers(m_degrees.first, m_degrees.second, cells, decimal, degrees, problem))
        return false;
    const std::string_view first = cellOf(m_degrees.first, cells);
    const std::string_view second = cellOf(m_degrees.second, cells);
    const auto check = checkDegrees(degrees[0], degrees[1]);
    if (check == DegreesCheck::swapped || check == DegreesCheck::outOfRange) {
        const bool latitude = !(degrees[0] >= -90 && degrees[0] <= 90);
        problem.column = latitude ? m_degrees.first : m_degrees.second;
        problem.kind = check == DegreesCheck::swapped ? kind::swappedCoordinates : kind::outOfRange;
        problem.cause = latitude ? "latitude-out-of-range" : "longitude-out-of-range";
        problem.suggestion = check == DegreesCheck::swapped ? "swapped?" : "";
        return false;
    }
    place.joined.assign(first).append(decimal == ',' ? "; " : ", ").append(second);
    auto parsed = m_degreesReader->parse(plainNumber(first, decimal, degrees[0]) + ", "
                                         + plainNumber(second, decimal, degrees[1]));
    if (!parsed) {
        positionProblem(problem, m_degrees.first, parsed.error(), place.joined);
        return false;
    }
    place.parsed = *parsed;
    return true;
}

bool PlaceReader::readPair(const Pair& pair, bool eastingFirst, std::span<const std::string_view> cells,
                           RowPlace& place, CellProblem& problem)
{
    std::array<double, 2> numbers{};
    const char decimal = m_options.decimal == ',' ? ',' : '.';
    if (!readNumbers(pair.first, pair.second, cells, decimal, numbers, problem))
        return false;
    const PositionReader* reader = readerFor(m_rowSystem, eastingFirst, problem);
    if (reader == nullptr)
        return false;
    const std::string_view first = cellOf(pair.first, cells);
    const std::string_view second = cellOf(pair.second, cells);
    place.joined.assign(first).append(decimal == ',' ? "; " : ", ").append(second);
    const std::string gap = decimal == ',' ? " " : ", ";
    auto parsed = decimal == ','
                      ? reader->parse(std::string(first) + gap + std::string(second))
                      : reader->parse(plainNumber(first, decimal, numbers[0]) + gap
                                      + plainNumber(second, decimal, numbers[1]));
    if (!parsed) {
        positionProblem(problem, pair.first, parsed.error(), place.joined);
        problem.value = place.joined;
        return false;
    }
    place.parsed = *parsed;
    return true;
}

bool PlaceReader::read(std::span<const std::string_view> cells, RowPlace& place, CellProblem& problem)
{
    place.parsed.reset();
    place.typed = {};
    place.joined.clear();
    m_rowSystem = cellOf(m_system, cells);
    // "NA" is what statistics programs write for nothing; the 100 km square of that name is no place of a tree
    if (const auto text = cellOf(m_position, cells); !text.empty() && text != "NA")
        return readText(text, place, problem);
    const auto filled = [&](const Pair& pair) {
        return pair.first != nullptr && pair.second != nullptr
               && !(cellOf(pair.first, cells).empty() && cellOf(pair.second, cells).empty());
    };
    if (filled(m_degrees))
        return readDegrees(cells, place, problem);
    if (filled(m_metres))
        return readPair(m_metres, true, cells, place, problem);
    if (filled(m_axes))
        return readPair(m_axes, false, cells, place, problem);
    return true;
}

} // namespace cupule
