// A store in which a cohort practised, for the benchmark: 200 people with 500 answered cases each, in five sessions. The cases are those that
// the program makes; one answer in five is wrong, another one each time. The last session belongs to who works there and is not over.

#pragma once

#include "tests/bench/region_store.h"

namespace bench {

inline constexpr int cohortPeople = 200;
inline constexpr int cohortSessions = 5;   // of each
inline constexpr int sessionCases = 100;
inline constexpr const char* cohortName = "Autumn course";

/// Made once a folder.
class Cohort {
public:
    explicit Cohort(const std::string& folder);
    [[nodiscard]] const Region& store() const { return m_store; }
    /// The session that is not over, of as many cases as one of the people answered in all.
    [[nodiscard]] cupule::Uid openRound() const;

private:
    void fill();
    Region m_store;
};

} // namespace bench
