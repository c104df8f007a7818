// The machine's clock, until a demonstration is told which day it is.
//
//  - On that day it is evening: what people saw and held during the day lies behind, and later runs of the same day
//    come after earlier ones.
//  - Only invented stores may go by such a day: in a real one the journal says when a line was truly written.

#pragma once

#include <optional>

#include "core/base/civil.h"

namespace cupule::app {

class DayClock final : public Clock {
public:
    explicit DayClock(const Clock& real) : m_real(real) {}
    /// From 18:00 of that day in the zone (in UTC where nobody knows the zone).
    void goBy(CivilDate day, const std::string& zone);
    [[nodiscard]] Instant now() const override;

private:
    const Clock& m_real;
    std::optional<Instant> m_evening;
};

} // namespace cupule::app
