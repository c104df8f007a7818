// Versions of a noun that did not know of each other and do not agree: found, shown field by field, settled by a person.
//
//  - Changes to different fields are no conflict: they are joined by computation (core/store/merge_join.h).
//  - Settling writes one revision with all versions as parents; both stay in the journal.

#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/task/session.h"

namespace cupule {

struct ConflictLine {
    std::string noun;                       ///< "visit", "tree", "site", "person", "photo", "sample", "leave", "regime"
    Uid entity;
    std::string name;                       ///< label, name, code or number; of a visit the label of its tree
    std::optional<CivilDate> date;          ///< of a visit
    int fields = 0;
};

/// Who made a version, when and on which device. The clock is only told, never gone by.
struct ConflictVersion {
    Uid revision;
    std::string code, name;                 ///< of the author; the name may be empty
    Instant at;
    std::string clockDoubt;                 ///< "ahead" (of this device's clock), "before-parent", "before-visit", or empty
    Uid device;
    bool thisDevice = false;
};

struct ConflictField {
    std::string path;                       ///< as FieldConflict has it
    std::string before;                     ///< JSON of what all started from; empty = not there, or not known
    std::vector<std::string> values;        ///< JSON, one for each of ConflictPage::versions; empty = not there
};

struct ConflictPage {
    ConflictLine line;
    std::vector<Uid> heads;
    std::vector<ConflictVersion> versions;  ///< the heads, by id; the same order in every store
    std::optional<ConflictVersion> common;  ///< the last revision that all of them know
    std::vector<ConflictField> fields;      ///< by path
    int agreeing = 0;                       ///< fields that do not differ
    std::map<std::string, std::string> names; ///< of ids that stand in the values: label, code or name
};

/// Fields and what they are to be: JSON, empty = not there.
using Settlement = std::map<std::string, std::string>;

inline constexpr int mostForks = 5000;      ///< so many nouns with several versions are looked at

Result<std::vector<ConflictLine>> openConflicts(Session& session);
/// How many fields of this noun do not agree.
Result<int> conflictingFields(Session& session, const Uid& entity);
/// Fault "conflict.none". In the hidden mode values are left out.
Result<ConflictPage> conflictPage(Session& session, const Uid& entity);
/// `heads` as they were shown. Roles verifier, office. Faults "conflict.none", "conflict.field-left" (argument "path"),
/// "conflict.changed-meanwhile", "record.json" (what was written in place of both is no such field).
Status settleConflict(Session& session, const Uid& entity, const std::vector<Uid>& heads, const Settlement& settlement);

} // namespace cupule
