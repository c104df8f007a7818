// Pictures by the SHA-256 of their bytes in `<store>.media/ab/abcdef...`. Never rewritten, the same bytes are kept once.

#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/progress.h"
#include "core/store/store.h"

namespace cupule {

class Media {
public:
    explicit Media(StoreCore& core) : m_core(core) {}
    /// Written beside, flushed, then renamed. Returns the hash. Faults "media.full", "media.write", "store.read-only".
    Result<std::string> keep(std::string_view bytes);
    /// Copies a file in while hashing it. Faults as above, "file.open", "file.read".
    Result<std::string> keepFile(const std::string& path, const Progress& progress = {});
    /// The path of a picture; fault "media.missing".
    Result<std::string> path(const std::string& sha256) const;
    /// Fault "media.missing" or "media.damaged" where the bytes are no longer those of the name.
    Status verify(const std::string& sha256) const;
    Result<std::vector<std::string>> all() const;
    [[nodiscard]] std::string folder() const;

private:
    StoreCore& m_core;
};

} // namespace cupule
