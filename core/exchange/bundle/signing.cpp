#include "core/exchange/bundle/signing.h"

#include <sodium.h>

#include "core/base/hash.h"

namespace cupule {

namespace {

constexpr std::uint64_t mostPasses = 64;
constexpr std::uint64_t mostMemory = 1u << 30;

using BoxKey = std::array<std::uint8_t, crypto_secretbox_KEYBYTES>;
using Salt = std::array<std::uint8_t, crypto_pwhash_SALTBYTES>;
using Nonce = std::array<std::uint8_t, crypto_secretbox_NONCEBYTES>;
using Box = std::array<std::uint8_t, crypto_secretbox_MACBYTES + sizeof(KeySeed)>;

/// Chooses the code for this processor; harmless when called again, and no chance of its own is used here.
void ready()
{
    static const int done = sodium_init();
    static_cast<void>(done);
}

const std::uint8_t* bytesOf(std::string_view text)
{
    return reinterpret_cast<const std::uint8_t*>(text.data());
}

Status stretch(BoxKey& key, std::string_view passphrase, const Salt& salt, const LockCost& cost)
{
    if (crypto_pwhash(key.data(), key.size(), passphrase.data(), passphrase.size(), salt.data(), cost.passes,
                      static_cast<std::size_t>(cost.memoryBytes), crypto_pwhash_ALG_ARGON2ID13) != 0)
        return fail("key.memory", FaultKind::io, {{"bytes", std::to_string(cost.memoryBytes)}});
    return {};
}

int digit(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'a' && c <= 'f')
        return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

} // namespace

Status bytesFromHex(std::string_view text, std::span<std::uint8_t> out)
{
    if (text.size() != 2 * out.size())
        return fail("base.hex", FaultKind::data);
    for (std::size_t i = 0; i < out.size(); ++i) {
        const int high = digit(text[2 * i]), low = digit(text[2 * i + 1]);
        if (high < 0 || low < 0)
            return fail("base.hex", FaultKind::data);
        out[i] = static_cast<std::uint8_t>(high << 4 | low);
    }
    return {};
}

SigningKey::SigningKey(const KeySeed& seed)
{
    ready();
    crypto_sign_seed_keypair(m_public.data(), m_secret.data(), seed.data());
}

SigningKey::SigningKey(SigningKey&& other) noexcept : m_public(other.m_public), m_secret(other.m_secret)
{
    sodium_memzero(other.m_secret.data(), other.m_secret.size());
}

SigningKey::~SigningKey()
{
    sodium_memzero(m_secret.data(), m_secret.size());
}

SigningKey SigningKey::make(Random& random)
{
    KeySeed seed{};
    random.fill(seed);
    SigningKey key(seed);
    sodium_memzero(seed.data(), seed.size());
    return key;
}

Signature SigningKey::sign(std::string_view text) const
{
    Signature signature{};
    crypto_sign_detached(signature.data(), nullptr, bytesOf(text), text.size(), m_secret.data());
    return signature;
}

KeySeed SigningKey::seed() const
{
    KeySeed seed{};
    crypto_sign_ed25519_sk_to_seed(seed.data(), m_secret.data());
    return seed;
}

bool verifies(const PublicKey& key, std::string_view text, const Signature& signature)
{
    ready();
    return crypto_sign_verify_detached(signature.data(), bytesOf(text), text.size(), key.data()) == 0;
}

Result<LockedSeed> lockSeed(const KeySeed& seed, std::string_view passphrase, Random& random, const LockCost& cost)
{
    ready();
    if (passphrase.empty())
        return fail("key.passphrase-empty", FaultKind::usage);
    Salt salt{};
    Nonce nonce{};
    random.fill(salt);
    random.fill(nonce);
    BoxKey key{};
    if (auto made = stretch(key, passphrase, salt, cost); !made)
        return fail(made.error());
    Box box{};
    crypto_secretbox_easy(box.data(), seed.data(), seed.size(), nonce.data(), key.data());
    sodium_memzero(key.data(), key.size());
    return LockedSeed{hex(salt), hex(nonce), hex(box), cost};
}

Result<KeySeed> unlockSeed(const LockedSeed& locked, std::string_view passphrase)
{
    ready();
    Salt salt{};
    Nonce nonce{};
    Box box{};
    const LockCost& cost = locked.cost;
    if (!bytesFromHex(locked.salt, salt) || !bytesFromHex(locked.nonce, nonce) || !bytesFromHex(locked.box, box)
        || cost.passes < crypto_pwhash_OPSLIMIT_MIN || cost.passes > mostPasses || cost.memoryBytes < crypto_pwhash_MEMLIMIT_MIN
        || cost.memoryBytes > mostMemory)
        return fail("key.file", FaultKind::data);
    BoxKey key{};
    if (auto made = stretch(key, passphrase, salt, cost); !made)
        return fail(made.error());
    KeySeed seed{};
    const int opened = crypto_secretbox_open_easy(seed.data(), box.data(), box.size(), nonce.data(), key.data());
    sodium_memzero(key.data(), key.size());
    if (opened != 0)
        return fail("key.passphrase", FaultKind::refused);
    return seed;
}

} // namespace cupule
