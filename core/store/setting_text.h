// The text of a setting as the journal digests it. Inside the store room only.

#pragma once

#include <string>
#include <string_view>

namespace cupule {

std::string settingText(std::string_view key, std::string_view value);

} // namespace cupule
