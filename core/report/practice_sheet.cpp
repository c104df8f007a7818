#include "core/report/practice_sheet.h"

#include <algorithm>

#include "core/report/paper.h"

namespace cupule::report {

namespace {

using Page = PaperOf<PracticeSheet>;

constexpr std::size_t mostConfused = 12;

std::string percent(double share, const Words& words)
{
    return words.text("{n} %", {{"n", words.number(share * 100)}});
}

std::string percentOr(const std::optional<double>& share, const Words& words)
{
    return share ? percent(*share, words) : "-";
}

std::string ratioWords(const std::optional<Share>& ratio, const Words& words)
{
    if (!ratio)
        return "-";
    return words.text("{n} ({from} to {to})", {{"n", words.number(ratio->value, 1)}, {"from", words.number(ratio->interval.lower, 1)}, {"to", words.number(ratio->interval.upper, 1)}});
}

std::string readyWords(const std::optional<SubjectResult>& result, const Words& words)
{
    if (!result || result->readiness == Readiness::notYetKnown)
        return words.text("not yet known");
    return words.text("ready");
}

const char* whole(AskedKind kind)
{
    switch (kind) {
    case AskedKind::host: return "All trees together";
    case AskedKind::sign: return "All signs together";
    default: return "All conclusions together";
    }
}

std::string nameOf(const SubjectResult& result, const Page& page)
{
    return result.subject.empty() ? page.words.text(whole(result.kind)) : subjectWords(result.kind, result.subject, page.pack, page.words);
}

std::string fewWords(const SubjectResult& result, const Words& words)
{
    return result.fewThere || result.fewAbsent ? words.text("few") : std::string();
}

/// Found and passed over, with how many answers each share is out of.
Table believed(const Page& page, AskedKind kind)
{
    Table table = page.table({"What", "There: answers", "Found", "Not there: answers", "Rightly passed", "Not judged", "Few answers"});
    const auto add = [&](const std::string& name, const SubjectResult& result) {
        const YesNoTable& t = result.table;
        const double there = static_cast<double>(t.rightYes + t.wrongNo + result.notJudgedThere);
        const double absent = static_cast<double>(t.rightNo + t.wrongYes + result.notJudgedAbsent);
        table.rows.push_back({name, page.count(there), shareWords(result.strict.sensitivity, page.words), page.count(absent),
                              shareWords(result.strict.specificity, page.words), page.count(static_cast<double>(result.notJudgedThere + result.notJudgedAbsent)),
                              fewWords(result, page.words)});
    };
    if (kind == AskedKind::sign)
        for (const SubjectResult& group : page.data.results.groups)
            add(page.words.text("All gall lines together"), group);
    for (const SubjectResult& result : page.data.results.subjects)
        if (result.kind == kind)
            add(nameOf(result, page), result);
    for (const std::size_t number : {1u, 2u, 3u, 4u, 5u})
        table.columns[number].number = true;
    return table;
}

Table meaning(const Page& page)
{
    Table table = page.table({"What", "A yes is right", "A no is right", "A yes raises the odds", "A no lowers the odds", "Agreement with the key (kappa)"});
    const auto add = [&](const std::string& name, const SubjectResult& result) {
        std::string kappa = "-";
        if (result.withKey && result.withKey->kappa)
            kappa = page.words.text("{n} ({from} to {to})", {{"n", page.count(*result.withKey->kappa, 2)}, {"from", page.count(result.withKey->interval.lower, 2)}, {"to", page.count(result.withKey->interval.upper, 2)}});
        table.rows.push_back({name, percentOr(result.yesIsRight, page.words), percentOr(result.noIsRight, page.words),
                              ratioWords(result.judged.ratioOfYes, page.words), ratioWords(result.judged.ratioOfNo, page.words), kappa});
    };
    for (const SubjectResult& group : page.data.results.groups)
        add(page.words.text("All gall lines together"), group);
    for (const SubjectResult& result : page.data.results.subjects)
        if (result.subject.empty() || result.kind == AskedKind::sign)
            add(nameOf(result, page), result);
    return table;
}

void believe(const Page& page)
{
    page.heading("How far a yes and a no can be believed");
    page.say("Shares with their 95 % interval (Wilson). “Could not be judged” counts as missed here. Out of fewer than {n} answers a share is a first "
             "impression and no more.", {{"n", page.count(static_cast<double>(fewAnswers))}}, Tone::note);
    for (const AskedKind kind : {AskedKind::sign, AskedKind::host, AskedKind::conclude}) {
        Table table = believed(page, kind);
        table.caption = page.words.text(kind == AskedKind::sign ? "Signs" : kind == AskedKind::host ? "Host or not" : "May it be concluded");
        if (!table.rows.empty())
            page.out.blocks.emplace_back(std::move(table));
    }
    Table table = meaning(page);
    table.caption = page.words.text("What an answer means where {share} of trees have the sign", {{"share", percent(page.data.prevalence, page.words)}});
    if (!table.rows.empty())
        page.out.blocks.emplace_back(std::move(table));
}

void ready(const Page& page)
{
    if (page.data.ofCohort || page.data.results.groups.empty())
        return;
    const SubjectResult& galls = page.data.results.groups.front();
    page.heading("Ready to be relied on for galls");
    if (galls.readiness == Readiness::ready) {
        page.say("Ready: the lower end of both intervals reaches the programme's limits ({found} found, {passed} rightly passed).",
                 {{"found", percent(page.data.limits.sensitivity, page.words)}, {"passed", percent(page.data.limits.specificity, page.words)}});
        return;
    }
    page.say("Not yet known: the lower end of both intervals must reach the programme's limits ({found} found, {passed} rightly passed).",
             {{"found", percent(page.data.limits.sensitivity, page.words)}, {"passed", percent(page.data.limits.specificity, page.words)}});
    if (galls.yesToGo && galls.noToGo)
        page.say("If every further answer is right, {there} more where a gall is there and {absent} where none is are enough.",
                 {{"there", page.count(static_cast<double>(*galls.yesToGo))}, {"absent", page.count(static_cast<double>(*galls.noToGo))}});
}

void confused(const Page& page)
{
    page.heading("What was taken for what");
    const auto look = std::ranges::find(page.data.results.confusions, AskedKind::look, &Confusion::kind);
    if (look != page.data.results.confusions.end()) {
        Table table{page.words.text("Rows: what it was. Columns: what it was called"), {{page.words.text("It was"), false}}, {}};
        for (const std::string& given : look->given)
            table.columns.push_back({subjectWords(AskedKind::look, given, page.pack, page.words), true});
        for (std::size_t i = 0; i < look->truths.size(); ++i) {
            std::vector<std::string> row{subjectWords(AskedKind::look, look->truths[i], page.pack, page.words)};
            for (const std::int64_t count : look->counts[i])
                row.push_back(page.count(static_cast<double>(count)));
            table.rows.push_back(std::move(row));
        }
        page.out.blocks.emplace_back(std::move(table));
    }
    List list;
    for (const Confused& each : page.data.results.confused)
        if (list.items.size() < mostConfused && !isYesNo(each.kind) && each.kind != AskedKind::order)
            list.items.push_back(page.words.text("{truth} was called {given}: {times} of {of} times",
                                                 {{"truth", subjectWords(each.kind, each.truth, page.pack, page.words)}, {"given", subjectWords(each.kind, each.given, page.pack, page.words)},
                                                  {"times", page.count(static_cast<double>(each.times))}, {"of", page.count(static_cast<double>(each.of))}}));
    if (list.items.empty())
        page.say("Nothing was taken for something else.");
    else
        page.out.blocks.emplace_back(std::move(list));
}

void sure(const Page& page)
{
    page.heading("How sure, and how often right");
    const auto& calibration = page.data.results.calibration;
    if (!calibration) {
        page.say("Nobody has said how sure they were.");
        return;
    }
    page.say("{n} answers came with how sure somebody was: {stated} on average, and {right} were right. Brier score {brier} (0 is perfect; always saying "
             "50 % gives 0.25).", {{"n", page.count(static_cast<double>(calibration->answers))}, {"stated", percent(calibration->stated, page.words)},
                                   {"right", shareWords(calibration->right, page.words)}, {"brier", page.count(calibration->brier, 3)}});
    Table table = page.table({"Said to be sure", "Answers", "Sure on average", "Right"});
    for (const ReliabilityRow& row : calibration->rows)
        table.rows.push_back({page.words.text("over {from} to {to} %", {{"from", page.count(row.from)}, {"to", page.count(row.to)}}), page.count(static_cast<double>(row.answers)),
                              percent(row.stated, page.words), shareWords(row.right, page.words)});
    page.out.blocks.emplace_back(std::move(table));
}

void learned(const Page& page)
{
    if (page.data.results.curve.size() < 2)
        return;
    page.heading("How it went");
    Figure figure{"bars", page.words.text("Right answers, in percent, run by run"), {}, {}};
    for (const CurvePoint& point : page.data.results.curve) {
        figure.values.emplace_back(page.count(static_cast<double>(point.to)), point.right.value * 100);
        addPart(figure.inWords, page.words.text("answers {from} to {to}: {share}", {{"from", page.count(static_cast<double>(point.from))}, {"to", page.count(static_cast<double>(point.to))},
                                                                                    {"share", percent(point.right.value, page.words)}}));
    }
    page.out.blocks.emplace_back(std::move(figure));
}

void next(const Page& page)
{
    page.heading("What to practise next");
    List list;
    for (const NextPractice& each : page.data.next) {
        std::string line = page.words.text("{what}: {share} of {n} answers wrong or not judged",
                                           {{"what", subjectWords(each.kind, each.subject, page.pack, page.words)}, {"share", percent(each.wrong, page.words)}, {"n", page.count(static_cast<double>(each.answers))}});
        if (!each.takenFor.empty())
            line += page.words.text(", mostly called {given}", {{"given", subjectWords(each.kind, each.takenFor, page.pack, page.words)}});
        list.items.push_back(std::move(line));
    }
    if (list.items.empty())
        page.say("Nothing was wrong; go on at a higher step.");
    else
        page.out.blocks.emplace_back(std::move(list));
}

void recruits(const Page& page)
{
    page.heading("Recruits");
    Table table = page.table({"Who", "Answers", "Right", "Galls found", "Rightly passed", "Ready for galls", "Practise next"});
    int number = 0;
    for (const SheetRecruit& each : page.data.recruits) {
        ++number;
        const std::string who = each.who.empty() ? page.words.text("Recruit {n}", {{"n", page.count(number)}}) : each.who;
        const auto share = [&](std::optional<Share> Accuracy::* member) { return each.galls ? shareWords(each.galls->strict.*member, page.words) : std::string("-"); };
        table.rows.push_back({who, page.count(static_cast<double>(each.answers)),
                              each.answers > 0 ? percent(static_cast<double>(each.right) / static_cast<double>(each.answers), page.words) : "-",
                              share(&Accuracy::sensitivity), share(&Accuracy::specificity), readyWords(each.galls, page.words), each.practiseNext});
    }
    page.out.blocks.emplace_back(std::move(table));
}

void agreement(const Page& page)
{
    page.heading("How far they agree");
    const auto& group = page.data.agreement;
    if (!group || !group->kappa) {
        page.say("For this, at least two people must have answered the same series.");
        return;
    }
    page.say("{people} people answered the same {questions} questions. Fleiss' kappa is {kappa} ({from} to {to}); {observed} of pairs of answers are alike.",
             {{"people", page.count(static_cast<double>(page.data.agreementPeople))}, {"questions", page.count(static_cast<double>(page.data.agreementQuestions))},
              {"kappa", page.count(*group->kappa, 2)}, {"from", page.count(group->interval.lower, 2)}, {"to", page.count(group->interval.upper, 2)},
              {"observed", percent(group->observed, page.words)}});
}

std::string titleOf(const PracticeSheet& sheet, const Words& words)
{
    if (sheet.ofCohort)
        return sheet.cohort.empty() ? words.text("Practice of everybody") : words.text("Practice of {cohort}", {{"cohort", sheet.cohort}});
    return sheet.who.empty() ? words.text("Practice of a recruit") : words.text("Practice of {who}", {{"who", sheet.who}});
}

} // namespace

std::string subjectWords(AskedKind kind, const std::string& subject, const Pack& pack, const Words& words)
{
    if (subject == saidNotJudged)
        return words.text("could not be judged");
    if (subject == "none")
        return words.text("nothing of the kind");
    if (const Sign* sign = pack.sign(subject))
        return sign->shortName.empty() ? sign->name : sign->shortName;
    if (const Kind* tree = pack.kind(subject))
        return tree->commonName.empty() ? tree->name : tree->commonName;
    if (const Character* character = pack.character(subject))
        return character->name;
    const std::size_t mark = subject.find('#');
    if (const Sign* sign = mark == std::string::npos ? nullptr : pack.sign(subject.substr(0, mark)))
        return words.text("what {sign} does not show", {{"sign", sign->shortName.empty() ? sign->name : sign->shortName}});
    if (subject.empty() || subject == "character" || subject == "sample")
        return words.code(askedName(kind));
    return words.code(subject);
}

std::string shareWords(const std::optional<Share>& share, const Words& words)
{
    if (!share)
        return "-";
    return words.text("{n} % ({from} to {to})", {{"n", words.number(share->value * 100)}, {"from", words.number(share->interval.lower * 100)}, {"to", words.number(share->interval.upper * 100)}});
}

Document practiceSheet(const PracticeSheet& sheet, const Pack& pack, const Words& words)
{
    Document out;
    out.language = pack.language;
    out.title = titleOf(sheet, words);
    out.subtitle = words.text("{store}, {date}", {{"store", sheet.storeName}, {"date", words.date(sheet.made)}});
    if (sheet.demonstration)
        out.demonstration = words.text("Demonstration: every person, place and find on this page is invented.");
    out.foot = words.text("Practice is on drawings and photos. It is no examination, and says how somebody judged these, not how they will judge a tree.");
    const Page page{{pack, words, out}, sheet};
    page.say("{n} answers, {right} of them right.", {{"n", page.count(static_cast<double>(sheet.results.answers))}, {"right", page.count(static_cast<double>(sheet.results.right))}});
    if (sheet.results.answers == 0)
        return out;
    if (sheet.ofCohort)
        recruits(page);
    ready(page);
    next(page);
    believe(page);
    confused(page);
    sure(page);
    learned(page);
    if (sheet.ofCohort)
        agreement(page);
    return out;
}

} // namespace cupule::report
