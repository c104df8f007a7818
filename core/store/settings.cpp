#include "core/store/settings.h"

#include "core/record/json_writer.h"
#include "core/store/setting_text.h"
#include "core/store/store_core.h"

namespace cupule {

std::string settingText(std::string_view key, std::string_view value)
{
    std::string text = "{";
    json::appendQuoted(text, key);
    text += ':';
    json::appendQuoted(text, value);
    return text + '}';
}

Result<std::optional<std::string>> StoreSettings::get(const std::string& key)
{
    return guarded([&]() -> std::optional<std::string> {
        Query q(m_core.db, "SELECT value FROM setting WHERE key = :key");
        if (!q.bind(":key", key).step())
            return std::nullopt;
        return q.text(0);
    });
}

Status StoreSettings::set(Change& change, const std::string& key, const std::string& value)
{
    return writtenIn(change, [&](StoreCore& core) {
        Query before(core.db, "SELECT value FROM setting WHERE key = :key");
        if (before.bind(":key", key).step() && before.view(0) == value)
            return;
        const LineMark line = core.addLine({"changed", "setting", {}, sha256(settingText(key, value))});
        Query q(core.db, "INSERT INTO setting (key, value, line_chain, line_number) VALUES (:key, :value, :chain, :number) "
                         "ON CONFLICT (key) DO UPDATE SET value = excluded.value, line_chain = excluded.line_chain, "
                         "line_number = excluded.line_number");
        q.bind(":key", key).bind(":value", value).bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<std::map<std::string, std::string>> StoreSettings::all()
{
    return guarded([&] {
        std::map<std::string, std::string> settings;
        Query q(m_core.db, "SELECT key, value FROM setting");
        while (q.step())
            settings[q.text(0)] = q.text(1);
        return settings;
    });
}

} // namespace cupule
