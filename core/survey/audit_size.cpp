#include "core/survey/audit_size.h"

#include <algorithm>

namespace cupule {

std::optional<AuditSize> auditSize(std::int64_t size, double confidence, double tolerable)
{
    if (size < 1 || !(tolerable > 0 && tolerable < 1))
        return std::nullopt;
    AuditSize audit;
    audit.size = size;
    audit.wrong = std::max<std::int64_t>(1, unitsAtLevel(size, tolerable));
    const auto drawn = sampleSize(size, audit.wrong, confidence);
    if (!drawn)
        return std::nullopt;
    audit.drawn = *drawn;
    audit.reached = auditReached(audit);
    return audit;
}

double auditReached(const AuditSize& size, double sensitivity)
{
    return chanceToFind(size.size, size.wrong, size.drawn, sensitivity);
}

std::int64_t knownToMix(std::int64_t drawn)
{
    return std::clamp<std::int64_t>((drawn + 4) / 5, 5, 20);
}

} // namespace cupule
