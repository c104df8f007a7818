// People, and who may do what.

#pragma once

#include <string>
#include <vector>

#include "core/base/uid.h"

namespace cupule {

enum class Role { volunteer, sampleHandler, trainer, verifier, office };   // stored by name, see names.h

/// Name and contact are personal data: the store keeps them apart and can erase them.
struct Person {
    Uid id;
    std::string code;                 ///< short, unique in the store, safe to print; e.g. "MH"
    std::string name;                 ///< empty once erased
    std::string contact;
    std::vector<Uid> aliases;         ///< other entries that are the same person
    std::vector<Uid> notFor;          ///< "may not decide for each other", set by the office; no reason is stored
    bool operator==(const Person&) const = default;
};

/// Known by a code alone: a paper named the code and nobody has said the name yet. An erased name is no such case.
inline bool isOnlyCode(const Person& person)
{
    return person.name == person.code;
}

} // namespace cupule
