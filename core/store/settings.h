// Small named values that belong to the store, not to a person: season's leafing date, sample block, column mappings.
// Each change is in the journal.

#pragma once

#include <map>
#include <optional>
#include <string>

#include "core/store/store.h"

namespace cupule {

class StoreSettings {
public:
    explicit StoreSettings(StoreCore& core) : m_core(core) {}
    Result<std::optional<std::string>> get(const std::string& key);
    Status set(Change& change, const std::string& key, const std::string& value);
    Result<std::map<std::string, std::string>> all();

private:
    StoreCore& m_core;
};

} // namespace cupule
