// Reads a protocol pack from its JSON text. Format: resources/docs/protocol_pack.md.

#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/protocol/pack.h"

namespace cupule {

/// One fault of a pack: where ("/signs/3/windows/MAR/first", RFC 6901) and what (stable code), with a detail as text.
struct PackFault {
    std::string path;
    std::string code;
    std::string detail;
};

struct PackReading {
    Pack pack;
    std::vector<PackFault> faults;          ///< all of them at once; the pack is usable only when empty
    [[nodiscard]] bool good() const { return faults.empty(); }
};

PackReading readPack(std::string_view json);

/// The pack that is built into the program (resources/protocols, embedded by CMake). Read once, then shared.
const Pack& builtInPack();

} // namespace cupule
