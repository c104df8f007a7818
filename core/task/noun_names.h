// What people call a noun whose id stands in a value, as far as it may be seen (core/task/sight.h). Inside the task room only.

#pragma once

#include <map>
#include <optional>
#include <string>

#include "core/task/session.h"

namespace cupule {

struct NamedInLists {
    std::string name;                       ///< label, name, code or number; of a visit the label of its tree
    std::optional<CivilDate> date;          ///< of a visit
};

class NounNames {
public:
    explicit NounNames(Session& session) : m_session(session) {}
    /// Code of a person, label of a tree, name of a site, original name of a photo, number of a sample; empty where there is none of these.
    std::string of(const Uid& id);
    NamedInLists inLists(const std::string& noun, const Uid& id);
    /// Names every id that stands in this JSON.
    void addFrom(const std::string& json, std::map<std::string, std::string>& known);

private:
    Session& m_session;
};

} // namespace cupule
