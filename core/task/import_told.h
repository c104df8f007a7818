// What rows and waypoints say of a tree that stood there before: a note or a girth is never dropped because the tree is known.
// Lines of the note that the tree does not hold yet are added to it, so that the same file adds nothing the second time.

#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "core/store/bulk_import.h"
#include "core/task/session.h"

namespace cupule {

/// Adds each line of `more` that `note` does not hold; true where one was added.
bool addLines(std::string& note, std::string_view more);

class ToldOfTrees {
public:
    explicit ToldOfTrees(Session& session) : m_session(session) {}

    /// A tree that this import makes says this from the start.
    void made(std::int64_t handle, const Tree& tree);
    /// What a row says of a tree that is known. A girth that differs from the tree's becomes a line.
    Status add(const KnownTree& tree, std::string_view note, const std::optional<double>& girthCentimetres);
    /// Ids of the trees about which something new was said, by handle.
    [[nodiscard]] std::map<std::int64_t, Uid> changed() const;
    /// Brings what was said into the tree of this handle.
    void apply(std::int64_t handle, Tree& tree) const;

private:
    struct Told {
        Uid id;
        std::string note;
        std::optional<double> girthCentimetres;
        bool changed = false;
    };
    Session& m_session;
    std::unordered_map<std::int64_t, Told> m_told;
};

} // namespace cupule
