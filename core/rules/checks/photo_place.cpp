// A photo taken elsewhere than the record says, beyond what both places may be wrong.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void photoPlace(const CheckInput& input, std::vector<Finding>& out)
{
    const Position* place = placeOf(input);
    if (!place)
        return;
    for (const PhotoNote& photo : input.context.photos) {
        if (!photo.position)
            continue;
        const double limit =
            input.context.pack->settings.photoMetres + reachMetres(*place) + reachMetres(*photo.position);
        const double metres = metresBeyond(*place, *photo.position, limit);
        if (metres > limit)
            add(out, "photo.other-place", Severity::ask, photoField(photo.id), reliability,
                {{"name", photo.originalName},
                 {"metres", metresText(metres)},
                 {"limitMetres", metresText(limit)}});
    }
}

} // namespace cupule::checks
