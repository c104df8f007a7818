// Taking in what came from another store, within one Change: lines of the journal, revisions, decisions and what else stands behind
// lines. Nothing that is known is written again, nothing is dropped, and what comes out depends on what was taken in alone, never on
// its order. Whether it may be taken in is for the caller to know; hashes and contents must have been verified.

#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/store/merge_nouns.h"
#include "core/store/outgoing.h"
#include "core/store/pieces.h"

namespace cupule {

/// A noun of which something new came in.
struct MergedNoun {
    std::string noun;
    Uid entity;
    bool made = false;                     ///< it was not here before
    Uid tree = {};                         ///< that a visit names
    std::vector<FieldConflict> conflicts;  ///< open now
    std::string before, after;             ///< of one that was here and is changed; of the first mostChangesKept alone, else empty
};
inline constexpr std::int64_t mostChangesKept = 200;

struct Merged {
    std::int64_t fresh = 0;                ///< records that this store did not know
    std::int64_t known = 0;
    std::vector<MergedNoun> nouns;         ///< by kind and id
    std::vector<MergeClash> clashes;
    std::vector<Uid> decided;              ///< visits about which decisions came in, each once
    std::vector<Uid> keptDrafts;           ///< visits that stand here for drafts whose visit came in with other content
    std::int64_t waiting = 0;              ///< nouns and records in the store that name what has not arrived yet
    std::vector<CarriedLine> carried;      ///< lines of the records that were new
    bool erased = false;                   ///< an erasure came in: copies beside the store must follow
};

class Merger {
public:
    explicit Merger(Change& change) : m_change(change), m_core(change.core()), m_pieces(m_core) {}
    /// A line whose hash was verified. `branch` tells lines of one incarnation apart where a laptop was copied; `before` is the hash of
    /// the line before it.
    Status line(const Incarnation& incarnation, int branch, const JournalLine& line, const Digest& before);
    /// After its line. Faults "merge.altered" (arguments "noun", "id") where a record is known here by the same id or line with another
    /// content, "merge.line" where its line was not given.
    Status record(GoingRecord record, int branch);
    Status personal(const GoingPersonal& personal);
    /// Puts everything in its place. The visits among `nouns` and `decided` are still to be judged and settled.
    Result<Merged> finish(const Progress& progress = {});

private:
    struct Run {
        std::int64_t chain = 0, first = 0, last = 0;
        bool fresh = false;                ///< written now
    };
    const Run& runOf(const Uid& incarnation, int branch, std::int64_t number) const;
    void revision(const GoingRecord& record, const LineMark& line, bool freshLine);
    bool isKnown(const GoingRecord& record, const Query& q);
    void addWaiting();
    void addPersonal();
    /// A noun that something came in of, and how it stands now.
    struct Touched {
        std::string noun;
        Uid entity;
        NounStands stands;
        MergingNoun incoming;
    };
    using Place = std::set<std::pair<int, Uid>>::const_iterator;
    std::vector<Touched> nextTouched(Place& at);
    void putAll(const Progress& progress);
    void put(Touched& touched);
    void followErasures();
    void look(const Progress& progress);

    Change& m_change;
    StoreCore& m_core;
    Pieces m_pieces;
    Merged m_merged;
    std::map<std::pair<Uid, int>, std::vector<Run>> m_runs;
    std::set<std::pair<int, Uid>> m_touched;   // by order of naming: people before visits
    std::set<std::pair<int, Uid>> m_personal;  // of which personal data came
    std::vector<OtherRecord> m_others;
    std::set<Uid> m_decided;
    std::set<std::int64_t> m_trees;
    std::int64_t m_done = 0, m_changesKept = 0;
};

} // namespace cupule
