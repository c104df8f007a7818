// T9: SHA-256 of media, beside OpenSSL called barely. T9b: verifying signatures, beside libsodium and OpenSSL called barely.

#include <fstream>

#include <openssl/evp.h>
#include <sodium.h>

#include "core/base/hash.h"
#include "core/base/random.h"
#include "core/exchange/bundle/signing.h"
#include "tests/bench/measure.h"

namespace bench {

namespace {

constexpr std::size_t blockBytes = 16384;              // as `openssl speed -bytes 16384`
constexpr std::size_t mediaBytes = std::size_t{256} << 20;

double bareMegabytesPerSecond(const std::vector<std::uint8_t>& block)
{
    EVP_MD_CTX* context = EVP_MD_CTX_new();
    unsigned char digest[EVP_MAX_MD_SIZE];
    const double taken = seconds([&] {
        EVP_DigestInit_ex(context, EVP_sha256(), nullptr);
        for (std::size_t done = 0; done < mediaBytes; done += block.size())
            EVP_DigestUpdate(context, block.data(), block.size());
        EVP_DigestFinal_ex(context, digest, nullptr);
    });
    EVP_MD_CTX_free(context);
    return static_cast<double>(mediaBytes) / 1e6 / taken;
}

constexpr int signatures = 4000;                       // over 64 bytes each, as `openssl speed ed25519` has it

struct Signed {
    cupule::PublicKey key{};
    std::string text;
    cupule::Signature signature{};
};

Signed signedText()
{
    cupule::SeededRandom random(2);
    const cupule::SigningKey key = cupule::SigningKey::make(random);
    Signed made{key.publicKey(), std::string(64, 'x'), {}};
    made.signature = key.sign(made.text);
    return made;
}

const unsigned char* bytes(const std::string& text)
{
    return reinterpret_cast<const unsigned char*>(text.data());
}

double perSecond(const std::function<bool()>& verify)
{
    bool all = true;
    const double taken = seconds([&] {
        for (int i = 0; i < signatures; ++i)
            all = verify() && all;
    });
    return all ? signatures / taken : 0;
}

double oursPerSecond(const Signed& made)
{
    return perSecond([&] { return cupule::verifies(made.key, made.text, made.signature); });
}

double sodiumPerSecond(const Signed& made)
{
    return perSecond([&] {
        return crypto_sign_verify_detached(made.signature.data(), bytes(made.text), made.text.size(), made.key.data()) == 0;
    });
}

double opensslPerSecond(const Signed& made)
{
    EVP_PKEY* key = EVP_PKEY_new_raw_public_key(EVP_PKEY_ED25519, nullptr, made.key.data(), made.key.size());
    const double rate = perSecond([&] {
        EVP_MD_CTX* context = EVP_MD_CTX_new();
        EVP_DigestVerifyInit(context, nullptr, nullptr, nullptr, key);
        const int good = EVP_DigestVerify(context, made.signature.data(), made.signature.size(), bytes(made.text), made.text.size());
        EVP_MD_CTX_free(context);
        return good == 1;
    });
    EVP_PKEY_free(key);
    return rate;
}

void measureSignatures(const Settings& settings, Table& table)
{
    const Signed made = signedText();
    struct Peer {
        const char* id;
        const char* name;
        double (*rate)(const Signed&);
        double target;
    };
    for (const Peer& peer : {Peer{"T9b", "libsodium, called barely", &sodiumPerSecond, 0.9},
                             Peer{"T9b", "OpenSSL, called barely", &opensslPerSecond, 1.8}}) {
        Line line{peer.id, "Ed25519 signatures verified", peer.name, "/s", {}, {}, {}, peer.target, true, false, {}};
        interleave(settings.rounds, [&] { return oursPerSecond(made); }, [&] { return peer.rate(made); }, line);
        table.lines.push_back(line);
    }
}

} // namespace

void measureHashing(const Settings& settings, Table& table)
{
    std::vector<std::uint8_t> block(blockBytes);
    cupule::SeededRandom random(1);
    random.fill(block);
    const std::string file = settings.folder + "/media.bin";
    {
        std::ofstream out(file, std::ios::binary);
        for (std::size_t done = 0; done < mediaBytes; done += block.size())
            out.write(reinterpret_cast<const char*>(block.data()), static_cast<std::streamsize>(block.size()));
    }
    Line line{"T9", "SHA-256 of a media file, read and hashed", "OpenSSL, 16 KiB blocks in memory", "MB/s", {}, {}, {}, 0.8, true, false, {}};
    interleave(
        settings.rounds,
        [&] {
            const double taken = seconds([&] { static_cast<void>(cupule::sha256OfFile(file)); });
            return static_cast<double>(mediaBytes) / 1e6 / taken;
        },
        [&] { return bareMegabytesPerSecond(block); }, line);
    table.lines.push_back(line);
    measureSignatures(settings, table);
}

} // namespace bench
