#include "core/report/account.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/report/paper.h"

namespace cupule::report {

namespace {

using Page = PaperOf<AccountData>;

int of(const std::map<RecordState, int>& counts, RecordState state)
{
    const auto found = counts.find(state);
    return found == counts.end() ? 0 : found->second;
}

std::string signNames(const AccountFind& find, const Pack& pack)
{
    std::string out;
    for (const auto& id : find.signs) {
        const Sign* sign = pack.sign(id);
        out += (out.empty() ? "" : "; ") + (sign == nullptr           ? id
                                            : sign->shortName.empty() ? sign->name
                                                                      : sign->shortName);
    }
    return out;
}

/// How far a find can be believed, and on what.
std::string howSure(const AccountFind& find, const Words& words)
{
    std::string out;
    if (find.state != RecordState::accepted)
        out = find.oneOfTwo ? words.text("one of two verifiers has decided; the second has not")
                            : words.text("claimed, not decided");
    else if (find.laboratory)
        out = words.text("accepted on a laboratory report");
    else if (find.verifiers > 1)
        out = words.text("accepted by {n} verifiers", {{"n", words.number(find.verifiers)}});
    else
        out = words.text("accepted by one verifier on what was shown");
    if (find.earlierGenerationOnly)
        out += words.text("; old galls only, of an earlier year");
    return out;
}

void effort(const Page& page)
{
    const auto& d = page.data;
    page.heading("What was looked at");
    if (d.visits == 0) {
        page.say("No visit is in this store for that time.");
        return;
    }
    page.say("{visits} visits to {trees} trees at {sites} sites, by {people} people, from {first} to {last}.",
             {{"visits", page.count(d.visits)},
              {"trees", page.count(d.trees)},
              {"sites", page.count(d.sites)},
              {"people", page.count(d.people)},
              {"first", page.words.date(d.first)},
              {"last", page.words.date(d.last)}});
    Figure figure{"bars", page.words.text("Visits in each half of a month"), {}, {}};
    static constexpr const char* letters = "JFMAMJJASOND";
    for (std::size_t i = 0; i < d.halfMonths.size(); ++i) {
        figure.values.emplace_back(i % 2 == 0 ? std::string(1, letters[i / 2]) : std::string(),
                                   d.halfMonths[i]);
        if (d.halfMonths[i] > 0)
            figure.inWords += fmt::format("{}{}/{}: {}", figure.inWords.empty() ? "" : ", ", i / 2 + 1,
                                          i % 2 + 1, d.halfMonths[i]);
    }
    page.out.blocks.emplace_back(std::move(figure));
    Table table{page.words.text("Records by state"), {{page.words.text("State"), false}}, {}};
    table.columns.push_back({page.words.text("All"), true});
    table.columns.push_back({page.words.text("Galls claimed"), true});
    table.columns.push_back({page.words.text("Nothing seen"), true});
    for (const RecordState state : {RecordState::draft, RecordState::submitted, RecordState::accepted,
                                    RecordState::returned, RecordState::rejected}) {
        const auto finds = std::count_if(d.finds.begin(), d.finds.end(),
                                         [&](const AccountFind& f) { return f.state == state; });
        // a rejected claim is no find and is not counted as one
        table.rows.push_back(
            {page.words.state(state), page.count(of(d.byState, state)),
             state == RecordState::rejected ? std::string("-") : page.count(static_cast<double>(finds)),
             page.count(of(d.nothingByState, state))});
    }
    page.out.blocks.emplace_back(std::move(table));
}

Table findTable(const Page& page, bool accepted)
{
    Table table{{},
                {{page.words.text("Tree"), false},
                 {page.words.text("Square"), false},
                 {page.words.text("Seen on"), false},
                 {page.words.text("What was seen"), false},
                 {page.words.text("How sure"), false},
                 {page.words.text("Authority told"), false}},
                {}};
    for (const auto& find : page.data.finds)
        if ((find.state == RecordState::accepted) == accepted)
            table.rows.push_back({find.tree, find.square, page.words.date(find.date),
                                  signNames(find, page.pack), howSure(find, page.words),
                                  find.told ? page.words.text("yes") : page.words.text("not yet")});
    return table;
}

void finds(const Page& page)
{
    page.heading("What was found, and how sure");
    Table accepted = findTable(page, true);
    if (accepted.rows.empty())
        page.say("No find has been accepted.");
    else
        page.out.blocks.emplace_back(std::move(accepted));
    Table waiting = findTable(page, false);
    if (!waiting.rows.empty()) {
        waiting.caption = page.words.text("Claimed and not decided");
        page.out.blocks.emplace_back(std::move(waiting));
    }
    const auto untold = std::count_if(page.data.finds.begin(), page.data.finds.end(),
                                      [](const AccountFind& find) { return !find.told; });
    if (untold > 0)
        page.say("{n} of these have no note that the plant-health authority was told. Whether and how fast "
                 "it must be told "
                 "is for the authority's rules to say; a suspicion may be enough.",
                 {{"n", page.count(static_cast<double>(untold))}}, Tone::caution);
}

/// Of fewer people the lowest and the highest value would say whose they are (common practice, no source).
constexpr int fewestUnrecognized = 3;

/// What the chance of detection was taken to be, and what the looks amount to with it.
void detection(const Page& page)
{
    const AccountDetection& d = page.data.detection;
    const auto inTen = [&](double chance) { return page.count(chance * 100); };
    const Arguments chances{{"a", inTen(d.a)}, {"b", inTen(d.b)}, {"c", inTen(d.c)}};
    if (d.measured) {
        page.say("Detection: as measured of each observer in practice, the lower end of the 95 % interval, told with their consent. This was chosen; "
                 "without a choice the protocol's values stand. Drawings are easier than trees: outdoors it may be less.",
                 {}, Tone::caution);
        const Arguments who{{"n", page.count(d.people)}, {"measured", page.count(d.people - d.notMeasured)}, {"not", page.count(d.notMeasured)},
                            {"lowest", inTen(d.lowest)}, {"highest", inTen(d.highest)}};
        if (d.people - d.notMeasured >= fewestUnrecognized)
            page.say("Measured: {measured} of {n} observers, {lowest} to {highest} in 100 for a look of worth A, and for B and C as much less as in the protocol.", who);
        else
            page.say("Measured: {measured} of {n} observers. So few could be recognized by their values, which are left out.", who);
        page.say("Not measured: {not} of {n} observers; for them the protocol's values stand.", who);
    }
    page.say(d.measured ? "The protocol's values: a look of worth A finds a gall that is there {a} times in 100, B {b}, C {c}. Assumed: nobody measured them."
                        : "Detection: as the protocol states. A look of worth A finds a gall that is there {a} times in 100, B {b}, C {c}. Assumed: nobody "
                          "measured them.",
             chances);
    if (d.trees == 0) {
        page.say("No accepted look at a tree is worth enough to say more.");
        return;
    }
    page.say("Had all {trees} of these trees carried galls, about {found} in 100 of them would have been found by these {looks} looks. Looks at one tree in a "
             "year count together, over the largest share of its crown that was looked at.",
             {{"trees", page.count(d.trees)}, {"found", inTen(d.found)}, {"looks", page.count(d.looks)}});
    if (d.looksLeftOut > 0)
        page.say("Left out, as the share of the crown is not written down: {n} looks.", {{"n", page.count(d.looksLeftOut)}});
}

void nothing(const Page& page)
{
    const auto& d = page.data;
    page.heading("Where nothing was seen");
    int all = 0;
    for (const auto& [letter, count] : d.nothingWorth)
        all += count;
    if (all == 0) {
        page.say("No record of nothing seen has been accepted.");
        return;
    }
    page.say("{n} accepted records of nothing seen; {trees} trees have one and no gall claimed.",
             {{"n", page.count(all)}, {"trees", page.count(d.treesNothing)}});
    Table table{page.words.text("What they are worth, by month, effort and host"),
                {{page.words.text("Worth"), false}, {page.words.text("Records"), true}},
                {}};
    constexpr std::pair<char, const char*> letters[] = {{'A', "A: strong evidence about these trees this year"},
                                                        {'B', "B: fair"},
                                                        {'C', "C: weak"},
                                                        {'0', "0: says nothing about galls"}};
    for (const auto& [letter, meaning] : letters) {
        const auto found = d.nothingWorth.find(letter);
        table.rows.push_back(
            {page.words.text(meaning), page.count(found == d.nothingWorth.end() ? 0 : found->second)});
    }
    page.out.blocks.emplace_back(std::move(table));
    detection(page);
    page.say("Nothing seen is about the parts of these trees that were looked at on that day. It says "
             "nothing about other "
             "trees and declares no place free of anything.",
             {}, Tone::note);
}

void waits(const Page& page)
{
    const auto& d = page.data;
    page.heading("What waits");
    List list;
    const auto item = [&](const char* english, int n) {
        if (n > 0)
            list.items.push_back(page.words.text(english, {{"n", page.count(n)}}));
    };
    item("Drafts not handed in: {n}", of(d.byState, RecordState::draft));
    item("Handed in and not decided: {n}", of(d.byState, RecordState::submitted));
    item("In new ground, waiting for the second of two verifiers: {n}", d.oneOfTwo);
    item("Sent back, waiting for the observer: {n}", d.returnedWaiting);
    item("Accepted, with a correction waiting: {n}", d.correctionsWaiting);
    item("Samples that cannot close yet: {n}", d.samplesLacking);
    if (list.items.empty())
        page.say("Nothing waits.");
    else
        page.out.blocks.emplace_back(std::move(list));
}

void samples(const Page& page)
{
    page.heading("Samples");
    if (page.data.samples.empty()) {
        page.say("No sample was taken.");
        return;
    }
    Table table{{}, {{page.words.text("State"), false}, {page.words.text("Samples"), true}}, {}};
    for (const auto& [state, count] : page.data.samples)
        table.rows.push_back({page.words.state(state), page.count(count)});
    page.out.blocks.emplace_back(std::move(table));
    page.say("A result speaks of the material in the bag, never of the tree or the site. After a break in "
             "custody it is never "
             "sole proof.",
             {}, Tone::note);
}

void cautions(const Page& page)
{
    page.heading("Cautions");
    List list;
    for (const auto& line : page.pack.standingNotice)
        list.items.push_back(line);
    if (!list.items.empty())
        page.out.blocks.emplace_back(std::move(list));
    page.say("Exact places and owners are left out. Keep it so until the authority agrees to publish them.",
             {}, Tone::note);
    page.out.blocks.emplace_back(Paragraph{page.pack.exportNote, Tone::caution});
    page.say(page.data.journalWhole
                 ? "The journal behind this page holds: {n} lines, each tied to the one before."
                 : "The journal behind this page does not hold. Treat every figure here with doubt until it "
                   "is explained.",
             {{"n", page.count(static_cast<double>(page.data.journalLines))}},
             page.data.journalWhole ? Tone::plain : Tone::caution);
}

/// Title, banner and foot.
Document titlePage(const AccountData& data, const Pack& pack, const Words& words)
{
    Document out;
    out.language = pack.language.empty() ? "en" : pack.language;
    if (data.year > 0)
        out.title = words.text("{store}: the season of {year}",
                               {{"store", data.storeName}, {"year", std::to_string(data.year)}});
    else
        out.title = words.text("{store}: all seasons", {{"store", data.storeName}});
    out.subtitle =
        words.text("Account made on {date}. {pack}, version {version}.",
                   {{"date", words.date(data.made)}, {"pack", pack.name}, {"version", pack.version}});
    if (data.demonstration)
        out.demonstration =
            words.text("Demonstration: every person, place and find on this page is invented.");
    out.foot = pack.exportNote;
    return out;
}

} // namespace

Document account(const AccountData& data, const Pack& pack, const Words& words)
{
    Document out = titlePage(data, pack, words);
    const Page page{{pack, words, out}, data};
    effort(page);
    finds(page);
    nothing(page);
    waits(page);
    samples(page);
    cautions(page);
    return out;
}

} // namespace cupule::report
