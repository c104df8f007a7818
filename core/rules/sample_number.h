// Sample numbers: year, block issued by the office, running number, check character ("26-TV-0147-H").
// Source: ISO 7064:2003, MOD 37-2 over 0-9 A-Z; it finds every single wrong character and every swap of neighbours.
// Numbers whose check would be '*' are not issued.

#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace cupule {

/// The check character over characters of 0-9 and A-Z (others are skipped); may be '*'.
char iso7064Mod37_2(std::string_view text);

struct SampleNumber {
    int year = 0;                           ///< two digits, 0 to 99
    std::string block;                      ///< two characters of 0-9 A-Z
    int running = 0;                        ///< 1 to 9999
    char check = '0';
    [[nodiscard]] std::string text() const;
};

/// The number with its check; nothing where the check would be '*'.
std::optional<SampleNumber> makeSampleNumber(int year, std::string_view block, int running);
/// Accepts lower case and missing dashes. Faults "sample-number.form", "sample-number.check".
Result<SampleNumber> readSampleNumber(std::string_view text);

} // namespace cupule
