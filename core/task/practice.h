// Practising: sessions that survive a kill, the next case, its answer. Results are in practice_results.h, photo cases in photo_cases.h, what
// is told of a person's detection in skill.h.
//
//  - Everybody may practise for themselves; a trainer or the office may begin a session for somebody else.
//  - Each answered case is committed by itself. A session goes on wherever it was left, with the same next case.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/practice.h"
#include "core/task/session.h"
#include "core/training/boxes.h"
#include "core/training/case.h"

namespace cupule {

struct PracticeWish {
    std::string cohort = {};
    std::optional<Uid> person = {};            ///< nothing = whoever works here
    bool named = true;                     ///< false: the answers are kept without saying whose they are
    bool series = false;                   ///< the same cases for everybody with this seed
    bool feedbackAtEnd = false;
    std::vector<AskedKind> kinds = {};         ///< empty = everything
    std::vector<Topic> topics = {};            ///< cases about these alone (a subject may be left out); empty = about everything
    int step = 0;                          ///< 1 to 5; 0 = follows the answers
    int month = 0;                         ///< 1 to 12; 0 = any
    int cases = 0;                         ///< 0 = as long as somebody likes
    std::optional<std::int64_t> seed = {};     ///< nothing = by chance
};

/// An open session with what was answered so far.
struct PracticeRound {
    PracticeSession session;
    Uid person;                            ///< null where nobody is named
    std::vector<Topic> topics;             ///< that its cases are about
    std::vector<GivenCase> given;
    [[nodiscard]] int nextNumber() const { return static_cast<int>(given.size()) + 1; }
    [[nodiscard]] bool done() const { return session.plan.cases > 0 && static_cast<int>(given.size()) >= session.plan.cases; }
};

/// Faults "practice.step", "practice.month", "practice.cases" (out of their limits), "practice.topics" (no case can be made of what is
/// wanted), "role.needed", "person.unknown".
Result<PracticeRound> beginPractice(Session& session, const PracticeWish& wish);
/// Faults "practice.unknown", "practice.pack" (begun with another protocol).
Result<PracticeRound> openPractice(Session& session, const Uid& practice);

/// The next case; nothing where the session is done. The same until it is answered.
std::optional<PracticeCase> nextCase(Session& session, const PracticeRound& round);
/// Keeps the answers, one to each question in order, and goes on in `round`. `seconds` is noted, never scored. Faults
/// "practice.answers" (another number of answers than questions), "practice.answered" (by another window meanwhile).
Status answerCase(Session& session, PracticeRound& round, const PracticeCase& practice, const std::vector<AnsweredItem>& answers, int seconds);

/// The same under another id: for cases that are no drawings.
Status keepAnswers(Session& session, PracticeRound& round, const PracticeCase& practice, const std::string& caseId,
                   const std::vector<AnsweredItem>& answers, int seconds);

/// What a list of sessions shows.
struct PracticeLine {
    Uid id;
    std::string cohort, code;              ///< code of the person; empty where nobody is named
    Instant begun;
    std::int64_t cases = 0;                ///< answered
    int planned = 0;                       ///< 0 = open
    bool series = false;
    bool mine = false;
};
/// Newest first: one's own, or everybody's for trainer and office.
Result<std::vector<PracticeLine>> practiceLines(Session& session);
Result<std::vector<std::string>> practiceCohorts(Session& session);

/// A recruit by code, made where the store does not know the code. Roles trainer, office. Faults of newPerson (day.h).
Result<Uid> recruit(Session& session, const std::string& code, const std::string& name);

/// Answers between the layers.
PracticeItem storedItem(const AnsweredItem& item);
std::optional<AnsweredItem> answeredItem(const PracticeItem& item);

} // namespace cupule
