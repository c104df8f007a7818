#include "core/survey/draw.h"

#include <numeric>
#include <utility>

namespace cupule {

std::vector<std::size_t> shuffled(std::size_t count, Random& random)
{
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (std::size_t left = count; left > 1; --left)
        std::swap(order[left - 1], order[random.below(left)]);
    return order;
}

} // namespace cupule
