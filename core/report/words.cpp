#include "core/report/words.h"

#include <fmt/format.h>

#include "core/record/names.h"

namespace cupule {

namespace {

/// "new-ground" and "collected" as words; codes of rooms lose nothing but their dashes.
std::string spelled(std::string_view code)
{
    std::string out(code);
    for (char& c : out)
        if (c == '-' || c == '_')
            c = ' ';
    return out;
}

std::string withArguments(std::string_view code, const Arguments& arguments)
{
    std::string out = spelled(code);
    for (const auto& [name, value] : arguments)
        out += fmt::format(" ({}: {})", name, value);
    return out;
}

} // namespace

std::string fillIn(std::string_view sentence, const Arguments& arguments)
{
    std::string out;
    for (std::size_t at = 0; at < sentence.size();) {
        const auto end = sentence[at] == '{' ? sentence.find('}', at) : std::string_view::npos;
        bool filled = false;
        if (end != std::string_view::npos) {
            const std::string_view name = sentence.substr(at + 1, end - at - 1);
            for (const auto& argument : arguments) {
                if (argument.name != name)
                    continue;
                out += argument.value;
                at = end + 1;
                filled = true;
                break;
            }
        }
        if (!filled)
            out += sentence[at++];
    }
    return out;
}

std::string Words::text(const char* english, const Arguments& arguments) const
{
    return fillIn(english, arguments);
}
std::string Words::finding(const Finding& finding, const Pack&) const
{
    return withArguments(finding.code, finding.arguments);
}
std::string Words::fault(const Fault& fault) const
{
    return withArguments(fault.code, fault.arguments);
}
std::string Words::code(std::string_view code) const
{
    return spelled(code);
}

std::string Words::state(RecordState state) const
{
    switch (state) {
    case RecordState::draft: return text("draft");
    case RecordState::submitted: return text("handed in");
    case RecordState::accepted: return text("accepted");
    case RecordState::rejected: return text("rejected");
    case RecordState::returned: return text("sent back");
    }
    return {};
}

std::string Words::state(SampleState state) const
{
    switch (state) {
    case SampleState::collected: return text("collected");
    case SampleState::sealed: return text("sealed");
    case SampleState::moving: return text("on its way");
    case SampleState::received: return text("received");
    case SampleState::examined: return text("examined");
    case SampleState::disposed: return text("disposed of");
    case SampleState::closed: return text("closed, whole");
    case SampleState::closedWithBreak: return text("closed with a break");
    case SampleState::voided: return text("void");
    }
    return {};
}

std::string Words::outcome(Outcome outcome) const
{
    switch (outcome) {
    case Outcome::accept: return text("accepted");
    case Outcome::reject: return text("rejected");
    case Outcome::giveBack: return text("sent back");
    case Outcome::withdraw: return text("withdrawn");
    case Outcome::reopen: return text("reopened");
    }
    return {};
}

std::string Words::host(HostAnswer answer) const
{
    switch (answer) {
    case HostAnswer::host: return text("is a host");
    case HostAnswer::notHost: return text("is not a host");
    case HostAnswer::cannotTell: return text("cannot tell yet");
    }
    return {};
}

std::string Words::custody(CustodyKind kind) const
{
    return spelled(name(kind));
}

std::string Words::date(CivilDate date) const
{
    static constexpr const char* months[] = {"January",   "February", "March",    "April",
                                             "May",       "June",     "July",     "August",
                                             "September", "October",  "November", "December"};
    return fmt::format("{} {} {}", date.day(), months[date.month() - 1], date.year());
}

std::string Words::number(double value, int decimals) const
{
    return fmt::format("{:.{}f}", value, decimals);
}

} // namespace cupule
