#include "core/task/bundle_limits.h"

#include <array>
#include <charconv>

#include "core/base/text.h"
#include "core/store/settings.h"
#include "core/task/change_settings.h"

namespace cupule {

namespace {

constexpr const char* limitsKey = "bundle/limits";

/// In the order in which the setting holds them.
constexpr std::array members{&BundleLimits::fileBytes, &BundleLimits::wholeBytes, &BundleLimits::partBytes,  &BundleLimits::manifestBytes,
                             &BundleLimits::lineBytes, &BundleLimits::parts,      &BundleLimits::timesPacked};
constexpr std::array<std::string_view, members.size()> names{"file", "whole", "part", "manifest", "line", "parts", "density"};

std::optional<std::int64_t> whole(std::string_view text)
{
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc() && end == text.data() + text.size() && value > 0 ? std::optional(value) : std::nullopt;
}

} // namespace

Result<BundleLimits> bundleLimits(Session& session)
{
    const auto kept = session.store().settings().get(limitsKey);
    if (!kept)
        return fail(kept.error());
    BundleLimits limits;
    const auto parts = split(kept->value_or(""), ' ');
    if (parts.size() != members.size())
        return limits;
    for (std::size_t i = 0; i < members.size(); ++i) {
        const auto value = whole(parts[i]);
        if (!value)
            return BundleLimits{};
        limits.*members[i] = *value;
    }
    return limits;
}

Status setBundleLimits(Session& session, const BundleLimits& wanted, const std::string& what)
{
    if (auto may = session.need(Role::office); !may)
        return may;
    std::string text;
    for (std::size_t i = 0; i < members.size(); ++i) {
        if (wanted.*members[i] <= 0)
            return fail("bundle.limit", FaultKind::usage, {{"limit", std::string(names[i])}});
        if (i > 0)
            text += ' ';
        text += std::to_string(wanted.*members[i]);
    }
    return changeSettings(session, {{limitsKey, text}}, what);
}

} // namespace cupule
