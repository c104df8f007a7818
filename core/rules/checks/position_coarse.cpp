// A place too coarse to find the tree again.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void positionCoarse(const CheckInput& input, std::vector<Finding>& out)
{
    const Position* place = placeOf(input);
    const double limit = input.context.pack->settings.usefulUncertaintyMetres;
    if (!place || place->uncertaintyMetres <= limit)
        return;
    add(out, "position.coarse", Severity::ask, placeField(input),
        sourceOf(*input.context.pack, "usefulUncertaintyMetres"),
        {{"metres", metresText(place->uncertaintyMetres)}, {"limitMetres", metresText(limit)}});
}

} // namespace cupule::checks
