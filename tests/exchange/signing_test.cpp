#include "core/exchange/bundle/signing.h"

#include <sodium.h>

#include "core/base/hash.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

template <class Bytes>
Bytes fromHex(std::string_view text)
{
    Bytes bytes{};
    REQUIRE(bytesFromHex(text, bytes));
    return bytes;
}

constexpr LockCost cheap{1, 8192};

} // namespace

TEST_CASE("signatures are those of RFC 8032", "[bundle][signing]")
{
    // RFC 8032, section 7.1, tests 1 to 3.
    struct Row {
        const char* seed;
        const char* key;
        std::string text;
        const char* signature;
    };
    const auto row = GENERATE(values<Row>({
        {"9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
         "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a", "",
         "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155"
         "5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"},
        {"4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
         "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "\x72",
         "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
         "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"},
        {"c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
         "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "\xaf\x82",
         "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
         "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"},
    }));
    const SigningKey key(fromHex<KeySeed>(row.seed));
    CHECK(hex(key.publicKey()) == row.key);
    const Signature signature = key.sign(row.text);
    CHECK(hex(signature) == row.signature);
    CHECK(verifies(key.publicKey(), row.text, signature));
    CHECK_FALSE(verifies(key.publicKey(), row.text + "x", signature));
    CHECK(key.seed() == fromHex<KeySeed>(row.seed));
}

TEST_CASE("no changed bit of signature, key or text verifies", "[bundle][signing]")
{
    SeededRandom random(3);
    const SigningKey key = SigningKey::make(random);
    const std::string text = "counts, parts and commitments";
    const Signature signature = key.sign(text);
    REQUIRE(verifies(key.publicKey(), text, signature));
    for (std::size_t bit = 0; bit < 8 * signature.size(); ++bit) {
        Signature changed = signature;
        changed[bit / 8] = static_cast<std::uint8_t>(changed[bit / 8] ^ (1u << bit % 8));
        REQUIRE_FALSE(verifies(key.publicKey(), text, changed));
    }
    for (std::size_t bit = 0; bit < 8 * key.publicKey().size(); ++bit) {
        PublicKey changed = key.publicKey();
        changed[bit / 8] = static_cast<std::uint8_t>(changed[bit / 8] ^ (1u << bit % 8));
        REQUIRE_FALSE(verifies(changed, text, signature));
    }
    // A key of small order verifies a signature over any text where it is let through; the neutral point is one
    // (RFC 8032, section 5.1.3: y = 1, x = 0), with R = neutral and S = 0.
    PublicKey neutral{};
    neutral[0] = 1;
    Signature empty{};
    empty[0] = 1;
    CHECK_FALSE(verifies(neutral, text, empty));
}

TEST_CASE("passphrases are stretched by Argon2id", "[bundle][signing]")
{
    // The vector of RFC 9106, section 5.3, has four lanes, a secret and associated data, which libsodium does not offer. This one
    // is of the reference implementation (P-H-C/phc-winner-argon2, src/test.c): version 1.3, t = 2, m = 64 MiB, p = 1.
    const char* encoded = "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc";
    CHECK(crypto_pwhash_str_verify(encoded, "password", 8) == 0);
    CHECK(crypto_pwhash_str_verify(encoded, "passwork", 8) != 0);
}

TEST_CASE("a locked seed opens with its passphrase alone", "[bundle][signing]")
{
    SeededRandom random(4);
    const SigningKey key = SigningKey::make(random);
    const LockedSeed locked = lockSeed(key.seed(), "spiny husk", random, cheap).value();
    CHECK(unlockSeed(locked, "spiny husk").value() == key.seed());
    CHECK(unlockSeed(locked, "spiny husks").error().code == "key.passphrase");
    CHECK(unlockSeed(locked, "").error().code == "key.passphrase");
    CHECK(lockSeed(key.seed(), "", random, cheap).error().code == "key.passphrase-empty");
    const LockedSeed again = lockSeed(key.seed(), "spiny husk", random, cheap).value();
    CHECK(again.salt != locked.salt);
    CHECK(again.box != locked.box);
}

TEST_CASE("a damaged lock is refused and asks for no more memory than allowed", "[bundle][signing]")
{
    SeededRandom random(5);
    const SigningKey key = SigningKey::make(random);
    const LockedSeed good = lockSeed(key.seed(), "spiny husk", random, cheap).value();
    LockedSeed bad = good;
    bad.box[3] = bad.box[3] == '0' ? '1' : '0';
    CHECK(unlockSeed(bad, "spiny husk").error().code == "key.passphrase");
    bad = good;
    bad.salt.pop_back();
    CHECK(unlockSeed(bad, "spiny husk").error().code == "key.file");
    bad = good;
    bad.nonce[0] = 'g';
    CHECK(unlockSeed(bad, "spiny husk").error().code == "key.file");
    for (const LockCost& cost : {LockCost{0, 8192}, LockCost{65, 8192}, LockCost{1, 100}, LockCost{1, 1ULL << 40}}) {
        bad = good;
        bad.cost = cost;
        CHECK(unlockSeed(bad, "spiny husk").error().code == "key.file");
    }
}

TEST_CASE("a fingerprint is six groups of five digits that anybody can work out", "[bundle][signing]")
{
    // Python: d = hashlib.sha256(b"cupule-key-1\n" + bytes.fromhex(key)).digest();
    //         " ".join("%05d" % (int.from_bytes(d[5*i:5*i+5], "big") % 100000) for i in range(6))
    const PublicKey key = publicKeyFrom("d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a").value();
    CHECK(fingerprint(key) == "58660 17152 84517 90054 90399 10506");
    CHECK(fingerprint(PublicKey{}) == "27455 34081 12965 09213 65525 84852");
    CHECK(sameFingerprint("58660-17152-84517-90054-90399-10506", key));
    std::string typed = fingerprint(key);
    typed[7] = '-';
    typed.insert(3, " . ");
    CHECK_FALSE(sameFingerprint(typed, key));
    CHECK_FALSE(sameFingerprint("", key));
    CHECK(publicKeyFrom("d75a").error().code == "key.form");
}
