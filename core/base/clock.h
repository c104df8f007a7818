// Time comes in through this seam, so that a test can stand still or run backwards.

#pragma once

#include <cstdint>
#include <optional>

namespace cupule {

/// A moment in UTC with the offset that was in force where it was noted, if known.
struct Instant {
    std::int64_t utcMilliseconds = 0;            ///< since 1970-01-01T00:00:00Z, leap seconds ignored
    std::optional<int> offsetMinutes;            ///< local minus UTC; [-1080, 1080]
    bool operator==(const Instant&) const = default;
};

class Clock {
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual Instant now() const = 0;
};

/// The machine's clock and the machine's zone.
class SystemClock final : public Clock {
public:
    [[nodiscard]] Instant now() const override;
};

/// Stands still until told otherwise.
class FixedClock final : public Clock {
public:
    explicit FixedClock(Instant at) : m_at(at) {}
    void set(Instant at) { m_at = at; }
    void advanceMilliseconds(std::int64_t by) { m_at.utcMilliseconds += by; }
    [[nodiscard]] Instant now() const override { return m_at; }

private:
    Instant m_at;
};

} // namespace cupule
