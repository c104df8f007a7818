// Reference data that lies beside the project and is read in place. A test that needs it and does not find it
// prints "SKIPPED:" with the reason and returns; ctest's log shows how many did.

#pragma once

#include <optional>
#include <string>

namespace cupule::test {

/// The path of a file or folder below the shared reference folder, if it is there.
/// The folder is $CUPULE_SHARED, or `../shared` beside the checkout.
std::optional<std::string> sharedPath(const std::string& below);

/// Says on standard output that the running test case leaves something out ("SKIPPED: <reason>"), and counts as an
/// assertion: every case must hold one (--warn NoAssertions), this one on purpose holds no other.
void skipped(const std::string& reason);

/// A new empty folder that is removed when the test program ends.
std::string temporaryFolder();

} // namespace cupule::test
