// Several laptops, each with its own folder, profile, clock and store, that hand files to each other. All of it is invented.

#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/task/hand_out.h"
#include "core/task/merge.h"
#include "tests/task/vale.h"

namespace cupule::test {

class Device {
public:
    /// The clock is `wrongBy` milliseconds off.
    Device(const std::string& folder, const Person& person, const std::vector<Role>& roles, std::uint64_t seed, std::int64_t wrongBy = 0);

    [[nodiscard]] Session& session() { return *m_session; }
    void reopen();
    /// Writes a bundle beside the store; empty where there is nothing to hand out.
    std::string handOut(GoingKind kind, bool whole = false);
    Result<TakenIn> takeIn(const std::string& path, const cupule::TakeIn& how = {});
    void trust(Device& other);
    [[nodiscard]] std::string key() const;

    FixedClock clock;
    SeededRandom random;
    Profile profile;

private:
    std::string m_folder;
    std::unique_ptr<Session> m_session;
    int m_files = 0;
};

Person personOf(const std::string& code, const std::string& name, std::uint64_t seed);

/// Revisions with parents, what every noun comes to, decisions, and how every visit stands: what must be the same in all stores that know
/// the same. One line each, sorted.
std::vector<std::string> stateOf(Session& session);

/// What stands in only one of two states; "+" in the second, "-" in the first.
std::vector<std::string> differences(const std::vector<std::string>& one, const std::vector<std::string>& other);

} // namespace cupule::test
