// The verifier needs a character of the host on a photo or a specimen.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void hostNotShown(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.positive.positive || input.host.answer != HostAnswer::host || !input.context.samples.empty())
        return;
    for (const CharacterSeen& seen : input.visit.characters)
        if (!seen.photo.isNull())
            return;
    for (const PhotoNote& photo : input.context.photos)
        for (const std::string& shown : photo.evidenceFor)
            if (input.context.pack->character(shown))
                return;
    add(out, "host.not-shown", Severity::ask, "characters", reliability);
}

} // namespace cupule::checks
