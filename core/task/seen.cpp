#include "core/task/seen.h"

#include <filesystem>

#include <nlohmann/json.hpp>

#include "core/base/file.h"

namespace cupule {

namespace {

using Json = nlohmann::json;

std::string seenFile(const std::string& folder)
{
    return (std::filesystem::path(folder) / "seen.json").string();
}

Json readAll(const std::string& folder)
{
    const auto text = readFile(seenFile(folder), 1 << 24);
    if (!text)
        return Json::object();
    Json json = Json::parse(*text, nullptr, false);
    return json.is_object() ? json : Json::object();
}

} // namespace

std::optional<Seen> rememberedSeen(const std::string& profileFolder, const Uid& store)
{
    const Json all = readAll(profileFolder);
    const auto entry = all.find(store.text());
    if (entry == all.end() || !entry->is_object())
        return std::nullopt;
    const auto member = [&](const char* name) {
        const auto found = entry->find(name);
        return found != entry->end() && found->is_string() ? found->get<std::string>() : std::string();
    };
    const auto incarnation = Uid::parse(member("incarnation"));
    const auto hash = digestFromHex(member("hash"));
    const auto number = entry->find("number");
    if (!incarnation || incarnation->isNull() || !hash || number == entry->end() ||
        !number->is_number_integer())
        return std::nullopt;
    return Seen{*incarnation, number->get<std::int64_t>(), *hash};
}

Status rememberSeen(const std::string& profileFolder, const Uid& store, const Seen& seen)
{
    Json all = readAll(profileFolder);
    all[store.text()] = {
        {"incarnation", seen.incarnation.text()}, {"number", seen.number}, {"hash", hex(seen.hash)}};
    return writeFile(seenFile(profileFolder), all.dump(1) + "\n");
}

} // namespace cupule
