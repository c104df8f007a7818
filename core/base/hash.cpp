#include "core/base/hash.h"

#include <cassert>
#include <cstdio>
#include <vector>

#include <openssl/evp.h>

namespace cupule {

struct Sha256::State {
    EVP_MD_CTX* context = EVP_MD_CTX_new();
};

namespace {

const EVP_MD* algorithm()
{
    static const EVP_MD* md = EVP_MD_fetch(nullptr, "SHA256", nullptr);   // fetched once: looking it up costs more than a short hash
    return md;
}

} // namespace

Sha256::Sha256() : m_state(std::make_unique<State>())
{
    EVP_DigestInit_ex2(m_state->context, algorithm(), nullptr);
}

Sha256::~Sha256()
{
    EVP_MD_CTX_free(m_state->context);
}

void Sha256::add(std::span<const std::uint8_t> bytes)
{
    EVP_DigestUpdate(m_state->context, bytes.data(), bytes.size());
}

void Sha256::add(std::string_view text)
{
    EVP_DigestUpdate(m_state->context, text.data(), text.size());
}

Digest Sha256::finish()
{
    Digest digest{};
    unsigned length = 0;
    EVP_DigestFinal_ex(m_state->context, digest.data(), &length);
    assert(length == digest.size());
    EVP_DigestInit_ex2(m_state->context, algorithm(), nullptr);
    return digest;
}

Digest sha256(std::string_view text)
{
    Digest digest{};
    unsigned length = 0;
    EVP_Digest(text.data(), text.size(), digest.data(), &length, algorithm(), nullptr);
    return digest;
}

Result<Digest> sha256OfFile(const std::string& path, const Progress& progress)
{
    const auto bad = [&](const char* code) {
        return fail(code, FaultKind::io, {{"file", path}});
    };
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"), &std::fclose);
    if (!file)
        return bad("file.open");
    std::setvbuf(file.get(), nullptr, _IONBF, 0);
    std::vector<std::uint8_t> buffer(1 << 18);
    Sha256 hash;
    std::int64_t done = 0;
    for (;;) {
        if (progress.cancelled())
            return bad("job.cancelled");
        const std::size_t count = std::fread(buffer.data(), 1, buffer.size(), file.get());
        hash.add(std::span(buffer.data(), count));
        done += static_cast<std::int64_t>(count);
        progress.tell(done, 0);
        if (count < buffer.size())
            break;
    }
    if (std::ferror(file.get()) != 0)
        return bad("file.read");
    return hash.finish();
}

std::string hex(std::span<const std::uint8_t> bytes)
{
    static constexpr char digits[] = "0123456789abcdef";
    std::string out;
    out.reserve(bytes.size() * 2);
    for (std::uint8_t b : bytes) {
        out += digits[b >> 4];
        out += digits[b & 15];
    }
    return out;
}

Result<Digest> digestFromHex(std::string_view text)
{
    static constexpr auto values = [] {
        std::array<std::int8_t, 256> all{};
        all.fill(-1);
        for (int digit = 0; digit < 10; ++digit)
            all[static_cast<std::size_t>('0' + digit)] = static_cast<std::int8_t>(digit);
        for (int letter = 0; letter < 6; ++letter)
            all[static_cast<std::size_t>('a' + letter)] = all[static_cast<std::size_t>('A' + letter)] = static_cast<std::int8_t>(10 + letter);
        return all;
    }();
    const auto value = [](char c) { return values[static_cast<unsigned char>(c)]; };
    Digest digest{};
    bool good = text.size() == 64;
    for (std::size_t i = 0; good && i < 32; ++i) {
        const int high = value(text[2 * i]);
        const int low = value(text[2 * i + 1]);
        good = high >= 0 && low >= 0;
        if (good)
            digest[i] = static_cast<std::uint8_t>(high * 16 + low);
    }
    if (!good)
        return fail("base.hex", FaultKind::data, {{"text", std::string(text)}});
    return digest;
}

} // namespace cupule
