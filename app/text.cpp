#include "app/text.h"

#include <algorithm>

#include "app/words.h"
#include "core/base/text.h"
#include "core/base/zone.h"
#include "core/task/programme.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/words.h"
#include "ui/shell/settings.h"

namespace cupule::app {

namespace {

/// What a link's number and name are, kind by kind; null = as they stand.
struct LinkWords {
    const char* kind;
    const char* what;
    const char* who;
    bool whoFirst;
};
constexpr LinkWords linkWords[] = {{"cut", "pieces: {text}", "by {text}", false},
                                   {"inner-bag", nullptr, "closed by {text}", false},
                                   {"outer-bag", nullptr, "closed by {text}", false},
                                   {"hands", "seal {text}", "to {text}", true},
                                   {"laboratory", "seal {text}", nullptr, true},
                                   {"result", "report {text}", "signed by {text}", false},
                                   {"disposal", nullptr, "in the presence of {text}", false}};

/// "outer bag: B-1042, 27 June 2026, 10.11", with what is not well at the end.
std::string linkLine(const ChainLink& link, const SamplePage& page, const Words& words)
{
    std::string line = plain(ui::linkWord(link.kind));
    bool first = true;
    const auto add = [&](const std::string& part) {
        line += (first ? ": " : ", ") + part;
        first = false;
    };
    const auto found = std::find_if(std::begin(linkWords), std::end(linkWords),
                                    [&](const LinkWords& each) { return each.kind == link.kind; });
    const bool own = found != std::end(linkWords);
    const auto say = [&](const char* english, const std::string& text) {
        if (!text.empty())
            add(english == nullptr ? text : words.text(english, {{"text", text}}));
    };
    if (own && found->whoFirst)
        say(found->who, link.who);
    say(own ? found->what : nullptr, link.kind == "tree" ? page.treeLabel : link.what);
    if (!own || !found->whoFirst)
        say(own ? found->who : nullptr, link.who);
    if (link.when)
        add(plain(ui::momentText(*link.when)));
    if (link.state == LinkState::broken)
        line += words.text(" (broken)");
    else if (link.state == LinkState::open)
        line += words.text(" (open)");
    return line;
}

} // namespace

std::string visitSentence(const VisitLine& line, const Words& words)
{
    const std::string label = line.treeLabel.empty() ? words.text("(no tree yet)") : line.treeLabel;
    const std::string where =
        line.siteName.empty() ? label
                              : words.text("{tree} at {site}", {{"tree", label}, {"site", line.siteName}});
    std::string sentence =
        words.text("{where}, {date}, {who}: {what}; {state}", {{"where", where},
                                                               {"date", words.date(line.date)},
                                                               {"who", line.observerCode},
                                                               {"what", plain(ui::summaryWord(line.summary))},
                                                               {"state", words.state(line.state)}});
    if (line.oneOfTwo)
        sentence += words.text(", one of two");
    if (line.correctionWaits)
        sentence += words.text(", a correction waits");
    return sentence;
}

void sayFindings(Run& run, const std::vector<Finding>& findings, const Pack& pack)
{
    for (const auto& finding : findings)
        run.say("  {severity}: {sentence}", {{"severity", plain(ui::severityWord(finding.severity))},
                                             {"sentence", run.words().finding(finding, pack)}});
}

void sayHost(Run& run, const HostVerdict& host, const Pack& pack)
{
    run.line(plain(ui::hostText(host, pack)));
    if (host.next.empty())
        return;
    const Character* next = pack.character(host.next.front().character);
    if (next != nullptr)
        run.say("Look next at: {character}. {why}",
                {{"character", next->name},
                 {"why", plain(ui::nextCharacterText(host.next.front(), host, pack))}});
}

void saySample(Run& run, const SamplePage& page, const Pack& pack)
{
    run.say("Sample {number}, from {tree} on {date}: {state}.",
            {{"number", page.sample.number},
             {"tree", page.treeLabel},
             {"date", run.words().date(page.visitDate)},
             {"state", run.words().state(page.status.state)}});
    for (const auto& link : page.status.chain)
        if (link.state != LinkState::ahead)
            run.line("  " + linkLine(link, page, run.words()));
    if (!page.status.missing.empty())
        run.say(page.status.mustBeVoid || page.status.state == SampleState::voided
                    ? "Still to be written down:"
                    : "Still missing before it can close:");
    sayFindings(run, page.status.missing, pack);
    if (!page.status.breaks.empty())
        run.say("Broken, and stays so:");
    sayFindings(run, page.status.breaks, pack);
    sayFindings(run, page.status.remarks, pack);
    for (const auto& regime : page.regimes)
        run.say("In force here, from {issuer}: dry galls: {dry}. Tell: {notify}. {reference}",
                {{"issuer", regime.issuer},
                 {"dry", regime.dryGalls},
                 {"notify", regime.notify},
                 {"reference", regime.reference}});
}

void sayNotice(Run& run, Session& session)
{
    for (const auto& line : session.pack().standingNotice)
        run.line(line);
    const auto set = programme(session);
    if (set && !set->tell.empty())
        run.say("Tell: {who}.", {{"who", set->tell}});
    else
        run.say("Whom to tell is not set in this store: \"cupule programme\" sets it. Ask your coordinator.");
}

Result<Instant> readMoment(const std::string& typed, const Session& session)
{
    if (auto instant = parseInstant(typed))
        return instant;
    const auto parts = split(typed, typed.find('T') == std::string::npos ? ' ' : 'T');
    const auto date = CivilDate::parse(parts.front());
    const auto time = parts.size() == 2 ? LocalTime::parse(parts[1]) : fail("time.form", FaultKind::usage);
    if (!date || !time)
        return fail("time.form", FaultKind::usage, {{"value", typed}});
    const auto reading = readLocal(session.info().zone, *date, *time);
    if (!reading)
        return fail(reading.error());
    if (reading->kind != LocalReading::Kind::once)
        return fail(reading->kind == LocalReading::Kind::never ? "time.never" : "time.twice",
                    FaultKind::usage, {{"value", typed}, {"zone", session.info().zone}});
    return reading->first;
}

Result<CivilDate> readDay(const std::string& typed, const char* option)
{
    auto date = CivilDate::parse(typed);
    if (!date)
        return fail(date.error().code, FaultKind::usage, {{"option", option}, {"value", typed}});
    return date;
}

Result<ui::SheetSetup> readLabelSheet(const std::string& typed)
{
    const auto setup = ui::readSheet(QString::fromStdString(typed));
    if (!setup)
        return fail("labels.sheet", FaultKind::usage,
                    {{"value", typed},
                     {"width", plain(QString::number(ui::smallestLabelWidth))},
                     {"height", plain(QString::number(ui::smallestLabelHeight))}});
    return *setup;
}

std::string keptLabelSheet(const Profile& profile)
{
    const ui::Settings settings(QString::fromStdString(profile.folder + "/window.ini"));
    return plain(settings.value(ui::Setting::labelSheet).toString());
}

} // namespace cupule::app
