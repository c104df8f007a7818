// Opens the window and stays until it is closed.

#pragma once

#include <string>

namespace cupule::app {

/// `store`, `profile` and `today` may be empty. Gives the exit code.
int runWindow(int argc, char** argv, const std::string& store, const std::string& profile,
               const std::string& today);

} // namespace cupule::app
