#include "core/task/keys.h"

#include <algorithm>
#include <iterator>

#include "core/store/people.h"
#include "core/task/nouns.h"

namespace cupule {

namespace {

KeyNote noteOf(Session& session, const std::string& key, KeyStep step, const Uid& person, const std::string& remark, const Instant& at)
{
    KeyNote note;
    note.id = session.ids().make();
    note.key = key;
    note.step = step;
    note.person = person;
    note.by = session.me();
    note.at = at;
    note.remark = remark;
    return note;
}

/// Digits alone, as a fingerprint or hexadecimal text is typed.
std::string squeezed(const std::string& typed)
{
    std::string out;
    for (const char c : typed)
        if (c != ' ' && c != '-')
            out += c;
    return out;
}

Status compared(const Vouching& vouching, const PublicKey& key)
{
    if (vouching.typedFingerprint.empty())
        return fail("key.not-compared", FaultKind::refused, {{"fingerprint", fingerprint(key)}});
    if (!sameFingerprint(vouching.typedFingerprint, key))
        return fail("key.fingerprint", FaultKind::refused,
                    {{"fingerprint", fingerprint(key)}, {"typed", vouching.typedFingerprint}});
    return {};
}

Status refuseStanding(KeyStanding standing, const Vouching& vouching)
{
    const Arguments arguments{{"key", vouching.key}, {"code", vouching.code}};
    switch (standing) {
    case KeyStanding::vouched: return fail("key.vouched", FaultKind::refused, arguments);
    case KeyStanding::otherPerson: return fail("key.other-person", FaultKind::refused, arguments);
    case KeyStanding::withdrawn: return fail("key.withdrawn", FaultKind::refused, arguments);
    case KeyStanding::changed: return vouching.instead ? Status() : fail("key.changed", FaultKind::refused, arguments);
    case KeyStanding::sameCode:
        return vouching.instead || vouching.anotherPerson ? Status() : fail("key.same-code", FaultKind::refused, arguments);
    case KeyStanding::unknown:
    case KeyStanding::follows: return {};
    }
    return {};
}

/// Nobody speaks for their own key, except for the very first key of a store that was made before there were keys.
Status notTheFirstOfOwn(Session& session, const Vouching& vouching)
{
    if (vouching.person != session.me())
        return {};
    const auto keys = session.store().keys().all();
    if (!keys)
        return fail(keys.error());
    return keys->empty() ? Status() : fail("key.own", FaultKind::refused);
}

Status withdrawOthers(Session& session, Change& change, const Vouching& vouching)
{
    auto others = session.store().keys().ofPerson(vouching.person);
    if (!others)
        return fail(others.error());
    if (vouching.instead) {
        const auto alike = keysOfSameCode(session, vouching.code, vouching.person);
        if (!alike)
            return fail(alike.error());
        others->insert(others->end(), alike->begin(), alike->end());
    }
    for (const KnownKey& other : *others) {
        if (!other.holds() || other.key == vouching.key)
            continue;
        auto note = noteOf(session, other.key, KeyStep::withdrawn, other.person, vouching.remark, change.at());
        const auto last = session.store().keys().lastBundle(other.key);
        if (!last)
            return fail(last.error());
        note.upTo = *last;
        if (auto added = session.store().keys().add(change, note); !added)
            return added;
    }
    return {};
}

} // namespace

std::string_view standingName(KeyStanding standing)
{
    switch (standing) {
    case KeyStanding::vouched: return "vouched";
    case KeyStanding::unknown: return "unknown";
    case KeyStanding::changed: return "changed";
    case KeyStanding::sameCode: return "same-code";
    case KeyStanding::otherPerson: return "other-person";
    case KeyStanding::withdrawn: return "withdrawn";
    case KeyStanding::follows: return "follows";
    }
    return {};
}

Result<std::vector<KnownKey>> keysOfSameCode(Session& session, const std::string& code, const Uid& person)
{
    std::vector<KnownKey> found;
    if (code.empty())
        return found;
    const auto other = session.store().people().byCode(code);
    if (!other)
        return fail(other.error());
    if (!*other || (*other)->id == person)
        return found;
    const auto keys = session.store().keys().ofPerson((*other)->id);
    if (!keys)
        return fail(keys.error());
    std::copy_if(keys->begin(), keys->end(), std::back_inserter(found), [](const KnownKey& key) { return key.holds(); });
    return found;
}

Status mayVouch(const Session& session)
{
    if (session.info().kind == "office")
        return session.need(Role::office);
    return {};
}

Result<KeyStanding> keyStanding(Session& session, const std::string& key, const Uid& person, const std::string& code)
{
    const auto known = session.store().keys().find(key);
    if (!known)
        return fail(known.error());
    if (*known) {
        if ((*known)->withdrawn)
            return KeyStanding::withdrawn;
        return (*known)->person == person ? KeyStanding::vouched : KeyStanding::otherPerson;
    }
    const auto others = session.store().keys().ofPerson(person);
    if (!others)
        return fail(others.error());
    if (!others->empty())
        return KeyStanding::changed;
    const auto alike = keysOfSameCode(session, code, person);
    if (!alike)
        return fail(alike.error());
    return alike->empty() ? KeyStanding::unknown : KeyStanding::sameCode;
}

Status vouch(Session& session, const Vouching& vouching)
{
    if (auto may = mayVouch(session); !may)
        return may;
    const auto key = publicKeyFrom(vouching.key);
    if (!key)
        return fail(key.error());
    if (auto others = notTheFirstOfOwn(session, vouching); !others)
        return others;
    const auto standing = keyStanding(session, vouching.key, vouching.person, vouching.code);
    if (!standing)
        return fail(standing.error());
    if (auto good = refuseStanding(*standing, vouching); !good)
        return good;
    if (auto same = compared(vouching, *key); !same)
        return same;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto others = withdrawOthers(session, *change, vouching); !others)
        return others;
    auto note = noteOf(session, vouching.key, KeyStep::vouched, vouching.person, vouching.remark, change->at());
    note.roles = vouching.roles;
    if (auto added = session.store().keys().add(*change, note); !added)
        return added;
    return session.commit(*change);
}

Status withdrawKey(Session& session, const std::string& key, const std::string& remark)
{
    if (auto may = mayVouch(session); !may)
        return may;
    const auto known = session.store().keys().find(key);
    if (!known)
        return fail(known.error());
    if (!*known)
        return fail("key.unknown", FaultKind::refused, {{"key", key}});
    if ((*known)->withdrawn)
        return fail("key.withdrawn", FaultKind::refused, {{"key", key}});
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    auto note = noteOf(session, key, KeyStep::withdrawn, (*known)->person, remark, change->at());
    const auto last = session.store().keys().lastBundle(key);
    if (!last)
        return fail(last.error());
    note.upTo = *last;
    if (auto added = session.store().keys().add(*change, note); !added)
        return added;
    return session.commit(*change);
}

Result<KnownKey> findKey(Session& session, const std::string& typed)
{
    const auto keys = session.store().keys().all();
    if (!keys)
        return fail(keys.error());
    const std::string wanted = squeezed(typed);
    const auto person = findNoun(session, Noun::person, typed);
    std::vector<KnownKey> found;
    for (const KnownKey& key : *keys) {
        const auto bytes = publicKeyFrom(key.key);
        const bool named = key.key == wanted || (bytes && squeezed(fingerprint(*bytes)) == wanted);
        if (named || (person && key.holds() && key.person == *person))
            found.push_back(key);
    }
    if (found.empty())
        return fail("key.unknown", FaultKind::refused, {{"key", typed}});
    if (found.size() > 1)
        return fail("name.ambiguous", FaultKind::usage, {{"noun", "key"}, {"name", typed}, {"candidates", found[0].key + "," + found[1].key}});
    return found.front();
}

Status vouchForMaker(Session& session, Change& change)
{
    const auto own = ownKey(session.profile().folder);
    if (!own)
        return own.error().code == "key.missing" ? Status() : fail(own.error());
    auto note = noteOf(session, own->key, KeyStep::vouched, session.me(), {}, change.at());
    note.roles = session.profile().roles;
    return session.store().keys().add(change, note);
}

} // namespace cupule
