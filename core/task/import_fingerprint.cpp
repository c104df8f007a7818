#include "core/task/import_fingerprint.h"

#include <cmath>

#include "core/base/text.h"
#include "core/record/names.h"

namespace cupule {

namespace {

void field(std::string& out, char letter, std::string_view text)
{
    if (text.empty())
        return;
    out += letter;
    for (;;) {                                       // line ends are those of the program that saved the file
        const auto end = text.find('\r');
        out.append(text.substr(0, end));
        if (end == std::string_view::npos)
            break;
        out += '\n';
        text.remove_prefix(end + (end + 1 < text.size() && text[end + 1] == '\n' ? 2 : 1));
    }
    out += '\x1f';
}

void field(std::string& out, char letter, const char* text)
{
    field(out, letter, std::string_view(text));
}

void field(std::string& out, char letter, double value)
{
    field(out, letter, numberText(value));
}

void place(std::string& out, const ParsedPosition& at)
{
    if (!at.system.isProjected()) {
        field(out, 'p', at.latitude);
        field(out, 'p', at.longitude);
        return;
    }
    const auto millimetres = [](double metres) { return std::round(metres * 1000) / 1000; };
    field(out, 'p', at.system.name());
    field(out, 'p', millimetres(at.cornerEasting));
    field(out, 'p', millimetres(at.cornerNorthing));
    field(out, 'p', at.squareMetres);
}

void answers(std::string& out, const Visit& visit)
{
    for (const auto& seen : visit.characters) {
        field(out, 'k', seen.character);
        field(out, '=', seen.state);
        if (seen.value)
            field(out, 'v', *seen.value);
        if (seen.notJudged)
            field(out, '?', "1");
    }
    for (const auto& line : visit.observations) {
        field(out, 's', line.sign);
        field(out, '=', name(line.answer));
        if (line.noneOnTree)
            field(out, '0', "1");
        if (line.measure)
            field(out, 'v', *line.measure);
        if (line.count)
            field(out, 'n', *line.count);
    }
    if (visit.gallCount)
        field(out, 'g', *visit.gallCount);
    if (visit.gallSizeMm)
        field(out, 'z', *visit.gallSizeMm);
}

void circumstances(std::string& out, const Visit& visit)
{
    const Effort& effort = visit.effort;
    const auto number = [&](char letter, const auto& value) {
        if (value)
            field(out, letter, static_cast<double>(*value));
    };
    number('M', effort.minutes);
    number('T', effort.trees);
    number('C', effort.crownPercent);
    number('H', effort.heightMetres);
    number('B', effort.binoculars);
    number('I', effort.innerCrown);
    field(out, 'L', effort.light);
    field(out, 'F', effort.leaves);
    const Hygiene& left = visit.hygiene;
    for (const auto& [letter, item] :
         {std::pair{'c', left.clothes}, {'b', left.boots}, {'w', left.vehicle}, {'t', left.tools}})
        if (item != Confirmed::open)
            field(out, letter, name(item));
    if (left.leftSite)
        field(out, 'e', left.leftSite->text());
    if (visit.leafingShiftDays)
        field(out, 'D', *visit.leafingShiftDays);
}

} // namespace

void fingerprintText(const TableRow& row, std::size_t unknownRemarks, std::string& out)
{
    out.clear();
    field(out, 'l', row.label);
    field(out, 'S', row.site);
    if (row.place)
        place(out, *row.place);
    field(out, 'd', row.visit.date.days);
    if (row.visit.time)
        field(out, 'h', row.visit.time->secondOfDay);
    field(out, 'o', row.observer);
    for (const auto& companion : row.companions)
        field(out, 'O', companion);
    answers(out, row.visit);
    circumstances(out, row.visit);
    field(out, 'N', row.visit.note);
    for (std::size_t i = unknownRemarks; i < row.visit.remarks.size(); ++i)
        field(out, 'R', row.visit.remarks[i].text);
}

} // namespace cupule
