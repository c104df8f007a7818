// Practice sessions and answers, trainers' photo cases with their keys, and what is told of a person's detection.
//
//  - Each answered case is one row with its journal line; whoever commits after each loses nothing to a kill.
//  - Who practised lies in `personal`. Erasing a person empties it: the answers stay, and count for a cohort, without a name.
//  - Counting reads indices alone: a cohort of 200 people with 10^5 answers is counted in a fraction of a second.

#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/record/practice.h"
#include "core/store/store.h"

namespace cupule {

struct StoredPractice {
    PracticeSession session;
    Uid person;                            ///< null where nobody was named, or they were erased
    std::int64_t cases = 0;                ///< answered so far
};

/// Which answers are counted. Every member that is set narrows.
struct PracticeFilter {
    std::optional<Uid> person = {};
    std::optional<std::string> cohort = {};
    std::optional<Uid> session = {};
};

struct PracticeCount {
    Uid person;
    std::string kind, subject, truth, given;
    std::int64_t count = 0;
};
struct PracticeSureCount {
    Uid person;
    int sure = 0;
    std::int64_t right = 0, total = 0;
};

/// One answer of a series, for agreement between people.
struct SeriesAnswer {
    std::string caseId, kind, subject, given;
    Uid session;
};

/// What is told of one person.
struct StoredSkill {
    SkillNote note;
    std::optional<Skill> skill;            ///< nothing once erased, or where personal data was left out
    bool withdrawn = false;
};

class Practice {
public:
    explicit Practice(StoreCore& core) : m_core(core) {}

    /// `person` null = nobody is named. Fault "store.reference" where the person is not in the store.
    Status begin(Change& change, const PracticeSession& session, const Uid& person);
    Result<std::optional<StoredPractice>> find(const Uid& session);
    /// Newest first. `person` null = everybody's.
    Result<std::vector<StoredPractice>> sessions(const Uid& person = {});
    Result<std::vector<std::string>> cohorts();        ///< names, sorted; the empty one left out

    /// Faults "store.reference", "store.constraint" (practice_answer_session_unique) where the case was answered already.
    Status answer(Change& change, const PracticeAnswer& answer);
    Result<std::vector<PracticeAnswer>> answers(const Uid& session);   ///< in order of their numbers

    /// Those of one person stand together.
    Result<std::vector<PracticeCount>> counts(const PracticeFilter& filter);
    Result<std::vector<PracticeSureCount>> sureCounts(const PracticeFilter& filter);
    /// Which answers of each case were right ("1101"), in the order in which they were given, person by person.
    Status inOrder(const PracticeFilter& filter, const std::function<void(const Uid& person, std::string_view hits)>& take);
    /// Answers of the series of a cohort.
    Result<std::vector<SeriesAnswer>> series(const std::string& cohort);

    Status addPhotoCase(Change& change, const PhotoCase& photoCase);
    Status addPhotoKey(Change& change, const PhotoKey& key);
    Result<std::vector<PhotoCase>> photoCases();       ///< oldest first
    Result<std::vector<PhotoKey>> photoKeys();         ///< oldest first, of all cases

    /// With what is told; or, where `note.withdraws` names one, without. Fault "store.reference".
    Status addSkill(Change& change, const SkillNote& note, const std::optional<Skill>& skill);
    /// The greatest id first: of two that do not know of each other every store then takes the same one.
    Result<std::vector<StoredSkill>> skills(const Uid& person);

private:
    StoreCore& m_core;
};

/// What is counted of the answers, counted anew from them.
void recountPractice(StoreCore& core);
/// Empties who practised and what is told of a person, by recorded erasures; the columns beside it follow by a trigger. Part of erasing a person.
/// True where there was something.
bool erasePractice(StoreCore& core, const Uid& person, const std::string& order);

} // namespace cupule
