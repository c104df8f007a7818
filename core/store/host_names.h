// How a host verdict stands in the store. Inside the store room only.

#pragma once

#include <string_view>

#include "core/rules/host.h"

namespace cupule {

inline std::string_view hostName(HostAnswer host)
{
    return host == HostAnswer::host ? "host" : host == HostAnswer::notHost ? "not-host" : "open";
}

inline HostAnswer hostFromName(std::string_view name)
{
    return name == "host" ? HostAnswer::host : name == "not-host" ? HostAnswer::notHost : HostAnswer::cannotTell;
}

} // namespace cupule
