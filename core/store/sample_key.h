// A sample number without dashes and in capitals, as it is looked up. Inside the store room only.

#pragma once

#include <string>
#include <string_view>

namespace cupule {

std::string sampleKey(std::string_view number);

} // namespace cupule
