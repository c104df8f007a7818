// People. Name and contact lie apart (table `personal`) and can be erased; the rest is an ordinary noun with revisions.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/person.h"
#include "core/store/store.h"

namespace cupule {

class People {
public:
    explicit People(StoreCore& core) : m_core(core) {}

    /// New or changed; does nothing where it equals what is stored. Fault "store.constraint" (person_code_unique).
    Status save(Change& change, const Person& person);
    Result<std::optional<Person>> find(const Uid& id);
    Result<std::optional<Person>> byCode(const std::string& code);
    /// By name, in any case of ASCII letters; several may have it.
    Result<std::vector<Person>> byName(const std::string& name);
    Result<std::vector<Person>> all();         ///< by code

    /// Erases name and contact in every revision, search text, undo steps and free pages; one journal line records it with
    /// `order`. The chain stays provable. To be followed by eraseInBackups (core/store/backup.h).
    Status erase(Change& change, const Uid& person, const std::string& order);
    /// Whether the personal data that this commitment (64 hexadecimal digits) stands for was erased here.
    Result<bool> everErased(const Uid& person);        ///< an erasure of this person is recorded here
    Result<bool> erased(const std::string& commitment);
    /// After the commit of an erasure: folds the log and empties it, so that no old page stays behind.
    Status sweep();

private:
    StoreCore& m_core;
};

} // namespace cupule
