// Leaves and regimes: data of the store, nothing about law is asserted.

#include <algorithm>

#include "core/base/text.h"
#include "core/record/json.h"
#include "core/store/leaves.h"
#include "core/store/undo_log.h"
#include "core/task/samples.h"

namespace cupule {

namespace {

bool backwards(CivilDate from, const std::optional<CivilDate>& to)
{
    return to && *to < from;
}

} // namespace

Result<Leave> addLeave(Session& session, const Leave& leave)
{
    if (auto may = session.needOneOf({Role::volunteer, Role::trainer, Role::sampleHandler, Role::office});
        !may)
        return fail(may.error());
    if (leave.scopes.empty())
        return fail("leave.scopes", FaultKind::usage);
    if (leave.from == CivilDate{} || backwards(leave.from, leave.to))
        return fail("leave.dates", FaultKind::usage);
    Leave made = leave;
    std::string before;
    if (made.id.isNull()) {
        made.id = session.ids().make();
    } else {
        const auto stored = session.store().leaves().find(made.id);
        if (!stored)
            return fail(stored.error());
        if (!*stored)
            return fail("leave.unknown", FaultKind::usage, {{"id", made.id.text()}});
        if (**stored == made)
            return made;
        before = toJson(**stored);
    }
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto saved = session.store().leaves().save(*change, made); !saved)
        return fail(saved.error());
    if (!before.empty())
        if (auto kept =
                session.store().undoLog().push(*change, "leave", {{"leave", made.id, before, toJson(made)}});
            !kept)
            return fail(kept.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return made;
}

Result<Regime> addRegime(Session& session, const Regime& regime)
{
    if (auto may = session.need(Role::office); !may)
        return fail(may.error());
    if (trim(regime.issuer).empty())
        return fail("regime.issuer", FaultKind::usage);
    if (regime.from == CivilDate{} || backwards(regime.from, regime.to))
        return fail("regime.dates", FaultKind::usage);
    static const std::vector<std::string> known{"keep", "destroy", "ask"};
    if (std::find(known.begin(), known.end(), regime.dryGalls) == known.end())
        return fail("regime.dry-galls", FaultKind::usage, {{"value", regime.dryGalls}});
    Regime made = regime;
    if (made.id.isNull())
        made.id = session.ids().make();
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto saved = session.store().leaves().save(*change, made); !saved)
        return fail(saved.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return made;
}

Result<std::vector<Leave>> allLeaves(Session& session)
{
    return session.store().leaves().all();
}

Result<std::vector<Regime>> allRegimes(Session& session)
{
    return session.store().leaves().allRegimes();
}

} // namespace cupule
