#include "app/words.h"

#include <QCoreApplication>
#include <QLocale>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

/// Faults that only a command line can give; empty for all others.
std::string commandLineFault(const Fault& fault, const Words& words)
{
    struct Row {
        std::string_view code;
        const char* sentence;
    };
    static constexpr Row rows[] = {
        {"hand-in.out",
         QT_TRANSLATE_NOOP("cupule", "It is not said into which file. Nothing was written. Name it with --out.")},
        {"hand-in.without",
         QT_TRANSLATE_NOOP("cupule", "\"{part}\" cannot be left out. Nothing was written. photos and personal can.")},
        {"field.unknown",
         QT_TRANSLATE_NOOP("cupule", "There is no answer of the name \"{field}\". Answers are given as "
                                     "NAME=VALUE, as in S02=seen or minutes=12.")},
        {"field.value", QT_TRANSLATE_NOOP("cupule", "\"{value}\" does not fit {field}.")},
        {"noun.unknown",
         QT_TRANSLATE_NOOP("cupule",
                           "There is no list of \"{noun}\". There are visits, trees, sites, people, "
                           "photos, samples, leaves, regimes and decisions.")},
        {"position.area",
         QT_TRANSLATE_NOOP("cupule", "\"{value}\" is no area. It is given as west,south,east,north in "
                                     "degrees, as in -11,49,2,61.")},
        {"profile.role-unknown",
         QT_TRANSLATE_NOOP("cupule", "There is no role \"{role}\". There are volunteer, "
                                     "sample-handler, trainer, verifier and office.")},
        {"time.never",
         QT_TRANSLATE_NOOP("cupule",
                           "{value} did not exist in {zone}: the clocks were put forward over it. Give "
                           "the moment with its offset, as in 2026-03-29T02:30:00+01:00.")},
        {"time.twice",
         QT_TRANSLATE_NOOP("cupule",
                           "{value} happened twice in {zone}: the clocks were put back. Give the moment "
                           "with its offset, as in 2026-10-25T01:30:00+01:00.")}};
    for (const auto& row : rows)
        if (row.code == fault.code)
            return words.text(row.sentence, fault.arguments);
    return {};
}

} // namespace

std::string plain(const QString& text)
{
    return ui::utf8(text);
}

std::string BridgeWords::text(const char* english, const Arguments& arguments) const
{
    return fillIn(plain(QCoreApplication::translate("cupule", english)), arguments);
}
std::string BridgeWords::finding(const Finding& finding, const Pack& pack) const
{
    const std::string words = plain(ui::findingText(finding, &pack));
    return words.empty() ? Words::finding(finding, pack) : words;
}
std::string BridgeWords::fault(const Fault& fault) const
{
    const std::string own = commandLineFault(fault, *this);
    const std::string words = own.empty() ? plain(ui::faultText(fault)) : own;
    return words.empty() ? Words::fault(fault) : words;
}
std::string BridgeWords::state(RecordState state) const
{
    return plain(ui::stateWord(state));
}
std::string BridgeWords::state(SampleState state) const
{
    return plain(ui::sampleStateWord(state));
}
std::string BridgeWords::outcome(Outcome outcome) const
{
    return plain(ui::outcomeWord(outcome));
}
std::string BridgeWords::host(HostAnswer answer) const
{
    return plain(ui::hostWord(answer));
}
std::string BridgeWords::custody(CustodyKind kind) const
{
    return plain(ui::custodyKindWord(kind));
}
std::string BridgeWords::date(CivilDate date) const
{
    return plain(QLocale().toString(ui::toDate(date), u"d MMMM yyyy"));
}
std::string BridgeWords::number(double value, int decimals) const
{
    return plain(QLocale().toString(value, 'f', decimals));
}

} // namespace cupule::app
