// Signatures on what travels, and the seed of a key locked by a passphrase, through libsodium.
//
//  - Signatures: Ed25519 (RFC 8032). Locking: a key from Argon2id (RFC 9106, version 1.3, one lane) over the passphrase opens an
//    XSalsa20-Poly1305 box.
//  - Seeds are wiped from memory when their holder goes. Chance comes in through the seam; outside tests it is SystemRandom.
//  - Pure functions; any thread may call them.

#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/random.h"
#include "core/base/result.h"
#include "core/record/key.h"

namespace cupule {

using Signature = std::array<std::uint8_t, 64>;
using KeySeed = std::array<std::uint8_t, 32>;

class SigningKey {
public:
    explicit SigningKey(const KeySeed& seed);
    SigningKey(SigningKey&& other) noexcept;
    SigningKey& operator=(SigningKey&&) = delete;
    ~SigningKey();
    static SigningKey make(Random& random);

    [[nodiscard]] const PublicKey& publicKey() const { return m_public; }
    [[nodiscard]] Signature sign(std::string_view text) const;
    [[nodiscard]] KeySeed seed() const;

private:
    PublicKey m_public{};
    std::array<std::uint8_t, 64> m_secret{};
};

/// False for every signature that RFC 8032 does not allow, keys of small order included.
bool verifies(const PublicKey& key, std::string_view text, const Signature& signature);

/// What guessing a passphrase costs. The default takes about a tenth of a second.
struct LockCost {
    std::uint64_t passes = 2;              ///< [1, 64]
    std::uint64_t memoryBytes = 64u << 20; ///< [8 KiB, 1 GiB]
};

/// Everything but the passphrase, in hexadecimal; may lie in a file.
struct LockedSeed {
    std::string salt;                      ///< 16 bytes
    std::string nonce;                     ///< 24 bytes
    std::string box;                       ///< 48 bytes: tag and seed
    LockCost cost;
};

/// Fault "key.memory" where the machine has not so much; "key.passphrase-empty" (usage).
Result<LockedSeed> lockSeed(const KeySeed& seed, std::string_view passphrase, Random& random, const LockCost& cost = {});
/// Faults "key.passphrase" where it does not open, "key.file" where the texts or costs cannot be those of a lock, "key.memory".
Result<KeySeed> unlockSeed(const LockedSeed& locked, std::string_view passphrase);

/// Fault "base.hex" unless the text is exactly `out.size()` bytes in hexadecimal.
Status bytesFromHex(std::string_view text, std::span<std::uint8_t> out);

} // namespace cupule
