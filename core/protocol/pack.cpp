#include "core/protocol/pack.h"

#include <algorithm>

namespace cupule {

namespace {

template <class List> auto byId(const List& list, std::string_view id) -> decltype(list.data())
{
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const auto& entry) { return entry.id == id; });
    return found == list.end() ? nullptr : &*found;
}

} // namespace

const Character* Pack::character(std::string_view wanted) const
{
    return byId(characters, wanted);
}

const CharacterState* Pack::state(std::string_view of, std::string_view wanted) const
{
    const Character* owner = character(of);
    return owner == nullptr ? nullptr : byId(owner->states, wanted);
}

const Kind* Pack::kind(std::string_view wanted) const
{
    return byId(kinds, wanted);
}

const KindRow* Pack::row(std::string_view ofKind, std::string_view ofCharacter) const
{
    const auto found = std::find_if(key.begin(), key.end(), [&](const KindRow& entry) {
        return entry.kind == ofKind && entry.character == ofCharacter;
    });
    return found == key.end() ? nullptr : &*found;
}

const Sign* Pack::sign(std::string_view wanted) const
{
    return byId(signs, wanted);
}

const Region* Pack::region(std::string_view wanted) const
{
    return byId(regions, wanted);
}

const Reason* Pack::reason(std::string_view wanted) const
{
    return byId(reasons, wanted);
}

} // namespace cupule
