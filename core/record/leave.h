// Who allowed what, and what the authority asks for at a place. Data of the store: nothing about law is asserted.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/base/uid.h"

namespace cupule {

enum class LeaveGiver { owner, occupier, authority };
enum class LeaveScope { enter, photograph, sample, move, passOn };

struct Leave {
    Uid id;
    LeaveGiver giver = LeaveGiver::owner;
    std::string giverName;                 ///< personal data
    std::vector<LeaveScope> scopes;
    Uid site;                              ///< null = everywhere the giver can speak for
    CivilDate from;
    std::optional<CivilDate> to;           ///< last day; nothing = until withdrawn
    std::optional<CivilDate> withdrawn;    ///< first day on which it no longer holds
    std::string reference;
    bool operator==(const Leave&) const = default;
};

struct Regime {
    Uid id;
    Uid site;                              ///< null = the whole region
    CivilDate from;
    std::optional<CivilDate> to;
    std::string issuer;
    std::string dryGalls;                  ///< "keep", "destroy" or "ask"
    std::string notify;                    ///< whom to tell, in the issuer's words
    std::string reference;
    bool operator==(const Regime&) const = default;
};

/// Whether it holds on that day, at that place (null = a place that belongs to no site).
inline bool inForce(const Leave& leave, CivilDate day, const Uid& site)
{
    return (leave.site.isNull() || leave.site == site) && leave.from <= day && (!leave.to || day <= *leave.to)
           && (!leave.withdrawn || day < *leave.withdrawn);
}
inline bool inForce(const Regime& regime, CivilDate day, const Uid& site)
{
    return (regime.site.isNull() || regime.site == site) && regime.from <= day && (!regime.to || day <= *regime.to);
}

} // namespace cupule
