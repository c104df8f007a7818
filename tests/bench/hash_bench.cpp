// T9: SHA-256 of media, beside OpenSSL called barely.

#include <fstream>

#include <openssl/evp.h>

#include "core/base/hash.h"
#include "core/base/random.h"
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
    table.leftOut.push_back({"T9b", "nothing is signed yet: signatures come with the bundles"});
}

} // namespace bench
