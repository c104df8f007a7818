#include "core/report/paper.h"

namespace cupule::report {

void Pen::heading(const char* english) const
{
    out.blocks.emplace_back(Heading{2, words.text(english)});
}

void Pen::say(const char* english, const Arguments& arguments, Tone tone) const
{
    out.blocks.emplace_back(Paragraph{words.text(english, arguments), tone});
}

Table Pen::table(std::initializer_list<const char*> titles) const
{
    Table table;
    for (const char* title : titles)
        table.columns.push_back({words.text(title), false});
    return table;
}

void Pen::row(Table& table, const char* name, const std::string& value) const
{
    table.rows.push_back({words.text(name), value.empty() ? words.text("not recorded") : value});
}

void Pen::regimes(const std::vector<Regime>& all) const
{
    for (const Regime& regime : all)
        say("In force here, from {issuer} ({reference}): dry galls: {dry}. Tell: {notify}.",
            {{"issuer", regime.issuer},
             {"reference", regime.reference.empty() ? words.text("without a number") : regime.reference},
             {"dry", words.text(regime.dryGalls.c_str())},
             {"notify", regime.notify.empty() ? words.text("ask the authority") : regime.notify}});
}

void addPart(std::string& list, const std::string& part, const char* between)
{
    if (!part.empty())
        list += (list.empty() ? "" : between) + part;
}

} // namespace cupule::report
