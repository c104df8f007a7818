// From the words on a command line to a verb and its exit code.

#pragma once

#include <string>
#include <vector>

#include "app/verb.h"

namespace cupule::app {

/// Whether these words ask for the window: none, or the name of a store alone (with --profile and --today).
bool wantsWindow(const std::vector<std::string>& words);
/// The store named in such words, or empty.
std::string storeForWindow(const std::vector<std::string>& words);
/// Value of --profile or --today in such words, or empty.
std::string optionForWindow(const std::vector<std::string>& words, const std::string& option);

/// Whether these words ask for a verb that paints paper.
bool wantsFonts(const std::vector<std::string>& words);

/// Runs one verb to its end.
int runProgram(const std::vector<std::string>& words, const Surroundings& around);

/// The verb of that name ("sample open"); null where there is none.
std::unique_ptr<Verb> makeVerb(std::string_view name);

} // namespace cupule::app
