// A find needs a photo or a sample, and the photo should say that it shows the sign.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void gallEvidence(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.positive.positive || !input.context.samples.empty())
        return;
    Arguments arguments{{"signs", joined(input.positive.signs)}};
    if (input.context.photos.empty()) {
        add(out, "gall.no-evidence", Severity::stop, "photos", reliability, std::move(arguments));
        return;
    }
    for (const PhotoNote& photo : input.context.photos)
        for (const std::string& shown : photo.evidenceFor)
            if (std::find(input.positive.signs.begin(), input.positive.signs.end(), shown) !=
                input.positive.signs.end())
                return;
    add(out, "gall.photo-unmarked", Severity::ask, "photos", reliability, std::move(arguments));
}

} // namespace cupule::checks
