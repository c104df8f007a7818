// A bundle as a file: written from what the store gave, and read as if an enemy had made it.
//
//  - open() verifies everything that can be verified without a store: names, sizes, signature, the SHA-256 of every part, every line
//    of the journal against its hash and the one before, every content against its line, personal data against commitments,
//    pictures against their names, and all counts. What is refused is refused whole.
//  - Reading afterwards gives what was verified: from memory where journal and records are small enough (BundleLimits), else from the
//    file, whose parts are verified again as they stream by, for the case that it was exchanged in between.

#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/exchange/bundle/line_file.h"
#include "core/exchange/bundle/manifest.h"
#include "core/exchange/bundle/signing.h"
#include "core/exchange/bundle/zip.h"

namespace cupule {

struct BundleMedium {
    std::string sha256;
    std::string path;
    std::int64_t bytes = 0;
};

/// Whole lines that become a part: a text, or a file that was written before (line_file.h).
struct BundleLines {
    BundleLines() = default;
    BundleLines(std::string lines);        ///< with line feeds
    BundleLines(const LineFile& lines);
    std::string text;
    std::string path;                      ///< empty = `text`
    std::int64_t bytes = 0, lines = 0;
    std::string sha256;
};

/// What goes into a bundle, beside the manifest. `personal` holds whole lines.
struct BundleParts {
    BundleLines journal, records;
    std::string personal;
    std::string pack;                      ///< the protocol pack; reference bundles only
    std::vector<BundleMedium> media;
};

/// Fills in parts, key and what is counted from the texts, signs, writes. Returns the manifest as signed. Tells bytes. Faults of ZipWriter.
Result<Manifest> writeBundle(const std::string& path, Manifest manifest, const BundleParts& parts, const SigningKey& key,
                             const Progress& progress = {});

/// Writes a bundle anew without the personal data that was erased since; everything else stays as it was, and so does the signature.
/// True where something was taken out. Faults of BundleFile::open and of writing.
Result<bool> eraseInBundle(const std::string& path, const std::function<bool(const std::string& commitment)>& erased);

class BundleFile {
public:
    /// Faults of ZipFile::open, "bundle.part-unknown", "bundle.part-missing", "bundle.newer", "bundle.manifest", "bundle.signature",
    /// "bundle.hash", "bundle.line" (arguments "part", "line", "why"), "bundle.counts", "job.cancelled".
    /// `eachLine` sees every line of the journal as it is verified: nothing may rest on it before all is.
    static Result<BundleFile> open(const std::string& path, const BundleLimits& limits = {}, const Progress& progress = {},
                                   const std::function<Status(const BundleLine&)>& eachLine = {});

    [[nodiscard]] const Manifest& manifest() const { return m_manifest; }
    /// SHA-256 of the manifest's bytes: two bundles with the same id must have the same.
    [[nodiscard]] const std::string& manifestDigest() const { return m_digest; }

    Status eachLine(const std::function<Status(const BundleLine&)>& take) const;
    Status eachRecord(const std::function<Status(const BundleRecord&)>& take) const;
    Status eachPersonal(const std::function<Status(const BundlePersonal&)>& take) const;
    /// Pictures piece by piece; an empty piece ends one.
    Status eachMedium(const std::function<Status(const std::string& sha256, std::string_view bytes)>& take) const;
    /// The protocol pack; empty where the bundle has none.
    Result<std::string> pack() const;

private:
    explicit BundleFile(ZipFile zip) : m_zip(std::move(zip)) {}
    Status unpackSame(const std::function<bool(const std::string& name)>& wanted, const ZipFile::Take& take,
                      const Progress& progress = {}) const;
    /// Pieces of a part, an empty one at its end.
    Status pieces(const std::string& part, const std::function<Status(std::string_view bytes)>& take, const Progress& progress) const;
    Status lines(const std::string& part, const std::function<Status(std::string_view line, std::int64_t number)>& take,
                 const Progress& progress = {}, std::string* kept = nullptr) const;
    /// `kept` gets all of the part.
    template <class Line>
    Status linesRead(const std::string& part, const std::function<Line(std::string_view)>& read,
                     const std::function<Status(Line&, std::int64_t number)>& use, const Progress& progress = {},
                     std::string* kept = nullptr) const;
    template <class Line>
    Status linesUsed(const std::string& part, Result<Line> (*read)(std::string_view), const std::function<Status(const Line&)>& take) const;
    friend class BundleVerifier;

    ZipFile m_zip;
    Manifest m_manifest;
    std::string m_digest;
    std::unordered_map<std::string, std::string> m_hashes;   // by part
    std::unordered_map<std::string, std::string> m_kept;     // parts as they were verified
};

} // namespace cupule
