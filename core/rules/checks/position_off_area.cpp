// A place outside the area of the programme.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void positionOffArea(const CheckInput& input, std::vector<Finding>& out)
{
    const Position* place = placeOf(input);
    if (!place || !onGlobe(*place) ||
        inArea(input.context.pack->settings.areaWSEN, place->latitude, place->longitude))
        return;
    add(out, "position.off-area", Severity::ask, placeField(input), commonPractice,
        {{"latitude", numberText(place->latitude)}, {"longitude", numberText(place->longitude)}});
}

} // namespace cupule::checks
