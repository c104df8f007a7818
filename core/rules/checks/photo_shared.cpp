// One photo cannot show two trees; often innocent, always asked.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void photoShared(const CheckInput& input, std::vector<Finding>& out)
{
    for (const SharedPhoto& shared : input.context.sharedPhotos)
        add(out, "photo.used-twice", Severity::ask, photoField(shared.photo), pictures,
            {{"otherTree", shared.otherTree}, {"otherDate", shared.otherDate.text()}});
}

} // namespace cupule::checks
