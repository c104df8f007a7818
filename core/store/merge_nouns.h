// What merging does to the rows of nouns, and to records that stand behind a line but are no revisions. Inside the store room only.

#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/store/change.h"
#include "core/store/heads.h"
#include "core/store/noun_rows.h"
#include "core/store/outgoing.h"

namespace cupule {

/// Something that must be one noun's alone is also another's: the code of a person, the number of a sample.
struct MergeClash {
    std::string noun, value;
    Uid here, there;
    bool operator==(const MergeClash&) const = default;
};

/// In the order in which nouns name each other: what is named comes first.
int rankOf(std::string_view noun);
std::string nounOfRank(int rank);

using MergingNoun = std::variant<Person, Site, Tree, Visit, Leave, Regime, PhotoNote, Sample>;
/// Fault "record.json".
MergingNoun readNoun(const std::string& noun, const std::string& content);
/// Nothing where it names a noun whose row is not here. Only what a visit names is told.
std::optional<VisitNames> rowsNamed(StoreCore& core, const MergingNoun& noun);

struct RowBefore {
    bool there = false;
    bool draft = false;                    ///< a visit that was never handed in from here
    std::int64_t tree = 0;                 ///< the row of a visit's tree; 0 where there is none
    std::string content;
};
RowBefore rowBefore(StoreCore& core, const std::string& noun, const Uid& entity);
/// A draft whose visit came in as somebody handed it in elsewhere goes on as a visit of its own. Its new id.
Uid keepDraft(Change& change, const std::string& content);
/// Personal data that are here are added to a person. `there`: it has a row.
void putNoun(StoreCore& core, MergingNoun& noun, const NounStands& stands, const VisitNames& named, bool there);
void findClash(StoreCore& core, const MergingNoun& noun, std::vector<MergeClash>& clashes);

/// A record that is no revision: event, decision, custody, told, erasure, key-note, skill.
struct OtherRecord {
    std::string type;
    Uid entity;
    std::string content;
    LineMark line;
};
/// The content that stands here for the same record.
std::optional<std::string> otherHere(StoreCore& core, const GoingRecord& record, const LineMark& line);
/// False where what it speaks of is not here yet.
bool putOther(StoreCore& core, const OtherRecord& other);
void keepWaiting(StoreCore& core, const OtherRecord& other);

} // namespace cupule
