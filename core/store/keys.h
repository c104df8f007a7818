// Keys that this store knows, from everything that was ever said about them. Whoever may say it is the task layer's to know.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/key.h"
#include "core/store/store.h"

namespace cupule {

/// What all notes about one key come to, whatever their order.
struct KnownKey {
    std::string key;                       ///< 64 hexadecimal digits
    Uid person;                            ///< null where notes name different people: then it holds for nobody
    std::vector<Role> roles;               ///< of all vouchings together
    bool vouched = false;
    bool withdrawn = false;                ///< for ever; a withdrawn key is never vouched for again
    std::int64_t upTo = 0;                 ///< of a withdrawn one: bundles of this key up to this number stay valid
    Instant since;                         ///< of the first note that was written here
    [[nodiscard]] bool holds() const { return vouched && !withdrawn && !person.isNull(); }
};

class Keys {
public:
    explicit Keys(StoreCore& core) : m_core(core) {}
    /// One more note, with its journal line.
    Status add(Change& change, const KeyNote& note);
    Result<std::optional<KnownKey>> find(const std::string& key);
    Result<std::vector<KnownKey>> ofPerson(const Uid& person);
    Result<std::vector<KnownKey>> all();                         ///< in the order in which they became known
    Result<std::vector<KeyNote>> notes(const std::string& key);  ///< in the order in which they were written
    /// The highest number of a bundle of this key that was taken in; 0 = none.
    Result<std::int64_t> lastBundle(const std::string& key);

private:
    StoreCore& m_core;
};

} // namespace cupule
