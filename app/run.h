// One run of one verb: what it writes to, what it may ask, and the options that every verb has.
//
//  - Results go to `out`, as sentences or (--json) as one JSON value; errors go to `err` as sentences, and with --json
//    also to `out` as {"error": code, ...}.
//  - A demonstration store marks everything: a first line in words, a member "demonstration" in JSON.

#pragma once

#include <memory>
#include <ostream>
#include <string>

#include <nlohmann/json.hpp>

#include "app/day_clock.h"
#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/report/words.h"
#include "core/task/session.h"

namespace cupule::app {

/// What a program run stands on. Tests hand in string streams, a clock that stands still and seeded chance.
struct Surroundings {
    std::ostream& out;
    std::ostream& err;
    const Clock& clock;
    Random& random;
    const Words& words;
};

struct SharedOptions {
    bool json = false;
    std::string profile;
    std::string today;
};

/// Exit codes.
inline constexpr int done = 0;
inline constexpr int refused = 1; ///< refused, or there are findings
inline constexpr int misunderstood = 2;
inline constexpr int broken = 3; ///< data or I/O

class Run {
public:
    Run(const Surroundings& around, const SharedOptions& shared)
        : m_around(around), m_shared(shared), m_clock(around.clock)
    {
    }

    [[nodiscard]] const Words& words() const { return m_around.words; }
    [[nodiscard]] const Clock& clock() const { return m_clock; }
    [[nodiscard]] Random& random() { return m_around.random; }
    [[nodiscard]] const SharedOptions& shared() const { return m_shared; }
    [[nodiscard]] bool json() const { return m_shared.json; }

    /// The profile of --profile, else of the environment, else the user's own.
    Result<Profile> profile() const;
    /// The same; where there is none yet, one is made for whoever is logged in, a volunteer, and that is said.
    Result<Profile> profileOrNew();
    /// Opens the store as that profile, with --today in force. The first time on a day that it is opened for writing it
    /// is backed up first; where that fails the work goes on, and it is said.
    Result<std::unique_ptr<Session>> open(const std::string& store, bool readOnly = false);
    /// --today, else the civil date of the clock.
    Result<CivilDate> today() const;
    /// From now on everything that is written says that it is invented, and --today moves the clock as well.
    Status markDemonstration(const std::string& zone);

    /// A sentence for people; nothing with --json.
    void say(const char* english, const Arguments& arguments = {});
    /// A line that is already in words.
    void line(const std::string& words);
    /// The result as JSON; nothing without --json. Once a run.
    void give(nlohmann::json result);
    /// A sentence on standard error, with --json too.
    void complain(const std::string& words);
    /// Writes what went wrong; returns the exit code for it.
    int fail(const Fault& fault);

private:
    void backUpOnceADay(Session& session);
    void sayUpgraded(const Session& session, const std::string& store);

    const Surroundings& m_around;
    SharedOptions m_shared;
    DayClock m_clock;
    bool m_demonstration = false;
    bool m_said = false;
};

} // namespace cupule::app
