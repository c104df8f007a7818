// One picture of the whole, one of the host and one close by with a scale let others judge a find.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

constexpr std::size_t wanted = 3;

} // namespace

void gallFewPhotos(const CheckInput& input, std::vector<Finding>& out)
{
    const std::size_t photos = input.context.photos.size();
    if (!input.positive.positive || photos == 0 || photos >= wanted)
        return;
    add(out, "gall.few-photos", Severity::note, "photos", pictures,
        {{"photos", std::to_string(photos)}, {"wanted", std::to_string(wanted)}});
}

} // namespace cupule::checks
