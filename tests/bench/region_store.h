// A region's store for the benchmark, of any size, made in seconds: visits come in the fast way and are then handed in by plain SQL,
// each with its journal line and revision, as if days had been taken in.
//
//  - A tenth of the visits are accepted finds of the year before, each at a tree of its own. All others wait: one in twenty is a
//    positive, of them 200 stand far from any find; the rest are routine, doubtful and incomplete "nothing seen".
//  - Accepted visits have no decisions, and nobody was told: what a benchmark asks for is all that is there.

#pragma once

#include <memory>
#include <string>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/task/session.h"

namespace bench {

class Region {
public:
    /// Made once a folder and size; `code` names the person who works there.
    Region(const std::string& folder, const std::string& name, long visits, const std::string& code);
    [[nodiscard]] const std::string& path() const { return m_path; }
    /// As a volunteer, verifier and office in one, on 11 June 2026.
    [[nodiscard]] std::unique_ptr<cupule::Session> open() const;
    /// So many more visits at new trees, handed in.
    void add(long visits) const;
    [[nodiscard]] cupule::Profile profile() const;
    /// Of a store that lies elsewhere, as the same person.
    [[nodiscard]] std::unique_ptr<cupule::Session> open(const std::string& path) const;

private:
    std::string m_path, m_code, m_profile;
    cupule::FixedClock m_clock;
    mutable cupule::SystemRandom m_random;
};

} // namespace bench
