// Signs with their windows, the questions of the season, and what a "nothing seen" is worth in each
// half-month.

#include <array>
#include <utility>

#include "core/protocol/sections.h"

namespace cupule {

namespace {

constexpr int lastDay = 366;

constexpr std::array<std::pair<std::string_view, SignGroup>, 7> groupNames{
    {{"gall", SignGroup::gall},
     {"gall-detail", SignGroup::gallDetail},
     {"supporting", SignGroup::supporting},
     {"confusable", SignGroup::confusable},
     {"wrong-host", SignGroup::wrongHost},
     {"laboratory", SignGroup::laboratory},
     {"computed", SignGroup::computed}}};

std::map<std::string, Window> readWindows(Node& owner)
{
    std::map<std::string, Window> byRegion;
    owner.members("windows", Need::required, [&](const std::string& region, Node& node) {
        const std::size_t faultsBefore = node.faults().size();
        Window window;
        window.first = node.whole("first", 1, lastDay);
        window.peakFrom = node.whole("peakFrom", 1, lastDay);
        window.peakTo = node.whole("peakTo", 1, lastDay);
        window.last = node.whole("last", 0, lastDay);
        if (node.faults().size() > faultsBefore)
            window = {};
        byRegion[region] = window;
    });
    return byRegion;
}

Sign readSign(Node& node, const Sources& sources)
{
    Sign sign;
    sign.id = node.text("id");
    sign.name = node.text("name");
    sign.shortName = node.text("shortName");
    sign.part = node.text("part");
    sign.group = node.choice<SignGroup>("group", groupNames);
    sign.earlierGeneration = node.flag("earlierGeneration");
    sign.persists = node.flag("persists");
    sign.shiftFactor = node.maybeNumber("shiftFactor").value_or(0);
    sign.windows = readWindows(node);
    sign.weight = node.text("weight");
    sign.weightReason = node.text("weightReason");
    node.object("measure", Need::optional, [&](Node& measure) {
        sign.measure = measure.text("words");
        sign.unit = measure.text("unit");
        sign.usualMin = measure.number("usualMin");
        sign.usualMax = measure.number("usualMax");
        sign.hardMin = measure.number("hardMin");
        sign.hardMax = measure.number("hardMax");
    });
    sign.action = node.text("action");
    sign.caution = node.text("caution", Need::optional);
    sign.mustNotConclude = node.text("mustNotConclude");
    sign.onChecklist = node.flag("onChecklist", true);
    sign.onRuledOutTree = node.flag("onRuledOutTree");
    sign.alsoCalled = node.texts("alsoCalled", Need::optional);
    sign.ribbon = node.text("ribbon", Need::optional);
    sign.sources = sources.all(node);
    return sign;
}

SeasonQuestion readQuestion(Node& node, const Sources& sources)
{
    SeasonQuestion question;
    question.code = node.text("code");
    question.signs = node.texts("signs", Need::optional);
    question.characters = node.texts("characters", Need::optional);
    question.states = node.texts("states", Need::optional);
    node.members("quietOutside", Need::optional, [&](const std::string& region, Node& quiet) {
        Window window;
        window.first = quiet.whole("first", 1, lastDay);
        window.last = quiet.whole("last", 1, lastDay);
        question.quietOutside[region] = window;
    });
    question.together = node.texts("together", Need::optional);
    question.shiftFactor = node.maybeNumber("shiftFactor").value_or(0);
    question.words = node.text("words");
    question.source = sources.one(node);
    return question;
}

/// Copies a list of exactly as many entries as the array has; fault "pack.length".
template <class From, std::size_t count, class To>
void fill(Node& node, std::string_view name, const From& from, std::array<To, count>& to)
{
    if (from.size() == count)
        std::copy(from.begin(), from.end(), to.begin());
    else
        node.fault(name, "pack.length", std::to_string(count));
}

WorthRow readWorthRow(Node& node, const Sources& sources)
{
    WorthRow row;
    const std::string letters = node.text("letters");
    if (letters.find_first_not_of("ABC0") != std::string::npos)
        node.fault("letters", "pack.letter", letters);
    fill(node, "letters", letters, row.letters);
    fill(node, "startMoves", node.numbers("startMoves"), row.startMoves);
    fill(node, "lookFor", node.texts("lookFor"), row.lookFor);
    fill(node, "why", node.texts("why"), row.why);
    row.source = sources.one(node);
    return row;
}

} // namespace

void readSigns(Node& root, const Sources& sources, Pack& pack)
{
    root.each("signs", Need::required, [&](Node& node) { pack.signs.push_back(readSign(node, sources)); });
}

void readSeason(Node& root, const Sources& sources, Pack& pack)
{
    root.each("seasonQuestions", Need::optional,
              [&](Node& node) { pack.seasonQuestions.push_back(readQuestion(node, sources)); });
    root.members("worth", Need::required, [&](const std::string& region, Node& node) {
        pack.worth[region] = readWorthRow(node, sources);
    });
    root.each("worthConditions", Need::required, [&](Node& node) {
        WorthCondition condition;
        condition.id = node.text("id");
        condition.words = node.text("words");
        condition.essential = node.flag("essential");
        condition.source = sources.one(node);
        pack.worthConditions.push_back(std::move(condition));
    });
}

} // namespace cupule
