// Chains of the journal that came in from other stores. A line is known by its hash; it is put behind the line that it names, and
// where that line is not here, or another one follows it already, a new piece of its chain begins. Inside the store room only.

#pragma once

#include <map>
#include <optional>
#include <vector>

#include "core/store/outgoing.h"
#include "core/store/store_core.h"

namespace cupule {

class Pieces {
public:
    explicit Pieces(StoreCore& core) : m_core(core) {}

    struct Put {
        LineMark at;
        bool fresh = false;
    };
    /// Keeps a line whose hash was verified. `before` is the hash of the line before it, 64 zeros before the first one.
    Put put(const Incarnation& incarnation, const JournalLine& line, const Digest& before);

private:
    struct Piece {
        std::int64_t chain = 0;
        std::int64_t first = 0, last = 0;
        Digest hash{};                     // of the last line
        bool here = false;                 // of this store itself: never added to
    };
    struct Chain {
        std::vector<Piece> pieces;
        std::multimap<std::int64_t, std::size_t> byFirst, byLast;   // places in `pieces`
        std::int64_t longest = 0;                                   // lines of a piece
    };
    Chain& chainOf(const Uid& incarnation);
    static void add(Chain& chain, const Piece& piece);
    Piece begin(const Incarnation& incarnation, const JournalLine& line, const Digest& before);
    std::optional<std::int64_t> standsIn(const Chain& chain, const JournalLine& line);
    Digest hashAt(std::int64_t chain, std::int64_t number);

    StoreCore& m_core;
    std::map<Uid, Chain> m_chains;
};

/// Which incarnation a chain belongs to, whether it came in from elsewhere.
struct ChainOwner {
    Uid incarnation;
    bool cameIn = false;
    std::int64_t first = 1;
    Digest before{};
};
ChainOwner ownerOf(StoreCore& core, std::int64_t chain);
/// All chains of an incarnation, its own first.
std::vector<std::int64_t> chainsOf(StoreCore& core, const Uid& incarnation);

} // namespace cupule
