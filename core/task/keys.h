// The key of whoever works on this device, kept in the profile's folder and never in a store; and whose keys a store trusts.
//
//  - A key signs every bundle. It is made with the profile; a profile from before keys gets one with makeKey().
//  - In an office's store the office vouches; everywhere else whoever works there does. Nobody vouches for a key that was
//    withdrawn, and nobody but the maker of a store for their own.

#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/random.h"
#include "core/exchange/bundle/signing.h"
#include "core/store/keys.h"
#include "core/task/session.h"

namespace cupule {

struct OwnKey {
    std::string key;                       ///< public, 64 hexadecimal digits
    std::string fingerprint;
    bool locked = false;                   ///< by a passphrase
    std::vector<KeyFollows> follows;       ///< earlier keys of this profile, oldest first
};

/// What the profile's folder holds. Faults "key.missing", "key.file".
Result<OwnKey> ownKey(const std::string& profileFolder);
/// Faults "key.exists", those of lockSeed and of writing. An empty passphrase locks nothing.
Result<OwnKey> makeKey(const std::string& profileFolder, Random& random, std::string_view passphrase = {}, const LockCost& cost = {});
/// Locks the key, or locks it anew, or with an empty `wanted` takes the lock away. Faults "key.passphrase", "key.passphrase-needed".
Result<OwnKey> lockKey(const std::string& profileFolder, Random& random, std::string_view passphrase, std::string_view wanted,
                       const LockCost& cost = {});
/// A new key, said to follow by the present one. The lock stays as it was. Faults as above.
Result<OwnKey> renewKey(const std::string& profileFolder, Random& random, std::string_view passphrase);
/// To sign with. Faults "key.passphrase-needed" where it is locked and none is given, "key.passphrase".
Result<SigningKey> signingKey(const std::string& profileFolder, std::string_view passphrase);

/// How a store stands to a key that says it is somebody's.
enum class KeyStanding {
    vouched,
    unknown,       ///< nobody has said anything about it, and this person has no other key
    changed,       ///< nobody has said anything about it, and this person has another key: to be asked about by voice
    sameCode,      ///< nobody has said anything about it, and somebody else of the same code has a key here: to be asked about by voice
    otherPerson,   ///< vouched for as somebody else's
    withdrawn,
    follows,       ///< an earlier key, which is vouched for, speaks for it; given by lookAtArrival alone
};
/// `code` is what that somebody is called; empty = not known.
Result<KeyStanding> keyStanding(Session& session, const std::string& key, const Uid& person, const std::string& code = {});

/// "vouched", "unknown", "changed", "same-code", "other-person", "withdrawn", "follows".
std::string_view standingName(KeyStanding standing);

/// Keys that hold here and are somebody else's who goes by the same code.
Result<std::vector<KnownKey>> keysOfSameCode(Session& session, const std::string& code, const Uid& person);

/// Whether whoever works here may vouch for a key, or withdraw one. Fault "role.needed".
Status mayVouch(const Session& session);
struct Vouching {
    std::string key;
    Uid person;
    std::vector<Role> roles;
    std::string typedFingerprint;          ///< as it was read out; empty = not compared
    bool instead = false;                  ///< of the other key of this person, or of their code, which is withdrawn
    std::string remark;
    std::string code = {};                 ///< of the person, where a file that arrived names it
    bool anotherPerson = false;            ///< two people chose the same code; both keys hold
};
/// Faults "role.needed", "key.not-compared", "key.fingerprint", "key.changed" (unless `instead`), "key.same-code" (unless
/// `instead` or `anotherPerson`), "key.other-person", "key.withdrawn",
/// "key.own", "key.vouched". Argument "fingerprint" of the first two names the digits.
Status vouch(Session& session, const Vouching& vouching);
/// What was signed before stays valid, up to the last bundle that came in. Faults "role.needed", "key.unknown", "key.withdrawn".
Status withdrawKey(Session& session, const std::string& key, const std::string& remark);
/// The one known key whose digits or fingerprint this is, or that one person's who has only one. Faults "key.unknown", "name.ambiguous".
Result<KnownKey> findKey(Session& session, const std::string& typed);
/// Vouches for the maker's key in a new store, within the change that makes it; nothing where there is no key yet.
Status vouchForMaker(Session& session, Change& change);

} // namespace cupule
