#include "core/task/import_row.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/text.h"
#include "core/exchange/csv/numbers.h"
#include "core/exchange/problem.h"
#include "core/task/import_fingerprint.h"

namespace cupule {

namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr double withoutEnd = std::numeric_limits<double>::infinity();

/// The widest hard limits of the lines on which a gall's size is measured.
std::pair<double, double> gallLimits(const Pack& pack)
{
    double least = withoutEnd;
    double most = -withoutEnd;
    for (const auto& sign : pack.signs) {
        if (sign.group != SignGroup::gall || sign.unit != "mm")
            continue;
        least = std::min(least, sign.hardMin);
        most = std::max(most, sign.hardMax);
    }
    return least <= most ? std::pair{least, most} : std::pair{0.0, withoutEnd};
}

bool looksMangled(std::string_view text)
{
    return !text.empty() && (text[0] == '#' || (text[0] >= '0' && text[0] <= '9') || (text.back() >= '0' && text.back() <= '9'
                             && text.find('-') != std::string_view::npos))
           && spreadsheetMangling(text) != Mangling::none;
}

/// All but the capacity of its lists and texts is as in a new visit.
void makeEmpty(Visit& visit)
{
    visit.id = visit.tree = visit.observer = visit.trainer = {};
    visit.time.reset();
    visit.whenTyped.clear();
    visit.companions.clear();
    visit.characters.clear();
    visit.observations.clear();
    visit.gallCount.reset();
    visit.gallSizeMm.reset();
    visit.effort = {};
    visit.hygiene = {};
    visit.leafingShiftDays.reset();
    visit.leafingFrom.clear();
    visit.note.clear();
    visit.remarks.clear();
}

} // namespace

RowReader::RowReader(const ImportColumns& columns, const RowSetting& setting, PlaceReader place)
    : m_setting(setting), m_answers(*setting.pack), m_place(std::move(place)), m_when(columns, setting.zone, setting.today),
      m_label(columns.find(ImportField::tree)), m_site(columns.find(ImportField::site)),
      m_observer(columns.find(ImportField::observer)), m_companions(columns.find(ImportField::companions)),
      m_note(columns.find(ImportField::note)), m_date(columns.find(ImportField::date)),
      m_time(columns.find(ImportField::time)), m_leftSite(columns.find(ImportField::leftSite)), m_hash(std::make_unique<Sha256>())
{
    for (const auto& column : columns.all)
        addColumn(column);
}

Result<RowReader> RowReader::create(const ImportColumns& columns, const RowSetting& setting)
{
    auto place = PlaceReader::create(columns, setting.system, setting.decimal, setting.pack->settings.areaWSEN,
                                     setting.swapped);
    if (!place)
        return fail(place.error());
    return RowReader(columns, setting, std::move(*place));
}

void RowReader::addColumn(const ImportColumn& column)
{
    const auto number = [&](double least, double most, bool whole, bool size = false) {
        m_numbers.push_back({&column, least, most, whole, size});
    };
    switch (column.field) {
    case ImportField::remark: m_remarks.push_back(&column); break;
    case ImportField::code: m_codes.push_back(&column); break;
    case ImportField::minutes: number(0, 1440, true); break;
    case ImportField::trees: number(0, 100000, true); break;
    case ImportField::crown: number(0, 100, true); break;
    case ImportField::height: number(0, 100, false); break;
    case ImportField::gallCount: number(0, 1000000, true); break;
    case ImportField::gallSize: {
        const auto [least, most] = gallLimits(*m_setting.pack);
        number(least, most, false, true);
        break;
    }
    case ImportField::leafingShift: number(-366, 366, true); break;
    case ImportField::girth: number(0, 5000, false); break;
    case ImportField::characterValue: number(column.character->hardMin, column.character->hardMax, false); break;
    case ImportField::signMeasure:
        number(column.sign->hardMin, column.sign->hardMax, false, column.sign->unit == "mm");
        break;
    case ImportField::signCount: number(0, 1000000, true); break;
    default: static_cast<void>(m_answers.add(column)); break;
    }
}

std::string_view RowReader::cell(const ImportColumn* column, std::span<const std::string_view> cells) const
{
    return column == nullptr ? std::string_view{} : trim(cells[column->index]);
}

void RowReader::checkNumber(const NumberColumn& number, std::string_view text, CheckedRow& out)
{
    out.numbers.push_back(nothing);
    text = trim(text);
    if (text.empty())
        return;
    const auto read = readNumber(text, m_setting.decimal);
    const auto bad = [&](std::string_view kind, std::string suggestion) {
        out.problems.push_back({number.column, std::string(kind), {}, std::move(suggestion), {}});
    };
    if (!read)
        bad(numberFaultKind(read.error()), read.error() == NumberFault::ambiguous ? "--decimal" : "");
    else if (!(*read >= number.least && *read <= number.most))
        bad(number.size ? "size_out_of_range" : "value-out-of-range",
            numberText(number.least) + " to " + numberText(number.most));
    else if (number.whole && *read != std::floor(*read))
        bad(kind::unreadableNumber, "");
    else
        out.numbers.back() = *read;
}

bool RowReader::check(std::span<const std::string_view> cells, CheckedRow& out)
{
    out.problems.clear();
    out.numbers.clear();
    CellProblem problem;
    out.label = cell(m_label, cells);
    if (out.label.empty())
        out.problems.push_back({m_label, "missing-label", {}, {}, {}});
    else if (looksMangled(out.label))
        out.problems.push_back({m_label, std::string(kind::spreadsheetMangled), {}, {}, {}});
    for (const ImportColumn* code : m_codes)
        if (looksMangled(trim(cells[code->index])))
            out.problems.push_back({code, std::string(kind::spreadsheetMangled), {}, {}, {}});
    if (!m_place.read(cells, out.place, problem))
        out.problems.push_back(problem);
    if (m_date != nullptr) {
        problem = {};
        if (!m_when.read(cells, out.when, problem))
            out.problems.push_back(problem);
    }
    for (const auto& number : m_numbers)
        checkNumber(number, cells[number.column->index], out);
    if (!cell(m_leftSite, cells).empty() && !readTime(cell(m_leftSite, cells)))
        out.problems.push_back({m_leftSite, std::string(kind::unreadableTime), {}, {}, {}});
    return out.problems.empty();
}

void RowReader::takePosition(const CheckedRow& checked, TableRow& out) const
{
    out.place = checked.place.parsed;
    if (!out.place) {
        out.visit.position.reset();
        return;
    }
    if (!out.visit.position)
        out.visit.position.emplace();
    Position& position = *out.visit.position;
    const ParsedPosition& parsed = *out.place;
    position.typed.assign(checked.place.text());
    position.system.assign(parsed.system.name());
    position.latitude = parsed.latitude;
    position.longitude = parsed.longitude;
    position.easting.reset();
    position.northing.reset();
    if (parsed.system.isProjected()) {
        position.easting = parsed.centreEasting();
        position.northing = parsed.centreNorthing();
    }
    position.squareMetres = parsed.squareMetres;
    position.uncertaintyMetres = parsed.uncertaintyMetres;
    position.operation.assign("none");
    position.operationAccuracyMetres = parsed.system.isProjected() ? -1 : 0;
    position.warning.assign(warningKind(parsed.warning));
    position.obtained.assign("import");
}

void RowReader::takeNumber(const ImportColumn& column, double value, TableRow& out) const
{
    Visit& visit = out.visit;
    const int whole = static_cast<int>(value);
    switch (column.field) {
    case ImportField::minutes: visit.effort.minutes = whole; break;
    case ImportField::trees: visit.effort.trees = whole; break;
    case ImportField::crown: visit.effort.crownPercent = whole; break;
    case ImportField::height: visit.effort.heightMetres = value; break;
    case ImportField::gallCount: visit.gallCount = whole; break;
    case ImportField::gallSize: visit.gallSizeMm = value; break;
    case ImportField::leafingShift: visit.leafingShiftDays = whole; break;
    case ImportField::girth: out.girth = value; break;
    case ImportField::characterValue: answerAbout(visit, *column.character).value = value; break;
    case ImportField::signMeasure: answerAbout(visit, *column.sign).measure = value; break;
    case ImportField::signCount: answerAbout(visit, *column.sign).count = whole; break;
    default: break;
    }
}

void RowReader::takeNames(std::span<const std::string_view> cells, const CheckedRow& checked, TableRow& out) const
{
    const auto orElse = [&](const ImportColumn* column, const std::string& other) -> std::string_view {
        const std::string_view text = cell(column, cells);
        return text.empty() ? std::string_view(other) : text;
    };
    out.label.assign(checked.label);
    out.site.assign(orElse(m_site, m_setting.site));
    out.observer.assign(orElse(m_observer, m_setting.observer));
    out.companions.clear();
    for (const auto& companion : split(cell(m_companions, cells), ';'))
        if (!trim(companion).empty())
            out.companions.emplace_back(trim(companion));
}

void RowReader::takeWhen(std::span<const std::string_view> cells, const CheckedRow& checked, Visit& visit) const
{
    visit.date = checked.when.date;
    visit.time = checked.when.time;
    visit.whenTyped.assign(cell(m_date, cells));
    if (const auto clock = cell(m_time, cells); !clock.empty())
        visit.whenTyped.append(" ").append(clock);
    if (const auto left = cell(m_leftSite, cells); !left.empty())
        visit.hygiene.leftSite = readTime(left)->time;
}

void RowReader::take(std::span<const std::string_view> cells, const CheckedRow& checked, TableRow& out)
{
    Visit& visit = out.visit;
    makeEmpty(visit);
    out.girth.reset();
    takeNames(cells, checked, out);
    takePosition(checked, out);
    takeWhen(cells, checked, visit);
    const auto keep = [&](const std::vector<const ImportColumn*>& columns) {
        for (const ImportColumn* column : columns)
            if (const auto text = trim(cells[column->index]); !text.empty())
                keepAsRemark(visit, *column, text);
    };
    keep(m_remarks);
    if (m_setting.swapped && !checked.place.joined.empty() && !out.place->system.isProjected())
        visit.remarks.push_back({"position", "latitude and longitude swapped on request"});
    const std::size_t unknown = visit.remarks.size();
    keep(m_codes);
    m_answers.take(cells, visit);
    for (std::size_t i = 0; i < m_numbers.size(); ++i)
        if (!std::isnan(checked.numbers[i]))
            takeNumber(*m_numbers[i].column, checked.numbers[i], out);
    if (m_note != nullptr)
        visit.note.assign(cells[m_note->index]);
    fingerprintText(out, unknown, m_text);
    m_hash->add(m_text);
    const Digest digest = m_hash->finish();
    std::copy_n(digest.begin(), out.fingerprint.size(), out.fingerprint.begin());
}

} // namespace cupule
