// Keys that sign what travels, and what people have said about them: vouched for, or withdrawn.

#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/result.h"
#include "core/base/uid.h"
#include "core/record/person.h"

namespace cupule {

using PublicKey = std::array<std::uint8_t, 32>;   ///< Ed25519 (RFC 8032)

enum class KeyStep { vouched, withdrawn };

/// One thing that somebody said about a key. Notes are only ever added; what holds is computed from all of them, in any order.
struct KeyNote {
    Uid id;
    std::string key;                       ///< 64 hexadecimal digits
    KeyStep step = KeyStep::vouched;
    Uid person;                            ///< whose key it is
    std::vector<Role> roles;               ///< that the key stands for; of a vouched one only
    std::int64_t upTo = 0;                 ///< of a withdrawn one: bundles of this key up to this number stay valid
    Uid by;
    Instant at;
    std::string remark;
    bool operator==(const KeyNote&) const = default;
};

/// "This key follows that one", said by the older one.
struct KeyFollows {
    std::string newer;                     ///< 64 hexadecimal digits
    std::string older;
    std::string signature;                 ///< 128, over followText()
    bool operator==(const KeyFollows&) const = default;
};
/// The text that the older key signs.
std::string followText(const std::string& older, const std::string& newer);

/// Six groups of five digits, to be read out over the telephone: of SHA-256("cupule-key-1", line feed, the 32 bytes), group n is
/// the number in bytes 5n to 5n+4, most significant first, modulo 100000. About 99 bits.
std::string fingerprint(const PublicKey& key);
/// The same digits, whatever stands between them.
bool sameFingerprint(const std::string& typed, const PublicKey& key);
/// Fault "key.form" (kind usage) unless the text is exactly 64 hexadecimal digits.
Result<PublicKey> publicKeyFrom(const std::string& text);

} // namespace cupule
