// The container of a bundle: a zip file (PKWARE APPNOTE), written and read through libarchive.
//
//  - Reading trusts nothing: names, kinds and sizes of all parts are looked at before a byte is unpacked, and unpacking stops where
//    a header lied. Nothing is ever written to a path that a file names.
//  - Writing goes beside the target and is renamed at the end; a writer that goes without finish() leaves nothing behind.

#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/base/clock.h"
#include "core/base/progress.h"
#include "core/base/result.h"

namespace cupule {

/// What a bundle may ask of the machine. Bytes; each may be changed by whoever reads.
struct BundleLimits {
    std::int64_t fileBytes = 8LL << 30;
    std::int64_t wholeBytes = 16LL << 30;      ///< of all parts unpacked
    std::int64_t partBytes = 2LL << 30;        ///< of one part unpacked
    std::int64_t manifestBytes = 64LL << 20;
    std::int64_t lineBytes = 8LL << 20;        ///< of one line of journal, records or personal data
    std::int64_t parts = 200'000;
    std::int64_t keptBytes = 192LL << 20;      ///< of journal and records together: so much stays unpacked for as long as the bundle is open
    std::int64_t timesPacked = 200;            ///< unpacked against the file's own size; small files (1 MiB unpacked) may be denser
};

struct ZipPart {
    std::string name;
    std::int64_t bytes = 0;                    ///< unpacked, as declared
};

class ZipFile {
public:
    /// Looks at every header. Faults "file.open", "bundle.library", "bundle.not-zip", "bundle.damaged", "bundle.path-outside",
    /// "bundle.part-kind", "bundle.part-twice", "bundle.part-clash", and with arguments "found" and "limit" "bundle.too-large",
    /// "bundle.part-large", "bundle.whole-large", "bundle.part-count", "bundle.too-dense".
    static Result<ZipFile> open(const std::string& path, const BundleLimits& limits);
    [[nodiscard]] const std::vector<ZipPart>& parts() const { return m_parts; }
    [[nodiscard]] const ZipPart* part(const std::string& name) const;
    [[nodiscard]] const BundleLimits& limits() const { return m_limits; }
    [[nodiscard]] const std::string& path() const { return m_path; }

    using Take = std::function<Status(const ZipPart& part, std::string_view bytes)>;
    /// Unpacks the parts that are `wanted`, in the order of the file, piece by piece; an empty piece ends a part. Faults of `take`,
    /// "bundle.damaged", "bundle.size-lies", "job.cancelled".
    Status unpack(const std::function<bool(const std::string& name)>& wanted, const Take& take, const Progress& progress = {}) const;
    /// One whole part. Faults as above, and "bundle.part-missing".
    Result<std::string> text(const std::string& name) const;

private:
    std::string m_path;
    BundleLimits m_limits;
    std::vector<ZipPart> m_parts;
    std::unordered_map<std::string, std::size_t> m_places;
};

class ZipWriter {
public:
    /// All parts carry the same moment; `progress` is told how many bytes of them were put in. Faults "bundle.library", "file.write".
    static Result<ZipWriter> begin(const std::string& path, const Instant& made, const Progress& progress = {});
    ZipWriter(ZipWriter&&) noexcept;
    ZipWriter& operator=(ZipWriter&&) = delete;
    ~ZipWriter();
    /// Adding has the fault "job.cancelled", too.
    Status addText(const std::string& name, std::string_view text);
    /// As it is, since pictures do not get smaller, or `packed`. Faults "file.open", "file.read", "file.write" where it changed its size.
    Status addFile(const std::string& name, const std::string& path, std::int64_t bytes, bool packed = false);
    /// A part as another file has it. Faults of both.
    Status copy(const ZipFile& from, const std::string& name, bool packed);
    /// Flushes and renames. Nothing is there before.
    Status finish();

private:
    struct Inside;
    explicit ZipWriter(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> m;
};

} // namespace cupule
