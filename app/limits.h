// Options of the verbs that read a signed file: how much it may ask of this machine. What is not named is as the store has it.

#pragma once

#include <CLI/CLI.hpp>

#include "core/task/bundle_limits.h"

namespace cupule::app {

class LimitOptions {
public:
    void declare(CLI::App& options);
    /// The store's limits with those that were named. Keeps them as the store's where that is asked for.
    Result<BundleLimits> of(Session& session, const std::string& what) const;

private:
    BundleLimits m_named;
    std::vector<std::pair<CLI::Option*, std::int64_t BundleLimits::*>> m_options;
    bool m_keep = false;
};

} // namespace cupule::app
