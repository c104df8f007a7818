// An open store, the person who works on it, and the pack. Every use case in core/task takes a Session; a button and
// a verb therefore cannot differ. One thread at a time; a worker opens a Session of its own on the same file.

#pragma once

#include <cstdint>
#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/base/result.h"
#include "core/position/transform.h"
#include "core/protocol/pack.h"
#include "core/record/person.h"
#include "core/record/place.h"
#include "core/rules/host_key.h"
#include "core/rules/season.h"
#include "core/store/store.h"

namespace cupule {

/// Person, device and role, kept in a folder outside every store, so that a store copied to another laptop is noticed.
struct Profile {
    std::string folder;
    Uid device;
    Person person;                          ///< id, code, name, contact
    std::vector<Role> roles;
    std::string gridFolder;                 ///< grid files for PROJ; empty = none
    std::string sampleBlock;                ///< two characters issued by the office for this device; empty = none yet
    [[nodiscard]] bool is(Role role) const;
};

/// Reads `profile.json` of the folder. Faults "profile.missing", "profile.json".
Result<Profile> loadProfile(const std::string& folder);
/// Makes a folder with a new device id and a key to sign with (core/task/keys.h). Faults "profile.exists", "profile.code" (empty, or not of letters and digits),
/// "profile.roles" (none), "file.write".
Result<Profile> makeProfile(const std::string& folder, const Person& person, const std::vector<Role>& roles,
                            const Clock& clock, Random& random);
Status saveProfile(const Profile& profile);
/// --profile, else $CUPULE_PROFILE, else the user's configuration folder.
std::string profileFolder(const std::string& named);

class Session {
public:
    /// Opens a store as this profile. What was found is in `opening()`; faults are the store's.
    static Result<std::unique_ptr<Session>> open(const std::string& path, const Profile& profile,
                                                 const Clock& clock, Random& random, bool readOnly = false);
    static Result<std::unique_ptr<Session>> create(const std::string& path, const NewStore& description,
                                                   const Profile& profile, const Clock& clock, Random& random);
    ~Session();

    [[nodiscard]] const Pack& pack() const;
    /// The pack's host key, compiled on first use.
    [[nodiscard]] const HostKey& hostKey() const;
    /// The person has the id under which this store knows them (same id, else same code, else the one person of that name).
    [[nodiscard]] const Profile& profile() const;
    [[nodiscard]] const Uid& me() const { return profile().person.id; }
    [[nodiscard]] Store& store();
    [[nodiscard]] const StoreInfo& info() const;
    [[nodiscard]] Opening opening() const;
    /// Where the store knows less than this device remembers (a copy without its log, a restored one).
    [[nodiscard]] const std::optional<Shorter>& shorter() const;
    /// Counts the commits made on the store by anybody.
    Result<std::int64_t> dataVersion() const;
    [[nodiscard]] const Clock& clock() const;
    [[nodiscard]] Random& random();
    [[nodiscard]] UidMaker& ids();
    /// Made on first use: creating a transformation costs more than painting the window.
    Result<Projector*> projector();
    /// The civil date where the store's zone holds, or the one fixed by setToday (for --today and tests).
    [[nodiscard]] CivilDate today() const;
    void setToday(CivilDate date);
    /// Region of a site, or of the store; shift of the visit, or of the store's season of that year.
    [[nodiscard]] SeasonContext seasonFor(const Visit& visit, const Site* site) const;
    [[nodiscard]] SeasonContext seasonToday() const;
    /// The observed leafing of chestnut in one year, for the whole store, as a step `what` that can be undone. Null = forget
    /// it. Roles volunteer, trainer, office. What lists show of the year's visits is made again by judgeYearAgain (keep.h).
    Status setLeafing(int year, std::optional<CivilDate> observed, const std::string& what = "leafing");
    [[nodiscard]] std::optional<CivilDate> leafing(int year) const;
    /// The hidden mode, for visitors who see the screen (core/task/sight.h).
    void setHidden(bool hidden);
    [[nodiscard]] bool hidden() const;
    /// Refused with "role.needed" (argument "roles") where the profile lacks the role.
    Status need(Role role) const;
    Status needOneOf(std::initializer_list<Role> roles) const;

    /// Starts writing as this person, who is made known to the store where needed. Fault "profile.code-taken" where
    /// somebody else has the code, "session.hidden" in the hidden mode: what is shown then is not what is stored.
    Result<Change> begin(ChangeSize size = ChangeSize::usual);
    /// Commits, and remembers in the profile how far the journal has come.
    Status commit(Change& change);

private:
    Session();
    struct Inside;
    std::unique_ptr<Inside> m;
};

} // namespace cupule
