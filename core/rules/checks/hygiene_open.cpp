// Debris off clothes, boots, vehicle and tools before leaving, each item confirmed.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void hygieneOpen(const CheckInput& input, std::vector<Finding>& out)
{
    const Hygiene& hygiene = input.visit.hygiene;
    const bool clothes = hygiene.clothes != Confirmed::done, boots = hygiene.boots != Confirmed::done;
    const bool vehicle = hygiene.vehicle == Confirmed::open, tools = hygiene.tools == Confirmed::open;
    if (!clothes && !boots && !vehicle && !tools)
        return;
    std::string open;
    const auto name = [&open](bool isOpen, std::string_view item) {
        if (isOpen)
            open.append(open.empty() ? "" : " ").append(item);
    };
    name(clothes, "clothes");
    name(boots, "boots");
    name(vehicle, "vehicle");
    name(tools, "tools");
    add(out, "hygiene.open", Severity::ask, "hygiene", biosecurity, {{"items", std::move(open)}});
}

} // namespace cupule::checks
