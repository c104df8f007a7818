// What lies on the ground counts only where no other tree of that kind could have dropped it; that must be
// said.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void groundNotAsked(const CheckInput& input, std::vector<Finding>& out)
{
    for (const CharacterSeen& seen : input.visit.characters)
        if (seen.onGround && !seen.notJudged && !seen.otherTreeNear)
            add(out, "character.ground-not-asked", Severity::ask, characterField(seen) + "/otherTreeNear",
                commonPractice);
}

} // namespace cupule::checks
