#include "core/base/clock.h"

#include <chrono>
#include <ctime>

namespace cupule {

Instant SystemClock::now() const
{
    const auto now = std::chrono::system_clock::now();
    const std::time_t seconds = std::chrono::system_clock::to_time_t(now);
    std::tm local{};
    localtime_r(&seconds, &local);
    const auto ms = std::chrono::duration_cast<std::chrono::milliseconds>(now.time_since_epoch()).count();
    return Instant{ms, static_cast<int>(local.tm_gmtoff / 60)};
}

} // namespace cupule
