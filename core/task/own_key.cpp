// The file that holds a person's key: key.json in the profile's folder, for its owner's eyes alone.

#include <filesystem>

#include <nlohmann/json.hpp>

#include "core/base/file.h"
#include "core/base/hash.h"
#include "core/task/keys.h"

namespace cupule {

namespace {

using Json = nlohmann::json;

struct KeyFile {
    std::string key;
    std::string seed;                      ///< hexadecimal; empty where locked
    std::optional<LockedSeed> locked;
    std::vector<KeyFollows> follows;
};

std::string keyFile(const std::string& folder)
{
    return (std::filesystem::path(folder) / "key.json").string();
}

tl::unexpected<Fault> wrong(const std::string& folder)
{
    Fault fault{"key.file", FaultKind::data, {{"folder", folder}}, {}, {}};
    fault.place.file = keyFile(folder);
    return fail(std::move(fault));
}

std::string textOf(const Json& json, const char* member)
{
    const auto found = json.find(member);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

std::uint64_t numberOf(const Json& json, const char* member)
{
    const auto found = json.find(member);
    return found != json.end() && found->is_number_unsigned() ? found->get<std::uint64_t>() : 0;
}

Result<KeyFile> read(const std::string& folder)
{
    auto text = readFile(keyFile(folder), 1 << 20);
    if (!text && text.error().code == "file.open")
        return fail("key.missing", FaultKind::refused, {{"folder", folder}});
    if (!text)
        return fail(text.error());
    const Json json = Json::parse(*text, nullptr, false);
    KeyFile file;
    if (!json.is_object() || !publicKeyFrom(file.key = textOf(json, "key")))
        return wrong(folder);
    file.seed = textOf(json, "seed");
    if (const auto lock = json.find("locked"); lock != json.end() && lock->is_object())
        file.locked = LockedSeed{textOf(*lock, "salt"), textOf(*lock, "nonce"), textOf(*lock, "box"),
                                 {numberOf(*lock, "passes"), numberOf(*lock, "memoryBytes")}};
    if (file.seed.empty() == !file.locked)
        return wrong(folder);
    for (const auto& one : json.value("follows", Json::array()))
        file.follows.push_back({textOf(one, "newer"), textOf(one, "older"), textOf(one, "signature")});
    return file;
}

Status write(const std::string& folder, const KeyFile& file)
{
    Json json{{"key", file.key}};
    if (file.locked)
        json["locked"] = {{"salt", file.locked->salt},
                          {"nonce", file.locked->nonce},
                          {"box", file.locked->box},
                          {"passes", file.locked->cost.passes},
                          {"memoryBytes", file.locked->cost.memoryBytes}};
    else
        json["seed"] = file.seed;
    for (const auto& one : file.follows)
        json["follows"].push_back({{"older", one.older}, {"newer", one.newer}, {"signature", one.signature}});
    return writePrivateFile(keyFile(folder), json.dump(2) + "\n");
}

OwnKey shown(const KeyFile& file)
{
    return {file.key, fingerprint(publicKeyFrom(file.key).value()), file.locked.has_value(), file.follows};
}

Status put(KeyFile& file, const SigningKey& key, std::string_view passphrase, Random& random, const LockCost& cost)
{
    file.key = hex(key.publicKey());
    file.seed.clear();
    file.locked.reset();
    if (passphrase.empty()) {
        file.seed = hex(key.seed());
        return {};
    }
    auto locked = lockSeed(key.seed(), passphrase, random, cost);
    if (!locked)
        return fail(locked.error());
    file.locked = std::move(*locked);
    return {};
}

Result<SigningKey> opened(const KeyFile& file, const std::string& folder, std::string_view passphrase)
{
    KeySeed seed{};
    if (file.locked && passphrase.empty())
        return fail("key.passphrase-needed", FaultKind::refused, {{"folder", folder}});
    if (file.locked) {
        const auto unlocked = unlockSeed(*file.locked, passphrase);
        if (!unlocked)
            return fail(unlocked.error());
        seed = *unlocked;
    } else if (!bytesFromHex(file.seed, seed)) {
        return wrong(folder);
    }
    SigningKey key(seed);
    if (hex(key.publicKey()) != file.key)
        return wrong(folder);
    return key;
}

} // namespace

Result<OwnKey> ownKey(const std::string& profileFolder)
{
    const auto file = read(profileFolder);
    if (!file)
        return fail(file.error());
    return shown(*file);
}

Result<OwnKey> makeKey(const std::string& profileFolder, Random& random, std::string_view passphrase, const LockCost& cost)
{
    std::error_code error;
    if (std::filesystem::exists(std::filesystem::symlink_status(keyFile(profileFolder), error)))
        return fail("key.exists", FaultKind::refused, {{"folder", profileFolder}});
    KeyFile file;
    if (auto kept = put(file, SigningKey::make(random), passphrase, random, cost); !kept)
        return fail(kept.error());
    if (auto written = write(profileFolder, file); !written)
        return fail(written.error());
    return shown(file);
}

Result<OwnKey> lockKey(const std::string& profileFolder, Random& random, std::string_view passphrase, std::string_view wanted,
                       const LockCost& cost)
{
    auto file = read(profileFolder);
    if (!file)
        return fail(file.error());
    const auto key = opened(*file, profileFolder, passphrase);
    if (!key)
        return fail(key.error());
    if (auto kept = put(*file, *key, wanted, random, cost); !kept)
        return fail(kept.error());
    if (auto written = write(profileFolder, *file); !written)
        return fail(written.error());
    return shown(*file);
}

Result<OwnKey> renewKey(const std::string& profileFolder, Random& random, std::string_view passphrase)
{
    auto file = read(profileFolder);
    if (!file)
        return fail(file.error());
    const auto older = opened(*file, profileFolder, passphrase);
    if (!older)
        return fail(older.error());
    const SigningKey newer = SigningKey::make(random);
    KeyFollows follows{hex(newer.publicKey()), file->key, {}};
    follows.signature = hex(older->sign(followText(follows.older, follows.newer)));
    const LockCost cost = file->locked ? file->locked->cost : LockCost{};
    if (auto kept = put(*file, newer, file->locked ? passphrase : std::string_view(), random, cost); !kept)
        return fail(kept.error());
    file->follows.push_back(std::move(follows));
    if (auto written = write(profileFolder, *file); !written)
        return fail(written.error());
    return shown(*file);
}

Result<SigningKey> signingKey(const std::string& profileFolder, std::string_view passphrase)
{
    const auto file = read(profileFolder);
    if (!file)
        return fail(file.error());
    return opened(*file, profileFolder, passphrase);
}

} // namespace cupule
