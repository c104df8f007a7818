// A file that arrived as a page to be shown: whose it is and whether that is sure; and what taking it in did or would do, by name.

#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/task/arrival.h"
#include "core/task/conflicts.h"
#include "core/task/merge.h"

namespace cupule {

/// A chain of the sender's journal that is another one here.
struct CopiedLaptop {
    std::int64_t line = 0;                 ///< the first that differs
    std::string here;                      ///< code of who wrote it here; empty where nobody knows
};

struct ArrivalPage {
    std::string name;                      ///< of the author, as this store has it; empty = not known here, or hidden
    bool codeIsAnothers = false;           ///< somebody else here goes by the author's code
    std::vector<std::string> trusted;      ///< fingerprints of other keys that hold here, of the author and of who has their code
    std::vector<CopiedLaptop> copied;
    std::optional<Fault> refused;          ///< of mayTakeIn
    std::optional<Fault> noVouching;       ///< why whoever works here may vouch for nobody's key
};
Result<ArrivalPage> arrivalPage(Session& session, const Arrival& arrival);

struct CameInField {
    std::string path;                      ///< as FieldConflict has it
    std::string before, after;             ///< JSON; empty = not there
};

/// A noun that came in new, came in changed, or was decided about.
struct CameIn {
    std::string noun;
    Uid entity;
    std::string name;                      ///< as ConflictLine has it
    std::optional<CivilDate> date;
    bool made = false;
    std::vector<CameInField> fields;       ///< of a changed one; none where only what lies behind it is new
    std::optional<RecordState> decided;    ///< how a visit stands after decisions that came in
};

inline constexpr std::size_t mostCameIn = 200, mostConflictPages = 20;

struct CameInPage {
    std::map<std::string, int> made, changed;      ///< how many, by noun
    int decided = 0, conflicts = 0;                ///< visits decided about; fields that two people changed differently
    std::vector<CameIn> lines;                     ///< changed and decided ones first, at most mostCameIn
    std::vector<ConflictPage> open;                ///< at most mostConflictPages
    std::map<std::string, std::string> names;      ///< of ids that stand in the fields
};
/// To be called while what came in can be read (TakeIn::look). In the hidden mode values are left out.
Result<CameInPage> cameInPage(Session& session, const TakenIn& taken);

} // namespace cupule
