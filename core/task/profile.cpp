#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <filesystem>

#include <nlohmann/json.hpp>

#include "core/base/file.h"
#include "core/base/text.h"
#include "core/record/json.h"
#include "core/record/names.h"
#include "core/task/keys.h"
#include "core/task/session.h"

namespace cupule {

namespace {

using Json = nlohmann::json;

std::string profileFile(const std::string& folder)
{
    return (std::filesystem::path(folder) / "profile.json").string();
}

Fault wrong(const std::string& folder, const std::string& field)
{
    Fault fault{"profile.json", FaultKind::data, {{"folder", folder}}, {}, {}};
    fault.place.file = profileFile(folder);
    fault.place.field = field;
    return fault;
}

std::string textOf(const Json& json, const char* member)
{
    const auto found = json.find(member);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

bool isCode(const std::string& code)
{
    return !code.empty() && code.size() <= 12 && std::all_of(code.begin(), code.end(), [](unsigned char c) {
        return std::isalnum(c) != 0 || c == '-' || c >= 0x80;
    });
}

/// Two characters of 0-9 A-Z, or nothing issued yet.
bool isBlock(const std::string& block)
{
    return block.empty() ||
           (block.size() == 2 && std::all_of(block.begin(), block.end(), [](unsigned char c) {
                return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z');
            }));
}

Status valid(const Profile& profile)
{
    if (!isCode(profile.person.code))
        return fail("profile.code", FaultKind::usage, {{"code", profile.person.code}});
    if (profile.roles.empty())
        return fail("profile.roles", FaultKind::usage);
    if (!isBlock(profile.sampleBlock))
        return fail("profile.block", FaultKind::usage, {{"block", profile.sampleBlock}});
    return {};
}

} // namespace

bool Profile::is(Role role) const
{
    return std::find(roles.begin(), roles.end(), role) != roles.end();
}

std::string profileFolder(const std::string& named)
{
    if (!named.empty())
        return named;
    if (const char* set = std::getenv("CUPULE_PROFILE"); set != nullptr && *set != '\0')
        return set;
    if (const char* config = std::getenv("XDG_CONFIG_HOME"); config != nullptr && *config != '\0')
        return (std::filesystem::path(config) / "cupule").string();
    const char* home = std::getenv("HOME");
    return (std::filesystem::path(home == nullptr ? "." : home) / ".config" / "cupule").string();
}

Result<Profile> loadProfile(const std::string& folder)
{
    const auto text = readFile(profileFile(folder), 1 << 20);
    if (!text && text.error().code == "file.open")
        return fail("profile.missing", FaultKind::usage, {{"folder", folder}});
    if (!text)
        return fail(text.error());
    const Json json = Json::parse(*text, nullptr, false);
    if (!json.is_object())
        return fail(wrong(folder, ""));
    Profile profile;
    profile.folder = folder;
    const auto device = Uid::parse(textOf(json, "device"));
    if (!device || device->isNull())
        return fail(wrong(folder, "device"));
    profile.device = *device;
    const auto person = json.find("person");
    auto read = person == json.end() ? fail(wrong(folder, "person")) : fromJson<Person>(person->dump());
    if (!read)
        return fail(wrong(folder, "person"));
    profile.person = std::move(*read);
    for (const auto& role : json.value("roles", Json::array())) {
        const auto known = role.is_string() ? fromName<Role>(role.get<std::string>()) : std::nullopt;
        if (!known)
            return fail(wrong(folder, "roles"));
        profile.roles.push_back(*known);
    }
    profile.gridFolder = textOf(json, "grids");
    profile.sampleBlock = textOf(json, "sampleBlock");
    if (!valid(profile))
        return fail(wrong(folder, "person"));
    return profile;
}

Status saveProfile(const Profile& profile)
{
    if (auto good = valid(profile); !good)
        return good;
    Json json{{"device", profile.device.text()}, {"person", Json::parse(toJson(profile.person))}};
    json["roles"] = Json::array();
    for (const Role role : profile.roles)
        json["roles"].push_back(std::string(name(role)));
    if (!profile.gridFolder.empty())
        json["grids"] = profile.gridFolder;
    if (!profile.sampleBlock.empty())
        json["sampleBlock"] = profile.sampleBlock;
    std::error_code error;
    std::filesystem::create_directories(profile.folder, error);
    return writeFile(profileFile(profile.folder), json.dump(2) + "\n");
}

Result<Profile> makeProfile(const std::string& folder, const Person& person, const std::vector<Role>& roles,
                            const Clock& clock, Random& random)
{
    std::error_code error;
    if (std::filesystem::exists(profileFile(folder), error))
        return fail("profile.exists", FaultKind::refused, {{"folder", folder}});
    UidMaker ids(clock, random);
    Profile profile{folder, ids.make(), person, roles, {}, {}};
    if (profile.person.id.isNull())
        profile.person.id = ids.make();
    if (auto saved = saveProfile(profile); !saved)
        return fail(saved.error());
    // One that is there already is kept: a profile that was lost and is made anew stays the same signer.
    if (auto key = makeKey(folder, random); !key && key.error().code != "key.exists")
        return fail(key.error());
    return profile;
}

} // namespace cupule
