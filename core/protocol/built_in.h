// The JSON text of the pack that is built into the program, as it lies in resources/protocols.

#pragma once

#include <string_view>

namespace cupule {

std::string_view builtInPackText();

} // namespace cupule
