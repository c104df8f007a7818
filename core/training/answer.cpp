#include "core/training/answer.h"

namespace cupule {

std::string_view askedName(AskedKind kind)
{
    switch (kind) {
    case AskedKind::host: return "host";
    case AskedKind::character: return "character";
    case AskedKind::sign: return "sign";
    case AskedKind::look: return "look";
    case AskedKind::record: return "record";
    case AskedKind::conclude: return "conclude";
    case AskedKind::order: return "order";
    }
    return {};
}

std::optional<AskedKind> askedNamed(std::string_view name)
{
    for (const AskedKind kind : askedKinds)
        if (askedName(kind) == name)
            return kind;
    return std::nullopt;
}

bool isYesNo(AskedKind kind)
{
    return kind == AskedKind::host || kind == AskedKind::sign || kind == AskedKind::conclude;
}

} // namespace cupule
