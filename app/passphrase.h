// A passphrase on the command line would stand in the list of running programs, so it comes in a file.

#pragma once

#include <string>

#include "core/base/result.h"

namespace cupule::app {

/// The first line of a file; empty where no file is named. Faults "key.passphrase-empty", those of reading.
Result<std::string> passphraseFrom(const std::string& path);

} // namespace cupule::app
