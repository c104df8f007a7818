// One answered question of a practice case, and what many of them are counted by.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cupule {

/// What is asked. Stored and exchanged by name; names never change.
enum class AskedKind {
    host,        ///< "host": is this a host? Subject: the kind of tree that it is
    character,   ///< "character": which character decides that? Subject: "character"
    sign,        ///< "sign": is this sign there? Subject: the sign
    look,        ///< "look": what is this? Subject: the sign that it is, or "none"
    record,      ///< "record": what is written down? Subject: what the key has
    conclude,    ///< "conclude": may this be concluded? Subject: code of the conclusion, or sign and number of the pack's words
    order,       ///< "order": in which order is a sample packed and labelled? Subject: "sample"
};
inline constexpr AskedKind askedKinds[] = {AskedKind::host,   AskedKind::character, AskedKind::sign, AskedKind::look,
                                           AskedKind::record, AskedKind::conclude,  AskedKind::order};
std::string_view askedName(AskedKind kind);
std::optional<AskedKind> askedNamed(std::string_view name);
/// Whether it is answered by yes or no (or not judged).
bool isYesNo(AskedKind kind);

/// Answers that every question, or every question of yes or no, knows.
inline constexpr std::string_view saidYes = "yes";
inline constexpr std::string_view saidNo = "no";
inline constexpr std::string_view saidNotJudged = "not-judged";   ///< "could not be judged"
inline constexpr std::string_view saidWrongOrder = "other-order";

/// An answer with what was true. Right is what the key has; where the key has several, the one that was given.
struct AnsweredItem {
    AskedKind kind = AskedKind::host;
    std::string subject;
    std::string truth;                     ///< "yes", "no", "not-judged" where it cannot be told, or the id of an option
    std::string given;
    std::optional<int> sure;               ///< percent, 0 to 100; nothing where not judged or not asked
    [[nodiscard]] bool right() const { return given == truth; }
    bool operator==(const AnsweredItem&) const = default;
};

/// How often one answer was given where one thing was true.
struct Tally {
    AskedKind kind = AskedKind::host;
    std::string subject, truth, given;
    std::int64_t count = 0;
    bool operator==(const Tally&) const = default;
};

/// How often people were so sure, and right.
struct SureTally {
    int sure = 0;                          ///< percent
    std::int64_t right = 0, total = 0;
    bool operator==(const SureTally&) const = default;
};

} // namespace cupule
