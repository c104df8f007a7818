#include "app/limits.h"

namespace cupule::app {

void LimitOptions::declare(CLI::App& options)
{
    const auto add = [&](const char* name, std::int64_t BundleLimits::*member, const char* help) {
        m_options.emplace_back(options.add_option(name, m_named.*member, help)->check(CLI::PositiveNumber), member);
    };
    add("--most-file-bytes", &BundleLimits::fileBytes, "how large the file may be; 8 GiB where the store has nothing else");
    add("--most-bytes", &BundleLimits::wholeBytes, "how much it may unpack to, in bytes; 16 GiB where the store has nothing else");
    add("--most-part-bytes", &BundleLimits::partBytes, "how much one part may unpack to; 2 GiB where the store has nothing else");
    add("--most-manifest-bytes", &BundleLimits::manifestBytes, "how large its list of contents may be; 64 MiB where the store has nothing else");
    add("--most-line-bytes", &BundleLimits::lineBytes, "how long a line of it may be; 8 MiB where the store has nothing else");
    add("--most-parts", &BundleLimits::parts, "how many parts it may have; 200000 where the store has nothing else");
    add("--most-density", &BundleLimits::timesPacked, "how many times its own size it may unpack to; 200 where the store has nothing else");
    options.add_flag("--keep-limits", m_keep, "the limits named here hold for this store from now on; for the office");
}

Result<BundleLimits> LimitOptions::of(Session& session, const std::string& what) const
{
    auto limits = bundleLimits(session);
    if (!limits)
        return limits;
    for (const auto& [option, member] : m_options)
        if (option->count() > 0)
            *limits.*member = m_named.*member;
    if (m_keep)
        if (auto kept = setBundleLimits(session, *limits, what); !kept)
            return fail(kept.error());
    return limits;
}

} // namespace cupule::app
