// The journal: append-only, one hash chain for each incarnation of a device.
//
// hash(n) = SHA-256( "cupule-journal-1" LF incarnation LF number LF at LF offset LF author LF kind LF noun LF entity LF
//                    digest LF commitment LF hash(n-1) )
// with ids as 36 characters (empty = none), numbers in decimal, `at` in UTC milliseconds, offset in minutes (empty = unknown),
// digests as 64 hexadecimal digits (empty = none); hash(0) is 64 zeros.

#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/store/store.h"

namespace cupule {

struct JournalLine {
    Uid incarnation;
    std::int64_t number = 0;
    Instant at;
    Uid author;
    std::string kind;                      ///< "began", "made", "changed", "left", "imported", "submitted", "revised", "decided", ...
    std::string noun;                      ///< "visit", "tree", ...
    Uid entity;
    std::optional<Digest> digest;          ///< of the content as it was
    std::optional<Digest> commitment;      ///< to personal data: SHA-256(salt, payload)
    Digest hash{};
};

struct Incarnation {
    Uid id, device;
    Instant begun;
    std::string why;                       ///< "made", "opened-here", "shorter-than-seen", "other-than-seen"
    std::int64_t lines = 0;                ///< number of its last line
    std::int64_t first = 1;                ///< number of its first line here: a piece of a chain that came in may begin later
    bool cameIn = false;                   ///< in bundles of another store
};

struct JournalProof {
    bool whole = false;
    std::int64_t lines = 0;
    int chains = 0;
    int gaps = 0;                          ///< pieces of chains that came in whose line before has not arrived
    int branches = 0;                      ///< pieces that begin where another line stands as well
    std::int64_t erased = 0;               ///< commitments whose payload was erased by a recorded erasure
    Uid brokenChain;
    std::int64_t brokenNumber = 0;
    std::string brokenWhy;                 ///< "hash", "gap", "content", "commitment", "shorter-than-seen"
    std::string brokenNoun;
    Uid brokenEntity;
};

Digest journalHash(const JournalLine& line, const Digest& previous);

struct LineHere {
    Digest hash{};
    Uid author;
};

class Journal {
public:
    explicit Journal(StoreCore& core) : m_core(core) {}
    Result<std::vector<Incarnation>> incarnations();
    Result<std::vector<JournalLine>> lines(const Uid& incarnation, std::int64_t from, int count);
    /// What stands at one number: mostly one line, several where a laptop was copied with its profile.
    Result<std::vector<LineHere>> linesAt(const Uid& incarnation, std::int64_t number);
    Result<std::vector<JournalLine>> ofEntity(const Uid& entity);
    /// A line about something that has no content of its own, e.g. kind "exported". `text` is digested.
    Status note(Change& change, const std::string& kind, const std::string& noun, const Uid& entity, const std::string& text);
    /// Walks every chain and compares every content with its line; names the first line that does not hold.
    Result<JournalProof> prove(const Progress& progress = {});

private:
    StoreCore& m_core;
};

} // namespace cupule
