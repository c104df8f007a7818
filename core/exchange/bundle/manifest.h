// What a bundle says about itself, and the lines of its parts. resources/docs/bundle.md describes the same for other programs.
// Every struct travels as canonical JSON (core/record/json.h); a doubled, unknown or missing member is refused.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/clock.h"
#include "core/base/result.h"
#include "core/base/uid.h"
#include "core/record/key.h"

namespace cupule {

inline constexpr int bundleFormat = 1;
/// Of a bundle with records of type "skill", which programs that know form 1 alone cannot read. All others stay form 1.
inline constexpr int bundleFormatSkill = 2;
// In two pieces each: a string of the form "room.what" is the code of a fault.
inline const std::string manifestPart = "manifest." "json";
inline const std::string signaturePart = "manifest." "sig";
inline const std::string journalPart = "journal." "jsonl";
inline const std::string recordsPart = "records." "jsonl";
inline const std::string personalPartName = "personal." "jsonl";
inline const std::string packPart = "pack." "json";
inline const std::string mediaPrefix = "media/";

enum class BundleKind { day, correction, decision, reference };
/// Stored and exchanged names: "day", "correction", "decision", "reference".
std::string_view bundleKindName(BundleKind kind);

struct BundlePart {
    std::int64_t bytes = 0;
    std::string name;
    std::string sha256;                    ///< 64 hexadecimal digits
    bool operator==(const BundlePart&) const = default;
};

/// Of one chain of the journal: the lines that travel, and how far the chain had come.
struct BundleChain {
    Instant begun;
    Uid device;
    std::string hash;                      ///< of line `to`
    Uid incarnation;
    std::int64_t lines = 0;                ///< that travel
    std::int64_t to = 0;                   ///< the chain's last line
    std::string why;                       ///< the incarnation began
    int branch = 0;                        ///< tells chains of one incarnation apart: a laptop that was copied, or lines with a gap
    bool operator==(const BundleChain&) const = default;
};

struct BundleCounts {
    std::int64_t lines = 0, media = 0, personal = 0, records = 0, visits = 0;
    bool operator==(const BundleCounts&) const = default;
};

struct BundleStore {
    Uid id;
    std::string kind, name, region, zone;
    bool operator==(const BundleStore&) const = default;
};

struct Manifest {
    std::vector<Uid> acknowledges;         ///< bundles that were taken in
    std::string authorCode;
    Uid authorPerson;
    Uid bundle;
    std::vector<BundleChain> chains;
    BundleCounts counts;
    bool demonstration = false;
    std::vector<KeyFollows> follows;       ///< earlier keys of the author, oldest first
    int format = bundleFormat;
    std::string key;                       ///< of the author, 64 hexadecimal digits
    std::string kind;                      ///< bundleKindName
    std::vector<std::string> leftOut;      ///< "personal", "photos", "practice"
    Instant made;
    std::int64_t number = 0;               ///< of this key's bundles, from 1
    std::vector<BundlePart> parts;         ///< every part but the manifest, its signature and personal data
    std::vector<std::string> personal;     ///< commitments to personal data, sorted
    std::string program;
    BundleStore store;
    bool operator==(const Manifest&) const = default;
};

/// A line of the journal. `before` is the hash of the line before, where that does not travel just above it.
struct BundleLine {
    Instant at;
    Uid author;
    std::string before;
    std::string commitment;
    std::string digest;
    Uid entity;
    std::string hash;
    Uid incarnation;
    std::string kind;
    std::string noun;
    std::int64_t number = 0;
    int branch = 0;                        ///< as in the manifest
    bool operator==(const BundleLine&) const = default;
};

/// One content with the journal line that stands for it.
struct BundleRecord {
    std::string commitment;                ///< that holds for this revision; its line need not be the one that names it
    std::string content;                   ///< canonical JSON; its SHA-256 is the line's digest
    Uid entity;
    Uid id;                                ///< of the revision; null for what is no revision
    Uid incarnation;
    std::string noun;                      ///< of a revision: what it is a revision of
    std::int64_t number = 0;               ///< of the line
    std::vector<Uid> parents;
    std::string type;                      ///< "revision", "event", "decision", "custody", "told", "erasure", "key-note", "skill"
    int branch = 0;                        ///< of the line
    bool operator==(const BundleRecord&) const = default;
};

/// Personal data with its salt; SHA-256(salt, payload) is the commitment.
struct BundlePersonal {
    std::string commitment;
    Uid entity;
    std::string noun;
    std::string payload;
    std::string salt;
    bool operator==(const BundlePersonal&) const = default;
};

std::string toJson(const Manifest& value);
std::string toJson(const BundleLine& value);
std::string toJson(const BundleRecord& value);
std::string toJson(const BundlePersonal& value);

/// Faults "bundle.newer" (argument "format") where a newer program wrote it, "bundle.manifest" with the path of what is wrong.
Result<Manifest> readManifest(std::string_view text);
/// Fault "record.json".
Result<BundleLine> readBundleLine(std::string_view text);
Result<BundleRecord> readBundleRecord(std::string_view text);
Result<BundlePersonal> readBundlePersonal(std::string_view text);

/// Fault "record.json" unless the content is one of a record of this type and noun, by this id.
Status checkContent(const BundleRecord& record);

} // namespace cupule
