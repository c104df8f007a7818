// Apart from shared_data.cpp, which programs without test cases link too.

#include <iostream>

#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

void skipped(const std::string& reason)
{
    std::cout << "SKIPPED: " << reason << '\n';
    SUCCEED(reason);   // asserts nothing on purpose: a case that was left out must not fail for having no assertion (--warn NoAssertions)
}

} // namespace cupule::test
