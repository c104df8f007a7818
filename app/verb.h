// One class a verb: its name, its help in prose, its options and its work. A name may have two words ("sample open").

#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <CLI/CLI.hpp>

#include "app/run.h"

namespace cupule::app {

class Verb {
public:
    virtual ~Verb() = default;
    [[nodiscard]] virtual const char* name() const = 0;
    /// Half a line for the list of verbs; begins with a capital, no full stop.
    [[nodiscard]] virtual const char* summary() const = 0;
    /// The order of its words, for the first line of its help: "STORE FILE...".
    [[nodiscard]] virtual const char* usage() const = 0;
    /// A paragraph or two that a volunteer understands.
    [[nodiscard]] virtual const char* prose() const = 0;
    /// Lines to try, one a line; may be empty.
    [[nodiscard]] virtual const char* examples() const { return ""; }
    /// Whether it paints paper, for which the program must have loaded fonts.
    [[nodiscard]] virtual bool paints() const { return false; }
    virtual void declare(CLI::App& options) = 0;
    /// Gives the exit code.
    virtual Result<int> run(Run& run) = 0;
};

using VerbMaker = std::unique_ptr<Verb> (*)();

struct VerbGroup {
    const char* title;
    std::vector<VerbMaker> verbs;
};

/// In the order of the work, for the help.
const std::vector<VerbGroup>& verbGroups();

} // namespace cupule::app
