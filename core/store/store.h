// One store: a SQLite file, its write-ahead log beside it while open, and the media folder `<store>.media`.
//
//  - Opening has a named outcome. What cannot be opened is a Fault, whose argument "can" is a stable code of what
//    the user can do: "get-newer-program", "choose-other-file", "restore-backup", "try-again", "free-space", "copy-elsewhere".
//    Codes: store.missing, store.exists, store.newer, store.foreign, store.damaged, store.in-use, store.full, store.read-only,
//    store.older-read-only, store.upgrade, store.io, store.folder, store.constraint (argument "constraint" names it).
//  - All writing happens inside a Change: nothing is kept until commit(), which costs one flush.
//  - One thread at a time for each Store. A worker opens a Store of its own on the same file.
//  - The device remembers outside the store (see `seen`) how far its chain had come, so that a copy without its log, or a
//    restored one, is noticed (decisions 5 and 7). Opening such a store, or one made elsewhere, starts a new incarnation
//    of the device with the first change.

#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "core/base/clock.h"
#include "core/base/hash.h"
#include "core/base/random.h"
#include "core/base/result.h"
#include "core/base/uid.h"
#include "core/store/change.h"

namespace cupule {

class Audits;
class Bundles;
class Decisions;
class Journal;
class Keys;
class Leaves;
class Media;
class Outgoing;
class People;
class Photos;
class Practice;
class Revisions;
class Samples;
class Search;
class Sites;
class StoreCore;
class StoreSettings;
class Trees;
class UndoLog;
class Visits;

/// What a new store is told about itself. `demonstration` can never be turned.
struct NewStore {
    std::string name;
    std::string zone = "Europe/London";    ///< IANA name
    std::string region;                    ///< region id of the pack
    std::string kind = "laptop";           ///< "laptop", "office" or "training"
    std::string notation = "OSGB";         ///< how positions are shown; free text of the position room
    bool demonstration = false;
};

struct StoreInfo {
    Uid id;
    std::string path;
    std::string name, zone, region, kind, notation;
    bool demonstration = false;
    Instant made;
    int version = 0;                       ///< of the schema
    bool readOnly = false;
};

enum class Opening { created, current, upgraded, newer, foreign, damaged, inUse, readOnly };   ///< "newer" to "inUse" are refusals

/// How far a device's chain had come in a store. The task layer keeps it in the profile, by store id.
struct Seen {
    Uid incarnation;
    std::int64_t number = 0;
    Digest hash{};
    bool operator==(const Seen&) const = default;
};

/// The store knows less than the device remembers, or something else at that number.
struct Shorter {
    Uid incarnation;
    std::int64_t seenNumber = 0;
    std::int64_t foundNumber = 0;
    bool otherContent = false;             ///< the number is there with another hash: a branch
};

struct StoreServices {
    const Clock& clock;
    Random& random;                        ///< for ids, salts: SystemRandom outside tests
};

struct OpenRequest {
    Uid device;                            ///< of the profile; null only for reading
    bool readOnly = false;
    std::optional<Seen> seen = {};         ///< what the profile remembers of this store; nothing = nothing remembered
    int waitMilliseconds = 3000;           ///< how long to wait for another program before store.in-use
    std::string backupFolder = {};         ///< for the copy made before an upgrade; empty = "<store>.backups"
};

class Store {
public:
    /// Fault "store.exists" where there is a file already; nothing is left behind when it fails.
    static Result<std::unique_ptr<Store>> create(const std::string& path, const NewStore& description, const OpenRequest& request,
                                                 const StoreServices& services);
    /// Upgrades an older store after a backup. A store on read-only ground opens read-only.
    static Result<std::unique_ptr<Store>> open(const std::string& path, const OpenRequest& request,
                                               const StoreServices& services);
    /// The store's id without opening it for work, to look up what the profile remembers. Writes nothing.
    static Result<Uid> idOf(const std::string& path);

    ~Store();                              ///< closes; the log is folded into the file
    Store(const Store&) = delete;
    Store& operator=(const Store&) = delete;
    /// Closes now and says whether the log could be folded in. Nothing else may be called afterwards.
    Status close();

    [[nodiscard]] const StoreInfo& info() const;
    [[nodiscard]] Opening opening() const;
    /// Where the store is shorter than, or other than, what the device remembers.
    [[nodiscard]] const std::optional<Shorter>& shorter() const;
    /// What the device should remember now; nothing until it has written its first line. Ask after every commit or at closing.
    [[nodiscard]] std::optional<Seen> seen() const;
    /// Counts commits on this store by anybody; a screen reloads when it differs.
    Result<std::int64_t> dataVersion() const;

    /// Starts writing. Waits for another writer, then "store.in-use"; "store.read-only". One change at a time.
    Result<Change> begin(const Uid& author, ChangeSize size = ChangeSize::usual);

    People people();                       ///< core/store/people.h
    Sites sites();                         ///< core/store/places.h
    Trees trees();                         ///< core/store/places.h
    Visits visits();                       ///< core/store/visits.h
    Photos photos();                       ///< core/store/photos.h
    Practice practice();                   ///< core/store/practice.h
    Samples samples();                     ///< core/store/samples.h, with custody lines
    Leaves leaves();                       ///< core/store/leaves.h, with regimes
    Decisions decisions();                 ///< core/store/decisions.h, with told and accepted finds
    Journal journal();                     ///< core/store/journal.h
    Revisions revisions();                 ///< core/store/revisions.h
    UndoLog undoLog();                     ///< core/store/undo_log.h
    Audits audits();                       ///< core/store/audits.h
    Bundles bundles();                     ///< core/store/bundles.h
    Outgoing outgoing();                   ///< core/store/outgoing.h
    Keys keys();                           ///< core/store/keys.h
    Search search();                       ///< core/store/search.h
    Media media();                         ///< core/store/media.h
    StoreSettings settings();              ///< core/store/settings.h

    /// For the store room itself (backup, health, bulk import).
    StoreCore& core();

private:
    explicit Store(std::unique_ptr<StoreCore> core);
    std::unique_ptr<StoreCore> m_core;
};

/// While one lives, everything read through the store is of one moment, and the file is locked once instead of at every question. No
/// change may be begun meanwhile; within one it does nothing.
class Snapshot {
public:
    explicit Snapshot(Store& store);
    ~Snapshot();
    Snapshot(const Snapshot&) = delete;
    Snapshot& operator=(const Snapshot&) = delete;

private:
    StoreCore& m_core;
    bool m_open = false;
};

} // namespace cupule
