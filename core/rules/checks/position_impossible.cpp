// Coordinates off the globe, or where both are nought: what is left when a device had no fix.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void positionImpossible(const CheckInput& input, std::vector<Finding>& out)
{
    const Position* place = placeOf(input);
    if (!place)
        return;
    if (!onGlobe(*place))
        add(out, "position.impossible", Severity::stop, placeField(input), positionTerms,
            {{"typed", place->typed}});
    else if (place->warning == "null-island" || (place->latitude == 0 && place->longitude == 0))
        add(out, "position.null-island", Severity::stop, placeField(input), positionTerms,
            {{"typed", place->typed}});
}

} // namespace cupule::checks
