// SHA-256 (FIPS 180-4) through OpenSSL, which uses the processor's instructions where it has them.

#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>

#include "core/base/progress.h"
#include "core/base/result.h"

namespace cupule {

using Digest = std::array<std::uint8_t, 32>;

/// Fed piece by piece; `finish` gives the digest and starts anew.
class Sha256 {
public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;
    void add(std::span<const std::uint8_t> bytes);
    void add(std::string_view text);
    Digest finish();

private:
    struct State;
    std::unique_ptr<State> m_state;
};

Digest sha256(std::string_view text);
/// Streams the file. Fault "file.open", "file.read" or "job.cancelled".
Result<Digest> sha256OfFile(const std::string& path, const Progress& progress = {});

/// Lower-case hexadecimal.
std::string hex(std::span<const std::uint8_t> bytes);
/// Fault "base.hex" unless the text is exactly 64 hexadecimal digits.
Result<Digest> digestFromHex(std::string_view text);

} // namespace cupule
