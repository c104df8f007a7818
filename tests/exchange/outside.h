// Programs nobody on the project wrote, asked for their opinion on a file.

#pragma once

#include <optional>
#include <string>
#include <vector>

namespace cupule::test {

/// What a program prints on standard output; nothing where it is not installed or does not end with 0.
std::optional<std::string> printedBy(const std::vector<std::string>& command);

/// The paths of all files in a folder below the shared reference folder, sorted; empty where it is absent.
std::vector<std::string> sharedFiles(const std::string& below);

/// A file in the test's temporary folder.
std::string writtenFile(const std::string& name, const std::string& content);

} // namespace cupule::test
