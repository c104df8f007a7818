#include "app/words.h"

#include <QCoreApplication>
#include <QLocale>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::app {

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
    const std::string words = plain(ui::faultText(fault));
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
