#include <filesystem>

#include "app/fields.h"
#include "app/json.h"
#include "app/passphrase.h"
#include "app/verbs/verbs.h"
#include "app/words.h"
#include "core/record/names.h"
#include "core/store/people.h"
#include "core/task/arrival.h"
#include "core/task/keys.h"
#include "core/task/nouns.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

Json roleNames(const std::vector<Role>& roles)
{
    Json names = Json::array();
    for (const Role role : roles)
        names.push_back(std::string(name(role)));
    return names;
}

/// Whose key it is, by code; the id where the store has no such person.
Result<std::string> ownerOf(Session& session, const Uid& person)
{
    const auto found = session.store().people().find(person);
    if (!found)
        return fail(found.error());
    return *found && !(*found)->code.empty() ? (*found)->code : person.text();
}

Result<Json> knownJson(Run& run, Session& session)
{
    const auto keys = session.store().keys().all();
    if (!keys)
        return fail(keys.error());
    Json known = Json::array();
    for (const KnownKey& key : *keys) {
        const auto owner = ownerOf(session, key.person);
        if (!owner)
            return fail(owner.error());
        const std::string digits = fingerprint(publicKeyFrom(key.key).value());
        known.push_back({{"key", key.key},
                         {"fingerprint", digits},
                         {"person", key.person.text()},
                         {"code", *owner},
                         {"roles", roleNames(key.roles)},
                         {"holds", key.holds()},
                         {"withdrawn", key.withdrawn},
                         {"valid_up_to", key.upTo}});
        run.say(key.holds()           ? "{who}: {digits}, trusted."
                : key.person.isNull() ? "{digits}: vouched for as different people’s, so it holds for nobody."
                                      : "{who}: {digits}, withdrawn.",
                {{"who", *owner}, {"digits", digits}});
    }
    return known;
}

class KeyVerb final : public Verb {
public:
    const char* name() const override { return "key"; }
    const char* summary() const override { return "Your key, and the keys that a store trusts"; }
    const char* usage() const override { return "[STORE] [--make | --renew | --lock FILE | --unlock] [--passphrase FILE]"; }
    const char* prose() const override
    {
        return "Your key signs what you hand in. It lies in your profile's folder, never in a store, and is made with the "
               "profile. Its fingerprint is what you read out over the telephone when somebody takes in a file of yours "
               "for the first time.\nWith --renew a new key is made and the present one speaks for it. With --lock the key "
               "needs a passphrase from then on, the first line of FILE. With a store named, the keys that it knows are "
               "listed.";
    }
    const char* examples() const override { return "cupule key\ncupule key office.cupule"; }
    void declare(CLI::App& options) override
    {
        options.add_option("STORE", m_store, "a store, whose known keys are listed");
        options.add_flag("--make", m_make, "make a key, where the profile is from before there were keys");
        options.add_flag("--renew", m_renew, "make a new key, for which the present one speaks");
        options.add_option("--lock", m_lock, "lock the key by the passphrase in the first line of this file");
        options.add_flag("--unlock", m_unlock, "take the passphrase away");
        options.add_option("--passphrase", m_passphrase, "file with the present passphrase in its first line");
    }
    Result<int> run(Run& run) override
    {
        const auto profile = run.profileOrNew();
        if (!profile)
            return fail(profile.error());
        const auto own = changed(run, profile->folder);
        if (!own)
            return fail(own.error());
        Json json{{"key", own->key}, {"fingerprint", own->fingerprint}, {"locked", own->locked}, {"follows", own->follows.size()}};
        run.say("Your key has the fingerprint {digits}.", {{"digits", own->fingerprint}});
        if (own->locked)
            run.say("It is locked by a passphrase.");
        if (!m_store.empty()) {
            const auto session = run.open(m_store, true);
            if (!session)
                return fail(session.error());
            auto known = knownJson(run, **session);
            if (!known)
                return fail(known.error());
            json["known"] = std::move(*known);
        }
        run.give(std::move(json));
        return done;
    }

private:
    Result<OwnKey> changed(Run& run, const std::string& folder) const
    {
        const auto present = passphraseFrom(m_passphrase);
        if (!present)
            return fail(present.error());
        const auto wanted = passphraseFrom(m_lock);
        if (!wanted)
            return fail(wanted.error());
        if (m_make)
            return makeKey(folder, run.random(), *wanted);
        if (m_renew)
            return renewKey(folder, run.random(), *present);
        if (m_unlock || !m_lock.empty())
            return lockKey(folder, run.random(), *present, *wanted);
        return ownKey(folder);
    }

    std::string m_store, m_lock, m_passphrase;
    bool m_make = false, m_renew = false, m_unlock = false;
};

class Vouch final : public StoreVerb {
public:
    const char* name() const override { return "vouch"; }
    const char* summary() const override { return "Trust somebody's key, after comparing its fingerprint by voice"; }
    const char* usage() const override { return "STORE KEY|FILE [PERSON] --fingerprint DIGITS [--role ROLES] [--instead | --another-person]"; }
    const char* prose() const override
    {
        return "Nothing that a key signed is taken in until somebody here vouches for it. Ring the person up, have them "
               "read the fingerprint out that \"cupule key\" shows them, and type what you hear: it is compared with the "
               "key. Without --fingerprint nothing is changed and the fingerprint is shown.\nIn an office's store this is "
               "for the office. Where the person, or somebody else of the same code, has another key that is trusted, this "
               "is refused loudly; --instead withdraws that one, and --another-person says that two people chose one "
               "code.\nA file that arrived names both key and person; otherwise give the key and whose it is.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("KEY", m_vouching.key, "a file that arrived, or the key, 64 hexadecimal digits")->required();
        options.add_option("PERSON", m_person, "whose it is, where a key is given: code or name");
        options.add_option("--fingerprint", m_vouching.typedFingerprint, "the 30 digits as they were read out");
        options.add_option("--role", m_roles, "roles that the key stands for, with commas between; volunteer where nothing is said");
        options.add_flag("--instead", m_vouching.instead, "withdraw the other key of this person, or of their code");
        options.add_flag("--another-person", m_vouching.anotherPerson, "two people chose the same code; both keys are trusted");
        options.add_option("--remark", m_vouching.remark, "how it was compared");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        if (auto found = findBoth(**session); !found)
            return fail(found.error());
        auto roles = readRoles(m_roles);
        if (!roles)
            return fail(roles.error());
        m_vouching.roles = std::move(*roles);
        if (auto vouched = vouch(**session, m_vouching); !vouched)
            return fail(vouched.error());
        run.say("The key of {who} is trusted from now on.", {{"who", m_person}});
        run.give({{"vouched", true}, {"key", m_vouching.key}, {"person", m_vouching.person.text()}, {"roles", roleNames(m_vouching.roles)}});
        return done;
    }

private:
    /// Key and person, from a file or as they are typed.
    Status findBoth(Session& session)
    {
        std::error_code error;
        if (std::filesystem::is_regular_file(m_vouching.key, error)) {
            const auto arrival = lookAtArrival(session, m_vouching.key);
            if (!arrival)
                return fail(arrival.error());
            m_vouching.key = arrival->file.manifest().key;
            m_vouching.person = arrival->file.manifest().authorPerson;
            m_vouching.code = arrival->file.manifest().authorCode;
            m_person = arrival->file.manifest().authorCode;
            return {};
        }
        const auto person = findNoun(session, Noun::person, m_person);
        if (!person)
            return fail(person.error());
        m_vouching.person = *person;
        return {};
    }

    Vouching m_vouching;
    std::string m_person, m_roles = "volunteer";
};

class WithdrawKey final : public StoreVerb {
public:
    const char* name() const override { return "withdraw-key"; }
    const char* summary() const override { return "Trust a key no longer"; }
    const char* usage() const override { return "STORE KEY [--remark TEXT]"; }
    const char* prose() const override
    {
        return "For a key that was lost, copied or given away. What it signed before and was taken in stays; nothing more of "
               "it is taken in. It cannot be taken back: the person makes a new key. KEY is the key, its fingerprint, or "
               "the code of its owner.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("KEY", m_key, "the key, its fingerprint, or its owner")->required();
        options.add_option("--remark", m_remark, "why");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto key = findKey(**session, m_key);
        if (!key)
            return fail(key.error());
        if (auto withdrawn = withdrawKey(**session, key->key, m_remark); !withdrawn)
            return fail(withdrawn.error());
        run.say("The key is withdrawn. What it signed before stays.");
        run.give({{"withdrawn", true}, {"key", key->key}});
        return done;
    }

private:
    std::string m_key, m_remark;
};

} // namespace

std::unique_ptr<Verb> makeKeyVerb()
{
    return std::make_unique<KeyVerb>();
}
std::unique_ptr<Verb> makeVouch()
{
    return std::make_unique<Vouch>();
}
std::unique_ptr<Verb> makeWithdrawKey()
{
    return std::make_unique<WithdrawKey>();
}

} // namespace cupule::app
