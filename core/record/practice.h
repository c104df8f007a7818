// What practice leaves behind: sessions, answers, trainers' own photo cases with the keys of those who made them, and what a person
// agreed to have told about their measured detection. Who practised is personal data and lies apart (core/store/personal.h): contents
// name no person but trainers.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/base/result.h"
#include "core/base/uid.h"

namespace cupule {

/// What cases are about.
struct PracticeTopic {
    std::string kind;                      ///< as in PracticePlan
    std::string subject;                   ///< empty = every one of the kind
    bool operator==(const PracticeTopic&) const = default;
};

/// How a session goes. With the answers given so far it decides every further case.
struct PracticePlan {
    int cases = 0;                         ///< how many; 0 = as long as somebody likes
    bool feedbackAtEnd = false;            ///< else after each case
    std::vector<std::string> kinds;        ///< what is asked, by name (core/training/answer.h); empty = everything
    int month = 0;                         ///< 1 to 12; 0 = any
    std::string protocol, protocolVersion; ///< of the pack
    std::string region;                    ///< pack region id
    std::int64_t seed = 0;                 ///< 0 to 2^48
    bool series = false;                   ///< the same cases for everybody with this seed, whatever they answer; else what was confused comes again
    int step = 0;                          ///< of difficulty, 1 to 5; 0 = follows the answers
    std::vector<PracticeTopic> topics = {}; ///< these alone; empty = all that month and region have
    int year = 0;                          ///< in which the cases are set
    bool operator==(const PracticePlan&) const = default;
};

struct PracticeSession {
    Instant begun;
    std::string cohort;                    ///< what the trainer calls the group; may be empty
    Uid id;
    PracticePlan plan;
    bool operator==(const PracticeSession&) const = default;
};

/// Who practised: the personal part of a session.
struct PracticePerson {
    Uid id;                                ///< of the session
    Uid person;
    bool operator==(const PracticePerson&) const = default;
};

struct PracticeItem {
    std::string given;
    std::string kind;
    std::string subject;
    std::optional<int> sure;               ///< percent
    std::string truth;
    bool operator==(const PracticeItem&) const = default;
};

/// One case, answered.
struct PracticeAnswer {
    Instant at;
    std::string caseId;                    ///< 16 hexadecimal digits, or the id of a photo case
    std::vector<PracticeItem> items;
    int number = 1;                        ///< of the case within its session, from 1
    int seconds = 0;                       ///< noted, never scored
    Uid session;
    int step = 1;
    std::string topicKind, topicSubject;
    bool operator==(const PracticeAnswer&) const = default;
};

struct PhotoQuestion {
    std::string kind;
    std::vector<std::string> options;      ///< empty for questions of yes or no
    std::string subject;
    bool operator==(const PhotoQuestion&) const = default;
};

/// A case made from photos. It is asked only where two people's keys agree.
struct PhotoCase {
    Instant at;
    Uid by;
    std::optional<CivilDate> date;         ///< on which they were taken, where known
    Uid id;
    std::string note;
    std::vector<std::string> pictures;     ///< SHA-256, 64 hexadecimal digits
    std::vector<PhotoQuestion> questions;
    std::string region;
    bool operator==(const PhotoCase&) const = default;
};

struct PhotoTruth {
    std::string kind;
    std::string subject;
    std::string truth;
    bool operator==(const PhotoTruth&) const = default;
};

/// One person's key. Of several by one person the last counts.
struct PhotoKey {
    Instant at;
    Uid by;
    Uid id;
    Uid photoCase;
    std::vector<PhotoTruth> truths;
    bool operator==(const PhotoKey&) const = default;
};

/// That something is said about a person's detection, or that an earlier statement is withdrawn. Says nothing by itself about whom.
struct SkillNote {
    Instant at;
    Uid by;
    Uid id;
    Uid withdraws;                         ///< an earlier note; null = this one states something
    bool operator==(const SkillNote&) const = default;
};

/// How often one sign was found, and passed over rightly; "could not be judged" counts as missed.
struct SignSkill {
    std::int64_t absent = 0;               ///< answers where it was not there
    std::int64_t found = 0;
    std::int64_t passed = 0;
    std::string sign;                      ///< pack id; "gall-lines" for all field gall lines together, "host" for the host
    std::int64_t there = 0;                ///< answers where it was there
    bool operator==(const SignSkill&) const = default;
};

/// The personal part of a note.
struct Skill {
    CivilDate consented;                   ///< the day on which the person agreed
    std::string consentTo;                 ///< "self", or the code of the person to whom they said so
    CivilDate from, to;                    ///< days of the answers
    Uid id;                                ///< of the note
    Uid person;
    std::string protocol, protocolVersion; ///< of the pack; the version may be empty
    std::vector<SignSkill> signs;
    bool operator==(const Skill&) const = default;
};

std::string toJson(const PracticeSession& value);
std::string toJson(const PracticePerson& value);
std::string toJson(const PracticeAnswer& value);
std::string toJson(const PhotoCase& value);
std::string toJson(const PhotoKey& value);
std::string toJson(const SkillNote& value);
std::string toJson(const Skill& value);

/// As in json.h: fault "record.json".
template <class Noun>
Result<Noun> fromJson(std::string_view text);
template <>
Result<PracticeSession> fromJson(std::string_view text);
template <>
Result<PracticePerson> fromJson(std::string_view text);
template <>
Result<PracticeAnswer> fromJson(std::string_view text);
template <>
Result<PhotoCase> fromJson(std::string_view text);
template <>
Result<PhotoKey> fromJson(std::string_view text);
template <>
Result<SkillNote> fromJson(std::string_view text);
template <>
Result<Skill> fromJson(std::string_view text);

} // namespace cupule
