#include "core/base/result.h"

namespace cupule {

std::string Fault::argument(std::string_view name) const
{
    for (const auto& a : arguments)
        if (a.name == name)
            return a.value;
    return {};
}

} // namespace cupule
