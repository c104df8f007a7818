#include "core/record/key.h"

#include "core/base/hash.h"

namespace cupule {

namespace {

std::string digitsOf(const std::string& text)
{
    std::string digits;
    for (const char c : text)
        if (c >= '0' && c <= '9')
            digits += c;
    return digits;
}

} // namespace

std::string fingerprint(const PublicKey& key)
{
    Sha256 hash;
    hash.add("cupule-key-1\n");
    hash.add(std::span<const std::uint8_t>(key));
    const Digest digest = hash.finish();
    std::string text;
    for (std::size_t group = 0; group < 6; ++group) {
        std::uint64_t value = 0;
        for (std::size_t i = 0; i < 5; ++i)
            value = value << 8 | digest[5 * group + i];
        if (group > 0)
            text += ' ';
        text += std::to_string(100'000 + value % 100'000).substr(1);
    }
    return text;
}

std::string followText(const std::string& older, const std::string& newer)
{
    return "cupule-key-follows-1\n" + older + "\n" + newer + "\n";
}

bool sameFingerprint(const std::string& typed, const PublicKey& key)
{
    return digitsOf(typed) == digitsOf(fingerprint(key));
}

Result<PublicKey> publicKeyFrom(const std::string& text)
{
    auto key = digestFromHex(text);
    if (!key)
        return fail("key.form", FaultKind::usage, {{"value", text}});
    return *key;
}

} // namespace cupule
