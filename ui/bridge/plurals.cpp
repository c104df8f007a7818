#include "ui/bridge/plurals.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace cupule::ui {

namespace {

struct Singular {
    std::string_view many, one;
};

constexpr auto singulars = std::to_array<Singular>({
    {"%n rows can be kept", "%n row can be kept"},
    {"%n rows are kept", "%n row is kept"},
    {"%n known already", "%n known already"},
    {"%n other trees", "%n other tree"},
    {"%n visits came back", "%n visit came back"},
    {"%n accepted finds", "%n accepted find"},
    {"%n fields differ", "%n field differs"},
    {"%n fields agree", "%n field agrees"},
    {"%n fields are left", "%n field is left"},
    {"Two versions of this record do not agree: %n fields.", "Two versions of this record do not agree: %n field."},
    {"%n entries have versions that do not agree", "%n entry has versions that do not agree"},
    {"%n records", "%n record"},
    {"%n points of a receiver", "%n point of a receiver"},
    {"%n photos with a position", "%n photo with a position"},
    {"%n visits with a position", "%n visit with a position"},
    {"%n set aside", "%n set aside"},
    {"%n open", "%n open"},
    {"%n photos", "%n photo"},
    {"%n photos belong to this visit.", "%n photo belongs to this visit."},
    {"%n photos to their visits", "%n photo to its visit"},
    {"%n photos lie with their visits now.", "%n photo lies with its visit now."},
    {"%n photos taken in", "%n photo taken in"},
    {"%n here already, the same file", "%n here already, the same file"},
    {"%n look like one that is here", "%n looks like one that is here"},
    {"%n could not be read", "%n could not be read"},
    {"a visit is proposed for %n photos", "a visit is proposed for %n photo"},
    {"none fits for %n photos", "none fits for %n photo"},
    {"%n are undated or of another day", "%n is undated or of another day"},
    {"%n photos lie with visits", "%n photo lies with a visit"},
    {"%n put aside as copies", "%n put aside as a copy"},
    {"%n photos look like another", "%n photo looks like another"},
    {"from the satellite times in %n photos of this day", "from the satellite time in %n photo of this day"},
    {"from %n photos that lie with visits of this day, good to some minutes",
     "from %n photo that lies with a visit of this day, good to some minutes"},
    {"%n photos lie in the tray: in Day, P shows which visits are proposed for them.",
     "%n photo lies in the tray: in Day, P shows which visit is proposed for it."},
    {"%n samples", "%n sample"},
    {"%n steps", "%n step"},
    {"%n recruits", "%n recruit"},
    {"%n answers", "%n answer"},
    {", %n skipped", ", %n skipped"},
    {"%n trees", "%n tree"},
    {"%n stops", "%n stop"},
    {"%n visits", "%n visit"},
    {"%n sites", "%n site"},
    {"%n people", "%n person"},
    {"%n given leaves", "%n given leave"},
    {"%n orders of the authority", "%n order of the authority"},
    {"Decisions about %n visits.", "A decision about %n visit."},
    {"%n fields were changed differently by two people.", "%n field was changed differently by two people."},
    {"%n records were known already.", "%n record was known already."},
    {"%n drafts that went on here after their visit was handed in elsewhere are kept as visits of their own.",
     "%n draft that went on here after its visit was handed in elsewhere is kept as a visit of its own."},
    {"%n records name something that has not arrived yet. They are kept and wait for another file.",
     "%n record names something that has not arrived yet. It is kept and waits for another file."},
    {"%n files of yours have arrived at the sender’s.", "%n file of yours has arrived at the sender’s."},
    {"%n pictures", "%n picture"},
    {"and %n more", "and %n more"},
    {"%n visits go", "%n visit goes"},
    {"%n visits are handed in.", "%n visit is handed in."},
    {"%n stay, and why", "%n stays, and why"},
    {"%n pieces", "%n piece"},
    {"%n pieces of %1", "%n piece of %1"},
    {"No new numbers: print the %n that wait once more", "No new numbers: print the %n that waits once more"},
    {"%n printed labels wait for their samples", "%n printed label waits for its sample"},
    {", %n missing", ", %n missing"},
    {", %n breaks", ", %n break"},
    {"Not in season on %1: %n signs", "Not in season on %1: %n sign"},
    {"%n lines were read, each follows from the one before.", "%n line was read."},
    {"It can close only with a break: %n breaks stand.", "It can close only with a break: %n stands."},
    {"Before this sample can close, %n things are missing", "Before this sample can close, %n thing is missing"},
    {"%n things are not as they should be.", "%n thing is not as it should be."},
});

const Singular* find(std::string_view source)
{
    const auto at = std::find_if(singulars.begin(), singulars.end(), [&](const Singular& s) { return s.many == source; });
    return at == singulars.end() ? nullptr : &*at;
}

} // namespace

QString EnglishPlurals::translate(const char*, const char* source, const char*, int n) const
{
    const Singular* singular = n == 1 ? find(source) : nullptr;
    return singular == nullptr ? QString() : QString::fromUtf8(singular->one.data(), static_cast<qsizetype>(singular->one.size()));
}

bool EnglishPlurals::knows(const QString& source)
{
    return find(source.toStdString()) != nullptr;
}

} // namespace cupule::ui
