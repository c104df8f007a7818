#include "core/protocol/built_in.h"

#include <cassert>

#include "core/protocol/pack_reader.h"

namespace cupule {

const Pack& builtInPack()
{
    static const PackReading reading = readPack(builtInPackText());
    assert(reading.good());
    return reading.pack;
}

} // namespace cupule
